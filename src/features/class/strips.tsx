/** Over each question of numbers the ratios of the class; the line is what the flight gives. */
import { createMemo, For, Show } from 'solid-js';
import type { ClassColumn } from '../../../sim/index.ts';
import { wordGuesses } from '../../../sim/words/class-words.ts';
import { wordKey } from './class-say.ts';
import { calcStrip, STEPS } from './ratio-strip.ts';
import { tableTexts as t } from './table-words.ts';

/** units of the drawing: it is as wide as its column */
const DRAWN = { width: 160, height: 64, mark: 3.6, most: 4 } as const;
/** under this a stack has no gaps */
const SEEN = 1.7;
const xOf = (step: number): number => DRAWN.width / 2 + (step / STEPS) * (DRAWN.width / 2 - DRAWN.mark);

export function QuestionStrip(props: { column: ClassColumn; index: number }) {
  const strip = createMemo(() => calcStrip(props.column.ratios));
  const high = (): number => Math.min(DRAWN.most, DRAWN.height / Math.max(strip().highest, 1));
  const number = () => {
    const { question, key } = props.column;
    return question.kind === 'number' ? { question, key } : undefined;
  };
  return (
    <section class="class-strip" aria-label={t.sortQuestion(props.index + 1, props.column.question.ask)}>
      <h2 title={props.column.question.ask}>
        <span class="strip-no">{props.index + 1}</span>
        <span class="strip-ask">{props.column.question.ask}</span>
      </h2>
      <Show when={number()} fallback={<p class="quiet">{t.wordsHint}</p>}>
        {(asked) => (
          <Show
            when={props.column.compared > 0}
            fallback={
              <p class="quiet strip-none">
                {wordKey(asked().key) === t.noValue ? t.noValue : `${wordKey(asked().key)}; ${t.nobody}`}
              </p>
            }
          >
            <svg
              viewBox={`0 0 ${DRAWN.width} ${DRAWN.height + 6}`}
              preserveAspectRatio="none"
              role="img"
              aria-label={`${t.strip(props.index + 1, props.column.near, props.column.compared, wordKey(asked().key))}${t.stripEnds(strip().below, strip().above)}`}
            >
              <line class="strip-axis" x1="0" x2={DRAWN.width} y1={DRAWN.height + 0.5} y2={DRAWN.height + 0.5} />
              <For each={strip().stacks}>
                {({ step, count }) => (
                  <For each={high() >= SEEN ? Array.from({ length: count }, (_, i) => i) : [0]}>
                    {(i) => (
                      <rect
                        x={xOf(step) - DRAWN.mark / 2}
                        width={DRAWN.mark}
                        y={DRAWN.height - high() * (high() >= SEEN ? i + 1 : count)}
                        height={high() >= SEEN ? high() - Math.min(1, high() * 0.4) : high() * count}
                      />
                    )}
                  </For>
                )}
              </For>
              <line class="strip-one" x1={xOf(0)} x2={xOf(0)} y1="0" y2={DRAWN.height + 6} />
            </svg>
            <p class="strip-ends" aria-hidden="true">
              <span>{strip().below > 0 ? t.below(strip().below) : t.quarter}</span>
              <b>{wordKey(asked().key)}</b>
              <span>{strip().above > 0 ? t.above(strip().above) : t.four}</span>
            </p>
          </Show>
        )}
      </Show>
    </section>
  );
}

/** Guesses of all questions, with the question where there are several. */
export function Points(props: { columns: readonly ClassColumn[] }) {
  const lines = () =>
    props.columns.flatMap(({ guesses }, q) =>
      guesses.map(({ name, count }) => ({ q: q + 1, text: wordGuesses(count, name) })),
    );
  return (
    <Show when={lines().length > 0}>
      <section class="class-points" aria-label={t.points}>
        <h2>{t.points}</h2>
        <ul>
          <For each={lines()}>
            {(line) => (
              <li>
                <span class="quiet">{t.pointsOf(line.q)}</span> {line.text}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}
