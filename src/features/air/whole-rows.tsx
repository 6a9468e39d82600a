/** Force, what the head feels, turning and energy through all phases, on the whole skill's own axis. */
import { createMemo, For, Show } from 'solid-js';
import { niceTop } from '../../app/plot/pen.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';
import { contactTexts } from './words.ts';

const t = contactTexts;
/** px that the words of one's own weight keep from the cursor */
const OWN_ROOM = 44;

interface Line {
  readonly column: ArrayLike<number>;
  readonly hue: string;
  readonly name?: string;
  readonly dash?: string;
}
interface Row {
  readonly id: 'force' | 'felt' | 'turn' | 'energy';
  readonly share: number;
  readonly lines: readonly Line[];
  readonly decimals: number;
}

export function wholeRows(whole: WholeResult): readonly Row[] {
  const c = whole.columns;
  return [
    { id: 'force', share: 2, lines: [{ column: c.weights, hue: 'ink' }], decimals: 1 },
    { id: 'felt', share: 1, lines: [{ column: c.feltHead, hue: 'ink' }], decimals: 1 },
    { id: 'turn', share: 1, lines: [{ column: c.turn.map(Math.abs), hue: 'som' }], decimals: 2 },
    {
      id: 'energy',
      share: 1.2,
      lines: [
        { column: c.height, hue: 'ink-3', name: t.height },
        { column: c.motion, hue: 'ink', name: t.motion, dash: '7 3' },
        { column: c.held, hue: 'ink-2', name: t.held, dash: '2 3' },
      ],
      decimals: 0,
    },
  ];
}

export function WholeRow(props: { whole: WholeResult; state: WholeState; axis: WholeAxis; row: Row; height: number }) {
  const inView = createMemo(() => {
    const { t: times } = props.whole.columns;
    const list: number[] = [];
    for (let i = 0; i < times.length; i++) if (times[i] >= props.axis.from - 1e-9) list.push(i);
    return list;
  });
  const top = createMemo(() => {
    let most = 0.01;
    for (const { column } of props.row.lines) for (const i of inView()) if (column[i] > most) most = column[i];
    return niceTop(most * 1.04);
  });
  const y = (v: number): number => 10 + (props.height - 16) * (1 - v / top());
  const path = ({ column }: Line): string => {
    let d = '';
    let drawing = false;
    for (const i of inView()) {
      const v = column[i];
      if (Number.isNaN(v)) {
        drawing = false;
        continue;
      }
      d += `${drawing ? 'L' : 'M'}${wholeX(props.axis, props.whole.columns.t[i]).toFixed(1)} ${y(v).toFixed(1)}`;
      drawing = true;
    }
    return d;
  };
  const now = (line: Line): number => line.column[props.state.row()];
  const peakRow = (): number => topRow(props.row.lines[0]);
  const topRow = ({ column }: Line): number => {
    let best = inView()[0] ?? 0;
    for (const i of inView()) if (column[i] > column[best]) best = i;
    return best;
  };
  /** in the air, where the force is nothing; clear of the cursor */
  const ownX = (): number => {
    const at = wholeX(props.axis, props.state.cursor());
    const middle = wholeX(props.axis, props.whole.touchdown * 0.5);
    if (Math.abs(at - middle) > OWN_ROOM) return middle;
    const isNarrow = at + 2 * OWN_ROOM > wholeX(props.axis, props.whole.touchdown);
    return at + (at > middle || isNarrow ? -OWN_ROOM : OWN_ROOM);
  };
  /** the mean of stopping, as a block of the same area */
  const block = () => {
    const landing = props.whole.landing;
    if (props.row.id !== 'force' || landing?.kind !== 'landed') return undefined;
    const { brakeTime, meanBodyWeights } = landing.report;
    if (!brakeTime) return undefined;
    const x0 = wholeX(props.axis, props.whole.touchdown);
    return {
      x: x0,
      width: Math.max(1, brakeTime * props.axis.pxPerS),
      y: y(meanBodyWeights),
      height: y(0) - y(meanBodyWeights),
    };
  };
  return (
    <svg class="whole-row" width={props.axis.width} height={props.height} aria-hidden="true">
      <path class="zero" d={`M${props.axis.left} ${y(0)}H${props.axis.width}`} />
      <text class="tick" x={props.axis.left - 7} y={y(0) + 4} text-anchor="end">
        0
      </text>
      <text class="tick" x={props.axis.left - 7} y={y(top()) + 4} text-anchor="end">
        {formatNumber(top(), top() < 3 ? 1 : 0)}
      </text>
      <Show when={props.row.id === 'force'}>
        <path class="own" d={`M${props.axis.left} ${y(1)}H${props.axis.width}`} />
      </Show>
      <Show when={block()}>
        {(b) => <rect class="mean" x={b().x} y={b().y} width={b().width} height={b().height} />}
      </Show>
      <For each={[0, props.whole.touchdown]}>
        {(s) => <path class="edge-line" d={`M${wholeX(props.axis, s)} 0V${props.height}`} />}
      </For>
      <For each={props.row.lines}>
        {(line) => (
          <>
            <path class={`curve ${line.hue}`} d={path(line)} stroke-dasharray={line.dash} />
            <Show when={Number.isFinite(now(line))}>
              <circle
                class={`ring ${line.hue}`}
                cx={wholeX(props.axis, props.state.cursor())}
                cy={y(now(line))}
                r="4.2"
              />
            </Show>
          </>
        )}
      </For>
      <Show when={props.row.id === 'force'}>
        <text
          class="named"
          x={wholeX(props.axis, props.whole.columns.t[peakRow()])}
          y={Math.max(12, y(props.row.lines[0].column[peakRow()]) - 5)}
          text-anchor="end"
        >
          {formatNumber(props.row.lines[0].column[peakRow()], 1)}
        </text>
      </Show>
      <path class="now" d={`M${wholeX(props.axis, props.state.cursor())} 0V${props.height}`} />
      <Show when={props.row.id === 'force'}>
        <text class="tick" x={ownX()} y={y(1) - 4} text-anchor="middle">
          {t.ownWeight}
        </text>
      </Show>
      <For each={props.row.lines}>
        {(line) => (
          <Show when={line.name}>
            <text
              class="line-name"
              x={Math.min(props.axis.width - 60, wholeX(props.axis, props.whole.columns.t[topRow(line)]) + 6)}
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
