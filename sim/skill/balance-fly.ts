/** Flies a skill with the balance reflex; its flight holds the schedule with what the reflex added. */
import type { Flight } from '../flight/flight.ts';
import { ApexError, type FlightOptions, flySchedule } from '../flight/fly.ts';
import { calcTakeoff } from '../flight/takeoff.ts';
import { type BalanceSpec, checkBalance } from './balance.ts';
import { type BalanceRecord, BalanceSource, type TwistPlan } from './balance-schedule.ts';
import { AGREEMENT, flySkill, NoAgreementError, usesAnchor } from './fly-skill.ts';
import type { Skill } from './skill.ts';
import { compileSkillSchedule } from './skill-schedule.ts';

export interface BalancedFlight {
  readonly flight: Flight;
  readonly record: BalanceRecord;
}

/** Closing in on the touchdown that keys hang on. */
const MOST_TRIES = 40;

/** `plan`: the twist that is wanted; left out, the twist of the take-off is to stay. */
export function flyBalanced(
  skill: Skill,
  spec: BalanceSpec,
  plan?: TwistPlan,
  options: Omit<FlightOptions, 'source'> = {},
): BalancedFlight {
  checkBalance(spec);
  const { body, takeoff, end, gravity } = skill;
  if (usesAnchor(skill, 'apex') && !(gravity > 0)) throw new ApexError();
  const apex = gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0;
  const wanted: TwistPlan = plan ?? (() => [takeoff.twist, 0]);
  const fly = (touchdown: number): BalancedFlight => {
    const base = compileSkillSchedule(skill, { apex, touchdown });
    const { h_Scm_W } = calcTakeoff(body, base, takeoff, end, gravity);
    const source = new BalanceSource(body, base, h_Scm_W, takeoff.twist, spec, wanted);
    const flight = flySchedule(body, source.schedule, takeoff, end, gravity, { ...options, source });
    return { flight, record: source.record };
  };
  if (end.kind === 'duration') return fly(end.duration);
  if (!usesAnchor(skill, 'touchdown')) return fly(0);

  // secant from the touchdown without the reflex
  let T = flySkill(skill, options).duration;
  let done = fly(T);
  let off = done.flight.duration - T;
  let before: { T: number; off: number } | undefined;
  for (let i = 0; i < MOST_TRIES && Math.abs(off) > AGREEMENT; i++) {
    const step = before && off !== before.off ? (-off * (T - before.T)) / (off - before.off) : off;
    before = { T, off };
    T += Math.max(-0.1, Math.min(0.1, step));
    done = fly(T);
    off = done.flight.duration - T;
  }
  if (!(Math.abs(off) <= AGREEMENT))
    throw new NoAgreementError('with the balance reflex no flight touches down at the time the keys were hung on');
  return done;
}
