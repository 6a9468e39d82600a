/** What is said of a clip, the same for shell and page: a sentence, rows of values with their ±, what is wrong, what is not seen. */
import type { ClipMark, ClipSight, MarkKind, Measured } from '../clip/clip.ts';
import type { FlownTimes } from '../clip/clip-flown.ts';
import type { ClipTimes, TurnTime } from '../clip/clip-times.ts';
import type { MarkFault } from '../clip/mark-faults.ts';

type ClipQuantity = 'time' | 'speed' | 'length' | 'rate' | 'weights';

/** Numbers in the units of who reads them; values come in s, m/s, m, rev/s and body weights. */
interface ClipNumbers {
  number(quantity: ClipQuantity, value: number, decimals: number): string;
  unit(quantity: ClipQuantity): string;
}

const UNITS: Readonly<Record<ClipQuantity, string>> = {
  time: 's',
  speed: 'm/s',
  length: 'm',
  rate: 'rev/s',
  weights: 'body weights',
};
const PLAIN_CLIP: ClipNumbers = {
  number: (_, value, decimals) => value.toFixed(decimals),
  unit: (quantity) => UNITS[quantity],
};
const DECIMALS: Readonly<Record<ClipQuantity, number>> = { time: 3, speed: 2, length: 2, rate: 2, weights: 1 };

export interface ClipRow {
  /** of turns as "turn 0 1" */
  readonly id: string;
  readonly label: string;
  readonly quantity: ClipQuantity;
  readonly clip: Measured;
  /** the same of the flown skill; left out: it has none */
  readonly flown?: number;
  /** frames that it is read from, as in ClipFrames.t */
  readonly frames: readonly [number, number];
  /** what it is called on an estimate sheet */
  readonly name: string;
}

const TAU = 2 * Math.PI;
const turns = ({ value, plusMinus }: Measured): Measured => ({ value: value / TAU, plusMinus: plusMinus / TAU });

const idOf = ({ from, to }: Pick<TurnTime, 'from' | 'to'>): string => `turn ${from} ${to}`;

/** In the order in which they are shown. */
export function clipRows(times: ClipTimes, flown?: FlownTimes): ClipRow[] {
  const frameOf = (kind: MarkKind, quarters?: number): number =>
    times.marks.find(({ mark }) => mark.kind === kind && mark.quarters === quarters)?.mark.frame ?? Number.NaN;
  const ofTurn = (quarters: number): number => (quarters === 0 ? frameOf('takeoff') : frameOf('turn', quarters));
  const air: [number, number] = [frameOf('takeoff'), frameOf('landing')];
  const stop: [number, number] = [frameOf('landing'), frameOf('rest')];
  const { airTime, up, rise, handOff, braking, whole } = times;
  const rows: (ClipRow | undefined)[] = [
    airTime && row('airTime', 'Air time', 'time', airTime, air, 'T', flown?.airTime),
    up && row('up', 'Speed up', 'speed', up, air, 'v_up', flown?.up),
    rise && row('rise', 'Rise', 'length', rise, air, 'rise', flown?.rise),
    ...times.turns.map((turn, k) => {
      const name = turn.to - turn.from === 1 ? `quarter_${turn.to}` : `quarters_${turn.from + 1}_${turn.to}`;
      const frames: [number, number] = [ofTurn(turn.from), ofTurn(turn.to)];
      return row(idOf(turn), wordTurn(turn), 'rate', turns(turn.rate), frames, name, flown && flown.turns[k] / TAU);
    }),
    whole &&
      row(
        idOf(whole),
        wordWhole(whole),
        'rate',
        turns(whole.rate),
        [ofTurn(whole.from), ofTurn(whole.to)],
        'turning',
        flown?.whole && flown.whole / TAU,
      ),
    handOff && row('handOff', 'Hand off', 'time', handOff, [frameOf('takeoff'), frameOf('handOff')], 'hand_off'),
    braking && row('braking', 'Braking', 'time', braking.time, stop, 'braking'),
    braking && row('weights', 'Mean force in it', 'weights', braking.weights, stop, 'load'),
  ];
  return rows.filter((one) => one !== undefined);
}

