/**
 * What a flown skill is called at its place: code and difficulty on the bed, a dive number over water, elsewhere the words of the trade; or why it is called nothing.
 * The trampoline code of what was flown off the floor is there too, for machines.
 */
import type { Frames } from '../measure/frames.ts';
import type { Summary } from '../measure/summary.ts';
import type { SkillPlace } from '../skill/skill-place.ts';
import { wordOffRail } from './bar-name.ts';
import { codeOfSkill } from './code-of-skill.ts';
import { calcDifficulty, formatDifficulty } from './difficulty.ts';
import { formatDiveNumber, wordDive } from './dive-number.ts';
import { diveOfFlight } from './dive-of-flight.ts';
import { wordTrade } from './trade-words.ts';
import { type CodeDirection, formatTrampolineCode, type TrampolineCode } from './trampoline-code.ts';

export interface SkillNames {
  readonly place: SkillPlace;
  /** as the trade says it: "barani", "double back tuck", "forward 1 1/2 somersaults, pike" */
  readonly name?: string;
  readonly code?: string;
  readonly difficulty?: string;
  readonly dive?: string;
  /** why there is no code, dive number or name; nothing of vaults and bars, which are not counted so */
  readonly reason?: string;
}

/** What a flown skill is called at its place: name, trampoline code, dive number; or why it has none. */
export function namesOfSkill(summary: Summary, frames: Frames, place: SkillPlace): SkillNames {
  if (place === 'vault') return { place };
  if (place === 'bars') {
    const name = wordOffRail(summary, frames);
    return { place, ...(name ? { name } : {}) };
  }
  const isWater = place === 'board' || place === 'platform';
  const found = codeOfSkill(summary, frames, isWater ? 'water' : place);
  if (isWater) {
    const dive = diveOfFlight(found, summary, frames);
    if (dive.kind === 'none') return { place, reason: dive.reason };
    return { place, dive: formatDiveNumber(dive.dive), name: wordDive(dive.dive) };
  }
  if (found.kind === 'none') return { place, reason: found.reason };
  const { code, earlyHalfTwists } = found;
  const direction = summary.somersaultWord;
  const [trade] = wordTrade({
    direction,
    somersaults: code.quarters / 4,
    halfTwists: code.halfTwists,
    earlyHalfTwists,
  });
  const name = place === 'floor' ? wordFully(code, direction, trade) : trade;
  return {
    place,
    code: formatTrampolineCode(code),
    difficulty: formatDifficulty(calcDifficulty(code, direction)),
    ...(name ? { name } : {}),
  };
}

const COUNTS = ['', '', 'double ', 'triple ', 'quadruple '];
const SHAPES = { tuck: 'tucked', pike: 'piked', straight: 'straight' } as const;
const TURNS: Readonly<Record<number, string>> = {
  1: 'a half turn',
  2: 'a full turn',
  3: 'one and a half turns',
  4: 'two turns',
};

/** Where no code says the shape: "double back tuck", "full-out, piked", "back full". */
function wordFully(
  { quarters, halfTwists, shape }: TrampolineCode,
  direction: CodeDirection | '',
  trade: string | undefined,
): string | undefined {
  const isTwisting = halfTwists.some((n) => n > 0);
  if (quarters === 0) return isTwisting ? TURNS[halfTwists[0]] && `jump with ${TURNS[halfTwists[0]]}` : `${shape} jump`;
  if (!trade) return undefined;
  const n = halfTwists.length;
  if (!isTwisting) return `${COUNTS[n]}${direction === 'forward' ? 'front' : 'back'} ${shape}`;
  // a single that twists is straight unless it is said
  return n === 1 && shape === 'straight' ? trade : `${trade}, ${SHAPES[shape]}`;
}

/** A line of a result, with what it is: the code, the dive or the name. Undefined where nothing is called so. */
export function wordNames({
  place,
  name,
  code,
  difficulty,
  dive,
  reason,
}: SkillNames): [what: string, text: string] | undefined {
  if (place === 'bars' || place === 'vault') return undefined;
  if (place === 'trampoline')
    return ['code', code ? `${code} (difficulty ${difficulty})${name ? `, ${name}` : ''}` : `no code: ${reason}`];
  if (place !== 'floor') return ['dive', dive ? `${dive}, ${name}` : `no dive number: ${reason}`];
  return name ? ['name', name] : reason ? ['name', `no name: ${reason}`] : undefined;
}
