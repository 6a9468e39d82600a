/** What can be made of a recording, and what a fit of its take-off changed. */
import { For, onCleanup, Show } from 'solid-js';
import { FailedLine } from '../../app/failed-line.tsx';
import { usePage } from '../../app/page.ts';
import type { Recordings } from '../../engine/recording.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { makeRecordingActs } from './recording-acts.ts';
import type { RecordingState } from './recording-state.ts';
import { mm, sayPlusMinus } from './recording-values.ts';
import { degOf } from './recording-verdict.tsx';
import { recordingTexts as t } from './recording-words.ts';

const FORMS = ['bvh', 'trc', 'csv'] as const;

export function RecordingMade(props: { state: RecordingState; engine: Recordings }) {
  const page = usePage();
  // the room is the same for as long as the tool is open
  // eslint-disable-next-line solid/reactivity
  const acts = makeRecordingActs(page, props.state, props.engine);
  onCleanup(acts.cancel);
  // what is made is of one study: not while another is under way
  const isBusy = (): boolean => acts.work() !== undefined || props.state.work() !== undefined;
  const isTest = (): boolean => props.state.study()?.test !== undefined;
  return (
    <section class="rec-made" aria-label={t.made}>
      <Show when={isTest()}>
        <p class="rec-buttons">
          <button type="button" class="main" disabled={isBusy()} onClick={acts.fit}>
            {t.fit}
          </button>
          <button type="button" disabled={isBusy()} onClick={acts.keep}>
            {t.keep(acts.letter())}
          </button>
        </p>
      </Show>
      <Show when={acts.work()}>
        {(work) => (
          <div class="rec-work" role="status">
            <span class="rec-bar" aria-hidden="true">
              <span style={{ width: `${100 * work().done}%` }} />
            </span>
            <span>{work().what}</span>
            <button type="button" class="small" onClick={acts.cancel}>
              {t.cancel}
            </button>
          </div>
        )}
      </Show>
      <Show when={acts.fault()}>{(fault) => <FailedLine again={acts.cancel}>{fault()}</FailedLine>}</Show>
      <Show when={acts.fitted()}>
        {(found) => (
          <div class="rec-fit">
            <h3>{t.fitHead}</h3>
            <dl>
              <For each={found().fit.values}>
                {({ name, unit, from, to, plusMinus }) => (
                  <div>
                    <dt>{t.fitted[name] ?? name}</dt>
                    <dd>
                      {formatNumber(from, 2)} → <b>{formatNumber(to, 2)}</b> {sayPlusMinus(plusMinus, 2)}{' '}
                      {unit === 'deg' ? '°' : unit}
                    </dd>
                  </div>
                )}
              </For>
            </dl>
            <p class="quiet">{t.fitLeft(degOf(found().fit.leftAttitude), `${mm(found().fit.leftPlace)} mm`)}</p>
          </div>
        )}
      </Show>
      <Show when={props.state.study()?.measuredRoot}>
        <p class="rec-write">
          {isTest() ? t.writeComputed : t.writeMeasured}
          <For each={FORMS}>
            {(form) => (
              <button type="button" class="link" disabled={isBusy()} onClick={() => acts.write(form)}>
                {form.toUpperCase()}
              </button>
            )}
          </For>
          <span class="quiet">{t.stays}</span>
        </p>
      </Show>
    </section>
  );
}
