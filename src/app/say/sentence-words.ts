/** The result in words, in the units of the page: clauses for the headline, the whole of it to be spoken. */
import type { SkillVerdict } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import {
  asideOf,
  type Clause,
  degreesOf,
  type NumberWords,
  verdictClauses,
  wordOff,
  wordVerdict,
} from '../../../sim/words/verdict-words.ts';
import type { Outline } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, unitOf } from '../../ui/units.ts';
import { texts } from '../words.ts';

const s = texts.sentence;

const inDegrees = (): boolean => unitOf('turns') === '°';

export const PAGE_NUMBERS: NumberWords = {
  turns: (n, isCoarse) =>
    inDegrees()
      ? `${sayNumber('turns', isCoarse ? Math.round(36 * n) / 36 : n, 2)}°`
      : sayNumber('turns', n, isCoarse ? 1 : 2),
  get inDegrees() {
    return inDegrees();
  },
  angle: (rad) => `${formatNumber(Number(degreesOf(rad)), 0)}°`,
  seconds: (t) => `${formatNumber(t, 2)} s`,
  centimetres: (m) => (unitOf('length') === 'm' ? `${formatNumber(100 * m, 0)} cm` : say('length', m)),
  metres: (m) => say('length', Math.abs(m), 1),
  speed: (v) => say('speed', v, 1),
  momentum: (h) => say('momentum', h, 0),
};

export const clausesOf = (verdict: SkillVerdict): Clause[] => verdictClauses(verdict, PAGE_NUMBERS);

/** The whole sentence as text, for screen readers and for the picture's name. */
export const speakVerdict = (verdict: SkillVerdict): string => wordVerdict(verdict, PAGE_NUMBERS);
/** How it ends, without what was flown. */
export const wordEnding = (verdict: SkillVerdict | undefined): string =>
  verdict === undefined
    ? '–'
    : (clausesOf(verdict)
        .at(-1)
        ?.runs.map((run) => run.text)
        .join('') ?? '–');
export const speakSentence = ({ verdict }: Outline): string => speakVerdict(verdict);

/** Beside the drawn angle at the landing: "6° short", of upright or of the lean wanted; without a turn the lean. */
export function wordLanding(o: Outline): string {
  const aside = asideOf(o.verdict.flown.twists);
  if (aside > 0 && o.shortDeg === null && Math.round(Math.abs(o.leanDeg ?? 0)) === 0)
    return s.aside(formatNumber(aside * DEG, 0));
  if (o.shortDeg === null) return wordLean(o.leanDeg);
  const deg = Math.round(Math.abs(o.shortDeg));
  if (deg === 0) return o.inverted ? s.straightDown : wordLean((o.verdict.lean ?? 0) * DEG);
  return wordOff(o.shortDeg / DEG, o.verdict.isLeanWanted, PAGE_NUMBERS);
}

function wordLean(leanDeg: number | null): string {
  if (leanDeg === null) return '';
  const deg = Math.round(Math.abs(leanDeg));
  if (deg === 0) return s.upright;
  if (deg === 180) return s.headDown;
  return s.leaning(formatNumber(deg, 0), leanDeg > 0 ? 'back' : 'forward');
}
