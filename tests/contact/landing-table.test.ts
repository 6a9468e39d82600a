// Prints the drop table of docs/landing.md: SHAPEFLIGHT_FIT=1 npx vitest run tests/contact/landing-table.test.ts
import { test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { makeBody, readAthlete } from '../../sim/index.ts';
import { drop, PUBLISHED } from './drops.ts';

test.runIf(process.env.SHAPEFLIGHT_FIT === '1')('drops of five athletes', () => {
  for (const id of ['ilse-marrow', 'tobias-fenn', 'runa-holt', 'jory-quill', 'nell-oakum'])
    for (const { height } of PUBLISHED) {
      const d = drop(makeBody(readAthlete(athletes[id])), height, undefined, 4);
      const f = (x: number, digits = 0): string => x.toFixed(digits);
      console.log(
        `| ${id} | ${height} | ${f(d.peak, 1)} after ${f(1000 * d.peakAt)} ms | ${f(1000 * d.stop)} | ${f(d.impact.knee)} / ${f(d.impact.hip)} / ${f(d.impact.ankle)} in ${f(1000 * d.impact.t)} | ${f(d.largestKnee)} | ${f(100 * d.shares.hip)} / ${f(100 * d.shares.knee)} / ${f(100 * d.shares.ankle)} | ${d.run.ending.kind} |`,
      );
    }
});
