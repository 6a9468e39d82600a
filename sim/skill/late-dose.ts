/**
 * What one late hand gives for the time that it holds on: twist done and tilt at the end, with the arms as they are filed and with both
 * arms moving alike. A straight body is unstable about its somersault axis, so the dose is steep from the first millisecond and then
 * saturates; arms that end uneven to take the tilt out bend it. How much of a twist half a millisecond is worth says how finely the
 * twist of such a skill can be meant at all. docs/swing.md, "One hand late". SI, radians; NaN where nothing could be flown.
 */
import { calcFlightEnd } from '../measure/flight-end.ts';
import type { ScheduleSpec } from '../schedule/schedule.ts';
import type { Contact } from './contact-room.ts';
import { flySkill } from './flyer.ts';
import { type LaunchedSkill, launch, relaunch } from './launch.ts';
import type { Skill } from './skill.ts';
import { compileSkillSchedule } from './skill-schedule.ts';
import { makeSymmetric } from './symmetric.ts';

interface Dose {
  /** done in the air, + to the left */
  readonly twist: number;
  /** at the end, + head to world right */
  readonly tilt: number;
}

interface DoseRow {
  /** s that the hand held on */
  readonly held: number;
  readonly filed: Dose;
  /** both arms alike; undefined where they are as filed */
  readonly equal: Dose | undefined;
}

export interface LateDose {
  readonly hand: 'left' | 'right';
  /** as the skill has it, s */
  readonly held: number;
  /** in the order of time; the skill's own is among them */
  readonly rows: readonly DoseRow[];
  /** twist of half a millisecond more, from half a millisecond less to half a millisecond more, unsigned */
  readonly grain: { readonly filed: number; readonly equal: number | undefined };
}

/** s */
const HELD = [0, 0.005, 0.01, 0.015, 0.02, 0.025];
const HALF = 5e-4;
/** Times nearer than this are one row. */
const SAME = 5e-5;

/** Undefined for a skill without a hand that is late. */
export function calcLateDose(skill: Skill, contact: Contact): LateDose | undefined {
  const { start } = skill;
  if (start.kind !== 'swing' || !(start.swing.lateHand && start.swing.lateHand.s > 0)) return undefined;
  const { hand, s } = start.swing.lateHand;
  const launchedAt = (held: number): LaunchedSkill =>
    launch({ ...skill, start: { kind: 'swing', swing: { ...start.swing, lateHand: { hand, s: held } } } }, contact);
  const equal = equalArms(launchedAt(s));
  const doseOf = (launched: LaunchedSkill): Dose => {
    try {
      const end = calcFlightEnd(flySkill(launched));
      return { twist: end.twist - end.twist0, tilt: end.tilt };
    } catch {
      return { twist: Number.NaN, tilt: Number.NaN };
    }
  };
  const rowOf = (held: number): DoseRow => {
    const launched = launchedAt(held);
    return { held, filed: doseOf(launched), equal: equal && doseOf(relaunch(launched, { schedule: equal })) };
  };
  const times = [...HELD.filter((t) => Math.abs(t - s) > SAME), s].sort((a, b) => a - b);
  const less = rowOf(Math.max(0, s - HALF));
  const more = rowOf(s + HALF);
  const slope = (from: number, to: number): number => Math.abs(((to - from) / (more.held - less.held)) * HALF);
  return {
    hand,
    held: s,
    rows: times.map(rowOf),
    grain: {
      filed: slope(less.filed.twist, more.filed.twist),
      equal: less.equal && more.equal && slope(less.equal.twist, more.equal.twist),
    },
  };
}

/** The schedule with both arms alike, each the mean of the two; undefined where they are. */
function equalArms(skill: LaunchedSkill): ScheduleSpec | undefined {
  const { body, schedule, takeoff, gravity, contacts } = skill;
  const arms = new Set(
    body.segments
      .filter((s) => s.group === 'arms')
      .flatMap((s) => s.hinges.flatMap((h) => h.terms.map((t) => t.angle))),
  );
  const anchors = {
    apex: gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0,
    touchdown: flySkill(skill).duration,
  };
  const written = compileSkillSchedule({ body, schedule, ...(contacts ? { contacts } : {}) }, anchors);
  const even = makeSymmetric(body, schedule, arms, written, anchors);
  return even === schedule ? undefined : even;
}
