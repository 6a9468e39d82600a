/** A text as a code to scan (QR, ISO/IEC 18004): its modules, and one path that draws them, a module a unit. */
import { correction, generate } from 'lean-qr';

/** Modules that stay light around it, by the standard. */
export const QUIET = 4;
/** Bytes of the largest code at the least correction. */
const MOST_BYTES = 2953;

export interface CodePicture {
  /** modules on a side, without the quiet zone */
  readonly size: number;
  /** SVG, from the corner of the first module */
  readonly path: string;
}

/** Else the text is too long for any code. */
export const hasCode = (text: string): boolean => new TextEncoder().encode(text).length <= MOST_BYTES;

/** Takes some 10 ms. Throws where the text is too long. */
export function makeCode(text: string): CodePicture {
  const bits = generate(text, { minCorrectionLevel: correction.L });
  let path = '';
  for (let y = 0; y < bits.size; y++)
    for (let x = 0; x < bits.size; x++) {
      if (!bits.get(x, y)) continue;
      let end = x + 1;
      while (end < bits.size && bits.get(end, y)) end++;
      path += `M${x} ${y}h${end - x}v1h${x - end}z`;
      x = end;
    }
  return { size: bits.size, path };
}
