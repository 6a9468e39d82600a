/** One question of a student's sheet: what is asked, its working, the answer and its lock, and what opens by it. */
import { createEffect, For, Match, Show, Switch } from 'solid-js';
import type { Question } from '../../../sim/index.ts';
import { AnswerCells } from './answer-cells.tsx';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import { clockOf } from './time-stamp.ts';
import { Working, workingUnit } from './working.tsx';

export function AnswerRow(props: {
  work: AnswerWork;
  index: number;
  question: Question;
  isNow: boolean;
  onEnter: () => void;
}) {
  const isLocked = (): boolean => props.work.isLocked(props.index);
  const n = (): number => props.index + 1;
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key !== 'Enter' || !(e.ctrlKey || e.metaKey) || e.isComposing) return;
    e.preventDefault();
    if (props.work.worksheet().order === 'together') props.work.lockAll();
    else props.work.lock(props.index);
  };
  return (
    <li
      class="pupil-row"
      classList={{ locked: isLocked(), now: props.isNow && !isLocked(), words: props.question.kind === 'words' }}
      data-question={n()}
      onFocusIn={() => props.onEnter()}
      onKeyDown={onKeyDown}
    >
      <div class="pupil-question">
        <span class="pupil-no" aria-hidden="true">
          {n()}
        </span>
        <div>
          <h2>
            <span class="spoken">{n()}: </span>
            {props.question.ask}
          </h2>
          <Show when={props.question.help}>{(help) => <p class="quiet">{help()}</p>}</Show>
        </div>
      </div>
      <Show when={props.question.kind === 'number' && props.question} fallback={<Words {...props} />}>
        {(question) => (
          <>
            <Working work={props.work} index={props.index} unit={question().unit} />
            <div class="pupil-answer">
              <h3 class="narrow-head">{t.columns.answer}</h3>
              <Show when={!isLocked()} fallback={<Locked work={props.work} index={props.index} />}>
                <span class="pupil-typed">
                  <AnswerField {...props} unit={question().unit} />
                  <span class="unit">{question().unit}</span>
                </span>
                <TakeValue work={props.work} index={props.index} unit={question().unit} />
                <LockPart work={props.work} index={props.index} isNow={props.isNow} />
              </Show>
            </div>
          </>
        )}
      </Show>
      <AnswerCells work={props.work} index={props.index} question={props.question} isNow={props.isNow} />
    </li>
  );
}

const saidId = (index: number): string => `pupil-said-${index}`;

/** ms that a keyboard takes to rise over the page */
const KEYBOARD = 350;
/** With a keyboard over the lower part of the page: the field and what locks it stay above. */
function keepInSight(field: HTMLElement): void {
  if (!matchMedia('(pointer: coarse)').matches) return;
  setTimeout(
    () => field.closest('.pupil-row')?.querySelector('.pupil-answer')?.scrollIntoView({ block: 'center' }),
    KEYBOARD,
  );
}

function AnswerField(props: { work: AnswerWork; index: number; unit: string }) {
  return (
    <input
      type="text"
      inputmode="text"
      aria-label={[t.answerOf(props.index + 1), props.unit].filter(Boolean).join(', ')}
      aria-invalid={props.work.said(props.index) !== undefined}
      aria-describedby={saidId(props.index)}
      maxLength={200}
      autocomplete="off"
      autocapitalize="off"
      spellcheck={false}
      value={props.work.worksheet().answers[props.index].text ?? ''}
      onFocus={(e) => keepInSight(e.currentTarget)}
      onInput={(e) => props.work.write(props.index, { text: e.currentTarget.value })}
    />
  );
}

function Words(props: { work: AnswerWork; index: number; isNow: boolean }) {
  const text = (): string => props.work.worksheet().answers[props.index].text ?? '';
  return (
    <>
      <div class="pupil-working">
        <Show when={!props.work.isLocked(props.index)} fallback={<p class="pupil-plain">{text()}</p>}>
          <textarea
            class="pupil-words"
            rows={3}
            aria-label={t.answerOf(props.index + 1)}
            aria-describedby={saidId(props.index)}
            placeholder={t.writeWords}
            maxLength={1000}
            value={text()}
            onFocus={(e) => keepInSight(e.currentTarget)}
            onInput={(e) => props.work.write(props.index, { text: e.currentTarget.value })}
          />
        </Show>
      </div>
      <div class="pupil-answer">
        <Show when={!props.work.isLocked(props.index)} fallback={<LockedAt work={props.work} index={props.index} />}>
          <p class="quiet pupil-hint">{t.wordsAre}</p>
          <LockPart work={props.work} index={props.index} isNow={props.isNow} />
        </Show>
      </div>
    </>
  );
}

