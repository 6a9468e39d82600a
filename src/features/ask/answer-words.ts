/** What an answer does, in one plain sentence, from what it changes: "Answer 1 leaves the floor with 2.7 % more momentum and leans 9.8° forward." */
import type { SkillSpec } from '../../../sim/index.ts';
import { isClosedAngle, leavesOf } from '../../../sim/math/closed-shape.ts';
import { wordCause } from '../../../sim/words/cause-words.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import type { AskInput } from '../../engine/ask.ts';
import { formatNumber, soften } from '../../ui/numbers.ts';
import { isNothing, sayChange, sayIn } from './ask-words.ts';
import { askTexts as t } from './words.ts';

interface InputChange {
  readonly input: AskInput;
  readonly value: number;
  /** as the page names it */
  readonly name: string;
}

interface Setting {
  readonly spec: Pick<SkillSpec, 'blocks'>;
  /** of each shape, as the list of shapes has it */
  readonly words: readonly string[];
  /** "the floor" */
  readonly pushedOff: string;
  /** kg m²/s, as it is and in the answer */
  readonly momentum: readonly [number, number];
}

/** What is written as 0.00 s and 0.0 %. */
const NO_TIME = 5e-3;
const NO_SHARE = 5e-4;
const GIVES_MOMENTUM = /^takeoff\.(h\.[yz]|straightSomersaults|rate\.somersault)$/;

const isMove = (id: string): boolean => /^block:\d+\.moveStart$/.test(id);

/** One clause a change, momentum first, then the rest in the order of what may change. */
export function clausesOfAnswer(changes: readonly InputChange[], setting: Setting): string[] {
  const [was, is] = setting.momentum;
  const share = was > 0 ? is / was - 1 : 0;
  const percent = formatNumber(100 * Math.abs(share), 1);
  const momentum = Math.abs(share) < NO_SHARE ? [] : [t.does.momentum(setting.pushedOff, percent, share > 0)];
  const rest = changes.flatMap(({ input, value, name }) => {
    const by = value - input.value;
    if (isNothing(input, by) || (isMove(input.id) && Math.abs(by) < NO_TIME)) return [];
    if (momentum.length > 0 && GIVES_MOMENTUM.test(input.id)) return [];
    return [clauseOf(input, by, value, name, setting)];
  });
  return [...momentum, ...rest];
}

/** "Answer 1 does this, this and that." */
export function sentenceOf(subject: string, clauses: readonly string[]): string {
  if (clauses.length === 0) return t.does.nothing(subject);
  const last = clauses[clauses.length - 1];
  return `${subject} ${clauses.length === 1 ? last : `${clauses.slice(0, -1).join(', ')} ${t.and} ${last}`}.`;
}

function clauseOf(input: AskInput, by: number, value: number, name: string, setting: Setting): string {
  const { id, unit } = input;
  const move = /^block:(\d+)\.moveStart$/.exec(id)?.[1];
  if (move) return moveClause(Number(move) - 1, by, setting);
  const size = sayIn(unit, Math.abs(by));
  const isMore = by > 0;
  if (id === 'takeoff.lean')
    return Math.abs(value) < 1e-3 ? t.does.upright : t.does.lean(sayIn(unit, Math.abs(value)), value > 0);
  if (id === 'takeoff.tilt') return t.does.tilt(sayIn(unit, Math.abs(value)), value > 0);
  if (id === 'takeoff.speedUp') return t.does.speedUp(size, isMore);
  if (id === 'contact.force') return t.does.push(size, isMore);
  if (/^swing\.(releaseAngle|releaseTime|late)$/.test(id)) return t.does.letsGo(size, isMore);
  return t.does.other(soften(name), sayChange(input, by), unit === 's');
}

/** The move into a shape that begins at another time. */
function moveClause(into: number, by: number, { spec, words }: Setting): string {
  const isClosed = (i: number): boolean =>
    Object.entries(spec.blocks[i]?.pose ?? {}).some(([angle, value]) => isClosedAngle(angle, value));
  const from = Math.max(0, into - 1);
  const leaves = leavesOf(isClosed(from), isClosed(into));
  return wordCause(
    { kind: 'move', from: words[from] ?? '', into: words[into] ?? '', leaves, by },
    'does',
    PAGE_NUMBERS,
  );
}
