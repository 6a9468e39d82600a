/** Times of a clip as they were written into a skill file, with their marks: what a reader without the clip has of it. */
import type { ClipData } from '../files/clip-schema.ts';
import type { Measured } from './clip.ts';
import type { ClipTimes, TurnTime } from './clip-times.ts';

type WrittenTimes = NonNullable<ClipData['times']>;
type WrittenTurn = WrittenTimes['turns'][number];
interface Written {
  readonly value: number;
  readonly plusMinus: number | null;
}

const TAU = 2 * Math.PI;

const back = ({ value, plusMinus }: Written, unit = 1): Measured => ({
  value: value * unit,
  plusMinus: plusMinus === null ? Number.NaN : plusMinus * unit,
});

const turnOf = ({ fromQuarters, toQuarters, timeS, revPerS }: WrittenTurn): TurnTime => ({
  from: fromQuarters,
  to: toQuarters,
  time: back(timeS),
  rate: back(revPerS, TAU),
});

/** `zero` is not known: frames are not in the file. */
export function readTimes(times: WrittenTimes, marks: ClipData['marks']): ClipTimes {
  const { airTimeS, upMPerS, riseM, turns, whole, handOffS } = times;
  const { brakingS, brakingFromMPerS, brakingMPerS2, brakingBodyWeights } = times;
  return {
    zero: Number.NaN,
    marks: marks.flatMap(({ atS, ...mark }) => (atS ? [{ mark, at: back(atS) }] : [])),
    ...(airTimeS && { airTime: back(airTimeS) }),
    ...(upMPerS && { up: back(upMPerS) }),
    ...(riseM && { rise: back(riseM) }),
    turns: turns.map(turnOf),
    ...(whole && { whole: turnOf(whole) }),
    ...(handOffS && { handOff: back(handOffS) }),
    ...(brakingS && brakingFromMPerS && brakingMPerS2 && brakingBodyWeights
      ? {
          braking: {
            time: back(brakingS),
            from: back(brakingFromMPerS),
            mean: back(brakingMPerS2),
            weights: back(brakingBodyWeights),
          },
        }
      : {}),
    faults: [],
  };
}
