// How many damaged inputs there are, by kind; docs/reliability.md and the tests count by this list.

/** The seed of the corpus; another is another corpus. */
export const CORPUS_SEED = 20261130;

export interface CorpusCount {
  readonly kind: string;
  readonly what: string;
  /** all, which `npm run test:all` runs */
  readonly whole: number;
  /** of them in `npm test` */
  readonly sample: number;
}

export const CORPUS_COUNTS: readonly CorpusCount[] = [
  {
    kind: 'skills',
    what: 'skill files of versions 1 and 2: damaged as JSON or text, or absurd in all that is allowed',
    whole: 1200,
    sample: 30,
  },
  { kind: 'athletes', what: 'athlete files: humans and trees', whole: 300, sample: 25 },
  { kind: 'sheets', what: 'estimate sheets as JSON and as text', whole: 300, sample: 25 },
  { kind: 'tables', what: 'tables: samples, the table of a class, recordings as CSV and TSV', whole: 200, sample: 25 },
  { kind: 'recordings', what: 'recordings as BVH, TRC, C3D and CSV, and maps of them', whole: 400, sample: 40 },
  {
    kind: 'captures',
    what: 'whole recordings of a flight with damaged numbers, from the file to the flight found in it',
    whole: 100,
    sample: 6,
  },
  { kind: 'links', what: 'links of skills and of worksheets', whole: 250, sample: 25 },
  { kind: 'worksheets', what: 'worksheets and answers of a class', whole: 250, sample: 25 },
  {
    kind: 'clips',
    what: 'what a skill keeps of a clip: marks, scale, posed frames',
    whole: 200,
    sample: 40,
  },
  {
    kind: 'kept',
    what: 'records that the browser keeps: sessions, entries of the shelf, sheets',
    whole: 200,
    sample: 40,
  },
];
