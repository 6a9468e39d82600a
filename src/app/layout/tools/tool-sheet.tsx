/** A tool on tablet and phone: a sheet under the floor, above the thumb bar, with picture and ruler still in sight. */
import { Show } from 'solid-js';
import type { TimeAxis } from '../../../ui/plot/axis.ts';
import type { Bench } from '../../bench.ts';
import { findTool } from './tool-list.ts';
import { ToolPlace } from './tool-place.tsx';

export function ToolSheet(props: {
  bench: Bench;
  axis: TimeAxis;
  width: number;
  height: number;
  /** room from under the sentence on: for a tool that takes the pictures' place too */
  tall: number;
  device: 'tablet' | 'phone';
}) {
  return (
    <Show when={findTool(props.bench.tool())}>
      {(tool) => (
        <div class="tool-sheet">
          <ToolPlace
            tool={tool()}
            bench={props.bench}
            axis={props.axis}
            width={props.width}
            height={tool().place === 'whole' ? props.tall : props.height}
            timeLeft={0}
            device={props.device}
          />
        </div>
      )}
    </Show>
  );
}
