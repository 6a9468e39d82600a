// Where a camera stands and what it makes of points, against closed forms.
import { describe, expect, it } from 'vitest';
import {
  CAMERA_RANGES,
  checkCamera,
  projectInto,
  type Stand,
  standCamera,
  USUAL_CAMERA,
} from '../../sim/filming/camera.ts';
import { FieldError } from '../../sim/index.ts';
import { DEG } from './filmed.ts';

const stand: Stand = { middle: [0.5, 1.4, 0], floorY: 0, way: 1 };
const at = new Float64Array(2);

describe('a camera', () => {
  it('square on and level, sees a metre as focal / away pixels, the middle in the middle', () => {
    const s = standCamera({ ...USUAL_CAMERA, offSquare: 0 }, { ...stand, middle: [0.5, 1.4, 0] });
    expect(s.focal).toBeCloseTo(960 / Math.tan(21 * DEG), 9);
    expect(projectInto(s, [0.5, 1.4, 0], 0, at, 0)).toBeCloseTo(8.5, 12);
    expect([...at]).toEqual([960, 540]);
    projectInto(s, [1.5, 2.4, 0], 0, at, 0);
    expect(at[0]).toBeCloseTo(960 + s.focal / 8.5, 9);
    expect(at[1]).toBeCloseTo(540 - s.focal / 8.5, 9);
    // twice as far from the camera: half as large
    projectInto(s, [1.5, 1.4, -8.5], 0, at, 0);
    expect(at[0]).toBeCloseTo(960 + s.focal / 17, 9);
  });

  it('the edge of its field is half the field from its axis', () => {
    const s = standCamera({ ...USUAL_CAMERA, view: 60 * DEG }, stand);
    projectInto(s, [0.5 + 8.5 * Math.tan(30 * DEG), 1.4, 0], 0, at, 0);
    expect(at[0]).toBeCloseTo(1920, 8);
  });

  it('looks up at what is above it, by a rotation about its own right', () => {
    const s = standCamera({ ...USUAL_CAMERA, up: 1, aim: 3, away: 6 }, stand);
    const pitch = Math.atan2(2, 6);
    projectInto(s, [0.5, 1, 0], 0, at, 0);
    // a level line is `pitch` under the axis
    expect(at[1]).toBeCloseTo(540 + s.focal * Math.tan(pitch), 8);
    expect(at[0]).toBeCloseTo(960, 9);
    expect(s.distance).toBeCloseTo(Math.hypot(6, 2), 12);
  });

  it('stands so that the flight goes to the right, and off square nearer to where it begins', () => {
    for (const way of [1, -1] as const) {
      const s = standCamera({ ...USUAL_CAMERA, offSquare: 30 * DEG }, { ...stand, way });
      expect(s.p_WC_W[0]).toBeCloseTo(0.5 - way * 4.25, 12);
      expect(s.p_WC_W[2]).toBeCloseTo(way * 8.5 * Math.cos(30 * DEG), 12);
      expect(way * s.right[0]).toBeGreaterThan(0.8);
      expect(s.right[1]).toBeCloseTo(0, 12);
    }
  });

  it('what it cannot be is refused by field, value and range; ends of the ranges are taken', () => {
    for (const [name, [least, most]] of Object.entries(CAMERA_RANGES)) {
      const free = { ...USUAL_CAMERA, framesHz: 10, shutter: 0.001, lines: 0 };
      for (const good of [least, most]) {
        if (name === 'framesHz') expect(checkCamera({ ...free, shutter: 1e-5, framesHz: good }).framesHz).toBe(good);
        else expect(checkCamera({ ...free, [name]: good })).toMatchObject({ [name]: good });
      }
      for (const bad of [least - 0.01 * (most - least) - 1e-6, most * 1.01 + 1, Number.NaN])
        expect(() => checkCamera({ ...free, [name]: bad }), `${name} ${bad}`).toThrow(FieldError);
    }
    expect(() => checkCamera({ ...USUAL_CAMERA, shutter: 1 / 100 })).toThrow(/shutter: 0\.01 .*0\.00833 s at 120/);
    expect(() => checkCamera({ ...USUAL_CAMERA, lines: 0.012 })).toThrow(/lines.*at most the time of a frame/);
    expect(() => checkCamera({ ...USUAL_CAMERA, width: 1920.5 })).toThrow(/whole number/);
  });
});
