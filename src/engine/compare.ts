/**
 * Versions next to each other: flown with something held equal, the table of what differs, the pair of arms wide and arms
 * in, and the changes between two documents. Loaded with the tool that asks.
 */
import {
  type Alignment,
  alignTime,
  armsWideAgainstIn,
  type Change,
  type CompareRow,
  compareVersions,
  type HeldEqual,
  holdEqual,
  listChanges,
  type ShapeData,
  type SkillFile,
  summarize,
  type Version,
} from '../../sim/index.ts';
import { fileOfArms } from './compare-arms.ts';
import type { Engine } from './engine.ts';
import { type Landings, makeLandings } from './landings.ts';
import type { FlightResult } from './result.ts';

export type { Alignment, Change, CompareRow, HeldEqual };

/** title of the skill, and a short word for its pose */
interface ArmsWords {
  readonly title: string;
  readonly word: string;
}

export interface Comparing extends Landings {
  /** `b` with the take-off of `a` as far as `held` says; `b` itself for 'own' */
  hold(a: FlightResult, b: FlightResult, held: HeldEqual): FlightResult;
  /** values of each and differences from the first */
  compare(results: readonly FlightResult[], align: Alignment): readonly CompareRow[];
  /** s from take-off; undefined where the flight has no such event */
  alignTime(result: FlightResult, align: Alignment): number | undefined;
  /** throws an Error for a body without shoulders */
  armsWideAndIn(result: FlightResult, words: { wide: ArmsWords; in: ArmsWords }): { wide: SkillFile; in: SkillFile };
  changes(before: SkillFile, after: SkillFile): readonly Change[];
}

export function makeComparing(
  engine: Pick<Engine, 'flyAs'>,
  shapes: Readonly<Record<string, ShapeData>>,
  landings = makeLandings(shapes),
): Comparing {
  const versions = new WeakMap<FlightResult, Version>();
  const versionOf = (result: FlightResult): Version => {
    const known = versions.get(result);
    if (known) return known;
    const { skill, flight, frames } = result;
    const made = { skill, flight, frames, summary: summarize(flight, frames, skill.target) };
    versions.set(result, made);
    return made;
  };
  return {
    ...landings,
    hold: (a, b, held) =>
      held === 'own' ? b : engine.flyAs(b.file, holdEqual(a.skill, b.skill, held, { a: a.flight, b: b.flight })),
    compare: (results, align) => compareVersions(results.map(versionOf), align),
    alignTime: (result, align) => alignTime(result.flight, align),
    armsWideAndIn: (result, words) => {
      const pair = armsWideAgainstIn(result.skill, { flight: result.flight });
      return {
        wide: fileOfArms(result.file, pair.wide, words.wide),
        in: fileOfArms(result.file, pair.in, words.in),
      };
    },
    changes: listChanges,
  };
}
