/** How much longer moves have to be so that the joints can: the least whole hundredth of a second, flown. */
import type { SkillFile } from '../../../sim/index.ts';
import { findMove, GIVERS, lengthenMove } from '../../document/longer-move.ts';
import type { AnchorSeconds } from '../../document/times.ts';
import type { FlightCaution } from '../../engine/result.ts';
import { findTooFast, type TooFast } from './pace.ts';

/** s: most that is offered, in steps of 0.01 */
export const MOST_MORE = 0.3;

interface Flown {
  readonly cautions: readonly FlightCaution[];
}

export interface MoreTime {
  readonly s: number;
  readonly file: SkillFile;
}

interface MoreTimeInput {
  /** what was asked for, too fast */
  readonly file: SkillFile;
  readonly anchors: AnchorSeconds;
  readonly tooFast: readonly TooFast[];
  /** of the flight before */
  readonly before: readonly FlightCaution[];
  fly(file: SkillFile): Flown;
}

/** One try after another, so that the page is never held up. Ends with what flies, or with nothing. */
export function* trySecondsMore(input: MoreTimeInput): Generator<undefined, MoreTime | undefined> {
  const { anchors, tooFast, before } = input;
  const moves = movesOf(input.file, tooFast, anchors);
  if (moves.length === 0) return undefined;
  for (let i = 1; i <= Math.round(MOST_MORE / 0.01); i++) {
    const s = i / 100;
    for (const giver of GIVERS) {
      let file: SkillFile | undefined = input.file;
      for (const t of moves) file = file && lengthenMove(file, t, s, anchors, giver);
      if (!file) continue;
      if (findTooFast(input.fly(file).cautions, before).length === 0) return { s, file };
      yield;
    }
  }
  return undefined;
}

/** A time in each move that is too fast, the last move first, so that the times of those before stay. */
function movesOf(file: SkillFile, tooFast: readonly TooFast[], anchors: AnchorSeconds): number[] {
  const middles = tooFast.flatMap(({ t }) => {
    const move = findMove(file, t, anchors);
    return move ? [(move[0] + move[1]) / 2] : [];
  });
  return [...new Set(middles)].sort((a, b) => b - a);
}
