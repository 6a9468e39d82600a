// A kind of input: how a damaged one is made from a seed, and what has to hold of it.
import { textOfBytes } from '../../../sim/index.ts';
import { type Outcome, tryRead } from './law.ts';
import { makeRandom, mixSeeds, type Random } from './random.ts';

export interface Input {
  /** as it is opened */
  readonly file: string;
  readonly bytes: Uint8Array;
  /** of what, and how it was damaged */
  readonly what: string;
}

export interface CorpusKind {
  readonly name: string;
  make(r: Random): Input;
  /** throws a LawBroken */
  run(input: Input): Outcome | Promise<Outcome>;
}

/** The same input for the same numbers. */
export const makeInput = (kind: CorpusKind, seed: number, number: number): Input =>
  kind.make(makeRandom(mixSeeds(seed, number)));

/** As both doors take it from a file; what is none is refused in words. */
export function textOf({ bytes }: Input): string | undefined {
  const read = tryRead(() => textOfBytes(bytes), '');
  return 'value' in read ? read.value : undefined;
}
