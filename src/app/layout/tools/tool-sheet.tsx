/** A tool on tablet and phone: a sheet between the floor and the thumb bar. Ruler and plumb line stay in sight; the caution is at its foot. */
import { Show } from 'solid-js';
import type { TimeAxis } from '../../../ui/plot/axis.ts';
import { useShell } from '../../page.ts';
import type { ShellState } from '../../shell.ts';
import { texts } from '../../words.ts';
import { FilledPlace } from './filled-place.tsx';
import { findTool } from './tool-list.ts';
import { ToolPlace } from './tool-place.tsx';

/** The tool has the place of the pictures too: the floor is under the sentence. */
export const isToolTall = (shell: ShellState): boolean => shell.tall() === true && shell.tool() !== undefined;

/** px */
const CAUTION = { line: 20, wideFrom: 960 } as const;
/** what touches, along the whole skill: seen, and with what a finger needs below it */
const STRIP = 33;

export function ToolSheet(props: {
  axis: TimeAxis;
  width: number;
  height: number;
  /** px over the floor */
  pictures: number;
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
          // on a page that is zoomed in so far that it is scrolled (touch.css)
          ref={(sheet) => queueMicrotask(() => sheet.scrollIntoView({ block: 'start' }))}
          style={{
            left: `${props.left ?? 0}px`,
            bottom: `calc(var(--thumb) + ${props.bottom ?? 0}px)`,
          }}
        >
          <Show when={tool().hasPictures}>
            <FilledPlace name="strip" style={{ height: `${STRIP}px` }} />
          </Show>
          <ToolPlace
            tool={tool()}
            axis={props.axis}
            width={props.width}
            height={props.height - CAUTION.line - (tool().hasPictures ? STRIP : 0)}
            pictures={props.pictures}
            {...(tool().fillsAir || (props.fixed && !tool().hasPictures) ? {} : { isTall: shell.tall() === true })}
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
