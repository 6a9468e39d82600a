/** The skills the witness looks at: every preset, and a double twist of the tests' own (invented athlete). */
import { athletes, shapes, skills } from '../../presets/index.ts';
import { buildSkill, checkSkillFile, parseSkill, type Skill } from '../../sim/index.ts';
import doubleTwist from './double-twist.json' with { type: 'json' };

const shelf = { athletes, shapes };

export const ownDoubleTwist: Skill = buildSkill(parseSkill(doubleTwist, shelf));

export const witnessed: readonly (readonly [string, Skill])[] = [
  ['double twist of the tests', ownDoubleTwist],
  ...Object.entries(skills).map(([id, file]): [string, Skill] => [
    id,
    buildSkill(parseSkill(checkSkillFile(file), shelf)),
  ]),
];
