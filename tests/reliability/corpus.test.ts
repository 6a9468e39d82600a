// Whatever is opened is read or refused in one plain line, and changes nothing that others share. `npm run test:all` runs all of it.
import { describe, expect, test } from 'vitest';
import { casesOf } from '../corpus.ts';
import { CORPUS_COUNTS, CORPUS_SEED } from './corpus/counts.ts';
import { FOUND, inputOf } from './corpus/found.ts';
import { makeInput } from './corpus/kind.ts';
import { KINDS } from './corpus/kinds.ts';
import { LawBroken, type Outcome } from './corpus/law.ts';

test('there are two thousand inputs, and every kind is counted', () => {
  expect(CORPUS_COUNTS.map(({ kind }) => kind)).toEqual(KINDS.map(({ name }) => name));
  expect(CORPUS_COUNTS.reduce((n, { whole }) => n + whole, 0)).toBeGreaterThanOrEqual(2000);
});

describe.each(CORPUS_COUNTS)('$kind', ({ kind: name, whole, sample }) => {
  const kind = KINDS.find((one) => one.name === name);
  test('each is read as it should be, or refused in one plain line', { timeout: 600_000 }, async () => {
    const broken: string[] = [];
    const found: Record<Outcome, number> = { read: 0, refused: 0 };
    for (let number = 0; kind && number < casesOf(whole, sample); number++) {
      const input = makeInput(kind, CORPUS_SEED, number);
      try {
        found[await kind.run(input)]++;
      } catch (error) {
        if (!(error instanceof LawBroken)) throw error;
        broken.push(`${name} ${number}, ${input.what}: ${error.message}`);
      }
    }
    expect(broken).toEqual([]);
    // neither of the two laws is about nothing
    expect(Math.min(found.read, found.refused)).toBeGreaterThan(0);
  });

  test('the same number is the same input', () => {
    if (!kind) throw new Error(`no kind ${name}`);
    expect(makeInput(kind, CORPUS_SEED, 3)).toEqual(makeInput(kind, CORPUS_SEED, 3));
    expect(makeInput(kind, CORPUS_SEED, 3)).not.toEqual(makeInput(kind, CORPUS_SEED, 4));
  });
});

test.each(FOUND.map((one) => [one.kind, one.what, one] as const))('found before: %s, %s', async (name, _, one) => {
  await KINDS.find((kind) => kind.name === name)?.run(inputOf(one));
});
