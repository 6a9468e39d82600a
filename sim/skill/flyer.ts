/**
 * The one way to fly a launched skill. Keys anchored to touchdown are flown to the touchdown they agree with (agreed-flight.ts);
 * without such keys the compiled schedule, and all that is tabulated of it, is kept as long as body, keys and what is carried over are
 * the same objects. What is kept never changes a result.
 */
import type { Flight } from '../flight/flight.ts';
import { ApexError, type FlightOptions, flySchedule } from '../flight/fly.ts';
import { calcTakeoff } from '../flight/takeoff.ts';
import type { AnchorTimes } from '../math/anchor.ts';
import type { Schedule, ScheduleSpec } from '../schedule/schedule.ts';
import { AGREEMENT, flyAgreed, usesAnchor } from './agreed-flight.ts';
import { type BalanceSpec, checkBalance } from './balance.ts';
import { type BalanceRecord, BalanceSource, type TwistPlan } from './balance-schedule.ts';
import { cutAtCatch } from './cut-at-catch.ts';
import type { CatchOutcome } from './find-catch.ts';
import type { LaunchedSkill } from './launch.ts';
import { agreeNear, NEARLY } from './near-flight.ts';
import { compileSkillSchedule } from './skill-schedule.ts';

interface FlyerOptions extends Omit<FlightOptions, 'source'> {
  /**
   * The touchdown of a flight much like this one, s. The agreement is first sought from there on, which is several times
   * quicker; where several T agree it need not be the least, so a result to keep is flown without it. A study takes what its
   * search near the known flight comes to, a little coarser (near-flight.ts).
   */
  readonly near?: { readonly touchdown: number; readonly isStudy?: boolean };
  /** the reflex, and the twist that it holds to; without a plan the twist of the take-off is to stay */
  readonly balance?: { readonly spec: BalanceSpec; readonly plan?: TwistPlan | undefined } | undefined;
}

/** A flight; with the reflex its schedule holds what the reflex added. */
export interface Flown extends Flight {
  readonly balance?: BalanceRecord;
  /** as it would have gone on, had the hands not met the rail */
  readonly uncut?: Flight;
  /** the hands and the rail, where they are to end it */
  readonly met?: CatchOutcome;
}

export interface Flyer {
  /** `draw`: number of a sample, for what the reflex feels by chance */
  fly(skill: LaunchedSkill, draw?: number): Flown;
}

/** Flies launched skills one after another and keeps what it can between two of them. */
export function makeFlyer(options: FlyerOptions = {}): Flyer {
  const { balance, near } = options;
  if (balance) checkBalance(balance.spec);
  const compile = makeCompiler();
  const anchorsOf = makeAnchorReader();

  const fly = (skill: LaunchedSkill, draw?: number): Flown => {
    const flown = flyOut(skill, draw);
    return skill.catch ? cutAtCatch(flown, skill, skill.catch) : flown;
  };
  const flyOut = (skill: LaunchedSkill, draw?: number): Flown => {
    const { body, takeoff, end, gravity } = skill;
    const { onApex, onTouchdown } = anchorsOf(skill);
    if (onApex && !(gravity > 0)) throw new ApexError();
    const apex = onApex ? takeoff.v_WScm_W[1] / gravity : 0;
    const flyOn = (schedule: Schedule): Flown =>
      balance
        ? flyBalanced(skill, schedule, balance, options, draw)
        : flySchedule(body, schedule, takeoff, end, gravity, options);
    if (!onTouchdown || end.kind === 'duration')
      return flyOn(compile(skill, { apex, touchdown: onTouchdown && end.kind === 'duration' ? end.duration : 0 }));

    const scheduleFor = (touchdown: number): Schedule => compileSkillSchedule(skill, { apex, touchdown });
    const flyAt = (touchdown: number): Flown => flyOn(scheduleFor(touchdown));
    if (near?.isStudy) return agreeNear(near.touchdown, NEARLY, flyAt);
    if (!balance) return flyAgreed(skill, scheduleFor, flyOn, { ...options, near: near?.touchdown });
    const { balance: _, ...plain } = options;
    return agreeNear(makeFlyer(plain).fly(skill).duration, { agreement: AGREEMENT, most: 0 }, flyAt);
  };
  return { fly };
}

/** One flight where nothing is worth keeping. */
export const flySkill = (skill: LaunchedSkill, options?: FlyerOptions): Flown => makeFlyer(options).fly(skill);

function flyBalanced(
  { body, takeoff, end, gravity }: LaunchedSkill,
  base: Schedule,
  { spec, plan = () => [takeoff.twist, 0] }: NonNullable<FlyerOptions['balance']>,
  options: FlyerOptions,
  draw?: number,
): Flown {
  const { h_Scm_W } = calcTakeoff(body, base, takeoff, end, gravity);
  const source = new BalanceSource(body, base, h_Scm_W, takeoff.twist, spec, plan, draw);
  const flight = flySchedule(body, source.schedule, takeoff, end, gravity, { ...options, source });
  return { ...flight, balance: source.record };
}

type Moves = Pick<LaunchedSkill, 'body' | 'schedule' | 'contacts' | 'carried'>;

/** Compiles a schedule, or gives the one before where nothing has changed. */
function makeCompiler(): (skill: LaunchedSkill, times: AnchorTimes) => Schedule {
  let kept: (Moves & AnchorTimes & { readonly compiled: Schedule }) | undefined;
  return ({ body, schedule, contacts, carried }, times) => {
    const k = kept;
    if (
      k &&
      k.body === body &&
      k.schedule === schedule &&
      k.contacts === contacts &&
      k.carried === carried &&
      k.apex === times.apex &&
      k.touchdown === times.touchdown
    )
      return k.compiled;
    const moves: Moves = { body, schedule, ...(contacts ? { contacts } : {}), ...(carried ? { carried } : {}) };
    const compiled = compileSkillSchedule(moves, times);
    kept = { ...moves, ...times, compiled };
    return compiled;
  };
}

interface Anchors {
  readonly onApex: boolean;
  readonly onTouchdown: boolean;
}

/** Which events a schedule is anchored to. */
function makeAnchorReader(): (skill: LaunchedSkill) => Anchors {
  const known = new WeakMap<ScheduleSpec, Anchors & Pick<LaunchedSkill, 'contacts'>>();
  return (skill) => {
    const { schedule, contacts } = skill;
    const found = known.get(schedule);
    if (found && found.contacts === contacts) return found;
    const made = {
      onApex: usesAnchor(skill, 'apex'),
      onTouchdown: usesAnchor(skill, 'touchdown'),
      ...(contacts ? { contacts } : {}),
    };
    known.set(schedule, made);
    return made;
  };
}
