/** Crosses on the plate: what is placed, where each is, and where it goes. From taking them up to Done is one step of undo. */
import type { ClipMeasured, ClipScale, ClipStand, Spot } from '../../../sim/index.ts';
import { clipTexts as t } from './clip-words.ts';

/** What is placed by crosses. */
export type PlacingHand = 'length' | 'plane' | 'post' | 'feet';
export const isPlacing = (hand: string): hand is PlacingHand => ['length', 'plane', 'post', 'feet'].includes(hand);

export interface Cross {
  readonly name: string;
  readonly spot: Spot;
  readonly hand: PlacingHand;
  put(spot: Spot): Partial<ClipMeasured>;
}

interface PictureSize {
  readonly width: number;
  readonly height: number;
}

type Plane = Extract<ClipScale, { kind: 'plane' }>;
type Post = NonNullable<Plane['posts']>[number];

/** Where crosses are taken up; m of a mat in a gym (judgement). */
const MAT = { widthM: 6, depthM: 2 } as const;
const POST_M = 1;
const at = ({ width, height }: PictureSize, x: number, y: number): Spot => [x * width, y * height];

/** What there is to place when a hand is taken up; nothing where it is there already, or cannot be. */
export function beginPlacing(
  hand: PlacingHand,
  { scale, stand }: ClipMeasured,
  size: PictureSize,
  bodyM: number,
): Partial<ClipMeasured> {
  switch (hand) {
    case 'length':
      return scale?.kind === 'length'
        ? {}
        : { scale: { kind: 'length', from: at(size, 0.5, 0.75), to: at(size, 0.5, 0.4), lengthM: bodyM } };
    case 'plane':
      return scale?.kind === 'plane'
        ? {}
        : {
            scale: {
              kind: 'plane',
              corners: [at(size, 0.2, 0.9), at(size, 0.8, 0.9), at(size, 0.7, 0.75), at(size, 0.3, 0.75)],
              ...MAT,
            },
          };
    case 'post': {
      if (scale?.kind !== 'plane') return {};
      const post: Post = { foot: at(size, 0.25, 0.75), top: at(size, 0.25, 0.55), heightM: POST_M };
      return { scale: { ...scale, posts: [...(scale.posts ?? []), post] } };
    }
    case 'feet':
      return stand ? {} : { stand: { feet: at(size, 0.5, 0.8), goesRight: true } };
  }
}

/** All that are there; one can be moved while its hand is taken up. */
export function crossesOf({ scale, stand }: ClipMeasured): Cross[] {
  return [...scaleCrosses(scale), ...standCrosses(stand)];
}

function scaleCrosses(scale: ClipScale | undefined): Cross[] {
  if (!scale) return [];
  if (scale.kind === 'length')
    return (['from', 'to'] as const).map((end) => ({
      name: t.crosses[end],
      spot: scale[end],
      hand: 'length',
      put: (spot) => ({ scale: { ...scale, [end]: spot } }),
    }));
  const { corners, posts = [] } = scale;
  return [
    ...corners.map(
      (spot, i): Cross => ({
        name: t.crosses.corners[i],
        spot,
        hand: 'plane',
        put: (next) => {
          const moved = corners.map((corner, j) => (i === j ? next : corner));
          return { scale: { ...scale, corners: moved as unknown as Plane['corners'] } };
        },
      }),
    ),
    ...posts.flatMap((post, i) =>
      (['foot', 'top'] as const).map(
        (end): Cross => ({
          name: t.crosses[end],
          spot: post[end],
          hand: 'post',
          put: (spot) => ({
            scale: { ...scale, posts: posts.map((one, j) => (i === j ? { ...one, [end]: spot } : one)) },
          }),
        }),
      ),
    ),
  ];
}

const standCrosses = (stand: ClipStand | undefined): Cross[] =>
  stand
    ? [{ name: t.crosses.feet, spot: stand.feet, hand: 'feet', put: (feet) => ({ stand: { ...stand, feet } }) }]
    : [];
