/** Lines of a text file, decoded piece by piece: UTF-8, UTF-16, or Windows-1252 where it is neither. Any line ends, also mixed. */
import { FieldError } from '../math/field-error.ts';
import { RECORDING_LIMITS } from './recording-limits.ts';
import type { ReadSteps } from './steps.ts';

type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

const PIECE = 1 << 18;

/** Reads all bytes once; the answer of a valid UTF-8 text costs no more. */
export function* findEncoding(bytes: Uint8Array): ReadSteps<Encoding> {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  if (bytes.length >= 4 && bytes[0] !== 0 && bytes[1] === 0 && bytes[3] === 0) return 'utf-16le';
  if (bytes.length >= 4 && bytes[0] === 0 && bytes[1] !== 0 && bytes[2] === 0) return 'utf-16be';
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for (let from = 0; from < bytes.length; from += 4 * PIECE) {
      decoder.decode(bytes.subarray(from, from + 4 * PIECE), { stream: true });
      yield { done: from / bytes.length };
    }
    decoder.decode();
  } catch {
    return 'windows-1252';
  }
  return 'utf-8';
}

export class TextLines {
  /** of the line that was handed out last, from 1 */
  number = 0;
  /** the line that was handed out last is the file's last and has no line end */
  isUnended = false;
  readonly encoding: Encoding;
  readonly #file: string;
  readonly #bytes: Uint8Array;
  readonly #decoder: TextDecoder;
  #from = 0;
  #lines: string[] = [];
  #at = 0;
  #rest = '';
  #isDecoded = false;
  #isEnded = false;
  #isDue = false;

  constructor(file: string, bytes: Uint8Array, encoding: Encoding) {
    this.#file = file;
    this.#bytes = bytes;
    this.encoding = encoding;
    this.#decoder = new TextDecoder(encoding);
  }

  /** Share of the bytes that are used up. */
  get done(): number {
    return this.#bytes.length === 0 ? 1 : this.#from / this.#bytes.length;
  }

  /** True once for every piece that was decoded: time to pause. */
  isDue(): boolean {
    const was = this.#isDue;
    this.#isDue = false;
    return was;
  }

  next(): string | undefined {
    while (this.#at >= this.#lines.length) if (!this.#decode()) return undefined;
    this.number++;
    this.isUnended = this.#isDecoded && !this.#isEnded && this.#at === this.#lines.length - 1;
    return this.#lines[this.#at++];
  }

  /** The line that was handed out last comes again. */
  unread(): void {
    this.number--;
    this.#at--;
  }

  #decode(): boolean {
    if (this.#isDecoded) return false;
    this.#isDue = true;
    const to = Math.min(this.#bytes.length, this.#from + PIECE);
    const isEnd = to === this.#bytes.length;
    let text = this.#rest + this.#decoder.decode(this.#bytes.subarray(this.#from, to), { stream: !isEnd });
    this.#from = to;
    this.#isDecoded = isEnd;
    // a line feed may follow in the next piece
    const isHeld = !isEnd && text.endsWith('\r');
    if (isHeld) text = text.slice(0, -1);
    this.#lines = text.split(/\r\n|\n|\r/);
    this.#at = 0;
    // after the last line end there is no line
    const last = this.#lines.at(-1) ?? '';
    this.#isEnded = last === '';
    if (!isEnd || this.#isEnded) this.#lines.pop();
    this.#rest = isEnd ? '' : last + (isHeld ? '\r' : '');
    if (this.#rest.length > RECORDING_LIMITS.line)
      throw new FieldError(
        `${this.#file} line ${this.number + this.#lines.length + 1}`,
        'a longer line',
        `lines of at most ${RECORDING_LIMITS.line} characters`,
      );
    return true;
  }
}
