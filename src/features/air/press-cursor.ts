/** A press on what lies along the ruler of the whole skill puts the cursor there, and a drag takes it along; one that is cut short puts it back. */
import type { WholeState } from '../../app/whole-state.ts';
import { startDrag } from '../../ui/drag.ts';
import { type WholeAxis, wholeT } from './whole-axis.ts';

export function pressCursor(e: PointerEvent, state: Pick<WholeState, 'cursor' | 'setCursor'>, axis: WholeAxis): void {
  const { left } = (e.currentTarget as HTMLElement).getBoundingClientRect();
  const put = (m: PointerEvent): void => state.setCursor(Math.round(wholeT(axis, m.clientX - left) * 1000) / 1000);
  const from = state.cursor();
  startDrag(e, { start: put, move: (_x, _y, m) => put(m), end: () => {}, cancel: () => state.setCursor(from) });
}
