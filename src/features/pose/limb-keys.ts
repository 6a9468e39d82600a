/** A limb of the figure turned by keys: a key held down is one gesture, as a drag is. */
import { onCleanup } from 'solid-js';
import { usePage } from '../../app/page.ts';
import type { LimbName } from '../../pictures/stage-input.ts';
import type { FigureViews, HeldViewName } from './figure-views.ts';
import { keepGrabbed } from './first-lift.ts';
import type { Gesture } from './gesture.ts';
import { useHand } from './hand.ts';
import { grabLimb } from './limb-end.ts';
import { type Grab, type ScreenPlace, turnEnd, wayOf } from './limb-turn.ts';
import type { MeantLimb } from './meant-limb.ts';
import { usePoseTab } from './pose-tab.ts';

const STEP_DEG = { near: 1, far: 5 } as const;
const ARROWS: Readonly<Record<string, ScreenPlace>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export function useLimbKeys(figure: FigureViews, meant: MeantLimb) {
  const page = usePage();
  const hand = useHand();
  const [, setTab] = usePoseTab();
  let held: { readonly gesture: Gesture; readonly key: string; readonly grab: Grab; turn: number } | undefined;
  const finish = (): void => {
    held?.gesture.settle();
    held = undefined;
  };
  onCleanup(finish);
  const onKeyDown = (e: KeyboardEvent, view: HeldViewName, id: LimbName): void => {
    const take = (): void => {
      e.preventDefault();
      e.stopPropagation();
    };
    if (e.key === 'Escape') {
      if (held) {
        held.gesture.abandon();
        held = undefined;
        take();
      } else if (hand.putBack() || meant.choice() || meant.picked()) {
        meant.letGo();
        take();
      }
      return;
    }
    if (e.key === 'Enter') {
      take();
      setTab('angles');
      if (page.shell.tool() !== 'pose') page.shell.openTool('pose');
      return;
    }
    const arrow = ARROWS[e.key];
    const picture = figure.pictures()[view];
    const limb = figure.limbIn(view, id);
    if (!arrow || e.ctrlKey || e.metaKey || !limb || !picture) return;
    take();
    keepGrabbed();
    if (held && held.key !== e.key) finish();
    if (!held) {
      const [x, y] = limb.line[0];
      const grab = grabLimb(limb, picture.spots, x, y, true);
      held = { gesture: hand.begin(grab.id), key: e.key, grab, turn: 0 };
    }
    const raises = view === 'side' || held.grab.pivot[0] < figure.middle() ? 1 : -1;
    const step = ((e.shiftKey ? STEP_DEG.far : STEP_DEG.near) * Math.PI) / 180;
    held.turn += step * wayOf(held.grab, arrow, raises);
    const { turn, grab } = held;
    held.gesture.move({
      by: (share) => turnEnd(grab, share * turn),
      pxPerM: figure.size().pxPerM,
      view: picture.view_B,
      other: e.altKey,
    });
  };
  const onKeyUp = (e: KeyboardEvent): void => {
    if (held && e.key === held.key) finish();
  };
  return { onKeyDown, onKeyUp, finish };
}
