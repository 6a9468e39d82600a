/** The plumb line through what a tool has on the ruler, where the tool lies over the page's own (tablet and phone). */
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { useFloorTime } from '../floor-hand.ts';

export function TouchPlumb(props: { axis: TimeAxis }) {
  const time = useFloorTime();
  return (
    <div class="plumb tool-plumb" aria-hidden="true" style={{ transform: `translateX(${time.x(props.axis)}px)` }} />
  );
}
