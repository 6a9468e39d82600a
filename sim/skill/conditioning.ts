/**
 * How sensitive a result is: twist to tilt at take-off, landing to angular momentum and to time. Central differences of quick flights
 * (error 1e-7 a step), with a step and with half of it: the derivative is that of the half step, and how much the other differs says whether
 * the result goes in proportion. Flown with the usual error too: what goes by its square shows there alone. Time is that of letting go, of a late hand, or of the one move in the air on which the landing depends
 * most; a schedule of keys alone is shifted as a whole. SI, radians. What could not be flown has no entry.
 */
import type { Flight } from '../flight/flight.ts';
import { RAD } from '../math/angles.ts';
import { calcFlightEnd } from '../measure/flight-end.ts';
import { findMoves, type MoveWord } from '../measure/move-words.ts';
import { turnSign } from '../measure/words.ts';
import type { ScheduleSpec, ShapeBlock } from '../schedule/schedule.ts';
import type { Contact } from './contact-room.ts';
import { flySkill } from './flyer.ts';
import { type LaunchedSkill, launch, relaunch } from './launch.ts';
import { NATIONAL_ERRORS } from './national-errors.ts';
import type { Skill } from './skill.ts';
import { MISS_WIDTHS } from './skill-verdict.ts';

/** takeoffTilt, momentum: at take-off; letGo, lateHand: on the bar; move: into one shape; moves: all of them. */
export type SensitiveTo = 'takeoffTilt' | 'momentum' | 'letGo' | 'lateHand' | 'move' | 'moves';

/** What a usual error comes to: under a third of 30 deg of twist or 5 deg at the landing, under it, beyond it. */
type Weight = 'slight' | 'shows' | 'decides';

export interface Sensitivity {
  readonly to: SensitiveTo;
  /** twist done, + to the left; or the somersault at the end, + further round */
  readonly of: 'twist' | 'landing';
  /** per rad of tilt, per whole of momentum, per s */
  readonly value: number;
  /** half step, and what the full one gives more (+) or less, as a share of the derivative */
  readonly step: number;
  readonly bend: number;
  /** the larger change of the result at a usual error to either side, rad; undefined where that could not be flown */
  readonly atError?: number;
  /** which is more than small changes promise */
  readonly outgrows?: boolean;
  readonly weight: Weight;
  /** of a move: when it starts, s from take-off, and what it does */
  readonly move?: { readonly t: number; readonly words: readonly MoveWord[] };
}

/** Half steps: 0.25 deg, 0.25 %, 0.25 ms. */
const STEPS: Readonly<Record<SensitiveTo, number>> = {
  takeoffTilt: 0.25 * RAD,
  momentum: 0.0025,
  letGo: 2.5e-4,
  lateHand: 2.5e-4,
  move: 2.5e-4,
  moves: 2.5e-4,
};
/** Error asked of a step: 1e-6 rad at the end, 2e-4 deg in a derivative by 1 ms. */
const TOLERANCE = 1e-7;

interface End {
  readonly twist: number;
  readonly landing: number;
}

/** One after the other: a few flights each, some 10 to 30 in all. */
export function calcConditioning(skill: Skill, contact?: Contact, known?: Flight): Sensitivity[] {
  const launched = launch(skill, contact);
  const flight = known ?? flySkill(launched);
  const turn = turnSign(flight.h_Scm_W[2], 0);
  const near = { touchdown: flight.duration };
  const endOf = (one: LaunchedSkill): End => {
    const end = calcFlightEnd(flySkill(one, { tolerance: TOLERANCE, near }));
    return { twist: end.twist - end.twist0, landing: turn * (end.somersault - end.somersault0) };
  };
  const ways = new Map<Sensitivity, (change: number) => LaunchedSkill>();
  const now = endOf(launched);
  // what goes by the square of an error shows at none of the small steps
  const changeAt = (
    error: number,
    of: Sensitivity['of'],
    at: (change: number) => LaunchedSkill,
  ): number | undefined => {
    try {
      const [more, less] = [error, -error].map((by) => Math.abs(endOf(at(by))[of] - now[of]));
      const change = Math.max(more, less);
      return Number.isFinite(change) ? change : undefined;
    } catch {
      return undefined;
    }
  };
  const differ = (
    to: SensitiveTo,
    of: Sensitivity['of'],
    at: (change: number) => LaunchedSkill,
    more: Pick<Sensitivity, 'move'> = {},
  ): Sensitivity | undefined => {
    const step = STEPS[to];
    try {
      const [half, full] = [step, 2 * step].map((h) => (endOf(at(h))[of] - endOf(at(-h))[of]) / (2 * h));
      if (!Number.isFinite(half)) return undefined;
      const one = { to, of, value: half, step, bend: bendOf(half, full), weight: weigh(to, of, half), ...more };
      ways.set(one, at);
      return one;
    } catch {
      return undefined;
    }
  };

  const own = { ...launched.takeoff, momentum: { kind: 'vector', h_Scm_W: flight.h_Scm_W } } as const;
  const h = flight.h_Scm_W;
  const found = [
    differ('takeoffTilt', 'twist', (a) => relaunch(launched, { takeoff: { ...own, tilt: own.tilt + a } })),
    differ('momentum', 'landing', (a) => {
      const k = 1 + a;
      return relaunch(launched, {
        takeoff: { ...own, momentum: { kind: 'vector', h_Scm_W: [k * h[0], k * h[1], k * h[2]] } },
      });
    }),
    ...onTheBar(skill, contact, differ),
    mostOf(launched.schedule.blocks.flatMap((_, i) => moveInto(launched, flight, i, differ))) ??
      (launched.schedule.keys.length > 0 &&
        differ('moves', 'landing', (a) => relaunch(launched, { schedule: later(launched.schedule, a) }))),
  ];
  return found
    .filter((one) => !!one)
    .map((one) => {
      const at = ways.get(one);
      const atError = at && changeAt(errorOf(one.to), one.of, at);
      if (atError === undefined) return one;
      const outgrows = atError > GROWN * Math.abs(one.value) * errorOf(one.to);
      return {
        ...{ ...one, atError, weight: weigh(one.to, one.of, one.value, atError) },
        ...(outgrows ? { outgrows } : {}),
      };
    });
}

