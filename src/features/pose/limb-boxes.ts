/** Boxes and outlines of limbs in the picture of the figure: where a limb can be pressed, and what plates and names keep clear of. px, y down. */
import type { HeldLimb, HeldPicture } from '../../pictures/stage-input.ts';

/** px of the figure: the middles of its upper and lower half, "x y x y" */
export const middlesOf = (limb: HeldLimb | undefined, left: number): string =>
  (limb?.line ?? [])
    .slice(0, 3)
    .flatMap(([x, y], i, all) => (i === 0 ? [] : [(x + all[i - 1][0]) / 2 + left, (y + all[i - 1][1]) / 2]))
    .map((v) => v.toFixed(1))
    .join(' ');

/** A box as lines down it, so near each other that nothing fits between. */
export const boxOf = (x: number, y: number, wide: number, tall: number): Float32Array[] =>
  Array.from({ length: wide > 0 ? Math.ceil(wide / 8) + 1 : 0 }, (_, i) => {
    const at = x + Math.min(8 * i, wide);
    return Float32Array.of(at, y, at, y + tall);
  });

export function outlinesOf(picture: HeldPicture | undefined, left: number): Float32Array[] {
  const shift = (points: ArrayLike<number>): Float32Array =>
    Float32Array.from(points, (v, i) => (i % 2 ? v : v + left));
  const limbs = picture?.limbs ?? [];
  const joints = limbs.filter(({ id }) => id !== 'head').map(({ line }) => line[0]);
  // the trunk between shoulders and hips
  const trunk = [joints[0], joints[1], joints[3], joints[2]].flatMap((p) => (p ? [...p] : []));
  return [...limbs.flatMap(({ outline }) => outline.map(shift)), shift(trunk)];
}

export function boxStyle(limb: HeldLimb | undefined, left: number, least: number): Record<string, string> {
  if (!limb) return { display: 'none' };
  let [x0, y0, x1, y1] = [1e9, 1e9, -1e9, -1e9];
  for (const piece of limb.outline)
    for (let i = 0; i < piece.length; i += 2) {
      [x0, x1] = [Math.min(x0, piece[i]), Math.max(x1, piece[i])];
      [y0, y1] = [Math.min(y0, piece[i + 1]), Math.max(y1, piece[i + 1])];
    }
  const [w, h] = [Math.max(x1 - x0, least), Math.max(y1 - y0, least)];
  const px = (v: number): string => `${v.toFixed(1)}px`;
  return {
    left: px((x0 + x1 - w) / 2 + left),
    top: px((y0 + y1 - h) / 2),
    width: px(w),
    height: px(h),
  };
}
