// A ready skill flown, without the bundler's reading of folders: for browser tests.
import { readFileSync } from 'node:fs';
import {
  buildSkill,
  checkSkillFile,
  type Flight,
  flySkill,
  launch,
  parseAthlete,
  parseSkill,
} from '../../sim/index.ts';

const preset = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../presets/${name}.json`, import.meta.url), 'utf8'));

const ATHLETES = ['ilse-marrow', 'jory-quill', 'nell-oakum', 'runa-holt', 'tobias-fenn'];

/** One that begins with a stated take-off. */
export function knownFlight(skill: string): Flight {
  const file = checkSkillFile(preset(`skills/${skill}`));
  const athletes = Object.fromEntries(ATHLETES.map((name) => [name, parseAthlete(preset(`athletes/${name}`))]));
  return flySkill(launch(buildSkill(parseSkill(file, { athletes, shapes: preset('shapes') }))));
}
