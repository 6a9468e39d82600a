/** From values of inputs to the outcome of the flight: what every search calls, thousands of times. */

import type { Vec3 } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import type { FlightOptions } from '../flight/fly.ts';
import { resolveTime } from '../math/anchor.ts';
import { REV, turnedTo } from '../math/angles.ts';
import { calcFlightEnd, type FlightEnd } from '../measure/flight-end.ts';
import type { SkillTarget } from '../measure/target.ts';
import { turnSign } from '../measure/words.ts';
import { buildSkill } from '../skill/build-skill.ts';
import type { Contact } from '../skill/contact-room.ts';
import { cutFlight } from '../skill/cut-at-catch.ts';
import type { CatchOutcome } from '../skill/find-catch.ts';
import { type Flown, type Flyer, makeFlyer } from '../skill/flyer.ts';
import { calcHeldReach, type LandingJudge } from '../skill/held-landing.ts';
import type { LaunchedSkill } from '../skill/launch.ts';
import { launchChained } from '../skill/launch-chained.ts';
import { restart } from '../skill/restart.ts';
import type { Skill } from '../skill/skill.ts';
import type { BlockSpec, SkillSpec } from '../skill/skill-spec.ts';
import { type Input, putInputs } from './input.ts';

/** Which way counts as +: fixed for a search, so that a result stays smooth where it passes zero. */
export interface Sense {
  readonly somersault: 1 | -1;
  readonly twist: 1 | -1;
}

export interface Outcome {
  readonly end: FlightEnd;
  readonly sense: Sense;
  readonly h_Scm_W: Vec3;
  /** highest place of the mass centre above Y = 0, m */
  readonly height: number;
  /** s left at the end of the flight after the last shape, where one is held until touchdown, was reached */
  readonly held: number;
  /** somersault angle wanted at the end, counted as in `end`; NaN without a target */
  readonly wanted: number;
  /** where the forces of the landing would have to pass, m, of a flight that ends on its feet; computed when asked for */
  readonly reach: () => number | undefined;
  /** of a flight that is to end at a rail: of the farther hand at the catch, or at its nearest */
  readonly catch?: {
    /** m; NaN past the end of the rail */
    readonly gap: number;
    /** along the arms, towards the rail +, m/s */
    readonly closing: number;
    /** s */
    readonly time: number;
  };
}

/** How the flights of a search are flown; `contact` where the skill has a swing or a known contact. */
interface SearchOptions extends FlightOptions {
  readonly contact?: Contact | undefined;
}

export class Evaluator {
  readonly spec: SkillSpec;
  readonly inputs: readonly Input[];
  readonly sense: Sense;
  /** flights flown so far */
  flights = 0;
  private readonly flyer: Flyer;
  private readonly base: Skill;
  private readonly onlyTakeoff: boolean;

  private readonly contact: Contact | undefined;

  constructor(spec: SkillSpec, inputs: readonly Input[], { contact, ...options }: SearchOptions = {}, sense?: Sense) {
    this.contact = contact;
    this.spec = spec;
    this.inputs = inputs;
    this.flyer = makeFlyer(options);
    this.base = buildSkill(spec);
    this.onlyTakeoff = inputs.every((i) => i.level === 'takeoff');
    const now = launchChained(this.base, contact);
    this.sense = sense ?? senseOf(now, () => this.flyer.fly(now));
  }

  specAt(values: ArrayLike<number>): SkillSpec {
    return putInputs(this.spec, this.inputs, values);
  }

  skillAt(values: ArrayLike<number>): LaunchedSkill {
    const spec = this.specAt(values);
    const skill = this.onlyTakeoff ? restart(this.base, spec) : buildSkill(spec);
    return launchChained(skill, this.contact);
  }

  flightAt(values: ArrayLike<number>): Flown {
    this.flights++;
    return this.flyer.fly(this.skillAt(values));
  }

