/** The answer of a solve for people. */
import {
  type Answer,
  type Body,
  findResult,
  HELD_WORDS,
  type JointShare,
  LIMIT_WORDS,
  MET_WORDS,
  MOST_TIMES,
  OUT_UNITS,
  type SearchProblem,
  type ShareAfter,
  type Solution,
  shareOfHits,
  wordAngle,
  wordTouching,
  wordVerdict,
} from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import { formatTable } from './table.ts';

/** What is found, under the errors of another seed; or why it could not be tried. */
export type TriedAgain = ShareAfter | { readonly fault: string };

/** Moves in search of a wider margin, and what the answer before and after forgives under the errors of another seed. */
export interface ForgivingNote {
  readonly rounds: number;
  /** met the target again, and were kept */
  readonly met: number;
  readonly kept: number;
  readonly before: TriedAgain;
  readonly after: TriedAgain;
  readonly seed: number;
}

/** How margins were made. */
interface MarginNote {
  readonly tries: number;
  readonly balance: string;
}

export function formatAnswer(problem: SearchProblem, answer: Answer, body: Body, margin: MarginNote): string {
  const head = `${problem.spec.title}: ${wordFound(answer)} (${answer.fits} ${answer.fits === 1 ? 'fit' : 'fits'}, ${answer.flights} flights, seed ${answer.seed})${wordLeftOut(problem, answer, '\n')}`;
  const list = answer.nearest ? [answer.nearest] : answer.solutions;
  const labels = answer.nearest ? ['nearest'] : list.map((_, i) => String(i + 1));
  const parts = [head];
  if (list.length > 0) {
    parts.push('', 'What changes', formatValues(problem, list, labels));
    parts.push('', 'What comes of it', formatTerms(problem, list, labels));
    parts.push(
      '',
      ...list.map(
        (s, i) => `  ${labels[i]}  ${s.held === false && !answer.nearest ? 'not held: ' : ''}${wordVerdict(s.verdict)}`,
      ),
      ...(answer.nearest ? [] : [`  ${problem.ending === 'held' && !problem.spec.catch ? HELD_WORDS : MET_WORDS}`]),
    );
    parts.push('', 'What it costs', formatCosts(list, labels, body, margin));
  }
  if (answer.nearest)
    parts.push(
      '',
      'What prevents it',
      ...answer.nearest.obstacles.map((o) => `  ${wordObstacle(o, problem.spec.catch !== undefined)}`),
    );
  return parts.join('\n');
}

export const wordNothingFlown = (problem: SearchProblem, answer: Answer): string =>
  answer.notKept > 0
    ? `solve: nothing that was found could be flown again as it would be written, so nothing is written${wordLeftOut(problem, answer, '; ')}`
    : `solve: no flight could be flown within the spans, so nothing is written${wordLeftOut(problem, answer, ': ')}`;

function wordLeftOut(problem: SearchProblem, answer: Answer, before: string): string {
  const { notKept, solutions, nearest } = answer;
  const lines = wordUnflown(problem, answer);
  const touching = wordTouching(answer.touching, solutions.length > 0);
  if (touching) lines.push(`${touching}, and ${answer.touching.length === 1 ? 'is' : 'are'} refused`);
  if (notKept > 0 && (solutions.length > 0 || nearest))
    lines.push(
      notKept === 1
        ? '1 answer that was found could not be flown again as it would be written, and is left out'
        : `${notKept} answers that were found could not be flown again as they would be written, and are left out`,
    );
  return lines.map((line) => before + line).join('');
}

/** Fits that were asked for and not done, for want of starts that fly. */
function wordUnflown(
  { fits: asked = 8, answers = 3 }: SearchProblem,
  { fits, draws, unflown, solutions }: Answer,
): string[] {
  if (unflown === 0) return [];
  const few = fits < asked && solutions.length < answers ? `; ${asked} fits were asked for` : '';
  return [`${unflown} of ${draws + 1} starts could not be flown${few}`];
}

const wordFound = ({ solutions, nearest }: Answer): string =>
  solutions.length === 1
    ? 'one answer'
    : solutions.length > 1
      ? `${solutions.length} answers${wordNotHeld(solutions.filter((s) => s.held === false).length)}`
      : nearest
        ? 'nothing found that meets the target; the nearest'
        : 'no flight';

const wordNotHeld = (n: number): string => (n === 0 ? '' : `, ${n} of them not held`);

/** Five significant digits are felt by no one. */
const show = (x: number): string => (Number.isFinite(x) ? String(Number(x.toPrecision(5))) : 'not defined');

function formatValues({ unknowns }: SearchProblem, list: readonly Solution[], labels: readonly string[]): string {
  return formatTable(
    ['', 'unit', 'now', ...labels, 'span'],
    unknowns.map(({ input, from, to }, j) => {
      const { word, scale } = OUT_UNITS[input.unit];
      return [
        `${input.label} (${input.id})`,
        word,
        show(input.value * scale),
        ...list.map((s) => show(s.values[j] * scale)),
        `${show(from * scale)} to ${show(to * scale)}`,
      ];
    }),
    2,
  );
}

