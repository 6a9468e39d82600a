// Skill files, of both versions and all ready skills and chains: damaged as JSON, as text, or absurd with every field allowed.

import {
  buildChain,
  buildSkill,
  checkSkillFile,
  formatSkill,
  legsOf,
  parseChain,
  parseJson,
  parseSkill,
  type SkillFile,
} from '../../../sim/index.ts';
import { makeEngine } from '../../../src/engine/engine.ts';
import { makeAbsurd, shake } from './absurd.ts';
import { damageJson } from './damage-json.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { checkFlight, checkLink, isAlone } from './flight-law.ts';
import { type CorpusKind, type Input, textOf } from './kind.ts';
import { checkShared, hold, type Outcome, sameDoor, tryRead } from './law.ts';
import type { Random } from './random.ts';
import { checkSomeShell } from './shell-law.ts';
import { SKILL_SEEDS, shelf } from './sound.ts';

const engine = makeEngine(shelf);

/** As the shell opens it. */
function readOnShell(text: string): SkillFile {
  const file = checkSkillFile(parseJson(text));
  if (legsOf(file).length > 1) buildChain(parseChain(file, shelf));
  else buildSkill(parseSkill(file, shelf));
  return file;
}

/** As the page does before it flies it. */
function readOnPage(text: string): SkillFile {
  const file = engine.readFile(engine.readJson(text));
  engine.checkChain(file);
  const leg = engine.legs.fileOf(file, 0);
  if (legsOf(file).length === 1) buildSkill(parseSkill(leg, shelf));
  return file;
}

export const skillsKind: CorpusKind = {
  name: 'skills',
  make: (r: Random): Input => {
    const [from, sound] = r.of(SKILL_SEEDS);
    const way = r.next();
    if (way < 0.3) {
      const { file, what } = makeAbsurd(r);
      return { file: 'absurd.json', bytes: utf8(JSON.stringify(file)), what };
    }
    if (way < 0.4) {
      const { file, what } = shake(r);
      return { file: 'shaken.json', bytes: utf8(JSON.stringify(file)), what };
    }
    if (way < 0.84) {
      const { text, what } = damageJson(sound, r);
      return { file: 'skill.json', bytes: utf8(text), what: `${from}: ${what}` };
    }
    const { bytes, what } = damageBytes(utf8(JSON.stringify(sound, null, 2)), r, true);
    return { file: 'skill.json', bytes, what: `${from}: ${what}` };
  },
  run: async (input): Promise<Outcome> => {
    const text = textOf(input);
    const outcome = text === undefined ? 'refused' : checkShared(() => runText(text));
    await (isLong(text) ? checkSomeShell(LONG_CALLS, 12, input) : checkSomeShell(CALLS, 5, input));
    return outcome;
  },
};

const CALLS: readonly (readonly string[])[] = [
  ['fly', 'IN', '--summary', 'OUT.json'],
  ['fly', 'IN', '--rate', '50', '--frames', 'OUT.csv'],
  ['picture', 'IN', '--count', '3', '--out', 'OUT.svg'],
  ['link', 'IN'],
  ['body', 'IN', '--mjcf', 'OUT.xml'],
  ['camera', 'IN', '--csv', 'OUT.csv'],
  ['fix', 'IN'],
  ['margin', 'IN', '--samples', '4', '--jobs', '1', '--csv', 'OUT.csv'],
  [
    'solve',
    'IN',
    '--vary',
    'takeoff.h.z',
    '--target',
    'somersaults=1',
    '--fits',
    '1',
    '--jobs',
    '1',
    '--out',
    'OUT.json',
  ],
  ['export', 'IN', '--as', '1', '--out', 'OUT.json'],
];
const LONG_CALLS: readonly (readonly string[])[] = [['fly', 'IN', '--summary', 'OUT.json']];
/** Phases that take a second each. */
const isLong = (text = ''): boolean => /"kind":\s*"(swing|catch|landing)"/.test(text);

function runText(text: string): Outcome {
  const read = sameDoor(
    () => readOnShell(text),
    () => readOnPage(text),
    text,
  );
  if (!read) return 'refused';
  const { value: file } = read;
  const written = formatSkill(file);
  const again = tryRead(() => readOnShell(written), written);
  hold('value' in again, 'what is written of it is refused');
  if (!('value' in again)) return 'refused';
  hold(formatSkill(again.value) === written, 'written and read again it is another');
  checkLink(file);
  if (isAlone(file)) checkFlight(file, again.value, text);
  return 'read';
}
