/**
 * Rate upward, moment of inertia across: the momentum of the one axis is the area. Filled is now, dashed is take-off. While the
 * limbs carry nothing both areas are the same; where they do carry some, the strip under the momentum says how much.
 */
import { createMemo, Show } from 'solid-js';
import { REV } from '../../../sim/math/angles.ts';
import type { FirstRows, OneAxis } from '../../app/first-rows.ts';
import { useFlight } from '../../app/page.ts';
import { sayNumber, unitOf } from '../../ui/units.ts';
import { areaTexts } from './words.ts';

type AxisRows = Extract<FirstRows, { kind: 'oneAxis' }>;

/** px over the rectangles for a number, and under them for two lines of numbers */
const OVER = 20;
const UNDER = 36;
/** px: numbers nearer than this would meet */
const APART = 64;
const LINE = 16;

export function EqualArea(props: { rows: AxisRows; width: number; height: number }) {
  const flight = useFlight();
  /** the largest of the flight: the scale holds still while the cursor moves */
  const most = createMemo(() => {
    const { frames } = flight.result();
    const axis: OneAxis = props.rows.axis;
    const [rates, k] = axis === 'long' ? [frames.twistRate, 2] : [frames.somersaultRate, 0];
    let [rate, moment] = [1e-3, 1e-3];
    for (let i = 0; i < frames.n; i++) {
      rate = Math.max(rate, Math.abs(rates[i]) / REV || 0);
      moment = Math.max(moment, frames.moments[3 * i + k]);
    }
    return { rate, moment };
  });
  const base = (): number => props.height - UNDER;
  const w = (moment: number): number => (moment / most().moment) * (props.width - 2);
  const h = (rate: number): number => (Math.abs(rate) / most().rate) * (base() - OVER);
  const now = () => ({ w: w(props.rows.moment.now), h: h(props.rows.rate.now) });
  const then = () => ({ w: w(props.rows.moment.takeoff), h: h(props.rows.rate.takeoff) });
  const isSame = (): boolean => Math.abs(now().w - then().w) < 2 && Math.abs(now().h - then().h) < 2;
  const hue = (): string => (props.rows.axis === 'long' ? 'twist' : 'som');
  const rateText = (v: number): string => sayNumber('rate', v, 2);
  const momentText = (v: number): string => sayNumber('moment', v, 2);
  const areLevel = (): boolean => Math.abs(then().h - now().h) < 2 * LINE;
  /** both over the higher one where an edge would strike the lower number */
  const rateY = (own: number): number => base() - (areLevel() ? Math.max(now().h, then().h) : own) - 6;
  const thenMomentY = (): number =>
    base() + (Math.abs(now().w / 2 - (then().w - 30)) < APART ? 2 * LINE - 1 : LINE - 1);
  /** words inside have room */
  const fits = (width: number, height: number): boolean => width > 36 && height > 24;
  return (
    <svg
      class={`equal-area ${hue()}`}
      width={props.width}
      height={props.height}
      role="img"
      aria-label={areaTexts.label}
    >
      <rect class="then" x="1" y={base() - then().h} width={then().w} height={then().h} />
      <rect class="now" x="1" y={base() - now().h} width={now().w} height={now().h} />
      <rect class="then-edge" x="1" y={base() - then().h} width={then().w} height={then().h} />
      <path class="base" d={`M0 ${base() + 0.5} H${props.width}`} />
      <text class="number" x="1" y={rateY(now().h)}>
        {rateText(props.rows.rate.now)} <tspan class="unit">{unitOf('rate')}</tspan>
      </text>
      <Show when={fits(now().w, now().h)}>
        <text class="inside" x={1 + now().w / 2} y={base() - now().h / 2 + 4} text-anchor="middle">
          {areaTexts.now}
        </text>
      </Show>
      <text class="number" x={Math.max(1 + now().w / 2, 14)} y={base() + LINE - 1} text-anchor="middle">
        {momentText(props.rows.moment.now)}
      </text>
      <Show when={!isSame()}>
        <Show when={areLevel() || then().w > APART + 20 || now().h < then().h}>
          <text class="number" x={props.width} y={rateY(then().h)} text-anchor="end">
            {rateText(props.rows.rate.takeoff)}
          </text>
        </Show>
        <Show when={fits(then().w - now().w - 20, then().h)}>
          <text class="free" x={1 + (now().w + then().w) / 2} y={base() - then().h / 2 + 4} text-anchor="middle">
            {areaTexts.takeoff}
          </text>
        </Show>
        <text class="number" x={Math.min(1 + then().w, props.width)} y={thenMomentY()} text-anchor="end">
          {momentText(props.rows.moment.takeoff)} <tspan class="unit">{unitOf('moment')}</tspan>
        </text>
      </Show>
    </svg>
  );
}
