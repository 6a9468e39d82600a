/** What one student handed in, to read: workings, answers, and what the flight gives. */
import { For, Show } from 'solid-js';
import type { ClassColumn, ClassRow } from '../../../sim/index.ts';
import { wordTimes } from '../../../sim/words/class-words.ts';
import { isolated } from '../../ui/names.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { nameOfRow, noteOf, wordKey, wordTime } from './class-say.ts';
import { tableTexts as t } from './table-words.ts';

export function StudentSheet(props: {
  row: ClassRow;
  columns: readonly ClassColumn[];
  hasDays: boolean;
  /** the row before or after in the order of the table; left out at its end */
  step?: { before?(): void; after?(): void };
  onClose: () => void;
}) {
  const student = () => props.row.worksheet.student;
  return (
    <Sheet title={t.sheetOf(nameOfRow(props.row))} onClose={() => props.onClose()} wide>
      <p class="quiet student-from">
        <Show when={student()?.class}>
          {(of) => (
            <span>
              {t.classOf} <bdi>{isolated(of())}</bdi>
            </span>
          )}
        </Show>
        <span>
          {t.no} {props.row.no}, {t.file} <bdi>{isolated(props.row.file)}</bdi>
        </span>
        <Show when={props.row.isTwice}>
          <b>{t.twice}</b>
        </Show>
      </p>
      <ol class="student-sheet">
        <For each={props.columns}>
          {({ question, key }, q) => {
            const answer = () => props.row.worksheet.answers[q()];
            const cell = () => props.row.cells[q()];
            const ratio = (): string => {
              const c = cell();
              if (c.kind === 'unread') return c.reason;
              if (c.kind !== 'number' || c.ratio === undefined) return '';
              const note = noteOf(c);
              const times = wordTimes(c.ratio);
              return note && note !== times ? `${times}: ${note}` : times;
            };
            return (
              <li>
                <h3>
                  <span class="quiet">{q() + 1}</span> {question.ask}
                </h3>
                <dl>
                  <Show when={question.kind === 'number'}>
                    <div>
                      <dt>{t.working}</dt>
                      <dd>
                        <bdi>{answer().working?.trim() || t.empty1}</bdi>
                      </dd>
                    </div>
                  </Show>
                  <div>
                    <dt>{t.answer}</dt>
                    <dd>
                      <bdi class="said">{answer().text?.trim() || t.empty1}</bdi>{' '}
                      <span class="quiet">
                        {answer().lockedAt ? t.lockedAt(wordTime(answer().lockedAt ?? '', props.hasDays)) : t.notLocked}
                      </span>
                    </dd>
                  </div>
                  <Show
                    when={question.kind === 'number'}
                    fallback={
                      <Show when={question.kind === 'words' && question.shows}>
                        {(shows) => (
                          <div>
                            <dt>{t.shows}</dt>
                            <dd>{shows()}</dd>
                          </div>
                        )}
                      </Show>
                    }
                  >
                    <div>
                      <dt>{t.simulated}</dt>
                      <dd>{wordKey(key)}</dd>
                    </div>
                    <Show when={ratio()}>
                      <div>
                        <dt>{t.ratio}</dt>
                        <dd>{ratio()}</dd>
                      </div>
                    </Show>
                  </Show>
                </dl>
              </li>
            );
          }}
        </For>
      </ol>
      <p class="student-step">
        <button type="button" disabled={!props.step?.before} onClick={() => props.step?.before?.()}>
          {t.before}
        </button>
        <button type="button" disabled={!props.step?.after} onClick={() => props.step?.after?.()}>
          {t.after}
        </button>
      </p>
    </Sheet>
  );
}