function row(
  id: string,
  label: string,
  quantity: ClipQuantity,
  clip: Measured,
  frames: readonly [number, number],
  name: string,
  flown?: number,
): ClipRow {
  return { id, label, quantity, clip, frames, name, ...(flown !== undefined && !Number.isNaN(flown) && { flown }) };
}

const SUFFIXES = ['th', 'st', 'nd', 'rd'];
const ordinal = (n: number): string => `${n}${(n % 100 > 10 && n % 100 < 14 ? 'th' : SUFFIXES[n % 10]) ?? 'th'}`;

/** "2nd quarter", "2nd to 4th quarter" */
const wordTurn = ({ from, to }: Pick<TurnTime, 'from' | 'to'>): string =>
  to - from === 1 ? `${ordinal(to)} quarter` : `${ordinal(from + 1)} to ${ordinal(to)} quarter`;
/** "Whole turn", "2 whole turns", "3 quarters together" */
const wordWhole = ({ to }: Pick<TurnTime, 'to'>): string =>
  to === 4 ? 'Whole turn' : to % 4 === 0 ? `${to / 4} whole turns` : `${to} quarters together`;

/** The number and its ± with its unit: "1.025", "± 0.012 s". */
export function wordMeasured(
  { quantity, clip }: ClipRow,
  numbers = PLAIN_CLIP,
): readonly [value: string, error: string] {
  const decimals = DECIMALS[quantity];
  const unit = numbers.unit(quantity);
  const value = numbers.number(quantity, clip.value, decimals);
  if (!Number.isFinite(clip.plusMinus)) return [value, `${unit}, ± not known`];
  const least = 10 ** -decimals;
  return [value, `± ${numbers.number(quantity, Math.max(clip.plusMinus, least), decimals)}${unit ? ` ${unit}` : ''}`];
}

/** The same of the flown skill, without a unit; a dash: it has none. */
export const wordFlown = ({ quantity, flown }: ClipRow, numbers = PLAIN_CLIP): string =>
  flown === undefined ? '–' : numbers.number(quantity, flown, DECIMALS[quantity]);

interface ClipRun {
  readonly text: string;
  readonly isStrong?: true;
}
const strong = (text: string): ClipRun => ({ text, isStrong: true });

/** "In the clip 1.02 s in the air, rises 1.24 m. A flies 1.04 s, 14 ± 12 ms longer."; empty before there is an air time. */
export function wordClip({ airTime, rise }: ClipTimes, flown?: FlownTimes, numbers = PLAIN_CLIP): ClipRun[] {
  if (!airTime) return [];
  const say = (quantity: ClipQuantity, value: number): string =>
    [numbers.number(quantity, value, 2), numbers.unit(quantity)].filter((part) => part !== '').join(' ');
  const runs = [{ text: 'In the clip ' }, strong(say('time', airTime.value)), { text: ' in the air' }];
  if (rise) runs.push({ text: ', rises ' }, strong(say('length', rise.value)));
  runs.push({ text: '.' });
  if (!flown) return runs;
  const longer = flown.airTime - airTime.value;
  const isSame = Math.abs(longer) <= airTime.plusMinus;
  runs.push({ text: ' A flies ' }, strong(say('time', flown.airTime)), { text: ', ' });
  if (isSame) runs.push({ text: 'as long within the error.' });
  else runs.push(strong(wordLonger(longer, airTime.plusMinus)), { text: ` ${longer > 0 ? 'longer' : 'shorter'}.` });
  return runs;
}

/** By how much, with its ±, where that is more than the ±: "14 ± 12 ms". */
export const wordLonger = (s: number, plusMinus: number): string =>
  Math.abs(s) < 0.1995
    ? `${(1000 * Math.abs(s)).toFixed(0)} ± ${Math.max(1, 1000 * plusMinus).toFixed(0)} ms`
    : `${Math.abs(s).toFixed(2)} ± ${Math.max(0.01, plusMinus).toFixed(2)} s`;

const SHEET_UNITS: Readonly<Record<ClipQuantity, string>> = { ...UNITS, weights: '' };

