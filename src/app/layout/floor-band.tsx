/** The floor under a finger: a press on the ruler brings the cursor there, a drag that begins beside it takes the cursor along. */
import type { JSX } from 'solid-js';
import { Ruler } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { startDrag } from '../../ui/drag.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { useFloorTime } from '../floor-hand.ts';

export function FloorBand(props: {
  axis: TimeAxis;
  height: number;
  grip: number;
  label?: number;
  children?: JSX.Element;
}) {
  const time = useFloorTime();
  const press = (e: PointerEvent): void => {
    if ((e.target as Element).closest('.ruler, button')) return;
    const from = time.at();
    startDrag(e, {
      start: () => time.play().pause(),
      move: (dx) => time.set(Math.round((from + dx / time.axis(props.axis).pxPerS) * 1000) / 1000),
      end: () => {},
      cancel: () => time.set(from),
    });
  };
  return (
    <section
      class="floor"
      aria-label={time.label(floorTexts.label)}
      onPointerDown={press}
      on:keydown={(e) => time.onKeyDown(e)}
    >
      <Ruler axis={props.axis} height={props.height} grip={props.grip} label={props.label} />
      {props.children}
    </section>
  );
}
