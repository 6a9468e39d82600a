/** Posed frames as they have to be before anything is made of them. */
import { FieldError } from '../math/field-error.ts';
import type { PosedFrame } from './clip-pose.ts';

const FEWEST_POSED = 2;
const MOST_POSED = 20;
/** s before the take-off that is marked: the frame in which the feet are last on the ground. */
const BEFORE = 0.05;
/** s: longer than any flight here. */
const LONGEST = 10;
/** s that two poses have to be apart: no body moves from one to the other in less. */
const APART = 0.01;

/** In the order of time. Throws a FieldError that names frame, value and range. */
export function checkPosed(posed: readonly PosedFrame[], angles: number): PosedFrame[] {
  if (posed.length < FEWEST_POSED || posed.length > MOST_POSED)
    throw new FieldError('posed', posed.length, `${FEWEST_POSED} to ${MOST_POSED} posed frames`);
  const sorted = [...posed].sort((a, b) => a.t - b.t);
  sorted.forEach((p, i) => {
    const field = `posed[${i}]`;
    if (!Number.isFinite(p.t)) throw new FieldError(`${field}.t`, p.t, 's from take-off: mark the take-off first');
    if (p.t < -BEFORE || p.t > LONGEST)
      throw new FieldError(`${field}.t`, p.t, `a frame in the air, ${-BEFORE} to ${LONGEST} s from take-off`);
    if (i > 0 && p.t - sorted[i - 1].t < APART)
      throw new FieldError(`${field}.t`, p.t, `at least ${APART} s after the posed frame before it`);
    if (p.angles.length !== angles)
      throw new FieldError(`${field}.angles`, p.angles.length, `${angles} angles: those of this athlete's body`);
    const numbers = [...p.angles, p.somersault, p.tilt, p.twist, ...p.p_WScm_W];
    if (!numbers.every(Number.isFinite)) throw new FieldError(field, 'not a number', 'numbers, rad and m');
  });
  return sorted;
}
