/** Rate upward, moment across, for eyes at the far end of a hall, in words and no numbers: now filled and take-off dashed, or A filled and the other way dashed. */
import { createMemo, Show } from 'solid-js';
import type { Frames } from '../../../sim/index.ts';
import { REV } from '../../../sim/math/angles.ts';
import type { OneAxis } from '../first-rows.ts';
import { touchTexts as t } from './touch-words.ts';

interface Sides {
  /** rev/s */
  readonly rate: number;
  /** kg m2 */
  readonly moment: number;
}
export interface HallTwo {
  readonly axis: OneAxis;
  readonly filled: Sides;
  readonly dashed: Sides;
  /** the flights that are shown: the scale holds still while the cursor moves */
  readonly frames: readonly Frames[];
  /** of the other way; undefined: take-off is dashed */
  readonly letter: string | undefined;
}

const LINE = 26;
/** px that a word takes, and a letter */
const WORD = 124;
const LETTER = 40;

export function HallArea(props: { of: HallTwo; width: number; height: number }) {
  const most = createMemo(() => {
    const { axis, frames: all } = props.of;
    let [rate, moment] = [1e-3, 1e-3];
    for (const frames of all) {
      const [rates, k] = axis === 'long' ? [frames.twistRate, 2] : [frames.somersaultRate, 0];
      for (let i = 0; i < frames.n; i++) {
        rate = Math.max(rate, Math.abs(rates[i]) / REV || 0);
        moment = Math.max(moment, frames.moments[3 * i + k]);
      }
    }
    return { rate, moment };
  });
  const base = (): number => props.height - 4;
  const box = ({ rate, moment }: Sides) => ({
    w: (moment / most().moment) * (props.width - 6),
    h: (Math.abs(rate) / most().rate) * (base() - 8),
  });
  const now = createMemo(() => box(props.of.filled));
  const then = createMemo(() => box(props.of.dashed));
  const isNarrow = (): boolean => then().w - now().w > 12 && now().h - then().h > 2 * LINE;
  const words = () => {
    const { letter } = props.of;
    return letter === undefined
      ? { label: t.area, filled: t.areaNow, dashed: t.areaTakeoff, room: WORD }
      : { label: t.areaTwo(letter), filled: 'A', dashed: letter, room: LETTER };
  };
  return (
    <svg
      class={`hall-area ${props.of.axis === 'long' ? 'twist' : 'som'}`}
      width={props.width}
      height={props.height}
      role="img"
      aria-label={words().label}
    >
      <rect class="then" x="3" y={base() - then().h} width={then().w} height={then().h} />
      <rect class="now" x="3" y={base() - now().h} width={now().w} height={now().h} />
      <rect class="edge-then" x="3" y={base() - then().h} width={then().w} height={then().h} />
      <path class="base" d={`M0 ${base()} H${props.width}`} />
      <Show when={now().h > LINE + 16 && now().w > words().room / 2}>
        <text class="on" x={3 + now().w / 2} y={base() - now().h + LINE + 12} text-anchor="middle">
          {words().filled}
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
      <Show when={then().w - now().w > words().room && then().h > LINE + 10}>
        <text x={3 + (now().w + then().w) / 2} y={base() - then().h / 2 + 8} text-anchor="middle">
          {words().dashed}
        </text>
      </Show>
      <Show when={then().w - now().w <= words().room && then().h - now().h > LINE + 12}>
        <text x={3 + then().w / 2} y={base() - then().h + LINE + 8} text-anchor="middle">
          {words().dashed}
        </text>
      </Show>
    </svg>
  );
}
