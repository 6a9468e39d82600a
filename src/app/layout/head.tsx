/**
 * The head of the bench: the result as a sentence, its answer and the first question under it; at the right what is to be known of it first. A message
 * comes before what the skill is flown against, and that before something to try.
 */
import { createMemo, type JSX, Match, Show, Switch } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { FixButton } from '../../features/fix/fix-button.tsx';
import { useChangeAnswer } from '../change-answer.ts';
import { useShell } from '../page.ts';
import { texts } from '../words.ts';
import { AnswerLine } from './answer-line.tsx';
import { CautionLine, useHasMessage } from './caution-line.tsx';
import { CodePlace } from './code-line.tsx';
import { LegPick } from './leg-pick.tsx';
import { Computing, Sentence, useFirstQuestionParts, useIsLate, useTryParts } from './sentence.tsx';
import { FilledPlace } from './tools/filled-place.tsx';
import { fillsHead, findTool } from './tools/tool-list.ts';

const t = texts.head;

export function Head(props: { ref: (el: HTMLElement) => void }) {
  const shell = useShell();
  const isLate = useIsLate();
  useChangeAnswer();
  const first = useFirstQuestionParts();
  const tryParts = useTryParts();
  const hasMessage = useHasMessage();
  const isAsked = createMemo(() => first()?.useFirstQuestion().asked() !== undefined);
  /** a tool says here what is wanted; the result is read out */
  const fills = (): boolean => fillsHead(findTool(shell.tool()));
  /** on a narrow page the choice has the room of what is in the menu too */
  const hasRoom = (): boolean => !(hasMessage() && isAsked());
  /** at the rows of shapes, while nothing else is beside them */
  const isEndingInRows = (): boolean =>
    shell.beside.shown() !== undefined && shell.tool() === undefined && shell.rows.open().size === 0;
  const choice = (): JSX.Element => <Dynamic component={first()?.Asked} />;
  return (
    <section
      class="line"
      classList={{ filled: fills(), airless: findTool(shell.tool())?.fillsAir === true }}
      ref={props.ref}
      aria-label={texts.sentence.label}
    >
      <Show when={fills()}>
        <FilledPlace name="headline" />
      </Show>
      <Sentence isLate={isLate()} unseen={fills()} />
      <AnswerLine>
        <Computing isLate={isLate()} />
        <Show when={first()}>{(parts) => <Dynamic component={parts().AskFirst} />}</Show>
        <Show when={hasMessage() && isAsked()}>{choice()}</Show>
        <FixButton />
        <Show when={isEndingInRows() ? undefined : first()}>
          {(parts) => <Dynamic component={parts().OtherEnding} />}
        </Show>
        <LegPick />
        <button
          type="button"
          class="small plain about-result"
          classList={{ yields: !hasRoom() }}
          aria-haspopup="dialog"
          onClick={() => shell.openPanel('about')}
        >
          {t.about}
        </button>
      </AnswerLine>
      <div class="head-side">
        <Switch>
          <Match when={hasMessage()}>
            <CautionLine />
            <Show when={shell.rows.open().size > 0}>
              <div class="rows-side under">
                <FewerRows />
              </div>
            </Show>
          </Match>
          <Match when={isAsked()}>
            <div class="asked-side">{choice()}</div>
          </Match>
          <Match when={shell.rows.open().size > 0}>
            <div class="rows-side">
              <button type="button" class="link" onClick={() => void copyAddress(shell)}>
                {t.link}
              </button>
              <FewerRows />
            </div>
          </Match>
          <Match when={tryParts()}>{(parts) => <Dynamic component={parts().TryBox} />}</Match>
        </Switch>
      </div>
      <CodePlace />
    </section>
  );
}

function FewerRows() {
  const shell = useShell();
  return (
    <button type="button" class="fewer-rows" aria-keyshortcuts={texts.start.rowsKey} onClick={() => shell.rows.calm()}>
      {texts.start.fewer}{' '}
      <span class="key-hint" aria-hidden="true">
        {texts.start.rowsKey}
      </span>
    </button>
  );
}

/** The address follows the rows. */
async function copyAddress(shell: ReturnType<typeof useShell>): Promise<void> {
  const text = await navigator.clipboard.writeText(location.href).then(
    () => t.copied,
    () => t.notCopied,
  );
  shell.notify({ text });
}
