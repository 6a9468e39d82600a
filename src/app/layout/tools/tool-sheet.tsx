/** A tool on tablet and phone: a sheet between the floor and the thumb bar. Ruler and plumb line stay in sight; the caution is at its foot. */
import { Show } from 'solid-js';
import type { TimeAxis } from '../../../ui/plot/axis.ts';
import { useShell } from '../../page.ts';
import type { ShellState } from '../../shell.ts';
import { texts } from '../../words.ts';
import { findTool } from './tool-list.ts';
import { ToolPlace } from './tool-place.tsx';

/** The tool has the place of the pictures too: the floor is under the sentence. */
export const isToolTall = (shell: ShellState): boolean =>
  shell.tall() === true && shell.tool() !== undefined && findTool(shell.tool(), 'whole') === undefined;

/** px */
const CAUTION = { line: 20, wideFrom: 960 } as const;

export function ToolSheet(props: {
  axis: TimeAxis;
  width: number;
  height: number;
  /** room from under the sentence on, for a tool with a floor of its own */
  whole: number;
  device: 'tablet' | 'phone';
  /** there is no room to give or take */
  fixed?: boolean;
  /** px under it, down to the thumb bar, and at its left */
  bottom?: number;
  left?: number;
}) {
  const shell = useShell();
  return (
    <Show when={findTool(shell.tool())}>
      {(tool) => (
        <div
          class="tool-sheet"
          style={{
            left: `${props.left ?? 0}px`,
            bottom: `calc(var(--thumb) + ${tool().place === 'whole' ? 0 : (props.bottom ?? 0)}px)`,
          }}
        >
          <ToolPlace
            tool={tool()}
            axis={props.axis}
            width={props.width}
            height={(tool().place === 'whole' ? props.whole : props.height) - CAUTION.line}
            {...(tool().place === 'whole' || props.fixed ? {} : { isTall: shell.tall() === true })}
            timeLeft={0}
            device={props.device}
          />
          <p class="standing tool-foot" style={{ height: `${CAUTION.line}px` }}>
            {props.width >= CAUTION.wideFrom ? texts.standingCaution : texts.standingCautionShort}
          </p>
        </div>
      )}
    </Show>
  );
}
