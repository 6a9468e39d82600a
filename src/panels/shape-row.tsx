/** The body shapes on the ruler: held shapes are white tiles, moves the grey pieces between. Edges are handles. */
import { createMemo, createSignal, For, Show, untrack } from 'solid-js';
import { setBlockEdge } from '../document/edits.ts';
import { type BlockSpan, findSpan, limitEdge } from '../document/spans.ts';
import { moveTime } from '../document/times.ts';
import { texts } from '../texts.ts';
import type { Bench } from './bench.ts';
import { DragPlate, type PlateWords, wordShift } from './drag-plate.tsx';
import { formatNumber } from './numbers.ts';
import { startDrag } from './parts/drag.ts';
import { type TimeAxis, xOf } from './plot/axis.ts';

const t = texts.shapes;
type Side = 'from' | 'to';
/** px that a grip reaches outside of its shape; the style sheet may make it smaller */
const MOST_REACH = 36;

export function ShapeRow(props: {
  bench: Bench;
  axis: TimeAxis;
  tile: number;
  names: 'all' | 'chosen';
  touch?: boolean;
}) {
  const count = createMemo(() => props.bench.spans().length);
  const [plate, setPlate] = createSignal<PlateWords>();
  // for fingers only the shape at the cursor has grips; they stay with it through a drag
  const near = createMemo<number | undefined>((last) =>
    plate() ? last : findSpan(props.bench.spans(), props.bench.cursor())?.span.index,
  );
  /** Grips reach outward over the move beside them, never as far as the next shape. */
  const edge = (i: number) => {
    const spans = props.bench.spans();
    const room = (a: number | undefined, b: number | undefined): number =>
      a === undefined || b === undefined ? MOST_REACH : Math.min(MOST_REACH, ((b - a) * props.axis.pxPerS) / 2);
    return {
      bench: props.bench,
      axis: props.axis,
      reach: { from: room(spans[i - 1]?.to, spans[i]?.from), to: room(spans[i]?.to, spans[i + 1]?.from) },
    };
  };
  return (
    <fieldset class="shapes" aria-label={t.title} style={{ '--tile': `${props.tile}px` }}>
      <Show when={count() === 0}>
        <p class="quiet shapes-none" style={{ left: `${props.axis.x0}px` }}>
          {t.none}
        </p>
      </Show>
      <For each={Array.from({ length: count() }, (_, i) => i)}>
        {(i) => (
          <Show when={props.bench.spans()[i]}>
            {(span) => (
              <>
                <MovePiece bench={props.bench} axis={props.axis} before={props.bench.spans()[i - 1]} span={span()} />
                <ShapeTile {...props} span={span()} next={props.bench.spans()[i + 1]} />
                <Show when={!props.touch || near() === i}>
                  <Edge {...edge(i)} span={span()} side="from" tell={setPlate} />
                  <Edge {...edge(i)} span={span()} side="to" tell={setPlate} />
                </Show>
              </>
            )}
          </Show>
        )}
      </For>
      <Show when={plate()}>{(p) => <DragPlate bench={props.bench} words={p()} width={props.axis.width} />}</Show>
    </fieldset>
  );
}

const visible = (axis: TimeAxis, from: number, to: number): { left: number; width: number } => {
  const a = xOf(axis, Math.max(from, 0));
  const b = xOf(axis, Math.min(to, axis.duration));
  return { left: a, width: b - a };
};

function MovePiece(props: { bench: Bench; axis: TimeAxis; before: BlockSpan | undefined; span: BlockSpan }) {
  const place = (): { left: number; width: number } =>
    visible(props.axis, props.before?.to ?? Math.min(props.span.from, 0), props.span.from);
  const seconds = (): number => props.span.from - (props.before?.to ?? 0);
  const moves = (): boolean => props.before !== undefined;
  return (
    <Show when={place().width > 1}>
      <div
        class="move"
        classList={{ still: !moves() }}
        style={{ left: `${place().left}px`, width: `${place().width}px` }}
        aria-hidden="true"
      >
        <Show when={place().width > 34}>
          <span class="move-word">{moves() ? props.span.word : ''}</span>
          <Show when={place().width > 52 && moves()}>
            <span class="move-time">{formatNumber(seconds(), 2)} s</span>
          </Show>
        </Show>
      </div>
    </Show>
  );
}

