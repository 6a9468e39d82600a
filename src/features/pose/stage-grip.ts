/**
 * Limbs in the pictures above the floor, by mouse and in the tool by finger: the whole limb is the handle there too. Where a
 * limb is under the mouse, it is outlined and named; a press elsewhere is not for posing.
 */

import { createSignal } from 'solid-js';
import { limbsUnder } from '../../app/limb-under.ts';
import { useShell } from '../../app/page.ts';
import type { HeldLimb, StageFigure, StageHandle } from '../../pictures/stage-input.ts';
import { startDrag } from '../../ui/drag.ts';
import type { Gesture } from './gesture.ts';
import { useHand } from './hand.ts';
import { grabLimb } from './limb-end.ts';
import { leadEnd, type ScreenPlace } from './limb-turn.ts';

/** px per m below which the figure is too small for a hand to tell its limbs apart */
const LEAST_SCALE = 60;

export interface StageLimb {
  readonly figure: StageFigure;
  /** its place among the figures of the scene */
  readonly index: number;
  readonly limb: HeldLimb;
}

export function useStageGrip(handle: () => StageHandle | undefined) {
  const shell = useShell();
  const hand = useHand();
  const [hover, setHover] = createSignal<StageLimb>();
  const [grip, setGrip] = createSignal<StageLimb>();
  const [finger, setFinger] = createSignal<ScreenPlace>();

  const find = (e: PointerEvent, x: number, y: number): StageLimb | undefined => {
    const isTouch = e.pointerType !== 'mouse';
    if (isTouch && shell.tool() !== 'pose') return undefined;
    const figures = handle()?.figures() ?? [];
    for (let index = figures.length - 1; index >= 0; index--) {
      const figure = figures[index];
      const { clip } = figure;
      if (figure.pxPerM < LEAST_SCALE) continue;
      if (clip && (x < clip.x || y < clip.y || x > clip.x + clip.width || y > clip.y + clip.height)) continue;
      const [limb] = limbsUnder(figure.limbs, x, y, isTouch);
      if (limb) return { figure, index, limb };
    }
    return undefined;
  };
  /** true: the press took hold of the figure */
  const press = (e: PointerEvent, x: number, y: number): boolean => {
    const found = e.button === 0 ? find(e, x, y) : undefined;
    if (!found) return false;
    setHover(undefined);
    let gesture: Gesture | undefined;
    const stage = e.currentTarget as HTMLElement;
    const { left, top } = stage.getBoundingClientRect();
    const { figure, limb } = found;
    const grab = grabLimb(limb, figure.spots, x, y);
    const done = (): void => {
      setFinger(undefined);
      setGrip(undefined);
    };
    startDrag(e, {
      move: (dx, dy, m) => {
        gesture ??= hand.begin(grab.id);
        setGrip(found);
        // the page above may grow a line while the hand is at work
        const now = stage.getBoundingClientRect();
        const [px, py] = [dx - (now.left - left), dy - (now.top - top)];
        gesture.move({
          by: (share) => leadEnd(grab, px, py, share),
          pxPerM: figure.pxPerM,
          view: figure.view_B,
          other: m.altKey,
        });
        setFinger([x + px, y + py]);
      },
      end: () => {
        done();
        gesture?.settle();
      },
      cancel: () => {
        done();
        gesture?.abandon();
      },
    });
    return true;
  };
  const move = (e: PointerEvent, x: number, y: number): void => {
    if (e.buttons !== 0 || e.pointerType !== 'mouse') return;
    setHover(find(e, x, y));
  };
  return { press, move, leave: () => setHover(undefined), hover, grip, finger };
}
export type StageGrip = ReturnType<typeof useStageGrip>;