/** A line of an estimate sheet; `taken`: names that its lines have. */
export function clipSheetLine(one: ClipRow, hz: number, taken: ReadonlySet<string> = new Set()): string {
  const { value, plusMinus } = one.clip;
  const unit = SHEET_UNITS[one.quantity];
  const isKnown = Number.isFinite(plusMinus) && plusMinus > 0;
  // two figures of the ±
  const decimals = isKnown ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(plusMinus)))) : 4;
  const quantity = (v: number): string => `${v.toFixed(decimals)}${unit ? ` ${unit}` : ''}`;
  let name = one.name;
  for (let k = 1; taken.has(name); k++) name = k === 1 ? `${one.name}_clip` : `${one.name}_clip${k}`;
  const [from, to] = one.frames.map((frame) => frame + 1);
  const spread = isKnown ? ` +- ${quantity(plusMinus)}` : '';
  return `${name} = ${quantity(value)}${spread}  # clip, frames ${from} to ${to} at ${Number(hz.toFixed(2))} a second`;
}

const MARKS: Readonly<Record<MarkKind, string>> = {
  takeoff: 'take-off',
  highest: 'highest point',
  landing: 'landing',
  turn: 'turn',
  handOff: 'hand off',
  rest: 'rest',
};
const wordMark = (mark: ClipMark | undefined): string => {
  if (!mark) return 'mark';
  return mark.kind === 'turn'
    ? `turn of ${mark.quarters} ${mark.quarters === 1 ? 'quarter' : 'quarters'}`
    : MARKS[mark.kind];
};
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `marks`: the list that was given. Frames count from 1. */
export function wordMarkFault(fault: MarkFault, marks: readonly ClipMark[]): string {
  if (fault.kind === 'rate') {
    const { rise } = fault;
    const high = rise < 0.1 ? `${(100 * rise).toFixed(1)} cm` : `${rise.toFixed(1)} m`;
    return `${fault.airTime.toFixed(2)} s in the air is a rise of ${high}, as high up as down. Is the true rate right?`;
  }
  const mark = marks[fault.mark];
  const name = wordMark(mark);
  const at = (one: ClipMark | undefined): string => `${wordMark(one)}, frame ${(one?.frame ?? Number.NaN) + 1},`;
  switch (fault.kind) {
    case 'noFrame':
      return `The ${name} is not used: the clip has no frame ${mark.frame + 1}.`;
    case 'began':
      return `The ${name} is not used: it is so in the first frame, and when it began is not seen.`;
    case 'quarters':
      return 'A turn is not used: it counts whole quarters, 1 to 160.';
    case 'row':
      return `The ${name} is not used: its place in the picture is a share of the height, 0 to 1.`;
    case 'twice':
      return `There are two marks of ${name}; that of frame ${marks[fault.first].frame + 1} counts.`;
    case 'order':
      return `${capital(at(mark))} is not used: it has to be ${fault.is === 'early' ? 'after' : 'before'} ${at(marks[fault.other]).slice(0, -1)}.`;
  }
}

/** px: more is left at marked places than marks are off (judgement: three times 1.5 px). */
const MUCH_LEFT = 4.5;

/** What does not agree in what the camera was solved from; empty: nothing. */
export function wordSightFaults({ leftPx, view }: ClipSight): string[] {
  if (!(leftPx > MUCH_LEFT)) return [];
  const asked = view.how === 'given' ? 'the sizes and the field of view' : 'the sizes';
  return [`Marks are ${leftPx.toFixed(0)} pixels from where a camera would see them. Are ${asked} right?`];
}

/** What no number beside it can say. */
export function wordClipCaveats({
  how,
  lines,
}: {
  readonly how?: ClipSight['view']['how'];
  readonly lines?: number;
}): string[] {
  return [
    'Tilt, twist, and which side is left are inferred from one camera. A second clip from the front would settle them.',
    'A ± holds what frames and marks can be off, not what an eye takes for a quarter turn.',
    ...(how === 'parallel'
      ? ['The figure is drawn in parallel: nearer is not larger, and the camera is taken as level and square on.']
      : []),
    ...(lines === undefined || Number.isNaN(lines)
      ? ['How long a picture takes to be read is not known: nothing is corrected for it.']
      : []),
  ];
}
