/**
 * Flies many variants of a skill: the compiled schedule, and with it all that is tabulated of it, is kept as long as
 * the keys are the same objects. Where touchdown only ends the last shape, nothing moves at it, and the flight needs no
 * agreement about T: one flight instead of dozens. The flights are those of flySkill, and one more kind: a flight that
 * touches down before its last shape is reached lands on its way there, where flySkill refuses the keys.
 */
import type { Flight } from '../flight/flight.ts';
import { type FlightOptions, flySchedule } from '../flight/fly.ts';
import type { Anchor, Schedule, ScheduleSpec } from '../schedule/schedule.ts';
import { flySkill } from './fly-skill.ts';
import type { Skill } from './skill.ts';
import { compileSkillSchedule } from './skill-schedule.ts';

interface Kept {
  readonly body: Skill['body'];
  readonly spec: ScheduleSpec;
  readonly contacts: Skill['contacts'];
  readonly apex: number;
  readonly touchdown: number;
  readonly schedule: Schedule;
}

/** What of a schedule hangs on which event. */
interface Hung {
  readonly onApex: boolean;
  readonly onTouchdown: boolean;
  /** with a last shape that is held until touchdown ended where it starts */
  readonly freed: ScheduleSpec;
}

export class SkillFlyer {
  private kept: Kept | undefined;
  private readonly hung = new WeakMap<ScheduleSpec, Hung>();
  private readonly options: FlightOptions;

  constructor(options: FlightOptions = {}) {
    this.options = options;
  }

  fly(skill: Skill): Flight {
    const { body, takeoff, end, gravity } = skill;
    const hung = this.getHung(skill);
    const isFixed = end.kind === 'duration';
    if ((hung.onTouchdown && !isFixed) || (hung.onApex && !(gravity > 0))) return flySkill(skill, this.options);
    const apex = hung.onApex ? takeoff.v_WScm_W[1] / gravity : 0;
    const schedule = this.compile(skill, hung, apex, hung.onTouchdown && isFixed ? end.duration : 0);
    return flySchedule(body, schedule, takeoff, end, gravity, this.options);
  }

  private compile(skill: Skill, { freed }: Hung, apex: number, touchdown: number): Schedule {
    const { body, contacts } = skill;
    const k = this.kept;
    if (
      k &&
      k.body === body &&
      k.spec === skill.schedule &&
      k.contacts === contacts &&
      k.apex === apex &&
      k.touchdown === touchdown
    )
      return k.schedule;
    const schedule = compileSkillSchedule(
      { body, schedule: freed, ...(contacts ? { contacts } : {}) },
      { apex, touchdown },
    );
    this.kept = { body, spec: skill.schedule, contacts, apex, touchdown, schedule };
    return schedule;
  }

  private getHung(skill: Skill): Hung {
    const known = this.hung.get(skill.schedule);
    if (known) return known;
    const made = readHung(skill);
    this.hung.set(skill.schedule, made);
    return made;
  }
}

function readHung({ schedule, contacts = [] }: Skill): Hung {
  const last = schedule.blocks[schedule.blocks.length - 1];
  // a key that falls into the held shape would be met by it again at its end
  const isHeld =
    last !== undefined &&
    last.to.anchor === 'touchdown' &&
    last.from.anchor !== 'touchdown' &&
    schedule.keys.every((k) => k.at.anchor === last.from.anchor && k.at.s <= last.from.s);
  const freed = isHeld
    ? { ...schedule, blocks: [...schedule.blocks.slice(0, -1), { ...last, to: last.from }] }
    : schedule;
  const has = (anchor: Anchor): boolean =>
    freed.keys.some((k) => k.at.anchor === anchor) ||
    [...freed.blocks, ...contacts].some((b) => b.from.anchor === anchor || b.to.anchor === anchor);
  const touches = has('touchdown');
  return {
    onApex: has('apex'),
    onTouchdown: touches,
    freed: touches ? schedule : freed,
  };
}
