/** The plain bodies of the sheet at true size, each over a person's height: an edge is dragged, and the line of its length takes the size. */

import { createSignal, For, Show } from 'solid-js';
import { own } from '../../../sim/math/own.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import type { SheetRow } from '../../engine/estimate.ts';
import { startDrag } from '../../ui/drag.ts';
import type { EstimateState } from './estimate-state.ts';
import { estimateTexts as e } from './words.ts';

type DrawnBody = Extract<SheetRow['result'], { kind: 'drawing' }> & { readonly size: string };

/** px for each m, and the room of one body */
const PER_M = 62;
const ROOM = { width: 150, height: 132 } as const;
const MIDDLE = { x: ROOM.width / 2, y: ROOM.height / 2 + 6 } as const;
/** a length is typed to this, in its unit */
const DECIMALS: Readonly<Record<string, number>> = { m: 2, cm: 0, mm: 0, in: 1, inch: 1, ft: 2 };

const stepOf = (unit: string): number => 10 ** -(own(DECIMALS, unit) ?? 2);

/** The value of the length at another size of the body, on a straight line between the points. */
function valueAt(points: NonNullable<DrawnBody['edge']>['points'], size: number): number {
  const i = Math.max(
    1,
    points.findIndex(([s]) => s >= size),
  );
  const after = points.at(size > (points.at(-1)?.[0] ?? 0) ? -1 : i) ?? points[1];
  const before = points[Math.max(0, points.indexOf(after) - 1)];
  const share = (size - before[0]) / (after[0] - before[0]);
  return Math.max(before[1] + share * (after[1] - before[1]), 0);
}

/** A line of the sheet with another value in it: its unit, ± and note stay. */
function withValue(line: string, value: number, unit: string): string {
  const text = value.toFixed(own(DECIMALS, unit) ?? 2);
  const found = /^([^=]*=\s*)(.*)$/.exec(line);
  if (!found) return line;
  const [, head, rest] = found;
  const tail = /\s*(?:\+-|±|\+\/-|#|(?<![\p{L}\p{N}_])(?:to|vs|if)(?![\p{L}\p{N}_])).*$/u.exec(
    rest.replace(/\{[^}]*\}/g, (m) => ' '.repeat(m.length)),
  );
  const kept = tail ? rest.slice(tail.index) : '';
  return `${head}${text} ${unit}${kept}`;
}

export function BodyPictures(props: { state: EstimateState }) {
  const bodies = (): readonly DrawnBody[] =>
    props.state
      .rows()
      .flatMap((row) => (row.result.kind === 'drawing' ? [{ ...row.result, size: row.size ?? '' }] : []));
  return (
    <Show when={bodies().length > 0}>
      <section class="sheet-bodies" aria-label={e.bodies}>
        <h3>
          {e.bodies} <span class="quiet">{e.bodiesHint}</span>
        </h3>
        <label class="body-show">
          <input
            type="checkbox"
            checked={props.state.drawn()}
            onChange={(event) => props.state.setDrawn(event.currentTarget.checked)}
          />
          {e.show}
        </label>
        <div class="body-row">
          <For each={bodies()}>{(one) => <BodyPicture state={props.state} body={one} />}</For>
        </div>
      </section>
    </Show>
  );
}

