/** Plan: where a camera stands, and what it would see of the flight. */
import { createMemo, For, Show } from 'solid-js';
import type { FilmCamera, FilmingPlan } from '../../../sim/index.ts';
import {
  type FilmingNumbers,
  fastestOf,
  ONE_CAMERA,
  roomSize,
  wordFilming,
  wordFilmingFaults,
  wordPixels,
} from '../../../sim/words/filming-words.ts';
import { FailedLine } from '../../app/failed-line.tsx';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import type { ToolProps } from '../../app/tool.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, units } from '../../ui/units.ts';
import { FilmFloor, FilmSentence } from './film-frame.tsx';
import { PlanAir } from './plan-air.tsx';
import { PlanDoings } from './plan-doings.tsx';
import { PlanErrors } from './plan-errors.tsx';
import { PictureSize, PlanFields } from './plan-fields.tsx';
import { FromAbove, FromSide } from './plan-places.tsx';
import { HiddenJoints, PixelCurve, StepCurves, StepNow, stepIn, stepUnit } from './plan-rows.tsx';
import { type PlanState, usePlanState } from './plan-state.ts';
import { planTexts as t } from './plan-words.ts';
import './plan.css';

/** px at the right of the bench */
const EDGE = 20;

const planNumbers = (): FilmingNumbers => ({
  // what belongs together is not broken
  metres: (m) => say('length', m, Number.isInteger(Math.round(100 * m) / 10) ? 1 : 2).replaceAll(' ', '\u00a0'),
  step: (m) => `${formatNumber(stepIn(m), stepIn(m) < 10 ? 1 : 0)}\u00a0${stepUnit()}`,
});

export function PlanView(props: ToolProps) {
  const state = usePlanState();
  const isBench = (): boolean => props.device === 'bench';
  return (
    <>
      <FilmSentence>
        <Show when={state.plan()} fallback={t.working}>
          {(plan) => (
            <For each={wordFilming(plan(), planNumbers())}>
              {({ text, isStrong }) => (
                <Show when={isStrong} fallback={text}>
                  <b>{text}</b>
                </Show>
              )}
            </For>
          )}
        </Show>
      </FilmSentence>
      <Show when={state.failed()}>
        <FailedLine class="plan-failed" again={state.again}>
          <b>{t.failed}</b> {state.failed()}
        </FailedLine>
      </Show>
      <Show when={state.camera()}>
        {(camera) => (
          <>
            <PlanAir tool={props} state={state} camera={camera()} plan={state.plan()} />
            <Show when={isBench()}>
              <FilmFloor>
                <p class="plan-floor">
                  <PictureSize state={state} camera={camera()} />
                  <span>{t.dashed}</span>
                </p>
              </FilmFloor>
            </Show>
            <Show when={state.plan()}>
              {(plan) => (
                <div class="plan" classList={{ stale: state.stale(), stacked: !isBench() }}>
                  <Show
                    when={isBench()}
                    fallback={<Stacked tool={props} state={state} camera={camera()} plan={plan()} />}
                  >
                    <Bench tool={props} state={state} camera={camera()} plan={plan()} />
                  </Show>
                </div>
              )}
            </Show>
          </>
        )}
      </Show>
    </>
  );
}

interface UnderProps {
  tool: ToolProps;
  state: PlanState;
  camera: FilmCamera;
  plan: FilmingPlan;
}

function Bench(props: UnderProps) {
  const left = (): number => props.tool.timeLeft;
  const foot = (): number => 117 + 19 * wordFilmingFaults(props.plan).length;
  const rows = createMemo(() => {
    const room = Math.max(210, props.tool.height - foot() - 16);
    const steps = Math.round(0.27 * room);
    const pixels = Math.round(0.22 * room);
    return { steps, pixels, hidden: room - steps - pixels - 12 };
  });
  const side = (): number => props.tool.width - left() - props.tool.axis.width - EDGE - 24;
  const places = createMemo(() => {
    const room = props.tool.height - 88;
    const low = Math.round(0.33 * room);
    return { above: room - low, side: low };
  });
  return (
    <>
      <div class="plan-rows" style={{ width: `${left() + props.tool.axis.width}px` }}>
        <Row
          title={metresTitle()}
          hint={t.metresHint}
          left={left()}
          height={rows().steps}
          now={<StepNow plan={props.plan} of="metres" />}
        >
          <StepCurves plan={props.plan} axis={props.tool.axis} height={rows().steps} />
        </Row>
        <Row
          title={t.pixels}
          hint={t.pixelsHint}
          left={left()}
          height={rows().pixels}
          now={<StepNow plan={props.plan} of="pixels" />}
        >
          <PixelCurve plan={props.plan} axis={props.tool.axis} height={rows().pixels} />
        </Row>
        <Row title={t.hidden} hint={t.hiddenHint} more={t.hiddenKey} left={left()} height={rows().hidden}>
          <HiddenJoints plan={props.plan} axis={props.tool.axis} height={rows().hidden} />
        </Row>
        <div class="plan-foot" style={{ 'padding-left': `${left() + props.tool.axis.x0}px` }}>
          <PlanErrors state={props.state} left={left()} apart={props.tool.axis.x0} />
          <Said plan={props.plan} />
        </div>
      </div>
      <div class="plan-side" style={{ width: `${side()}px`, right: `${EDGE}px` }}>
        <h3>{t.above}</h3>
        <FromAbove {...props} width={side()} height={places().above} />
        <h3>{t.side}</h3>
        <FromSide {...props} width={side()} height={places().side} />
        <p class="plan-do">
          <span class="quiet">{t.drag}</span>
          <PlanDoings state={props.state} plan={props.plan} />
        </p>
      </div>
    </>
  );
}

