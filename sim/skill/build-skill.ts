/** From a SkillSpec to a Skill: makes the Body and resolves the names of angles. */

import type { Body } from '../body/body.ts';
import { makeHuman } from '../body/human.ts';
import { makeTree } from '../body/tree.ts';
import { FieldError, unknownName } from '../math/field-error.ts';
import { withoutSide } from '../math/side.ts';
import type { AngleKey, SampledAngle } from '../schedule/schedule.ts';
import type { HandContact } from './hand-contact.ts';
import type { Skill } from './skill.ts';
import type { AthleteSpec, NamedPose, SkillSpec } from './skill-spec.ts';

const bodies = new Map<string, Body>();
/** Bodies kept by content: an unchanged athlete is the same Body object, so its model and tables are found again. */
const KEPT = 50;

/** The body of an athlete; the same athlete gives the same Body. Throws a FieldError that names what is outside its range. */
export function makeBody(athlete: AthleteSpec): Body {
  const key = JSON.stringify(athlete);
  const known = bodies.get(key);
  if (known) return known;
  const made = athlete.kind === 'human' ? makeHuman(athlete.human) : makeTree(athlete.tree);
  if (bodies.size >= KEPT) bodies.clear();
  bodies.set(key, made);
  return made;
}

/** Body, schedule and start of a skill. Throws a FieldError that names the angle, shape or key at fault. */
export function buildSkill(spec: SkillSpec): Skill {
  const body = makeBody(spec.athlete);
  const path = schedulePath(spec);
  for (const [id, pose] of Object.entries(spec.ownShapes)) poseOf(body, pose, `shapes.${id}.angles`, false);
  const base = poseOf(body, spec.base, `${path}.base`, true);
  const keys = spec.keys.flatMap((k, i) =>
    anglesNamed(body, k.angle, `${path}.keys[${i}].angle`).map(
      (angle): AngleKey => ({
        angle,
        at: k.at,
        value: k.value,
        kind: k.kind,
        ...(k.next === undefined ? {} : { next: k.next }),
      }),
    ),
  );
  const taken = new Set<number>();
  const sampled = spec.samples.flatMap((s, i) =>
    anglesNamed(body, s.angle, `${path}.samples[${i}].angle`).map((angle): SampledAngle => {
      if (taken.has(angle)) throw new FieldError(`${path}.samples[${i}].angle`, s.angle, 'each angle sampled once');
      taken.add(angle);
      const { start, rate, values, smoothing } = s;
      return { angle, start, rate, values, ...(smoothing ? { smoothing } : {}) };
    }),
  );
  return {
    title: spec.title,
    body,
    gravity: spec.gravity,
    start: spec.start,
    end: spec.end,
    schedule: {
      base,
      blocks: spec.blocks.map((b, i) => {
        const pose = poseOf(body, b.pose, `${path}.blocks[${i}].shape`, true);
        apply(body, b.adjust, `${path}.blocks[${i}].adjustDeg`, false, pose);
        return { shape: b.shape, title: b.title, from: b.from, to: b.to, arms: b.arms, pose };
      }),
      keys,
      sampled,
      smoothing: spec.smoothing,
    },
    ...(spec.contacts?.length ? { contacts: checkContacts(body, spec.contacts, `${path}.contacts`) } : {}),
    ...(spec.after ? { after: spec.after } : {}),
    ...(spec.catch ? { catch: spec.catch } : {}),
    ...(spec.target ? { target: spec.target } : {}),
    ...(spec.earlier ? { earlier: spec.earlier.map(buildEarlier) } : {}),
  };
}

const builtEarlier = new WeakMap<SkillSpec, Skill>();

/** A leg before that is the same spec is the same skill, so that what it hands over is found again. */
function buildEarlier(spec: SkillSpec): Skill {
  const known = builtEarlier.get(spec);
  if (known) return known;
  const made = buildSkill(spec);
  builtEarlier.set(spec, made);
  return made;
}

/** Where a skill's file has the schedule, for faults: a swing or a contact comes before the flight. */
function schedulePath({ start }: SkillSpec): string {
  const isFirst = start.kind === 'stated' && !start.contact;
  return `phases[${isFirst ? 0 : 1}].schedule`;
}

/** Hands need arms and legs as a human has them. */
function checkContacts(body: Body, contacts: readonly HandContact[], field: string): readonly HandContact[] {
  if (!body.neutralHuman)
    throw new FieldError(field, body.name, 'hand contacts of a human only, not of a tree of its own');
  return contacts;
}

/** One value for each angle of the body; angles not named are 0. `lenient`: a shape may name angles this body lacks. */
export function poseOf(body: Body, named: NamedPose, field: string, lenient: boolean): number[] {
  const pose = body.angles.map(() => 0);
  apply(body, named, field, lenient, pose);
  return pose;
}

function apply(body: Body, named: NamedPose, field: string, lenient: boolean, pose: number[]): void {
  // both sides first, so that a side named on its own wins
  const entries = Object.entries(named).sort(([a], [b]) => Number(isExact(body, a)) - Number(isExact(body, b)));
  for (const [name, value] of entries) {
    if (lenient && !isExact(body, name) && !isExact(body, `${name}L`)) continue;
    for (const angle of anglesNamed(body, name, `${field}.${name}`)) pose[angle] = value;
  }
}

const isExact = (body: Body, name: string): boolean => body.angles.some((a) => a.name === name);

/** Indices of the angles a name means: itself, or its left and right. */
export function anglesNamed(body: Body, name: string, field: string): number[] {
  const exact = body.angles.findIndex((a) => a.name === name);
  if (exact >= 0) return [exact];
  const sides = [`${name}L`, `${name}R`].map((n) => body.angles.findIndex((a) => a.name === n)).filter((i) => i >= 0);
  if (sides.length === 2) return sides;
  const bases = body.angles.map((a) => withoutSide(a.name));
  throw unknownName(field, name, [...new Set([...body.angles.map((a) => a.name), ...bases])], 'an angle of this body');
}
