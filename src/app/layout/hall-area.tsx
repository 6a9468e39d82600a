/** Rate upward, moment across, for eyes at the far end of a hall: now filled, take-off dashed, in words and no numbers. */
import { createMemo, Show } from 'solid-js';
import { REV } from '../../../sim/math/angles.ts';
import type { FirstRows } from '../first-rows.ts';
import { useFlight } from '../page.ts';
import { touchTexts as t } from './touch-words.ts';

type AxisRows = Extract<FirstRows, { kind: 'oneAxis' }>;

const LINE = 26;
/** px that a word takes */
const WORD = 124;

export function HallArea(props: { rows: AxisRows; width: number; height: number }) {
  const flight = useFlight();
  /** of the whole flight: the scale holds still while the cursor moves */
  const most = createMemo(() => {
    const { frames } = flight.result();
    const [rates, k] = props.rows.axis === 'long' ? [frames.twistRate, 2] : [frames.somersaultRate, 0];
    let [rate, moment] = [1e-3, 1e-3];
    for (let i = 0; i < frames.n; i++) {
      rate = Math.max(rate, Math.abs(rates[i]) / REV || 0);
      moment = Math.max(moment, frames.moments[3 * i + k]);
    }
    return { rate, moment };
  });
  const base = (): number => props.height - 4;
  const box = (one: 'now' | 'takeoff') => ({
    w: (props.rows.moment[one] / most().moment) * (props.width - 6),
    h: (Math.abs(props.rows.rate[one]) / most().rate) * (base() - 8),
  });
  const now = createMemo(() => box('now'));
  const then = createMemo(() => box('takeoff'));
  const isNarrow = (): boolean => then().w - now().w > 12 && now().h - then().h > 2 * LINE;
  return (
    <svg
      class={`hall-area ${props.rows.axis === 'long' ? 'twist' : 'som'}`}
      width={props.width}
      height={props.height}
      role="img"
      aria-label={t.area}
    >
      <rect class="then" x="3" y={base() - then().h} width={then().w} height={then().h} />
      <rect class="now" x="3" y={base() - now().h} width={now().w} height={now().h} />
      <rect class="edge-then" x="3" y={base() - then().h} width={then().w} height={then().h} />
      <path class="base" d={`M0 ${base()} H${props.width}`} />
      <Show when={now().h > LINE + 16 && now().w > 60}>
        <text class="on" x={3 + now().w / 2} y={base() - now().h + LINE + 12} text-anchor="middle">
          {t.areaNow}
        </text>
      </Show>
      <Show when={isNarrow() && props.width - now().w > WORD}>
        <text x={now().w + 16} y={base() - now().h + LINE - 8}>
          {t.areaFast}
        </text>
        <text x={now().w + 16} y={base() - then().h - 12}>
          {t.areaSlow}
        </text>
      </Show>
      <Show when={then().w - now().w > WORD && then().h > LINE + 10}>
        <text x={3 + (now().w + then().w) / 2} y={base() - then().h / 2 + 8} text-anchor="middle">
          {t.areaTakeoff}
        </text>
      </Show>
    </svg>
  );
}
