/** A preset as the engine takes it. */
import { athletes, shapes, skills } from '../../presets/index.ts';
import { buildSkill, parseSkill, type Skill, type SkillFile } from '../../sim/index.ts';

export const shelf = { athletes, shapes };
export const fileOf = (id: string): SkillFile => structuredClone(skills[id]);
export const skillOf = (file: SkillFile): Skill => buildSkill(parseSkill(file, shelf));
export const preset = (id: string): Skill => skillOf(fileOf(id));
export const presetIds = Object.keys(skills);
