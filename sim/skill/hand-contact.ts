/**
 * Hands that stay on the shins or behind the knees while hips and knees move: what has to be added to the arms' scheduled
 * angles. Solved on a time grid, each instant from the one before; the sum is twice continuously differentiable and goes
 * over into the scheduled motion before and after. Depends on the schedule alone, so it is the same at every call.
 */

import type { Body } from '../body/body.ts';
import { resolveTime } from '../math/anchor.ts';
import type { FromTo } from '../math/from-to.ts';
import { follow } from '../motion/inverse-kinematics.ts';
import { getLimb } from '../motion/limb.ts';
import { ScheduleOrderError } from '../schedule/errors.ts';
import { makeHermiteTrack, type Node } from '../schedule/hermite-track.ts';
import type { AnchoredTime, AnchorTimes, Schedule } from '../schedule/schedule.ts';
import type { Track } from '../schedule/track.ts';
import { findPlace, type HoldKind, placeInRoot } from './hand-place.ts';

export interface HandContact {
  readonly hand: 'both' | 'L' | 'R';
  readonly on: HoldKind;
  readonly from: AnchoredTime;
  readonly to: AnchoredTime;
}

/** Where a hand is farthest from the place it should hold. */
export interface HandGap {
  /** index into the skill's contacts */
  readonly contact: number;
  readonly side: 'L' | 'R';
  readonly gap: number; // m
  readonly t: number;
}

interface SolvedContacts {
  /** to be added to the tracks of these angles */
  readonly added: ReadonlyMap<number, readonly Track[]>;
  readonly gaps: readonly HandGap[];
}

const GRID = 240; // Hz
/** Grid steps from one node of the added tracks to the next: between them one quintic, which the flight tabulates easily. */
const STRIDE = 8;
/** Time in which an arm goes from its scheduled motion into a contact, and out of it, s; less where the schedule has less. */
export const HAND_LEAD = 0.2;
const SHORTEST_LEAD = 0.04;
/** grid steps computed on either side of a contact, for the derivatives at its ends */
const PAD = 2;

interface Hold extends FromTo {
  readonly contact: number;
  readonly on: HoldKind;
}

/** `base`: the schedule without contacts. */
export function solveContacts(
  body: Body,
  base: Schedule,
  contacts: readonly HandContact[],
  anchors: AnchorTimes,
): SolvedContacts {
  const added = new Map<number, Track[]>();
  const gaps: HandGap[] = [];
  const solvedLeft = new Map<number, Solution>();
  for (const side of ['L', 'R'] as const) {
    const holds = placeHolds(contacts, side, anchors);
    if (holds.length === 0) continue;
    const limb = getLimb(body, `hand${side}`);
    const angles = [limb.shoulder?.plane, limb.shoulder?.elevation, ...limb.angles].filter((a) => a !== undefined);
    const solutions = holds.map((hold) => {
      const grid = sampleBase(body, base, hold);
      const left = solvedLeft.get(hold.contact);
      const solution = left && isMirrored(body, grid) ? left : getSolution(body, grid, side, hold.on);
      if (side === 'L') solvedLeft.set(hold.contact, solution);
      gaps.push({ contact: hold.contact, side, gap: solution.gap, t: hold.from + solution.row * grid.h });
      return { hold, grid, solution };
    });
    angles.forEach((angle, column) => {
      const nodes: Node[] = [];
      solutions.forEach(({ hold, grid, solution }, i) => {
        const room = i === 0 ? Number.POSITIVE_INFINITY : hold.from - holds[i - 1].to;
        const lead = leadBefore(base, hold.from);
        if (i > 0 && room > lead + SHORTEST_LEAD) {
          const out = Math.min(leadAfter(base, holds[i - 1].to), room - lead);
          nodes.push(rest(holds[i - 1].to + out));
        }
        if (room > lead) nodes.push(rest(hold.from - lead));
        nodes.push(...nodesOf(grid, solution, column, angles.length, hold.from));
      });
      const last = holds[holds.length - 1].to;
      nodes.push(rest(last + leadAfter(base, last)));
      added.set(angle, [makeHermiteTrack(nodes)]);
    });
  }
  return { added, gaps };
}

const rest = (t: number): Node => ({ t, y: 0, d: 0, dd: 0 });

function placeHolds(contacts: readonly HandContact[], side: 'L' | 'R', anchors: AnchorTimes): Hold[] {
  const holds = contacts.flatMap((c, contact): Hold[] =>
    c.hand === 'both' || c.hand === side
      ? [{ contact, from: resolveTime(c.from, anchors), to: resolveTime(c.to, anchors), on: c.on }]
      : [],
  );
  holds.forEach(({ contact, from, to }, i) => {
    const what = `hand contact ${contact + 1}`;
    if (!(to - from >= 1 / GRID))
      throw new ScheduleOrderError(
        { what: `the start of ${what}`, time: from },
        { what: `the end of ${what}`, time: to },
        `a hand contact lasts at least 1/${GRID} s`,
      );
    const former = holds[i - 1];
    if (former && from < former.to + SHORTEST_LEAD)
      throw new ScheduleOrderError(
        { what: `the end of hand contact ${former.contact + 1}`, time: former.to },
        { what: `the start of ${what}`, time: from },
        `contacts of one hand follow each other in time as listed, at least ${SHORTEST_LEAD} s apart`,
      );
  });
  return holds;
}

