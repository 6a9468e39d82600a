/** What a film would be known to: the numbers of one camera, and of two. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import type { ExpectedErrors } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { PlanState } from './plan-state.ts';
import { planTexts as t } from './plan-words.ts';

const ROWS = ['airTime', 'somersault', 'twist', 'tilt', 'momentum'] as const;

const degrees = (rad: number): string => `${formatNumber(rad * DEG, rad * DEG < 10 ? 1 : 0)}°`;

function wordError(errors: ExpectedErrors, cameras: 'one' | 'two', row: (typeof ROWS)[number]): string {
  const value = row === 'airTime' ? errors.airTime : errors[cameras][row];
  if (!Number.isFinite(value)) return t.notKnown;
  if (row === 'airTime') return t.pm(`${formatNumber(value, 3)} s`);
  return t.pm(row === 'momentum' ? `${formatNumber(100 * value, 100 * value < 10 ? 1 : 0)} %` : degrees(value));
}

export function PlanErrors(props: { state: PlanState; left?: number; apart?: number }) {
  const [cameras, setCameras] = createSignal<'one' | 'two'>('one');
  const how = (row: (typeof ROWS)[number]): string =>
    cameras() === 'two' && row !== 'airTime' && row !== 'momentum' ? t.expectedHow.somersault : t.expectedHow[row];
  const percent = createMemo(() => Math.round(100 * props.state.share()));
  return (
    <section class="plan-errors" aria-label={t.expected}>
      <div
        class="plan-title"
        style={
          props.left === undefined
            ? {}
            : { width: `${props.left - 30}px`, 'margin-right': `${(props.apart ?? 0) + 10}px` }
        }
      >
        <h3>{t.expected}</h3>
        <p class="quiet">{t.expectedHint}</p>
        <p class="plan-cameras">
          <For each={['one', 'two'] as const}>
            {(name) => (
              <button type="button" class="plain" aria-pressed={cameras() === name} onClick={() => setCameras(name)}>
                {t.cameras[name]}
              </button>
            )}
          </For>
        </p>
      </div>
      <dl class="plan-expected">
        <For each={ROWS}>
          {(row) => (
            <div>
              <dt class={`is-${row}`}>{t.expectedWords[row]}</dt>
              <dd>
                <Show when={props.state.errors()} fallback={<span class="quiet">{t.reading(percent())}</span>}>
                  {(errors) => <b>{wordError(errors(), cameras(), row)}</b>}
                </Show>
                <span class="quiet">{how(row)}</span>
              </dd>
            </div>
          )}
        </For>
      </dl>
    </section>
  );
}
