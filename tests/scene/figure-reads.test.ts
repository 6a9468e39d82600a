// What is seen of the figure at 40 px of height: which way it faces, which side is towards us, how far it has twisted.
import { describe, expect, it } from 'vitest';
import { figureItems } from '../../src/scene/figure.ts';
import type { View } from '../../src/scene/view.ts';
import { frontView } from '../../src/scene/view.ts';
import { type AnglesDeg, attitude, poseOf, shapeAngles, sheetBody } from '../figure-sheet/poses.ts';
import { turnedView } from '../figure-sheet/turned-view.ts';
import { rasterise, tones } from './raster.ts';

const HEIGHT = 40;
const SIZE = 64;
const themes = ['light', 'dark'] as const;
type Tone = ReturnType<typeof tones>;

/**
 * Floors of the difference of lightness per pixel that the figure covers, 0 to 1. Measured, least of both themes and of the
 * shapes and phases below: front and back 0.26, that of the heads alone 0.23, facing alone 0.072, sides 0.24, an eighth of a
 * twist 0.18, a twist to the left and one to the right 0.26.
 */
const FLOOR = { frontAndBack: 0.22, heads: 0.2, facing: 0.06, sides: 0.21, eighth: 0.15, ways: 0.22 };

function picture(angles: AnglesDeg, view: View, tone: Tone, R?: ArrayLike<number>): Float64Array {
  const frames = poseOf(sheetBody, angles, R);
  const scale = HEIGHT / (sheetBody.stature ?? 1.62);
  const items = figureItems(sheetBody, frames, { view, scale, anchor: [0, 0, 0], x: SIZE / 2, y: SIZE / 2 });
  return rasterise(items, SIZE, SIZE, tone);
}
const mirrored = (a: Float64Array): Float64Array =>
  a.map((_, i) => a[SIZE * Math.floor(i / SIZE) + SIZE - 1 - (i % SIZE)]);
const isSeen = (a: Float64Array, i: number): boolean => Math.abs(a[i] - a[0]) > 0.05;
const seen = (a: Float64Array): number => a.filter((_, i) => isSeen(a, i)).length;
/** Sum of the differences of lightness, as a share of the pixels that the figure covers. */
function difference(a: Float64Array, b: Float64Array): number {
  const sum = a.reduce((total, value, i) => total + Math.abs(value - b[i]), 0);
  return sum / Math.max(seen(a), seen(b));
}
/** The rows of the head alone. */
function headOf(a: Float64Array): Float64Array {
  const top = Math.floor(a.findIndex((_, i) => isSeen(a, i)) / SIZE);
  return a.map((value, i) => (i < SIZE * (top + 6) ? value : a[0]));
}

const front = turnedView(0, 0);
const back = turnedView(Math.PI, 0);
const left = turnedView(Math.PI / 2, 0);
const right = turnedView(-Math.PI / 2, 0);

describe.each(themes)('at 40 px of height, in the %s theme', (theme) => {
  const tone = tones(theme);

  it.each(['straight', 'wrapped', 'tuck', 'pike'] as const)('front and back, left and right of "%s" differ', (id) => {
    const of = (view: View): Float64Array => picture(shapeAngles(id), view, tone);
    expect(difference(of(front), of(back))).toBeGreaterThan(FLOOR.frontAndBack);
    // the outlines are the same: what is left is face and hair, neckline and spine, arms before and behind
    expect(difference(of(front), mirrored(of(back)))).toBeGreaterThan(FLOOR.facing);
    // the same for the sides: dark and pale limbs
    expect(difference(of(left), mirrored(of(right)))).toBeGreaterThan(FLOOR.sides);
  });

  it('the head says by itself whether it is seen from in front or from behind', () => {
    for (const id of ['straight', 'wrapped'] as const) {
      const head = (view: View, by = tone): Float64Array => headOf(picture(shapeAngles(id), view, by));
      expect(difference(head(front), head(back))).toBeGreaterThan(FLOOR.heads);
      // it is the hair that says so
      const bald: Tone = (token) => tone(token === 'hair' ? 'skin' : token);
      expect(difference(head(front, bald), head(back, bald))).toBeLessThan(FLOOR.heads);
    }
  });

  it('every eighth of a twist is another picture, and a twist to the left none to the right', () => {
    const at = (twist: number): Float64Array => picture(shapeAngles('wrapped'), frontView, tone, attitude(0, 0, twist));
    for (let deg = 0; deg < 360; deg += 45) {
      expect(difference(at(deg), at(deg + 45)), `${deg}`).toBeGreaterThan(FLOOR.eighth);
      if (deg % 180 !== 0) expect(difference(at(deg), at(-deg)), `${deg}`).toBeGreaterThan(FLOOR.ways);
    }
    expect(difference(at(0), at(360))).toBeLessThan(1e-2);
  });

  it('left limbs are as broad as right ones', () => {
    const a = picture(shapeAngles('straight'), front, tone);
    const inHalf = (half: number): number =>
      a.filter((_, i) => isSeen(a, i) && Math.floor((2 * (i % SIZE)) / SIZE) === half).length;
    // measured 0.005; 0.24 while the edge of pale limbs lay outside of their contour
    expect(Math.abs(inHalf(0) - inHalf(1)) / inHalf(0)).toBeLessThan(0.06);
  });
});
