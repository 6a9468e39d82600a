/** The course of the contact that a leg begins with, from the flight before or the entry that is stated. */
import type { Flight } from '../flight/flight.ts';
import { poseOf } from './build-skill.ts';
import { type ContactCourse, type CourseEntry, calcContactCourse } from './contact-course.ts';
import type { Contact } from './contact-room.ts';
import type { Skill } from './skill.ts';
import type { ContactApproach } from './start-spec.ts';
import type { Whole } from './whole.ts';

export function calcLegCourse(
  skill: Skill,
  whole: Pick<Whole, 'flight' | 'contact'>,
  contact: Contact,
  before?: Flight,
): ContactCourse | undefined {
  const { start } = skill;
  const approach = start.kind === 'swing' ? undefined : start.contact;
  if (!approach || !whole.contact) return undefined;
  const preset = contact.TAKEOFF_PRESETS[approach.place];
  return calcContactCourse({
    spec: {
      place: approach.place,
      by: approach.limb ?? preset.by,
      time: whole.contact.time,
      friction: approach.friction ?? preset.friction,
      ...(approach.pulse ? { pulse: approach.pulse } : {}),
    },
    before: before ? { kind: 'flight', flight: before } : entryOf(skill, approach),
    after: whole.flight,
  });
}

function entryOf({ body }: Skill, { entry, v_WScm_W, h_Scm_W }: ContactApproach): CourseEntry {
  if (!entry) return { kind: 'assumed', v_WScm_W, h_Scm_W };
  const { shape: _, pose, ...attitude } = entry;
  const angles = poseOf(body, pose, 'phases[0].entry.shape', true);
  return { kind: 'stated', entry: { ...attitude, angles, v_WScm_W, h_Scm_W } };
}
