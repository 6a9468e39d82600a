// The instant that a skill is first seen at: it turns fast there, its shape is held, and its face is seen.
import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { findOpening } from '../../src/app/opening-instant.ts';
import { getSpans } from '../../src/document/spans.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { makePoser } from '../../src/engine/poses.ts';
import { fileOf } from '../skill/load.ts';

const engine = makeEngine({ athletes, shapes });

for (const [id, twists] of [
  ['arms-in-spin', true],
  ['back-tuck', false],
  ['back-straight-full', true],
  ['back-straight-double', true],
  ['double-back-tuck', false],
  ['trampoline-full', true],
] as const)
  test(`${id} opens where it turns fast, with a face`, () => {
    const result = engine.fly(fileOf(id));
    const { frames: f, flight } = result;
    const spans = getSpans(result.file, shapes, { apex: flight.duration / 2, touchdown: flight.duration });
    const t = findOpening(result, spans);
    const i = f.t.findIndex((s) => s >= t - 1e-9);
    const rates = (twists ? f.twistRate : f.somersaultRate).map(Math.abs);
    expect(rates[i] / Math.max(...rates)).toBeGreaterThan(0.8);
    const [w, x, y, z] = f.quat_WF.subarray(4 * i);
    const eye = f.v_WScm_W[0] <= -0.2 ? -1 : 1;
    // from in front or in profile, never the back of the head
    expect(eye * 2 * (x * z - w * y)).toBeGreaterThan(-0.1);
  });

/** Skills that begin with the flight: nothing before it has to be worked out. */
const flown = Object.keys(skills).filter((id) => skills[id].phases[0].kind === 'flight');

test.each(flown)('%s opens with its face in profile or towards us and its trunk seen from the side of it', (id) => {
  const result = engine.fly(fileOf(id));
  const { frames: f, flight } = result;
  const spans = getSpans(result.file, shapes, { apex: flight.duration / 2, touchdown: flight.duration });
  const R = makePoser(flight, f)(findOpening(result, spans)).R_WF;
  const eye = f.v_WScm_W[0] <= -0.2 ? -1 : 1;
  // measured: -0.00 at least and 0.37 at most
  expect(eye * R[6]).toBeGreaterThan(-0.05);
  expect(Math.abs(R[7])).toBeLessThan(0.45);
});
