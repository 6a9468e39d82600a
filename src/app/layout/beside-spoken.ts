/** The numbers of two ways, read out. */
import { sayNumber, unitOf } from '../../ui/units.ts';
import type { Beside } from '../beside.ts';
import type { BesideRows } from '../beside-numbers.ts';
import { listTitles } from './beside-list.tsx';
import { listTwoRows } from './beside-three.tsx';

export function speakTwo(rows: BesideRows, beside: Beside): string[] {
  const titles = listTitles(beside);
  return listTwoRows(rows, beside).map(({ id, quantity, decimals, words: { lead, rest } }, i) => {
    const [own, other] = [rows.own, rows.other].map((one) => sayNumber(quantity, one[id], decimals));
    return `${titles[i]} A ${own}, ${beside.letter} ${other} ${unitOf(quantity)}${lead ? `, ${lead} ${rest}` : ''}`;
  });
}
