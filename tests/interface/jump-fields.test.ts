// The take-off as it is typed on the page: what is typed is flown, what is said to stay stays. Each held against flights flown again.
import { describe, expect, it, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { flightOf } from '../../sim/math/phases.ts';
import { jumpEditsOf } from '../../src/app/takeoff-values.ts';
import { type Field, getFields } from '../../src/document/fields.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { isWhole } from '../corpus.ts';
import { sampleOf } from '../former/index.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
/** Share of the angular momentum that an edit of the height may change; measured 1e-9. */
const STAYS = 1e-8;
/** s that an air time may differ from the one typed; measured 1e-7 in 48 of the ready skills. */
const AIR = 1e-4;

const fieldsOf = (from: FlightResult): Field[] =>
  getFields(from.file, from.athlete, from.jump, jumpEditsOf(engine.jumping, from));
const write = (from: FlightResult, id: string, value: number): SkillFile => {
  const field = fieldsOf(from).find((one) => one.id === id);
  if (!field) throw new Error(`no field ${id}`);
  return field.write(from.file, value);
};
const kindOf = (file: SkillFile): string => Object.keys(flightOf(file).takeoff?.momentum ?? {})[0];

const stated = Object.keys(skills).filter((id) => flightOf(skills[id]).takeoff?.velocityMPerS);
const flown = (id: string) => engine.fly(sampleOf(id));
const SOME = [
  'former/back-straight-full',
  'former/arms-in-spin',
  'trampoline-double-tuck',
  'dive-forward-one-and-half-pike',
];

it('the whole rotation of a jump with a turn is typed, and its direction stays', () => {
  const from = engine.fly(skills['arms-in-spin']);
  const field = fieldsOf(from).find((one) => one.id === 'rotation');
  const was = from.flight.h_Scm_W;
  expect(field?.value).toBeCloseTo(Math.hypot(...was), 9);
  const now = engine.fly(write(from, 'rotation', 1.1 * (field?.value ?? Number.NaN))).flight.h_Scm_W;
  for (let k = 0; k < 3; k++) expect(Math.abs(now[k] - 1.1 * was[k])).toBeLessThan(STAYS * (1 + Math.hypot(...was)));
  expect(fieldsOf(flown('former/back-straight-full')).some((one) => one.id === 'rotation')).toBe(false);
});

describe.each(isWhole ? stated : SOME)('%s', (id) => {
  const from = flown(id);
  test('with another height, speed or gravity the angular momentum stays, in the kind of the file', () => {
    const edits: [string, number][] = [
      ['up', 0.97 * from.jump.up],
      ['rise', 0.95 * (from.jump.rise ?? 0)],
      ['gravity', 9.7],
      ['height', 0.02 + (fieldsOf(from).find((f) => f.id === 'height')?.value ?? 0)],
    ];
    for (const [field, value] of edits) {
      const edited = write(from, field, value);
      expect(kindOf(edited)).toBe(kindOf(from.file));
      const { h_Scm_W } = engine.fly(edited).flight;
      for (let k = 0; k < 3; k++)
        expect(Math.abs(h_Scm_W[k] - from.flight.h_Scm_W[k])).toBeLessThan(STAYS * (1 + Math.abs(from.jump.momentum)));
    }
  });
});

describe.each(SOME)('%s', (id) => {
  const from = flown(id);
  it('an air time that is typed is flown, and the height and the speed follow', () => {
    const wanted = 0.98 * from.jump.airTime;
    const { jump, flight } = engine.fly(write(from, 'airTime', wanted));
    expect(Math.abs(flight.duration - wanted)).toBeLessThan(AIR);
    expect(jump.rise).toBeCloseTo(jump.up ** 2 / (2 * 9.81), 9);
    expect(jump.up).toBeLessThan(from.jump.up);
    expect(Math.abs(jump.momentum - from.jump.momentum)).toBeLessThan(STAYS * (1 + Math.abs(jump.momentum)));
  });

  it('any of the three of a rotation is typed, and the flight has it', () => {
    for (const by of ['momentum', 'straight', 'rate'] as const) {
      const now = from.jump[by] ?? Number.NaN;
      const wanted = 1.05 * now + (now < 0 ? -0.01 : 0.01);
      const edited = write(from, by, Math.abs(wanted));
      expect(kindOf(edited)).toBe(kindOf(from.file));
      expect(engine.fly(edited).jump[by]).toBeCloseTo(wanted, 6);
    }
  });

  it('a minus turns the rotation round', () => {
    const { jump } = engine.fly(write(from, 'momentum', -5));
    expect(jump.momentum).toBeCloseTo(from.jump.momentum < 0 ? 5 : -5, 6);
  });
});

test('less height, same push: the double somersault lands short, and turns no faster', () => {
  const from = flown('former/double-back-straight');
  const lower = engine.fly(write(from, 'rise', 0.93 * (from.jump.rise ?? 0)));
  expect((lower.outline.shortDeg ?? 0) - (from.outline.shortDeg ?? 0)).toBeGreaterThan(5);
  expect(lower.jump.rate).toBeCloseTo(from.jump.rate ?? Number.NaN, 6);
});

test('an air time that no flight has is refused, and nothing is changed', () => {
  const from = flown('former/back-straight-full');
  expect(() => write(from, 'airTime', 0.1)).toThrow(/airTime/);
  expect(from.file).toBe(sampleOf('former/back-straight-full'));
});

test('rates in a file stay rates', () => {
  const file = structuredClone(skills['back-straight']);
  const takeoff = flightOf(file).takeoff;
  if (!takeoff) throw new Error('no take-off');
  takeoff.momentum = { ratesRevPerS: { somersault: 0.7, twist: 0.3 } };
  const from = engine.fly(file);
  expect(from.jump.rate).toBeCloseTo(0.7, 9);
  const edited = write(from, 'momentum', 30);
  expect(flightOf(edited).takeoff?.momentum).toMatchObject({ ratesRevPerS: { twist: 0.3 } });
  expect(engine.fly(edited).jump.momentum).toBeCloseTo(30, 6);
});
