/**
 * A chain of flights with what lies between them. A leg is one flight with what comes before and after it: a skill as any other, but that how it begins is
 * handed over by the leg before (docs/decisions/0023-chain.md). SI and radians; each leg is in the frame of its own flight.
 */
import type { Body, Vec3 } from '../body/body.ts';
import type { CaughtStart } from '../contact/swing-spec.ts';
import type { Skill } from './skill.ts';

/** What one leg hands over to the next: velocity and angular momentum to a contact, the state on the rail to a swing. */
export type Handover =
  | { readonly kind: 'contact'; readonly v_WScm_W: Vec3; readonly h_Scm_W: Vec3 }
  | { readonly kind: 'catch'; readonly start: CaughtStart };

export interface ChainLeg {
  readonly title: string;
  /** how it begins waits for the leg before, but of the first */
  readonly skill: Skill;
  /** what ends its flight, where that is not a landing of the skill */
  readonly next?: 'contact' | 'catch' | 'entry';
}

export interface SkillChain {
  readonly title: string;
  readonly body: Body;
  readonly gravity: number;
  readonly legs: readonly ChainLeg[];
}

/** The leg as the leg before leaves it. */
export function handOver(skill: Skill, handed: Handover): Skill {
  const { start } = skill;
  if (handed.kind === 'catch') {
    if (start.kind !== 'swing') throw new RangeError('after a catch a leg begins with a swing');
    return { ...skill, start: { kind: 'swing', swing: { ...start.swing, start: handed.start } } };
  }
  const { v_WScm_W, h_Scm_W } = handed;
  if (start.kind === 'contact')
    return { ...skill, start: { ...start, contact: { ...start.contact, v_WScm_W, h_Scm_W } } };
  if (start.kind === 'stated' && start.contact)
    return { ...skill, start: { ...start, contact: { ...start.contact, v_WScm_W, h_Scm_W } } };
  throw new RangeError('after a flight a leg begins with a contact');
}
