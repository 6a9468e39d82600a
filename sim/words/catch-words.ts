/** A catch in words: one sentence, what is not computed, the ends of its window; and its lines for the command line. Ready for translation. */
import type { CatchResult, CatchUncomputed } from '../skill/catch.ts';
import type { CatchWindow } from '../skill/catch-window.ts';
import type { CatchOutcome } from '../skill/find-catch.ts';
import { wordAsymmetry } from './basis-words.ts';
import { HANDS_WORDS, WAY_WORDS, wordRail } from './rail-words.ts';
import { type NumberWords, PLAIN_NUMBERS } from './verdict-words.ts';

/** Where the asked speed is from. */
const CLOSING_SOURCE = '1.5 to 2 m/s, from memory';

/** "under 1 cm", "3 cm", "0.37 m" */
export function wordGap(m: number, n: NumberWords = PLAIN_NUMBERS): string {
  if (m < 0.01) return `under ${n.centimetres(0.01)}`;
  return m < 0.095 ? n.centimetres(m) : `${m.toFixed(2)} m`;
}

/** On the line from shoulder to rail. */
const alongWords = (along: number, n: NumberWords): string =>
  `${along >= 0 ? 'closing' : 'drawing away'} at ${n.speed(Math.abs(along))}`;

/** "Catches the high rail with both hands after 0.59 s; closing at 0.8 m/s" */
export function wordCatch(
  { spec, outcome }: Pick<CatchResult, 'spec' | 'outcome'>,
  n: NumberWords = PLAIN_NUMBERS,
): string {
  const rail = wordRail(spec.rail);
  const { moment } = outcome;
  switch (outcome.kind) {
    case 'caught':
      return `${moment.toward < 0 ? `Hands meet ${rail}` : `Catches ${rail} with ${HANDS_WORDS[spec.hands]}`} after ${n.seconds(moment.t)}; ${alongWords(moment.along, n)}, ${n.speed(moment.across)} across the arms`;
    case 'tooFast':
      return `Misses ${rail}: ${wordFailing(outcome, spec, n)}`;
    case 'missed':
      return `Misses ${rail} by ${wordGap(moment.gap, n)}: ${wordFailing(outcome, spec, n)}`;
  }
}

/** What fails: "short of it", "over it, and past", "too fast: drawing away at 2.6 m/s, at most 2.0 m/s asked". Nothing fails of a catch. */
export function wordFailing(
  outcome: CatchOutcome,
  { closing }: Pick<CatchResult['spec'], 'closing'>,
  n: NumberWords = PLAIN_NUMBERS,
): string {
  if (outcome.kind === 'caught') return '';
  if (outcome.kind === 'tooFast')
    return `too fast, ${alongWords(outcome.moment.along, n)} along the arms where ${n.speed(closing)} is the most asked`;
  const [first = 'short', second] = outcome.ways;
  const where = second ? `${WAY_WORDS[first]}, and ${WAY_WORDS[second].replace(/ (of )?it$/, '')}` : WAY_WORDS[first];
  return outcome.only ? `the ${outcome.moment.farther} hand ${where}, the ${outcome.only} one is there` : where;
}

/** "7 ms early: short of it" */
export function wordWindowEnds(window: CatchWindow, spec: Pick<CatchResult['spec'], 'closing'>): string[] {
  const { span, ends } = window;
  if (!span) return [];
  return [span.from, span.to].flatMap((late, i) => {
    const end = ends[i];
    if (!end) return [];
    const ms = (1000 * Math.abs(late)).toFixed(0);
    return [`${ms} ms ${late < 0 ? 'early' : 'late'}: ${wordFailing(end, spec)}`];
  });
}

/** Why force and swing are not computed. */
export function wordUncomputed(why: CatchUncomputed, n: NumberWords = PLAIN_NUMBERS): string {
  switch (why.kind) {
    case 'oneHand':
      return 'the swing is computed of two hands alike';
    case 'wide':
      return 'the hands hold the rail too far apart for a swing in one plane';
    case 'apart':
      return 'the swing is of a body in one plane, and the legs are apart';
    case 'noMoves':
      return 'what the joints do after the catch is not stated';
    case 'asymmetry':
      return `the swing is flat and both sides alike: ${why.asymmetry.map((a) => wordAsymmetry(a, n)).join('; ')}`;
  }
}

/** Lines for the command line, each with a word for what it is about. */
export function formatCatch(result: CatchResult): string {
  const { spec, outcome, watch, caught, notComputed } = result;
  const n = PLAIN_NUMBERS;
  const { moment } = outcome;
  const lines: string[] = [];
  const row = (word: string, text: string): void => {
    lines.push(`${word.padEnd(11)}${text}`);
  };
  row('Catch', `${wordCatch(result)}.`);
  row(
    'Hands',
    `${wordGap(moment.left.distance)} left, ${wordGap(moment.right.distance)} right from ${wordRail(spec.rail)} at ${n.seconds(moment.t)}; a catch is asked within ${wordGap(spec.gap)} (a modelling choice)`,
  );
  row(
    '',
    `along the arms ${alongWords(moment.along, n)} (at most ${n.speed(spec.closing)} asked: ${CLOSING_SOURCE}), across them ${n.speed(moment.across)}; mass centre ${moment.toward >= 0 ? 'towards' : 'away from'} the rail at ${n.speed(Math.abs(moment.toward))}`,
  );
  if (outcome.kind === 'missed') row('', `within reach of the arms for ${(1000 * outcome.inReach).toFixed(0)} ms`);
  else
    row(
      '',
      `hands within ${wordGap(spec.gap)} of it for ${outcome.isOpen ? 'at least ' : ''}${(1000 * (outcome.within[1] - outcome.within[0])).toFixed(0)} ms`,
    );
  if (watch.seen) row('', wordSeen(watch.seen, moment.t, n));
  if (caught) {
    const { impact, energy, load } = caught;
    row(
      'Joining',
      `hands take the rail along with ${Math.hypot(...impact.impulse).toFixed(1)} N s, ${energy.lost.toFixed(1)} J are lost; then turning ${caught.turns} about the rail with ${caught.momentum.toFixed(0)} kg·m²/s`,
    );
    if (load)
      row(
        'Load',
        `${load.weights.toFixed(1)} body weights on the hands ${(1000 * load.t).toFixed(0)} ms after it (${load.range[0].toFixed(1)} to ${load.range[1].toFixed(1)} over arms of 10 to 20 kN/m and the rail 25 % either way: judgement and memory)`,
      );
  }
  if (notComputed)
    row('', `not computed: ${caught ? 'load' : 'force on the hands'} and swing: ${wordUncomputed(notComputed)}`);
  return `${lines.join('\n')}\n`;
}

/** "the rail can be seen from 0.40 s on" */
function wordSeen(seen: readonly (readonly [number, number])[], until: number, n: NumberWords = PLAIN_NUMBERS): string {
  const before = seen.filter(([from]) => from < until).map(([from, to]) => [from, Math.min(to, until)] as const);
  const spans = before.map(([from, to]) => `${n.seconds(from)} to ${n.seconds(to)}`);
  return spans.length === 0 ? 'the rail cannot be seen' : `the rail can be seen: ${spans.join(', ')}`;
}
