/** From a ScheduleSpec to one track an angle: anchors resolved, order checked, blocks and keys merged. */
import type { Body } from '../body/body.ts';
import { ScheduleOrderError, ScheduleValueError } from './errors.ts';
import type { AnchoredTime, AnchorTimes, ScheduleSpec } from './schedule.ts';
import { SAME_TIME, type Track, type TrackKey } from './track.ts';

export interface TimedBlock {
  readonly from: number;
  readonly to: number;
  readonly arms: ScheduleSpec['blocks'][number]['arms'];
  readonly said: string;
}

export interface Collected {
  readonly tracks: Track[];
  readonly blocks: readonly TimedBlock[];
  /** angles that have a key of their own strictly inside the move into block i, or at its edges: [block][angle] */
  readonly keyed: (angle: number, from: number, to: number) => boolean;
}

export function resolveTime(at: AnchoredTime, anchors: AnchorTimes): number {
  return at.s + (at.anchor === 'takeoff' ? 0 : at.anchor === 'apex' ? anchors.apex : anchors.touchdown);
}

const degrees = (rad: number): string => `${Math.round((rad * 1800) / Math.PI) / 10} deg`;

export function collectTracks(body: Body, spec: ScheduleSpec, anchors: AnchorTimes): Collected {
  const n = body.angles.length;
  const finite = (field: string, value: number): void => {
    if (!Number.isFinite(value)) throw new ScheduleValueError(field, value, 'a finite number');
  };
  const blocks = spec.blocks.map((b, i): TimedBlock => {
    const timed = { from: resolveTime(b.from, anchors), to: resolveTime(b.to, anchors), arms: b.arms, said: `block ${i + 1} (${b.shape})` };
    finite(`${timed.said}: from`, timed.from);
    finite(`${timed.said}: to`, timed.to);
    if (b.pose.length !== n) throw new ScheduleValueError(`${timed.said}: pose`, `${b.pose.length} values`, `${n} values`);
    b.pose.forEach((v, k) => {
      finite(`${timed.said}: ${body.angles[k].name}`, v);
    });
    return timed;
  });
  blocks.forEach((b, i) => {
    if (b.to < b.from - SAME_TIME) throw new ScheduleOrderError(`the start of ${b.said}`, b.from, 'its end', b.to);
    const before = blocks[i - 1];
    if (before && b.from < before.to + SAME_TIME) throw new ScheduleOrderError(`the end of ${before.said}`, before.to, `the start of ${b.said}`, b.from);
  });

  const own: TrackKey[][] = body.angles.map(() => []);
  for (const key of spec.keys) {
    const name = body.angles[key.angle]?.name;
    if (name === undefined) throw new ScheduleValueError('key angle', key.angle, `an index from 0 to ${n - 1}`);
    const t = resolveTime(key.at, anchors);
    finite(`key of ${name}: time`, t);
    finite(`key of ${name}: angle`, key.value);
    const said = `the key of ${name} at ${degrees(key.value)}`;
    const made: TrackKey = { t, value: key.value, kind: key.kind, said, ...(key.next === undefined ? {} : { next: key.next }) };
    const list = own[key.angle];
    const before = list[list.length - 1];
    if (before && t < before.t + SAME_TIME) {
      if (Math.abs(t - before.t) > SAME_TIME || before.value !== made.value || before.next !== made.next)
        throw new ScheduleOrderError(before.said, before.t, said, t);
      continue;
    }
    list.push(made);
  }

  const tracks = body.angles.map((angle, k): Track => {
    const keys: TrackKey[] = [];
    spec.blocks.forEach((b, i) => {
      const { from, to, said } = blocks[i];
      keys.push({ t: from, value: b.pose[k], kind: 'stop', said: `the start of ${said} (${angle.name})` });
      if (to > from + SAME_TIME) keys.push({ t: to, value: b.pose[k], kind: 'stop', said: `the end of ${said} (${angle.name})` });
    });
    for (const key of own[k]) {
      const at = keys.findIndex((x) => Math.abs(x.t - key.t) <= SAME_TIME);
      if (at >= 0) keys[at] = key;
      else keys.push(key);
    }
    return keys.sort((a, b) => a.t - b.t);
  });
  return {
    tracks,
    blocks,
    keyed: (angle, from, to) => own[angle].some((k) => k.t >= from - SAME_TIME && k.t <= to + SAME_TIME),
  };
}
