/** Rows of what the times give, in the units that are set. */
import { type ClipRow, wordMeasured } from '../../../sim/words/clip-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { sayNumber, unitBeside } from '../../ui/units.ts';
import { clipTexts as t } from './clip-words.ts';

export type GivenRow = ClipRow;
type Numbers = NonNullable<Parameters<typeof wordMeasured>[1]>;

/** Values of a take-off that a clip gives. */
export type GivenField = 'airTime' | 'up';
export const fieldOf = ({ id }: GivenRow): GivenField | undefined => (id === 'airTime' || id === 'up' ? id : undefined);

export const clipNumbers: Numbers = {
  number: (quantity, value, decimals) =>
    quantity === 'weights' ? formatNumber(value, decimals) : sayNumber(quantity, value, decimals),
  unit: (quantity) => (quantity === 'weights' ? t.weightsUnit : unitBeside(quantity)),
};

/** Number and unit, to as many figures as those of the row. */
export const sayAs = (row: GivenRow, value: number): string =>
  `${wordMeasured({ ...row, clip: { ...row.clip, value } }, clipNumbers)[0]} ${clipNumbers.unit(row.quantity)}`;
export const sayClip = (row: GivenRow): string => sayAs(row, row.clip.value);
