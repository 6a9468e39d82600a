// Flights are found in recordings whose flights are known: with g free, through noise and lost rows, slowed down, and none where nothing falls.
import { describe, expect, it } from 'vitest';
import { findAirSpans, spanBetween } from '../../sim/recording/air-span.ts';
import { withContact } from './contact-rows.ts';
import { angleIndex } from './posed-flight.ts';

/** s: measured over the cases below, 5 seeds each: at most .012 at 1 mm, .032 at 10 mm; and in standard errors of both ends 3.7 */
const END_OFF = { 0.001: 0.015, 0.01: 0.045 } as const;

describe.each([
  ['trampoline-full', 60, 0.001],
  ['trampoline-full', 120, 0.01],
  ['double-back-tuck', 240, 0.001],
  ['trampoline-barani', 240, 0.01],
  ['back-straight-full', 500, 0.001],
] as const)('%s at %d Hz with %d m of noise', (id, rateHz, place) => {
  const { posed, start, end } = withContact(id, { rateHz, noise: { seed: 3, place, angle: place } });
  const spans = findAirSpans(posed);

  it('is one flight, whose ends are known to a few hundredths', () => {
    expect(spans.length).toBe(1);
    expect(Math.abs(spans[0].start - start)).toBeLessThan(END_OFF[place]);
    expect(Math.abs(spans[0].end - end)).toBeLessThan(END_OFF[place]);
    expect(posed.t[spans[0].first]).toBeGreaterThanOrEqual(spans[0].start - 1e-9);
    expect(posed.t[spans[0].last]).toBeLessThanOrEqual(spans[0].end + 1e-9);
  });

  it('has the g that it was flown with, within what it says', () => {
    expect(Math.abs(spans[0].g - 9.81)).toBeLessThan(3.5 * spans[0].gError + 0.005);
    expect(spans[0].gError).toBeLessThan(0.06);
  });
});

it.each([
  [2, 9.81 / 4],
  [0.5, 9.81 * 4],
])('a clock that is slow by %d makes g %d, and the flight is found all the same', (slow, g) => {
  const { posed, start, end } = withContact('trampoline-full', { rateHz: 120, slow, noise: { seed: 1, place: 0.003 } });
  const [span] = findAirSpans(posed);
  expect(span.g).toBeCloseTo(g, 1);
  expect(Math.abs(span.start - start)).toBeLessThan(0.03 * slow);
  expect(Math.abs(span.end - end)).toBeLessThan(0.03 * slow);
});

it('a knee that is lost for 50 ms, and rows without a root, do not hide it', () => {
  const { posed, start } = withContact('double-back-tuck', { rateHz: 240, noise: { seed: 5, place: 0.002 } });
  const knee = angleIndex(posed.body, 'kneeFlexionL');
  for (let i = 100; i < 112; i++) posed.angles[posed.body.angles.length * i + knee] = Number.NaN;
  posed.p_WBo_W.fill(Number.NaN, 3 * 150, 3 * 155);
  const [span] = findAirSpans(posed);
  expect(Math.abs(span.start - start)).toBeLessThan(0.02);
  expect(span.g).toBeCloseTo(9.81, 1);
});

it('a body at rest is in no flight', () => {
  const { posed } = withContact('double-back-tuck', { rateHz: 120, noise: { seed: 5, place: 0.003 } });
  const still = { ...posed, p_WBo_W: posed.p_WBo_W.map((_, i) => 0.001 * Math.sin(37 * i)) };
  // limbs go on moving about a root at rest: no parabola
  expect(findAirSpans({ ...still, angles: posed.angles.map((_, i) => 0.1 * (i % posed.body.angles.length)) })).toEqual(
    [],
  );
});

it('a span by hand keeps to the recording, and says what is outside', () => {
  const { posed } = withContact('double-back-tuck', { rateHz: 120 });
  const span = spanBetween(posed, 0.3, 1);
  expect([span.start, span.end]).toEqual([posed.t[36], posed.t[120]]);
  expect(span.g).toBeCloseTo(9.81, 6);
  expect(() => spanBetween(posed, -1, 1)).toThrow(/from: -1 is not possible; allowed: 0.000 to/);
  expect(() => spanBetween(posed, 1, 0.5)).toThrow(/to: 0.5/);
  expect(() => spanBetween(posed, 1, 1.01)).toThrow(/five rows/);
});
