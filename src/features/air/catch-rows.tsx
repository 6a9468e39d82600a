/** Hands and rail through the flight, on the ruler of the whole skill: distance, reach, closing speed, whether the rail can be seen. */
import { createMemo, For, Show } from 'solid-js';
import type { WholeState } from '../../app/whole-state.ts';
import type { LegCatch } from '../../jobs/kinds/leg-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, unitOf } from '../../ui/units.ts';
import type { AirFrame } from './air-frame.ts';
import { catchTexts as t } from './catch-texts.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';

interface CatchRow {
  readonly id: 'hands' | 'reach' | 'closing';
  readonly share: number;
  readonly quantity: QuantityKind;
  readonly lines: readonly { readonly column: Float64Array; readonly style: string }[];
  /** a level that is asked */
  readonly asked?: number;
}

const rowsOf = (c: LegCatch): readonly CatchRow[] => [
  {
    id: 'hands',
    share: 1.6,
    quantity: 'length',
    asked: c.spec.gap,
    lines: [
      { column: c.right.distance, style: 'right' },
      { column: c.left.distance, style: 'left' },
    ],
  },
  {
    id: 'reach',
    share: 1,
    quantity: 'length',
    asked: 0,
    lines: [
      { column: c.right.reach, style: 'right' },
      { column: c.left.reach, style: 'left' },
    ],
  },
  {
    id: 'closing',
    share: 1,
    quantity: 'speed',
    lines: [
      { column: c.right.along, style: 'right' },
      { column: c.left.along, style: 'left' },
      { column: c.toward, style: 'toward' },
    ],
  },
];

const SEEN = 34;

export function CatchRows(props: {
  state: WholeState;
  caught: LegCatch;
  axis: WholeAxis;
  frame: AirFrame;
  room: number;
}) {
  const rows = createMemo(() => rowsOf(props.caught));
  const share = (): number => rows().reduce((sum, row) => sum + row.share, 0);
  const height = (row: CatchRow): number => Math.max(48, ((props.room - SEEN) * row.share) / share() - 4);
  return (
    <>
      <For each={rows()}>
        {(row) => (
          <div class="whole-line" classList={{ over: props.frame.timeX === 0 }}>
            <Title frame={props.frame} name={t.rows[row.id]} unit={unitOf(row.quantity)} />
            <Plot {...props} row={row} height={height(row)} />
          </div>
        )}
      </For>
      <div class="whole-line" classList={{ over: props.frame.timeX === 0 }}>
        <Title frame={props.frame} name={t.rows.seen} unit="" />
        <Seen {...props} />
      </div>
    </>
  );
}

function Title(props: { frame: AirFrame; name: readonly [string, string]; unit: string }) {
  return (
    <div class="whole-title" style={{ width: `${props.frame.timeX || props.frame.timeWidth}px` }}>
      <h3>
        {props.name[0]} <span>{props.unit}</span>
      </h3>
      <p>{props.name[1]}</p>
    </div>
  );
}

function Plot(props: { state: WholeState; caught: LegCatch; axis: WholeAxis; row: CatchRow; height: number }) {
  const span = createMemo(() => {
    const all = props.row.lines.flatMap(({ column }) => Array.from(column)).filter(Number.isFinite);
    return { low: Math.min(0, ...all), high: Math.max(0.1, ...all) };
  });
  const y = (v: number): number => 10 + (props.height - 16) * (1 - (v - span().low) / (span().high - span().low));
  const path = (column: Float64Array): string => {
    let d = '';
    for (let i = 0; i < column.length; i++) {
      if (!Number.isFinite(column[i])) continue;
      d += `${d ? 'L' : 'M'}${wholeX(props.axis, props.caught.t[i]).toFixed(1)} ${y(column[i]).toFixed(1)}`;
    }
    return d;
  };
  const row = (): number => {
    const at = props.state.cursor();
    const { t: times } = props.caught;
    if (at < times[0] - 1e-6 || at > times[times.length - 1] + 1e-6) return -1;
    let i = 0;
    while (i < times.length - 1 && times[i] < at) i++;
    return i;
  };
  const write = (v: number): string => sayNumber(props.row.quantity, v, 2);
  const atX = (): number => wholeX(props.axis, props.state.cursor());
  return (
    <svg class="whole-row catch-row" width={props.axis.width} height={props.height} aria-hidden="true">
      <path class="zero" d={`M${props.axis.left} ${y(0)}H${props.axis.width}`} />
      <text class="tick" x={props.axis.left - 7} y={y(0) + 4} text-anchor="end">
        0
      </text>
      <text class="tick" x={props.axis.left - 7} y="13" text-anchor="end">
        {formatNumber(span().high, 1)}
      </text>
      <Show when={props.row.asked}>
        {(level) => <path class="own" d={`M${props.axis.left} ${y(level())}H${props.axis.width}`} />}
      </Show>
      <For each={props.row.lines}>{(line) => <path class={`curve hand-${line.style}`} d={path(line.column)} />}</For>
      <Show when={row() >= 0}>
        <For each={props.row.lines}>
          {(line) => <circle class="ring" cx={atX()} cy={y(line.column[row()])} r="4" />}
        </For>
        <text class="named" x={atX() + 9} y={Math.max(14, y(props.row.lines[1].column[row()]) - 7)}>
          {write(props.row.lines[1].column[row()])} {t.left}, {write(props.row.lines[0].column[row()])} {t.right}
        </text>
      </Show>
    </svg>
  );
}

function Seen(props: { caught: LegCatch; axis: WholeAxis }) {
  const spans = () => props.caught.seen ?? [];
  return (
    <svg class="whole-row catch-row" width={props.axis.width} height={SEEN - 4} aria-hidden="true">
      <For each={spans()}>
        {([from, to]) => (
          <rect
            class="seen"
            x={wholeX(props.axis, from)}
            y="6"
            width={Math.max(1, wholeX(props.axis, to) - wholeX(props.axis, from))}
            height="16"
          />
        )}
      </For>
      <Show when={spans().length === 0}>
        <text x={props.axis.left} y="18">
          {props.caught.seen ? t.notSeen : '–'}
        </text>
      </Show>
    </svg>
  );
}
