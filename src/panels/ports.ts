/** What the panels are handed by the start of the page: who computes, who draws, what stands on the shelf. */
import type { Athlete, ExplainWords, ShapeData, SkillFile } from '../../sim/index.ts';
import type { ToolName } from '../commands/actions.ts';
import type { Keeper } from '../document/keep.ts';
import type { Shelf } from '../document/shelf.ts';
import type { Accounting } from '../engine/account.ts';
import type { Asking } from '../engine/ask.ts';
import type { Comparing } from '../engine/compare.ts';
import type { Contacting } from '../engine/contact.ts';
import type { ToldTakeoff } from '../engine/contact-messages.ts';
import type { Drafting } from '../engine/draft.ts';
import type { Estimating } from '../engine/estimate.ts';
import type { Posing } from '../engine/pose.ts';
import type { FlightResult, OverlapCaution } from '../engine/result.ts';
import type { LargeLook } from '../scene/large-look.ts';
import type { Measure } from '../scene/measure.ts';
import type { WholePictures } from './contact/whole-ports.ts';

import type { PrintPorts } from './print-ports.ts';

export type ViewKind = 'unrolled' | 'side' | 'front' | 'top' | 'upright' | 'large';

/** One view and its place on the canvas, CSS px; the floor is at `floorY` below the view's top. */
export interface ViewPlace {
  readonly kind: ViewKind;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly floorY: number;
  readonly pxPerM: number;
  /** unrolled: x of t = 0 in the view, and px per second. Side and top: x of X = 0 */
  readonly x0: number;
  readonly pxPerS: number;
  /** unrolled: right edge and size of the height labels. Upright: px of the mass centre from the top */
  readonly labelX?: number;
  readonly labelSize?: number;
  readonly centreY?: number;
  /** unrolled: no words at the landing, where they have no room */
  readonly unlabelled?: boolean;
  /** large: the camera, and what is shown */
  readonly look?: LargeLook;
  /** most ghosts that the place can hold */
  readonly ghosts: number;
}

/** Another flight in the same pictures; at the cursor's time t it stands at its own time t + shiftS. */
export interface StageVersion {
  readonly letter: 'B' | 'C' | 'D';
  readonly result: FlightResult;
  readonly shiftS: number;
}

/** A plain body over the athlete, about an axis of the body frame; m. */
export interface StageBody {
  readonly kind: 'rod' | 'disc' | 'ball' | 'cylinder' | 'point mass';
  readonly about: 'lateral' | 'front-back' | 'long';
  /** length of a rod, radius of the others */
  readonly size: number;
}

/** What tools add to the pictures; each tool owns its field. */
export interface StageExtras {
  readonly versions?: readonly StageVersion[];
  readonly plainBodies?: readonly StageBody[];
}

export interface StageInput {
  readonly result: FlightResult;
  readonly cursorS: number;
  readonly width: number;
  readonly height: number;
  readonly views: readonly ViewPlace[];
  readonly unrolling: number;
  readonly extras: StageExtras;
}

type Direction = readonly [number, number, number];

/** A handle of the figure at the cursor, and how its picture is seen. px of the canvas. */
export interface FigureGrip {
  readonly end: string;
  readonly x: number;
  readonly y: number;
  readonly pxPerM: number;
  readonly view_B: { readonly right: Direction; readonly up: Direction; readonly toward: Direction };
  /** the picture it was found in */
  readonly layer: number;
}

/** The athlete held upright, for posing. */
export interface HeldPictureInput {
  readonly result: FlightResult;
  readonly angles: readonly number[];
  /** the body that the camera was set up by; while a hand is at work it must not turn with the limb */
  readonly camera?: { readonly R_WF: Float64Array; readonly p_WScm_W: Direction };
  readonly before?: readonly number[];
  /** 0: from the front; pi/2: the athlete's left side */
  readonly azimuth: number;
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly centreY: number;
}

export interface HeldPicture {
  readonly markup: string;
  readonly spots: readonly { readonly id: string; readonly x: number; readonly y: number; readonly depth: number }[];
  readonly view_B: FigureGrip['view_B'];
}

export interface StageHandle {
  draw(input: StageInput): void;
  /** of the picture that was drawn last */
  findGrip(x: number, y: number, reachPx: number): FigureGrip | undefined;
  followGrip(grip: FigureGrip): { readonly x: number; readonly y: number } | undefined;
  setTheme(): void;
  destroy(): void;
}

export interface StagePorts {
  /** rejects with a reason when nothing can draw here */
  mount(canvas: HTMLCanvasElement, width: number, height: number): Promise<StageHandle>;
  /** markup of a small figure held upright in the shape of a block */
  tile(result: FlightResult, block: number, widthPx: number, heightPx: number): string;
  /** the same of any pose */
  poseTile(result: FlightResult, angles: readonly number[], widthPx: number, heightPx: number): string;
  held(input: HeldPictureInput): HeldPicture;
  /** what tape or angle reads; empty while points are missing */
  wordMeasure(measure: Measure | undefined): string;
}

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
  /** what a swing or a known push gives the flight of this file; true when that is news */
  setRelease(file: SkillFile, takeoff: ToldTakeoff): boolean;
  /** with the tool that asks for it */
  loadComparing(): Promise<Comparing>;
  loadAccounting(): Promise<Accounting>;
  loadAsking(): Promise<Asking>;
  loadEstimating(): Promise<Estimating>;
  readonly posing: Posing;
  /** handed in: the tools are panels of the bench, so the bench cannot import their list */
  readonly tools: readonly ToolName[];
}
