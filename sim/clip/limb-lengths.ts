/** Whether the figure's limbs are as long in the picture as the athlete's, and if not, whether the scale or the height is off. */
import type { PosedCaution, PosedFrame } from './clip-pose.ts';

/** Whole arms and legs: where a shoulder or hip is a little off, a part of them says nothing of its length. */
const WHOLE = /^(hand|foot)/;
/** A limb that was asked to reach this share of its length is led to its end; beyond the second the pointer was elsewhere (judgement). */
const TO_ITS_END = 0.95;
const ELSEWHERE = 1.3;
/** Longer than this, a limb says that something is off (judgement). */
const OFF = 1.05;
/** The fall of the mass centre is worth something over so long a time, s, and is as it should be to this share (judgement: 2 cm in the middle and at the ends). */
const LEAST_SPAN = 0.4;
const FALLS = 0.08;

/** Share by which straight limbs were asked to be longer than they are, in the middle of all that were; NaN: none was led to its end. */
export function limbsOf(posed: readonly PosedFrame[]): number {
  const ratios = posed
    .flatMap(({ reaches }) => reaches.filter(({ limb }) => WHOLE.test(limb)).map(({ ratio }) => ratio))
    .filter((r) => r >= TO_ITS_END && r <= ELSEWHERE)
    .sort((a, b) => a - b);
  const n = ratios.length;
  return n > 0 ? (ratios[(n - 1) >> 1] + ratios[n >> 1]) / 2 - 1 : Number.NaN;
}

export function limbCaution(posed: readonly PosedFrame[], gravity: number): PosedCaution | undefined {
  const share = limbsOf(posed);
  if (!(share > OFF - 1)) return undefined;
  const fall = fallOf(posed);
  // a scale that is off makes limbs and fall alike longer; a height only the limbs
  const ratio = fall === undefined || !(gravity > 0) ? Number.NaN : fall / gravity;
  const isScale = Math.abs(ratio - (1 + share)) < Math.abs(ratio - 1);
  const by = Number.isNaN(ratio) ? 'either' : isScale ? 'scale' : Math.abs(ratio - 1) < FALLS ? 'height' : 'either';
  return { kind: 'limbs', share, by };
}

/** m/s2 by which the posed mass centre falls: the parabola through its heights; undefined where they say too little. */
function fallOf(posed: readonly PosedFrame[]): number | undefined {
  const n = posed.length;
  if (n < 4 || posed[n - 1].t - posed[0].t < LEAST_SPAN) return undefined;
  const mid = posed.reduce((sum, p) => sum + p.t, 0) / n;
  // orthogonal to 1 and t
  const t = posed.map((p) => p.t - mid);
  const s2 = t.reduce((sum, v) => sum + v * v, 0);
  const s3 = t.reduce((sum, v) => sum + v ** 3, 0);
  const q = t.map((v) => v * v - (s3 / s2) * v - s2 / n);
  const size = q.reduce((sum, v) => sum + v * v, 0);
  return size > 0 ? -2 * q.reduce((sum, v, i) => sum + (v * posed[i].p_WScm_W[1]) / size, 0) : undefined;
}
