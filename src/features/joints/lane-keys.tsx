/**
 * The keys of one joint lane as handles on its line. Along time they retime, up and down they change the angle. Shift with a
 * press picks several, in the open lane a frame drawn round them too; what is picked moves together.
 */

import { createMemo, createSignal, For, Show } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { DragPlate, wordShift } from '../../app/drag-plate.tsx';
import type { FlightState } from '../../app/flight.ts';
import { keyTexts } from '../../app/key-words.ts';
import { useKeys } from '../../app/key-work.ts';
import { useCursor, useDocument, useFlight } from '../../app/page.ts';
import { laneScale } from '../../app/plot/lane-curve.ts';
import type { Box } from '../../app/plot/pen.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { listSnapTimes, type RowTelling, SnapLine, snapTogether } from '../../app/snapping.tsx';
import { adjustBlock, changeKey, removeKey, setBlockEdge } from '../../document/edits.ts';
import type { KeySource, Lane, LaneKey } from '../../document/lanes.ts';
import { getSchedule } from '../../document/phases.ts';
import { moveSources } from '../../document/pose-edits.ts';
import { limitEdge } from '../../document/spans.ts';
import { type AnchorSeconds, clamp, moveTime } from '../../document/times.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { PickSpan } from './pick-span.tsx';
import { chooseShown } from './shown-keys.ts';
import { laneTexts } from './words.ts';

const t = laneTexts;
/** Two keys of one angle are at least this far apart, s. */
const APART = 0.01;
/** Half of the square in which a press takes a key, px. */
const REACH = 12;

/** The document with one key moved: a key of the file itself, or an edge of a shape with the shape's angle there. */
export function moveKey(
  base: SkillFile,
  flight: Pick<FlightState, 'spans' | 'anchors'>,
  lane: Lane,
  key: LaneKey,
  s: number,
  deg: number,
  anchors: AnchorSeconds = flight.anchors(),
): SkillFile {
  const { source } = key;
  if (source.kind === 'key') {
    const old = getSchedule(base).keys?.[source.index];
    if (!old) return base;
    return changeKey(base, source.index, { at: s === key.t ? old.at : moveTime(old.at, s, anchors), deg });
  }
  const block = getSchedule(base).blocks?.[source.block];
  if (!block) return base;
  let out = base;
  if (s !== key.t) out = setBlockEdge(out, source.block, source.side, moveTime(block[source.side], s, anchors));
  if (deg !== key.deg) out = adjustBlock(out, source.block, [lane.id], deg);
  return out;
}

/** Keeps a key between its neighbours of the lane. */
export function limitKey(flight: Pick<FlightState, 'spans'>, lane: Lane, index: number, s: number): number {
  const key = lane.keys[index];
  if (key.source.kind === 'edge') return limitEdge(flight.spans(), key.source.block, key.source.side, s);
  const before = lane.keys[index - 1]?.t ?? -5;
  const after = lane.keys[index + 1]?.t ?? 30;
  return clamp(s, before + APART, after - APART);
}

