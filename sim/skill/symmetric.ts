/**
 * A schedule with the left-right asymmetry of chosen angles taken out: each angle and its mirror get the mean of the
 * two, side bend and turn of the spine get zero. Worked on the keys and blocks, not on the curves, so that the arms
 * keep a path of their own. Pairs that are equal already stay as they are. SI, radians.
 */

import type { Body, ShoulderAngles } from '../body/body.ts';
import { resolveTime } from '../math/anchor.ts';
import type { AnchorTimes, AngleKey, Schedule, ScheduleSpec } from '../schedule/schedule.ts';
import { sameCriterion } from '../schedule/smoothing.ts';

/** An elevation within this of 0 or 180 deg leaves the plane of the arm without meaning. */
const POLE = 1e-6;

/** Pairs [left, right] among `angles`, and single angles of the midline as [a, a]. */
function pairsOf(body: Body, angles: ReadonlySet<number>): [number, number][] {
  const out: [number, number][] = [];
  for (const a of angles) {
    const m = body.angles[a].mirror;
    if (m >= a || !angles.has(m)) out.push([a, m]);
  }
  return out;
}

/** Whether the pair is driven alike on both sides all along. */
function isEven(body: Body, spec: ScheduleSpec, [a, m]: readonly [number, number]): boolean {
  const sign = body.angles[a].mirrorSign;
  const same = (x: number, y: number): boolean => x === sign * y;
  if (!same(spec.base[a], spec.base[m]) || !spec.blocks.every((b) => same(b.pose[a], b.pose[m]))) return false;
  const ka = spec.keys.filter((k) => k.angle === a);
  const km = spec.keys.filter((k) => k.angle === m);
  const alike = (k: AngleKey, o: AngleKey): boolean =>
    k.at.anchor === o.at.anchor &&
    k.at.s === o.at.s &&
    k.kind === o.kind &&
    same(k.value, o.value) &&
    same(k.next ?? k.value, o.next ?? o.value);
  if (ka.length !== km.length || !ka.every((k, i) => alike(k, km[i]))) return false;
  const sa = spec.sampled.find((s) => s.angle === a);
  const sm = spec.sampled.find((s) => s.angle === m);
  if (!sa && !sm) return true;
  return (
    !!sa &&
    !!sm &&
    sa.start === sm.start &&
    sa.rate === sm.rate &&
    sameCriterion(sa.smoothing ?? spec.smoothing, sm.smoothing ?? spec.smoothing) &&
    sa.values.length === sm.values.length &&
    Array.from(sa.values).every((v, i) => same(v, sm.values[i]))
  );
}

/** Whether the schedule drives any of these angles unevenly. */
export function isUneven(body: Body, spec: ScheduleSpec, angles: ReadonlySet<number>): boolean {
  return pairsOf(body, angles).some((p) => !isEven(body, spec, p));
}

/** Whether a value for each Body angle is even in these angles. */
export function isEvenIn(body: Body, values: ArrayLike<number>, angles: ReadonlySet<number>): boolean {
  return pairsOf(body, angles).every(([a, m]) => values[a] === body.angles[a].mirrorSign * values[m]);
}

/** A value for each Body angle, even in these angles: each pair gets its mean, the midline's side bend and turn zero. */
export function evenValues(body: Body, values: ArrayLike<number>, angles: ReadonlySet<number>): Float64Array {
  const out = Float64Array.from(values);
  for (const [a, m] of pairsOf(body, angles)) {
    const sign = body.angles[a].mirrorSign;
    const mean = (out[a] + sign * out[m]) / 2;
    out[a] = mean;
    out[m] = sign * mean;
  }
  return out;
}

