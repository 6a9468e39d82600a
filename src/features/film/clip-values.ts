/** What the times of a clip give, each beside the same of A. */
import type { ClipTimes, FlownTimes, Measured, TurnTime } from '../../../sim/index.ts';
import { type ClipRow, clipRows } from '../../../sim/words/clip-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, unitBeside } from '../../ui/units.ts';
import { clipTexts as t } from './clip-words.ts';

/** Values of a take-off that a clip can give. */
export type GivenField = 'airTime' | 'up' | 'rise';

export interface GivenRow {
  readonly id: string;
  readonly label: string;
  /** in the unit of its quantity, as the page computes it */
  readonly value: Measured;
  readonly quantity: QuantityKind;
  readonly decimals: number;
  /** of what has no unit of the page */
  readonly unit?: string;
  /** the same of A; NaN: it has none */
  readonly a: number;
  readonly field?: GivenField;
  /** as an estimate sheet takes it */
  readonly sheet?: ClipRow;
}

const TAU = 2 * Math.PI;
const per = ({ value, plusMinus }: Measured, by: number): Measured => ({
  value: value / by,
  plusMinus: plusMinus / by,
});

const turnRow = (turn: TurnTime, a: number | undefined, label: string): GivenRow => ({
  id: `turn ${turn.from} ${turn.to}`,
  label,
  value: per(turn.rate, TAU),
  quantity: 'rate',
  decimals: 2,
  a: a === undefined ? Number.NaN : a / TAU,
});

/** `flown`: the same of A. */
export function givenRows(times: ClipTimes, flown: FlownTimes): GivenRow[] {
  const { airTime, rise, turns, whole, handOff, braking } = times;
  const seconds = { quantity: 'time', decimals: 3 } as const;
  const rows: (GivenRow | undefined)[] = [
    airTime && {
      id: 'airTime',
      label: t.rows.airTime,
      value: airTime,
      ...seconds,
      a: flown.airTime,
      field: 'airTime',
    },
    times.up && {
      id: 'up',
      label: t.rows.up,
      value: times.up,
      quantity: 'speed',
      decimals: 2,
      a: flown.up,
      field: 'up',
    },
    rise && {
      id: 'rise',
      label: t.rows.rise,
      value: rise,
      quantity: 'length',
      decimals: 2,
      a: flown.rise,
    },
    ...turns.map((turn, i) => turnRow(turn, flown.turns[i], t.turnRow(turn.from, turn.to))),
    whole && turns.length > 1 ? turnRow(whole, flown.whole, t.wholeRow(whole.from, whole.to)) : undefined,
    handOff && { id: 'handOff', label: t.rows.handOff, value: handOff, ...seconds, a: Number.NaN },
    braking && { id: 'braking', label: t.rows.braking, value: braking.time, ...seconds, a: Number.NaN },
    braking && {
      id: 'weights',
      label: t.rows.weights,
      value: braking.weights,
      quantity: 'time',
      decimals: 1,
      unit: t.weightsUnit,
      a: Number.NaN,
    },
  ];
  const sheets = clipRows(times);
  return rows.flatMap((row) => (row ? [{ ...row, sheet: sheets.find(({ id }) => id === row.id) }] : []));
}

type Shown = Pick<GivenRow, 'quantity' | 'decimals' | 'unit'>;
export const numberOf = ({ quantity, decimals, unit }: Shown, v: number): string =>
  unit === undefined ? sayNumber(quantity, v, decimals) : formatNumber(v, decimals);
export const unitOf = ({ quantity, unit }: Shown): string => unit ?? unitBeside(quantity);

/** "± 0.012", never nothing. */
export function sayError(row: Shown, plusMinus: number): string {
  if (!Number.isFinite(plusMinus)) return t.errorNotKnown;
  const least = 10 ** -row.decimals;
  return plusMinus < least / 2 ? t.errorUnder(numberOf(row, least)) : `± ${numberOf(row, plusMinus)}`;
}
