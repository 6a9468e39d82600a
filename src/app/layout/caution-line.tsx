/** One caution at a time, with its instant; or why a flight could not be made. It never blocks. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import { toolTexts } from '../../commands/tool-words.ts';
import type { FlightCaution } from '../../engine/result.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { useCursor, useDocument, useFlight } from '../page.ts';
import { detailOf, titleOf, wordCaution } from '../say/caution-words.ts';
import { speakVerdict } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { texts } from '../words.ts';

const c = texts.caution;

export function CautionLine(props: { short?: boolean }) {
  const flight = useFlight();
  const cursor = useCursor();
  const doc = useDocument();
  const [all, setAll] = createSignal(false);
  const cautions = createMemo(() => flight.cautions());
  const first = createMemo(() => cautions()[0]);
  const notCompared = createMemo(() => flight.result().notCompared);
  const fault = createMemo(() => flight.outcome().fault);
  const before = useWholeState().before;
  const go = (one: FlightCaution): void => {
    setAll(false);
    cursor.play.pause();
    cursor.set(one.t);
  };
  return (
    <div class="messages">
      <Show when={fault()}>
        {(f) => (
          <div class="stopped" role="alert">
            <p>
              <b>{c.stopped}</b> {f().message}. {c.keeps}{' '}
              <Show when={f().canRetry}>
                <button type="button" class="link" onClick={() => flight.retry()}>
                  {toolTexts.again}
                </button>{' '}
              </Show>
              <button type="button" class="link" onClick={() => doc.abandon() || doc.undo()}>
                {c.undo}
              </button>
            </p>
          </div>
        )}
      </Show>
      <Show when={!fault() && before()}>
        {(o) => (
          <p class="was">
            {texts.sentence.beforeDrag} {speakVerdict(o())}
          </p>
        )}
      </Show>
      <Show when={props.short && !fault() && !before() && first()}>
        {(one) => (
          <button type="button" class="caution short" onClick={() => setAll(true)}>
            <Icon name="caution" size={20} />
            <span class="caution-words">
              <b class="spoken">{c.word}</b> <b>{titleOf(one())}</b> {detailOf(one())}
            </span>
            <Show when={cautions().length > 1}>
              <b>{c.more(cautions().length - 1)}</b>
            </Show>
          </button>
        )}
      </Show>
      <Show when={!props.short && !fault() && !before() && first()}>
        {(one) => (
          <div class="caution" role="status">
            <Icon name="caution" size={22} />
            <p>
              <b class="spoken">{c.word}</b> <b>{titleOf(one())}</b> {detailOf(one())}{' '}
              <button type="button" class="link" onClick={() => go(one())}>
                {c.go(formatNumber(one().t, 2))}
              </button>
              <Show when={cautions().length > 1}>
                {' '}
                <button type="button" class="link" onClick={() => setAll(true)}>
                  {c.more(cautions().length - 1)}
                </button>
              </Show>
              <Show when={notCompared()}>{(note) => <span> {note().title}</span>}</Show>
            </p>
          </div>
        )}
      </Show>
      <Show when={!fault() && !before() && !first() ? notCompared() : undefined}>
        {(note) => (
          <p class="not-compared">
            <b>{note().title}</b> {note().detail}
          </p>
        )}
      </Show>
      <Show when={all()}>
        <Sheet title={c.all} onClose={() => setAll(false)}>
          <Show when={notCompared()}>{(note) => <p>{`${note().title} ${note().detail}`}</p>}</Show>
          <ul class="list">
            <For each={cautions()}>
              {(one) => (
                <li>
                  <button type="button" class="row-button" onClick={() => go(one)}>
                    <span>{wordCaution(one)}</span>
                    <b>{formatNumber(one.t, 2)} s</b>
                  </button>
                </li>
              )}
            </For>
          </ul>
        </Sheet>
      </Show>
    </div>
  );
}