function ShapeTile(props: {
  bench: Bench;
  axis: TimeAxis;
  tile: number;
  names: 'all' | 'chosen';
  span: BlockSpan;
  next: BlockSpan | undefined;
}) {
  const place = (): { left: number; width: number } => visible(props.axis, props.span.from, props.span.to);
  const chosen = (): boolean => {
    const s = props.bench.cursor();
    return s >= props.span.from - 1e-6 && s <= props.span.to + 1e-6;
  };
  const nameRoom = (): number =>
    (props.next ? Math.min(xOf(props.axis, props.next.from), xOf(props.axis, props.axis.duration)) : props.axis.width) -
    place().left -
    8;
  // figures cost a little: only a change of the pose draws a new one
  const pose = createMemo(() => props.bench.result().skill.schedule.blocks[props.span.index]?.pose.join(), undefined);
  const figureWidth = (): number => Math.round(props.tile * 0.72);
  const figure = createMemo(() => {
    pose();
    const [width, height] = [figureWidth(), props.tile - 4];
    return untrack(() => props.bench.ports.stage.tile(props.bench.result(), props.span.index, width, height));
  });
  const seconds = (): string =>
    formatNumber(Math.min(props.span.to, props.axis.duration) - Math.max(props.span.from, 0), 2);
  const title = (): string =>
    t.block(props.span.title, formatNumber(props.span.from, 2), formatNumber(props.span.to, 2));
  return (
    <Show when={place().width >= 0}>
      <Show when={(props.names === 'all' || chosen()) && nameRoom() > 20}>
        <span
          class="shape-name"
          aria-hidden="true"
          style={{ left: `${place().left}px`, 'max-width': `${nameRoom()}px` }}
        >
          {props.span.title}
          {props.span.changed ? '*' : ''}
        </span>
      </Show>
      <button
        type="button"
        class="tile"
        classList={{ chosen: chosen() }}
        title={title()}
        aria-label={title()}
        aria-current={chosen() ? 'true' : undefined}
        style={{ left: `${place().left}px`, width: `${Math.max(place().width, 2)}px` }}
        onClick={() =>
          props.bench.setCursor((Math.max(props.span.from, 0) + Math.min(props.span.to, props.axis.duration)) / 2)
        }
      >
        <Show when={place().width >= figureWidth() * 0.62}>
          {/* eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone */}
          <span class="figure" innerHTML={figure()} />
        </Show>
        <Show when={place().width > figureWidth() + 58}>
          <span class="tile-time">{seconds()} s</span>
        </Show>
      </button>
    </Show>
  );
}

function Edge(props: {
  bench: Bench;
  axis: TimeAxis;
  span: BlockSpan;
  side: Side;
  tell: (p: PlateWords | undefined) => void;
  reach: Readonly<Record<Side, number>>;
}) {
  const at = (): number => props.span[props.side];
  const shown = (): boolean => at() > 0.001 && at() < props.axis.duration - 0.001;
  const what = (): string => (props.side === 'from' ? t.edgeFrom : t.edgeTo)(props.span.title);
  const write = (s: number): void => {
    const base = props.bench.begin();
    const { index } = props.span;
    const block = base.schedule.blocks?.[index];
    if (!block) return;
    props.bench.draft(setBlockEdge(base, index, props.side, moveTime(block[props.side], s, props.bench.anchors())));
  };
  const press = (e: PointerEvent): void => {
    e.stopPropagation();
    const start = at();
    // limits and events as they were when the gesture began
    const spans = props.bench.spans();
    const { index, title } = props.span;
    const done = (): void => props.tell(undefined);
    startDrag(e, {
      move: (dx, _dy, m) => {
        const step = m.altKey ? 0.001 : 0.01;
        const wanted = Math.round((start + dx / props.axis.pxPerS) / step) * step;
        const s = limitEdge(spans, index, props.side, wanted);
        write(s);
        props.tell({ x: xOf(props.axis, s), lines: [t.movedEdge(what(), formatNumber(s, 2), wordShift(s - start))] });
      },
      end: (moved) => {
        done();
        if (moved) props.bench.settle(t.retime(title));
        else props.bench.setCursor(start);
      },
      cancel: () => {
        done();
        props.bench.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const sign = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    if (sign === 0) return;
    e.preventDefault();
    e.stopPropagation();
    write(limitEdge(props.bench.spans(), props.span.index, props.side, at() + sign * (e.shiftKey ? 0.1 : 0.01)));
    props.bench.settle(t.retime(props.span.title));
  };
  return (
    <Show when={shown()}>
      <div
        class="edge"
        classList={{ [props.side]: true }}
        role="slider"
        tabIndex={0}
        aria-label={what()}
        aria-orientation="horizontal"
        aria-valuemin={0}
        aria-valuemax={Number(props.axis.duration.toFixed(3))}
        aria-valuenow={Number(at().toFixed(3))}
        aria-valuetext={texts.floor.time(formatNumber(at(), 2))}
        style={{ left: `${xOf(props.axis, at())}px`, '--reach': `${props.reach[props.side]}px` }}
        onPointerDown={press}
        onKeyDown={onKeyDown}
      />
    </Show>
  );
}
