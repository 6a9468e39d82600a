/** The rows of a class in the order of a heading. No heading ranks anybody: a question is ordered by what was answered. */
import type { ClassCell, ClassRow } from '../../../sim/index.ts';

/** A question is its index. */
export type SortBy = 'no' | 'name' | 'locked' | number;
export interface RowOrder {
  readonly by: SortBy;
  readonly isDown: boolean;
}

export const FILE_ORDER: RowOrder = { by: 'no', isDown: false };

/** Pressed again, a heading turns its order round. */
export const pressHeading = (now: RowOrder, by: SortBy): RowOrder => ({
  by,
  isDown: now.by === by && !now.isDown,
});

/** What has no such value is last, whichever way. */
export function sortRows(rows: readonly ClassRow[], { by, isDown }: RowOrder): readonly ClassRow[] {
  const keyed = rows.map((row) => ({ row, key: keyOf(row, by) }));
  const way = isDown ? -1 : 1;
  return keyed
    .sort((a, b) => {
      if (a.key === undefined || b.key === undefined) return Number(a.key === undefined) - Number(b.key === undefined);
      return way * compare(a.key, b.key) || a.row.no - b.row.no;
    })
    .map(({ row }) => row);
}

const keyOf = (row: ClassRow, by: SortBy): number | string | undefined =>
  by === 'no'
    ? row.no
    : by === 'name'
      ? row.worksheet.student?.name
      : by === 'locked'
        ? row.lockedAt
        : answerOf(row.cells[by]);

const answerOf = (cell: ClassCell): number | string | undefined =>
  cell.kind === 'number' ? cell.value : cell.kind === 'words' ? cell.text : undefined;

const names = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });
const compare = (a: number | string, b: number | string): number =>
  typeof a === 'number' && typeof b === 'number' ? a - b : names.compare(String(a), String(b));
