/** What is drawn and written in a moving picture, from the flight of the page and what is ticked. */
import { calcCutNumbers } from '../../app/cut-values.ts';
import { calcPlace } from '../../app/plot/readout.ts';
import { speakVerdict } from '../../app/say/sentence-words.ts';
import { wholeStateOf } from '../../app/whole-state.ts';
import { texts } from '../../app/words.ts';
import type { MovingOrder, MovingRequest } from '../../moving-picture/moving-input.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, unitSystem } from '../../ui/units.ts';
import { type MovingState, SIZES } from './moving-state.ts';
import { movingTexts as t } from './moving-words.ts';
import type { HandState } from './way.ts';

const titleOf = ({ page, along }: HandState): string => {
  const title = page.flight.result().file.title || texts.untitled;
  const { name } = page.doc.athlete();
  return along().name && name ? t.byName(title, name) : title;
};
const resultOf = ({ page }: HandState): string => speakVerdict(wholeStateOf(page).verdict());

export function requestOf(hand: HandState, moving: MovingState): MovingRequest {
  const result = hand.page.flight.result();
  const { view, slower, size, hasHeadline, hasNumbers } = moving.wish();
  const { name, mass } = hand.along();
  const [from, to] = moving.span();
  return {
    result,
    view,
    size: SIZES[size],
    from,
    to,
    slower: Number(slower),
    words: {
      title: hasHeadline || name ? titleOf(hand) : '',
      headline: hasHeadline ? resultOf(hand) : '',
      speed: t.speedSaid(t.speeds[slower]),
      caution: texts.standingCaution,
      seconds: (s) => t.seconds(formatNumber(s, 2)),
    },
    marks: unitSystem().lengthMarks,
    ...(hasNumbers ? { numbers: numbersOf(result, mass) } : {}),
  };
}

/** Momentum and energy tell the mass: they go with it. */
function numbersOf({ frames }: MovingRequest['result'], hasMass: boolean): NonNullable<MovingRequest['numbers']> {
  return (s) => {
    const n = calcCutNumbers(frames, calcPlace(frames, s));
    const value = (text: string, v: number): string => (Number.isFinite(v) ? text : formatNumber(Number.NaN, 0));
    return [
      { name: t.twist, value: value(say('rate', n.twistRate), n.twistRate) },
      { name: t.somersault, value: value(say('rate', n.somersaultRate), n.somersaultRate) },
      ...(hasMass
        ? [
            { name: t.momentum, value: say('momentum', n.momentum) },
            { name: t.energy, value: say('energy', n.energy) },
          ]
        : []),
    ];
  };
}

/** What was done, for the file. */
export function callOf({ view, slower, from, to, size }: MovingRequest): string {
  const span = [from, to].map((s) => s.toFixed(3)).join(' to ');
  return `page: moving picture, ${view}, 1/${slower} speed, ${span} s, ${size.width} x ${size.height}`;
}

export const tagsOf = (hand: HandState): MovingOrder['tags'] => ({
  title: titleOf(hand),
  description: resultOf(hand),
  comment: texts.standingCaution,
});
