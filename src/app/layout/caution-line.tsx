/** One caution at a time, with its instant; or why a flight could not be made. It never blocks. */
import { type Accessor, createMemo, createSignal, For, Show } from 'solid-js';
import { toolTexts } from '../../commands/tool-words.ts';
import type { FlightCaution } from '../../engine/result.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { useCursor, useDocument, useFlight } from '../page.ts';
import { detailOf, titleOf, wordCaution } from '../say/caution-words.ts';
import { speakVerdict } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { texts } from '../words.ts';

const c = texts.caution;

/** Letters of a caution that has room beside the sentence. */
const LONGEST = 100;
/** A body is as it is at every instant. */
const isTimed = ({ kind }: FlightCaution): boolean => kind !== 'body';

/** Whether there is a message beside the sentence. */
export function useHasMessage(): Accessor<boolean> {
  const flight = useFlight();
  const { before, cautions } = useWholeState();
  const has = createMemo(
    () =>
      flight.outcome().fault !== undefined ||
      before() !== undefined ||
      cautions().length > 0 ||
      flight.result().notCompared !== undefined,
  );
  return has;
}

/** `short`: all of it is one press; `oneLine`: its words are cut where a line ends, and the rest is behind a press. */
export function CautionLine(props: { short?: boolean; oneLine?: boolean }) {
  const flight = useFlight();
  const cursor = useCursor();
  const doc = useDocument();
  const [all, setAll] = createSignal(false);
  const { before, cautions } = useWholeState();
  const first = createMemo(() => cautions()[0]);
  const notCompared = createMemo(() => flight.result().notCompared);
  /** what is behind the press, beside the first caution */
  const more = (): number => cautions().length - 1 + (notCompared() ? 1 : 0);
  const fault = createMemo(() => flight.outcome().fault);
  /** the header keeps its height: what it was compared with is behind the press then */
  const isBrief = (one: FlightCaution): boolean => notCompared() !== undefined || wordCaution(one).length > LONGEST;
  const go = (one: FlightCaution): void => {
    setAll(false);
    cursor.play.pause();
    cursor.set(one.t);
  };
  return (
    <div class="messages" classList={{ noted: notCompared() !== undefined }}>
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
            <b class="spoken">{c.word}</b>
            <CutText class="caution-words" text={wordCaution(one())} />
            <Show when={more() > 0}>
              <b class="more">{c.more(more())}</b>
            </Show>
          </button>
        )}
      </Show>
      <Show when={!props.short && !fault() && !before() && first()}>
        {(one) => (
          <div class="caution" role="status">
            <Icon name="caution" size={22} />
            <p>
              <b class="spoken">{c.word}</b>{' '}
              <Show when={props.oneLine} fallback={<b>{titleOf(one())}</b>}>
                <CutText class="caution-words" text={titleOf(one())} />
              </Show>{' '}
              <Show when={!props.oneLine && !isBrief(one())}>{detailOf(one())}</Show>{' '}
              <Show when={isTimed(one())}>
                <button type="button" class="link" onClick={() => go(one())}>
                  {c.go(formatNumber(one().t, 2))}
                </button>{' '}
              </Show>
              <Show when={notCompared()}>{(note) => <span class="note">{note().title} </span>}</Show>
              <Show when={more() > 0 || props.oneLine || isBrief(one())}>
                <button type="button" class="link" onClick={() => setAll(true)}>
                  {more() > 0 ? c.more(more()) : c.details}
                </button>
              </Show>
            </p>
          </div>
        )}
      </Show>
      <Show when={!fault() && !before() && !first() ? notCompared() : undefined}>
        {(note) => (
          <Show
            when={props.short}
            fallback={
              <p class="not-compared">
                <b>{note().title}</b> {note().detail}
              </p>
            }
          >
            <button type="button" class="not-compared" onClick={() => setAll(true)}>
              <CutText text={`${note().title} ${note().detail}`} />
            </button>
          </Show>
        )}
      </Show>
      <Show when={all()}>
        <Sheet title={cautions().length > 0 ? c.all : c.note} onClose={() => setAll(false)}>
          <Show when={notCompared()}>{(note) => <p>{`${note().title} ${note().detail}`}</p>}</Show>
          <ul class="list">
            <For each={cautions()}>
              {(one) => (
                <li>
                  <button type="button" class="row-button" onClick={() => go(one)}>
                    <span>{wordCaution(one)}</span>
                    <Show when={isTimed(one)}>
                      <b>{formatNumber(one.t, 2)} s</b>
                    </Show>
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
