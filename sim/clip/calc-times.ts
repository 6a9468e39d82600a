/**
 * Times from the marks of a clip, each with its ± (uncertain.ts). A picture that is read line by line shows what is at `row` (row - 1/2) x lines later
 * than its time says; where the row of a mark is not known it is somewhere in the picture, of feet that leave or meet the floor in its lower half
 * (judgement). Where `lines` is not known nothing is corrected, and what it may be off is in the ±. docs/clip.md.
 */
import { FieldError } from '../math/field-error.ts';
import type { ClipFrames, ClipMark, MarkKind } from './clip.ts';
import type { ClipTimes, MarkedTime, TimesGiven, TurnTime } from './clip-times.ts';
import { findMarkFaults, isBetweenFrames, type MarkFault } from './mark-faults.ts';
import { derived, exactly, less, measured, plus, ratio, type Uncertain, uncertainOf } from './uncertain.ts';

/** The longest that a usual telephone reads a picture, s (judgement: 8 to 16 ms); never longer than a frame. */
const USUAL_LINES = 0.016;
const MOST_LINES = 0.1;
/** A mass centre is within 5 mm of its top for so long to each side: nobody sees when it is highest more nearly (judgement), s. */
const FLAT_TOP = 0.03;
/** s: in the air for less or for longer, a rate that was typed wrongly is likelier (judgement; from 27 m a dive takes 2.6 s) */
const AIR_TIME = [0.1, 3] as const;
const QUARTER = Math.PI / 2;
/** where feet leave and meet the floor */
const LOW: readonly MarkKind[] = ['takeoff', 'landing', 'rest'];

/** Throws a FieldError where frames or what is given are none; marks at fault are listed, and left out. */
export function calcClipTimes(frames: ClipFrames, marks: readonly ClipMark[], given: TimesGiven): ClipTimes {
  checkFrames(frames);
  checkGiven(given);
  const { faults, good } = findMarkFaults(frames, marks);
  const at = new Map(good.map((mark) => [mark, instantOfMark(frames, mark)]));
  const find = (kind: MarkKind): Uncertain | undefined => {
    const mark = good.find((one) => one.kind === kind);
    return mark && at.get(mark);
  };
  const [takeoff, landing, rest, handOff] = [find('takeoff'), find('landing'), find('rest'), find('handOff')];
  const since = takeoff ?? exactly(frames.t[0] ?? Number.NaN);
  const listed = good.map((mark): MarkedTime => {
    const own = at.get(mark) ?? since;
    return { mark, at: measured(own === takeoff ? { ...own, value: 0 } : less(own, since)) };
  });
  const turns = takeoff ? calcTurns(good, at, takeoff) : undefined;
  const flight = takeoff && landing && given.gravity > 0 ? calcFlight(less(landing, takeoff), given) : undefined;
  return {
    zero: takeoff ? takeoff.value : Number.NaN,
    marks: listed.sort((a, b) => a.at.value - b.at.value),
    ...(takeoff && landing && { airTime: measured(less(landing, takeoff)) }),
    ...(flight && { up: measured(flight.up), rise: measured(flight.rise) }),
    turns: turns?.between ?? [],
    ...(turns?.whole && { whole: turns.whole }),
    ...(takeoff && handOff && { handOff: measured(less(handOff, takeoff)) }),
    ...(flight && landing && rest && { braking: calcBraking(flight.down, less(rest, landing), given.gravity) }),
    faults: takeoff && landing ? [...faults, ...rateFaults(landing.value - takeoff.value, given.gravity)] : faults,
  };
}

