/** One finger or the mouse moves the picture, two fingers zoom it about the middle between them. */
import { onCleanup } from 'solid-js';

interface PinchSteps {
  pan(dx: number, dy: number): void;
  /** about a point of the page */
  zoom(factor: number, x: number, y: number): void;
}

export function usePinch(steps: PinchSteps): (e: PointerEvent) => void {
  const fingers = new Map<number, { x: number; y: number }>();
  const middle = (): { x: number; y: number; apart: number } => {
    const [a, b = a] = [...fingers.values()];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) };
  };
  const move = (e: PointerEvent): void => {
    if (!fingers.has(e.pointerId)) return;
    const before = middle();
    fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
    const now = middle();
    steps.pan(now.x - before.x, now.y - before.y);
    if (before.apart > 20 && now.apart > 20) steps.zoom(now.apart / before.apart, now.x, now.y);
  };
  const up = (e: PointerEvent): void => {
    fingers.delete(e.pointerId);
    if (fingers.size === 0) stop();
  };
  const stop = (): void => {
    fingers.clear();
    window.removeEventListener('pointermove', move);
    window.removeEventListener('pointerup', up);
    window.removeEventListener('pointercancel', up);
  };
  onCleanup(stop);
  return (e) => {
    if (e.button !== 0 || fingers.size === 2) return;
    if (fingers.size === 0) {
      window.addEventListener('pointermove', move);
      window.addEventListener('pointerup', up);
      window.addEventListener('pointercancel', up);
    }
    fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
  };
}
