/** Force, what the head feels, turning, angular momentum and energy through all phases, on the ruler of the whole skill. */
import { createMemo, For, Show } from 'solid-js';
import { niceTop } from '../../app/plot/pen.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, toShown, unitOf } from '../../ui/units.ts';
import { rowTexts as t } from './row-texts.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';

/** under this no row is drawn: body weights, g, rev/s, kg m2/s, J */
const NOTHING = 0.02;
/** px that the words of one's own weight keep from the cursor */
const OWN_ROOM = 44;

interface Line {
  readonly column: ArrayLike<number>;
  readonly hue: string;
  readonly name?: string;
  readonly dash?: string;
}
interface Row {
  readonly id: keyof typeof t.rows;
  readonly share: number;
  readonly lines: readonly Line[];
  readonly decimals: number;
  readonly quantity?: QuantityKind;
}

export function wholeRows(whole: WholeResult): readonly Row[] {
  const c = whole.columns;
  const abs = (column: Float64Array): Float64Array => column.map(Math.abs);
  return [
    { id: 'force', share: 2, lines: [{ column: c.weights, hue: 'ink' }], decimals: 1 },
    { id: 'felt', share: 1, lines: [{ column: c.feltHead, hue: 'ink' }], decimals: 1 },
    { id: 'turn', share: 1, lines: [{ column: abs(c.turn), hue: 'som' }], decimals: 2, quantity: 'rate' },
    { id: 'momentum', share: 1, lines: [{ column: abs(c.h), hue: 'ink' }], decimals: 1, quantity: 'momentum' },
    {
      id: 'energy',
      share: 1.1,
      quantity: 'energy',
      lines: [
        { column: c.height, hue: 'ink-3', name: t.height },
        { column: c.motion, hue: 'ink', name: t.motion, dash: '7 3' },
        { column: c.held, hue: 'ink-2', name: t.held, dash: '2 3' },
      ],
      decimals: 0,
    },
  ];
}

/** What is left where there is no room: energy goes first, then what is felt, then momentum. */
export function rowsThatFit(rows: readonly Row[], room: number, least: number): readonly Row[] {
  const out = ['energy', 'felt', 'momentum'];
  // what says nothing has no row
  let shown = rows.filter(({ lines }) => lines.some(({ column }) => Array.from(column).some((v) => v > NOTHING)));
  while (shown.length > 1 && shown.length * least > room && out.length > 0) {
    const id = out.shift();
    shown = shown.filter((row) => row.id !== id);
  }
  return shown;
}

