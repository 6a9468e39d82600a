import { inNextTask } from './frame.ts';

/**
 * One pointer from press to release, mouse, pen or finger: moves in px from the start. Escape, a second finger, a pointer that is
 * lost and cancel take it back.
 */
interface DragSteps {
  start?(e: PointerEvent): void;
  /** in a task of its own, with the last place that is known: what it changes is drawn in the next frame */
  move(dx: number, dy: number, e: PointerEvent): void;
  /** moved: false for a plain press */
  end(moved: boolean): void;
  cancel(): void;
}

/** px a press may wander before it is a drag */
const DEAD_PX = 3;

let cancelLast: (() => void) | undefined;

/** The drag under way, if any, is taken back: what it was begun on is there no more. */
export function cancelDrag(): void {
  cancelLast?.();
}

export function startDrag(e: PointerEvent, steps: DragSteps): void {
  if (e.button !== 0) return;
  const target = e.currentTarget as HTMLElement;
  const { clientX, clientY, pointerId } = e;
  let moved = false;
  try {
    target.setPointerCapture(pointerId);
  } catch {
    // the pointer may be gone already; moves then still arrive while it is over the target
  }
  steps.start?.(e);
  const move = (m: PointerEvent): void => {
    if (m.pointerId !== pointerId) return;
    // let go where nothing was heard of it, outside of the window
    if (m.pointerType === 'mouse' && m.buttons === 0) {
      cancel();
      return;
    }
    const [dx, dy] = wayOf(m);
    if (!moved && Math.hypot(dx, dy) < DEAD_PX) return;
    moved = true;
    if (!last) inNextTask(moveOn);
    last = m;
  };
  const wayOf = (m: PointerEvent): [number, number] => [m.clientX - clientX, m.clientY - clientY];
  /** the place that no task has seen yet */
  let last: PointerEvent | undefined;
  const moveOn = (): void => {
    const m = last;
    last = undefined;
    if (m) steps.move(...wayOf(m), m);
  };
  const stop = (): void => {
    if (cancelLast === cancel) cancelLast = undefined;
    window.removeEventListener('pointermove', move);
    window.removeEventListener('pointerup', up);
    window.removeEventListener('pointercancel', cancel);
    window.removeEventListener('keydown', key, true);
    window.removeEventListener('pointerdown', second, true);
    target.removeEventListener('lostpointercapture', lost);
  };
  const second = (d: PointerEvent): void => {
    if (d.pointerId !== pointerId) cancel();
  };
  const lost = (l: PointerEvent): void => {
    if (l.pointerId === pointerId) cancel();
  };
  const up = (u: PointerEvent): void => {
    if (u.pointerId !== pointerId) return;
    stop();
    moveOn();
    steps.end(moved);
  };
  const cancel = (): void => {
    stop();
    last = undefined;
    steps.cancel();
  };
  const key = (k: KeyboardEvent): void => {
    if (k.key !== 'Escape') return;
    k.preventDefault();
    k.stopPropagation();
    cancel();
  };
  cancelLast = cancel;
  // on the window: the element may leave the page under the drag (two sides that become equal share one lane)
  window.addEventListener('pointermove', move);
  window.addEventListener('pointerup', up);
  window.addEventListener('pointercancel', cancel);
  window.addEventListener('keydown', key, true);
  window.addEventListener('pointerdown', second, true);
  target.addEventListener('lostpointercapture', lost);
}
