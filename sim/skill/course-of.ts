/** The course of the contact that a skill begins with: from the flight before where it is one of a chain, else from what the file states of its entry. */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { tableTop } from './apparatus-piece.ts';
import { poseOf } from './build-skill.ts';
import { type ContactCourse, type CourseEntry, calcContactCourse } from './contact-course.ts';
import { rangedPlace } from './contact-ranges.ts';
import type { TakeoffContact } from './contact-takeoff.ts';

const kept = new WeakMap<TakeoffContact, ContactCourse | undefined>();

/** Without `before` it is kept with the contact. Undefined where the body has no hands or feet. */
export function courseOf(contact: TakeoffContact, after: Flight, before?: Flight): ContactCourse | undefined {
  if (!before && kept.has(contact)) return kept.get(contact);
  const { approach, by, time, friction } = contact;
  const course = calcContactCourse({
    spec: {
      place: rangedPlace(approach.place, by),
      by,
      time,
      friction,
      ...(approach.pulse ? { pulse: approach.pulse } : {}),
      ...(approach.place === 'vaultTable' && !before ? { surfaceY: tableTop(after.body) } : {}),
    },
    before: before ? { kind: 'flight', flight: before } : entryOf(contact, after.body),
    after,
  });
  if (!before) kept.set(contact, course);
  return course;
}

function entryOf({ approach: { entry }, v_before_W, h_before_W }: TakeoffContact, body: Body): CourseEntry {
  if (!entry) return { kind: 'assumed', v_WScm_W: v_before_W, h_Scm_W: h_before_W };
  const { shape: _, pose, ...attitude } = entry;
  const angles = poseOf(body, pose, 'phases[0].entry.shape', true);
  return { kind: 'stated', entry: { ...attitude, angles, v_WScm_W: v_before_W, h_Scm_W: h_before_W } };
}
