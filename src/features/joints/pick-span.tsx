/** The span of what is picked, over the open lane: either end dragged draws all of it out or together in time. */

import { createMemo, For, Show } from 'solid-js';
import { keyTexts } from '../../app/key-words.ts';
import { useKeys } from '../../app/key-work.ts';
import { useDocument, useFlight } from '../../app/page.ts';
import { listSnapTimes, type RowTelling, snapTogether } from '../../app/snapping.tsx';
import type { Lane } from '../../document/lanes.ts';
import { scaleSources } from '../../document/pose-edits.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';

/** Keys are not pressed together to less than this share of their time. */
const LEAST = 0.05;
const STEP = 0.05;

export function PickSpan(props: { axis: TimeAxis; lane: Lane; tell: (telling: RowTelling | undefined) => void }) {
  const keys = useKeys();
  const flight = useFlight();
  const doc = useDocument();
  const range = createMemo(() => {
    const r = keys.range();
    const inLane = props.lane.keys.some((key) => keys.isPicked(key.source));
    return r && inLane && r[1] - r[0] > 1e-6 ? r : undefined;
  });
  const press = (e: PointerEvent, end: 'from' | 'to'): void => {
    e.stopPropagation();
    const r = range();
    if (!r) return;
    const sources = keys.picked();
    const anchors = flight.anchors();
    const marks = listSnapTimes({ doc, flight }, sources);
    const [at, pivot] = end === 'to' ? [r[1], r[0]] : [r[0], r[1]];
    startDrag(e, {
      move: (dx, _dy, m) => {
        const snap = snapTogether([at], dx / props.axis.pxPerS, marks, props.axis.pxPerS, m.altKey);
        const factor = Math.max(LEAST, (at + snap.by - pivot) / (at - pivot));
        doc.draft(scaleSources(doc.begin(), sources, pivot, factor, anchors));
        const now = keys.range() ?? r;
        const reached = (now[1] - now[0]) / (r[1] - r[0]);
        const s = end === 'to' ? now[1] : now[0];
        props.tell({
          plate: { x: xOf(props.axis, s), lines: [keyTexts.scaledTo(formatNumber(reached * 100, 0))] },
          line: Math.abs(s - at - snap.by) < 0.002 ? snap.line : undefined,
        });
      },
      end: (moved) => {
        props.tell(undefined);
        if (moved) doc.settle(keyTexts.scaled);
      },
      cancel: () => {
        props.tell(undefined);
        doc.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent, end: 'from' | 'to'): void => {
    const sign = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    const r = range();
    if (sign === 0 || !r) return;
    e.preventDefault();
    e.stopPropagation();
    const pivot = end === 'to' ? r[0] : r[1];
    const factor = 1 + (end === 'to' ? sign : -sign) * STEP;
    if (flight.edited())
      doc.edit(scaleSources(doc.file(), keys.picked(), pivot, factor, flight.anchors()), keyTexts.scaled);
  };
  return (
    <Show when={range()}>
      {(r) => (
        <div
          class="pick-span"
          style={{ left: `${xOf(props.axis, r()[0])}px`, width: `${(r()[1] - r()[0]) * props.axis.pxPerS}px` }}
        >
          <For each={['from', 'to'] as const}>
            {(end) => (
              <div
                class="pick-end"
                classList={{ [end]: true }}
                role="slider"
                tabIndex={0}
                aria-label={keyTexts.spanEnd(end)}
                aria-orientation="horizontal"
                aria-valuemin={0}
                aria-valuemax={Number(props.axis.duration.toFixed(3))}
                aria-valuenow={Number(r()[end === 'to' ? 1 : 0].toFixed(3))}
                aria-valuetext={`${formatNumber(r()[end === 'to' ? 1 : 0], 2)} s`}
                onPointerDown={(e) => press(e, end)}
                onKeyDown={(e) => onKeyDown(e, end)}
              />
            )}
          </For>
        </div>
      )}
    </Show>
  );
}
