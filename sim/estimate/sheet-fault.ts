/** What is wrong with one line of a sheet, said so that it can be corrected. */
export class SheetFault extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'SheetFault';
  }
}

/** A piece of typed text in a message: short, and on one line. */
export function quote(text: string): string {
  const plain = [...text]
    .map((c) => (/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\u2028\u2029]/u.test(c) ? ' ' : c))
    .join('')
    .trim();
  return `"${plain.length > 40 ? `${plain.slice(0, 37)}...` : plain}"`;
}