  /** Throws what the flight throws: keys out of order, no touchdown, a body that cannot be made. */
  outcomeAt(values: ArrayLike<number>): Outcome {
    return calcOutcome(this.flightAt(values), this.sense, this.spec.target, this.specAt(values).blocks);
  }
}

/** A flight that misses its rail is read where its hands are nearest to it, so that results stay smooth where it is caught. */
export function calcOutcome(
  flown: Flown,
  sense: Sense,
  target?: SkillTarget,
  blocks: readonly BlockSpec[] = [],
  judge?: LandingJudge,
): Outcome {
  const { met } = flown;
  const flight = met?.kind === 'missed' && met.moment.t > 0 ? cutFlight(flown, met.moment.t) : flown;
  const end = calcFlightEnd(flight);
  const { gravity, duration, p_WScm_W0, v_WScm_W0 } = flight;
  const at = (t: number): number => p_WScm_W0[1] + t * (v_WScm_W0[1] - (gravity * t) / 2);
  const top = gravity > 0 ? v_WScm_W0[1] / gravity : 0;
  return {
    end,
    sense,
    h_Scm_W: flight.h_Scm_W,
    height: Math.max(at(0), at(duration), top > 0 && top < duration ? at(top) : Number.NEGATIVE_INFINITY),
    held: met ? Number.POSITIVE_INFINITY : heldAfter(flight, blocks[blocks.length - 1]),
    wanted: target ? wantedEnd(end.somersault0, sense, target) : Number.NaN,
    reach: once(() => (met || end.isUndefined ? undefined : calcHeldReach(flight, end.twist, judge))),
    ...(met ? { catch: catchOf(met) } : {}),
  };
}

function catchOf({ kind, moment, ...rest }: CatchOutcome): NonNullable<Outcome['catch']> {
  const isBeside = kind === 'missed' && 'ways' in rest && rest.ways.includes('beside');
  return { gap: isBeside ? Number.NaN : moment.gap, closing: moment.along, time: moment.t };
}

function heldAfter({ duration, apex }: Flight, last: BlockSpec | undefined): number {
  if (last?.to.anchor !== 'touchdown' || last.from.anchor === 'touchdown') return Number.POSITIVE_INFINITY;
  return duration + last.to.s - resolveTime(last.from, { apex, touchdown: duration });
}

/** The landing angle plus the whole turns nearest to the stated somersaults, as the summary has it. */
function wantedEnd(start: number, sense: Sense, { somersaults, landingAngle }: SkillTarget): number {
  const near = start + sense.somersault * REV * somersaults;
  return turnedTo(landingAngle, near);
}

/** What may cost a landing is computed at the first call. */
function once<T>(compute: () => T): () => T {
  let known: { readonly value: T } | undefined;
  return () => {
    known ??= { value: compute() };
    return known.value;
  };
}

/** Of a flight that was flown already. */
export const outcomeOf = (skill: LaunchedSkill, flight: Flown): Outcome =>
  calcOutcome(
    flight,
    senseOf(skill, () => flight),
    skill.target,
  );

/** As the target says; else as the skill itself turns. */
export function senseOf({ target, takeoff }: LaunchedSkill, fly: () => Flight): Sense {
  const facing = Math.cos(takeoff.twist) < 0 ? -1 : 1;
  const somersault =
    target?.somersaultWord === 'backward' ? facing : target?.somersaultWord === 'forward' ? -facing : 0;
  const twist = target?.twistWord === 'left' ? 1 : target?.twistWord === 'right' ? -1 : 0;
  if (somersault && twist) return { somersault: somersault > 0 ? 1 : -1, twist };
  const flight = fly();
  const end = calcFlightEnd(flight);
  const done = end.somersault - end.somersault0;
  return {
    somersault: somersault > 0 ? 1 : somersault < 0 ? -1 : turnSign(flight.h_Scm_W[2], done),
    twist: twist || (end.twist - end.twist0 < 0 ? -1 : 1),
  };
}
