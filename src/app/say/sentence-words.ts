/** The result in words: the clauses of the sentence, and the whole of it to be spoken. */
import type { Outline } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { sayNumber, unitOf } from '../../ui/units.ts';
import { texts } from '../words.ts';

const s = texts.sentence;
/** From here on, deg, a sideways lean at the end is said. */
const TILT_SAID = 4;
/** Under this many revolutions there is no turn to speak of. */
const TURN_SAID = 0.05;

interface SentenceWords {
  somersaults: string;
  somersaultWord: string;
  twists: string;
  twistWord: string;
  air: string;
  lands: string;
  landing: string;
  tilted: string;
}

export function wordSentence(o: Outline): SentenceWords {
  const soms = o.somersaults;
  const twists = o.twists;
  const turned = twists !== null && twists >= TURN_SAID;
  const tilted = o.tiltDeg !== null && Math.abs(o.tiltDeg) >= TILT_SAID;
  return {
    somersaults: soms === null || soms < TURN_SAID ? '' : countTurns(soms),
    somersaultWord:
      soms === null
        ? ''
        : soms < TURN_SAID
          ? s.noSomersault
          : s.somersault(isPlural(soms), inDegrees(), o.somersaultWord),
    twists: turned ? countTurns(twists) : '',
    twistWord: turned ? s.twist(isPlural(twists), inDegrees(), o.twistWord) : s.noTwist,
    air: formatNumber(o.duration, 2),
    lands: o.inAir ? s.ends : o.inverted ? s.enters : s.lands,
    landing: wordLanding(o),
    tilted: tilted ? `${formatNumber(Math.abs(o.tiltDeg ?? 0), 0)}°` : '',
  };
}

const inDegrees = (): boolean => unitOf('turns') === '°';
const countTurns = (turns: number): string => sayNumber('turns', turns, 2) + (inDegrees() ? '°' : '');
/** One is only what prints as one. */
export const isPlural = (turns: number): boolean => turns.toFixed(2) !== '1.00';

export function wordLanding(o: Outline): string {
  if (o.shortDeg === null) return wordLean(o.leanDeg);
  const deg = Math.round(Math.abs(o.shortDeg));
  if (deg === 0) return s.exact;
  return `${formatNumber(deg, 0)}° ${o.shortDeg > 0 ? s.short : s.over}`;
}

/** Without a turn nothing is short or over. */
function wordLean(leanDeg: number | null): string {
  if (leanDeg === null) return '';
  const deg = Math.round(Math.abs(leanDeg));
  if (deg === 0) return s.upright;
  if (deg === 180) return s.headDown;
  return s.leaning(formatNumber(deg, 0), leanDeg > 0 ? 'backward' : 'forward');
}

/** The whole sentence as text, for screen readers and for the picture's name. */
export function speakSentence(o: Outline): string {
  const w = wordSentence(o);
  if (o.somersaults === null) return s.undefined(formatNumber(o.undefinedFrom ?? 0, 2));
  const landing = w.landing ? `, ${w.lands}${w.landing}` : '';
  return `${w.somersaults}${w.somersaultWord}, ${w.twists}${w.twistWord}, ${w.air} s${s.air}${landing}${w.tilted ? `, ${s.tiltedWord}${w.tilted}` : ''}`;
}
