/** Ready chains of bars and bed, by what each leg is named. Ranges of times, speeds and forces in the bed: chains.test.ts. */
import { describe, expect, test } from 'vitest';
import { calcFrames, frameTimes } from '../../sim/index.ts';
import { flightsOf } from './flown.ts';

describe('three bounces in one bed', () => {
  const chain = flightsOf('trampoline-jump-tuck-full');

  /** m; measured 0.024, 0.022, 0.012 */
  const STAYS = 0.03;
  test('the feet stay in each contact', () => {
    expect(chain.stop).toBeUndefined();
    expect(chain.legs.length).toBe(3);
    for (const { course } of chain.legs) {
      expect(course?.facts.slide).toBeLessThan(STAYS);
      expect(course?.facts.stretch.value).toBeLessThan(STAYS);
    }
  });

  const DEG = 180 / Math.PI;
  /** Somersaults, twists, and how near, deg: counted along the frames, from the start of each flight. */
  const TURN = 8;
  test.each([
    ['straight jump', 0, 0, 0],
    ['back tuck', 1, 1, 0],
    ['back full', 2, 1, 1],
  ])('a %s', (_, k, somersaults, twists) => {
    const { flight } = chain.legs[k].whole;
    const frames = calcFrames(flight, frameTimes(flight.duration, 240));
    const last = frames.n - 1;
    const wanted = chain.legs[k].skill.target?.landingAngle ?? 0;
    expect(Math.abs(frames.somersault[last] * DEG - wanted * DEG - 360 * somersaults)).toBeLessThan(TURN);
    expect(Math.abs((frames.twist[last] - frames.twist[0]) * DEG - 360 * twists)).toBeLessThan(TURN);
    expect(flight.touchdown?.part).toBe('feet');
  });

  /** m; measured 0.6: a bed is 4.3 m long */
  const TRAVELS = 1;
  test('it stays about the middle of the bed', () => {
    for (const { offset_W, whole } of chain.legs) {
      const end = new Float64Array(3);
      whole.flight.massCentreInto(whole.flight.duration, end, new Float64Array(3));
      expect(Math.hypot(offset_W[0] + end[0], offset_W[2] + end[2])).toBeLessThan(TRAVELS);
    }
  });
});
