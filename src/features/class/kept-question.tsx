/** Answers to the worksheet that is opened are kept on this machine, which may be another student's: asked before they are shown. */
import { For, Show } from 'solid-js';
import { sayWeekday } from '../../ui/dates.ts';
import { answerTexts as t } from './answer-words.ts';
import type { KeptOffer } from './class-state.ts';

const k = t.kept;

export function KeptQuestion(props: { offer: KeptOffer }) {
  return (
    <section class="class-way kept-question" aria-label={k.title}>
      <h2>{k.title}</h2>
      <ul>
        <For each={props.offer.kept}>
          {(one) => (
            <li>
              <p>
                <b>{one.name ? k.of(one.name) : k.nameless}</b>{' '}
                <span class="quiet">
                  {k.when(sayWeekday(one.savedAt), one.locked, props.offer.worksheet.questions.length)}
                </span>
              </p>
              <button type="button" onClick={() => props.offer.goOn(one.id)}>
                {k.goOn}
              </button>
            </li>
          )}
        </For>
      </ul>
      <p>
        <Show when={props.offer.hasAnswers}>
          <button type="button" onClick={() => props.offer.asOpened()}>
            {k.asOpened(props.offer.worksheet.student?.name ?? '')}
          </button>{' '}
        </Show>
        <button type="button" onClick={() => props.offer.blank()}>
          {k.blank}
        </button>{' '}
        <span class="quiet">{k.why}</span>
      </p>
    </section>
  );
}
