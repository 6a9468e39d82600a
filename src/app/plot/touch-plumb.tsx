/** The plumb line through what a tool has on the ruler, where the tool lies over the page's own (tablet and phone). */
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import { useCursor } from '../page.ts';

export function TouchPlumb(props: { axis: TimeAxis }) {
  const cursor = useCursor();
  return (
    <div
      class="plumb tool-plumb"
      aria-hidden="true"
      style={{ transform: `translateX(${xOf(props.axis, cursor.at())}px)` }}
    />
  );
}
