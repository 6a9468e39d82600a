/** The right of a row: hatched while the answer is open, then what the model gives and how the answer compares. */
import { Match, Show, Switch } from 'solid-js';
import type { KeyValue, Question } from '../../../sim/index.ts';
import { wordTimes } from '../../../sim/words/class-words.ts';
import type { AnswerWork } from './answer-state.ts';
import { answerTexts as t } from './answer-words.ts';
import { isSameToThird, ratioPlace } from './ratio.ts';

type FoundKey = Extract<KeyValue, { value: number }>;

export function AnswerCells(props: { work: AnswerWork; index: number; question: Question; isNow: boolean }) {
  const n = (): number => props.index + 1;
  const isWords = (): boolean => props.question.kind === 'words';
  const closed = (): string => {
    if (props.work.worksheet().order === 'together') return t.closedTogether;
    if (isWords()) return t.opensModel(n());
    return props.isNow ? t.opens(n()) : t.closed(n());
  };
  const key = (): KeyValue | undefined => props.work.numbers()?.simulated[props.index];
  const found = (): FoundKey | undefined => {
    const now = key();
    return now && 'value' in now ? now : undefined;
  };
  const reason = (): string => {
    const now = key();
    return now && 'missing' in now ? t.noneSimulated(now.missing) : t.computing;
  };
  return (
    <Show
      when={props.work.isOpen(props.index)}
      fallback={
        <div class="pupil-closed">
          <span>{closed()}</span>
        </div>
      }
    >
      <Switch
        fallback={
          <div class="pupil-simulated pupil-wide" role="status">
            <span class="quiet">{reason()}</span>
          </div>
        }
      >
        <Match when={props.question.kind === 'words' && props.question}>
          {(question) => (
            <div class="pupil-shows pupil-wide">
              <h3>{t.model}</h3>
              <p>{question().shows ?? '–'}</p>
            </div>
          )}
        </Match>
        <Match when={found()}>
          {(now) => (
            <>
              <div class="pupil-simulated">
                <h3 class="narrow-head">{t.columns.simulated}</h3>
                <b class="pupil-number">{now().figures}</b> <span class="unit">{now().unit.name}</span>
              </div>
              <Ratio work={props.work} index={props.index} simulated={now()} />
            </>
          )}
        </Match>
      </Switch>
    </Show>
  );
}

/** px */
const LINE = 64;

function Ratio(props: { work: AnswerWork; index: number; simulated: FoundKey }) {
  const value = (): number | undefined => {
    const read = props.work.numbers()?.answers[props.index];
    return read && 'answer' in read ? read.answer.value : undefined;
  };
  const ratio = (): number | undefined => {
    const given = value();
    return given === undefined || props.simulated.value === 0 ? undefined : given / props.simulated.value;
  };
  const isSame = (): boolean => isSameToThird(value() ?? Number.NaN, props.simulated.value);
  return (
    <div class="pupil-ratio">
      <h3 class="narrow-head">{t.columns.ratio}</h3>
      <Show when={ratio()}>
        {(r) => (
          <>
            <svg width="12" height={LINE} viewBox={`0 0 12 ${LINE}`} role="img" aria-label={t.onLine(r().toFixed(2))}>
              <line class="part" x1="6" x2="6" y1="0" y2={LINE} />
              <line class="equal" x1="1" x2="11" y1={LINE / 2} y2={LINE / 2} />
              <Show when={ratioPlace(r())}>
                {(at) => <rect class="mark" x="4" y={at().share * (LINE - 18)} width="4" height="18" />}
              </Show>
            </svg>
            <p>
              <b>{isSame() ? '1.00' : wordTimes(r())}</b>
              <Show when={isSame()}>
                <span class="quiet">{t.same}</span>
              </Show>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
