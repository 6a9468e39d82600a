/**
 * What differs between versions of a skill, as rows of numbers against the first. SI, radians; counts in revolutions;
 * undefined is "not defined". Texts and units for people are made of `key` and `unit` where it is shown.
 */

import type { Flight } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import { calcFrames, frameTimes } from '../measure/calc-frames.ts';
import type { Frames } from '../measure/frames.ts';
import { calcShapeMoments } from '../measure/shape-moments.ts';
import { type Summary, summarize } from '../measure/summary.ts';
import { type HeldEqual, holdEqual, takeoffEnergy } from './compare.ts';
import { flySkill } from './flyer.ts';
import type { LaunchedSkill } from './launch.ts';

export type Alignment = 'takeoff' | 'apex' | 'touchdown';
type CompareUnit = 'rev' | 'rev/s' | 'rad' | 'kg m2' | 'kg m2/s' | 'J' | 's' | 'm';
type CompareWord =
  | 'same'
  | 'more'
  | 'less'
  | 'faster'
  | 'slower'
  | 'longer'
  | 'shorter'
  | 'higher'
  | 'lower'
  | 'more short'
  | 'less short'
  | 'more past'
  | 'less past'
  | 'further short'
  | 'further past'
  | '';
export type CompareKey =
  | 'somersaults'
  | 'twists'
  | 'peakSomersaultRate'
  | 'peakTwistRate'
  | 'greatestTilt'
  | 'lateralMoment'
  | 'frontBackMoment'
  | 'longMoment'
  | 'momentum'
  | 'takeoffEnergy'
  | 'jointWork'
  | 'landingShort'
  | 'landingTilt'
  | 'airTime'
  | 'height';

export interface Version {
  /** as flown: the take-off restated, but for the first */
  readonly skill: LaunchedSkill;
  readonly flight: Flight;
  readonly frames: Frames;
  readonly summary: Summary;
}

export interface CompareRow {
  readonly key: CompareKey;
  readonly unit: CompareUnit;
  /** one for each version */
  readonly values: readonly (number | undefined)[];
  /** value minus that of the first; the first is 0 */
  readonly differences: readonly (number | undefined)[];
  /** of each against the first; '' for the first, or where there is no number */
  readonly words: readonly CompareWord[];
}

export interface Comparison {
  readonly held: HeldEqual;
  readonly align: Alignment;
  readonly versions: readonly Version[];
  readonly rows: readonly CompareRow[];
}

const RATE = 240;

/**
 * Flies the versions with `held` made equal to the first's, and says what differs. `rows` hold one number for each skill, in the
 * order given. RangeError without a skill; else it throws what flying throws (NoTouchdownError, SingularBodyError).
 */
export function compareSkills(
  skills: readonly LaunchedSkill[],
  held: HeldEqual = 'own',
  align: Alignment = 'takeoff',
): Comparison {
  const [first] = skills;
  if (!first) throw new RangeError('compareSkills: no skill given; at least one is needed');
  const flightA = flySkill(first);
  const versions = skills.map((s, i) => {
    const skill = i === 0 ? s : holdEqual(first, s, held, { a: flightA });
    return flyVersion(skill, i === 0 ? flightA : flySkill(skill));
  });
  return { held, align, versions, rows: compareVersions(versions, align) };
}

export function flyVersion(skill: LaunchedSkill, flight: Flight = flySkill(skill)): Version {
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE));
  return { skill, flight, frames, summary: summarize(flight, frames, skill.target) };
}

/** Time of the event that versions are aligned at, s from take-off; undefined where the flight has none. */
export function alignTime(flight: Flight, align: Alignment): number | undefined {
  if (align === 'takeoff') return 0;
  if (align === 'touchdown') return flight.duration;
  return flight.apex >= 0 && flight.apex <= flight.duration ? flight.apex : undefined;
}

type WordPair = readonly [CompareWord, CompareWord];
const MORE: WordPair = ['more', 'less'];
const FASTER: WordPair = ['faster', 'slower'];

/** key, unit, least difference that is one, words for more and less, value */
type RowOf = readonly [CompareKey, CompareUnit, number, WordPair, (v: Version, align: Alignment) => number | undefined];

const ROWS: readonly RowOf[] = [
  ['somersaults', 'rev', 0.005, MORE, (v) => v.summary.somersaults],
  ['twists', 'rev', 0.005, MORE, (v) => v.summary.twists],
  ['peakSomersaultRate', 'rev/s', 0.01, FASTER, (v) => sizeOf(v.summary.somersaultRate?.value, REV)],
  ['peakTwistRate', 'rev/s', 0.01, FASTER, (v) => sizeOf(v.summary.twistRate?.value, REV)],
  ['greatestTilt', 'rad', 0.1 * RAD, MORE, (v) => sizeOf(v.summary.greatestTilt?.value, 1)],
  ['lateralMoment', 'kg m2', 0.005, MORE, (v, align) => momentsAt(v, align)?.lateral],
  ['frontBackMoment', 'kg m2', 0.005, MORE, (v, align) => momentsAt(v, align)?.frontBack],
  ['longMoment', 'kg m2', 0.005, MORE, (v, align) => momentsAt(v, align)?.long],
  ['momentum', 'kg m2/s', 0.01, MORE, (v) => Math.hypot(...v.flight.h_Scm_W)],
  ['takeoffEnergy', 'J', 0.1, MORE, (v) => takeoffEnergy(v.flight)],
  ['jointWork', 'J', 0.1, MORE, (v) => v.summary.jointWork],
  ['landingShort', 'rad', 0.1 * RAD, ['more short', 'more past'], (v) => v.summary.landing?.short],
  ['landingTilt', 'rad', 0.1 * RAD, MORE, (v) => sizeOf(v.summary.tilt, 1)],
  ['airTime', 's', 0.0005, ['longer', 'shorter'], (v) => v.flight.duration],
  ['height', 'm', 0.0005, ['higher', 'lower'], (v) => v.summary.height.value],
];

/** Rows for versions flown already. */
export function compareVersions(versions: readonly Version[], align: Alignment): CompareRow[] {
  return ROWS.map(([key, unit, least, [more, less], read]) => {
    const values = versions.map((v) => read(v, align));
    const differences = values.map((x) => (x === undefined || values[0] === undefined ? undefined : x - values[0]));
    const words = differences.map((d, i): CompareWord => {
      if (i === 0 || d === undefined) return '';
      if (Math.abs(d) < least) return 'same';
      return key === 'landingShort' ? landingWord(values[0] ?? 0, values[i] ?? 0) : d > 0 ? more : less;
    });
    return { key, unit, values, differences, words };
  });
}

/** short is +, past is -; from the one side to the other it is further that way */
function landingWord(before: number, after: number): CompareWord {
  if (before >= 0 && after >= 0) return after > before ? 'more short' : 'less short';
  if (before <= 0 && after <= 0) return after < before ? 'more past' : 'less past';
  return after > before ? 'further short' : 'further past';
}

const sizeOf = (x: number | undefined, unit: number): number | undefined =>
  x === undefined ? undefined : Math.abs(x) / unit;

function momentsAt({ flight }: Version, align: Alignment): ReturnType<typeof calcShapeMoments> | undefined {
  const t = alignTime(flight, align);
  if (t === undefined) return undefined;
  const n = flight.body.angles.length;
  const angles = new Float64Array(n);
  flight.schedule.anglesInto(t, angles, new Float64Array(n));
  return calcShapeMoments(flight.body, [...angles]);
}
