/** What a sheet gives a student: the lines that are values, by their names in words. */
import type { WorksheetNumbers } from '../../engine/class.ts';

interface GivenValue {
  readonly name: string;
  /** as it is written in a working */
  readonly key: string;
  readonly note: string;
  readonly value: string;
  readonly unit: string;
}

export const wordName = (name: string): string =>
  name
    .split('_')
    .filter((part) => part !== '')
    .join(' ')
    .replace(/^./, (letter) => letter.toUpperCase());

export const listGiven = (sheet: WorksheetNumbers['sheet']): GivenValue[] =>
  sheet.flatMap(({ result, value = '', plusMinus, unit = '' }) =>
    result.kind === 'quantity'
      ? [
          {
            name: wordName(result.name),
            key: result.name,
            note: result.note ?? '',
            value: plusMinus ? `${value} ± ${plusMinus}` : value,
            unit,
          },
        ]
      : [],
  );