export function WholeRow(props: { whole: WholeResult; state: WholeState; axis: WholeAxis; row: Row; height: number }) {
  const shown = (v: number): number => (props.row.quantity ? toShown(props.row.quantity, v) : v);
  const write = (v: number): string =>
    props.row.quantity ? sayNumber(props.row.quantity, v, props.row.decimals) : formatNumber(v, props.row.decimals);
  const inView = createMemo(() => {
    const { t: times } = props.whole.columns;
    const list: number[] = [];
    for (let i = 0; i < times.length; i++) if (times[i] >= props.axis.from - 1e-9) list.push(i);
    return list;
  });
  const most = createMemo(() => {
    let best = 0.01;
    for (const { column } of props.row.lines) for (const i of inView()) if (column[i] > best) best = column[i];
    return best;
  });
  const top = createMemo(() => niceTop(shown(most()) * 1.04));
  const y = (v: number): number => 8 + (props.height - 13) * (1 - shown(v) / top());
  const path = ({ column }: Line): string => {
    let d = '';
    let last = -2;
    for (const i of inView()) {
      const v = column[i];
      if (Number.isNaN(v)) {
        last = -2;
        continue;
      }
      // what is not said in between is not joined
      d += `${last === i - 1 ? 'L' : 'M'}${wholeX(props.axis, props.whole.columns.t[i]).toFixed(1)} ${y(v).toFixed(1)}`;
      last = i;
    }
    return d;
  };
  const now = (line: Line): number => line.column[props.state.row()];
  const topRow = ({ column }: Line): number => {
    let best = inView()[0] ?? 0;
    for (const i of inView()) if (column[i] > column[best] || Number.isNaN(column[best])) best = i;
    return best;
  };
  const airs = () => props.whole.phases.filter((phase) => phase.kind === 'flight' && phase.to > props.axis.from);
  const edges = (): number[] => [
    ...new Set(props.whole.phases.flatMap(({ from, to }) => [from, to]).filter((s) => s > props.axis.from + 1e-6)),
  ];
  /** in the air, where the force is nothing; clear of the cursor */
  const ownX = (): number => {
    const air = airs().reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a), airs()[0]);
    const at = wholeX(props.axis, props.state.cursor());
    const middle = wholeX(props.axis, air ? (air.from + air.to) / 2 : props.axis.from);
    if (Math.abs(at - middle) > OWN_ROOM) return middle;
    const isNarrow = air !== undefined && at + 2 * OWN_ROOM > wholeX(props.axis, air.to);
    return at + (at > middle || isNarrow ? -OWN_ROOM : OWN_ROOM);
  };
  /** the mean of stopping, as a block of the same area */
  const block = () => {
    const leg = props.whole.legs[props.whole.legs.length - 1];
    if (props.row.id !== 'force' || leg.landing?.kind !== 'landed') return undefined;
    const { brakeTime, meanBodyWeights } = leg.landing.report;
    if (!brakeTime) return undefined;
    return {
      x: wholeX(props.axis, leg.touchdown),
      width: Math.max(1, brakeTime * props.axis.pxPerS),
      y: y(meanBodyWeights),
      height: y(0) - y(meanBodyWeights),
    };
  };
  /** over the curve; where there is no room, under it */
  const nameY = (at: number): number => (at > 22 ? Math.min(props.height - 8, at - 8) : at + 17);
  const atX = (): number => wholeX(props.axis, props.state.cursor());
  const value = (): string => {
    const v = now(props.row.lines[0]);
    return Number.isFinite(v) ? write(v) : '–';
  };
  const isLeft = (): boolean => atX() > props.axis.width - 70;
  return (
    <svg class="whole-row" width={props.axis.width} height={props.height} aria-hidden="true">
      <For each={edges()}>{(s) => <path class="edge-line" d={`M${wholeX(props.axis, s)} 0V${props.height}`} />}</For>
      <path class="zero" d={`M${props.axis.left} ${y(0)}H${props.axis.width}`} />
      <text class="tick" x={props.axis.left - 7} y={y(0) + 4} text-anchor="end">
        0
      </text>
      <Show when={props.height > 34}>
        <text class="tick" x={props.axis.left - 7} y={12} text-anchor="end">
          {formatNumber(top(), top() < 3 ? 1 : 0)}
        </text>
      </Show>
      <Show when={props.row.id === 'force'}>
        <path class="own" d={`M${props.axis.left} ${y(1)}H${props.axis.width}`} />
      </Show>
      <Show when={block()}>
        {(b) => <rect class="mean" x={b().x} y={b().y} width={b().width} height={b().height} />}
      </Show>
      <For each={props.row.lines}>
        {(line) => <path class={`curve ${line.hue}`} d={path(line)} stroke-dasharray={line.dash} />}
      </For>
      <Show when={props.row.id === 'momentum' || props.row.id === 'force'}>
        <For each={airs()}>
          {(air) => {
            const v = (): number =>
              props.row.id === 'force'
                ? 0
                : Math.abs(props.whole.columns.h[rowAt(props.whole, (air.from + air.to) / 2)]);
            return (
              <path
                class="level"
                d={`M${wholeX(props.axis, Math.max(air.from, props.axis.from))} ${y(v())}H${wholeX(props.axis, air.to)}`}
              />
            );
          }}
        </For>
      </Show>
      <For each={props.row.lines}>
        {(line) => (
          <Show when={Number.isFinite(now(line))}>
            <circle class={`ring ${line.hue}`} cx={atX()} cy={y(now(line))} r="4.2" />
          </Show>
        )}
      </For>
      <Show when={props.row.id === 'force'}>
        <text
          class="named"
          x={wholeX(props.axis, props.whole.columns.t[topRow(props.row.lines[0])])}
          y={Math.max(12, y(props.row.lines[0].column[topRow(props.row.lines[0])]) - 5)}
          text-anchor="end"
        >
          {formatNumber(props.row.lines[0].column[topRow(props.row.lines[0])], 1)}
        </text>
        <text class="tick" x={ownX()} y={y(1) - 4} text-anchor="middle">
          {t.ownWeight}
        </text>
      </Show>
      <Show when={props.row.id !== 'energy' && (props.row.id !== 'force' || props.state.phase()?.kind !== 'flight')}>
        <text
          class="named"
          x={atX() + (isLeft() ? -9 : 9)}
          y={nameY(y(now(props.row.lines[0]) || 0))}
          text-anchor={isLeft() ? 'end' : 'start'}
        >
          {value()}
        </text>
      </Show>
      <For each={props.row.lines}>
        {(line) => (
          <Show when={line.name}>
            <text
              class="line-name"
              x={Math.min(
                props.axis.width - 60,
                Math.max(props.axis.left + 10, wholeX(props.axis, props.whole.columns.t[topRow(line)]) + 6),
              )}
              y={Math.max(12, y(line.column[topRow(line)]) - 4)}
            >
              {line.name}
            </text>
          </Show>
        )}
      </For>
    </svg>
  );
}

function rowAt({ columns: { t } }: WholeResult, at: number): number {
  let i = 0;
  while (i < t.length - 1 && t[i] < at) i++;
  return i;
}

export function RowTitle(props: { row: Row; width: number; isOnBar: boolean }) {
  return (
    <div class="whole-title" style={{ width: `${props.width}px` }}>
      <h3>
        <b>{t.rows[props.row.id][0]}</b>{' '}
        <span>{props.row.quantity ? unitOf(props.row.quantity) : t.units[props.row.id]}</span>
      </h3>
      <p>{props.row.id === 'turn' && props.isOnBar ? t.turnOnBar : t.rows[props.row.id][1]}</p>
    </div>
  );
}