function formatTerms({ wishes }: SearchProblem, list: readonly Solution[], labels: readonly string[]): string {
  return formatTable(
    ['', 'unit', 'wanted', 'within', ...labels],
    wishes.map((wish, i) => {
      const result = findResult(wish.result);
      const { word, scale } = OUT_UNITS[result.unit];
      return [
        result.label,
        word,
        show(wish.value * scale),
        show(wish.tolerance * scale),
        ...list.map((s) => `${round(s.terms[i].value * scale)}${s.terms[i].met ? '' : ' !'}`),
      ];
    }),
    2,
  );
}

const round = (x: number): string => (Number.isFinite(x) ? String(Math.round(x * 1000) / 1000 + 0) : 'not defined');

const percent = (x: number): string => `${(100 * x).toFixed(1)} %`;
const wordShare = ({ share, interval, n }: ShareAfter): string =>
  `${percent(share)} of ${n} tries (${percent(interval[0])} to ${percent(interval[1])})`;
const wordTried = (tried: TriedAgain): string =>
  'fault' in tried ? `no share, since it could not be computed (${tried.fault}),` : wordShare(tried);

export function wordForgiving({ rounds, met, kept, before, after, seed }: ForgivingNote): string {
  return [
    '',
    `The most forgiving: ${rounds} moves, ${met} met the target again, ${kept} kept`,
    `  with the errors of seed ${seed}: ${wordTried(after)} in the window; before the moves ${wordTried(before)}`,
  ].join('\n');
}

function formatCosts(
  list: readonly Solution[],
  labels: readonly string[],
  body: Body,
  { tries, balance }: MarginNote,
): string {
  const young = list.find(({ cost }) => cost.notCompared)?.cost.notCompared;
  const joint = (peak: JointShare | undefined, unit: string, scale = 1): string =>
    peak
      ? `${wordAngle(body, body.angles[peak.angle])} ${show(Math.abs(peak.value) * scale)} ${unit}, ${wordJointShare(peak)}`
      : young
        ? 'not compared at this age'
        : 'none';
  const sources = list.flatMap(({ cost }) => [cost.speed?.source, cost.torque?.source].filter((s) => s !== undefined));
  const lines = list.map(({ cost }, i) => {
    const margin =
      cost.marginFault !== undefined
        ? `; margin could not be computed (${cost.marginFault})`
        : cost.margin === undefined
          ? ''
          : `; margin ${wordShare(shareOfHits(Math.round(cost.margin * tries), tries))}`;
    const n = cost.cautions.length;
    const beyond = n === 0 ? '' : n === 1 ? '; 1 joint value beyond a limit' : `; ${n} joint values beyond a limit`;
    return `  ${labels[i]}: momentum ${show(cost.momentum)} kg·m²/s; fastest ${joint(cost.speed, 'deg/s', DEG)}; strongest ${joint(cost.torque, 'N·m')}${beyond}${margin}`;
  });
  return [
    ...lines,
    ...(tries > 0
      ? [`  margin: share of ${tries} tries with the usual errors that land in the usual window; ${balance}`]
      : []),
    ...[...new Set(sources)].map((s) => `  known from: ${s}`),
    ...(young ? [`  ${young.title} ${young.detail}`] : [`  ${LIMIT_WORDS}`]),
  ].join('\n');
}

/** Where next to no strength is known at the speed of a move, the speed is said. */
function wordJointShare({ share, beyond }: JointShare): string {
  if (!beyond) return `${Math.round(100 * share)} % of its limit`;
  return beyond === 'over'
    ? `more than ${MOST_TIMES} times the strength known`
    : `at ${(beyond.rate * DEG).toFixed(0)} deg/s, where next to no strength is known`;
}

function wordObstacle(o: NonNullable<Answer['nearest']>['obstacles'][number], isToRail: boolean): string {
  if (o.kind === 'wish') {
    const { wish, value } = o.term;
    const { label, unit } = findResult(wish.result);
    const { word, scale } = OUT_UNITS[unit];
    return `${label}: ${round(value * scale)} ${word} reached, ${show(wish.value * scale)} wanted`;
  }
  if (o.kind === 'ending') return isToRail ? 'the rail would not be caught' : 'the landing would not be held';
  if (o.kind === 'touch') return `it would touch the ${o.solid}`;
  if (o.kind === 'limit')
    return o.limit === 'late'
      ? 'the last shape would not be reached before touchdown'
      : `joint ${o.limit} limits that had to hold are passed`;
  const { input } = o.unknown;
  const { word, scale } = OUT_UNITS[input.unit];
  return `${input.label} is at its ${o.side === 'low' ? 'lower' : 'upper'} bound, ${show(o.value * scale)} ${word}: ${o.source}`;
}
