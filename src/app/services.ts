/** What the start of the page hands to the rest: what computes, what draws, what is stored. */
import type {
  Athlete,
  ExplainWords,
  FileTakeoff,
  ShapeData,
  SkillFile,
  SkillPlace,
  SkillVerdict,
} from '../../sim/index.ts';
import type { ToolName } from '../commands/actions.ts';
import type { Keeper } from '../document/keep.ts';
import type { Shelf } from '../document/shelf.ts';
import type { Accounting } from '../engine/account.ts';
import type { Asking } from '../engine/ask.ts';
import type { Classing } from '../engine/class.ts';
import type { Comparing } from '../engine/compare.ts';
import type { Sensing } from '../engine/conditioning.ts';
import type { Contacting } from '../engine/contact.ts';
import type { Drafting } from '../engine/draft.ts';
import type { Estimating } from '../engine/estimate.ts';
import type { Filming } from '../engine/film.ts';
import type { Fixing } from '../engine/fix.ts';
import type { Handing } from '../engine/handing.ts';
import type { Jumping } from '../engine/jump.ts';
import type { ChainLegs } from '../engine/legs.ts';
import type { Posing } from '../engine/pose.ts';
import type { Filing } from '../engine/read-files.ts';
import type { SkillReading } from '../engine/read-skill.ts';
import type { FlightResult, OverlapCaution } from '../engine/result.ts';
import type { Trying } from '../engine/try.ts';
import type { ReadLong } from '../jobs/kinds/read-data.ts';
import type { JobCall } from '../jobs/pool.ts';
import type { MovingPictures } from '../moving-picture/moving-input.ts';
import type { Paper } from '../paper/paper.ts';
import type { ClipRoom } from '../pictures/clip-room.ts';
import type { FilmPictures } from '../pictures/film-pictures.ts';
import type { PrintPictures } from '../pictures/print-input.ts';
import type { RecordingRoom } from '../pictures/recording-room.ts';
import type { LargePictures, StagePictures } from '../pictures/stage-input.ts';
import type { WholePictures } from '../pictures/whole-input.ts';
import type { StartMark } from './start-mark.ts';

/** From document to flight, at once. */
export interface Flying {
  /** throws an Error whose message a person can read */
  fly(file: SkillFile, from?: FlightResult): FlightResult;
  /** when what comes before its flight is known, or cannot be computed; at once for one that is flown beside the page */
  ready(file: SkillFile): Promise<void>;
  /** when a flight beside the page has come or was stopped; at once where there is none */
  flown(file: SkillFile): Promise<void>;
  /** the flight beside the page is not wanted */
  cancel(file: SkillFile): void;
  /** a long text, read beside the page; undefined where it is short */
  readLong(text: string): JobCall<ReadLong> | undefined;
  readonly legs: ChainLegs;
  /** throws an Error that names what is wrong in any leg of a chain */
  checkChain(file: SkillFile): void;
  /** a text of JSON; throws an Error that says where it stops being one */
  readJson(text: string): unknown;
  /** throws an Error with field, value and allowed range */
  readFile(json: unknown): SkillFile;
  /** a document of an older build for this one; undefined for one of no known version */
  migrate(doc: unknown): SkillFile | undefined;
  readonly jumping: Jumping;
  /** the take-off that was flown, as a file states it */
  launchedTakeoff(result: FlightResult): FileTakeoff;
  /** the document that was flown as a version 1 file; throws an Error that names what such a file cannot say */
  writeVersion1(result: FlightResult): string;
  /** as readFile, for a file of an athlete */
  readAthlete(json: unknown): Athlete;
  findAthlete(file: SkillFile): Athlete;
  overlaps(result: FlightResult): readonly OverlapCaution[];
  /** by what is said of it, its landing is one that "Fix the landing" is for */
  needsFix(result: FlightResult, verdict: SkillVerdict): boolean;
  /** one sentence; empty before anything moves */
  explain(result: FlightResult, t: number, words: Partial<ExplainWords>): string;
  /** called with a document whose flight was waited for, when it can be flown: what comes before it is known */
  onRelease(listener: (file: SkillFile) => void): void;
  /** what came before a flight and was lost with its worker is asked for again */
  retryReleases(): void;
}

export type SkillLevel = 'basic' | 'intermediate' | 'advanced';
/** What the shelf says of a ready skill: presets/catalogue.json. */
interface AboutSkill {
  readonly place: SkillPlace;
  readonly level: SkillLevel;
  /** what to look at, in one line */
  readonly see: string;
  readonly words: readonly string[];
  /** its place among the three to start with */
  readonly story?: 1 | 2 | 3;
}
export interface PresetSkill {
  readonly id: string;
  readonly file: SkillFile;
  /** comes with the shelf */
  readonly about?: AboutSkill;
}
export interface PresetAthlete {
  readonly id: string;
  readonly athlete: Athlete;
}

/** What the page brings with it. */
interface Presets {
  /** the skill of a first visit */
  readonly first: SkillFile;
  /** what the address names; where work was kept it is opened over it, a step to undo */
  readonly asked: SkillFile | undefined;
  /** shown while what comes before the first flight is computed: it needs nothing before it */
  readonly standIn: SkillFile;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  readonly skills: readonly PresetSkill[];
  readonly athletes: readonly PresetAthlete[];
}

/** What is loaded with the feature that asks for it. */
export interface Loaders {
  large(): Promise<LargePictures>;
  print(): Promise<PrintPictures>;
  moving(): Promise<MovingPictures>;
  paper(): Promise<Paper>;
  accounting(): Promise<Accounting>;
  asking(): Promise<Asking>;
  classing(): Promise<Classing>;
  clip(): Promise<ClipRoom>;
  comparing(): Promise<Comparing>;
  contacting(): Promise<{ readonly engine: Contacting; readonly pictures: WholePictures }>;
  estimating(): Promise<Estimating>;
  filing(): Promise<Filing>;
  filming(): Promise<{ readonly engine: Filming; readonly pictures: FilmPictures }>;
  handing(): Promise<Handing>;
  reading(): Promise<SkillReading>;
  recording(): Promise<RecordingRoom>;
  fixing(): Promise<Fixing>;
  sensing(): Promise<Sensing>;
  trying(): Promise<Trying>;
}

export interface Services {
  readonly flying: Flying;
  readonly posing: Posing;
  readonly drafting: Drafting;
  readonly pictures: StagePictures;
  readonly presets: Presets;
  readonly keeper: Keeper;
  /** left out: in the browser */
  readonly startMark?: StartMark;
  readonly shelf: Shelf;
  readonly load: Loaders;
  /** takes a newer version of the page, where one waits */
  newVersion(): (() => void) | undefined;
  /** handed in: tools are features, which the app does not know */
  readonly tools: readonly ToolName[];
}
