/** A text that somebody typed, as a cell of CSV: one line, quoted where needed, never a formula to a table program (it then begins with an apostrophe), its letters in the order they are read. */
export function typedCell(text: string): string {
  const plain = text.replace(/[\p{Cc}\u2028\u2029]/gu, ' ').replace(/[\u202a-\u202e\u2066-\u2069]/g, '');
  const safe = /^\s*[=+\-@＝＋－＠]/.test(plain) ? `'${plain}` : plain;
  return /[",;]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}
