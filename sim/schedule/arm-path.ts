/**
 * The plane of a shoulder where it has no meaning (docs/conventions.md, "Joint angles"). R = Ry(plane) Rx(-elevation)
 * Ry(turn - plane): at elevation 0 it depends on turn alone; at 180 on turn - 2 plane, so a jump of plane by d there
 * re-expresses turn by 2 d. The excess unwinds to the next turn key.
 */
import type { ShoulderAngles } from '../body/body.ts';
import type { Collected } from './collect.ts';
import { ScheduleValueError } from './errors.ts';
import type { ScheduleSpec } from './schedule.ts';
import { SAME_TIME, type Track, valueAt, withKey } from './track.ts';

const POLE = 1e-6;
const turn = 2 * Math.PI;
const wrapped = (a: number): number => a - turn * Math.round(a / turn);
const atDown = (elevation: number): boolean => Math.abs(wrapped(elevation)) < POLE;
const atUp = (elevation: number): boolean => Math.abs(wrapped(elevation - Math.PI)) < POLE;
const atPole = (elevation: number): boolean => atDown(elevation) || atUp(elevation);

/** Rewrites the plane and turn tracks of one shoulder for the arms' paths between blocks and for jumps of keys. */
export function layArmPath(c: Collected, shoulder: ShoulderAngles, spec: ScheduleSpec): void {
  const { plane, elevation } = shoulder;
  const at = (t: number): number => valueAt(c.tracks[elevation], t, spec.base[elevation] ?? 0);
  for (let i = 0; i < c.blocks.length; i++) {
    const block = c.blocks[i];
    const before = c.blocks[i - 1];
    if (!before) continue;
    const [a, b] = [before.to, block.from];
    if (c.keyed(plane, a + 2 * SAME_TIME, b - 2 * SAME_TIME)) continue;
    const poleA = atPole(at(a));
    const poleB = atPole(at(b));
    const planeA = valueAt(c.tracks[plane], a, 0);
    const planeB = valueAt(c.tracks[plane], b, 0);
    const path = block.arms === 'front' ? Math.PI / 2 : 0;
    let start = poleA ? path : planeA;
    let end = poleB ? path : planeB;
    if (block.arms === 'direct') {
      start = poleA && !poleB ? planeB : planeA;
      end = poleB ? start : planeB;
    }
    const bump = block.arms !== 'direct' && !poleA && !poleB ? path - (start + end) / 2 : 0;
    setPlane(c, plane, a, { next: start, bump });
    // a hold at a pole keeps the plane that the arm came with
    if (poleB) for (const t of [block.from, block.to]) setPlane(c, plane, t, { value: end });
  }
  jumps(c, shoulder, at, spec);
}

function setPlane(c: Collected, plane: number, t: number, change: { value?: number; next?: number; bump?: number }): void {
  const track = c.tracks[plane];
  const key = track.find((k) => Math.abs(k.t - t) <= SAME_TIME);
  if (!key) return;
  const value = change.value ?? key.value;
  const next = change.next ?? key.next;
  const bump = change.bump ?? key.bump;
  c.tracks[plane] = withKey(track, {
    t: key.t,
    value,
    kind: key.kind,
    said: key.said,
    ...(next !== undefined && Math.abs(next - value) > 1e-12 ? { next } : {}),
    ...(bump ? { bump } : {}),
  });
}

/** Checks every jump of the plane and gives the turn track its excess there. */
function jumps(c: Collected, s: ShoulderAngles, at: (t: number) => number, spec: ScheduleSpec): void {
  for (const key of c.tracks[s.plane]) {
    if (key.next === undefined) continue;
    const raised = at(key.t);
    const stopped = c.tracks[s.elevation].every((k) => Math.abs(k.t - key.t) > SAME_TIME || k.kind === 'stop');
    if (!atPole(raised) || !stopped || !resting(c.tracks[s.elevation], key.t))
      throw new ScheduleValueError(
        `${key.said}: jump of the shoulder plane`,
        `${((key.next - key.value) * 180) / Math.PI} deg at elevation ${(raised * 180) / Math.PI} deg`,
        'only where the elevation rests at 0 or 180 deg (a stop key)',
      );
    if (!atUp(raised)) continue;
    let excess = 2 * (key.next - key.value);
    excess -= turn * Math.trunc(excess / turn);
    if (Math.abs(excess) > Math.PI + 1e-9) excess -= turn * Math.sign(excess);
    if (Math.abs(excess) < 1e-12) continue;
    const now = valueAt(c.tracks[s.turn], key.t, spec.base[s.turn] ?? 0);
    c.tracks[s.turn] = withKey(c.tracks[s.turn], { t: key.t, value: now, next: now + excess, kind: 'stop', said: `the turn of the arm at ${key.said}` });
  }
}

/** True where the track has zero rate at t: outside its keys, at a stop key, or inside a hold. */
function resting(track: Track, t: number): boolean {
  if (track.length === 0 || t <= track[0].t || t >= track[track.length - 1].t) return true;
  if (track.some((k) => Math.abs(k.t - t) <= SAME_TIME && k.kind === 'stop')) return true;
  for (let i = 0; i + 1 < track.length; i++) if (track[i].t < t && t < track[i + 1].t) return track[i].value === track[i + 1].value;
  return false;
}
