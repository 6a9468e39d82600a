/** Under the floor, along the ruler: what moves how far a frame, and which joints are hidden when. */
import { createMemo, For, Show } from 'solid-js';
import type { FilmingPlan } from '../../../sim/index.ts';
import { fastestAt, wordPart, wordPixels } from '../../../sim/words/filming-words.ts';
import { useCursor } from '../../app/page.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import { units } from '../../ui/units.ts';
import { planTexts as t } from './plan-words.ts';

interface RowProps {
  plan: FilmingPlan;
  axis: TimeAxis;
  height: number;
}

const INCH = 0.0254;
/** Of what moves a frame: cm, or inches where those are set. */
export const stepIn = (m: number): number => (units().measure === 'imperial' ? m / INCH : 100 * m);
export const stepUnit = (): string => (units().measure === 'imperial' ? 'in' : 'cm');

const rowAt = (plan: FilmingPlan, s: number): number =>
  Math.min(plan.t.length - 1, Math.max(0, Math.round((s / plan.duration) * (plan.t.length - 1))));

const CURVES = ['handL', 'handR', 'feet', 'head'] as const;
type CurveName = (typeof CURVES)[number];

function valuesOf({ parts, steps, t: times }: FilmingPlan, name: CurveName): Float64Array | undefined {
  const of = name === 'feet' ? (['footL', 'footR'] as const) : ([name] as const);
  const columns = of.map((part) => parts.indexOf(part)).filter((k) => k >= 0);
  if (columns.length === 0) return undefined;
  return Float64Array.from(times, (_, i) => Math.max(...columns.map((k) => steps.metres[parts.length * i + k])));
}

/** A round number just over the most, so that 0, half and all of it are ticks. */
const roundTop = (most: number): number => {
  const step = 10 ** Math.floor(Math.log10(Math.max(most, 1e-6)));
  return [1, 1.2, 1.6, 2, 3, 4, 5, 6, 8, 10].map((k) => k * step).find((top) => top >= most) ?? most;
};

/** px of every row of the plan */
function xsOf({ plan, axis }: RowProps): number[] {
  return Array.from(plan.t, (s) => xOf(axis, s));
}