/** The number and its unit apart: the number is what is looked for. */
function Locked(props: { work: AnswerWork; index: number }) {
  const parts = (): readonly [string, string] => {
    const text = props.work.worksheet().answers[props.index].text ?? '';
    const at = text.search(/\s(?=[^\d\s±])/);
    return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
  };
  return (
    <>
      <span class="pupil-locked">
        <LockSign />
        <b class="pupil-number">{parts()[0]}</b> <span class="unit">{parts()[1]}</span>
      </span>
      <LockedAt work={props.work} index={props.index} isBare />
    </>
  );
}

function LockedAt(props: { work: AnswerWork; index: number; isBare?: boolean }) {
  return (
    <p class="pupil-locked-at quiet">
      <Show when={!props.isBare}>
        <LockSign />{' '}
      </Show>
      {t.lockedAt(clockOf(props.work.worksheet().answers[props.index].lockedAt ?? ''))}
    </p>
  );
}

const LockSign = () => (
  <svg class="lock-sign" width="13" height="16" viewBox="0 0 13 16" aria-hidden="true">
    <path d="M3 7 V5 a3.5 3.5 0 0 1 7 0 V7" fill="none" stroke="currentColor" stroke-width="1.8" />
    <rect x="0.5" y="7" width="12" height="8.5" fill="currentColor" />
  </svg>
);

/** What the working comes to, as the answer, by one press: where it is in the unit that is asked for. */
function TakeValue(props: { work: AnswerWork; index: number; unit: string }) {
  const value = (): string | undefined => {
    const answer = props.work.worksheet().answers[props.index];
    const row = props.work.numbers()?.workings[props.index];
    if ((answer.text ?? '').trim() !== '' || !(answer.working ?? '').trim() || row?.result.kind !== 'quantity')
      return undefined;
    const unit = workingUnit(row, props.unit);
    return unit === props.unit ? [row.value, unit].filter(Boolean).join(' ') : undefined;
  };
  return (
    <Show when={value()}>
      {(text) => (
        <button type="button" class="link pupil-take" onClick={() => props.work.write(props.index, { text: text() })}>
          {t.take(text())}
        </button>
      )}
    </Show>
  );
}

function LockPart(props: { work: AnswerWork; index: number; isNow: boolean }) {
  const asked = (): string | undefined => {
    const question = props.work.question();
    return question?.index === props.index ? question.messages[0] : undefined;
  };
  const isTogether = (): boolean => props.work.worksheet().order === 'together';
  return (
    <>
      <Switch>
        <Match when={asked()}>{(message) => <Ask messages={[t.sure(message())]} work={props.work} />}</Match>
        <Match when={!isTogether() && props.isNow}>
          <button
            type="button"
            class="primary pupil-lock"
            disabled={props.work.locking() !== undefined}
            onClick={() => props.work.lock(props.index)}
          >
            {props.work.locking() === props.index ? t.reading : t.lock(props.index + 1)}
          </button>
        </Match>
      </Switch>
      <p class="pupil-said" id={saidId(props.index)} role="status">
        {props.work.said(props.index)}
        <For each={props.work.fixes(props.index)}>
          {(fix) => (
            <>
              {' '}
              <button type="button" onClick={() => props.work.write(props.index, { text: fix.text })}>
                {fix.title}
              </button>
            </>
          )}
        </For>
      </p>
    </>
  );
}

/** Asked once, where it was pressed; the answer that locks has the focus. */
export function Ask(props: { messages: readonly string[]; work: AnswerWork }) {
  let yes!: HTMLButtonElement;
  createEffect(() => yes.focus());
  return (
    <div class="pupil-ask" role="alert">
      <For each={props.messages}>{(message) => <p>{message}</p>}</For>
      <button type="button" class="primary" ref={yes} onClick={() => props.work.confirm()}>
        {t.yes}
      </button>
      <button type="button" onClick={() => props.work.decline()}>
        {t.no}
      </button>
    </div>
  );
}
