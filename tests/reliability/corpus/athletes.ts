// Athlete files, human and tree, in a file of their own or bare.

import {
  type Athlete,
  type Body,
  formatMjcf,
  inAthleteFile,
  makeBody,
  parseAthlete,
  parseJson,
  readAthlete,
} from '../../../sim/index.ts';
import { makeEngine } from '../../../src/engine/engine.ts';
import { damageJson } from './damage-json.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { checkShared, hold, type Outcome, sameDoor } from './law.ts';
import { checkSomeShell } from './shell-law.ts';
import { ATHLETE_SEEDS, shelf } from './sound.ts';

const engine = makeEngine(shelf);

export const athletesKind: CorpusKind = {
  name: 'athletes',
  make: (r) => {
    const [from, sound] = r.of(ATHLETE_SEEDS);
    if (r.isHit(0.8)) {
      const { text, what } = damageJson(sound, r);
      return { file: 'athlete.json', bytes: utf8(text), what: `${from}: ${what}` };
    }
    const { bytes, what } = damageBytes(utf8(JSON.stringify(sound, null, 1)), r, true);
    return { file: 'athlete.json', bytes, what: `${from}: ${what}` };
  },
  run: async (input): Promise<Outcome> => {
    const text = textOf(input);
    await checkSomeShell([['body', 'IN', '--mjcf', 'OUT.xml']], 4, input);
    return text === undefined ? 'refused' : checkShared(() => runText(text));
  },
};

function runText(text: string): Outcome {
  const read = sameDoor<Athlete>(
    () => readOnShell(text),
    () => engine.readAthlete(engine.readJson(text)),
    text,
  );
  if (!read) return 'refused';
  const written = JSON.stringify(read.value);
  hold(JSON.stringify(parseAthlete(parseJson(written))) === written, 'written and read again it is another');
  checkBody(makeBody(readAthlete(read.value)));
  return 'read';
}

function readOnShell(text: string): Athlete {
  const json = parseJson(text);
  inAthleteFile(json, () => makeBody(readAthlete(json)));
  return parseAthlete(json);
}

function checkBody(body: Body): void {
  for (const { name, mass } of body.segments) hold(Number.isFinite(mass) && mass > 0, `the mass of ${name} is ${mass}`);
  const xml = formatMjcf(body, 9.81);
  hold(!/NaN|Infinity|undefined|\[object/.test(xml), 'a number of the model is none');
  hold(!/<script/i.test(xml), 'a script in the model');
}
