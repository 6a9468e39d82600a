/**
 * One skill done in two ways that differ in one thing: arms wide against arms in, a tight tuck against an open one, hips bent against straight. Take-off,
 * angular momentum, times, the throw that starts a twist and the shape of the landing stay; hands on the legs let go. Definitions: docs/twist-and-shape.md.
 */
import { RAD, REV } from '../math/angles.ts';
import type { FromTo } from '../math/from-to.ts';
import type { Frames } from '../measure/frames.ts';
import type { AnchoredTime } from '../schedule/schedule.ts';
import { changeShape, type FlownSpec, heldIn } from './change-shape.ts';
import {
  armAngles,
  bentHips,
  type ChangeKind,
  isOneUp,
  isThrown,
  legAngles,
  openTuck,
  otherArms,
  type ShapeWay,
  straightHips,
  wayOfArms,
  wayOfLegs,
} from './change-ways.ts';
import { HAND_LEAD } from './hand-contact.ts';
import { edgesOf, findHeld, type HeldStretch, poseAt, type Seconds, secondsOf } from './held-stretch.ts';
import type { SkillSpec } from './skill-spec.ts';

/** What cannot be asked of a skill, and why. */
type NoChange =
  | 'noShoulders'
  | 'noLegs'
  /** arms, or legs, rest in no shape between take-off and landing for long enough */
  | 'notHeld'
  | 'noTurn'
  | 'noSomersault'
  | 'noTuck'
  /** it is the tuck that is opened */
  | 'tucked'
  /** it is open already */
  | 'open'
  /** the arms belong to the tuck or the pike */
  | 'onLegs'
  /** measured angles are not taken apart */
  | 'measured';

export interface OneChange {
  readonly kind: ChangeKind;
  /** what turns faster or slower by it */
  readonly turn: 'twist' | 'somersault';
  readonly own: ShapeWay;
  readonly other: ShapeWay;
  /** s, while both are held */
  readonly held: FromTo;
  /** up to here both are moved alike, s */
  readonly begins: number;
  /** one arm went another way before */
  readonly hasThrow: boolean;
  readonly spec: SkillSpec;
}
export type ChangeOffer = OneChange | { readonly kind: ChangeKind; readonly reason: NoChange };

/** Less is no turn to compare, rev. */
const LEAST_TURN = 0.2;
/** s in which arms spread once they are wrapped, and hips bend; of a short stretch at most that share. */
const SPREAD = 0.15;
const BEND = 0.25;
const MOST_SHARE = 0.45;
/** A wrap has to last so long to be spread and held, s; a shape of take-off or landing to be asked about at all. */
const LEAST_WRAP = 0.2;
const LEAST_AT_ENDS = 0.35;
/** Around a shape that is held for no time, s. */
const AROUND = 0.05;
/** Instants at which arms are looked at for a throw. */
const SAMPLES = 24;

interface Asked extends FlownSpec {
  readonly frames: Frames;
}

/** In the order in which they are asked: what a coach would ask of the skill first. */
export function offerChanges(asked: Asked): ChangeOffer[] {
  const arms = changeOfArms(asked);
  const legs = [changeOfTuck(asked), changeOfHips(asked)];
  return 'reason' in arms || arms.turn === 'twist' ? [arms, ...legs] : [...legs, arms];
}

function changeOfArms(asked: Asked): ChangeOffer {
  const { flight, frames } = asked;
  const { body } = flight;
  const refused = (reason: NoChange): ChangeOffer => ({ kind: 'arms', reason });
  if (body.shoulders.length === 0) return refused('noShoulders');
  const turn = isTurned(frames.twist, LEAST_TURN) ? 'twist' : 'somersault';
  if (!isTurned(frames[turn], LEAST_TURN)) return refused('noTurn');
  const angles = armAngles(body);
  if (isMeasured(asked, angles)) return refused('measured');
  const all = findHeld(asked.skill, flight, angles);
  const held = mostTurned(
    asked,
    all.filter((h) => !isOneUp(body, h.pose) || h.to - h.from >= LEAST_WRAP),
    turn,
    (h) => (isOneUp(body, h.pose) ? 0.5 : 1),
  );
  if (!held) return refused('notHeld');
  const own = wayOfArms(body, held.pose);
  if (own === 'onLegs') return refused('onLegs');
  const { way, values } = otherArms(body, own);
  const left = leftAt(asked, all, held, angles);
  const long = held.to - held.from;
  const soft = Math.min(SPREAD, MOST_SHARE * long);
  // the throw has to be finished before the arms spread: from one up and one down straight to level they would take the tilt back out
  const isAfterThrow = own === 'oneUp' || isThrownBetween(asked, Math.max(0, left), held.from);
  const into = left < 0 || (isAfterThrow && long >= LEAST_WRAP) ? soft : 0;
  const back = own === 'oneUp' || held.to >= flight.duration ? soft : 0;
  return make(asked, { kind: 'arms', turn, own, other: way, held, values, into, back, left });
}