/** From the last break of the schedule before, where the arm may pass a pole, but not too short a time. */
function leadBefore(base: Schedule, t: number): number {
  const last = base.breaks.filter((b) => b < t - SHORTEST_LEAD).at(-1) ?? Number.NEGATIVE_INFINITY;
  return Math.min(HAND_LEAD, t - last);
}
function leadAfter(base: Schedule, t: number): number {
  const next = base.breaks.find((b) => b > t + SHORTEST_LEAD) ?? Number.POSITIVE_INFINITY;
  return Math.min(HAND_LEAD, next - t);
}

interface BaseGrid {
  readonly h: number;
  readonly rows: number;
  /** (rows x Body.angles), PAD rows before the contact and after it */
  readonly angles: Float64Array;
}

function sampleBase(body: Body, base: Schedule, { from, to }: Hold): BaseGrid {
  const n = STRIDE * Math.ceil(((to - from) * GRID) / STRIDE - 1e-9);
  const h = (to - from) / n;
  const rows = n + 1 + 2 * PAD;
  const width = body.angles.length;
  const angles = new Float64Array(rows * width);
  const row = new Float64Array(width);
  const rates = new Float64Array(width);
  for (let i = 0; i < rows; i++) {
    base.anglesInto(from + (i - PAD) * h, row, rates);
    angles.set(row, i * width);
  }
  return { h, rows, angles };
}

/** Both sides do the same throughout, so that one hand's answer is the other's. */
function isMirrored(body: Body, { angles, rows }: BaseGrid): boolean {
  const width = body.angles.length;
  return body.angles.every(({ mirror, mirrorSign }, a) => {
    for (let i = 0; i < rows; i++)
      if (angles[i * width + mirror] !== mirrorSign * angles[i * width + a] && angles[i * width + a] !== 0)
        return false;
    return true;
  });
}

interface Solution {
  /** (rows x own angles) what is added to the schedule */
  readonly offset: Float64Array;
  readonly gap: number;
  /** grid step, from the start of the contact, at which the gap is largest */
  readonly row: number;
}

interface Kept {
  readonly side: string;
  readonly on: HoldKind;
  readonly grid: BaseGrid;
  readonly solution: Solution;
}
/** Answers kept by all they depend on: a search for the touchdown, or a drag elsewhere, finds them again. */
const kept = new WeakMap<Body, Kept[]>();
const KEPT = 12;

function getSolution(body: Body, grid: BaseGrid, side: 'L' | 'R', on: HoldKind): Solution {
  const list = kept.get(body) ?? [];
  kept.set(body, list);
  const known = list.find((k) => k.side === side && k.on === on && sameGrid(k.grid, grid));
  if (known) return known.solution;
  const solution = solve(body, grid, side, on);
  list.unshift({ side, on, grid, solution });
  if (list.length > KEPT) list.pop();
  return solution;
}

function sameGrid(a: BaseGrid, b: BaseGrid): boolean {
  // the step sets the scale of derivatives only, which are taken from the offsets with the grid's own step
  return a.rows === b.rows && a.angles.every((v, i) => v === b.angles[i]);
}

function solve(body: Body, grid: BaseGrid, side: 'L' | 'R', on: HoldKind): Solution {
  const { rows, angles: base } = grid;
  const limb = getLimb(body, `hand${side}`);
  const own = [limb.shoulder?.plane, limb.shoulder?.elevation, ...limb.angles].filter((a) => a !== undefined);
  const width = body.angles.length;
  const rowAt = (i: number): Float64Array => base.subarray(i * width, (i + 1) * width);
  const place = findPlace(body, rowAt(PAD), side, on);
  const offset = new Float64Array(rows * own.length);
  let gap = 0;
  let row = 0;
  const walk = (from: number, to: number, start: ArrayLike<number>): number[] => {
    let before = Array.from(start);
    let first = before;
    for (let i = from; from <= to ? i <= to : i >= to; i += from <= to ? 1 : -1) {
      const last = i - Math.sign(to - from);
      if (i !== from && rowAt(i).every((v, a) => v === base[last * width + a])) {
        // a body at rest: the arm stays as it is
        offset.copyWithin(i * own.length, last * own.length, (last + 1) * own.length);
        continue;
      }
      const now = Array.from(rowAt(i));
      for (const a of own) now[a] = before[a];
      const wanted = placeInRoot(body, now, side, place);
      const found = follow(limb, now, wanted);
      own.forEach((a, k) => {
        offset[i * own.length + k] = found.angles[a] - base[i * width + a];
      });
      if (found.distance > gap && i >= PAD && i < rows - PAD) [gap, row] = [found.distance, i - PAD];
      before = found.angles;
      if (i === from) first = before;
    }
    return first;
  };
  const first = walk(PAD, rows - 1, rowAt(PAD));
  walk(PAD - 1, 0, first);
  return { offset, gap, row };
}

/** One angle's offset along the contact, derivatives by differences of fourth order. */
function nodesOf(grid: BaseGrid, { offset }: Solution, column: number, width: number, from: number): Node[] {
  const { h, rows } = grid;
  const f = (i: number): number => offset[i * width + column];
  const nodes: Node[] = [];
  for (let i = PAD; i < rows - PAD; i += STRIDE)
    nodes.push({
      t: from + (i - PAD) * h,
      y: f(i),
      d: (f(i - 2) - 8 * f(i - 1) + 8 * f(i + 1) - f(i + 2)) / (12 * h),
      dd: (-f(i - 2) + 16 * f(i - 1) - 30 * f(i) + 16 * f(i + 1) - f(i + 2)) / (12 * h * h),
    });
  return nodes;
}
