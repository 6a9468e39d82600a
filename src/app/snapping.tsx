/** Where a dragged time comes to rest, and the line that shows what it rests on. With Alt it rests nowhere. */

import { Show } from 'solid-js';
import { getTime } from '../document/key-order.ts';
import type { KeySource } from '../document/lanes.ts';
import { getSourcesIn } from '../document/pose-edits.ts';
import { calcQuarterTimes, getEventTimes, type SnapTime, snapTime } from '../document/snap.ts';
import { resolveTime } from '../document/times.ts';
import { type TimeAxis, xOf } from '../ui/plot/axis.ts';
import type { PlateWords } from './drag-plate.tsx';
import { keyTexts } from './key-words.ts';
import type { Page } from './page.ts';

interface SnapLineWords {
  readonly s: number;
  readonly word: string;
}

/** What a drag tells while it runs: the plate above the finger, and what the time rests on. */
export interface RowTelling {
  readonly plate: PlateWords;
  readonly line?: SnapLineWords | undefined;
}

/** Everything that a time may rest on; what moves itself is left out. */
export function listSnapTimes({ doc, flight }: Pick<Page, 'doc' | 'flight'>, moving: readonly KeySource[]): SnapTime[] {
  const anchors = flight.anchors();
  const file = doc.file();
  const isMoving = (one: KeySource): boolean =>
    moving.some((m) =>
      m.kind === 'key'
        ? one.kind === 'key' && one.index === m.index
        : one.kind === 'edge' && one.block === m.block && one.side === m.side,
    );
  const keys = getSourcesIn(file, -99, 99, anchors)
    .filter((one) => !isMoving(one))
    .flatMap((one): SnapTime[] => {
      const time = getTime(file, one);
      return time ? [{ s: resolveTime(time, anchors), kind: 'key' }] : [];
    });
  return [...getEventTimes(anchors), ...calcQuarterTimes(flight.result().frames), ...keys];
}

function wordSnap(snap: SnapTime): string | undefined {
  if (snap.kind === 'event') return keyTexts.marks[snap.anchor ?? ''];
  if (snap.kind === 'quarter') return keyTexts.quarters(snap.quarters ?? 0);
  return snap.kind === 'key' ? keyTexts.atKey : undefined;
}

/** Of several times that move together the one that is nearest to a rest decides. */
export function snapTogether(
  times: readonly number[],
  by: number,
  marks: readonly SnapTime[],
  pxPerS: number,
  free: boolean,
): { by: number; line?: SnapLineWords } {
  if (free) return { by: Math.round(by * 1000) / 1000 };
  let best: { by: number; line?: SnapLineWords } | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const t of times) {
    const snap = snapTime(t + by, marks, pxPerS);
    const word = wordSnap(snap);
    const off = Math.abs(snap.s - t - by);
    if (!word || off >= least) continue;
    least = off;
    best = { by: snap.s - t, line: { s: snap.s, word } };
  }
  const first = times[0] ?? 0;
  return best ?? { by: snapTime(first + by, [], pxPerS).s - first };
}

export function SnapLine(props: { axis: TimeAxis; line: SnapLineWords | undefined }) {
  return (
    <Show when={props.line}>
      {(l) => (
        <div class="snap-line" aria-hidden="true" style={{ left: `${xOf(props.axis, l().s)}px` }}>
          <span>{l().word}</span>
        </div>
      )}
    </Show>
  );
}