export function LaneKeys(props: {
  axis: TimeAxis;
  lane: Lane;
  box: Box;
  open: boolean;
  chosen: number | undefined;
  choose: (index: number) => void;
}) {
  const keys = useKeys();
  const flight = useFlight();
  const doc = useDocument();
  const cursor = useCursor();
  const [telling, setTelling] = createSignal<RowTelling>();
  const [frame, setFrame] = createSignal<{ x: number; y: number; width: number; height: number }>();
  const scale = createMemo(() => laneScale(props.lane, { y: 0, height: props.box.height }, props.open));
  const label = (): string => wordJoint(props.lane.id);
  const place = (key: LaneKey): string => `translate(${xOf(props.axis, key.t)}px, ${scale()(key.deg)}px)`;
  const indices = createMemo(() => {
    const kept = new Set<number>();
    props.lane.keys.forEach(({ source }, i) => {
      if (props.chosen === i || keys.isPicked(source)) kept.add(i);
    });
    return chooseShown(props.lane.keys, props.axis.pxPerS, kept);
  });
  const hasRoom = (i: number): boolean => {
    const next = props.lane.keys[i + 1];
    const gap = (other: LaneKey | undefined): number =>
      other ? Math.abs(other.t - props.lane.keys[i].t) * props.axis.pxPerS : Number.POSITIVE_INFINITY;
    if (props.chosen === i) return true;
    // the chosen key's words are longer
    if (props.chosen !== undefined && gap(props.lane.keys[props.chosen]) < 72) return false;
    return gap(next) > 36;
  };
  /** where a press takes this key: 24 px, less what is nearer to another key of the lane, and no other lane's room */
  const reach = (i: number): { left: string; right: string; top: string; bottom: string } => {
    const { keys } = props.lane;
    const half = (other: LaneKey | undefined): number =>
      other ? Math.max(0, Math.min(REACH, (Math.abs(other.t - keys[i].t) * props.axis.pxPerS) / 2)) : REACH;
    const y = scale()(keys[i].deg);
    const px = (v: number): string => `${REACH - v}px`;
    return {
      left: px(half(keys[i - 1])),
      right: px(half(keys[i + 1])),
      top: px(Math.min(REACH, Math.max(y, 4))),
      bottom: px(Math.min(REACH, Math.max(props.box.height - y, 4))),
    };
  };
  const spoken = (key: LaneKey): string => t.key(label(), `${formatNumber(key.deg, 0)}°`, formatNumber(key.t, 2));

  const press = (e: PointerEvent, index: number): void => {
    e.stopPropagation();
    const lane = props.lane;
    const key = lane.keys[index];
    if (e.shiftKey) {
      startDrag(e, { move: () => {}, end: () => keys.toggle(key.source), cancel: () => {} });
      return;
    }
    const together = keys.isPicked(key.source) && keys.picked().length > 1 ? keys.picked() : undefined;
    const anchors = flight.anchors();
    const marks = listSnapTimes({ doc, flight }, together ?? [key.source]);
    const perPx = props.open ? Math.abs(1 / (scale()(1) - scale()(0) || 1)) : 1;
    const limits = [limitKey(flight, lane, index, -99), limitKey(flight, lane, index, 99)];
    let way: 'time' | 'angle' | undefined;
    startDrag(e, {
      move: (dx, dy, m) => {
        way ??= Math.abs(dx) >= Math.abs(dy) ? 'time' : 'angle';
        const both = props.open && !m.shiftKey;
        const snap = snapTogether([key.t], dx / props.axis.pxPerS, marks, props.axis.pxPerS, m.altKey);
        const inTime = both || way === 'time';
        const by = inTime ? snap.by : 0;
        const turned = key.deg - dy * perPx;
        const inAngle = both || way === 'angle';
        const deg = inAngle ? Math.round(clamp(turned, ...lane.rangeDeg)) : key.deg;
        let s = key.t;
        if (together) {
          doc.draft(movePicked(doc.begin(), together, by, deg - key.deg, lane));
          s = flight.lanes().find((l) => l.id === lane.id)?.keys[index]?.t ?? key.t + by;
        } else {
          if (inTime) s = clamp(key.t + by, limits[0], limits[1]);
          doc.draft(moveKey(doc.begin(), flight, lane, key, s, deg, anchors));
        }
        const lines = [`${formatNumber(s, 2)} s, ${wordShift(s - key.t)}`];
        if (deg !== key.deg) lines.push(`${formatNumber(key.deg, 0)}° → ${formatNumber(deg, 0)}°`);
        if (together) lines.unshift(keyTexts.pickedCount(together.length));
        const rests = inTime && Math.abs(s - key.t - snap.by) < 0.002;
        setTelling({ plate: { x: xOf(props.axis, s), lines }, line: rests ? snap.line : undefined });
      },
      end: (moved) => {
        setTelling(undefined);
        if (moved) return doc.settle(together ? keyTexts.movedKeys : t.moved(label()));
        keys.pick([key.source]);
        props.choose(index);
      },
      cancel: () => {
        setTelling(undefined);
        doc.abandon();
      },
    });
  };
  /** In the open lane, beside the keys: a frame that picks them. A plain press moves the cursor. */
  const draw = (e: PointerEvent): void => {
    e.stopPropagation();
    const box = (e.currentTarget as HTMLElement).getBoundingClientRect();
    const [x0, y0] = [e.clientX - box.left, e.clientY - box.top];
    const before = e.shiftKey ? keys.picked() : [];
    startDrag(e, {
      move: (dx, dy) => {
        const f = { x: Math.min(x0, x0 + dx), y: Math.min(y0, y0 + dy), width: Math.abs(dx), height: Math.abs(dy) };
        setFrame(f);
        const within = props.lane.keys.filter((key) => {
          const [x, y] = [xOf(props.axis, key.t), scale()(key.deg)];
          return x >= f.x && x <= f.x + f.width && y >= f.y && y <= f.y + f.height;
        });
        const added = within.map((k) => k.source).filter((one) => !before.includes(one));
        keys.pick([...before, ...added]);
      },
      end: (moved) => {
        setFrame(undefined);
        if (moved) return;
        keys.pickNone();
        cursor.play.pause();
        cursor.set(Math.round(tOf(props.axis, x0) * 1000) / 1000);
      },
      cancel: () => {
        setFrame(undefined);
        keys.pick(before);
      },
    });
  };
  /** Picked keys moved together: all of them in time, those of this lane's angle up and down as well. */
  const movePicked = (
    base: SkillFile,
    sources: readonly KeySource[],
    byS: number,
    byDeg: number,
    lane: Lane,
  ): SkillFile => {
    let file = moveSources(base, sources, byS, flight.anchors());
    if (byDeg === 0) return file;
    for (const source of sources) {
      const key = source.kind === 'key' ? getSchedule(base).keys?.[source.index] : undefined;
      if (
        source.kind === 'key' &&
        key &&
        lane.keys.some((k) => k.source.kind === 'key' && k.source.index === source.index)
      )
        file = changeKey(file, source.index, { deg: clamp(Math.round(key.deg + byDeg), ...lane.rangeDeg) });
    }
    return file;
  };
  const onKeyDown = (e: KeyboardEvent, index: number): void => {
    const lane = props.lane;
    const key = lane.keys[index];
    const sign = e.key === 'ArrowLeft' || e.key === 'ArrowDown' ? -1 : 1;
    const far = e.shiftKey;
    if (e.ctrlKey || e.metaKey) {
      if (e.key.toLowerCase() !== 'a') return;
      keys.pick(lane.keys.map((one) => one.source));
      e.preventDefault();
      e.stopPropagation();
      return;
    }
    if (keys.isPicked(key.source) && keys.picked().length > 1) {
      if (e.key === 'ArrowLeft' || e.key === 'ArrowRight') keys.nudge(sign * (far ? 0.1 : 0.01));
      else if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
        doc.edit(movePicked(doc.file(), keys.picked(), 0, sign * (far ? 10 : 1), lane), keyTexts.movedKeys);
      } else if (e.key === 'Delete' || e.key === 'Backspace') keys.remove();
      else if (e.key === ' ') keys.toggle(key.source);
      else return;
      e.preventDefault();
      e.stopPropagation();
      return;
    }
    if (e.key === 'ArrowLeft' || e.key === 'ArrowRight') {
      const s = limitKey(flight, lane, index, Math.round((key.t + sign * (far ? 0.1 : 0.01)) * 1000) / 1000);
      doc.edit(moveKey(doc.file(), flight, lane, key, s, key.deg), t.moved(label()));
    } else if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
      const deg = clamp(Math.round(key.deg) + sign * (far ? 10 : 1), ...lane.rangeDeg);
      doc.edit(moveKey(doc.file(), flight, lane, key, key.t, deg), t.moved(label()));
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      if (key.source.kind !== 'key') return;
      doc.edit(removeKey(doc.file(), key.source.index), t.removed(label()));
    } else if (e.key.toLowerCase() === 's' && !e.ctrlKey && !e.metaKey) {
      if (key.source.kind !== 'key') return;
      const kind = key.kind === 'stop' ? 'pass' : 'stop';
      doc.edit(changeKey(doc.file(), key.source.index, { kind }), t.stopsPasses(label()));
    } else if (e.key === ' ') keys.toggle(key.source);
    else if (e.key === 'Enter') {
      keys.pick([key.source]);
      props.choose(index);
    } else return;
    e.preventDefault();
    e.stopPropagation();
  };
  return (
    <div
      class="lane-keys"
      classList={{ open: props.open }}
      style={{ top: `${props.box.y}px`, height: `${props.box.height}px` }}
    >
      <Show when={props.open}>
        <div class="lane-field" onPointerDown={draw} />
        <PickSpan axis={props.axis} lane={props.lane} tell={setTelling} />
      </Show>
      <For each={indices()}>
        {(i) => (
          <Show when={props.lane.keys[i]}>
            {(key) => (
              <Show when={key().t >= -1e-6 && key().t <= props.axis.duration + 1e-6}>
                <button
                  type="button"
                  class={`key ${props.lane.sign} ${key().kind}`}
                  classList={{
                    chosen: props.open && props.chosen === i,
                    own: key().source.kind === 'key',
                    picked: keys.isPicked(key().source),
                  }}
                  aria-pressed={keys.isPicked(key().source)}
                  aria-label={spoken(key())}
                  title={spoken(key())}
                  style={{ transform: place(key()) }}
                  onPointerDown={(e) => press(e, i)}
                  onKeyDown={(e) => onKeyDown(e, i)}
                >
                  <span class="reach" style={reach(i)} />
                  <span class="dot" />
                  <Show when={props.open && hasRoom(i)}>
                    <span class="key-word">
                      {formatNumber(key().deg, 0)}°{props.chosen === i ? ` ${t.kinds[key().kind]}` : ''}
                    </span>
                  </Show>
                </button>
              </Show>
            )}
          </Show>
        )}
      </For>
      <Show when={frame()}>
        {(f) => (
          <div
            class="pick-frame"
            aria-hidden="true"
            style={{ left: `${f().x}px`, top: `${f().y}px`, width: `${f().width}px`, height: `${f().height}px` }}
          />
        )}
      </Show>
      <SnapLine axis={props.axis} line={telling()?.line} />
      <Show when={telling()}>{(one) => <DragPlate words={one().plate} width={props.axis.width} />}</Show>
    </div>
  );
}
