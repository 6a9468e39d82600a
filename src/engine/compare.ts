/**
 * Versions next to each other: flown with something held equal, the table of what differs, one skill with one thing changed,
 * and the changes between two documents. Loaded with the tool that asks.
 */
import {
  type Alignment,
  alignTime,
  answerChange,
  buildSkill,
  type Change,
  type ChangeAnswer,
  type CompareRow,
  compareVersions,
  type HeldEqual,
  holdEqual,
  listChanges,
  type OneChange,
  offerChanges,
  parseSkill,
  relaunch,
  type ShapeData,
  type SkillFile,
  type SkillSpec,
  summarize,
  updateSkill,
  type Version,
} from '../../sim/index.ts';
import type { Engine } from './engine.ts';
import { type Landings, makeLandings } from './landings.ts';
import type { FlightResult } from './result.ts';

export type { Alignment, Change, CompareRow, HeldEqual };

export interface Comparing extends Landings {
  /** `b` with the take-off of `a` as far as `held` says; `b` itself for 'own' */
  hold(a: FlightResult, b: FlightResult, held: HeldEqual): FlightResult;
  /** values of each and differences from the first */
  compare(results: readonly FlightResult[], align: Alignment): readonly CompareRow[];
  /** s from take-off; undefined where the flight has no such event */
  alignTime(result: FlightResult, align: Alignment): number | undefined;
  /** what can be asked of the skill, one thing changed, in the order of asking */
  offers(result: FlightResult): readonly OneChange[];
  /** with the launch of `result`; its file has the title given */
  flyChange(result: FlightResult, change: OneChange, title: string): FlightResult;
  answerChange(change: OneChange, own: FlightResult, other: FlightResult): ChangeAnswer;
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
  const specs = new WeakMap<SkillFile, SkillSpec>();
  // an athlete of the shelf is written out: the spec is that of the flight
  const specOf = ({ file, athlete }: FlightResult): SkillSpec => {
    const known = specs.get(file);
    if (known) return known;
    const made = parseSkill({ ...file, athlete }, { athletes: {}, shapes });
    specs.set(file, made);
    return made;
  };
  return {
    ...landings,
    hold: (a, b, held) =>
      held === 'own' ? b : engine.flyAs(b.file, holdEqual(a.skill, b.skill, held, { a: a.flight, b: b.flight })),
    compare: (results, align) => compareVersions(results.map(versionOf), align),
    alignTime: (result, align) => alignTime(result.flight, align),
    offers: (result) => {
      const { skill, flight, frames } = result;
      return offerChanges({ spec: specOf(result), skill, flight, frames }).filter((one) => 'spec' in one);
    },
    flyChange: (result, change, title) => {
      const { file, skill } = result;
      const spec = { ...change.spec, title };
      const { schedule, contacts = [], start } = buildSkill(spec);
      const stated = start.kind === 'stated' ? { takeoff: start.takeoff } : {};
      return engine.flyAs(
        updateSkill(file, specOf(result), spec),
        relaunch(skill, { title, schedule, contacts, ...stated }),
      );
    },
    answerChange: (change, own, other) => answerChange(change, own.frames, other.frames),
    changes: listChanges,
  };
}
