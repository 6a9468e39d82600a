/** The athlete held upright in one view or two: where the pictures are, how large, and where the limbs are in them. Under a hand at work they keep still. px */
import { type Accessor, createMemo } from 'solid-js';
import { usePage } from '../../app/page.ts';
import type { HeldLimb, HeldPicture, LimbName, StageVersion } from '../../pictures/stage-input.ts';
import { useHand } from './hand.ts';
import { useHeldFit } from './held-fit.ts';
import { outlinesOf } from './limb-boxes.ts';
import type { ScreenPlace } from './limb-turn.ts';

export type HeldViewName = 'front' | 'side';
const AZIMUTH: Readonly<Record<HeldViewName, number>> = { front: 0, side: Math.PI / 2 };

export interface HandlePlace {
  readonly width: number;
  readonly height: number;
  /** placed for fingers: larger buttons, the plate clear of the finger */
  readonly touch?: boolean;
  /** px from the left to the figure's middle; left out: the middle of the room */
  readonly centre?: number;
  /** both views beside each other; left out: the one that shows the shape at the cursor */
  readonly both?: boolean;
  /** s: the shape at this time stays pale behind */
  readonly ghostS?: number;
  /** another version at its own instant, behind */
  readonly behind?: Pick<StageVersion, 'letter' | 'result'>;
  /** degrees, + head to the athlete's right: seen with this tilt, against the upright; left out: held upright */
  readonly tiltDeg?: number;
}

/** A body folded at the hips by more than this, rad, is seen from its side. */
const FOLDED = 0.7;
/** Share of the width to the figure's middle on touch: the plate is at its right, buttons are in the corners at its left. On a phone a wide arm, a finger and the plate are beside each other. */
const touchCentre = (width: number): number => (width > 340 && width < 480 ? 0.32 : 0.39);

interface Lift {
  readonly chains: Accessor<readonly LimbName[]>;
  readonly isTouch: Accessor<boolean>;
}

export function useFigureViews(props: HandlePlace, lift: Lift) {
  const page = usePage();
  const { flight, services, cursor } = page;
  const hand = useHand();
  const angles = createMemo(() => hand.shown()?.angles ?? services.posing.anglesAt(flight.result(), cursor.at()));
  const views = createMemo<readonly HeldViewName[]>((last) => {
    if (props.both) return ['front', 'side'];
    // a tilt is seen from the front
    if (props.tiltDeg !== undefined) return ['front'];
    if (last && hand.active()) return last;
    const { body } = flight.result().flight;
    const isFolded = body.angles.some(({ name }, a) => name.startsWith('hipFlexion') && angles()[a] > FOLDED);
    return [isFolded ? 'side' : 'front'];
  });
  const wide = (): number => Math.floor(props.width / views().length);
  const leftOf = (view: HeldViewName): number => views().indexOf(view) * wide();
  const middle = (): number =>
    props.both ? wide() / 2 : (props.centre ?? wide() * (props.touch ? touchCentre(wide()) : 0.5));
  /** the picture keeps its size while the hand is at work */
  const height = createMemo<number>((last) => (hand.active() && last ? last : props.height));
  const size = useHeldFit(
    page,
    () => ({ width: wide(), height: height(), beside: Math.min(middle(), wide() - middle()) }),
    () => views().map((view) => AZIMUTH[view]),
    () => props.ghostS,
  );
  /** the picture must not turn under a hand at work */
  const roll = createMemo<number>((last) => (hand.active() ? last : ((props.tiltDeg ?? 0) * Math.PI) / 180), 0);
  const ghost = createMemo(() => services.posing.anglesAt(flight.result(), props.ghostS ?? 0));
  const behindAt = createMemo(() => {
    if (!props.behind) return undefined;
    const { letter, result } = props.behind;
    const s = Math.min(cursor.at(), result.flight.duration);
    return { letter, result, angles: services.posing.anglesAt(result, s) };
  });
  const pictures = createMemo((): Partial<Record<HeldViewName, HeldPicture>> => {
    const work = hand.shown();
    const other = work ? undefined : behindAt();
    const before = work?.before ?? (props.ghostS === undefined ? undefined : ghost());
    const draw = (view: HeldViewName): HeldPicture =>
      services.pictures.held({
        result: flight.result(),
        angles: angles(),
        ...(work ? { camera: work.camera } : {}),
        ...(before ? { before } : {}),
        ...(other ? { behind: other } : {}),
        azimuth: AZIMUTH[view],
        ...(props.tiltDeg === undefined ? {} : { roll: roll() }),
        // the mass centre is in the middle of the picture
        width: 2 * middle(),
        height: height(),
        ...size(),
        lift: { chains: lift.chains(), ...(lift.isTouch() ? { touch: true } : {}) },
      });
    return Object.fromEntries(views().map((view) => [view, draw(view)]));
  });
  const limbIn = (view: HeldViewName, id: string): HeldLimb | undefined =>
    pictures()[view]?.limbs.find((limb) => limb.id === id);
  const spotOf = (view: HeldViewName, end: string): ScreenPlace | undefined => {
    const spot = pictures()[view]?.spots.find(({ id }) => id === end);
    return spot && [spot.x + leftOf(view), spot.y];
  };
  /** everything that a plate must not cover */
  const outlines = createMemo(() => views().flatMap((view) => outlinesOf(pictures()[view], leftOf(view))));
  return { angles, views, wide, leftOf, middle, height, size, pictures, limbIn, spotOf, outlines };
}
export type FigureViews = ReturnType<typeof useFigureViews>;
