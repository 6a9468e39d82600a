/**
 * How usual errors go together. A time is a shift c common to all times of one flight plus one of its own, e, with
 * var(c) = COMMON s^2: two times have the correlation COMMON; the duration of a move, e' - e, has the standard deviation
 * s sqrt(2 (1 - COMMON)), here s itself, and with its own start the correlation -sqrt((1 - COMMON) / 2).
 */
import { legOf, ownId } from './leg-id.ts';

export interface Correlation {
  readonly a: string;
  readonly b: string;
  readonly r: number;
}

/** Share of the variance of a time that is common to all times (our judgement). */
const COMMON = 0.5;
const WITH_DURATION = -Math.sqrt((1 - COMMON) / 2);
/** Who turns harder jumps lower (our judgement). */
const JUMP: Correlation = { a: 'takeoff.h.z', b: 'takeoff.speedUp', r: -0.3 };

const isTime = (id: string): boolean => /^block:\d+\.moveStart$|^key:\d+\.time$/.test(ownId(id));
const durationOf = (id: string): string => id.replace(/\.moveStart$/, '.moveTime');
const isTiming = ({ a, b }: Correlation): boolean =>
  isTime(a) && legOf(a) === legOf(b) && (isTime(b) || b === durationOf(a));
const isJump = ({ a, b, r }: Correlation): boolean =>
  legOf(a) === legOf(b) && ownId(a) === JUMP.a && ownId(b) === JUMP.b && r === JUMP.r;

/** Of these inputs; what one leg of a chain is off by says nothing of the next. */
export function usualTogether(ids: readonly string[]): Correlation[] {
  const legs = [...new Set(ids.map(legOf))];
  return legs.flatMap((leg) =>
    togetherIn(
      leg,
      ids.filter((id) => legOf(id) === leg),
    ),
  );
}

function togetherIn(leg: string, ids: readonly string[]): Correlation[] {
  const has = (id: string): boolean => ids.includes(id);
  const times = ids.filter(isTime);
  const jump: Correlation = { ...JUMP, a: leg + JUMP.a, b: leg + JUMP.b };
  return [
    ...(has(jump.a) && has(jump.b) ? [jump] : []),
    ...times.flatMap((a, i) => times.slice(i + 1).map((b) => ({ a, b, r: COMMON }))),
    ...times.flatMap((a) =>
      durationOf(a) !== a && has(durationOf(a)) ? [{ a, b: durationOf(a), r: WITH_DURATION }] : [],
    ),
  ];
}

/** In one sentence; the times of the usual errors are named as one. */
export function wordTogether(correlations: readonly Correlation[]): string {
  const timing = correlations.filter(isTiming);
  const usual = usualTogether([...new Set(timing.flatMap(({ a, b }) => [a, b]))]);
  const isCommon =
    timing.length > 0 &&
    timing.length === usual.length &&
    timing.every(({ a, b, r }) => usual.some((u) => u.a === a && u.b === b && u.r === r));
  const words = [
    ...(isCommon
      ? [
          `times ${timing.some(({ a }) => legOf(a) !== '') ? 'of one flight ' : ''}are a shift common to all and one of each, correlation ${COMMON} between two (our judgement), a duration the difference of two`,
        ]
      : []),
    ...(isCommon ? correlations.filter((c) => !isTiming(c)) : correlations).map(
      ({ a, b, r }) => `${a} with ${b} ${r}${isJump({ a, b, r }) ? ' (our judgement)' : ''}`,
    ),
  ];
  return words.length > 0 ? words.join('; ') : 'nothing: each error is drawn for itself';
}
