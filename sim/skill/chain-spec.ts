/** A parsed chain, angles still by name; buildChain makes the Body and resolves the names. */
import { buildSkill } from './build-skill.ts';
import type { ChainLeg, SkillChain } from './chain.ts';
import type { SkillSpec } from './skill-spec.ts';

export interface ChainLegSpec extends Pick<ChainLeg, 'title' | 'next'> {
  readonly spec: SkillSpec;
}
export interface ChainSpec {
  readonly title: string;
  readonly legs: readonly ChainLegSpec[];
}

/** A leg with the legs before it, for searches: they vary what begins the first and read what ends this one. */
export function legSpec({ legs }: ChainSpec, leg: number): SkillSpec {
  const { spec } = legs[leg];
  return leg === 0 ? spec : { ...spec, earlier: legs.slice(0, leg).map((one) => ({ ...one.spec, title: one.title })) };
}

/** A chain of built skills from its specification. Throws a FieldError of any of its legs. */
export function buildChain({ title, legs }: ChainSpec): SkillChain {
  const built = legs.map(({ spec, ...leg }): ChainLeg => ({ ...leg, skill: buildSkill(spec) }));
  const { body, gravity } = built[0].skill;
  return { title, body, gravity, legs: built };
}
