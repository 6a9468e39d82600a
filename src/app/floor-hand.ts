/** The time on the floor as it is read and set by what lies along it: the flight's, or that of the tool that has taken the floor. */
import { type TimeAxis, xOf } from '../ui/plot/axis.ts';
import type { CursorState } from './cursor.ts';
import { useCursor, useShell } from './page.ts';
import type { Playback } from './playback.ts';

interface FloorHand extends Pick<CursorState, 'at' | 'set' | 'moveBy'> {
  play(): Playback;
  /** `usual`: the ruler of the layout, for the flight */
  axis(usual: TimeAxis): TimeAxis;
  /** px of the cursor */
  x(usual: TimeAxis): number;
  label(usual: string): string;
  onKeyDown(e: KeyboardEvent): void;
}

export function useFloorTime(): FloorHand {
  const cursor = useCursor();
  const { taken } = useShell().floor;
  const at = (): number => (taken() ?? cursor).at();
  const set = (s: number): void => (taken() ?? cursor).set(s);
  const play = (): Playback => (taken() ?? cursor).play;
  const axis = (usual: TimeAxis): TimeAxis => taken()?.axis() ?? usual;
  return {
    at,
    set,
    play,
    axis,
    x: (usual) => xOf(axis(usual), at()),
    label: (usual) => taken()?.label ?? usual,
    moveBy: (s) => {
      play().pause();
      const step = taken()?.moveBy;
      if (step) step(s);
      else set(Math.round((at() + s) * 100) / 100);
    },
    onKeyDown: (e) => taken()?.onKeyDown(e),
  };
}