/** Of a clip's time, with the sources of its ±: the frame, and the line of the picture it is in. */
function instantOfMark({ t, hz, lines }: ClipFrames, mark: ClipMark): Uncertain {
  const k = mark.frame;
  const isBetween = isBetweenFrames(mark);
  const gapBefore = k > 0 ? t[k] - t[k - 1] : t.length > 1 ? t[1] - t[0] : 1 / hz;
  const gapAfter = k + 1 < t.length ? t[k + 1] - t[k] : gapBefore;
  const middle = isBetween ? t[k] - gapBefore / 2 : t[k] + (gapAfter - gapBefore) / 4;
  const half = isBetween ? gapBefore / 2 : (gapBefore + gapAfter) / 4;
  const name = `${mark.kind} ${mark.quarters ?? ''}`;
  const parts: Uncertain[] = [uncertainOf(middle, `frame of ${name}`, 'bound', half)];
  if (mark.kind === 'highest') parts.push(uncertainOf(0, 'top', 'given', FLAT_TOP));
  const isLow = LOW.includes(mark.kind);
  const row = mark.row ?? (isLow ? 0.75 : 0.5);
  const rowOff = mark.row === undefined ? (isLow ? 0.25 : 0.5) : 0;
  const isKnown = !Number.isNaN(lines);
  const long = Math.min(isKnown ? lines : USUAL_LINES, 1 / hz);
  const later = (row - 0.5) * long;
  parts.push(isKnown ? exactly(later) : uncertainOf(0, 'lines', 'bound', later));
  parts.push(uncertainOf(0, `row of ${name}`, 'bound', rowOff * long));
  return parts.reduce(plus);
}

/** v = (g T^2 / 2 - drop) / T up at take-off, g T - v down at touchdown, v^2 / 2 g of rise. */
function calcFlight(
  air: Uncertain,
  { gravity: g, drop: given }: TimesGiven,
): Record<'up' | 'rise' | 'down', Uncertain> {
  const T = air.value;
  const drop = uncertainOf(given.value, 'drop', 'given', given.plusMinus);
  const D = drop.value;
  const up = derived((g * T) / 2 - D / T, [g / 2 + D / T ** 2, air], [-1 / T, drop]);
  const down = derived((g * T) / 2 + D / T, [g / 2 - D / T ** 2, air], [1 / T, drop]);
  const v = Math.max(0, up.value);
  return { up, down, rise: derived(v ** 2 / (2 * g), [v / g, up]) };
}

function calcTurns(
  good: readonly ClipMark[],
  at: ReadonlyMap<ClipMark, Uncertain>,
  takeoff: Uncertain,
): { readonly between: TurnTime[]; readonly whole?: TurnTime } {
  const ends = good
    .flatMap((mark) => (mark.kind === 'turn' ? [{ quarters: mark.quarters ?? 0, at: at.get(mark) ?? takeoff }] : []))
    .sort((a, b) => a.quarters - b.quarters);
  const all = [{ quarters: 0, at: takeoff }, ...ends];
  const turn = (k: number, j: number): TurnTime => {
    const [from, to] = [all[k], all[j]];
    const time = less(to.at, from.at);
    const rate = ratio(exactly((to.quarters - from.quarters) * QUARTER), time);
    return { from: from.quarters, to: to.quarters, time: measured(time), rate };
  };
  return {
    between: ends.map((_, k) => turn(k, k + 1)),
    ...(ends.length > 1 && { whole: turn(0, all.length - 1) }),
  };
}

function calcBraking(down: Uncertain, time: Uncertain, g: number): ClipTimes['braking'] {
  const mean = ratio(down, time);
  return {
    time: measured(time),
    from: measured(down),
    mean,
    weights: { value: (mean.value + g) / g, plusMinus: mean.plusMinus / g },
  };
}

function rateFaults(airTime: number, g: number): MarkFault[] {
  const [short, long] = AIR_TIME;
  if (airTime >= short && airTime <= long) return [];
  return [{ kind: 'rate', airTime, rise: (g * airTime ** 2) / 8, is: airTime < short ? 'short' : 'long' }];
}

function checkFrames({ t, hz, lines }: ClipFrames): void {
  for (let k = 0; k < t.length; k++)
    if (!Number.isFinite(t[k]) || (k > 0 && !(t[k] > t[k - 1])))
      throw new FieldError(`t[${k}]`, t[k], 'seconds, each frame later than the one before');
  if (!(hz > 0 && hz <= 2000)) throw new FieldError('hz', hz, 'above 0, at most 2000 frames a second');
  if (!Number.isNaN(lines) && !(lines >= 0 && lines <= MOST_LINES))
    throw new FieldError('lines', lines, `0 to ${MOST_LINES} s`);
}

function checkGiven({ gravity, drop }: TimesGiven): void {
  if (!(gravity >= 0 && gravity <= 30)) throw new FieldError('gravity', gravity, '0 to 30 m/s2');
  if (!Number.isFinite(drop.value)) throw new FieldError('drop', drop.value, 'metres, + where it lands lower');
  if (!(drop.plusMinus >= 0)) throw new FieldError('drop.plusMinus', drop.plusMinus, '0 m or more');
}