const pathOf = (xs: readonly number[], ys: readonly number[]): string =>
  xs.map((x, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${ys[i].toFixed(1)}`).join('');

const TOP = 8;
const BOTTOM = 6;

export function StepCurves(props: RowProps) {
  const cursor = useCursor();
  const curves = createMemo(() =>
    CURVES.flatMap((name) => {
      const values = valuesOf(props.plan, name);
      return values ? [{ name, values }] : [];
    }),
  );
  const top = createMemo(() =>
    roundTop(stepIn(Math.max(...curves().flatMap(({ values }) => Math.max(...values)), 1e-3))),
  );
  const y = (m: number): number => props.height - BOTTOM - (stepIn(m) / top()) * (props.height - TOP - BOTTOM);
  const xs = createMemo(() => xsOf(props));
  const drawn = createMemo(() =>
    curves().map(({ name, values }) => {
      const ys = Array.from(values, y);
      return { name, ys, d: pathOf(xs(), ys) };
    }),
  );
  const labels = createMemo(() => placeLabels(drawn(), xs(), props.height));
  const ball = createMemo(() => {
    const row = rowAt(props.plan, cursor.at());
    const fast = fastestAt(props.plan, row);
    return fast ? { x: xOf(props.axis, props.plan.t[row]), y: y(fast.metres) } : undefined;
  });
  return (
    <svg width={props.axis.width} height={props.height} aria-hidden="true">
      <Ticks axis={props.axis} height={props.height} top={top()} />
      <For each={drawn()}>{({ name, d }) => <path class={`plan-curve plan-${name}`} d={d} />}</For>
      <For each={labels()}>
        {({ name, x, y: at }) => (
          <text class="plan-label" x={x} y={at} text-anchor="middle">
            {t.curves[name]}
          </text>
        )}
      </For>
      <Show when={ball()}>{(at) => <circle class="plan-ball" cx={at().x} cy={at().y} r="5" />}</Show>
    </svg>
  );
}

/** px of a letter of a name, on the average */
const LETTER = 6.6;
const LINE = 13;

/** Each name where its curve is farthest from the others and from other names, over or under it. */
function placeLabels(
  curves: readonly { readonly name: CurveName; readonly ys: readonly number[] }[],
  xs: readonly number[],
  height: number,
) {
  const n = xs.length;
  const pxPerRow = (xs[n - 1] - xs[0]) / Math.max(1, n - 1);
  const taken: { x: number; y: number; half: number }[] = [];
  return curves.map(({ name, ys }) => {
    const half = (LETTER * t.curves[name].length) / 2;
    const clearOf = (of: readonly number[], i: number, middle: number): number =>
      Math.min(
        ...[-1, -0.5, 0, 0.5, 1].map((share) => {
          const j = Math.min(n - 1, Math.max(0, i + Math.round((share * half) / pxPerRow)));
          return Math.abs(of[j] - middle);
        }),
      );
    let best = { x: 0, y: 0, half, score: Number.NEGATIVE_INFINITY };
    for (let k = 2; k <= 46; k++) {
      const i = Math.round((k / 48) * (n - 1));
      for (const off of [-7, 15]) {
        const at = { x: xs[i], y: ys[i] + off };
        const middle = at.y - 4;
        const score = Math.min(
          // its own is beside it wherever it is set: that must only not go through it
          4 * clearOf(ys, i, middle),
          ...curves.flatMap((other) => (other.name === name ? [] : [clearOf(other.ys, i, middle)])),
          ...taken.map((one) => Math.max(Math.abs(one.x - at.x) - one.half - half, Math.abs(one.y - at.y) - LINE)),
          4 * (at.y - 10),
          4 * (height - 2 - at.y),
        );
        if (score > best.score) best = { ...at, half, score };
      }
    }
    taken.push(best);
    return { name, x: best.x, y: best.y };
  });
}

function Ticks(props: { axis: TimeAxis; height: number; top: number }) {
  const ticks = (): { y: number; text: string }[] =>
    [0, 0.5, 1].map((share) => ({
      y: props.height - BOTTOM - share * (props.height - TOP - BOTTOM),
      text: formatNumber(share * props.top, props.top < 2 || (props.top / 2) % 1 !== 0 ? 1 : 0),
    }));
  return (
    <For each={ticks()}>
      {(tick) => (
        <>
          <line
            class="plan-hair"
            x1={xOf(props.axis, 0)}
            x2={xOf(props.axis, props.axis.duration)}
            y1={tick.y}
            y2={tick.y}
          />
          <text class="plan-tick" x={xOf(props.axis, 0) - 8} y={tick.y + 4} text-anchor="end">
            {tick.text}
          </text>
        </>
      )}
    </For>
  );
}

export function PixelCurve(props: RowProps) {
  const fastest = createMemo(() => {
    const { steps, parts, t: times } = props.plan;
    return Array.from(times, (_, i) => steps.pixels[parts.length * i + steps.fastest[i]] ?? 0);
  });
  const top = createMemo(() => roundTop(Math.max(...fastest(), 1)));
  const y = (px: number): number => props.height - BOTTOM - (px / top()) * (props.height - TOP - BOTTOM);
  const xs = createMemo(() => xsOf(props));
  const area = (values: readonly number[]): string => {
    const ends = [xs()[0], xs()[xs().length - 1]];
    return `${pathOf(xs(), values.map(y))}L${ends[1].toFixed(1)} ${y(0)}L${ends[0].toFixed(1)} ${y(0)}Z`;
  };
  return (
    <svg width={props.axis.width} height={props.height} aria-hidden="true">
      <Ticks axis={props.axis} height={props.height} top={top()} />
      <path class="plan-area" d={area(fastest())} />
      <path class="plan-curve plan-handL" d={pathOf(xs(), fastest().map(y))} />
      <path class="plan-blur" d={area(Array.from(props.plan.steps.blur))} />
      <text
        class="plan-label"
        x={(xs()[0] + xs()[xs().length - 1]) / 2}
        y={(y(0) + y(top() / 2)) / 2 + 4}
        text-anchor="middle"
      >
        {t.fromFrame}
      </text>
    </svg>
  );
}

/** The numbers at the cursor, beside the curves. */
export function StepNow(props: { plan: FilmingPlan; of: 'metres' | 'pixels' }) {
  const cursor = useCursor();
  const fast = createMemo(() => fastestAt(props.plan, rowAt(props.plan, cursor.at())));
  return (
    <Show when={fast()}>
      {(one) => (
        <p class="plan-now">
          <Show
            when={props.of === 'metres'}
            fallback={
              <>
                <b>{wordPixels(one().pixels)}</b>
                {t.blur(wordPixels(one().blur))}
              </>
            }
          >
            <b>{formatNumber(stepIn(one().metres), 1)}</b> {t.the(wordPart(one()))}
          </Show>
        </p>
      )}
    </Show>
  );
}

export function HiddenJoints(props: RowProps) {
  const rows = createMemo(() => {
    const names = [...new Set(props.plan.hidden.map(({ joint }) => joint))];
    const pitch = props.height / Math.max(1, names.length);
    return names.map((joint, i) => ({
      joint,
      y: i * pitch,
      pitch,
      sides: (['L', 'R'] as const).flatMap((side, k) => {
        const found = props.plan.hidden.find((one) => one.joint === joint && one.side === side);
        return found ? [{ side, spans: found.spans, y: i * pitch + (k * pitch) / 2 + 1 }] : [];
      }),
    }));
  });
  const bar = (): number => Math.max(4, (rows()[0]?.pitch ?? 20) / 2 - 3);
  return (
    <svg width={props.axis.width} height={props.height} aria-hidden="true">
      <For each={rows()}>
        {(row) => (
          <>
            <text class="plan-tick joint" x={xOf(props.axis, 0) - 8} y={row.y + row.pitch / 2 + 4} text-anchor="end">
              {t.joints[row.joint]}
            </text>
            <For each={row.sides}>
              {(one) => (
                <>
                  <rect
                    class="plan-bed"
                    x={xOf(props.axis, 0)}
                    width={xOf(props.axis, props.plan.duration) - xOf(props.axis, 0)}
                    y={one.y}
                    height={bar()}
                  />
                  <For each={one.spans}>
                    {({ from, to }) => (
                      <rect
                        class={`plan-bar side-${one.side}`}
                        x={xOf(props.axis, from)}
                        width={Math.max(1.5, (to - from) * props.axis.pxPerS)}
                        y={one.y}
                        height={bar()}
                      />
                    )}
                  </For>
                </>
              )}
            </For>
          </>
        )}
      </For>
    </svg>
  );
}
