/**
 * The plane of a shoulder, which means nothing at elevation 0 and 180 (docs/schedule.md, "Arm paths").
 *   R = Ry(plane) Rx(-elevation) Ry(turn - plane);  Rx(-180) Ry(a) = Ry(-a) Rx(-180)
 * so at elevation 0 R = Ry(turn) whatever the plane, and at 180 R = Rx(-180) Ry(turn - 2 plane): a jump of plane by d
 * there leaves the arm where it is if turn jumps by 2 d. The left arm has the opposite signs throughout, so the same
 * numbers serve both sides.
 */

import { type Collected, degrees, nearestPole, type PlacedKey } from './collect.ts';
import { ScheduleValueError } from './errors.ts';
import type { ShoulderIndices } from './jointed-body.ts';
import { withKeys } from './knots.ts';
import { type Knot, makeTrack, makeUnwinding, restingValue, type Track } from './track.ts';

interface ArmTracks {
  readonly plane: Track;
  /** jumps of turn at elevation 180 with what unwinds them, to be added to the track of turn */
  readonly turnExcess: readonly Track[];
}

const PATH_PLANE = { front: Math.PI / 2, side: 0 } as const;

/** `elevation`, `turn`: merged knots of these angles; an angle that is sampled has none, and then no poles. */
export function makeArmTracks(
  collected: Collected,
  shoulder: ShoulderIndices,
  basePlane: number,
  elevation: readonly Knot[] | undefined,
  turn: readonly Knot[] | undefined,
): ArmTracks {
  const own = collected.keys[shoulder.plane];
  const poleAt = (t: number): number | undefined => {
    const value = elevation && restingValue(elevation, t);
    return value === undefined ? undefined : nearestPole(value);
  };
  const { knots: fromBlocks, bumps } = layBlocks(collected, shoulder, elevation, poleAt);
  const knots = withKeys(fromBlocks, own, basePlane);
  const turnExcess: Track[] = [];
  for (const k of knots) {
    if (k.arrive === k.depart) continue;
    const pole = poleAt(k.t);
    if (pole === undefined) throw offPole(own, k);
    const excess = shortestTurn(2 * (k.depart - k.arrive));
    if (pole % 2 === 0 || excess === 0) continue;
    const later = (list: readonly Knot[] | undefined): number =>
      list?.find((x) => x.t > k.t)?.t ?? Number.POSITIVE_INFINITY;
    const to = Math.min(later(elevation), later(turn));
    turnExcess.push(makeUnwinding(k.t, Number.isFinite(to) ? to : undefined, excess));
  }
  const bumpAt = new Map<number, number>();
  knots.forEach((k, i) => {
    const bump = bumps.get(k.t);
    if (bump !== undefined) bumpAt.set(i, bump);
  });
  return { plane: makeTrack(knots, bumpAt), turnExcess };
}

/** Plane at the edges of the blocks, by the arms' path into each; and bumps by the time of the knot they start at. */
function layBlocks(
  { blocks, keys }: Collected,
  shoulder: ShoulderIndices,
  elevation: readonly Knot[] | undefined,
  poleAt: (t: number) => number | undefined,
): { knots: Knot[]; bumps: Map<number, number> } {
  const own = keys[shoulder.plane];
  const knots: Knot[] = [];
  const bumps = new Map<number, number>();
  const ownAt = (t: number): PlacedKey | undefined => own.find((k) => k.t === t);
  let plane = blocks[0]?.pose[shoulder.plane] ?? 0;
  blocks.forEach((block, i) => {
    const former = blocks[i - 1];
    const keyedFrom = ownAt(block.from);
    let hold = block.pose[shoulder.plane];
    if (!former) hold = keyedFrom ? (keyedFrom.next ?? keyedFrom.value) : hold;
    else if (block.from === former.to) hold = plane;
    else {
      const inside = own.filter((k) => k.t > former.to && k.t < block.from);
      const poleA = poleAt(former.to);
      const poleB = poleAt(block.from);
      const still = elevation !== undefined && holdsBetween(elevation, former.to, block.from);
      const keyedTo = ownAt(former.to);
      const leave = keyedTo ? keyedTo.value : plane;
      let start = keyedTo ? (keyedTo.next ?? keyedTo.value) : plane;
      let end = hold;
      if (inside.length > 0) {
        // a plane keyed inside the move takes the place of the path
        const last = inside[inside.length - 1];
        if (poleA !== undefined && !keyedTo) start = inside[0].value;
        if (poleB !== undefined) end = last.next ?? last.value;
      } else if (poleA !== undefined && poleB !== undefined && (still || block.arms === 'direct')) {
        end = start;
      } else if (block.arms === 'direct') {
        if (poleA !== undefined && !keyedTo) start = end;
        if (poleB !== undefined) end = start;
      } else {
        const path = PATH_PLANE[block.arms];
        if (poleA !== undefined && !keyedTo) start = path;
        if (poleB !== undefined) end = path;
      }
      if (keyedFrom) end = keyedFrom.value;
      hold = keyedFrom ? (keyedFrom.next ?? keyedFrom.value) : end;
      if (inside.length === 0 && block.arms !== 'direct' && poleA === undefined && poleB === undefined)
        bumps.set(former.to, PATH_PLANE[block.arms] - (start + end) / 2);
      put(knots, former.to, leave, start);
      put(knots, block.from, end, hold);
    }
    if (!former) put(knots, block.from, hold, hold);
    plane = hold;
    // at a pole the plane carries over from whatever was keyed last
    const during = own.filter((k) => k.t > block.from && k.t < block.to);
    if (during.length > 0 && poleAt(block.to) !== undefined) {
      const last = during[during.length - 1];
      plane = last.next ?? last.value;
    }
    put(knots, block.to, plane, plane);
  });
  return { knots, bumps };
}

/** Appends a knot, or lets the last one at the same time depart with another value. */
function put(knots: Knot[], t: number, arrive: number, depart: number): void {
  const last = knots[knots.length - 1];
  if (last?.t === t) knots[knots.length - 1] = { t, arrive: last.arrive, depart, stop: true };
  else knots.push({ t, arrive, depart, stop: true });
}

function holdsBetween(knots: readonly Knot[], from: number, to: number): boolean {
  const value = restingValue(knots, from);
  return value !== undefined && knots.every((k) => k.t <= from || k.t > to || k.arrive === value);
}

/** The turn by which to unwind: whole turns are no turn at all. */
function shortestTurn(angle: number): number {
  const whole = 2 * Math.PI;
  const rest = angle - whole * Math.round(angle / whole);
  if (Math.abs(rest) < 1e-12) return 0;
  // half a turn either way: the way the plane went
  return Math.PI - Math.abs(rest) < 1e-9 ? Math.sign(angle) * Math.abs(rest) : rest;
}

function offPole(own: readonly PlacedKey[], knot: Knot): ScheduleValueError {
  const what = own.find((k) => k.t === knot.t)?.what() ?? 'the plane of a shoulder';
  return new ScheduleValueError(
    `next value of ${what}`,
    degrees(knot.depart),
    'a jump of plane only where elevation rests at 0 or 180 deg, by a stop key there or a hold',
  );
}
