/** One joint lane for fingers, above the thumb bar: its line on a ruler of the page's width, keys to drag, cells to type in. */
import { createMemo, Show } from 'solid-js';
import { useFlight, useShell } from '../../app/page.ts';
import { drawLane } from '../../app/plot/lane-curve.ts';
import type { Box } from '../../app/plot/pen.ts';
import { PlotCanvas, type PlotPiece } from '../../app/plot/plot-canvas.tsx';
import { wordJoint } from '../../app/say/body-words.ts';
import { SideSign } from '../../ui/icon.tsx';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { LaneEditor } from './lane-editor.tsx';
import { LaneKeys } from './lane-keys.tsx';
import type { LaneList } from './lane-list.ts';

export function LaneSheet(props: { lanes: LaneList; axis: TimeAxis; plotHeight: number }) {
  const flight = useFlight();
  const shell = useShell();
  const lane = createMemo(() => props.lanes.shown().find((one) => one.id === props.lanes.open()));
  const box = (): Box => ({ y: 0, height: props.plotHeight });
  const close = (): void => props.lanes.setOpen(undefined);
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key !== 'Escape' || e.defaultPrevented || flight.before()) return;
    e.preventDefault();
    close();
  };
  return (
    // a tool has the same place
    <Show when={shell.tool() === undefined && lane()}>
      {(l) => {
        const pieces = createMemo<PlotPiece[]>(() => {
          const one = l();
          return [{ box: box(), draw: (pen, b) => drawLane(pen, one, b, true) }];
        });
        return (
          <section class="lane-sheet" aria-label={wordJoint(l().id)} onKeyDown={onKeyDown}>
            <h2>
              <SideSign side={l().sign} /> {wordJoint(l().id)}
            </h2>
            <div class="lane-plot" style={{ width: `${props.axis.width}px`, height: `${props.plotHeight}px` }}>
              <PlotCanvas axis={props.axis} height={props.plotHeight} shadeFrom={0} pieces={pieces()} lineWidth={3} />
              <LaneKeys
                axis={props.axis}
                lane={l()}
                box={box()}
                open
                chosen={props.lanes.key()}
                choose={props.lanes.setKey}
              />
            </div>
            <LaneEditor lane={l()} chosen={props.lanes.key()} choose={props.lanes.setKey} close={close} />
          </section>
        );
      }}
    </Show>
  );
}
