/** A limb of the figure dragged by mouse or finger: the press finds it, and the hand leads it. */
import { type Accessor, batch, createSignal } from 'solid-js';
import { startDrag } from '../../ui/drag.ts';
import type { FigureViews, HeldViewName } from './figure-views.ts';
import { keepGrabbed } from './first-lift.ts';
import type { Gesture } from './gesture.ts';
import { useHand } from './hand.ts';
import { grabLimb } from './limb-end.ts';
import { leadEnd } from './limb-turn.ts';
import type { MeantLimb } from './meant-limb.ts';

/** Where the pointer is that leads a limb, px of the figure. */
export interface Finger {
  readonly x: number;
  readonly y: number;
  readonly view: HeldViewName;
  readonly isTouch: boolean;
}

/** Made before the pictures are, which lift a limb more by finger. */
export const createFinger = () => createSignal<Finger>();

export function useLimbDrag(
  root: Accessor<HTMLElement>,
  figure: FigureViews,
  meant: MeantLimb,
  setFinger: (finger: Finger | undefined) => void,
) {
  const hand = useHand();
  const press = (e: PointerEvent): void => {
    if (meant.isOnControl(e) || e.button !== 0) return;
    const isTouch = e.pointerType !== 'mouse';
    const [x, y] = meant.placeOf(e);
    const found = meant.find(x, y, isTouch);
    if (!found) {
      meant.letGo();
      return;
    }
    e.preventDefault();
    if (isTouch && found.limbs.length > 1) {
      meant.setChoice(found);
      return;
    }
    const { view } = found;
    const [limb] = found.limbs;
    batch(() => {
      meant.setChoice(undefined);
      meant.setHover(undefined);
      if (meant.picked() !== limb.id) meant.setPicked(undefined);
    });
    meant.targetOf(view, limb.id)?.focus({ preventScroll: true });
    keepGrabbed();
    const picture = figure.pictures()[view];
    if (!picture) return;
    const grab = grabLimb(limb, picture.spots, x - figure.leftOf(view), y);
    const { pxPerM } = figure.size();
    const seen = picture.view_B;
    const box = root().getBoundingClientRect();
    let gesture: Gesture | undefined;
    startDrag(e, {
      move: (dx, dy, m) => {
        gesture ??= hand.begin(grab.id);
        // the page above may grow a line while the hand is at work: what counts is the way over the picture
        const now = root().getBoundingClientRect();
        const [wx, wy] = [dx - (now.left - box.left), dy - (now.top - box.top)];
        batch(() => {
          setFinger({ x: x + wx, y: y + wy, view, isTouch });
          gesture?.move({ by: (share) => leadEnd(grab, wx, wy, share), pxPerM, view: seen, other: m.altKey });
        });
      },
      end: () => {
        setFinger(undefined);
        gesture?.settle();
      },
      cancel: () => {
        setFinger(undefined);
        gesture?.abandon();
      },
    });
  };
  return press;
}
