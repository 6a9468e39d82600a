/** What was measured in a clip and is kept with the skill: its times are shown without the clip. */
import type { ClipTimes, Measured, SkillFile, TurnTime } from '../../../sim/index.ts';
import type { Clipping } from '../../engine/clip.ts';
import type { FlightResult } from '../../engine/result.ts';
import type { ClipMeasuring } from './clip-page.ts';

type Recording = NonNullable<SkillFile['recordings']>[number];

export interface KeptClip {
  /** of its file, where that is known */
  readonly name: string;
  readonly measured: ClipMeasuring;
  readonly times: ClipTimes;
}

/** As it is written: what the marks gave is there to be shown, and is not read back. */
interface Both {
  readonly value: number;
  readonly plusMinus: number | null;
}
interface Turn {
  readonly fromQuarters: number;
  readonly toQuarters: number;
  readonly timeS: Both;
  readonly revPerS: Both;
}
interface KeptData {
  readonly marks: readonly { readonly atS?: Both }[];
  readonly times?: {
    readonly airTimeS?: Both;
    readonly upMPerS?: Both;
    readonly riseM?: Both;
    readonly turns: readonly Turn[];
    readonly whole?: Turn;
    readonly handOffS?: Both;
    readonly brakingS?: Both;
    readonly brakingFromMPerS?: Both;
    readonly brakingMPerS2?: Both;
    readonly brakingBodyWeights?: Both;
  };
}

const TAU = 2 * Math.PI;

const isOfClip = ({ kind, data }: Recording): boolean =>
  kind === 'film' && typeof data === 'object' && data !== null && 'form' in data && data.form === 'clip';

const known = (one: Both, by = 1): Measured => ({
  value: one.value * by,
  plusMinus: one.plusMinus === null ? Number.NaN : one.plusMinus * by,
});
const turnOf = ({ fromQuarters, toQuarters, timeS, revPerS }: Turn): TurnTime => ({
  from: fromQuarters,
  to: toQuarters,
  time: known(timeS),
  rate: known(revPerS, TAU),
});

function timesOf({ marks, times }: KeptData, measured: ClipMeasuring): ClipTimes {
  const placed = measured.marks.flatMap((mark, k): ClipTimes['marks'][number][] => {
    const at = marks[k]?.atS;
    return at ? [{ mark, at: known(at) }] : [];
  });
  const { airTimeS, upMPerS, riseM, whole, handOffS, brakingS, brakingFromMPerS, brakingMPerS2, brakingBodyWeights } =
    times ?? { turns: [] };
  return {
    zero: 0,
    marks: placed,
    faults: [],
    turns: times?.turns.map(turnOf) ?? [],
    ...(airTimeS && { airTime: known(airTimeS) }),
    ...(upMPerS && { up: known(upMPerS) }),
    ...(riseM && { rise: known(riseM) }),
    ...(whole && { whole: turnOf(whole) }),
    ...(handOffS && { handOff: known(handOffS) }),
    ...(brakingS &&
      brakingFromMPerS &&
      brakingMPerS2 &&
      brakingBodyWeights && {
        braking: {
          time: known(brakingS),
          from: known(brakingFromMPerS),
          mean: known(brakingMPerS2),
          weights: known(brakingBodyWeights),
        },
      }),
  };
}

/** The last that was kept; throws an Error with the path of what is wrong in it. */
export function readKept(file: SkillFile, engine: Clipping, result: FlightResult): KeptClip | undefined {
  const entry = file.recordings?.findLast(isOfClip);
  if (!entry) return undefined;
  const { measured } = engine.read(entry, result);
  return { name: entry.file ?? entry.title, measured, times: timesOf(entry.data as KeptData, measured) };
}

/** In the place of the entry of the same clip, or after all others. */
export function withKept(file: SkillFile, entry: Recording): SkillFile {
  const others = (file.recordings ?? []).filter((one) => !(isOfClip(one) && one.file === entry.file));
  return { ...file, recordings: [...others, entry] };
}
