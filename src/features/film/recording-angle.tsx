/** One angle of the recording: raw points under the smoothed curve, gaps hatched and counted. */
import { createMemo, createUniqueId, For, Show } from 'solid-js';
import type { RecordingStudy } from '../../../sim/index.ts';
import { wordJoint } from '../../app/say/body-words.ts';
import { SideSign } from '../../ui/icon.tsx';
import { formatTick } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { RecordingAxis } from './recording-axis.ts';
import type { RowBox } from './recording-plan.ts';
import type { RecordingState } from './recording-state.ts';
import { angleOf, valueAt } from './recording-values.ts';
import { recordingTexts as t } from './recording-words.ts';
import { curvePath, dotPath } from './thin.ts';

interface Shown {
  state: RecordingState;
  study: RecordingStudy;
}

const STEPS = [5, 10, 20, 30, 45, 60, 90, 180, 360, 720];

export function AngleRow(props: Shown & { axis: RecordingAxis; box: RowBox }) {
  const hatch = createUniqueId();
  const smooth = createMemo(() => angleOf(props.study, props.study.angles, props.state.angle()));
  const raw = createMemo(() => angleOf(props.study, props.study.rawAngles, props.state.angle()));
  const range = createMemo(() => {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const list of [smooth(), raw()])
      for (const v of list)
        if (Number.isFinite(v)) {
          low = Math.min(low, v);
          high = Math.max(high, v);
        }
    if (low > high) return { low: 0, high: 90 };
    const step = STEPS.find((one) => one >= (high - low) / 2) ?? 720;
    const from = Math.floor(low / step) * step;
    return { low: from, high: Math.max(Math.ceil(high / step) * step, from + step) };
  });
  const y = (deg: number): number => {
    const { low, high } = range();
    return props.box.y + 10 + ((high - deg) / (high - low)) * (props.box.height - 20);
  };
  const x = (s: number): number => xOf(props.axis, s);
  const gaps = createMemo(() =>
    (props.study.gaps[props.state.angle()] ?? []).map((gap) => {
      const [from, to] = [Math.max(gap.from - 1, 0), Math.min(gap.from + gap.rows, props.study.t.length - 1)];
      return { ...gap, x: x(props.study.t[from]), end: x(props.study.t[to]) };
    }),
  );
  const at = (): number => valueAt(props.study.t, smooth(), props.state.cursor());
  return (
    <g class="rec-angle">
      <defs>
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" class="rec-hatch" />
        </pattern>
      </defs>
      <For each={[range().high, range().low]}>
        {(deg) => (
          <>
            <path class="rec-zero" d={`M${props.axis.left} ${y(deg)}H${props.axis.width}`} />
            <text class="rec-tick" x={props.axis.left - 6} y={y(deg) + 4} text-anchor="end">
              {formatTick(deg)}°
            </text>
          </>
        )}
      </For>
      <For each={gaps()}>
        {(gap) => (
          <rect
            x={gap.x}
            width={gap.end - gap.x}
            y={y(range().high)}
            height={y(range().low) - y(range().high)}
            fill={`url(#${hatch})`}
          />
        )}
      </For>
      <path class="rec-raw" d={dotPath(props.study.t, raw(), { x, y })} />
      <path class="rec-curve" d={curvePath(props.study.t, smooth(), { x, y })} />
      <For each={gaps().slice(0, 2)}>
        {(gap) => (
          <text class="rec-word" x={gap.x - 8} y={(y(range().low) + y(range().high)) / 2 + 14} text-anchor="end">
            {t.gap(gap.rows, gap.isFilled)}
          </text>
        )}
      </For>
      <Show when={Number.isFinite(at())}>
        <circle class="rec-ring" cx={x(props.state.cursor())} cy={y(at())} r="4.2" />
      </Show>
    </g>
  );
}

export function AngleTitle(props: Shown) {
  const seen = createMemo(() =>
    props.study.angleNames.flatMap((name, i) => (props.study.isSeen[i] ? [{ name, i }] : [])),
  );
  const side = (): 'left' | 'right' | undefined => {
    const name = props.study.angleNames[props.state.angle()] ?? '';
    return name.endsWith('L') ? 'left' : name.endsWith('R') ? 'right' : undefined;
  };
  return (
    <>
      <p class="rec-angle-name">
        <Show when={side()}>{(which) => <SideSign side={which()} />}</Show>
        <select aria-label={t.chooseAngle} onChange={(e) => props.state.setAngle(Number(e.currentTarget.value))}>
          <For each={seen()}>
            {({ name, i }) => (
              <option value={i} selected={i === props.state.angle()}>
                {wordJoint(name)}
              </option>
            )}
          </For>
        </select>
      </p>
      <p class="rec-angle-hint">{t.angleHint}</p>
      <p>
        <button type="button" class="link" onClick={() => props.state.nextAngle()}>
          {t.nextAngle}
        </button>{' '}
        {t.angleOf(seen().findIndex(({ i }) => i === props.state.angle()) + 1, seen().length)}
      </p>
    </>
  );
}
