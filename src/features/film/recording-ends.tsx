/** The span in the air, with two ends that are dragged or moved by keys. The study runs again when a hand has let go. */
import { createEffect, createMemo, createSignal, For, on, onCleanup } from 'solid-js';
import type { AirSpan, RecordingStudy } from '../../../sim/index.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { tOf, xOf } from '../../ui/plot/axis.ts';
import type { RecordingAxis } from './recording-axis.ts';
import { withSpan } from './recording-options.ts';
import type { RecordingState } from './recording-state.ts';
import { recordingTexts as t } from './recording-words.ts';

/** shortest span that can be set, s */
const LEAST = 0.1;
/** keys have rested this long, ms */
const REST = 400;
const BIG = 0.1;
type End = 'start' | 'end';

export function RecordingEnds(props: {
  state: RecordingState;
  study: RecordingStudy;
  span: AirSpan;
  axis: RecordingAxis;
  top: number;
  height: number;
}) {
  /** s of the recording, from a hand until the study of it is there, or has come to nothing */
  const [moved, setMoved] = createSignal<{ readonly start: number; readonly end: number }>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  let isHeld = false;
  const isIdle = createMemo(() => props.state.work() === undefined);
  createEffect(
    on(isIdle, (idle) => {
      if (idle && !isHeld) setMoved(undefined);
    }),
  );
  const now = () => moved() ?? { start: props.span.start, end: props.span.end };
  const x = (end: End): number => xOf(props.axis, now()[end] - props.span.start);
  const put = (end: End, s: number): void => {
    const { start, end: last } = now();
    const at =
      end === 'start'
        ? Math.min(Math.max(s, 0), last - LEAST)
        : Math.max(Math.min(s, props.study.seconds), start + LEAST);
    isHeld = true;
    setMoved({ ...now(), [end]: at });
  };
  const done = (): void => {
    const to = moved();
    if (to) props.state.change(withSpan(props.state.options(), to.start, to.end));
    isHeld = false;
  };
  const drag = (e: PointerEvent, end: End): void => {
    e.stopPropagation();
    const from = xOf(props.axis, now()[end] - props.span.start);
    startDrag(e, {
      move: (dx) => put(end, props.span.start + tOf(props.axis, from + dx)),
      end: (isMoved) => {
        if (isMoved) done();
      },
      cancel: () => {
        isHeld = false;
        setMoved(undefined);
      },
    });
  };
  const onKey = (e: KeyboardEvent, end: End): void => {
    const way = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[e.key];
    if (way === undefined || e.ctrlKey || e.metaKey || e.altKey) return;
    e.preventDefault();
    e.stopPropagation();
    put(end, now()[end] + way * (e.shiftKey ? BIG : 1 / props.study.rateHz));
    clearTimeout(timer);
    timer = setTimeout(done, REST);
  };
  /** of both ends, two standard errors; none where they were set by hand */
  const error = (): string | undefined => {
    const s = 2 * Math.hypot(props.span.startError, props.span.endError);
    return s >= 0.0005 ? formatNumber(s, 3) : undefined;
  };
  const middle = (): number => props.height / 2;
  return (
    <div
      class="rec-span"
      style={{ top: `${props.top}px`, height: `${props.height}px`, width: `${props.axis.width}px` }}
    >
      <svg width={props.axis.width} height={props.height} aria-hidden="true">
        <path class="rec-span-line" d={`M${x('start')} ${middle()}H${x('end')}`} />
        <text class="rec-span-text" x={(x('start') + x('end')) / 2} y={middle() + 4} text-anchor="middle">
          {t.span(formatNumber(now().end - now().start, 3), moved() ? undefined : error())}
        </text>
      </svg>
      <For each={['start', 'end'] as const}>
        {(end) => (
          <div
            class="rec-end"
            role="slider"
            tabIndex={0}
            data-end={end}
            aria-label={t.ends[end]}
            aria-valuemin={0}
            aria-valuemax={Math.round(props.study.seconds * 1000) / 1000}
            aria-valuenow={Math.round(now()[end] * 1000) / 1000}
            aria-valuetext={t.endAt(formatNumber(now()[end], 3))}
            style={{ transform: `translateX(${x(end)}px)` }}
            onPointerDown={(e) => drag(e, end)}
            onKeyDown={(e) => onKey(e, end)}
          />
        )}
      </For>
    </div>
  );
}
