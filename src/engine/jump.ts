/**
 * Take-offs as a coach states them, answered from real flights: which upward speed gives a time in the air, which momentum a turning rate, and
 * what has to be written so that the angular momentum stays, or what an athlete takes along into another body.
 */
import {
  calcFrames,
  FieldError,
  type FileTakeoff,
  type Flight,
  flySkill,
  isOfFlight,
  type LaunchedSkill,
  oneStraight,
  relaunch,
  type SkillFile,
  straightMomentum,
  type TakeoffSpec,
  upForAirTime,
} from '../../sim/index.ts';
import { REV } from '../../sim/math/angles.ts';
import { flightOf } from '../../sim/math/phases.ts';
import type { FlightResult } from './result.ts';

type Momentum = NonNullable<FileTakeoff['momentum']>;
/** What stays of a rotation when somebody else flies. */
export type KeptTurn = 'straight' | 'momentum';
/** How a rotation is typed: kg m2/s, straight somersaults, rev/s at take-off; each + backward. */
type TurnBy = 'momentum' | 'straight' | 'rate';

export interface Jumping {
  /** an error that says that one flight cannot be, and is no fault of the program */
  isOfFlight(error: unknown): boolean;
  /** the upward speed of a time in the air, s; the angular momentum stays. Throws a FieldError that says which times there are */
  upFor(from: FlightResult, airTime: number): number;
  /** the momentum that `edited`, the file of `from` with another speed, height or gravity, has to state for it to stay */
  keepMomentum(from: FlightResult, edited: SkillFile): FileTakeoff;
  /** the momentum that is typed one way or another, in the file's own kind */
  turnBy(from: FlightResult, by: TurnBy, value: number): Momentum;
  /** `edited`, the file of `from` with another athlete, states this to be as long in the air and to keep its turn */
  carryOver(from: FlightResult, edited: SkillFile, keep: KeptTurn): FileTakeoff;
}

/** As many digits as a file keeps (sim/files/tidy.ts). */
const tidy = (x: number): number => Math.round(x * 1e9) / 1e9;

type Parts = Pick<LaunchedSkill, 'body' | 'end' | 'gravity'>;

const oneOf = ({ body, end, gravity }: Parts, y0: number, up: number): number | undefined =>
  oneStraight(() => straightMomentum(body, end, gravity, y0, up));

/** `isHeavy`: no flights of it are tried in the page */
export function makeJumping(
  launchFile: (file: SkillFile) => LaunchedSkill,
  isHeavy: (file: SkillFile) => boolean = () => false,
): Jumping {
  const keepMomentum = (from: FlightResult, edited: SkillFile): FileTakeoff => {
    const skill = launchFile(edited);
    if (skill.takeoff.momentum.kind !== 'straight') return {};
    const y0 = from.flight.p_WScm_W0[1] + skill.takeoff.height.y - from.skill.takeoff.height.y;
    return { momentum: inStraight(skill, from.flight.h_Scm_W[2], y0, skill.takeoff.v_WScm_W[1]) };
  };
  return {
    isOfFlight,
    keepMomentum,
    upFor: ({ file, skill, flight }, airTime) => {
      if (isHeavy(file))
        throw new FieldError('air time', airTime, 'the speed up typed: this skill is too large to try it');
      return upForAirTime(skill, flight, airTime, (up) => withUp(skill.takeoff, up, vectorOf(flight)));
    },
    turnBy: (from, by, value) => {
      const { skill, flight, frames } = from;
      const { momentum } = skill.takeoff;
      if (by === 'straight' && momentum.kind === 'straight') return { straightSomersaults: value };
      if (by === 'rate' && momentum.kind === 'rates') return ratesWith(from, value);
      const y0 = flight.p_WScm_W0[1];
      const up = flight.v_WScm_W0[1];
      const one = oneOf(skill, y0, up);
      if (by === 'rate') {
        const now = { hz: flight.h_Scm_W[2], rate: frames.somersaultRate[0] / REV };
        return putTurn(
          from,
          along(now.rate, now.hz, value, (hz) => rateAt(skill, flight, hz)),
          y0,
          up,
        );
      }
      return putTurn(from, by === 'momentum' ? value : value * (one ?? Number.NaN), y0, up);
    },
    carryOver: (from, edited, keep) => {
      if (from.skill.launch.kind !== 'stated' || isHeavy(edited)) return {};
      const skill = launchFile(edited);
      const { takeoff } = skill;
      const flown = tryFly(skill);
      // a body that cannot be flown as the file has it is left so, and said
      if (!flown) return {};
      const y0 = flown.p_WScm_W0[1];
      const was = oneOf(from.skill, from.flight.p_WScm_W0[1], from.flight.v_WScm_W0[1]);
      const vectorAt = (up: number): Extract<TakeoffSpec['momentum'], { kind: 'vector' }> => {
        const one = oneOf(skill, y0, up);
        const share = keep === 'straight' && one !== undefined && was !== undefined ? one / was : 1;
        const [x, y, z] = from.flight.h_Scm_W;
        return { kind: 'vector', h_Scm_W: [share * x, share * y, share * z] };
      };
      const up = speedOf(skill, () =>
        upForAirTime(skill, flown, from.flight.duration, (v) => withUp(takeoff, v, vectorAt(v))),
      );
      const { h_Scm_W } = vectorAt(up);
      return {
        velocityMPerS: { ...velocityOf(edited), up: tidy(up) },
        momentum: writeVector(skill, takeoff.momentum.kind, h_Scm_W, y0, up),
      };
    },
  };
}

