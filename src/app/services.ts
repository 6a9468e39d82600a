/** What the start of the page hands to the rest: what computes, what draws, what is stored. */
import type { Athlete, ExplainWords, FileTakeoff, ShapeData, SkillFile } from '../../sim/index.ts';
import type { ToolName } from '../commands/actions.ts';
import type { Keeper } from '../document/keep.ts';
import type { Shelf } from '../document/shelf.ts';
import type { Accounting } from '../engine/account.ts';
import type { Asking } from '../engine/ask.ts';
import type { Comparing } from '../engine/compare.ts';
import type { Sensing } from '../engine/conditioning.ts';
import type { Contacting } from '../engine/contact.ts';
import type { Drafting } from '../engine/draft.ts';
import type { Estimating } from '../engine/estimate.ts';
import type { ChainLegs } from '../engine/legs.ts';
import type { Posing } from '../engine/pose.ts';
import type { FlightResult, OverlapCaution } from '../engine/result.ts';
import type { PrintPictures } from '../pictures/print-input.ts';
import type { StagePictures } from '../pictures/stage-input.ts';
import type { WholePictures } from '../pictures/whole-input.ts';

/** From document to flight, at once. */
export interface Flying {
  /** throws an Error whose message a person can read */
  fly(file: SkillFile, from?: FlightResult): FlightResult;
  readonly legs: ChainLegs;
  /** throws an Error that names what is wrong in any leg of a chain */
  checkChain(file: SkillFile): void;
  /** a text of JSON; throws an Error that says where it stops being one */
  readJson(text: string): unknown;
  /** throws an Error with field, value and allowed range */
  readFile(json: unknown): SkillFile;
  /** a document of an older build for this one; undefined for one of no known version */
  migrate(doc: unknown): SkillFile | undefined;
  /** the take-off that was flown, as a file states it */
  launchedTakeoff(result: FlightResult): FileTakeoff;
  /** the document that was flown as a version 1 file; throws an Error that names what such a file cannot say */
  writeVersion1(result: FlightResult): string;
  /** as readFile, for a file of an athlete */
  readAthlete(json: unknown): Athlete;
  findAthlete(file: SkillFile): Athlete;
  overlaps(result: FlightResult): readonly OverlapCaution[];
  /** one sentence; empty before anything moves */
  explain(result: FlightResult, t: number, words: Partial<ExplainWords>): string;
  /** called with a document whose flight was waited for, when it can be flown: what comes before it is known */
  onRelease(listener: (file: SkillFile) => void): void;
  /** what came before a flight and was lost with its worker is asked for again */
  retryReleases(): void;
}

export interface PresetSkill {
  readonly id: string;
  readonly file: SkillFile;
}
export interface PresetAthlete {
  readonly id: string;
  readonly athlete: Athlete;
}

/** What the page brings with it. */
interface Presets {
  /** the skill of a first visit */
  readonly first: SkillFile;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly skills: readonly PresetSkill[];
  readonly athletes: readonly PresetAthlete[];
}

/** What is loaded with the feature that asks for it. */
export interface Loaders {
  print(): Promise<PrintPictures>;
  accounting(): Promise<Accounting>;
  asking(): Promise<Asking>;
  comparing(): Promise<Comparing>;
  contacting(): Promise<{ readonly engine: Contacting; readonly pictures: WholePictures }>;
  estimating(): Promise<Estimating>;
  sensing(): Promise<Sensing>;
}

export interface Services {
  readonly flying: Flying;
  readonly posing: Posing;
  readonly drafting: Drafting;
  readonly pictures: StagePictures;
  readonly presets: Presets;
  readonly keeper: Keeper;
  readonly shelf: Shelf;
  readonly load: Loaders;
  /** handed in: tools are features, which the app does not know */
  readonly tools: readonly ToolName[];
}
