/** What the panels are handed by the start of the page: who computes, who draws, what stands on the shelf. */

import type { Athlete, ExplainWords, ShapeData, SkillFile } from '../../sim/index.ts';
import type { ToolName } from '../commands/actions.ts';
import type { Keeper } from '../document/keep.ts';
import type { Shelf } from '../document/shelf.ts';
import type { Accounting } from '../engine/account.ts';
import type { Asking } from '../engine/ask.ts';
import type { Comparing } from '../engine/compare.ts';
import type { Contacting } from '../engine/contact.ts';
import type { Drafting } from '../engine/draft.ts';
import type { Estimating } from '../engine/estimate.ts';
import type { Posing } from '../engine/pose.ts';
import type { FlightResult, OverlapCaution } from '../engine/result.ts';
import type { PrintPorts } from '../pictures/print-ports.ts';
import type { StagePorts } from '../pictures/stage-input.ts';
import type { WholePictures } from '../pictures/whole-ports.ts';

export interface ShelfSkill {
  readonly id: string;
  readonly file: SkillFile;
}
export interface ShelfAthlete {
  readonly id: string;
  readonly athlete: Athlete;
}

/** What whole skills need: who computes, who draws. */
export interface ContactPorts {
  readonly engine: Contacting;
  readonly pictures: WholePictures;
}

export interface BenchPorts {
  /** throws an Error whose message a person can read */
  fly(file: SkillFile, from?: FlightResult): FlightResult;
  /** throws an Error with field, value and allowed range */
  readFile(json: unknown): SkillFile;
  /** as readFile, for a file of an athlete */
  readAthlete(json: unknown): Athlete;
  findAthlete(file: SkillFile): Athlete;
  overlaps(result: FlightResult): readonly OverlapCaution[];
  /** one sentence; empty before anything moves */
  explain(result: FlightResult, t: number, words: Partial<ExplainWords>): string;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly skills: readonly ShelfSkill[];
  readonly athletes: readonly ShelfAthlete[];
  readonly keeper: Keeper;
  readonly shelf: Shelf;
  readonly drafting: Drafting;
  readonly loadPrint: () => Promise<PrintPorts>;
  readonly first: SkillFile;
  readonly stage: StagePorts;
  loadContacting(): Promise<ContactPorts>;
  /** called when a flight that was waited for can be flown: what comes before it is known */
  onRelease(listener: () => void): void;
  /** with the tool that asks for it */
  loadComparing(): Promise<Comparing>;
  loadAccounting(): Promise<Accounting>;
  loadAsking(): Promise<Asking>;
  loadEstimating(): Promise<Estimating>;
  readonly posing: Posing;
  /** handed in: the tools are panels of the bench, so the bench cannot import their list */
  readonly tools: readonly ToolName[];
}
