/** A tool on tablet and phone: a sheet under the floor, above the thumb bar, with picture and ruler still in sight. */
import { Show } from 'solid-js';
import type { TimeAxis } from '../../../ui/plot/axis.ts';
import { useShell } from '../../page.ts';
import { findTool } from './tool-list.ts';
import { ToolPlace } from './tool-place.tsx';

export function ToolSheet(props: {
  axis: TimeAxis;
  width: number;
  height: number;
  /** room from under the sentence on: for a tool that takes the pictures' place too */
  tall: number;
  device: 'tablet' | 'phone';
}) {
  const shell = useShell();
  return (
    <Show when={findTool(shell.tool())}>
      {(tool) => (
        <div class="tool-sheet">
          <ToolPlace
            tool={tool()}
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
