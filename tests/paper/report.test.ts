// The report: sections in their order, nothing cut, the caution and where it is from on the foot of every page.
import { expect, test } from 'vitest';
import { athletes, skills } from '../../presets/index.ts';
import { originOfSkill, provenance } from '../../sim/index.ts';
import { PER_MM } from '../../src/paper/page-svg.ts';
import { drawReport } from '../../src/paper/report.ts';
import { runPieces } from '../../src/scene/pieces.ts';
import { textsIn } from './svg-figures.ts';

const LONG =
  'A sentence of the report that goes on for a while, so that it takes a line and a half or so of the page. ';
const input = {
  name: 'Back somersault, tucked',
  under: 'Version A, 30 November 2026',
  result: [{ text: '1.00 somersault backward, no twist, 0.83 s in the air, lands on the feet' }],
  sections: [
    { heading: 'Results', text: [[{ text: LONG.repeat(4) }]] },
    {
      heading: 'Picture',
      picture: { markup: '<path style="stroke:var(--ink-2)" d="M0 0L790 300"/>', width: 790, height: 300 },
    },
    {
      heading: 'Frames',
      table: {
        head: ['Time, s', 'Somersault so far', 'Twist so far', 'Tilt, °', 'Centre of mass above the floor, m'],
        rows: Array.from({ length: 12 }, (_, i) => [i, 2 * i, 0, 1, 1].map((v) => v.toFixed(2))),
      },
    },
    { heading: 'Limits', text: [[{ text: LONG.repeat(9) }], [{ text: LONG.repeat(9) }], [{ text: LONG.repeat(9) }]] },
  ],
  standing: 'A model, not coaching advice.',
  origin: provenance({
    call: 'a test',
    inputs: [originOfSkill('Back tuck', skills['back-tuck'], athletes['ilse-marrow'], {})],
    tolerance: 1e-10,
    seed: null,
  }),
};

test('it is A4, in as many pages as it needs, each with caution, hash and number', () => {
  const pages = runPieces(drawReport(input));
  expect(pages).toHaveLength(2);
  pages.forEach(({ svg, widthMm, heightMm }, i) => {
    expect([widthMm, heightMm]).toEqual([210, 297]);
    const lines = textsIn(svg);
    const words = lines.map(({ text }) => text).join(' ');
    expect(words).toContain('A model, not coaching advice.');
    expect(words).toMatch(/sha256 [0-9a-f]{64}/);
    expect(words).toContain(`page ${i + 1} of 2`);
    expect(words).not.toContain('Marrow');
    for (const { text, left, right, y, size } of lines) {
      expect(left, text).toBeGreaterThanOrEqual(0);
      expect(right, text).toBeLessThanOrEqual(210 * PER_MM);
      expect(y, text).toBeLessThan(297 * PER_MM - 10);
      expect(size).toBeGreaterThanOrEqual(14.6);
    }
    expect(svg).not.toContain('var(');
  });
});

test('nothing of it is lost, and no two lines of a table are over each other', () => {
  const all = runPieces(drawReport(input)).flatMap(({ svg }) => textsIn(svg));
  const words = all.map(({ text }) => text).join(' ');
  expect(words.match(/A sentence of the report/g)).toHaveLength(31);
  for (const { heading } of input.sections) expect(words).toContain(heading);
  for (let i = 0; i < 12; i++) expect(all.filter(({ text }) => text === (2 * i).toFixed(2)).length).toBeGreaterThan(0);
  for (const page of runPieces(drawReport(input))) {
    const lines = textsIn(page.svg);
    for (const [i, a] of lines.entries())
      for (const b of lines.slice(i + 1)) {
        const isApart = a.right <= b.left + 1 || b.right <= a.left + 1 || Math.abs(a.y - b.y) >= 14;
        expect(isApart, `${a.text} | ${b.text}`).toBe(true);
      }
  }
});
