/** The skills the witness looks at: every preset, and a double twist of the tests' own (invented athlete). */

import { athletes, shapes, skills } from '../../presets/index.ts';
import { checkSkillFile, type LaunchedSkill, parseSkill } from '../../sim/index.ts';
import { launchedOf } from '../skill/load.ts';
import doubleTwist from './double-twist.json' with { type: 'json' };

const shelf = { athletes, shapes };

export const ownDoubleTwist: LaunchedSkill = launchedOf(parseSkill(doubleTwist, shelf));

export const witnessed: readonly (readonly [string, LaunchedSkill])[] = [
  ['double twist of the tests', ownDoubleTwist],
  ...Object.entries(skills).map(([id, file]): [string, LaunchedSkill] => [
    id,
    launchedOf(parseSkill(checkSkillFile(file), shelf)),
  ]),
];
