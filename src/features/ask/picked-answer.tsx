/** The picked answer: what it does in one plain sentence, the ways to take it, and the limits that it lies at. */
import { createMemo, For, Show } from 'solid-js';
import { HELD_WORDS, LIMIT_WORDS, MET_WORDS } from '../../../sim/words/limit-words.ts';
import { Clauses } from '../../app/clauses.tsx';
import { useFlight } from '../../app/page.ts';
import { clausesOf } from '../../app/say/sentence-words.ts';
import { sentenceOf } from './answer-words.ts';
import type { AskState } from './ask-state.ts';
import { nameInput, sayIn } from './ask-words.ts';
import { wordObstacle } from './obstacle-words.ts';
import { wordFound, wordMore } from './search-words.ts';
import type { AtEnd } from './span-ends.ts';
import { askTexts as t } from './words.ts';

type Props = { state: AskState };

export function PickedAnswer(props: Props) {
  const found = () => props.state.found();
  const solution = () => props.state.pickedSolution();
  const isAnswer = (): boolean => (found()?.answer.solutions.length ?? 0) > 0;
  const name = (): string => (isAnswer() ? t.answer(String(props.state.picked() + 1)) : t.theNearest);
  const notCompared = () => found()?.list[0]?.cost.notCompared;
  const isHeldAsked = (): boolean => found()?.list.some((s) => s.held !== undefined) ?? false;
  return (
    <section class="picked-answer" aria-label={t.answersTitle}>
      <p class="spoken" role="status" aria-live="polite">
        {props.state.search.said()}
      </p>
      <Show when={props.state.search.failed()}>
        <p role="alert" class="ask-fault">
          {t.failed(props.state.search.failed())}
        </p>
      </Show>
      <Show when={found()} fallback={<p class="ask-found">{t.noAnswers}</p>}>
        {(f) => (
          <>
            <h2 class="ask-found">{wordFound(f())}</h2>
            <Show when={wordMore(f())}>
              <p class="quiet">{wordMore(f())}</p>
            </Show>
            <Show when={props.state.stale() || props.state.wantedChanged()}>
              <p class="ask-stale">{props.state.stale() ? t.stale : t.staleWanted}</p>
            </Show>
          </>
        )}
      </Show>
      <Show when={solution()}>
        {(one) => (
          <>
            <p class="picked-sentence" data-testid="answer-sentence">
              {sentenceOf(name(), props.state.clausesOf(one()))} {t.result}{' '}
              <Clauses clauses={clausesOf(one().verdict)} />
            </p>
            <AnswerActions state={props.state} name={name()} />
            <Ends state={props.state} />
          </>
        )}
      </Show>
      <Show when={!props.state.stale() && found()?.obstacles.length}>
        <Obstacles state={props.state} />
      </Show>
      <Show when={props.state.drawn()?.fault}>{(fault) => <p class="ask-fault">{t.doesNotFly(fault())}</p>}</Show>
      <Show when={found()}>
        <p class="quiet ask-caution">
          {found()?.answer.solutions.length === 1 && !props.state.stale() ? `${t.onlyOne} ` : ''}
          {t.caution} {isHeldAsked() ? HELD_WORDS : MET_WORDS}{' '}
          {notCompared() ? `${notCompared()?.title} ${notCompared()?.detail}` : LIMIT_WORDS}
        </p>
      </Show>
    </section>
  );
}

/** The ways to take the picked answer. */
function AnswerActions(props: Props & { name: string }) {
  const can = (): boolean => props.state.drawn()?.result !== undefined;
  return (
    <div class="answer-actions">
      <button type="button" class="main" disabled={!can()} onClick={() => props.state.use()}>
        {t.useAnswer(props.name)}
      </button>
      <button type="button" disabled={!can()} onClick={() => props.state.keep()}>
        {t.keepAs(props.state.keepLetter())}
      </button>
      <span class="quiet">{t.dashed(props.name)}</span>
    </div>
  );
}

/** Limits that the answer lies at. */
function Ends(props: Props) {
  return (
    <ul class="answer-ends">
      <For each={props.state.atEnds()}>{(end) => <EndLine state={props.state} end={end} />}</For>
    </ul>
  );
}

function EndLine(props: Props & { end: AtEnd }) {
  const flight = useFlight();
  const input = () => props.state.inputOf(props.end.id);
  const shift = (): number => input()?.eventS ?? 0;
  const said = (v: number): string => sayIn(input()?.unit ?? 'count', v + shift());
  const words = createMemo(() => {
    const open = props.state.skill();
    const one = props.state.found()?.chosen.find((c) => c.id === props.end.id);
    const name = open ? nameInput(props.end.id, flight.spans(), open.spec) : props.end.id;
    return t.atEnd(name, said(one?.[props.end.side] ?? 0));
  });
  return (
    <li>
      {words()}{' '}
      <Show when={props.end.wider} fallback={<span class="quiet">{t.noWider}</span>}>
        {(wider) => (
          <button type="button" class="small" onClick={() => props.state.widen(props.end)}>
            {t.widen(said(wider()))}
          </button>
        )}
      </Show>
    </li>
  );
}

function Obstacles(props: Props) {
  const flight = useFlight();
  return (
    <div class="ask-obstacles">
      <h2>{t.obstacles}</h2>
      <ul>
        <For each={props.state.found()?.obstacles ?? []}>
          {(o) => (
            <li>
              {wordObstacle(props.state, flight.spans(), o)}{' '}
              <Show when={o.kind === 'limit' && o.limit !== 'late' ? o.limit : undefined}>
                {(limit) => (
                  <button type="button" class="small" onClick={() => props.state.dropLimit(limit())}>
                    {t.dropLimit(t.limits[limit()])}
                  </button>
                )}
              </Show>
            </li>
          )}
        </For>
      </ul>
      <p class="quiet">{t.notProof}</p>
    </div>
  );
}