function changeOfTuck(asked: Asked): ChangeOffer {
  const found = heldLegs(asked, 'tuck', 'tight');
  if ('reason' in found) return found;
  const { held, left } = found;
  const values = openTuck(asked.flight.body, held.pose);
  if (!values) return { kind: 'tuck', reason: 'open' };
  return make(asked, { kind: 'tuck', turn: 'somersault', own: 'tight', other: 'open', held, values, left });
}

function changeOfHips(asked: Asked): ChangeOffer {
  const { body } = asked.flight;
  const piked = heldLegs(asked, 'hips', 'bent');
  if (!('reason' in piked)) {
    const values = straightHips(body);
    return make(asked, { ...piked, kind: 'hips', turn: 'somersault', own: 'bent', other: 'straight', values });
  }
  if (piked.reason !== 'noTuck') return piked;
  const refused = (reason: NoChange): ChangeOffer => ({ kind: 'hips', reason });
  if (!('reason' in heldLegs(asked, 'tuck', 'tight'))) return refused('tucked');
  const held = longestStraight(asked);
  const long = held ? held.to - held.from : 0;
  if (!held || long < LEAST_AT_ENDS) return refused('notHeld');
  const soft = Math.min(BEND, (2 / 3) * MOST_SHARE * long);
  const bends = { values: bentHips(body), into: soft, back: soft, left: held.from };
  return make(asked, { kind: 'hips', turn: 'somersault', own: 'straight', other: 'bent', held, ...bends });
}

function heldLegs(
  asked: Asked,
  kind: 'tuck' | 'hips',
  way: 'tight' | 'bent',
): { held: HeldStretch; left: number } | { kind: 'tuck' | 'hips'; reason: NoChange } {
  const { flight, frames } = asked;
  const angles = legAngles(flight.body);
  if (wayOfLegs(flight.body, poseAt(flight, 0)) === undefined && angles.size === 0) return { kind, reason: 'noLegs' };
  if (!isTurned(frames.somersault, LEAST_TURN)) return { kind, reason: 'noSomersault' };
  if (isMeasured(asked, angles)) return { kind, reason: 'measured' };
  const all = findHeld(asked.skill, flight, angles);
  const held = mostTurned(
    asked,
    all.filter((h) => wayOfLegs(flight.body, h.pose) === way),
    'somersault',
  );
  return held ? { held, left: leftAt(asked, all, held, angles) } : { kind, reason: 'noTuck' };
}

/** From one edge of a shape to another, with hips and knees about straight all through: they need not rest. */
function longestStraight({ skill, flight }: Asked): HeldStretch | undefined {
  const angles = legAngles(flight.body);
  const edges = edgesOf(skill, flight, angles).filter((t) => isAtRest(flight, angles, t));
  const isStraight = (t: number): boolean => wayOfLegs(flight.body, poseAt(flight, t)) === 'straight';
  let best: HeldStretch | undefined;
  for (let i = 0; i < edges.length; i++) {
    let k = i;
    while (k + 1 < edges.length && [edges[k], (edges[k] + edges[k + 1]) / 2, edges[k + 1]].every(isStraight)) k++;
    const [from, to] = [edges[i], edges[k]];
    if (to - from > (best ? best.to - best.from : 0)) best = { from, to, pose: poseAt(flight, (from + to) / 2) };
    i = k;
  }
  return best;
}

type Chosen = Omit<OneChange, 'spec' | 'held' | 'begins' | 'hasThrow'> & {
  readonly held: HeldStretch;
  readonly values: ReadonlyMap<number, number>;
  /** s at which the shape before is left */
  readonly left: number;
  readonly into?: number;
  readonly back?: number;
};

function make(asked: Asked, { held, values, left, into: asks, back = 0, ...said }: Chosen): OneChange {
  const { spec, skill, flight } = asked;
  // a shape of the take-off is left after it
  const into = asks ?? (held.from > 0 ? 0 : Math.min(BEND, MOST_SHARE * (held.to - held.from)));
  const at = secondsOf(skill, flight);
  const changed = changeShape({ spec, skill, flight, held, values, into, back });
  const begins = into > 0 ? held.from : Math.max(0, left);
  const contacts = spec.contacts?.filter((c) => at(c.to) <= begins || at(c.from) >= held.to);
  const free = atTimesFlown({ ...withStatedMomentum(asked), ...changed, ...(contacts ? { contacts } : {}) }, at);
  const letGo = (spec.contacts ?? []).filter((c) => !contacts?.includes(c)).map((c) => at(c.from) - HAND_LEAD);
  return {
    ...said,
    held: heldIn({ held, into, back }),
    begins: Math.max(0, Math.min(begins, ...letGo)),
    hasThrow: isThrownBetween(asked, 0, held.from),
    spec: into === 0 && left < 0 ? startAsFlown(free, asked, values) : free,
  };
}

