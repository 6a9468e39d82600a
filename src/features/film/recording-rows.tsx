/** Under the floor, on the ruler of the recording: is it physics, one joint angle, and how far the model is from what was measured. */
import { createMemo, For, Show } from 'solid-js';
import type { RecordingStudy } from '../../../sim/index.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import { formatNumber, formatTick } from '../../ui/numbers.ts';
import { tOf, xOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { units } from '../../ui/units.ts';
import { AngleRow, AngleTitle } from './recording-angle.tsx';
import type { RecordingAxis } from './recording-axis.ts';
import { RecordingEnds } from './recording-ends.tsx';
import { withFoundSpan } from './recording-options.ts';
import { planRows, type RecordingRow, type RowBox } from './recording-plan.ts';
import type { RecordingState } from './recording-state.ts';
import { AXES, apartOf, apartScale, BEST, type ErrorName, HUES, tickBest, valueAt } from './recording-values.ts';
import { recordingTexts as t } from './recording-words.ts';
import { curvePath } from './thin.ts';

/** px over each row for its title, where there is no room beside it; a finger presses what is in it */
const OVER = 24;

interface RowsProps {
  state: RecordingState;
  study: RecordingStudy;
  axis: RecordingAxis;
  /** px of the titles at the left; 0: they are over their rows */
  left: number;
  height: number;
}

export function RecordingRows(props: RowsProps) {
  const test = () => props.study.test;
  const over = (): boolean => props.left === 0;
  const plan = createMemo(() => planRows(props.height, test() !== undefined, over() ? OVER : 0));
  const box = (name: RecordingRow): RowBox => plan().boxes.get(name) ?? { y: 0, height: 0 };
  const scrub = (e: PointerEvent): void =>
    startScrub(e, { play: props.state.play, at: props.state.cursor, set: props.state.setCursor }, (x) =>
      tOf(props.axis, x),
    );
  const air = () => ({ x: xOf(props.axis, 0), width: props.axis.duration * props.axis.pxPerS });
  return (
    <div class="rec-rows" classList={{ over: over() }} style={{ height: `${plan().height}px` }}>
      <Show when={over()}>
        <TouchPlumb axis={props.axis} />
      </Show>
      <Titles {...props} box={box} />
      <div class="rec-curves" style={{ left: `${props.left}px`, width: `${props.axis.width}px` }}>
        <svg width={props.axis.width} height={plan().height} aria-hidden="true" onPointerDown={scrub}>
          <rect
            class="rec-air"
            x={air().x}
            width={air().width}
            y={box('span').y + box('span').height}
            height={plan().height}
          />
          <CheckRow
            {...props}
            box={box('parabola')}
            values={props.study.heightOff}
            middle={0}
            most={offTop(props.study)}
            tick={(v) => `${v > 0 ? '+' : ''}${formatTick(1000 * v)} mm`}
          />
          <CheckRow
            {...props}
            box={box('momentum')}
            values={props.study.momentum}
            middle={meanOf(props.study.momentum)}
            most={BAND * meanOf(props.study.momentum)}
            isBand
            tick={(v) => `${v > 0 ? '+' : ''}${formatTick(100 * (v / meanOf(props.study.momentum)))} %`}
          />
          <AngleRow {...props} box={box('angle')} />
          <Show when={test()}>
            <For each={AXES}>{(name) => <ErrorRow {...props} name={name} box={box(name)} />}</For>
          </Show>
        </svg>
        <Show when={props.study.span}>
          {(span) => <RecordingEnds {...props} span={span()} top={box('span').y} height={box('span').height} />}
        </Show>
      </div>
    </div>
  );
}

/** share by which momentum may differ in the shaded band */
const BAND = 0.03;
const meanOf = (values: Float64Array): number =>
  values.reduce((sum, v) => sum + (Number.isFinite(v) ? v : 0), 0) / Math.max(values.length, 1);
/** what two thousandths of a metre are under, a row of noise looks like physics: no smaller scale */
const offTop = ({ heightOff }: RecordingStudy): number => {
  const most = heightOff.reduce((best, v) => Math.max(best, Math.abs(v) || 0), 0.002);
  return [0.002, 0.004, 0.006, 0.01, 0.02, 0.04, 0.06, 0.1, 0.2, 0.5, 1].find((top) => top >= most) ?? most;
};

const farthest = (values: Float64Array, middle: number, least: number): number =>
  values.reduce((best, v) => Math.max(best, Math.abs(v - middle) || 0), least);

function CheckRow(
  props: RowsProps & {
    box: RowBox;
    values: Float64Array;
    middle: number;
    /** beyond the middle, as ticked */
    most: number;
    isBand?: true;
    tick: (v: number) => string;
  },
) {
  const largest = createMemo(() => farthest(props.values, props.middle, props.most));
  const half = (): number => (props.box.height - 20) / 2;
  const middleY = (): number => props.box.y + props.box.height / 2;
  const y = (v: number): number => middleY() - ((v - props.middle) / (largest() * 1.08)) * half();
  const edge = (way: number): number => y(props.middle + way * props.most);
  const at = (): number => valueAt(props.study.t, props.values, props.state.cursor());
  return (
    <g>
      <Show when={props.isBand}>
        <rect
          class="rec-band"
          x={xOf(props.axis, 0)}
          width={props.axis.duration * props.axis.pxPerS}
          y={edge(1)}
          height={edge(-1) - edge(1)}
        />
      </Show>
      <path class="rec-zero" d={`M${props.axis.left} ${middleY()}H${props.axis.width}`} />
      <For each={[1, -1]}>
        {(way) => (
          <text class="rec-tick" x={props.axis.left - 6} y={edge(way) + (way > 0 ? 4 : 6)} text-anchor="end">
            {props.tick(way * props.most)}
          </text>
        )}
      </For>
      <path class="rec-curve" d={curvePath(props.study.t, props.values, { x: (s) => xOf(props.axis, s), y })} />
      <Show when={Number.isFinite(at())}>
        <circle class="rec-ring" cx={xOf(props.axis, props.state.cursor())} cy={y(at())} r="4.2" />
      </Show>
    </g>
  );
}

function ErrorRow(props: RowsProps & { name: ErrorName; box: RowBox }) {
  const test = () => props.study.test;
  const apart = createMemo(() => {
    const now = test();
    return now ? apartOf(now, props.name) : new Float64Array(0);
  });
  const scale = (): number => {
    const now = test();
    return BEST[props.name] * (now ? apartScale(now) : 1);
  };
  const half = (): number => (props.box.height - 10) / 2;
  const zero = (): number => props.box.y + props.box.height / 2;
  const y = (v: number): number => zero() - (v / scale()) * half();
  const x = (s: number): number => xOf(props.axis, s);
  const curve = createMemo(() => curvePath(props.study.t, apart(), { x, y }));
  const end = (): number => x(props.study.t.at(-1) ?? 0);
  const at = (): number => valueAt(props.study.t, apart(), props.state.cursor());
  return (
    <g class={`rec-error ${HUES[props.name]}`}>
      <path class="rec-zero" d={`M${props.axis.left} ${zero()}H${props.axis.width}`} />
      <For each={[1, -1]}>
        {(way) => <path class="rec-best" d={`M${x(0)} ${y(way * BEST[props.name])}H${end()}`} />}
      </For>
      <text class="rec-tick" x={props.axis.left - 6} y={y(BEST[props.name]) + 4} text-anchor="end">
        {tickBest(props.name)}
      </text>
      <text class="rec-tick" x={props.axis.left - 6} y={zero() + 4} text-anchor="end">
        0
      </text>
      <text class="rec-word" x={x(0) + 10} y={y(BEST[props.name]) + 13}>
        {t.best}
      </text>
      <path class="rec-fill" d={`${curve()}L${end()} ${zero()}L${x(0)} ${zero()}Z`} />
      <path class="rec-curve" d={curve()} />
      <Show when={Number.isFinite(at())}>
        <circle class="rec-ring" cx={x(props.state.cursor())} cy={y(at())} r="4.2" />
      </Show>
    </g>
  );
}

function Titles(props: RowsProps & { box: (name: RecordingRow) => RowBox }) {
  const isOver = (): boolean => props.left === 0;
  const style = (name: RecordingRow) => ({
    top: `${props.box(name).y - (isOver() ? OVER : 0)}px`,
    height: `${isOver() ? OVER : props.box(name).height}px`,
  });
  const byHand = (): boolean => props.state.options().from !== undefined;
  const top = (name: RecordingRow, title: string, hint: string, hue = '') => (
    <div class="rec-title" style={style(name)}>
      <h3 class={hue}>{title}</h3>
      <p>{hint}</p>
    </div>
  );
  return (
    <div class="rec-titles" style={{ width: props.left === 0 ? '100%' : `${props.left}px` }}>
      <div class="rec-title" style={style('span')}>
        <h3>{t.spanTitle}</h3>
        <p>
          <Show when={byHand()} fallback={t.spanHint}>
            <button type="button" class="link" onClick={() => props.state.change(withFoundSpan(props.state.options()))}>
              {t.spanFound}
            </button>
          </Show>
        </p>
      </div>
      {top('parabola', t.parabola, t.parabolaHint)}
      {top('momentum', t.momentum, t.momentumHint)}
      <div class="rec-title" style={style('angle')}>
        <AngleTitle state={props.state} study={props.study} />
      </div>
      <Show when={props.study.test}>
        <div class="rec-title" style={style('head')}>
          <h3>{t.errors}</h3>
        </div>
        <For each={AXES}>
          {(name) => (
            <div class="rec-title" style={style(name)}>
              <h3 class={HUES[name]}>{t[name]}</h3>
              <p>{name === 'tilt' || units().turning === 'degrees' ? t.degrees : t.revolutions}</p>
            </div>
          )}
        </For>
      </Show>
    </div>
  );
}

export const sayPercent = (share: number): string => formatNumber(100 * share, 1);
