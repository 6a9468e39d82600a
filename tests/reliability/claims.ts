// What is held of reliability, and by how many cases: counted from the lists that the tests run.
import { FINDS } from '../estimate/hostile-lines.ts';
import { HOSTILE } from '../recording/hostile/list.ts';
import { CORPUS_COUNTS } from './corpus/counts.ts';
import { WORDS_ALONE, WORST_FILES, WORST_SAMPLE } from './worst-files.ts';

export interface Claim {
  readonly what: string;
  readonly cases: number;
  /** in `npm test`, where it is a sample */
  readonly sample?: number;
  /** from the root of the project */
  readonly test: string;
}

export const CLAIMS: readonly Claim[] = [
  { what: 'recordings made to do harm', cases: HOSTILE.length, test: 'tests/recording/hostile/hostile.test.ts' },
  { what: 'lines of a sheet made to do harm', cases: FINDS.length, test: 'tests/estimate/hostile.test.ts' },
  ...CORPUS_COUNTS.map(({ what, whole, sample }) => ({
    what: `damaged by rules, with seeds: ${what}`,
    cases: whole,
    sample,
    test: 'tests/reliability/corpus.test.ts',
  })),
  {
    what: 'the worst files, opened and dropped on the page',
    cases: WORST_FILES.length + WORDS_ALONE.length,
    sample: WORST_SAMPLE,
    test: 'tests/browser/bad-files.spec.ts',
  },
];
