/**
 * What a look is made of: parts of blobs, in the order the body gives them, and the builder that collects them.
 */
import type { FromTo, Vec3 } from '../../sim/index.ts';
import type { Blob } from './blobs.ts';

export interface EyeLook {
  readonly blob: number;
  readonly normal: Vec3;
}

/** The head's blobs, by what they are. */
export interface HeadLook {
  readonly segment: number;
  readonly neck: readonly number[];
  readonly skull: number;
  readonly chin: readonly number[];
  readonly jaw: readonly number[];
  readonly knot: readonly number[];
  /** left and right; which way they point from the middle of the skull */
  readonly eyes: readonly EyeLook[];
  /** half axes of the skull, m */
  readonly radii: Vec3;
}

type Tone = 'left' | 'right' | 'trunk' | 'head';

/** One piece that is put in depth order as a whole. */
export interface LookPart {
  readonly name: string;
  /** parts of one limb have the same chain and may be drawn as one shape */
  readonly chain: string;
  readonly tone: Tone;
  readonly segment: number;
  /** indices of blobs; every list is one convex piece */
  readonly hulls: readonly (readonly number[])[];
  /** indices of sphere blobs that stand for the part when depths are compared */
  readonly probes: readonly number[];
}

/** A tape band across a limb: between two blobs at a share of the way. */
export interface Band extends FromTo {
  readonly part: string;
  readonly share: number;
  /** half length of the band, m */
  readonly half: number;
}

export interface Look {
  readonly blobs: readonly Blob[];
  readonly parts: readonly LookPart[];
  readonly bands: readonly Band[];
  /** lines on the trunk, blob indices: the neckline in front, the spine behind */
  readonly neckline: readonly number[];
  readonly spine: readonly number[];
  readonly chest: number;
  readonly head?: HeadLook;
  /** segment indices by name */
  readonly index: ReadonlyMap<string, number>;
  readonly human: boolean;
}

/** Collects blobs and gives their indices. */
export class LookBuilder {
  readonly blobs: Blob[] = [];
  readonly parts: LookPart[] = [];
  readonly bands: Band[] = [];

  add(segment: number, p: Vec3, r: Vec3 | number): number {
    this.blobs.push({ segment, p, r });
    return this.blobs.length - 1;
  }
}

/** How large things are drawn against those of a 1.62 m athlete: k lengths, g girths. */
export interface Sizes {
  readonly g: number;
  readonly k: number;
}

export const mix = (a: Vec3, b: Vec3, s: number): Vec3 => [
  a[0] + (b[0] - a[0]) * s,
  a[1] + (b[1] - a[1]) * s,
  a[2] + (b[2] - a[2]) * s,
];
export const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