/** `schedule` is the spec compiled with `anchors`; the result hangs its own keys on take-off at the same times. */
export function makeSymmetric(
  body: Body,
  spec: ScheduleSpec,
  angles: ReadonlySet<number>,
  schedule: Schedule,
  anchors: AnchorTimes,
): ScheduleSpec {
  const pairs = pairsOf(body, angles).filter((p) => !isEven(body, spec, p));
  if (pairs.length === 0) return spec;
  const uneven = new Set(pairs.flat());
  const shoulders = pairShoulders(body).filter(
    ([l, r]) => [l.plane, l.elevation, l.turn].some((a) => uneven.has(a)) && angles.has(r.elevation),
  );
  const evenPose = (pose: readonly number[]): number[] => {
    const out = [...pose];
    for (const [l, r] of shoulders) shareAtPoles(out, l, r);
    for (const [a, m] of pairs) {
      const sign = body.angles[a].mirrorSign;
      const mean = (out[a] + sign * out[m]) / 2;
      out[a] = mean;
      out[m] = sign * mean;
    }
    return out;
  };

  const at = (t: AngleKey['at']): number => resolveTime(t, anchors);
  const values = new Float64Array(body.angles.length);
  const rates = new Float64Array(body.angles.length);
  const keys = spec.keys.filter((k) => !uneven.has(k.angle));
  const sampled = spec.sampled.filter((s) => !uneven.has(s.angle));
  for (const [a, m] of pairs) {
    const sign = body.angles[a].mirrorSign;
    const own = spec.keys.filter((k) => k.angle === a || k.angle === m).map((k) => at(k.at));
    const measured = spec.sampled.filter((s) => s.angle === a || s.angle === m);
    // measured on one side only, or at other rates: read again at the first one's times
    const grid = measured[0];
    if (grid) {
      const mean = Float64Array.from(grid.values, (_, i) => {
        schedule.anglesInto(grid.start + i / grid.rate, values, rates);
        return (values[a] + sign * values[m]) / 2;
      });
      sampled.push({ ...grid, angle: a, values: mean });
      if (m !== a) sampled.push({ ...grid, angle: m, values: mean.map((v) => sign * v) });
      continue;
    }
    const times = [...new Set(own)].sort((x, y) => x - y).filter((t, i, all) => i === 0 || t - all[i - 1] > 1e-9);
    for (const s of times) {
      schedule.anglesInto(s, values, rates);
      const value = (values[a] + sign * values[m]) / 2;
      const kind = Math.abs(rates[a] + sign * rates[m]) < 1e-9 ? 'stop' : 'pass';
      keys.push({ angle: a, at: { anchor: 'takeoff', s }, value, kind });
      if (m !== a) keys.push({ angle: m, at: { anchor: 'takeoff', s }, value: sign * value, kind });
    }
  }
  return {
    ...spec,
    base: evenPose(spec.base),
    blocks: spec.blocks.map((b) => ({ ...b, pose: evenPose(b.pose) })),
    keys,
    sampled,
  };
}

function pairShoulders(body: Body): [ShoulderAngles, ShoulderAngles][] {
  const out: [ShoulderAngles, ShoulderAngles][] = [];
  for (const l of body.shoulders) {
    const r = body.shoulders.find((s) => s.elevation === body.angles[l.elevation].mirror);
    if (r && l.elevation < r.elevation) out.push([l, r]);
  }
  return out;
}

/**
 * An arm that hangs or is overhead has no plane: it takes the other's, so that the mean goes where the other arm is;
 * one up and one down meet at the side. Overhead, a plane changed by d turns the arm by 2 d (docs/conventions.md).
 */
function shareAtPoles(pose: number[], l: ShoulderAngles, r: ShoulderAngles): void {
  const poleOf = (s: ShoulderAngles): number | undefined => {
    const n = Math.round(pose[s.elevation] / Math.PI);
    return Math.abs(pose[s.elevation] - n * Math.PI) < POLE ? n : undefined;
  };
  const [pl, pr] = [poleOf(l), poleOf(r)];
  const put = (s: ShoulderAngles, pole: number, plane: number): void => {
    if (pole % 2 !== 0) pose[s.turn] += 2 * (plane - pose[s.plane]);
    pose[s.plane] = plane;
  };
  if (pl !== undefined && pr !== undefined) {
    const plane = pl === pr ? (pose[l.plane] + pose[r.plane]) / 2 : 0;
    put(l, pl, plane);
    put(r, pr, plane);
  } else if (pl !== undefined) put(l, pl, pose[r.plane]);
  else if (pr !== undefined) put(r, pr, pose[l.plane]);
}
