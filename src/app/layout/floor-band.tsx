/** The floor under a finger: a press on the ruler brings the cursor there, a drag that begins beside it takes the cursor along. */
import type { JSX } from 'solid-js';
import { Ruler } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { startDrag } from '../../ui/drag.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { useCursor } from '../page.ts';

export function FloorBand(props: {
  axis: TimeAxis;
  height: number;
  grip: number;
  label?: number;
  children?: JSX.Element;
}) {
  const cursor = useCursor();
  const press = (e: PointerEvent): void => {
    if ((e.target as Element).closest('.ruler, button')) return;
    const from = cursor.at();
    startDrag(e, {
      start: () => cursor.play.pause(),
      move: (dx) => cursor.set(Math.round((from + dx / props.axis.pxPerS) * 1000) / 1000),
      end: () => {},
      cancel: () => cursor.set(from),
    });
  };
  return (
    <section class="floor" aria-label={floorTexts.label} onPointerDown={press}>
      <Ruler axis={props.axis} height={props.height} grip={props.grip} label={props.label} />
      {props.children}
    </section>
  );
}
