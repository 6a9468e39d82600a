/** The three numbers of the first rows, each with what it is against take-off, or against the marked moment. */
import { For, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { formatNumber } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, unitOf } from '../../ui/units.ts';
import type { AgainstTakeoff, FirstRows } from '../first-rows.ts';
import { type FirstStoryState, useFirstRows } from '../first-story.ts';
import { type ChangeWords, firstTexts, wordMoment, wordRate, wordTilt } from '../first-words.ts';
import { useBesideParts } from './late-beside.ts';
import { touchTexts as t } from './touch-words.ts';

interface FirstNumber {
  readonly id: 'rate' | 'spread' | 'momentum';
  readonly title: string;
  readonly hue: 'twist' | 'som' | 'tilt' | 'ink';
  readonly text: string;
  readonly unit: string;
  readonly words: ChangeWords;
}

interface Written {
  readonly text: string;
  readonly unit: string;
}

const write = (quantity: QuantityKind, value: number, decimals: number): Written => ({
  text: sayNumber(quantity, value, decimals),
  unit: unitOf(quantity),
});
const writeTilt = (degrees: number): Written => ({ text: `${formatNumber(degrees, 1)}°`, unit: '' });

export function listFirstNumbers(rows: FirstRows, marked?: FirstRows): FirstNumber[] {
  const isTwist = rows.kind === 'twisting' || rows.axis === 'long';
  const at = (one: AgainstTakeoff | undefined, put: (v: number) => Written): ChangeWords | undefined =>
    one && { lead: put(one.now).text, rest: t.atMark };
  const rate = (v: number): Written => write('rate', v, 2);
  const momentum = (v: number): Written => write('momentum', v, Math.abs(v) < 10 ? 2 : 1);
  const moment = (v: number): Written => write('moment', v, 2);
  const spread: Omit<FirstNumber, 'id'> =
    rows.kind === 'twisting'
      ? {
          title: firstTexts.tilt,
          hue: 'tilt',
          ...writeTilt(rows.tilt.now),
          words:
            at(marked?.kind === 'twisting' ? marked.tilt : undefined, writeTilt) ??
            wordTilt(rows.tilt.change, rows.tilt),
        }
      : {
          title: t.spread,
          hue: isTwist ? 'twist' : 'som',
          ...moment(rows.moment.now),
          words: at(marked?.kind === 'oneAxis' ? marked.moment : undefined, moment) ?? wordMoment(rows.moment.change),
        };
  return [
    {
      id: 'rate',
      title: isTwist ? firstTexts.twistRate : firstTexts.somersaultRate,
      hue: isTwist ? 'twist' : 'som',
      ...rate(rows.rate.now),
      words: at(marked?.rate, rate) ?? wordRate(rows.rate.change, rows.rate),
    },
    { id: 'spread', ...spread },
    {
      id: 'momentum',
      title: firstTexts.momentum,
      hue: 'ink',
      ...momentum(rows.momentum.now),
      words: at(marked?.momentum, momentum) ?? wordMoment(rows.momentum.change),
    },
  ];
}

/** Said of most numbers: where room is short it is not seen. */
const isPlain = ({ rest }: ChangeWords): boolean =>
  rest === firstTexts.than || rest === firstTexts.as || rest === firstTexts.at;

export function FirstNumbers(props: { story?: FirstStoryState }) {
  const shared = useFirstRows();
  const two = useBesideParts();
  const own = (): FirstStoryState => props.story ?? shared;
  const numbers = (): FirstNumber[] => listFirstNumbers(own().rows(), own().marked());
  return (
    <section class="first-numbers" aria-label={t.numbers}>
      <Show when={two()} fallback={<OwnNumbers numbers={numbers()} />}>
        {(parts) => <Dynamic component={parts().BesideList} beside={parts().beside} />}
      </Show>
    </section>
  );
}

function OwnNumbers(props: { numbers: readonly FirstNumber[] }) {
  return (
    <For each={[0, 1, 2]}>
      {(i) => {
        const one = (): FirstNumber => props.numbers[i];
        return (
          <p class={`number-line ${one().hue}`} data-number={one().id}>
            <span class="number-value">
              <span class="spoken">{one().title}: </span>
              <b>{one().text}</b>
              <span class="unit">{one().unit}</span>
            </span>{' '}
            <Show when={one().words.lead}>
              <span class="number-words">
                <b>{one().words.lead}</b>{' '}
                <span class="number-rest" classList={{ plain: isPlain(one().words) }}>
                  {one().words.rest}
                </span>
              </span>
            </Show>
          </p>
        );
      }}
    </For>
  );
}
