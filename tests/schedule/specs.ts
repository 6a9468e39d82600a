/** Short ways to write schedules in tests: times in s from take-off, angles in degrees. */
import { compileSchedule } from '../../sim/schedule/compile.ts';
import type {
  AnchoredTime,
  AnchorTimes,
  AngleKey,
  ArmPath,
  KeyKind,
  Schedule,
  ScheduleSpec,
  ShapeBlock,
} from '../../sim/schedule/schedule.ts';
import { angleOf, DEG, shoulderBody } from './shoulder-body.ts';

export const ANCHORS: AnchorTimes = { apex: 0.6, touchdown: 1.2 };
export const BASE: readonly number[] = new Array<number>(8).fill(0);

export const at = (s: number, anchor: AnchoredTime['anchor'] = 'takeoff'): AnchoredTime => ({ anchor, s });

export function key(name: string, s: number, deg: number, kind: KeyKind = 'stop', nextDeg?: number): AngleKey {
  const k = { angle: angleOf(name), at: at(s), value: deg * DEG, kind };
  return nextDeg === undefined ? k : { ...k, next: nextDeg * DEG };
}

export function block(
  shape: string,
  from: number,
  to: number,
  pose: readonly number[],
  arms: ArmPath = 'direct',
): ShapeBlock {
  return { shape, from: at(from), to: at(to), arms, pose };
}

export function makeSpec(part: Partial<ScheduleSpec>): ScheduleSpec {
  return { base: BASE, blocks: [], keys: [], sampled: [], smoothing: { kind: 'gcv' }, ...part };
}

export function compile(part: Partial<ScheduleSpec>): Schedule {
  return compileSchedule(shoulderBody, makeSpec(part), ANCHORS);
}

export interface Sample {
  readonly q: Float64Array;
  readonly qd: Float64Array;
  readonly qdd: Float64Array;
}

export function sampleAt(s: Schedule, t: number): Sample {
  const out = { q: new Float64Array(s.hinges), qd: new Float64Array(s.hinges), qdd: new Float64Array(s.hinges) };
  s.evalInto(t, out.q, out.qd, out.qdd);
  return out;
}

/** One named angle at t, rad, and its rate. */
export function angleAt(s: Schedule, name: string, t: number): [number, number] {
  const v = new Float64Array(8);
  const r = new Float64Array(8);
  s.anglesInto(t, v, r);
  return [v[angleOf(name)], r[angleOf(name)]];
}
