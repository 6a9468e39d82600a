/** A built skill with other starts and ends, its own and those of the legs before. Body and keys, and a leg that did not change, stay the same objects. */
import type { Skill } from './skill.ts';
import type { SkillSpec } from './skill-spec.ts';

export function restart(skill: Skill, { start, end, earlier }: Pick<SkillSpec, 'start' | 'end' | 'earlier'>): Skill {
  const legs = skill.earlier?.map((leg, i) => {
    const now = earlier?.[i] ?? leg;
    return now.start === leg.start && now.end === leg.end ? leg : { ...leg, start: now.start, end: now.end };
  });
  return { ...skill, start, end, ...(legs ? { earlier: legs } : {}) };
}