function tryFly(skill: LaunchedSkill): Flight | undefined {
  try {
    return flySkill(skill);
  } catch (error) {
    if (!isOfFlight(error)) throw error;
    return undefined;
  }
}

/** Its own where the time is stated, or where no flight of this body has it: that it differs is said. */
function speedOf({ end, takeoff }: LaunchedSkill, find: () => number): number {
  if (end.kind === 'duration') return takeoff.v_WScm_W[1];
  try {
    return find();
  } catch (error) {
    if (error instanceof FieldError) return takeoff.v_WScm_W[1];
    throw error;
  }
}

const vectorOf = ({ h_Scm_W }: Flight): TakeoffSpec['momentum'] => ({ kind: 'vector', h_Scm_W });

const withUp = (takeoff: TakeoffSpec, up: number, momentum: TakeoffSpec['momentum']): TakeoffSpec => ({
  ...takeoff,
  v_WScm_W: [takeoff.v_WScm_W[0], up, takeoff.v_WScm_W[2]],
  momentum,
});

const velocityOf = (file: SkillFile): NonNullable<FileTakeoff['velocityMPerS']> =>
  flightOf(file).takeoff?.velocityMPerS ?? { along: 0, up: 0 };

/** In straight somersaults where they can be counted. */
function inStraight(skill: Parts, hz: number, y0: number, up: number): Momentum {
  const one = oneOf(skill, y0, up);
  return one === undefined ? { vectorKgM2PerS: [0, 0, tidy(hz)] } : { straightSomersaults: tidy(hz / one) };
}

/** Another momentum about the somersault axis, in the kind that the file has. */
function putTurn(from: FlightResult, hz: number, y0: number, up: number): Momentum {
  const { skill, flight, frames } = from;
  const { kind } = skill.takeoff.momentum;
  if (kind === 'straight') return inStraight(skill, hz, y0, up);
  if (kind === 'vector') return { vectorKgM2PerS: [flight.h_Scm_W[0], flight.h_Scm_W[1], tidy(hz)] };
  const rate = frames.somersaultRate[0] / REV;
  const momentumAt = (r: number): number => flyWith(skill, ratesSpec(from, r)).h_Scm_W[2];
  return ratesWith(from, along(flight.h_Scm_W[2], rate, hz, momentumAt));
}

/** Where y, which is a + b x, comes to `wanted`; it is `y0` at `x0`. */
function along(y0: number, x0: number, wanted: number, calc: (x: number) => number): number {
  const step = Math.max(1, 0.2 * Math.abs(x0));
  return x0 + ((wanted - y0) * step) / (calc(x0 + step) - y0);
}

const flyWith = (skill: LaunchedSkill, momentum: TakeoffSpec['momentum']): Flight =>
  flySkill(relaunch(skill, { takeoff: { ...skill.takeoff, momentum } }));

function rateAt(skill: LaunchedSkill, { h_Scm_W: [x, y] }: Flight, hz: number): number {
  const flight = flyWith(skill, { kind: 'vector', h_Scm_W: [x, y, hz] });
  return calcFrames(flight, Float64Array.of(0)).somersaultRate[0] / REV;
}

function ratesSpec({ skill }: FlightResult, revPerS: number): TakeoffSpec['momentum'] {
  const { momentum } = skill.takeoff;
  if (momentum.kind !== 'rates') throw new RangeError('the momentum is not stated by rates');
  return { ...momentum, somersault: revPerS * REV };
}

function ratesWith({ skill }: FlightResult, revPerS: number): Momentum {
  const { momentum } = skill.takeoff;
  if (momentum.kind !== 'rates') throw new RangeError('the momentum is not stated by rates');
  return {
    ratesRevPerS: { somersault: tidy(revPerS), tilt: tidy(momentum.tilt / REV), twist: tidy(momentum.twist / REV) },
  };
}

function writeVector(
  skill: LaunchedSkill,
  kind: TakeoffSpec['momentum']['kind'],
  h: readonly [number, number, number],
  y0: number,
  up: number,
): Momentum {
  if (kind === 'straight') return inStraight(skill, h[2], y0, up);
  if (kind === 'vector') return { vectorKgM2PerS: [tidy(h[0]), tidy(h[1]), tidy(h[2])] };
  const flight = flyWith(skill, { kind: 'vector', h_Scm_W: h });
  const { somersaultRate, tiltRate, twistRate } = calcFrames(flight, Float64Array.of(0));
  return {
    ratesRevPerS: {
      somersault: tidy(somersaultRate[0] / REV),
      tilt: tidy(tiltRate[0] / REV),
      twist: tidy(twistRate[0] / REV),
    },
  };
}
