/** How far the computed attitude is from the measured one, beside the best that was published. */
import { For, Show } from 'solid-js';
import type { RecordingStudy } from '../../../sim/index.ts';
import { BEST_SOURCE, ONE_RECORDING } from '../../../sim/words/recording-words.ts';
import { AXES, HUES, sayAxis, sayBest } from './recording-values.ts';
import { recordingTexts as t } from './recording-words.ts';

export function RecordingApart(props: { study: RecordingStudy }) {
  return (
    <Show when={props.study.test}>
      {(test) => (
        <section class="rec-apart">
          <table>
            <thead>
              <tr>
                <th scope="col">{t.apart}</th>
                <th scope="col">{t.worst}</th>
                <th scope="col">{t.atEnd}</th>
                <th scope="col">{t.bestHead}</th>
              </tr>
            </thead>
            <tbody>
              <For each={AXES}>
                {(name, i) => (
                  <tr>
                    <th scope="row" class={HUES[name]}>
                      {t[name]}
                    </th>
                    <td>
                      <b>{sayAxis(name, Math.abs(test().worst[i()]))}</b>
                    </td>
                    <td>
                      <b>{sayAxis(name, test().atEnd[i()])}</b>
                    </td>
                    <td>{sayBest(name)}</td>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
          <p class="quiet">
            {ONE_RECORDING} {t.source(BEST_SOURCE)}
          </p>
        </section>
      )}
    </Show>
  );
}