function Row(props: {
  title: string;
  hint: string;
  more?: string;
  left: number;
  height: number;
  now?: import('solid-js').JSX.Element;
  children: import('solid-js').JSX.Element;
}) {
  return (
    <section
      class="plan-row"
      classList={{ tight: props.height < 52 }}
      style={{ height: `${props.height}px` }}
      aria-label={props.title}
    >
      <div class="plan-title" style={{ width: `${props.left - 30}px` }}>
        <h3>{props.title}</h3>
        <p class="quiet">{props.hint}</p>
        <Show when={props.more}>
          <p class="quiet">{props.more}</p>
        </Show>
        {props.now}
      </div>
      <div class="plan-plot" style={{ left: `${props.left}px` }}>
        {props.children}
      </div>
    </section>
  );
}

/** What would spoil the film, and what one camera cannot give. */
function Said(props: { plan: FilmingPlan }) {
  const faults = createMemo(() => wordFilmingFaults(props.plan, planNumbers()));
  return (
    <div class="plan-said">
      <For each={faults()}>
        {(text) => (
          <p class="plan-fault">
            <svg class="plan-mark" viewBox="0 0 18 16" width="18" height="16" aria-hidden="true">
              <path d="M9 1.5 17 15H1z" />
            </svg>
            {text}
          </p>
        )}
      </For>
      <p>
        <b>{ONE_CAMERA}</b>
      </p>
    </div>
  );
}

const metresTitle = (): string => (units().measure === 'imperial' ? t.inches : t.metres);

function Stacked(props: UnderProps) {
  const width = (): number => props.tool.width;
  const axis = (): ToolProps['axis'] => props.tool.axis;
  const numbers = createMemo((): [string, string][] => {
    const fast = fastestOf(props.plan);
    const { metres, step } = planNumbers();
    const [along, across, high] = roomSize(props.plan);
    return [
      ...(fast
        ? ([
            [t.fastest, `${step(fast.metres)}, ${wordPixels(fast.pixels)} px`],
            [t.blurTitle, `${wordPixels(fast.blur)} px`],
            [t.skewTitle, `${wordPixels(Math.max(...props.plan.steps.skew))} px`],
          ] as [string, string][])
        : []),
      [t.roomTitle, `${formatNumber(along, 1)} × ${formatNumber(across, 1)} × ${metres(high)}`],
      [t.holdsTitle, props.plan.holdsFrom === undefined ? t.never : metres(props.plan.holdsFrom)],
    ];
  });
  return (
    <div class="plan-stack">
      <PlanFields {...props} withSize />
      <Said plan={props.plan} />
      <PlanErrors state={props.state} />
      <dl class="plan-numbers">
        <For each={numbers()}>
          {([name, value]) => (
            <div>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          )}
        </For>
      </dl>
      <div class="plan-curves">
        <TouchPlumb axis={axis()} />
        <h3>{metresTitle()}</h3>
        <StepCurves plan={props.plan} axis={axis()} height={96} />
        <h3>{t.pixels}</h3>
        <PixelCurve plan={props.plan} axis={axis()} height={76} />
        <h3>
          {t.hidden} <span class="quiet">{t.hiddenKey}</span>
        </h3>
        <HiddenJoints plan={props.plan} axis={axis()} height={190} />
      </div>
      <h3>{t.above}</h3>
      <FromAbove {...props} width={Math.min(width() - 2 * EDGE, 560)} height={300} />
      <h3>{t.side}</h3>
      <FromSide {...props} width={Math.min(width() - 2 * EDGE, 560)} height={170} />
      <p class="plan-do">
        <span class="quiet">{t.drag}</span>
        <PlanDoings state={props.state} plan={props.plan} />
      </p>
    </div>
  );
}
