/** What a stage is handed and what it gives: views and their places, other flights, handles, poses held upright. */

import type { FlightResult } from '../engine/result.ts';
import type { HeldLimb, LimbName } from '../scene/held-limbs.ts';
import type { LargeLook } from '../scene/large-look.ts';
import type { Measure } from '../scene/measure.ts';
import type { StageFlight, StagePose } from '../scene/pose-frames.ts';
import type { Scene } from '../scene/scene.ts';
import type { OtherVersion } from '../scene/version-ghost.ts';
import type { UnitSystem } from '../ui/units.ts';

type ViewKind = 'unrolled' | 'side' | 'front' | 'top' | 'upright' | 'large';

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
  /** unrolled: no wedge at the landing and no level */
  readonly calm?: boolean;
  /** unrolled: a line from the mass centre down to the floor */
  readonly plumb?: boolean;
  /** large: the camera, what is shown, and what draws it */
  readonly look?: LargeLook;
  readonly large?: LargePictures;
  /** most ghosts that the place can hold */
  readonly ghosts: number;
}

/** What draws the large stage. */
export interface LargePictures {
  draw(
    place: ViewPlace,
    flight: StageFlight,
    cursor: StagePose,
    poseAt: (t: number) => StagePose,
    others: readonly OtherVersion[],
    units: UnitSystem,
  ): Scene;
  /** what length or angle reads; empty while points are missing */
  wordMeasure(measure: Measure, units: UnitSystem): string;
}

/** Another flight in the same pictures; at the cursor's time t it is at its own time t + shiftS. */
export interface StageVersion {
  readonly letter: 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H';
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
  readonly units: UnitSystem;
  /** words at the landing */
  readonly landing: string;
  readonly extras: StageExtras;
}

type Direction = readonly [number, number, number];

/** How a picture is seen, in the root frame of the body. */
export interface SeenAlong {
  readonly right: Direction;
  readonly up: Direction;
  readonly toward: Direction;
}

/** The figure at the cursor in one of the pictures: its limbs, and the ends that they are led by. px of the canvas. */
export interface StageFigure {
  readonly limbs: readonly HeldLimb[];
  readonly spots: HeldPicture['spots'];
  readonly pxPerM: number;
  readonly view_B: SeenAlong;
  /** what is outside of this is not seen */
  readonly clip?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
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
  /** rad: the picture turned counterclockwise, so that a tilt is seen */
  readonly roll?: number;
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  readonly centreY: number;
  /** drawn as another version: hatched, in dashes */
  readonly outlined?: StageVersion['letter'];
  /** another version behind, at its own instant */
  readonly behind?: {
    readonly letter: StageVersion['letter'];
    readonly result: FlightResult;
    readonly angles: readonly number[];
  };
  /** limbs that are lifted; by finger with a wider gap */
  readonly lift?: { readonly chains: readonly string[]; readonly touch?: boolean };
}

export type { HeldLimb, LimbName };

export interface HeldPicture {
  readonly markup: string;
  /** none: a body of its own, whose limbs have no names here */
  readonly limbs: readonly HeldLimb[];
  /** of the ends that a limb is led by */
  readonly spots: readonly { readonly id: string; readonly x: number; readonly y: number; readonly depth: number }[];
  readonly view_B: SeenAlong;
}

export interface StageHandle {
  draw(input: StageInput): void;
  /** of the picture that was drawn last, in the order of its layers */
  figures(): readonly StageFigure[];
  setTheme(): void;
  destroy(): void;
}

export interface StagePictures {
  /** rejects with a reason when nothing can draw here */
  mount(canvas: HTMLCanvasElement, width: number, height: number): Promise<StageHandle>;
  /** markup of a small figure held upright in the shape of a block */
  tile(result: FlightResult, block: number, widthPx: number, heightPx: number): string;
  /** the same of any pose */
  poseTile(result: FlightResult, angles: readonly number[], widthPx: number, heightPx: number): string;
  held(input: HeldPictureInput): HeldPicture;
}
