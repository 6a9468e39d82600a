/** How long two schedules are the same. */
import type { Schedule } from '../schedule/schedule.ts';

/** Polynomial spans that agree at their ends and at these places between are the same span. */
const PLACES = [0.11, 0.37, 0.5, 0.71, 0.93];
const SAME = 1e-12;

/** The last common break up to which both schedules agree; -Infinity where they differ from the start. */
export function commonUntil(a: Schedule, b: Schedule): number {
  const qa = [0, 1, 2].map(() => new Float64Array(a.hinges));
  const qb = [0, 1, 2].map(() => new Float64Array(b.hinges));
  const agreeAt = (t: number): boolean => {
    a.evalInto(t, qa[0], qa[1], qa[2]);
    b.evalInto(t, qb[0], qb[1], qb[2]);
    return qa[0].every((q, i) => Math.abs(q - qb[0][i]) < SAME && Math.abs(qa[1][i] - qb[1][i]) < SAME * 1e3);
  };
  let until = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < Math.min(a.breaks.length, b.breaks.length); i++) {
    const t = a.breaks[i];
    if (Math.abs(t - b.breaks[i]) > SAME) break;
    const before = i === 0 ? t - 1 : a.breaks[i - 1];
    if (!PLACES.every((p) => agreeAt(before + p * (t - before)))) break;
    until = t;
  }
  return until;
}
