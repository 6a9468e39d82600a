/** One student's sheet: the whole of it, or the question whose answers are meant. */
import { createEffect, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import { listen } from '../../ui/listen.ts';
import { AnswerFoot, type FootActions } from './answer-foot.tsx';
import { AnswerHead } from './answer-head.tsx';
import { AnswerRow } from './answer-row.tsx';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import type { ClassRoomState } from './class-state.ts';
import { KeptQuestion } from './kept-question.tsx';
import { SheetBehind } from './sheet-behind.tsx';
import { useSheetFlight } from './sheet-flight.ts';
import { usePrintSheet } from './sheet-print.ts';
import { classTexts } from './words.ts';

const COLUMNS = [t.columns.question, t.columns.working, t.columns.answer, t.columns.simulated, t.columns.ratio];

export function AnswerView(props: { room: ClassRoomState }) {
  return (
    <Show
      when={props.room.offer()}
      fallback={
        <Show when={props.room.work()} keyed>
          {(work) => <AnswerSheet room={props.room} work={work} />}
        </Show>
      }
    >
      {(offer) => (
        <>
          <Title title={offer().worksheet.title} room={props.room} order="" />
          <KeptQuestion offer={offer()} />
        </>
      )}
    </Show>
  );
}

/** "Double back somersault, tucked: estimate, lock, then look": what is before the colon is the name. */
function Title(props: { title: string; order: string; room: ClassRoomState }) {
  const parts = (): readonly [string, string] => {
    const at = props.title.indexOf(':');
    return at < 0 ? [props.title, ''] : [props.title.slice(0, at + 1), props.title.slice(at + 1)];
  };
  return (
    <header class="room-head">
      <h1>
        <b>{parts()[0]}</b>
        {parts()[1]}
      </h1>
      <span class="quiet room-aside">
        <span>{props.order}</span>
        <button type="button" class="link" onClick={() => props.room.show('start')}>
          {t.back}
        </button>
      </span>
    </header>
  );
}

function AnswerSheet(props: { room: ClassRoomState; work: AnswerWork }) {
  let nameField: HTMLElement | undefined;
  let actions: FootActions | undefined;
  const [focused, setFocused] = createSignal<number>();
  const [isBehind, setBehind] = createSignal(false);
  const [isNameAsked, setNameAsked] = createSignal(false);
  const flight = useSheetFlight(() => props.work.worksheet().skill);
  const print = usePrintSheet(() => props.work, flight);
  /** where one works: the row with the focus, else the first that is open */
  const now = (): number | undefined => {
    const at = focused();
    return at !== undefined && !props.work.isLocked(at) ? at : props.work.next();
  };
  const onKey = (e: KeyboardEvent): void => {
    if (e.defaultPrevented || document.querySelector('dialog[open]')) return;
    const isTyped = e.target instanceof Element && e.target.closest('input, textarea') !== null;
    const isMod = e.ctrlKey || e.metaKey;
    if (isMod && /^s$/i.test(e.key)) actions?.handIn();
    else if (isMod && /^p$/i.test(e.key)) void print.run();
    else if (!isMod && !isTyped && /^s$/i.test(e.key)) setBehind(true);
    else return;
    e.preventDefault();
  };
  onMount(() => {
    props.work.compute();
    onCleanup(listen({ keydown: onKey }));
  });
  // a locked row gives the caret to the next
  createEffect<number>((before) => {
    const count = props.work.lockedCount();
    if (before !== undefined && count > before) {
      const next = props.work.next();
      requestAnimationFrame(() =>
        document.querySelector<HTMLElement>(`[data-question="${(next ?? -1) + 1}"] :is(input, textarea)`)?.focus(),
      );
    }
    return count;
  });
  return (
    <div class="pupil-room">
      <Title title={props.work.worksheet().title} order={t.orders[props.work.worksheet().order]} room={props.room} />
      <AnswerHead work={props.work} flight={flight} nameField={(el) => (nameField = el)} isNameAsked={isNameAsked()} />
      <div class="pupil-floor" aria-hidden="true">
        <For each={COLUMNS}>{(head) => <span>{head}</span>}</For>
      </div>
      <Show when={props.work.fault()}>
        {(reason) => (
          <p class="pupil-said pupil-fault" role="alert">
            {t.failed(reason())}{' '}
            <button type="button" onClick={() => props.work.compute()}>
              {t.again}
            </button>
          </p>
        )}
      </Show>
      <ol class="pupil-rows" aria-label={classTexts.views.answer}>
        <For each={props.work.worksheet().questions}>
          {(question, i) => (
            <AnswerRow
              work={props.work}
              index={i()}
              question={question}
              isNow={now() === i()}
              onEnter={() => setFocused(i())}
            />
          )}
        </For>
      </ol>
      <AnswerFoot
        room={props.room}
        work={props.work}
        focusName={() => {
          setNameAsked(true);
          nameField?.focus();
        }}
        print={() => void print.run()}
        showSheet={() => setBehind(true)}
        ref={(made) => (actions = made)}
      />
      <Show when={isBehind()}>
        <SheetBehind work={props.work} flight={flight} onClose={() => setBehind(false)} />
      </Show>
    </div>
  );
}