function BodyPicture(props: { state: EstimateState; body: DrawnBody }) {
  const flight = useFlight();
  const cursor = useCursor();
  const [dragged, setDragged] = createSignal<number>();
  const kind = (): DrawnBody['body']['kind'] => props.body.body.kind;
  const isRod = (): boolean => kind() === 'rod';
  const size = (): number => dragged() ?? props.body.body.size;
  /** px from the middle to the edge */
  const reach = (): number => Math.min((isRod() ? size() / 2 : size()) * PER_M, isRod() ? MIDDLE.y - 4 : MIDDLE.x - 6);
  const edge = () => props.body.edge;
  const put = (next: number): void => {
    const to = edge();
    const text = to && props.state.sheet()?.lines[to.line];
    if (!to || text === undefined) return;
    const step = stepOf(to.unit);
    const value = Math.max(step, Math.round(valueAt(to.points, next) / step) * step);
    props.state.setLine(to.line, withValue(text, value, to.unit));
  };
  const grab = (event: PointerEvent): void => {
    const from = props.body.body.size;
    const perPx = (isRod() ? 2 : 1) / PER_M;
    startDrag(event, {
      move: (dx, dy) => setDragged(Math.max(0.05, from + (isRod() ? -dy : dx) * perPx)),
      end: (moved) => {
        const to = dragged();
        setDragged(undefined);
        if (moved && to !== undefined) put(to);
      },
      cancel: () => setDragged(undefined),
    });
    event.preventDefault();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const by = /^Arrow(Up|Right)$/.test(event.key) ? 1 : /^Arrow(Down|Left)$/.test(event.key) ? -1 : 0;
    if (by === 0) return;
    put(props.body.body.size + by * (event.shiftKey ? 0.1 : 0.01));
    event.preventDefault();
    event.stopPropagation();
  };
  const timeOf = (at: string): number | undefined => {
    const { apex, duration } = flight.result().outline;
    if (at === 'apex') return apex;
    if (at === 'touchdown') return duration;
    if (/^take-?off$/.test(at)) return 0;
    const typed = /^(\d+(?:\.\d+)?) ?(s|%)$/.exec(at);
    return typed
      ? Math.min(duration, typed[2] === 's' ? Number(typed[1]) : (duration * Number(typed[1])) / 100)
      : undefined;
  };
  const handle = (): { left: string; top: string } =>
    isRod()
      ? { left: `${MIDDLE.x}px`, top: `${MIDDLE.y - reach()}px` }
      : { left: `${MIDDLE.x + reach()}px`, top: `${MIDDLE.y}px` };
  return (
    <figure class="body-one">
      <div class="body-picture" style={{ width: `${ROOM.width}px`, height: `${ROOM.height}px` }}>
        <svg width={ROOM.width} height={ROOM.height} aria-hidden="true">
          <Person />
          <g class="body-shape">
            <Show
              when={isRod()}
              fallback={
                <Show
                  when={kind() === 'cylinder'}
                  fallback={
                    <circle cx={MIDDLE.x} cy={MIDDLE.y} r={reach()} classList={{ dashed: kind() === 'point mass' }} />
                  }
                >
                  <rect x={MIDDLE.x - reach()} y={MIDDLE.y - 50} width={2 * reach()} height="100" />
                </Show>
              }
            >
              <path d={`M${MIDDLE.x} ${MIDDLE.y - reach()}v${2 * reach()}m-5 0h10m-10 ${-2 * reach()}h10`} />
            </Show>
            <Show when={kind() === 'point mass'}>
              <circle class="dot" cx={MIDDLE.x + reach()} cy={MIDDLE.y} r="5" />
              <circle class="dot" cx={MIDDLE.x - reach()} cy={MIDDLE.y} r="5" />
            </Show>
          </g>
        </svg>
        <Show when={edge()}>
          {(to) => (
            <button
              type="button"
              class="body-edge"
              classList={{ upright: isRod() }}
              style={handle()}
              aria-label={e.edge(to().name, props.body.size)}
              title={e.edge(to().name, props.body.size)}
              onPointerDown={grab}
              onKeyDown={onKeyDown}
            />
          )}
        </Show>
      </div>
      <figcaption>
        <b>
          {dragged() === undefined ? e.bodySize(kind(), props.body.size) : e.bodySize(kind(), `${size().toFixed(2)} m`)}
        </b>
        <span class="quiet">{e.bodyFor(props.body.of)}</span>
        <Show when={timeOf(props.body.at) !== undefined}>
          <button
            type="button"
            class="small plain"
            aria-label={`${e.goTo(props.body.at)}: ${e.bodyFor(props.body.of)}`}
            onClick={() => {
              cursor.play.pause();
              cursor.set(timeOf(props.body.at) ?? 0);
            }}
          >
            {e.goTo(props.body.at)}
          </button>
        </Show>
      </figcaption>
    </figure>
  );
}

/** Somebody of 1.65 m from the front, to judge a size by; the ring is the mass centre. */
function Person() {
  const h = 1.65 * PER_M;
  const { x, y } = MIDDLE;
  const top = y - h * 0.44;
  return (
    <g class="body-person">
      <circle cx={x} cy={top + h * 0.07} r={h * 0.065} />
      <path
        d={`M${x - h * 0.1} ${top + h * 0.17}h${h * 0.2}l${-h * 0.03} ${h * 0.33}l${h * 0.015} ${h * 0.48}h${-h * 0.05}l${-h * 0.035} ${-h * 0.44}l${-h * 0.035} ${h * 0.44}h${-h * 0.05}l${h * 0.015} ${-h * 0.48}z`}
      />
      <path
        d={`M${x - h * 0.1} ${top + h * 0.18}l${-h * 0.05} ${h * 0.4}M${x + h * 0.1} ${top + h * 0.18}l${h * 0.05} ${h * 0.4}`}
      />
      <circle class="centre" cx={x} cy={y} r="4" />
    </g>
  );
}
