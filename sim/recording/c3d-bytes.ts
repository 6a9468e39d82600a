/** Numbers of a C3D file in the byte order of the processor that wrote it (c3d.org, "The C3D File Format User Guide"). Nothing is read past the end. */
import { FieldError } from '../math/field-error.ts';

type Processor = 'Intel' | 'DEC' | 'MIPS';

/** Byte 4 of the parameter section. */
export const PROCESSORS: ReadonlyMap<number, Processor> = new Map([
  [84, 'Intel'],
  [85, 'DEC'],
  [86, 'MIPS'],
]);

export class C3dBytes {
  readonly file: string;
  readonly length: number;
  /** of all reads that follow */
  processor: Processor = 'Intel';
  readonly #view: DataView;

  constructor(file: string, bytes: Uint8Array) {
    this.file = file;
    this.length = bytes.length;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  byte(at: number): number {
    this.#check(at, 1);
    return this.#view.getUint8(at);
  }

  signedByte(at: number): number {
    this.#check(at, 1);
    return this.#view.getInt8(at);
  }

  word(at: number): number {
    this.#check(at, 2);
    return this.#view.getUint16(at, this.processor !== 'MIPS');
  }

  signedWord(at: number): number {
    this.#check(at, 2);
    return this.#view.getInt16(at, this.processor !== 'MIPS');
  }

  float(at: number): number {
    this.#check(at, 4);
    if (this.processor !== 'DEC') return this.#view.getFloat32(at, this.processor === 'Intel');
    return decFloat(this.#view.getUint16(at, true), this.#view.getUint16(at + 2, true));
  }

  text(at: number, length: number): string {
    this.#check(at, length);
    const bytes = new Uint8Array(this.#view.buffer, this.#view.byteOffset + at, length);
    try {
      return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
      return new TextDecoder('windows-1252').decode(bytes);
    }
  }

  #check(at: number, length: number): void {
    if (!(at >= 0 && at + length <= this.length))
      throw new FieldError(`${this.file} byte ${at}`, 'past the end of the file', `0 to ${this.length - 1}`);
  }
}

/** F_floating of the VAX: sign, 8 bits of exponent (excess 128), 0.1f; the word with the sign comes first. Exponent 0 is 0, or with a sign no number. */
function decFloat(high: number, low: number): number {
  const exponent = (high >> 7) & 0xff;
  const isNegative = high >> 15 === 1;
  if (exponent === 0) return isNegative ? Number.NaN : 0;
  const size = (1 + (((high & 0x7f) << 16) | low) / 2 ** 23) * 2 ** (exponent - 129);
  return isNegative ? -size : size;
}
