// Numbers as people read and type them.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planRows } from '../../src/app/plot/row-plan.ts';
import { formatNumber, parseNumber } from '../../src/ui/numbers.ts';

describe('numbers', () => {
  it('carry a true minus, a narrow space in thousands, and no minus on zero', () => {
    expect(formatNumber(-1620.4, 0)).toBe('\u22121\u202f620');
    expect(formatNumber(-0.004, 2)).toBe('0.00');
    expect(formatNumber(Number.NaN, 2)).toBe('–');
  });

  it('are read back as they are written', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (v) => {
        expect(parseNumber(formatNumber(v, 3))).toBeCloseTo(v, 3);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it.each(['', 'abc', '1e3', '1.2.3', '--1', '12 m'])('%s is no number', (typed) => {
    expect(parseNumber(typed)).toBeNaN();
  });

  it('may be typed with a comma', () => {
    expect(parseNumber(' 4,60 ')).toBe(4.6);
  });
});

describe('rows under the floor', () => {
  const wishes = [
    { id: 'shapes', least: 60, grow: 0, gap: 4, yields: 0 },
    { id: 'rate', least: 70, grow: 2, gap: 10, yields: 1 },
    { id: 'energy', least: 40, grow: 1, gap: 10, yields: 5 },
  ];

  it('fill the height and do not overlap', () => {
    const plan = planRows(wishes, 400);
    const boxes = [...plan.values()];
    for (let i = 1; i < boxes.length; i++)
      expect(boxes[i].y).toBeGreaterThanOrEqual(boxes[i - 1].y + boxes[i - 1].height);
    const last = boxes[boxes.length - 1];
    expect(last.y + last.height).toBeGreaterThan(395);
    expect(last.y + last.height).toBeLessThanOrEqual(401);
  });

  it('give way from the one that yields first, and shapes never do', () => {
    expect([...planRows(wishes, 160).keys()]).toEqual(['shapes', 'rate']);
    expect([...planRows(wishes, 20).keys()]).toEqual(['shapes']);
  });
});
