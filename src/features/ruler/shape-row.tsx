/** The body shapes on the ruler: held shapes are white tiles, moves the grey pieces between. Edges are handles. */

import { createMemo, createSignal, For, Show, untrack } from 'solid-js';
import { DragPlate, type PlateWords, wordShift } from '../../app/drag-plate.tsx';
import { keyTexts } from '../../app/key-words.ts';
import { useLaying } from '../../app/laying.ts';
import { useCursor, useDocument, useFlight, useServices, useShell } from '../../app/page.ts';
import { listSnapTimes, type RowTelling, SnapLine, snapTogether } from '../../app/snapping.tsx';
import { texts } from '../../app/words.ts';
import { removeBlock, setBlockEdge } from '../../document/edits.ts';
import type { KeySource } from '../../document/lanes.ts';
import { moveBlock } from '../../document/lay-shape.ts';
import { getSchedule } from '../../document/phases.ts';
import { type BlockSpan, findSpan, limitEdge } from '../../document/spans.ts';
import { moveTime } from '../../document/times.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import { PoseMarks } from './pose-marks.tsx';
import { floorTexts } from './words.ts';

const t = texts.shapes;
type Side = 'from' | 'to';
/** px */
interface Reach {
  readonly outward: number;
  readonly inward: number;
}
/** px that a grip reaches outside of its shape, and into it; for a finger both make `FINGER` where there is room. A third of a shape stays for itself. */
const MOST_REACH = 36;
const INWARD = 8;
const FINGER = 44;
/** px of a letter of a name, and px beside the plumb line */
const NAME_PX = 6.2;
const ASIDE = 7;
/** px: a tile narrower than this shows no small figure */
const LEAST_FIGURE = 30;

export function ShapeRow(props: {
  axis: TimeAxis;
  tile: number;
  names: 'all' | 'chosen';
  touch?: boolean;
  letter?: number;
}) {
  const flight = useFlight();
  const cursor = useCursor();
  const shell = useShell();
  const count = createMemo(() => flight.spans().length);
  const [telling, setTelling] = createSignal<RowTelling>();
  const plate = (): PlateWords | undefined => telling()?.plate;
  const { carried } = useLaying();
  // for fingers only the shape at the cursor is moved as a whole; it stays the one through a drag
  const near = createMemo<number | undefined>((last) =>
    plate() ? last : findSpan(flight.spans(), cursor.at())?.span.index,
  );
  /** Grips reach outward over the move beside them, never as far as the next shape; what they lack there they have inside. */
  const edge = (i: number) => {
    const spans = flight.spans();
    const [from, to] = [spans[i]?.from ?? 0, spans[i]?.to ?? 0];
    const own =
      Math.max(visible(props.axis, from, to).width, 0) / (isShown(from, props.axis) && isShown(to, props.axis) ? 3 : 1);
    const room = (a: number | undefined, b: number | undefined): Reach => {
      const most = a === undefined || b === undefined ? MOST_REACH : ((b - a) * props.axis.pxPerS) / 2;
      const inward = Math.min(Math.max(FINGER - Math.min(most, MOST_REACH), INWARD), own);
      return { outward: Math.min(most, props.touch ? FINGER - inward : MOST_REACH), inward };
    };
    return {
      axis: props.axis,
      isNear: near() === i,
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
          <Show when={flight.spans()[i]}>
            {(span) => (
              <>
                <MovePiece axis={props.axis} before={flight.spans()[i - 1]} span={span()} />
                <ShapeTile
                  {...props}
                  span={span()}
                  next={flight.spans()[i + 1]}
                  movable={!props.touch || near() === i}
                  tell={setTelling}
                />
                <Edge {...edge(i)} span={span()} side="from" tell={setTelling} />
                <Edge {...edge(i)} span={span()} side="to" tell={setTelling} />
              </>
            )}
          </Show>
        )}
      </For>
      {/* where joints are worked on; and where there is nothing but keys */}
      <Show when={props.touch || shell.rows.isOpen('joints') || count() === 0}>
        <PoseMarks axis={props.axis} tell={setTelling} />
      </Show>
      <For each={shell.answer.said()?.marks}>
        {([from, to]) => (
          <div
            class="shape-shift"
            classList={{ later: to > from }}
            aria-hidden="true"
            style={{
              left: `${xOf(props.axis, Math.min(from, to))}px`,
              width: `${Math.max(2, Math.abs(to - from) * props.axis.pxPerS)}px`,
            }}
          />
        )}
      </For>
      <Show when={carried()}>
        {(c) => (
          <Show when={c().at !== undefined}>
            <div class="shape-drop" aria-hidden="true" style={{ left: `${xOf(props.axis, c().at ?? 0)}px` }} />
          </Show>
        )}
      </Show>
      <SnapLine axis={props.axis} line={telling()?.line} />
      <Show when={plate()}>{(p) => <DragPlate words={p()} width={props.axis.width} />}</Show>
    </fieldset>
  );
}

