// What holds of a skill that was read: it flies to numbers, or is refused by name; and what is written of it can be read.
import {
  type Athlete,
  athleteOf,
  buildSkill,
  calcFrames,
  type Flown,
  flySkill,
  formatFrames,
  formatSummaryJson,
  frameTimes,
  keepBack,
  type LaunchedSkill,
  LinkError,
  launch,
  parseSkill,
  readSkillLink,
  type SkillFile,
  summarize,
  verdictInFlight,
  wordBasis,
  wordFrames,
  wordVerdict,
  writeSkillLink,
} from '../../../sim/index.ts';
import { makeEngine } from '../../../src/engine/engine.ts';
import { hold, tryRead } from './law.ts';
import { shelf } from './sound.ts';

/** Rows a second: enough to see what is no number. */
const RATE_HZ = 30;
const engine = makeEngine(shelf);
const MOST_STEPS_TWICE = 300;
const ALL = { name: true, age: true, mass: true, sheets: true, film: true };

interface FlownSkill {
  readonly skill: LaunchedSkill;
  readonly flight: Flown;
}

const flyOnce = (file: SkillFile): FlownSkill => {
  const skill = launch(buildSkill(parseSkill(file, shelf)));
  return { skill, flight: flySkill(skill) };
};

/** Whether it begins with its flight and has one only. */
export const isAlone = ({ phases }: SkillFile): boolean =>
  phases[0].kind === 'flight' && phases.length <= 2 && phases[1]?.kind !== 'catch';

/** `again`: the same, written and read. */
export function checkFlight(file: SkillFile, again: SkillFile, input: string): void {
  // as the page flies it, with all that it says of it
  const flown = tryRead(() => engine.fly(file), input);
  if (!('value' in flown)) return;
  // of one that takes many steps the bits are those of its document, which is the same
  if (flown.value.flight.stats.steps > MOST_STEPS_TWICE) return;
  const second = tryRead(() => flyOnce(again), input);
  hold('value' in second, 'it flies, and the same written and read does not');
  if (!('value' in second)) return;
  const bits = bitsOf(flown.value.flight);
  hold(bits === bitsOf(second.value.flight), 'written and read again it flies otherwise');
  checkOutputs(file, flown.value);
}

/** The state at nine instants, to the last bit. */
function bitsOf(flight: Flown): string {
  const frames = calcFrames(
    flight,
    Float64Array.from({ length: 9 }, (_, k) => (flight.duration * k) / 8),
  );
  const numbers = Object.values(frames).flatMap((column) => (column instanceof Float64Array ? [...column] : []));
  return Buffer.from(Float64Array.from([flight.duration, ...numbers]).buffer).toString('hex');
}

function checkOutputs(file: SkillFile, { skill, flight }: FlownSkill): void {
  const frames = calcFrames(flight, frameTimes(flight.duration, Math.min(RATE_HZ, 200 / flight.duration)));
  for (const [name, column] of Object.entries(frames))
    if (column instanceof Float64Array)
      hold(
        column.every((x) => Math.abs(x) !== Number.POSITIVE_INFINITY),
        `a number of ${name} is beyond all bounds`,
      );
  hold(frames.t.every(Number.isFinite), 'a time is no number');
  const csv = [...formatFrames(frames, flight.body, wordFrames(frames))].join('');
  hold(!/NaN|Infinity|undefined|\[object/.test(csv.slice(csv.indexOf('\n'))), 'a cell of the CSV is no number');
  const rows = csv
    .trim()
    .split('\n')
    .map((row) => row.split(',').length);
  hold(new Set(rows).size === 1, 'rows of the CSV differ in length');
  const summary = summarize(flight, frames, skill.target);
  const verdict = verdictInFlight(skill, summary, undefined, flight.met);
  const json = formatSummaryJson(
    file.title,
    { sentence: wordVerdict(verdict), verdict, basis: wordBasis(verdict) },
    summary,
    {},
  );
  JSON.parse(json);
  hold(!/NaN|Infinity|undefined|\[object/.test(wordVerdict(verdict)), `the sentence is "${wordVerdict(verdict)}"`);
}

/** By link and back: the same document, or too long for one. */
export function checkLink(file: SkillFile): void {
  const athlete: Athlete = athleteOf(file, shelf);
  const handed = keepBack(file, athlete, ALL);
  let link: string;
  try {
    link = writeSkillLink(handed);
  } catch (error) {
    if (error instanceof LinkError && error.fault.kind === 'long') return;
    throw error;
  }
  hold(JSON.stringify(readSkillLink(link).file) === JSON.stringify(handed.file), 'the link gives another skill');
}
