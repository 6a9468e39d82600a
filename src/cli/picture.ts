/** The command "picture": poses of a flight as an SVG, complete in itself, the typeface and the caution in it. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import {
  type Athlete,
  apparatusOf,
  athleteOf,
  CAUTION,
  calcFrames,
  DEFAULT_TOLERANCE,
  digestOfSkill,
  flySkill,
  flyWhole,
  frameTimes,
  type InputOrigin,
  keepBack,
  launch,
  loadContact,
  namedOffRail,
  provenance,
  provenanceSvg,
  type SkillFile,
  type SkillVerdict,
  summarize,
  verdictInFlight,
  verdictOf,
} from '../../sim/index.ts';
import { isBeyondLatin, type Typeface } from '../paper/page-svg.ts';
import { makePaperFlight, type PaperFlight } from '../paper/paper-flight.ts';
import { makePicture } from '../paper/picture.ts';
import { equalTimes } from '../paper/picture-times.ts';
import { resultLine } from '../paper/result-line.ts';
import { pictureFoot } from '../paper/words.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import { RATE_HZ } from './command-line.ts';
import type { PictureCommand } from './picture-args.ts';
import { readSkill } from './read-input.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runPicture(command: PictureCommand, args: readonly string[]): Promise<string> {
  const { out, layout, by, count, at, beside, widthMm, isPlain, isNamed } = command;
  const own = await flyForPaper(command.skill);
  const other = beside === undefined ? undefined : await flyForPaper(beside);
  const wanted = { option: '--out', file: out };
  checkApart([wanted], [...own.inputs, ...(other?.inputs ?? [])]);
  const times = at ?? equalTimes(own.paper, count, by);
  if (!times) throw new CommandError(`--by ${by}: ${own.title} has no ${by} to divide; --by time does`);
  const late = times.find((t) => t > own.paper.duration);
  if (late !== undefined)
    throw new CommandError(
      `--at: ${late} s is after the end; allowed: 0 to ${(Math.floor(1000 * own.paper.duration) / 1000).toFixed(3)} s`,
    );
  const who = isNamed ? own.who : '';
  const head = { name: [own.title, who].filter(Boolean).join(', '), result: resultLine(own.verdict) };
  const page = makePicture({
    versions: [{ letter: 'A', flight: own.paper }, ...(other ? [{ letter: 'B' as const, flight: other.paper }] : [])],
    layout,
    times,
    widthMm,
    ...(isPlain ? {} : { head }),
    standing: CAUTION,
    foot: pictureFoot(other && { a: own.title, b: other.title }),
    origin: provenanceSvg(
      provenance({
        call: wordCall('picture', args),
        inputs: [own, ...(other ? [other] : [])].map((one) => originToGo(one, isNamed)),
        tolerance: DEFAULT_TOLERANCE,
        seed: null,
      }),
    ),
    typeface: readTypeface([own.title, other?.title ?? '', who].join(' ')),
  });
  writeFiles([{ ...wanted, pieces: [page.svg] }]);
  const size = `${page.widthMm} x ${page.heightMm.toFixed(0)} mm`;
  return `${own.title}: ${times.length} poses, ${size}, written to ${out}\n\n${CLOSING}\n`;
}

interface FlownForPaper {
  readonly title: string;
  readonly who: string;
  readonly paper: PaperFlight;
  readonly verdict: SkillVerdict;
  readonly inputs: readonly string[];
  readonly origin: InputOrigin;
  readonly file: SkillFile;
  readonly athlete: Athlete;
}

async function flyForPaper(given: string): Promise<FlownForPaper> {
  const { skill, athlete, inputs, origin, file } = await readSkill(given);
  const { start, after } = skill;
  const isWhole =
    start.kind !== 'stated' || start.contact !== undefined || after !== undefined || skill.catch !== undefined;
  const whole = isWhole ? flyWhole(skill, await loadContact()) : undefined;
  const launched = whole?.skill ?? launch(skill);
  const flight = whole?.flight ?? flySkill(launched);
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE_HZ.default));
  const summary = summarize(flight, frames, skill.target);
  const judged = whole
    ? verdictOf(whole, summary, undefined)
    : verdictInFlight(launched, summary, undefined, flight.met);
  return {
    title: skill.title,
    who: athlete.name,
    paper: makePaperFlight({ flight, frames, apparatus: apparatusOf({ skill: launched, flight }) }),
    verdict: namedOffRail(judged, launched.launch.rail !== undefined, summary, frames),
    inputs,
    origin,
    file,
    athlete,
  };
}

/** A ready skill as it is; of any other the digest has nothing in it that stays: a name, age or mass could be guessed, and the guess tried on it. */
function originToGo({ origin, file, athlete }: FlownForPaper, isNamed: boolean): InputOrigin {
  if (origin.ready?.changed === false) return origin;
  const { file: goes } = keepBack(file, athlete, {
    name: isNamed,
    age: false,
    mass: false,
    sheets: false,
    film: false,
  });
  return { ...origin, sha256: digestOfSkill(goes, athleteOf(goes, { athletes: {}, shapes: {} })) };
}

const FILES = '@fontsource-variable/radio-canada/files/radio-canada';

function readTypeface(words: string): Typeface {
  const { resolve } = createRequire(import.meta.url);
  const read = (set: string): string => readFileSync(resolve(`${FILES}-${set}-wght-normal.woff2`)).toString('base64');
  return { latin: read('latin'), ...(isBeyondLatin(words) ? { latinExt: read('latin-ext') } : {}) };
}
