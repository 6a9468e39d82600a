/** Marks of a clip: which comes next, what each is called, and how one is put, moved and taken off. */
import type { ClipMark, MarkKind } from '../../../sim/index.ts';
import { clipTexts as t } from './clip-words.ts';

/** Kind, and the turn of a quarter. */
export interface MarkWanted {
  readonly kind: MarkKind;
  readonly quarters?: number;
}

/** Most quarter turns that are marked: a fivefold somersault. */
const MOST_QUARTERS = 20;

export const isSameMark = (a: MarkWanted, b: MarkWanted): boolean =>
  a.kind === b.kind && (a.quarters ?? 0) === (b.quarters ?? 0);

/** `quartersDone`: of A, for which turns there will be. In the order in which they happen. */
export function nextMarks(marks: readonly ClipMark[], quartersDone: number): MarkWanted[] {
  const isThere = (wanted: MarkWanted): boolean => marks.some((mark) => isSameMark(mark, wanted));
  const turns = marks.flatMap(({ kind, quarters }) => (kind === 'turn' && quarters ? [quarters] : []));
  const nextTurn = Math.max(0, ...turns) + 1;
  const turn: MarkWanted = { kind: 'turn', quarters: nextTurn };
  const ends: MarkWanted[] = [{ kind: 'highest' }, { kind: 'landing' }, { kind: 'rest' }, { kind: 'handOff' }];
  if (!isThere({ kind: 'takeoff' })) return [{ kind: 'takeoff' }, ...ends.filter((one) => !isThere(one))];
  const isTurnNext = nextTurn <= Math.max(quartersDone, 0) && !isThere({ kind: 'landing' });
  const others = ends.filter((one) => !isThere(one));
  const canTurn = nextTurn <= MOST_QUARTERS ? [turn] : [];
  return isTurnNext ? [...canTurn, ...others] : [...others, ...canTurn];
}

/** There is one of each: it goes where it is put. */
export function putMark(marks: readonly ClipMark[], wanted: MarkWanted, frame: number): ClipMark[] {
  const next: ClipMark = { ...wanted, frame };
  return [...marks.filter((mark) => !isSameMark(mark, wanted)), next].sort((a, b) => a.frame - b.frame);
}

export const takeOffMark = (marks: readonly ClipMark[], gone: MarkWanted): ClipMark[] =>
  marks.filter((mark) => !isSameMark(mark, gone));

/** "½ turn", "take-off". */
export const sayMark = ({ kind, quarters = 0 }: MarkWanted): string =>
  kind === 'turn' ? t.turn(quarters) : t.marks[kind];
export const shortMark = ({ kind, quarters = 0 }: MarkWanted): string =>
  kind === 'turn' ? t.turnPart(quarters) : t.marks[kind];
/** For a voice: "half turn". */
export const spokenMark = ({ kind, quarters = 0 }: MarkWanted): string =>
  kind === 'turn' ? t.spokenTurn(quarters) : t.marks[kind];
