/** Poses on the ruler: a mark wherever keys stand, under the shapes. Dragged, all keys of that instant move together. */

import { createMemo, For, Show } from 'solid-js';
import { wordShift } from '../../app/drag-plate.tsx';
import { keyTexts } from '../../app/key-words.ts';
import { useKeys } from '../../app/key-work.ts';
import { useCursor, useDocument, useFlight } from '../../app/page.ts';
import { listSnapTimes, type RowTelling, snapTogether } from '../../app/snapping.tsx';
import { texts } from '../../app/words.ts';
import type { KeySource } from '../../document/lanes.ts';
import { getSchedule } from '../../document/phases.ts';
import { moveSources, removeSources, SAME_INSTANT } from '../../document/pose-edits.ts';
import { resolveTime } from '../../document/times.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';

interface PoseMark {
  readonly s: number;
  readonly sources: readonly KeySource[];
}

export function PoseMarks(props: { axis: TimeAxis; tell: (telling: RowTelling | undefined) => void }) {
  const flight = useFlight();
  const keys = useKeys();
  const doc = useDocument();
  const cursor = useCursor();
  const marks = createMemo<PoseMark[]>(() => {
    const file = flight.edited();
    if (!file) return [];
    const schedule = getSchedule(file);
    const anchors = flight.anchors();
    const keys = (schedule.keys ?? [])
      .map((key, index) => ({ s: resolveTime(key.at, anchors), source: { kind: 'key', index } as const }))
      .sort((a, b) => a.s - b.s);
    const out: { s: number; sources: KeySource[] }[] = [];
    for (const { s, source } of keys) {
      const last = out.at(-1);
      if (last && s - last.s <= SAME_INSTANT) last.sources.push(source);
      else out.push({ s, sources: [source] });
    }
    return out;
  });
  const isPicked = (mark: PoseMark): boolean => mark.sources.every((s) => keys.isPicked(s));
  const said = (mark: PoseMark): string => keyTexts.poseMark(formatNumber(mark.s, 2), mark.sources.length);
  const press = (e: PointerEvent, mark: PoseMark): void => {
    e.stopPropagation();
    const sources = isPicked(mark) ? keys.picked() : mark.sources;
    const snaps = listSnapTimes({ doc, flight }, sources);
    const anchors = flight.anchors();
    startDrag(e, {
      move: (dx, _dy, m) => {
        const snap = snapTogether([mark.s], dx / props.axis.pxPerS, snaps, props.axis.pxPerS, m.altKey);
        doc.draft(moveSources(doc.begin(), sources, snap.by, anchors));
        const [first] = mark.sources;
        const key = first.kind === 'key' ? getSchedule(doc.file()).keys?.[first.index] : undefined;
        const now = key ? resolveTime(key.at, anchors) : mark.s;
        props.tell({
          plate: {
            x: xOf(props.axis, now),
            lines: [texts.shapes.movedEdge(keyTexts.poseMoved, formatNumber(now, 2), wordShift(now - mark.s))],
          },
          line: Math.abs(now - mark.s - snap.by) < 0.002 ? snap.line : undefined,
        });
      },
      end: (moved) => {
        props.tell(undefined);
        if (moved) return doc.settle(keyTexts.retimedPose);
        if (e.shiftKey) keys.pick([...keys.picked(), ...mark.sources.filter((s) => !keys.isPicked(s))]);
        else keys.pick(mark.sources);
        cursor.set(mark.s);
      },
      cancel: () => {
        props.tell(undefined);
        doc.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent, mark: PoseMark): void => {
    const sign = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    const sources = isPicked(mark) ? keys.picked() : mark.sources;
    if (sign !== 0) {
      const by = sign * (e.shiftKey ? 0.1 : 0.01);
      doc.edit(moveSources(doc.file(), sources, by, flight.anchors()), keyTexts.retimedPose);
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      doc.edit(removeSources(doc.file(), sources), keyTexts.removed(sources.length));
    } else if (e.key === 'Enter' || e.key === ' ') {
      keys.pick(mark.sources);
      cursor.set(mark.s);
    } else return;
    e.preventDefault();
    e.stopPropagation();
  };
  return (
    <For each={marks().map((_, i) => i)}>
      {(i) => (
        <Show when={marks()[i]}>
          {(mark) => (
            <Show when={mark().s >= -1e-6 && mark().s <= props.axis.duration + 1e-6}>
              <button
                type="button"
                class="pose-mark"
                classList={{
                  picked: isPicked(mark()),
                  here: Math.abs(mark().s - cursor.at()) <= SAME_INSTANT,
                }}
                aria-label={said(mark())}
                title={`${said(mark())}. ${keyTexts.poseMarkHint}`}
                style={{ left: `${xOf(props.axis, mark().s)}px` }}
                onPointerDown={(e) => press(e, mark())}
                onKeyDown={(e) => onKeyDown(e, mark())}
              />
            </Show>
          )}
        </Show>
      )}
    </For>
  );
}
