/**
 * Cues offered for a card: what arms and body do and when, in a coach's words, read from the moves of the flight. Texts in one place, ready for translation.
 * Two lines of at most 25 letters each: what does not fit is left out whole.
 */
import type { ArmPlace, LegShape, LimbSpan, Posture } from '../measure/limb-moves.ts';

export interface Cue {
  /** s from take-off */
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** of the figure at its end, in a word or two */
  readonly reached: string;
}

interface CueFlight {
  readonly spans: readonly LimbSpan[];
  readonly duration: number;
  /** twist rate at an instant, rev/s */
  readonly twistRate: (t: number) => number;
  /** it comes down on the feet, on something that takes the knees */
  readonly isLanding: boolean;
}

export const CUE_LETTERS = 25;
const CUE_LINES = 2;

const ARM_WORDS: Readonly<Record<ArmPlace, string>> = {
  up: 'up',
  high: 'high',
  level: 'level',
  front: 'forward',
  low: 'low',
  down: 'down',
  in: 'in',
};
const LEG_WORDS: Readonly<
  Record<LegShape, { readonly into: string; readonly hold: string; readonly out: string; readonly reached: string }>
> = {
  tuck: { into: 'Tuck: knees to chest.', hold: 'Hold the tuck.', out: 'Open the tuck.', reached: 'tucked' },
  openTuck: { into: 'Open tuck.', hold: 'Hold the open tuck.', out: 'Open the tuck.', reached: 'open tuck' },
  pike: { into: 'Pike: legs straight.', hold: 'Hold the pike.', out: 'Open the pike.', reached: 'piked' },
  straddle: { into: 'Pike, legs apart.', hold: 'Hold the straddle.', out: 'Close the legs.', reached: 'legs apart' },
  split: { into: 'Split the legs.', hold: 'Hold the split.', out: 'Close the legs.', reached: 'split' },
  straight: { into: 'Open: body long.', hold: 'Long and still.', out: '', reached: 'straight' },
  bent: { into: '', hold: 'Hold the shape.', out: '', reached: 'bent' },
};
const words = {
  arms: (place: string) => `Arms ${place}.`,
  armsLed: (place: string, side: string) => `Arms ${place}, ${side} arm first.`,
  arm: (side: string, place: string) => `${side} arm ${place}.`,
  both: (side: string, place: string, other: string, otherPlace: string) =>
    `${side} arm ${place}, ${other} ${otherPlace}.`,
  stay: (place: string) => `Arms stay ${place}.`,
  asTheyAre: 'Arms stay as they are.',
  kneesSoft: 'Knees soft.',
  hipsBend: 'Hips bend to land.',
  twist: {
    starts: 'The twist starts.',
    stops: 'The twist stops.',
    slows: 'The twist slows.',
    quickens: 'The twist speeds up.',
  },
};

/** An arm has moved by this much, deg, or it is not spoken of. */
const ARM_MOVES = 25;
/** Straight to a coach's eye: hips and knees bent by less, deg. */
const LONG = 20;
/** A move counts as one of the skill's own from this share of the largest; a hold is spoken of from so long, s. */
const LARGE = 0.4;
const HELD = 0.08;
/** rev/s: under it there is no twist to speak of, over it there is; and the share that is left of one that slows (our judgement) */
const TWIST = { none: 0.15, some: 0.4, slower: 0.55 } as const;
/** The landing is prepared in the last of the flight, s. */
const LAST = 0.15;
const BENDS = { knee: 10, hip: 15, hipAt: 25 } as const;

export function offerCues(flight: CueFlight): Cue[] {
  return chooseSpans(flight.spans)
    .map((span) => ({
      from: span.from,
      to: span.to,
      text: joinFitting(span.kind === 'move' ? moveSentences(span, flight) : holdSentences(span)),
      reached: reachedWords(span),
    }))
    .filter(({ text }) => text !== '');
}

