/** The line under the headline: the answer to what was asked or done, and what can be done with it. Spoken politely. */
import { For, type JSX, Show } from 'solid-js';
import { useShell } from '../page.ts';

/** Letters of which one line has room beside what can be pressed; a longer answer is smaller, in two or three. */
const LONG = 80;
/** Of more, the first question gives its room to it where there is a way back to press too; */
const LONGER = 110;
/** and more than these are smaller still. */
const LONGEST = 170;

/** `children`: what is asked, and choices that belong to the answer. */
export function AnswerLine(props: { children?: JSX.Element }) {
  const shell = useShell();
  const said = () => shell.answer.said();
  const shown = () => said() ?? shell.answer.opening();
  const letters = (): number => (shown()?.lead.length ?? 0) + (shown()?.rest.length ?? 0);
  const isDone = (): boolean => said() !== undefined && said()?.from !== 'comparison';
  return (
    <div class="answer-line">
      <p
        class="answer-said"
        classList={{
          long: letters() > LONG,
          longer: isDone() && letters() > LONGER,
          longest: letters() > LONGEST,
          done: isDone(),
          awaited: shell.answer.isAwaited(),
        }}
        role="status"
        data-testid="answer"
      >
        <Show when={shown()}>
          {(answer) => (
            <>
              <b>{answer().lead}</b> {answer().rest}
            </>
          )}
        </Show>
      </p>
      <For each={said()?.act}>
        {(act) => (
          <button type="button" class="act" onClick={() => act.run()}>
            {act.label}
          </button>
        )}
      </For>
      {props.children}
    </div>
  );
}
