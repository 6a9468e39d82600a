/** What a take-off and a contact ask of their place, in words: for the command line, and as sentences for the page. */
import type { ContactFault } from '../contact/impulse.ts';
import { DEG } from '../math/angles.ts';
import type { ContactRange, RangeBasis, RangedPlace } from '../skill/contact-ranges.ts';
import type { ContactCaution, ContactCautionKind, ContactReport } from '../skill/contact-report.ts';
import { sentence } from './verdict-words.ts';

const PLACES: Readonly<Record<RangedPlace, string>> = {
  floor: 'floor',
  floorHands: 'floor',
  springboard: 'springboard',
  vaultTable: 'table',
  trampoline: 'bed',
  divingBoard: 'diving board',
  platform: 'platform',
};

export const wordPlace = (place: RangedPlace): string => PLACES[place];

const BASES: Readonly<Record<RangeBasis, readonly [before: string, after: string]>> = {
  published: ['published', ''],
  usual: ['usual', ' (from memory)'],
  computed: ['', ' (computed from ranges from memory)'],
  judgement: ['', ' (our judgement)'],
};

interface Wording {
  readonly unit: string;
  readonly digits: number;
  readonly scale?: number;
  /** judged by mass and squared stature, said of the body that is flown */
  readonly isOfBody?: true;
  /** `value`: with its unit; `x`: the number, for its sign */
  readonly say: (value: string, place: string, x: number) => string;
  /** in place of range and what it rests on */
  readonly range?: (low: string, high: string) => string;
}

const FAULTS: Readonly<Record<ContactFault, string>> = {
  pull: 'it would have to pull',
  slip: 'it would slip',
  outOfReach: 'it would have to push from farther than feet or hands reach',
};

/** What prevents a mean force, or that nothing does. */
export const wordPossible = (faults: readonly ContactFault[]): readonly string[] =>
  faults.length > 0 ? faults.map((fault) => FAULTS[fault]) : ['it neither slips nor pulls'];

const f = (x: number, digits = 1): string => x.toFixed(digits);

/** One table: every caution of a take-off and of a contact. */
const WORDS: Readonly<Record<ContactCautionKind, Wording>> = {
  upOut: { unit: 'm/s', digits: 1, say: (v, p) => `leaves the ${p} upward at ${v}` },
  alongOut: { unit: 'm/s', digits: 1, say: (v, p) => `leaves the ${p} along at ${v}` },
  momentum: {
    unit: 'kg·m²/s',
    digits: 0,
    isOfBody: true,
    say: (v, p) => `leaves the ${p} with ${v} of angular momentum`,
  },
  time: { unit: 'ms', digits: 0, scale: 1000, say: (v, p) => `the contact with the ${p} lasts ${v}` },
  alongIn: { unit: 'm/s', digits: 1, say: (v, p) => `comes to the ${p} along at ${v}` },
  meanUp: { unit: 'body weights', digits: 1, say: (v, p) => `needs a mean force of ${v} up from the ${p}` },
  peakUp: {
    unit: 'body weights',
    digits: 1,
    say: (v, p) => `the push off the ${p} has a peak of ${v} upward at the least`,
  },
  work: { unit: 'J/kg', digits: 1, say: (v, p) => `the contact with the ${p} adds ${v} to what the athlete came with` },
  height: {
    unit: 'm',
    digits: 2,
    say: (v, p) => `the mean height of the mass centre over the ${p} is given as ${v}`,
    range: (low, high) => `by the take-off and the speeds it is ${low} to ${high}`,
  },
  place: {
    unit: 'm',
    digits: 2,
    say: (v, p, x) =>
      `the force on the ${p} would have to act ${v.replace('-', '')} ${x < 0 ? 'behind' : 'ahead of'} the mass centre`,
    range: (low, high) => `by the take-off and the speeds hands or feet cover ${low} to ${high} ahead of it`,
  },
  slides: {
    unit: 'm',
    digits: 2,
    say: (v, p) => `hands or feet would slide by ${v} on the ${p}: that far is the body from where the force brings it`,
    range: (_, high) => `up to ${high} m is counted as staying`,
  },
  reach: {
    unit: 'm',
    digits: 2,
    say: (v, p) => `arms or legs would have to be ${v} longer to stay on the ${p}`,
    range: (_, high) => `up to ${high} m is counted as reaching`,
  },
  slips: {
    unit: '',
    digits: 2,
    say: (v, p) => `at its highest the force on the ${p} needs a friction of ${v}`,
    range: (_, high) => `there is ${high}`,
  },
  turn: {
    unit: 'deg',
    digits: 0,
    scale: DEG,
    say: (v, p) => `hips or shoulders would have to turn by ${v} over the contact to stay on the ${p}`,
  },
};

type OfBody = Pick<ContactReport, 'massStature2'>;

const scaleOf = ({ scale = 1, isOfBody }: Wording, { massStature2 }: OfBody): number =>
  isOfBody ? massStature2 : scale;

/** The range alone: usual 0.10 to 0.14 (from memory). */
export function wordContactRange(
  kind: ContactCautionKind,
  { low, high, basis }: ContactRange,
  body: OfBody,
  shown: { readonly digits: number; readonly scale?: number } = WORDS[kind],
): string {
  const { range, isOfBody } = WORDS[kind];
  const { digits } = shown;
  const scale = isOfBody ? scaleOf(WORDS[kind], body) : (shown.scale ?? 1);
  const [from, to] = [low, high].map((x) => f(x * scale, digits));
  if (range) return range(from, to);
  const [before, after] = BASES[basis];
  const whose = isOfBody ? ' for this body' : '';
  return `${before && `${before} `}${Number.isFinite(low) && low !== 0 ? `${from} to` : 'up to'} ${to}${whose}${after}`;
}

/** leaves the floor upward at 9.0 m/s */
function wordAsked(c: ContactCaution): string {
  const { unit, digits, say } = WORDS[c.kind];
  return say(`${f(c.value * scaleOf(WORDS[c.kind], c), digits)} ${unit}`.trim(), PLACES[c.place], c.value);
}

/** Two sentences: what is asked, and what is known. */
export const contactCautionTitle = (c: ContactCaution): string => sentence(wordAsked(c));
export const contactCautionDetail = (c: ContactCaution): string => sentence(wordContactRange(c.kind, c.range, c));

/** The cautions as a list with its heading; empty without one. */
export function formatContactCautions(report: ContactReport | undefined): string {
  if (!report || report.cautions.length === 0) return '';
  const lines = report.cautions.map((c) => `  ${wordAsked(c)}; ${wordContactRange(c.kind, c.range, c)}`);
  return `${['Outside what is known of such take-offs (a warning, not an error):', ...lines].join('\n')}\n`;
}

/** Of an age that no strength is known of. */
export const LOADS_NOT_COMPARED = 'at this age forces and work are shown, not judged';
