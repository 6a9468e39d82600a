/** The first question under the headline: a button; once asked, the choice of what the skill is flown against, and ways back. */
import { createEffect, createUniqueId, For, on, onCleanup, onMount, Show } from 'solid-js';
import type { OneChange } from '../../../sim/index.ts';
import { wordWay } from '../../../sim/words/change-answer-words.ts';
import type { Beside } from '../../app/beside.ts';
import { type BesideRows, calcBesideRows } from '../../app/beside-numbers.ts';
import { useCursor, useDocument, useFlight, useShell } from '../../app/page.ts';
import { speakVerdict } from '../../app/say/sentence-words.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { listen } from '../../ui/listen.ts';
import { BesideWhy } from './beside-why.tsx';
import { useFirstQuestion } from './first-question.ts';
import { firstTexts as t } from './first-words.ts';
import { VersionTag } from './version-tag.tsx';

export { useFirstQuestion };

/** The button and, once asked, the choice in its place. `brief`: nothing is kept there. */
export const FirstQuestion = (props: { brief?: boolean }) => (
  <div class="first-question">
    <AskFirst />
    <Asked brief={props.brief} />
  </div>
);

/** The button alone; it also listens for the way back. */
export function AskFirst() {
  const question = useFirstQuestion();
  const doc = useDocument();
  let opener: HTMLButtonElement | undefined;
  onMount(() => {
    question.load();
    const onKey = (e: KeyboardEvent): void => {
      if (e.key !== 'Escape' || e.defaultPrevented || !question.asked() || doc.isHeld()) return;
      if (document.querySelector('dialog[open]') || isInTool(e.target)) return;
      e.preventDefault();
      question.putAway();
    };
    onCleanup(listen({ keydown: onKey }));
  });
  // the way back leaves the keyboard where it came from
  createEffect(
    on(question.asked, (now, before) => {
      if (before && !now && (document.activeElement === null || document.activeElement === document.body))
        opener?.focus({ preventScroll: true });
    }),
  );
  return (
    <Show when={!question.asked() && question.offers()[0]}>
      {(first) => (
        <button ref={opener} type="button" class="ask-first" onClick={() => question.ask(first().kind)}>
          {pairOf(first())}
        </button>
      )}
    </Show>
  );
}

/** What the skill is flown against, and the ways back. */
export function Asked(props: { brief?: boolean }) {
  const question = useFirstQuestion();
  return (
    <Show when={question.asked()}>
      {(asked) => (
        <>
          <Show when={!props.brief || question.offers().length > 1}>
            <ChangeChoice asked={asked()} isQuiet={props.brief} />
          </Show>
          <Show when={!props.brief && question.canKeep()}>
            <button type="button" class="link" onClick={() => question.keep()}>
              {t.keep(question.letter())}
            </button>
          </Show>
          <PutAway isFirst={props.brief} />
        </>
      )}
    </Show>
  );
}

/** What the other way misses, or all of it where it misses nothing. */
export function OtherEnding() {
  const question = useFirstQuestion();
  const shell = useShell();
  const flight = useFlight();
  const cursor = useCursor();
  const rowsOf = ({ result, turn }: Beside): BesideRows =>
    calcBesideRows(flight.result().frames, result.frames, cursor.at(), turn);
  const said = (): string => {
    const verdict = question.verdict();
    return verdict ? speakVerdict(verdict).split('; ')[0] : '';
  };
  return (
    <Show when={question.other()}>
      {(other) => (
        <div class="other-way">
          <VersionTag letter={question.letter()} small />
          <CutText text={`${wordWay(other().change.other)}: ${said()}`} />
          <Show when={shell.beside.shown()}>{(beside) => <BesideWhy beside={beside()} rows={rowsOf(beside())} />}</Show>
        </div>
      )}
    </Show>
  );
}

/** `isFirst`: the keyboard goes on here once the question is asked. A clicker's arrows step the shapes then; on the choice they would change it. */
function PutAway(props: { isFirst?: boolean }) {
  const question = useFirstQuestion();
  let button!: HTMLButtonElement;
  onMount(() => {
    if (props.isFirst && document.activeElement === document.body) button.focus({ preventScroll: true });
  });
  return (
    <button ref={button} type="button" class="link" onClick={() => question.putAway()}>
      {t.putAway(question.letter())} <span class="key-hint">{t.escape}</span>
    </button>
  );
}

/** `isQuiet`: the keyboard goes on elsewhere. */
function ChangeChoice(props: { asked: OneChange; isQuiet?: boolean }) {
  const question = useFirstQuestion();
  const name = createUniqueId();
  let root!: HTMLFieldSetElement;
  // the button that was pressed has made room
  onMount(() => {
    if (!props.isQuiet && document.activeElement === document.body)
      root.querySelector<HTMLInputElement>('input:checked')?.focus({ preventScroll: true });
  });
  return (
    <fieldset class="change-choice" ref={root}>
      <legend class="spoken">{t.choice}</legend>
      <span aria-hidden="true">{t.against}</span>
      <For each={question.offers().map((one) => one.kind)}>
        {(kind) => (
          <label classList={{ chosen: props.asked.kind === kind }}>
            <input
              type="radio"
              class="spoken"
              name={name}
              checked={props.asked.kind === kind}
              onChange={() => question.ask(kind)}
            />
            {wordOther(question.offers(), kind)}
          </label>
        )}
      </For>
    </fieldset>
  );
}

const wordOther = (offers: readonly OneChange[], kind: OneChange['kind']): string => {
  const found = offers.find((one) => one.kind === kind);
  return found ? wordWay(found.other) : '';
};

function pairOf({ kind, own, other }: OneChange): string {
  if (kind !== 'arms') return t.pairs[kind];
  if (own === 'oneUp') return t.pairs.oneUp;
  return own === 'in' || other === 'in' ? t.pairs.arms : t.pairs.armsOther(wordWay(own));
}

/** A tool has an Escape of its own. */
const isInTool = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('[data-tool], .sheet') !== null;
