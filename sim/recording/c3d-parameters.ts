/** The parameter section of a C3D file: groups and their parameters, each found from the one before it. */
import { FieldError } from '../math/field-error.ts';
import { type C3dBytes, PROCESSORS } from './c3d-bytes.ts';
import { shownName } from './file-place.ts';

/** As many as no file has: the section is at most 255 blocks of 512 bytes. */
const MOST_RECORDS = 20_000;
const MOST_DIMENSIONS = 7;

interface C3dParameter {
  /** bytes of one value: -1 a character, 1 a byte, 2 a word, 4 a float */
  readonly type: number;
  readonly dimensions: readonly number[];
  /** first byte of its values */
  readonly at: number;
  /** how many values */
  readonly count: number;
}

export class C3dParameters {
  readonly #bytes: C3dBytes;
  readonly #all = new Map<string, C3dParameter>();

  /** `block`: from 1, of 512 bytes. Sets the byte order of all that follows. */
  constructor(bytes: C3dBytes, block: number) {
    this.#bytes = bytes;
    const start = 512 * (block - 1);
    const kind = bytes.byte(start + 3);
    const processor = PROCESSORS.get(kind);
    if (!processor)
      throw new FieldError(`${bytes.file} byte ${start + 3}`, kind, '84 (Intel), 85 (DEC) or 86 (MIPS), the processor');
    bytes.processor = processor;
    this.#read(start + 4);
  }

  #read(start: number): void {
    const bytes = this.#bytes;
    const groups = new Map<number, string>();
    const found: { group: number; name: string; parameter: C3dParameter }[] = [];
    for (let at = start, k = 0; at < bytes.length; k++) {
      if (k > MOST_RECORDS)
        throw new FieldError(`${bytes.file} byte ${at}`, `more than ${MOST_RECORDS} parameters`, 'fewer');
      // negative: locked against changes
      const length = Math.abs(bytes.signedByte(at));
      if (length === 0) break;
      const id = bytes.signedByte(at + 1);
      const name = bytes
        .text(at + 2, length)
        .trim()
        .toUpperCase();
      const link = at + 2 + length;
      const step = bytes.word(link);
      if (id < 0) groups.set(-id, name);
      else if (id > 0) found.push({ group: id, name, parameter: this.#parameter(link + 2, name) });
      if (step === 0) break;
      if (step < 2)
        throw new FieldError(`${bytes.file} byte ${link}`, step, 'the way to the next parameter, 2 bytes or more');
      at = link + step;
      if (at > bytes.length)
        throw new FieldError(`${bytes.file} byte ${link}`, step, 'a way to the next parameter within the file');
    }
    for (const { group, name, parameter } of found) {
      const key = `${groups.get(group) ?? ''}:${name}`;
      if (!this.#all.has(key)) this.#all.set(key, parameter);
    }
  }

  #parameter(at: number, name: string): C3dParameter {
    const bytes = this.#bytes;
    const type = bytes.signedByte(at);
    if (![-1, 1, 2, 4].includes(type))
      throw new FieldError(
        `${bytes.file} byte ${at} ${shownName(name)}`,
        type,
        '-1, 1, 2 or 4, the type of a parameter',
      );
    const count = bytes.byte(at + 1);
    if (count > MOST_DIMENSIONS)
      throw new FieldError(
        `${bytes.file} byte ${at + 1} ${shownName(name)}`,
        count,
        `at most ${MOST_DIMENSIONS} dimensions`,
      );
    const dimensions = Array.from({ length: count }, (_, k) => bytes.byte(at + 2 + k));
    const values = dimensions.reduce((product, d) => product * d, 1);
    const from = at + 2 + count;
    if (from + values * Math.abs(type) > bytes.length)
      throw new FieldError(
        `${bytes.file} byte ${at} ${shownName(name)}`,
        `${dimensions.join(' x ')} values`,
        'as many as there are up to the end of the file',
      );
    return { type, dimensions, at: from, count: values };
  }

  /** A number of a parameter; words without sign. Undefined where it is not there. */
  number(key: string, k = 0): number | undefined {
    const found = this.#all.get(key);
    if (!found || found.type < 0 || k >= found.count) return undefined;
    const at = found.at + k * found.type;
    if (found.type === 4) return this.#bytes.float(at);
    return found.type === 2 ? this.#bytes.word(at) : this.#bytes.byte(at);
  }

  /** Texts of a parameter: its first dimension is how long they are, the others how many. Spaces behind fall away. */
  texts(key: string): string[] {
    const found = this.#all.get(key);
    if (found?.type !== -1) return [];
    const [length = 1, ...rest] = found.dimensions;
    const count = rest.reduce((product, d) => product * d, 1);
    if (length === 0) return Array.from({ length: count }, () => '');
    return Array.from({ length: count }, (_, k) =>
      this.#bytes
        .text(found.at + k * length, length)
        .replace(/[\0\s]+$/, '')
        .trim(),
    );
  }
}
