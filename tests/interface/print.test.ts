// The print sheet's picture: ten poses, greys only, every flight on one sheet.

import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import { formatPicture } from '../../src/features/print/print-export.ts';
import { textWidth } from '../../src/paper/letter-widths.ts';
import { printing } from '../../src/pictures/print-picture.ts';
import { PRINT_TOKENS } from '../../src/scene/print-scene.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const draw = (id: string) => {
  const result = engine.fly(skills[id]);
  const picture = printing.draw(result, {
    spans: [],
    plots: [
      {
        unit: 'rev/s',
        top: 2,
        low: 0,
        height: 60,
        ticks: [{ value: 2, text: '2' }],
        curves: [{ name: 'twist', values: result.frames.twistRate, width: 2 }],
      },
    ],
    width: 1031,
    airHeight: 236,
    marks: { unit: 'm', perUnitM: 1 },
    seconds: (s) => `${s.toFixed(2)} s`,
  });
  return { result, picture };
};

describe('print picture', () => {
  it.each(Object.keys(skills))('%s: greys only, within the sheet', (id) => {
    const { picture, result } = draw(id);
    const tokens = new Set([...picture.markup.matchAll(/var\(--([a-z0-9-]+)\)/g)].map((m) => m[1]));
    for (const token of tokens) expect(PRINT_TOKENS).toHaveProperty(token);
    for (const colour of Object.values(PRINT_TOKENS)) expect(colour).toMatch(/^#(..)\1\1$/);
    expect(picture.height).toBeLessThan(420);
    expect(picture.markup).toContain(`${result.flight.duration.toFixed(2)} s`);
    expect(picture.markup).not.toContain('NaN');
    // the report has it too, and may not tell what is kept back
    expect(picture.markup).not.toContain('metadata');
  });

  it('a flight from high up is compressed, and says so', () => {
    expect(draw('back-straight-full').picture.isCompressed).toBe(false);
    const high = Object.keys(skills).filter((id) => draw(id).picture.isCompressed);
    expect(high.length).toBeGreaterThan(0);
  });

  it('is complete as a file: title, caution, escaped words, no colour from outside', () => {
    const { picture } = draw('back-straight-full');
    const content = {
      skill: 'A & B <full>',
      who: 'Ilse Marrow',
      dated: 'version A',
      sentence: '1.00 somersault backward',
      likelihood: 'Stands in 7 of 10 of the stated ranges; steps in 3.',
      takeoff: 'speed up 5.00 m/s',
      caution: '',
      code: '',
      picture,
      instants: [],
      rows: [],
      key: 'key',
    };
    const { svg, width } = formatPicture(content, printing.tokens, textWidth);
    expect(svg).toContain('Stands in 7 of 10 of the stated ranges; steps in 3. ');
    expect(svg).toContain('A model, not coaching advice');
    expect(svg).toContain('A &amp; B &lt;full>');
    expect(svg).toContain('--limb-l:#000000');
    expect(width).toBeGreaterThan(picture.width);
    const long = formatPicture(
      { ...content, sentence: 'WIDE WORDS, 1.00 AS WANTED, '.repeat(6) },
      printing.tokens,
      textWidth,
    );
    for (const [, x, size, weight, text] of long.svg.matchAll(
      /<text x="([\d.]+)" y="[\d.]+" font-size="([\d.]+)" font-weight="(\d+)" text-anchor="start">(.*?)<\/text>/g,
    ))
      expect(Number(x) + textWidth(text, Number(size), Number(weight))).toBeLessThanOrEqual(width - 29);
  });
});
