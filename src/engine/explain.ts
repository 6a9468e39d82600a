/** What just changed and why, as one sentence; kept for each move of a flight, as the move decides it and not the instant. */
import { calcExplanation, EXPLAIN_WORDS, type ExplainWords, formatExplanation } from '../../sim/index.ts';
import type { FlightResult } from './result.ts';

const known = new WeakMap<FlightResult, WeakMap<object, Map<number, string>>>();

/** Some 2 ms for a move that was not asked for before. `words` stand in for those of sim. Empty before anything moves. */
export function explain(result: FlightResult, t: number, words: Partial<ExplainWords>): string {
  const { flight } = result;
  // the last move that has begun, as calcExplanation chooses it
  const begun = flight.schedule.moving.filter(([a, b]) => b > 0 && a < flight.duration && a <= t).length;
  if (begun === 0) return '';
  const ofResult = known.get(result) ?? new WeakMap<object, Map<number, string>>();
  known.set(result, ofResult);
  const moves = ofResult.get(words) ?? new Map<number, string>();
  ofResult.set(words, moves);
  let said = moves.get(begun);
  if (said === undefined) {
    said = formatExplanation(calcExplanation(flight, t), { ...EXPLAIN_WORDS, ...words });
    moves.set(begun, said);
  }
  return said;
}
