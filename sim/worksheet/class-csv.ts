/** The answers of a class as CSV: one line for each student and question; names and words as written, numbers in the unit asked for. */
import { originLines, type TableStyle } from '../files/table-style.ts';
import { typedCell } from '../math/typed-cell.ts';
import type { ClassCell, ClassRow, ClassTable } from './class-table.ts';

const HEAD = ['name', 'class', 'question', 'answer', 'unit', 'ratio', 'locked_at', 'remark', 'file'];

/** `style.from`: in lines over the names of the columns. */
export function formatClassCsv({ columns, rows }: ClassTable, style: TableStyle = {}): string {
  const lines = rows.flatMap((row) =>
    columns.map((_, q) => {
      const cell = row.cells[q];
      const { student, answers } = row.worksheet;
      const isNumber = cell.kind === 'number';
      return [
        typedCell(student?.name ?? ''),
        typedCell(student?.class ?? ''),
        String(q + 1),
        isNumber ? String(cell.value) : 'text' in cell ? typedCell(cell.text) : '',
        isNumber ? typedCell(cell.unit) : '',
        isNumber && cell.ratio !== undefined ? String(cell.ratio) : '',
        answers[q].lockedAt ?? '',
        typedCell(remarkOf(cell, row)),
        typedCell(row.file),
      ].join(',');
    }),
  );
  return `${originLines(style)}${[HEAD.join(','), ...lines].join('\n')}\n`;
}

const remarkOf = (cell: ClassCell, { isTwice }: ClassRow): string =>
  [
    ...(cell.kind === 'open' ? ['not locked'] : []),
    ...(cell.kind === 'unread' ? [cell.reason] : []),
    ...(cell.kind === 'number' && cell.guess ? [`${cell.guess}?`] : []),
    ...(isTwice ? ['handed in twice'] : []),
  ].join('; ');
