/** When the hands let go: at a time, or the first time that the swing angle is reached; follows the run to there. */
import { DEG } from '../math/angles.ts';
import { directionOf, type Hang } from './hang.ts';
import { makeRunRow, readRun, type SwingRun } from './swing-run.ts';
import { lateRelease, NoReleaseError, type SwingSpec } from './swing-spec.ts';
import type { SwingStepper } from './swing-stepper.ts';

/** s from the start; undefined where no release is asked for. Throws NoReleaseError. */
export function releaseTime(hang: Hang, stepper: SwingStepper, spec: SwingSpec): number | undefined {
  const { release } = spec;
  if (!release) return undefined;
  return lateRelease(
    spec,
    release.at === 'time' ? release.s : timeOfAngle(hang, stepper, release.angle, spec.duration),
  );
}

/** The first time at which the swing angle is reached. */
function timeOfAngle(hang: Hang, stepper: SwingStepper, angle: number, duration: number): number {
  const { run } = stepper;
  let i = 1;
  for (; ; i++) {
    if (i >= run.count) {
      if (run.last >= duration) throw notReleased(run, angle, duration);
      stepper.next();
    }
    if (run.angle[i - 1] < angle && run.angle[i] >= angle) break;
  }
  const row = makeRunRow(run.joints);
  const off = (t: number): number => {
    readRun(run, t, row);
    hang.planar.place(row.x[2], row.v[2], row.x.subarray(3), row.v.subarray(3));
    return hang.sense * directionOf(hang, hang.sense * angle) - angle;
  };
  let [lo, hi] = [run.times[i - 1], run.times[i]];
  let [fl, fh] = [off(lo), off(hi)];
  let t = hi;
  for (let k = 0; k < 40 && fh - fl > 0; k++) {
    t = lo - (fl * (hi - lo)) / (fh - fl);
    const f = off(t);
    if (Math.abs(f) < 1e-13) break;
    if (f < 0) [lo, fl] = [t, f];
    else [hi, fh] = [t, f];
  }
  if (t > duration) throw notReleased(run, angle, duration);
  return t;
}

function notReleased(run: SwingRun, angle: number, duration: number): NoReleaseError {
  let far = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < run.count && run.times[i] <= duration; i++) far = Math.max(far, run.angle[i]);
  const deg = (x: number): string => (x * DEG).toFixed(0);
  return new NoReleaseError(
    `the swing does not get to ${deg(angle)} deg within ${duration} s; it gets as far as ${deg(far)} deg`,
    { angle, far, duration },
  );
}
