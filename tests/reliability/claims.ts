// What is held of reliability, and by how many cases: counted from the lists that the tests run.
import { FINDS } from '../estimate/hostile-lines.ts';
import { HOSTILE } from '../recording/hostile/list.ts';
import { CORPUS_COUNTS } from './corpus/counts.ts';
import { fileKinds } from './file-kinds.ts';
import { BESIDE_ENDS, HEAVY_FILES } from './heavy-files.ts';
import { hostileTexts } from './hostile-texts.ts';
import { countBounds } from './long-work.ts';
import { objectNames } from './object-names.ts';
import { oddPlaces, PLACES_IN_TEST } from './odd-places.ts';
import { refusals } from './refusals.ts';
import { ENTRY_PLACES, OTHER_VALUES, SESSION_PLACES, STORAGE_FAULTS } from './storage-faults.ts';
import { TAB_RUNS } from './tabs.ts';
import { SAMPLE_WALK, WALKS } from './walk.ts';
import { WORDS_ALONE, WORST_FILES, WORST_SAMPLE } from './worst-files.ts';

export interface Claim {
  readonly what: string;
  readonly cases: number;
  /** in `npm test`, where it is a sample */
  readonly sample?: number;
  /** from the root of the project */
  readonly test: string;
}

/** Steps of all walks, each before its page is reloaded, killed or left several times. */
const stepsOf = (walks: readonly { readonly steps: number }[]): number =>
  walks.reduce((sum, { steps }) => sum + steps, 0);

export const CLAIMS: readonly Claim[] = [
  {
    what: 'storage that is full, forbidden, silent, aborts, or is deleted, at the start or later',
    cases: STORAGE_FAULTS.length,
    test: 'tests/interface/storage-faults.test.ts',
  },
  {
    what: 'a field of a kept session replaced by a value of another type',
    cases: SESSION_PLACES.length * OTHER_VALUES.length,
    test: 'tests/interface/storage-faults.test.ts',
  },
  {
    what: 'a field of an entry of the shelf replaced so',
    cases: ENTRY_PLACES.length * OTHER_VALUES.length,
    test: 'tests/interface/storage-faults.test.ts',
  },
  {
    what: 'three to five tabs on one entry of the shelf, with locks and without: acts drawn with a seed',
    cases: 2 * TAB_RUNS.whole,
    sample: 2 * TAB_RUNS.sample,
    test: 'tests/interface/three-tabs.test.ts',
  },
  {
    what: 'steps of walks through the page, drawn with a seed, under which it is reloaded, killed, closed or left, also in the middle of a drag',
    cases: stepsOf([SAMPLE_WALK, ...WALKS]),
    sample: SAMPLE_WALK.steps,
    test: 'tests/browser/random-walk.spec.ts',
  },
  { what: 'skills that take long to fly', cases: HEAVY_FILES.length, test: 'tests/reliability/beside.test.ts' },
  {
    what: 'ways in which a flight beside the page does not come',
    cases: BESIDE_ENDS.length,
    test: 'tests/reliability/beside.test.ts',
  },
  {
    what: 'wrong values, each refused with its field and what is allowed, on page and shell',
    cases: refusals.length,
    test: 'tests/reliability/refusals.test.ts',
  },
  {
    what: 'kinds of bytes that are no text of ours',
    cases: fileKinds.length,
    test: 'tests/reliability/file-door.test.ts',
  },
  {
    what: 'texts made to drive a terminal, a table, a page or a file system',
    cases: hostileTexts.length,
    test: 'tests/reliability/hostile-texts.test.ts',
  },
  {
    what: 'names that every object answers to',
    cases: objectNames.length,
    test: 'tests/reliability/object-names.test.ts',
  },
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
  {
    what: 'odd places: kept files damaged, parts that do not arrive, no workers, no canvas, 400 %, text set further apart, other digits, dates and names',
    cases: Object.keys(oddPlaces).length,
    sample: PLACES_IN_TEST.length,
    test: 'tests/browser/odd-places.spec.ts',
  },
  {
    what: 'counts of what is alive that do not grow from one round of work to the next',
    cases: countBounds.length,
    test: 'tests/browser/long-work.spec.ts',
  },
];
