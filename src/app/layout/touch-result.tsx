/** The result on tablet and phone: the sentence, the answer under it with what can be asked, and where a skill is typed. */
import { type JSX, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { FixButton } from '../../features/fix/fix-button.tsx';
import { useChangeAnswer } from '../change-answer.ts';
import { useDocument } from '../page.ts';
import { clausesOf, speakVerdict } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { texts } from '../words.ts';
import { AnswerLine } from './answer-line.tsx';
import { CodePlace } from './code-line.tsx';
import { LegPick } from './leg-pick.tsx';
import { Computing, Sentence, useFirstQuestionParts, useIsLate } from './sentence.tsx';
import { SIZE, useTwoLines } from './two-lines.ts';

export function TouchSentence() {
  const isLate = useIsLate();
  return (
    <>
      <Sentence isLate={isLate()} />
      <Computing isLate={isLate()} />
    </>
  );
}

/** px: a clause is pressed by a finger, which has more than the line where many lines are close */
const LEAST_LINE = 24;
const CLOSE_LINE = 17;

/** As large as two lines of `room` px allow. `least`: px that are its own whatever is said. */
export function FittedSentence(props: { room: number; least: number }) {
  const whole = useWholeState();
  const size = useTwoLines(
    () => clausesOf(whole.verdict()),
    () => props.room,
    useDocument().isHeld,
  );
  const isClose = (): boolean => size() === SIZE.close;
  return (
    <div
      class="fitted"
      classList={{ close: isClose() }}
      style={{
        '--fs-sentence': `${size()}px`,
        '--lh-sentence': `${isClose() ? CLOSE_LINE : Math.max(LEAST_LINE, Math.ceil(size() * 1.28))}px`,
        '--least-sentence': `${props.least}px`,
      }}
    >
      <TouchSentence />
    </div>
  );
}

/** `children`: a button beside what can be asked. */
export function TouchAnswer(props: { children?: JSX.Element }) {
  useChangeAnswer();
  const { before } = useWholeState();
  const first = useFirstQuestionParts();
  return (
    <>
      <AnswerLine>
        {/* in the answer's place: what is under a hand at work does not move */}
        <Show when={before()}>
          {(was) => (
            <p class="was over-answer">
              {texts.sentence.beforeDrag} {speakVerdict(was())}
            </p>
          )}
        </Show>
        <Show when={first()}>{(parts) => <Dynamic component={parts().FirstQuestion} />}</Show>
        <FixButton />
        {props.children}
      </AnswerLine>
      <Show when={first()}>{(parts) => <Dynamic component={parts().OtherEnding} />}</Show>
      <LegPick />
      <CodePlace />
    </>
  );
}
