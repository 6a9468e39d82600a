// Large corpora: `npm test` takes a fixed sample of them (with a fixed seed, the first cases), `npm run test:all` all.
export const isWhole = process.env.SHAPEFLIGHT_WHOLE === '1';

export const casesOf = (whole: number, sample: number): number => (isWhole ? whole : sample);

/** One of so many, counted from `from` on: laws of the same list begin at different places, so that each of the list is in some law. */
export const someOf = <T>(all: readonly T[], every: number, from = 0): readonly T[] =>
  isWhole ? all : all.filter((_, i) => i % every === from);