/** An edge at take-off or landing is not moved here. */
const isShown = (s: number, axis: TimeAxis): boolean => s > 0.001 && s < axis.duration - 0.001;

const visible = (axis: TimeAxis, from: number, to: number): { left: number; width: number } => {
  const a = xOf(axis, Math.max(from, 0));
  const b = xOf(axis, Math.min(to, axis.duration));
  return { left: a, width: b - a };
};

function MovePiece(props: { axis: TimeAxis; before: BlockSpan | undefined; span: BlockSpan }) {
  const place = (): { left: number; width: number } =>
    visible(props.axis, props.before?.to ?? Math.min(props.span.from, 0), props.span.from);
  const flight = useFlight();
  const seconds = (): number => props.span.from - (props.before?.to ?? 0);
  const moves = (): boolean => props.before !== undefined;
  const isWithin = (s: number | undefined): boolean =>
    s !== undefined && s >= (props.before?.to ?? Number.NEGATIVE_INFINITY) && s <= props.span.from;
  const asksMuch = (): boolean =>
    isWithin(flight.asksAt()) ||
    flight.cautions().some((c) => (c.kind === 'speed' || c.kind === 'torque') && isWithin(c.t));
  return (
    <Show when={place().width > 1}>
      <div
        class="move"
        classList={{ still: !moves(), strained: asksMuch() }}
        style={{ left: `${place().left}px`, width: `${place().width}px` }}
        aria-hidden="true"
      >
        <Show when={place().width > 34}>
          <Show when={moves()}>
            <CutText class="move-word" text={props.span.word} />
          </Show>
          <Show when={place().width > 52 && moves()}>
            <span class="move-time">{formatNumber(seconds(), 2)} s</span>
          </Show>
        </Show>
      </div>
    </Show>
  );
}