type Differ = (
  to: SensitiveTo,
  of: Sensitivity['of'],
  at: (change: number) => LaunchedSkill,
  more?: Pick<Sensitivity, 'move'>,
) => Sensitivity | undefined;

/** What a usual error is held against: the width of a twist missed; what film reads of a straight body at the landing (our judgement). */
const WIDTHS = { twist: MISS_WIDTHS.twist, landing: 5 * RAD } as const;

/** A usual error comes to more than so many times its part of the derivative (our judgement). */
const GROWN = 2;

const errorOf = (to: SensitiveTo): number =>
  NATIONAL_ERRORS[to === 'letGo' || to === 'move' || to === 'moves' ? 'timing' : to];

function weigh(to: SensitiveTo, of: Sensitivity['of'], value: number, atError = 0): Weight {
  const error = Math.max(Math.abs(value) * errorOf(to), atError);
  return error < WIDTHS[of] / 3 ? 'slight' : error < WIDTHS[of] ? 'shows' : 'decides';
}

/** How far the two steps differ; what both find to be nothing does not bend. */
const bendOf = (half: number, full: number): number =>
  Math.abs(half) < NOTHING && Math.abs(full) < NOTHING ? 0 : full / half - 1;
/** rad per unit: what is left of flights to 1e-6 rad */
const NOTHING = 1e-2;

const mostOf = (list: readonly Sensitivity[]): Sensitivity | undefined =>
  list.reduce<Sensitivity | undefined>((a, b) => (a && Math.abs(a.value) >= Math.abs(b.value) ? a : b), undefined);

function onTheBar(skill: Skill, contact: Contact | undefined, differ: Differ): (Sensitivity | undefined)[] {
  const { start } = skill;
  if (start.kind !== 'swing') return [];
  const { swing } = start;
  const changed = (change: Partial<typeof swing>): LaunchedSkill =>
    launch({ ...skill, start: { kind: 'swing', swing: { ...swing, ...change } } }, contact);
  const late = swing.lateHand;
  return [
    differ('letGo', 'landing', (a) => changed({ late: swing.late + a })),
    late && late.s > 0
      ? differ('lateHand', 'twist', (a) => changed({ lateHand: { hand: late.hand, s: late.s + a } }))
      : undefined,
  ];
}

/** The move into block i a little later: it takes as long as before. None where it does not lie in the air. */
function moveInto(launched: LaunchedSkill, flight: Flight, i: number, differ: Differ): Sensitivity[] {
  const { blocks } = launched.schedule;
  const [before, into] = [blocks[i - 1], blocks[i]] as readonly (ShapeBlock | undefined)[];
  if (!before || !into) return [];
  const t = before.to.s + originOf(before.to.anchor, launched, flight);
  const end = into.from.s + originOf(into.from.anchor, launched, flight);
  if (end < 0 || t > flight.duration) return [];
  const angles = into.pose.flatMap((v, a) => (Math.abs(v - before.pose[a]) > RAD ? [a] : []));
  const words = findMoves(launched.body, angles, Float64Array.from(before.pose), Float64Array.from(into.pose));
  const shifted = (a: number): LaunchedSkill =>
    relaunch(launched, {
      schedule: {
        ...launched.schedule,
        blocks: blocks.map((b, k) =>
          k === i - 1 ? { ...b, to: shift(b.to, a) } : k === i ? { ...b, from: shift(b.from, a) } : b,
        ),
      },
    });
  const one = differ('move', 'landing', shifted, { move: { t, words } });
  return one ? [one] : [];
}

type Time = ShapeBlock['from'];
const shift = (time: Time, by: number): Time => ({ ...time, s: time.s + by });

const originOf = (anchor: Time['anchor'], { takeoff, gravity }: LaunchedSkill, flight: Flight): number =>
  anchor === 'touchdown' ? flight.duration : anchor === 'apex' && gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0;

const later = (schedule: ScheduleSpec, by: number): ScheduleSpec => ({
  ...schedule,
  keys: schedule.keys.map((k) => ({ ...k, at: shift(k.at, by) })),
});
