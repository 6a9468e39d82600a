// Which instant each picture of a moving picture shows: against whole numbers, which have no rounding.
import { describe, expect, test } from 'vitest';
import {
  lastsS,
  makePictureTimes,
  PICTURE_RATE,
  stampOfPicture,
  timeOfPicture,
} from '../../src/moving-picture/picture-times.ts';

describe('pictures in time', () => {
  test('picture n shows from + n / (slower × rate): no error adds up over a minute of them', () => {
    for (const slower of [1, 2, 4, 8, 16]) {
      const times = makePictureTimes(0, 3, slower);
      for (let n = 0; n < times.count; n++) expect(timeOfPicture(times, n) * slower * PICTURE_RATE).toBeCloseTo(n, 9);
      // where a sum of steps would have drifted, a whole second is a whole second
      const second = slower * PICTURE_RATE;
      expect(timeOfPicture(times, second)).toBe(1);
      expect(timeOfPicture(times, 3 * second)).toBe(3);
    }
  });

  test('the first picture is the first instant, and no picture is after the last', () => {
    for (const to of [0.4, 0.9356487343083301, 1.04, 1.5627809905975896])
      for (const slower of [1, 2, 4, 8]) {
        const times = makePictureTimes(0.13, to, slower);
        const step = 1 / (slower * PICTURE_RATE);
        expect(timeOfPicture(times, 0)).toBe(0.13);
        const last = timeOfPicture(times, times.count - 1);
        expect(last).toBeLessThanOrEqual(to + 1e-8);
        // one more would be after it
        expect(last + step).toBeGreaterThan(to);
      }
  });

  test('an instant that is on a picture is a picture, though its product is not whole in floating point', () => {
    expect(makePictureTimes(0, 0.1 + 0.2, 4).count).toBe(73);
    expect(makePictureTimes(0.2, 0.3, 4).count).toBe(25);
    expect((0.3 - 0.2) * 240).toBeLessThan(24);
    // and one that is not is none
    expect(makePictureTimes(0, 0.2999, 4).count).toBe(72);
  });

  test('a quarter of the speed of 1.04 s are 250 pictures in 4.17 s', () => {
    const times = makePictureTimes(0, 1.04, 4);
    expect(times.count).toBe(250);
    expect(lastsS(times)).toBeCloseTo(4.1667, 4);
    expect(stampOfPicture(249)).toBe(4.15);
  });

  test('a span that is none, and a speed that is no part of the true one, are refused', () => {
    expect(() => makePictureTimes(0.5, 0.5, 4)).toThrow('it has to end later');
    expect(() => makePictureTimes(0.5, Number.NaN, 4)).toThrow(RangeError);
    for (const slower of [0, 0.5, 2.5, Number.NaN]) expect(() => makePictureTimes(0, 1, slower)).toThrow('allowed');
  });
});
