// Prints the drop table of docs/landing.md, and peaks of somersault landings: SHAPEFLIGHT_FIT=1 npx vitest run tests/contact/landing-table.test.ts
import { test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { MATS } from '../../sim/contact/mat.ts';
import { makeBody, readAthlete } from '../../sim/index.ts';
import { drop, PUBLISHED } from './drops.ts';
import { landAt } from './landing-sweep.ts';

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

test.runIf(process.env.SHAPEFLIGHT_FIT === '1')('peaks of 60 somersault landings at 4 to 6 m/s', () => {
  for (const surface of ['competitionMat', 'floor'] as const)
    for (const speed of [4, 4.5, 5, 5.5, 6]) {
      const peaks = ['ilse-marrow', 'tobias-fenn'].flatMap((id) => {
        const body = makeBody(readAthlete(athletes[id]));
        // turning back and leaning forward, turning forward and leaning back, not turning
        return [
          [0.15, -8],
          [-0.15, 8],
          [0, 0],
        ].map(([turning, angle]) => {
          const { fy } = landAt(body, MATS[surface], { speed, turning }, angle, { isBatch: false });
          return fy.reduce((a, b) => Math.max(a, b), 0) / (body.mass * 9.81);
        });
      });
      console.log(`${surface} ${speed} m/s: ${peaks.map((x) => x.toFixed(1)).join(' ')}`);
    }
});
