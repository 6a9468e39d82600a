// Large corpora: `npm test` takes a fixed sample of them (with a fixed seed, the first cases), `npm run test:all` all.
export const isWhole = process.env.SHAPEFLIGHT_WHOLE === '1';

export const casesOf = (whole: number, sample: number): number => (isWhole ? whole : sample);
