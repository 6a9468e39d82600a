/** Under the plate: posing begun and ended, turned by buttons, and the flight made of it. */
import { For, Show } from 'solid-js';
import type { PosedFrame } from '../../../sim/index.ts';
import { FailedLine } from '../../app/failed-line.tsx';
import { useFlight } from '../../app/page.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { ClipPosing } from './clip-pose-state.ts';
import { clipPoseTexts as t } from './clip-pose-words.ts';
import './clip-pose.css';

const STEP = (5 * Math.PI) / 180;
const TURNS = ['turn', 'twist', 'tilt'] as const;

export function ClipPoseButtons(props: { posing: ClipPosing }) {
  return (
    <>
      <Show when={props.posing.posed().length > 1}>
        <button
          type="button"
          class="main"
          disabled={props.posing.work() !== undefined}
          onClick={() => props.posing.make()}
        >
          {t.make}
        </button>
      </Show>
      <button
        type="button"
        aria-pressed={props.posing.isOn()}
        onClick={() => (props.posing.isOn() ? props.posing.leave() : props.posing.take())}
      >
        {props.posing.isOn() ? t.done : t.pose}
      </button>
    </>
  );
}

export function ClipPoseTools(props: { posing: ClipPosing; here: PosedFrame }) {
  return (
    <fieldset class="clip-pose-tools">
      <legend class="spoken">{t.tools}</legend>
      <For each={TURNS}>
        {(what) => (
          <span class="clip-pose-tool">
            {t.turns[what]}
            <button
              type="button"
              class="small"
              aria-label={t.less(t.turns[what])}
              onClick={() => props.posing.turnBy(what, -STEP)}
            >
              −
            </button>
            <button
              type="button"
              class="small"
              aria-label={t.more(t.turns[what])}
              onClick={() => props.posing.turnBy(what, STEP)}
            >
              +
            </button>
          </span>
        )}
      </For>
      <button type="button" class="link" onClick={() => props.posing.swap(props.here)}>
        {t.swapHere}
      </button>
      <Show when={props.posing.isPosed()}>
        <button type="button" class="link" onClick={() => props.posing.takeOff(props.here)}>
          {t.takeOff}
        </button>
      </Show>
    </fieldset>
  );
}

/** Progress, and what went wrong. */
export function ClipPoseWork(props: { posing: ClipPosing }) {
  const flight = useFlight();
  return (
    <>
      <Show when={props.posing.work() !== undefined}>
        <div class="clip-pose-work" role="status">
          <progress max="1" value={props.posing.work()} />
          <span>{t.making(formatNumber(100 * (props.posing.work() ?? 0), 0))}</span>
          <button type="button" class="small" onClick={() => props.posing.cancel()}>
            {t.cancel}
          </button>
        </div>
      </Show>
      <Show when={flight.result() && props.posing.fault()}>
        {(fault) => <FailedLine again={() => props.posing.make()}>{fault()}</FailedLine>}
      </Show>
    </>
  );
}