function ShapeTile(props: {
  axis: TimeAxis;
  tile: number;
  names: 'all' | 'chosen';
  letter?: number;
  span: BlockSpan;
  next: BlockSpan | undefined;
  /** a drag retimes it; else the press goes on to the ruler */
  movable: boolean;
  tell: (telling: RowTelling | undefined) => void;
}) {
  const cursor = useCursor();
  const flight = useFlight();
  const services = useServices();
  const doc = useDocument();
  const place = (): { left: number; width: number } => visible(props.axis, props.span.from, props.span.to);
  const chosen = (): boolean => {
    const s = cursor.at();
    return s >= props.span.from - 1e-6 && s <= props.span.to + 1e-6;
  };
  const letter = (): number => props.letter ?? NAME_PX;
  const nameRoom = (): number =>
    (props.next ? Math.min(xOf(props.axis, props.next.from), xOf(props.axis, props.axis.duration)) : props.axis.width) -
    place().left -
    8;
  /** px of the plumb line in the tile; undefined: it is elsewhere */
  const struck = (): number | undefined => {
    const x = xOf(props.axis, cursor.at()) - place().left;
    return x >= 0 && x <= place().width ? x : undefined;
  };
  /** Its title, or its word where the title has no room: not cut by dots. It steps to the right of the plumb line that would go through it. */
  const name = createMemo(() => {
    const { title, word } = props.span;
    const x = xOf(props.axis, cursor.at()) - place().left;
    const both = [title, word.charAt(0).toUpperCase() + word.slice(1)].map((text) => {
      const wide = text.length * letter();
      const aside = x > -3 && x < wide + 3 ? x + ASIDE : 0;
      return { text, aside, fits: aside + wide <= nameRoom() };
    });
    const plain = { ...both[1], aside: nameRoom() - both[1].aside > 40 ? both[1].aside : 0 };
    return both.find(({ fits }) => fits) ?? plain;
  });
  // figures cost a little: only a change of the pose draws a new one
  const pose = createMemo(() => flight.result().skill.schedule.blocks[props.span.index]?.pose.join(), undefined);
  const figureWidth = (): number => Math.round(props.tile * 0.72);
  const figure = createMemo(() => {
    pose();
    const [width, height] = [figureWidth(), props.tile - 4];
    return untrack(() => services.pictures.tile(flight.result(), props.span.index, width, height));
  });
  const seconds = (): string =>
    formatNumber(Math.min(props.span.to, props.axis.duration) - Math.max(props.span.from, 0), 2);
  const title = (): string =>
    t.block(props.span.title, formatNumber(props.span.from, 2), formatNumber(props.span.to, 2));
  let dragged = false;
  const press = (e: PointerEvent): void => {
    if (!props.movable || e.button !== 0) return;
    e.stopPropagation();
    const { index, from, to, title: name } = props.span;
    const edges: KeySource[] = [
      { kind: 'edge', block: index, side: 'from' },
      { kind: 'edge', block: index, side: 'to' },
    ];
    const marks = listSnapTimes({ doc, flight }, edges);
    const anchors = flight.anchors();
    dragged = false;
    startDrag(e, {
      move: (dx, _dy, m) => {
        dragged = true;
        const snap = snapTogether([from, to], dx / props.axis.pxPerS, marks, props.axis.pxPerS, m.altKey);
        doc.draft(moveBlock(doc.begin(), index, snap.by, anchors));
        const now = flight.spans()[index]?.from ?? from;
        const rests = snap.line && Math.abs(now - from - snap.by) < 0.002 ? snap.line : undefined;
        props.tell({
          plate: {
            x: xOf(props.axis, now),
            lines: [t.movedEdge(keyTexts.tileFrom(name), formatNumber(now, 2), wordShift(now - from))],
          },
          line: rests,
        });
      },
      end: (moved) => {
        props.tell(undefined);
        if (moved) doc.settle(t.retime(name));
      },
      cancel: () => {
        props.tell(undefined);
        doc.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const { index, title: name } = props.span;
    const sign = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    if (sign !== 0 && e.altKey) {
      const by = sign * (e.shiftKey ? 0.1 : 0.01);
      doc.edit(moveBlock(doc.file(), index, by, flight.anchors()), t.retime(name));
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      doc.edit(removeBlock(doc.file(), index), t.removed(name));
    } else return;
    e.preventDefault();
    e.stopPropagation();
  };
  return (
    <Show when={place().width >= 0}>
      <Show when={(props.names === 'all' || chosen()) && nameRoom() > 20}>
        <span
          class="shape-name"
          aria-hidden="true"
          style={{ left: `${place().left + name().aside}px`, 'max-width': `${nameRoom() - name().aside}px` }}
        >
          <CutText text={`${name().text}${props.span.changed ? '*' : ''}`} />
        </span>
      </Show>
      <button
        type="button"
        class="tile"
        classList={{
          chosen: chosen(),
          movable: props.movable,
          'to-left': (struck() ?? 0) > place().width / 2,
          'to-right': struck() !== undefined && (struck() ?? 0) <= place().width / 2,
        }}
        title={`${title()}; ${props.span.changed ? `${t.starred}; ` : ''}${keyTexts.tileHint}`}
        aria-label={`${title()}${props.span.changed ? `, ${t.ownAngles}` : ''}`}
        aria-current={chosen() ? 'true' : undefined}
        style={{ left: `${place().left}px`, width: `${Math.max(place().width, 2)}px` }}
        onPointerDown={press}
        onKeyDown={onKeyDown}
        onClick={() => {
          if (!dragged) cursor.set((Math.max(props.span.from, 0) + Math.min(props.span.to, props.axis.duration)) / 2);
          dragged = false;
        }}
      >
        <Show when={place().width >= Math.max(LEAST_FIGURE, figureWidth() * 0.62)}>
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
  axis: TimeAxis;
  span: BlockSpan;
  side: Side;
  tell: (telling: RowTelling | undefined) => void;
  reach: Readonly<Record<Side, Reach>>;
  /** its shape is the one at the cursor */
  isNear: boolean;
}) {
  const doc = useDocument();
  const flight = useFlight();
  const cursor = useCursor();
  const at = (): number => props.span[props.side];
  const what = (): string => (props.side === 'from' ? t.edgeFrom : t.edgeTo)(props.span.title);
  const write = (s: number): void => {
    const base = doc.begin();
    const { index } = props.span;
    const block = getSchedule(base).blocks?.[index];
    if (!block) return;
    doc.draft(setBlockEdge(base, index, props.side, moveTime(block[props.side], s, flight.anchors())));
  };
  const press = (e: PointerEvent): void => {
    e.stopPropagation();
    const start = at();
    // limits and events as they were when the gesture began
    const spans = flight.spans();
    const { index, title } = props.span;
    const marks = listSnapTimes({ doc, flight }, [{ kind: 'edge', block: index, side: props.side }]);
    const done = (): void => props.tell(undefined);
    startDrag(e, {
      move: (dx, _dy, m) => {
        const snap = snapTogether([start], dx / props.axis.pxPerS, marks, props.axis.pxPerS, m.altKey);
        const s = limitEdge(spans, index, props.side, start + snap.by);
        write(s);
        props.tell({
          plate: { x: xOf(props.axis, s), lines: [t.movedEdge(what(), formatNumber(s, 2), wordShift(s - start))] },
          line: Math.abs(s - start - snap.by) < 1e-6 ? snap.line : undefined,
        });
      },
      end: (moved) => {
        done();
        if (moved) doc.settle(t.retime(title));
        else cursor.set(start);
      },
      cancel: () => {
        done();
        doc.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const sign = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    if (sign === 0) return;
    e.preventDefault();
    e.stopPropagation();
    write(limitEdge(flight.spans(), props.span.index, props.side, at() + sign * (e.shiftKey ? 0.1 : 0.01)));
    doc.settle(t.retime(props.span.title));
  };
  return (
    <Show when={isShown(at(), props.axis)}>
      <div
        class="edge"
        classList={{ [props.side]: true, near: props.isNear }}
        role="slider"
        tabIndex={0}
        aria-label={what()}
        aria-orientation="horizontal"
        aria-valuemin={0}
        aria-valuemax={Number(props.axis.duration.toFixed(3))}
        aria-valuenow={Number(at().toFixed(3))}
        aria-valuetext={floorTexts.time(formatNumber(at(), 2))}
        style={{
          left: `${xOf(props.axis, at())}px`,
          '--reach': `${props.reach[props.side].outward}px`,
          '--inward': `${props.reach[props.side].inward}px`,
        }}
        onPointerDown={press}
        onKeyDown={onKeyDown}
      />
    </Show>
  );
}
