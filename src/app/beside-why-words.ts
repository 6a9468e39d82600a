/** Two ways beside each other: why one turns so many times as fast, where the moments say another number. */
import { DEG } from '../../sim/math/angles.ts';
import { formatNumber } from '../ui/numbers.ts';
import { say, sayNumber } from '../ui/units.ts';
import type { Beside } from './beside.ts';
import { type BesideRows, type BesideTurn, type RatioParts, splitRatio } from './beside-numbers.ts';
import { wordTimes } from './first-words.ts';

const t = {
  why: (one: string, other: string) => `Why ${one}, not ${other}?`,
  causes: {
    momentum: (more: string, a: string, b: string, of: string) =>
      `${more} of the angular momentum is about the ${of} axis in A, ${a} against ${b}`,
    tilt: (more: string, a: string, b: string) => `, as the body is tilted ${more} (${a} against ${b})`,
    more: ['More', 'Less'],
    tilted: ['more', 'less'],
    share: (a: string, ofA: string, b: string, ofB: string, letter: string) =>
      `Part of the spin about the long axis is the somersault of a tilted body, ${a} of ${ofA} in A and ${b} of ${ofB} in ${letter}: only the rest is twist.`,
    against: (a: string, b: string, letter: string) =>
      `The somersault of a tilted body turns it back about its long axis, by ${a} in A and ${b} in ${letter}: the twist is faster than the spin by that.`,
    carried: {
      twist: (a: string, b: string, letter: string) =>
        `Moving limbs and a lopsided shape carry ${a} about the long axis in A and ${b} in ${letter}: the rest turns the body as a whole.`,
      somersault: (a: string, b: string, letter: string) =>
        `Moving limbs carry ${a} about the lateral axis in A and ${b} in ${letter}: the rest turns the body as a whole.`,
    },
    axes: { twist: 'long', somersault: 'lateral' },
    across: (a: string, b: string, letter: string) =>
      `This is the moment about the axis from side to side, but the twist has turned another axis to where the somersault goes: about that one it is ${a} in A and ${b} in ${letter}.`,
    mean: (now: string, mean: string, from: string, to: string) =>
      `${now} is at this instant: the ${mean} above is the mean while both shapes are held, ${from} to ${to} s.`,
  },
} as const;

interface WhyWords {
  readonly ask: string;
  readonly sentences: readonly string[];
}

/** Two ratios nearer than this share are not asked about. */
const WORTH = 0.06;
/** Of what is between two ratios, at most so much stays unsaid. */
const LEFT_OPEN = 1 / 3;
/** Of a somersault: spin and rate differ by more than this share where the twist has turned the axes. */
const TURNED = 0.03;
/** rad: two tilts differ as their momenta do within this */
const SAME_TILT = 1 / DEG;

const apart = (one: number, other: number): number => Math.abs(Math.log(one / other));

/** What is asked where two of the numbers that are seen are not the same, and its answer; undefined where they are, or where it has none that is true. */
export function wordWhy(rows: BesideRows, beside: Beside): WhyWords | undefined {
  const { rate } = rows;
  const parts = splitRatio(rows);
  if (!parts || (rate.kind !== 'more' && rate.kind !== 'less')) return undefined;
  const now = wordTimes(rate.times);
  const moments = rate.kind === 'more' ? parts.moments : 1 / parts.moments;
  const causes =
    wordTimes(moments) !== now && apart(rate.times, moments) > WORTH ? wordCauses(rows, parts, beside) : [];
  const mean = beside.ratio === undefined || apart(rate.times, beside.ratio) < WORTH ? now : wordTimes(beside.ratio);
  const [from, to] = [beside.held.from, beside.held.to].map((s) => formatNumber(s, 2));
  const said = mean === now ? [] : [t.causes.mean(now, mean, from, to)];
  const sentences = [...causes, ...said];
  if (sentences.length === 0) return undefined;
  return { ask: t.why(now, causes.length > 0 ? wordTimes(moments) : mean), sentences };
}

function wordCauses(rows: BesideRows, parts: RatioParts, { turn, letter }: Beside): string[] {
  const { own, other } = rows;
  const isTurned = turn === 'somersault' && apart(parts.share, 1) > TURNED;
  if (isTurned) {
    const across = other.across / own.across;
    if (apart(parts.rates, across) > apart(parts.rates, parts.moments) * LEFT_OPEN) return [];
    return [t.causes.across(say('moment', own.across, 1), sayNumber('moment', other.across, 1), letter)];
  }
  const words = {
    momentum: () => wordMomentum(rows, turn),
    carried: () => {
      const [a, b] = [say('momentum', own.carried), sayNumber('momentum', other.carried)];
      return t.causes.carried[turn](a, b, letter);
    },
    share: () => wordShare(rows, letter),
  };
  return findCauses(parts).map((key) => words[key]());
}

type Cause = 'momentum' | 'carried' | 'share';
const CAUSES: readonly (readonly Cause[])[] = [
  ['momentum'],
  ['carried'],
  ['share'],
  ['momentum', 'carried'],
  ['momentum', 'share'],
  ['carried', 'share'],
  ['momentum', 'carried', 'share'],
];

/** As few as bring the ratio of the moments near enough to that of the rates; the largest first. */
function findCauses(parts: RatioParts): Cause[] {
  const left = (some: readonly Cause[]): number =>
    apart(
      some.reduce((product, key) => product * parts[key], parts.moments),
      parts.rates,
    );
  const enough = CAUSES.filter((some) => left(some) <= left([]) * LEFT_OPEN);
  const fewest = enough.filter(({ length }) => length === enough[0].length).sort((a, b) => left(a) - left(b));
  return [...(fewest[0] ?? [])].sort((a, b) => apart(parts[b], 1) - apart(parts[a], 1));
}

function wordMomentum({ own, other }: BesideRows, turn: BesideTurn): string {
  const [more, tilted] = [t.causes.more, t.causes.tilted].map((two) => two[own.about > other.about ? 0 : 1]);
  const text = t.causes.momentum(
    more,
    sayNumber('momentum', own.about),
    say('momentum', other.about),
    t.causes.axes[turn],
  );
  // the momentum itself may lean a little, and then both tilts are off by the same
  const by = ({ about, momentum }: typeof own): number => Math.asin(Math.min(1, about / momentum));
  const isTilt = Math.abs(by(own) - by(other) - (own.tilt - other.tilt) / DEG) < SAME_TILT;
  const [a, b] = [own, other].map(({ tilt }) => `${formatNumber(tilt, 0)}°`);
  return `${text}${turn === 'twist' && isTilt && a !== b ? t.causes.tilt(tilted, a, b) : ''}.`;
}

function wordShare({ own, other }: BesideRows, letter: string): string {
  const rate = (v: number): string => sayNumber('rate', Math.abs(v));
  if (own.share < 0) return t.causes.against(say('rate', -own.share), rate(other.share), letter);
  return t.causes.share(rate(own.share), say('rate', own.spin), rate(other.share), rate(other.spin), letter);
}
