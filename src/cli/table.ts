/** Rows as a table of plain text: the first `left` columns to the left, numbers to the right. */
export function formatTable(head: readonly string[], rows: readonly (readonly string[])[], left: number): string {
  const widths = head.map((name, k) => Math.max(name.length, ...rows.map((row) => row[k].length)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, k) => (k < left ? cell.padEnd(widths[k]) : cell.padStart(widths[k])))
      .join('  ')
      .trimEnd();
  return [head, ...rows].map((row) => `  ${line(row)}`).join('\n');
}
