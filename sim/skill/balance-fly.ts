/** Flies a skill with the balance reflex; its flight holds the schedule with what the reflex added. */
import type { Flight } from '../flight/flight.ts';
import { ApexError, type FlightOptions, flySchedule } from '../flight/fly.ts';
import { calcTakeoff } from '../flight/takeoff.ts';
import { type BalanceSpec, checkBalance } from './balance.ts';
import { type BalanceRecord, BalanceSource, type TwistPlan } from './balance-schedule.ts';
import { agreeNear, NEARLY } from './fly-near.ts';
import { AGREEMENT, flySkill, usesAnchor } from './fly-skill.ts';
import type { LaunchedSkill } from './launch.ts';
import { compileSkillSchedule } from './skill-schedule.ts';

interface BalancedFlight {
  readonly flight: Flight;
  readonly record: BalanceRecord;
}

interface BalanceOptions extends Omit<FlightOptions, 'source'> {
  /** touchdown of the skill it comes from, s: for studies, whose agreement is a little coarser (fly-near.ts) */
  readonly near?: number;
}

/** `plan`: the twist that is wanted; left out, the twist of the take-off is to stay. */
export function flyBalanced(
  skill: LaunchedSkill,
  spec: BalanceSpec,
  plan?: TwistPlan,
  options: BalanceOptions = {},
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

  const { near } = options;
  const records = new Map<Flight, BalanceRecord>();
  const flight = agreeNear(
    near ?? flySkill(skill, options).duration,
    near === undefined ? { agreement: AGREEMENT, most: 0 } : NEARLY,
    (touchdown) => {
      const done = fly(touchdown);
      records.set(done.flight, done.record);
      return done.flight;
    },
  );
  return { flight, record: records.get(flight) ?? { greatest: 0 } };
}