/** The lines of a cue: two where two hold it, broken after a sentence or where they are most alike; a word longer than a line stays whole. */
export function cueLines(text: string): string[] {
  const words = text.split(/\s+/).filter(Boolean);
  const whole = words.join(' ');
  if (whole.length <= CUE_LETTERS && !/[.;] /.test(whole)) return whole ? [whole] : [];
  const halves = words
    .slice(1)
    .map((_, i) => [words.slice(0, i + 1).join(' '), words.slice(i + 1).join(' ')])
    .filter((pair) => pair.every((line) => line.length <= CUE_LETTERS));
  const between = ([a, b]: string[]): number => Math.abs(a.length - b.length) - (/[.:;]$/.test(a) ? CUE_LETTERS : 0);
  if (halves.length > 0) return halves.reduce((best, pair) => (between(pair) < between(best) ? pair : best));
  if (whole.length <= CUE_LETTERS) return [whole];
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.length - 1;
    if (last >= 0 && `${lines[last]} ${word}`.length <= CUE_LETTERS) lines[last] += ` ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** Whether a cue, offered or written by hand, has place on a card. */
export const cueFits = (text: string): boolean => {
  const lines = cueLines(text);
  return lines.length <= CUE_LINES && lines.every((line) => line.length <= CUE_LETTERS);
};

function joinFitting(sentences: readonly string[]): string {
  let text = '';
  for (const sentence of sentences) {
    const longer = text ? `${text} ${sentence}` : sentence;
    if (cueFits(longer)) text = longer;
  }
  return text;
}

/** Three at most, in their order: into the shape, the shape, out of it; of a skill of more moves its three largest. */
function chooseSpans(spans: readonly LimbSpan[]): LimbSpan[] {
  const moves = spans.filter(({ kind }) => kind === 'move');
  const most = Math.max(0, ...moves.map(({ size }) => size));
  const large = moves.filter(({ size }) => size >= LARGE * most).sort((a, b) => b.size - a.size);
  if (large.length >= 3) return inOrder(large.slice(0, 3));
  const chosen = inOrder(large);
  const holds = spans.filter(({ kind, from, to }) => kind === 'hold' && to - from >= HELD);
  const [first, second] = chosen;
  if (second) {
    const between = holds.filter(({ from, to }) => from >= first.to - 1e-9 && to <= second.from + 1e-9);
    return inOrder([...chosen, ...longest(between)]);
  }
  const after = holds.filter(({ from }) => !first || from >= first.to - 1e-9);
  return inOrder([...chosen, ...longest(after)]);
}

const inOrder = (spans: readonly LimbSpan[]): LimbSpan[] => [...spans].sort((a, b) => a.from - b.from);
const longest = (spans: readonly LimbSpan[]): LimbSpan[] =>
  [...spans].sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, 1);

function moveSentences(span: LimbSpan, flight: CueFlight): string[] {
  const { start, end } = span;
  const legs = legSentence(span, flight);
  const isFolded = ['tuck', 'openTuck', 'pike', 'straddle'].includes(end.legs) && start.legs !== end.legs;
  // hands go to the shins by themselves: they are no cue
  const arms = isFolded && !isOut(end) ? '' : armSentence(span);
  const twist = twistSentence(span, flight);
  const isLast = legs === words.kneesSoft || legs === words.hipsBend;
  return (isLast ? [arms, legs, twist] : [legs, arms, twist]).filter(Boolean);
}

const isOut = ({ left, right }: Posture): boolean =>
  [left, right].every(({ place }) => place === 'level' || place === 'up' || place === 'high');

function legSentence({ start, end, to }: LimbSpan, { duration, isLanding }: CueFlight): string {
  if (start.legs !== end.legs) {
    if (end.legs === 'straight')
      return start.legs === 'bent' && start.hip < 50
        ? ''
        : isLong(end)
          ? LEG_WORDS.straight.into
          : LEG_WORDS[start.legs].out;
    if (end.legs !== 'bent') return LEG_WORDS[end.legs].into;
    if (LEG_WORDS[start.legs].out) return LEG_WORDS[start.legs].out;
  }
  if (!isLanding || duration - to > LAST) return '';
  if (end.knee - start.knee > BENDS.knee) return words.kneesSoft;
  return end.hip - start.hip > BENDS.hip && end.hip > BENDS.hipAt ? words.hipsBend : '';
}

const isLong = ({ hip, knee }: Posture): boolean => Math.abs(hip) < LONG && knee < LONG;

function armSentence({ start, end, leads }: LimbSpan): string {
  const moved = (['right', 'left'] as const).filter((side) => {
    const [a, b] = [start[side], end[side]];
    return (
      Math.abs(b.elevation - a.elevation) > ARM_MOVES ||
      (b.place !== a.place && Math.abs(b.elbow - a.elbow) > ARM_MOVES)
    );
  });
  const place = (side: 'left' | 'right'): string => ARM_WORDS[end[side].place];
  if (moved.length === 0) return '';
  if (moved.length === 1) return words.arm(moved[0] === 'left' ? 'Left' : 'Right', place(moved[0]));
  if (end.left.place === end.right.place)
    return leads ? words.armsLed(place('left'), leads) : words.arms(place('left'));
  const by = (side: 'left' | 'right'): number => Math.abs(end[side].elevation - start[side].elevation);
  return by('left') > by('right')
    ? words.both('Left', place('left'), 'right', place('right'))
    : words.both('Right', place('right'), 'left', place('left'));
}

function twistSentence({ from, to }: LimbSpan, { twistRate }: CueFlight): string {
  const [before, after] = [Math.abs(twistRate(from)), Math.abs(twistRate(to))];
  if (!(before >= 0 && after >= 0)) return '';
  if (before < TWIST.none) return after > TWIST.some ? words.twist.starts : '';
  if (after < TWIST.none) return before > TWIST.some ? words.twist.stops : '';
  if (before > TWIST.some && after < TWIST.slower * before) return words.twist.slows;
  return after > TWIST.some && after > 1.5 * before ? words.twist.quickens : '';
}

function holdSentences({ start: { legs, left, right, hip, knee } }: LimbSpan): string[] {
  const hold =
    legs === 'straight' && !isLong({ legs, left, right, hip, knee }) ? LEG_WORDS.bent.hold : LEG_WORDS[legs].hold;
  if (['tuck', 'openTuck', 'pike', 'straddle'].includes(legs)) return [hold];
  return [hold, left.place === right.place ? words.stay(ARM_WORDS[left.place]) : words.asTheyAre];
}

function reachedWords({ kind, start, end }: LimbSpan): string {
  if (end.legs !== start.legs || kind === 'hold' || (end.legs !== 'straight' && end.legs !== 'bent')) {
    if (end.legs === 'straight' && !isLong(end)) return 'arms set';
    if (end.legs !== 'bent') return LEG_WORDS[end.legs].reached;
  }
  if (end.left.place === end.right.place) return `arms ${ARM_WORDS[end.left.place]}`;
  return 'arms set';
}