/** What counts from touchdown is done when it was done: the other way lands at another time, and its moves do not wait for it. */
function atTimesFlown(spec: SkillSpec, at: Seconds): SkillSpec {
  const fixed = (time: AnchoredTime): AnchoredTime =>
    time.anchor === 'touchdown' ? { anchor: 'takeoff', s: at(time) } : time;
  // a last shape may begin only after this touchdown: the body is on its way to it
  const isLate = (from: AnchoredTime, to: AnchoredTime): boolean => at(to) < at(from);
  const both = <T extends { from: AnchoredTime; to: AnchoredTime }>(one: T): T => {
    const [from, to] = [fixed(one.from), fixed(one.to)];
    return { ...one, from, to: isLate(from, to) ? from : to };
  };
  return {
    ...spec,
    blocks: spec.blocks.map(both),
    keys: spec.keys.map((k) => ({ ...k, at: fixed(k.at) })),
    ...(spec.contacts ? { contacts: spec.contacts.map(both) } : {}),
  };
}

/** Rates at take-off are those of other limbs: what they made of the momentum is kept. */
function withStatedMomentum({ spec, flight }: Asked): SkillSpec {
  const { start } = spec;
  if (start.kind !== 'stated' || start.takeoff.momentum.kind !== 'rates') return spec;
  return {
    ...spec,
    start: { ...start, takeoff: { ...start.takeoff, momentum: { kind: 'vector', h_Scm_W: flight.h_Scm_W } } },
  };
}

/** Joints that are under way at take-off pass through the same angles there. */
function startAsFlown(spec: SkillSpec, { skill, flight }: Asked, values: ReadonlyMap<number, number>): SkillSpec {
  const pose = poseAt(flight, 0);
  const at = secondsOf(skill, flight);
  const keys = [...values.keys()].map((a) => ({
    angle: flight.body.angles[a].name,
    at: { anchor: 'takeoff' as const, s: 0 },
    value: pose[a],
    kind: 'pass' as const,
  }));
  const isBefore = (k: SkillSpec['keys'][number]): boolean => at(k.at) < 0;
  return { ...spec, keys: [...spec.keys.filter(isBefore), ...keys, ...spec.keys.filter((k) => !isBefore(k))] };
}

const isMeasured = ({ skill }: Asked, angles: ReadonlySet<number>): boolean =>
  skill.schedule.sampled.some((s) => angles.has(s.angle));

/** When the shape before this one is left, s; before take-off where the joints are on their way there, or in it, as the flight begins. */
function leftAt({ flight }: Asked, all: readonly HeldStretch[], held: HeldStretch, of: ReadonlySet<number>): number {
  if (held.from <= 0) return Number.NEGATIVE_INFINITY;
  const before = all.filter((h) => h.to < held.from).at(-1);
  if (before) return before.to;
  return isAtRest(flight, of, 0) ? 0 : Number.NEGATIVE_INFINITY;
}

function isAtRest({ schedule, body }: Asked['flight'], of: ReadonlySet<number>, t: number): boolean {
  const rates = new Float64Array(body.angles.length);
  schedule.anglesInto(t, new Float64Array(rates.length), rates);
  return [...of].every((a) => Math.abs(rates[a]) < AT_REST);
}
/** rad/s */
const AT_REST = 1e-6;

function isThrownBetween({ flight }: Asked, from: number, to: number): boolean {
  for (let i = 0; i <= SAMPLES; i++)
    if (isThrown(flight.body, poseAt(flight, from + (i / SAMPLES) * (to - from)))) return true;
  return false;
}

function isTurned(angle: Float64Array, least: number): boolean {
  const known = angle.filter(Number.isFinite);
  return known.length > 1 && Math.abs(known[known.length - 1] - known[0]) >= least * REV;
}

/** The stretch in which most is turned; those of take-off and landing count half, and only where they last. */
function mostTurned(
  { flight: { duration: T }, frames }: Asked,
  all: readonly HeldStretch[],
  turn: 'twist' | 'somersault',
  weigh: (held: HeldStretch) => number = () => 1,
): HeldStretch | undefined {
  const angle = frames[turn];
  let best: { held: HeldStretch; turned: number } | undefined;
  for (const held of all) {
    const isAtEnd = held.from <= 0 || held.to >= T;
    if (isAtEnd && held.to - held.from < LEAST_AT_ENDS) continue;
    const rows = rowsIn(frames, held.from - AROUND, held.to + AROUND);
    const done = rows.length > 1 ? Math.abs(angle[rows[rows.length - 1]] - angle[rows[0]]) : 0;
    const turned = done * weigh(held) * (isAtEnd ? 0.5 : 1);
    if (turned > LEAST_DONE && turned > (best?.turned ?? 0)) best = { held, turned };
  }
  return best?.held;
}
/** rad; NaN, where the turn is not defined, is more than nothing to none */
const LEAST_DONE = 1 * RAD;

function rowsIn({ t, n }: Frames, from: number, to: number): number[] {
  const rows: number[] = [];
  for (let i = 0; i < n; i++) if (t[i] >= from && t[i] <= to) rows.push(i);
  return rows;
}
