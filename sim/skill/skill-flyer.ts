/**
 * Flies many variants of a skill: the compiled schedule, and with it all that is tabulated of it, is kept as long as
 * the keys are the same objects and no motion hangs on touchdown. The flights are those of flySkill.
 */
import type { Flight } from '../flight/flight.ts';
import { type FlightOptions, flySchedule } from '../flight/fly.ts';
import type { Schedule, ScheduleSpec } from '../schedule/schedule.ts';
import { flySkill, usesAnchor } from './fly-skill.ts';
import type { LaunchedSkill } from './launch.ts';
import { compileSkillSchedule } from './skill-schedule.ts';

interface Kept extends Pick<LaunchedSkill, 'body' | 'schedule' | 'contacts' | 'carried'> {
  readonly apex: number;
  readonly touchdown: number;
  readonly compiled: Schedule;
}

/** What of a schedule hangs on which event. */
interface Hung {
  readonly onApex: boolean;
  readonly onTouchdown: boolean;
}

export class SkillFlyer {
  private kept: Kept | undefined;
  private readonly hung = new WeakMap<ScheduleSpec, Hung & Pick<LaunchedSkill, 'contacts'>>();
  private readonly options: FlightOptions;

  constructor(options: FlightOptions = {}) {
    this.options = options;
  }

  fly(skill: LaunchedSkill): Flight {
    const { body, takeoff, end, gravity } = skill;
    const { onApex, onTouchdown } = this.getHung(skill);
    const isFixed = end.kind === 'duration';
    if ((onTouchdown && !isFixed) || (onApex && !(gravity > 0))) return flySkill(skill, this.options);
    const apex = onApex ? takeoff.v_WScm_W[1] / gravity : 0;
    const compiled = this.compile(skill, apex, onTouchdown && isFixed ? end.duration : 0);
    return flySchedule(body, compiled, takeoff, end, gravity, this.options);
  }

  private compile({ body, schedule, contacts, carried }: LaunchedSkill, apex: number, touchdown: number): Schedule {
    const k = this.kept;
    if (
      k &&
      k.body === body &&
      k.schedule === schedule &&
      k.contacts === contacts &&
      k.carried === carried &&
      k.apex === apex &&
      k.touchdown === touchdown
    )
      return k.compiled;
    const moves = { body, schedule, ...(contacts ? { contacts } : {}), ...(carried ? { carried } : {}) };
    const compiled = compileSkillSchedule(moves, { apex, touchdown });
    this.kept = { ...moves, apex, touchdown, compiled };
    return compiled;
  }

  private getHung(skill: LaunchedSkill): Hung {
    const known = this.hung.get(skill.schedule);
    if (known && known.contacts === skill.contacts) return known;
    const { contacts } = skill;
    const made = {
      onApex: usesAnchor(skill, 'apex'),
      onTouchdown: usesAnchor(skill, 'touchdown'),
      ...(contacts ? { contacts } : {}),
    };
    this.hung.set(skill.schedule, made);
    return made;
  }
}
