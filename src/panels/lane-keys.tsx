/** The keys of one joint lane as handles on its line. Along time they retime, up and down they change the angle. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import { adjustBlock, changeKey, removeKey, setBlockEdge } from '../document/edits.ts';
import type { Lane, LaneKey } from '../document/lanes.ts';
import { limitEdge } from '../document/spans.ts';
import { type AnchorSeconds, clamp, moveTime } from '../document/times.ts';
import { texts } from '../texts.ts';
import type { Bench } from './bench.ts';
import { DragPlate, type PlateWords, wordShift } from './drag-plate.tsx';
import { formatNumber } from './numbers.ts';
import { startDrag } from './parts/drag.ts';
import { type TimeAxis, xOf } from './plot/axis.ts';
import { laneScale } from './plot/lane-curve.ts';
import type { Box } from './plot/pen.ts';

const t = texts.lanes;
/** Two keys of one angle are at least this far apart, s. */
const APART = 0.01;
/** Half of the square in which a press takes a key, px. */
const REACH = 12;

/** The document with one key moved: a key of the file itself, or an edge of a shape with the shape's angle there. */
export function moveKey(
  base: SkillFile,
  bench: Pick<Bench, 'spans' | 'anchors'>,
  lane: Lane,
  key: LaneKey,
  s: number,
  deg: number,
  anchors: AnchorSeconds = bench.anchors(),
): SkillFile {
  const { source } = key;
  if (source.kind === 'key') {
    const old = base.schedule.keys?.[source.index];
    if (!old) return base;
    return changeKey(base, source.index, { at: s === key.t ? old.at : moveTime(old.at, s, anchors), deg });
  }
  const block = base.schedule.blocks?.[source.block];
  if (!block) return base;
  let out = base;
  if (s !== key.t) out = setBlockEdge(out, source.block, source.side, moveTime(block[source.side], s, anchors));
  if (deg !== key.deg) out = adjustBlock(out, source.block, [lane.id], deg);
  return out;
}

/** Keeps a key between its neighbours of the lane. */
export function limitKey(bench: Bench, lane: Lane, index: number, s: number): number {
  const key = lane.keys[index];
  if (key.source.kind === 'edge') return limitEdge(bench.spans(), key.source.block, key.source.side, s);
  const before = lane.keys[index - 1]?.t ?? -5;
  const after = lane.keys[index + 1]?.t ?? 30;
  return clamp(s, before + APART, after - APART);
}

export function LaneKeys(props: {
  bench: Bench;
  axis: TimeAxis;
  lane: Lane;
  box: Box;
  open: boolean;
  chosen: number | undefined;
  choose: (index: number) => void;
}) {
  const [plate, setPlate] = createSignal<PlateWords>();
  const scale = createMemo(() => laneScale(props.lane, { y: 0, height: props.box.height }, props.open));
  const label = (): string => texts.joint(props.lane.id);
  const place = (key: LaneKey): string => `translate(${xOf(props.axis, key.t)}px, ${scale()(key.deg)}px)`;
  const indices = createMemo(() => props.lane.keys.length);
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
    const bench = props.bench;
    const lane = props.lane;
    const key = lane.keys[index];
    const anchors = bench.anchors();
    const perPx = props.open ? Math.abs(1 / (scale()(1) - scale()(0) || 1)) : 1;
    const limits = [limitKey(bench, lane, index, -99), limitKey(bench, lane, index, 99)];
    let way: 'time' | 'angle' | undefined;
    startDrag(e, {
      move: (dx, dy, m) => {
        way ??= Math.abs(dx) >= Math.abs(dy) ? 'time' : 'angle';
        const step = m.altKey ? 0.001 : 0.01;
        const both = props.open && !m.shiftKey;
        const wanted = Math.round((key.t + dx / props.axis.pxPerS) / step) * step;
        const s = both || way === 'time' ? clamp(wanted, limits[0], limits[1]) : key.t;
        const turned = key.deg - dy * perPx;
        const deg = both || way === 'angle' ? Math.round(clamp(turned, ...lane.rangeDeg)) : key.deg;
        bench.draft(moveKey(bench.begin(), bench, lane, key, s, deg, anchors));
        const lines = [`${formatNumber(s, 2)} s, ${wordShift(s - key.t)}`];
        if (deg !== key.deg) lines.push(`${formatNumber(key.deg, 0)}° → ${formatNumber(deg, 0)}°`);
        setPlate({ x: xOf(props.axis, s), lines });
      },
      end: (moved) => {
        setPlate(undefined);
        if (moved) bench.settle(t.moved(label()));
        else props.choose(index);
      },
      cancel: () => {
        setPlate(undefined);
        bench.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent, index: number): void => {
    const bench = props.bench;
    const lane = props.lane;
    const key = lane.keys[index];
    const sign = e.key === 'ArrowLeft' || e.key === 'ArrowDown' ? -1 : 1;
    const far = e.shiftKey;
    if (e.key === 'ArrowLeft' || e.key === 'ArrowRight') {
      const s = limitKey(bench, lane, index, Math.round((key.t + sign * (far ? 0.1 : 0.01)) * 1000) / 1000);
      bench.edit(moveKey(bench.file(), bench, lane, key, s, key.deg), t.moved(label()));
    } else if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
      const deg = clamp(Math.round(key.deg) + sign * (far ? 10 : 1), ...lane.rangeDeg);
      bench.edit(moveKey(bench.file(), bench, lane, key, key.t, deg), t.moved(label()));
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      if (key.source.kind !== 'key') return;
      bench.edit(removeKey(bench.file(), key.source.index), t.removed(label()));
    } else if (e.key.toLowerCase() === 's' && !e.ctrlKey && !e.metaKey) {
      if (key.source.kind !== 'key') return;
      const kind = key.kind === 'stop' ? 'pass' : 'stop';
      bench.edit(changeKey(bench.file(), key.source.index, { kind }), t.stopsPasses(label()));
    } else if (e.key === 'Enter') props.choose(index);
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  return (
    <div
      class="lane-keys"
      classList={{ open: props.open }}
      style={{ top: `${props.box.y}px`, height: `${props.box.height}px` }}
    >
      <For each={Array.from({ length: indices() }, (_, i) => i)}>
        {(i) => (
          <Show when={props.lane.keys[i]}>
            {(key) => (
              <Show when={key().t >= -1e-6 && key().t <= props.axis.duration + 1e-6}>
                <button
                  type="button"
                  class={`key ${props.lane.sign} ${key().kind}`}
                  classList={{ chosen: props.open && props.chosen === i, own: key().source.kind === 'key' }}
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
                      {formatNumber(key().deg, 0)}°
                      {props.chosen === i ? ` ${key().kind === 'stop' ? t.stop : t.pass}` : ''}
                    </span>
                  </Show>
                </button>
              </Show>
            )}
          </Show>
        )}
      </For>
      <Show when={plate()}>{(p) => <DragPlate bench={props.bench} words={p()} width={props.axis.width} />}</Show>
    </div>
  );
}
