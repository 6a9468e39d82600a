// A sheet is data from anywhere: whatever it holds, it ends soon, throws nothing, reaches nothing.
import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { childrenOf, type Expression } from '../../sim/estimate/expression.ts';
import { LONGEST_LINE, MOST_LINES } from '../../sim/estimate/limits.ts';
import { readFormula } from '../../sim/estimate/read-formula.ts';
import { SheetFault } from '../../sim/estimate/sheet-fault.ts';
import { tokenize } from '../../sim/estimate/tokens.ts';
import { computeSheet, formatSheetCsv, formatSheetPage, readLinks } from './doors.ts';
import { FINDS } from './hostile-lines.ts';
import { sheetOf } from './sheet-of.ts';

/** What an expression may be made of; checked on the tree, not on the text. */
const KINDS = new Set(['number', 'unit', 'name', 'link', 'minus', 'operation', 'call']);
function isTame(e: Expression): boolean {
  return KINDS.has(e.kind) && childrenOf(e).every(isTame);
}

const allOf = (lines: readonly string[]): void => {
  const result = computeSheet(lines, readLinks(lines, undefined));
  expect(result.lines).toHaveLength(lines.length);
  formatSheetCsv(lines, result);
  formatSheetPage({ title: 'x', caution: 'y' }, lines, result);
};

describe('a hostile sheet', () => {
  test.each(FINDS.map((line) => [line.slice(0, 60), line]))('%s', (_, line) => {
    const { lines } = computeSheet([line], readLinks([line], undefined));
    const [found] = lines;
    if (found.kind === 'quantity') {
      expect(Number.isFinite(found.value)).toBe(true);
      expect(isTame(found.expression)).toBe(true);
    }
    expect(structuredClone(lines)).toEqual(lines);
    allOf([line]);
  });

  test('most of the worst finds are faults, reported in a short line', () => {
    const faults = FINDS.flatMap((line) => computeSheet([line]).lines).flatMap((l) =>
      l.kind === 'fault' ? [l.message] : [],
    );
    expect(faults.length).toBeGreaterThan(FINDS.length * 0.8);
    for (const message of faults) expect(message.length).toBeLessThan(400);
  });

  const words = fc.constantFrom(
    ...'+ - * / ^ ( ) , . = : ; [ ] { } " \' ! % ? & | < > to vs if +- ± in mod and not # draw for about at pi m kg s J N ft rev deg x y z mass constructor __proto__ prototype import evaluate parse function sqrt sin min {air time} {mass} 1e308 1e-308 0 1 2 0x9 ∞ ℓ0 ² é'.split(
      ' ',
    ),
  );
  const formula = fc.array(words, { maxLength: 24 }).map((parts) => parts.join(' '));
  const line = fc.oneof(
    formula.map((f) => `x = ${f}`),
    formula.map((f) => `y = ${f}`),
    formula,
    fc.string({ maxLength: 120, unit: 'binary' }),
    fc.string({ maxLength: 60 }).map((s) => `z = ${s}`),
  );

  test('fuzzed: never throws, every result a finite number, every tree tame', () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 6 }), (lines) => {
        for (const found of computeSheet(lines, readLinks(lines, undefined)).lines)
          if (found.kind === 'quantity') {
            expect(Number.isFinite(found.value)).toBe(true);
            expect(isTame(found.expression)).toBe(true);
          }
        allOf(lines);
      }),
      { seed: 2024, numRuns: 1500 },
    );
  });

  test('fuzzed: text past our own reading reaches only tame trees or a fault', () => {
    fc.assert(
      fc.property(fc.oneof(formula, fc.string({ maxLength: 80 })), (text) => {
        try {
          expect(isTame(readFormula(tokenize(text).tokens))).toBe(true);
        } catch (error) {
          if (!(error instanceof SheetFault)) throw error;
        }
      }),
      { seed: 77, numRuns: 3000 },
    );
  });

  test('nothing is left behind in objects that all share', () => {
    const before = Object.getOwnPropertyNames(Object.prototype).sort();
    for (const find of FINDS) computeSheet([find], readLinks([find], undefined));
    expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(before);
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  test('a page and a CSV hold its text as text', () => {
    const lines = ['x = 1 # <script>alert(1)</script>', '# <img src=x>', 'y = <b>', 'z = 1 # =1+1', '# "a", b'];
    const result = computeSheet(lines);
    const page = formatSheetPage({ title: '<script>', lesson: '"&<', caution: 'c' }, lines, result);
    expect(page).not.toMatch(/<script|<img|<b>/);
    const csv = formatSheetCsv(lines, result);
    expect(csv.trim().split('\n')).toHaveLength(lines.length + 1);
    expect(csv).not.toMatch(/(^|,)=/m);
  });
});

describe('size', () => {
  test('more lines, longer lines and longer formulas than allowed are faults', () => {
    const many = Array.from({ length: MOST_LINES + 1 }, (_, i) => `a_${i} = ${i}`);
    const { fault, of } = sheetOf(many);
    expect(fault(MOST_LINES)).toContain(`at most ${MOST_LINES} lines`);
    expect(of('a_7').value).toBe(7);
    expect(sheetOf([`x = ${'1'.repeat(LONGEST_LINE)}`]).fault(0)).toContain(`at most ${LONGEST_LINE}`);
    expect(sheetOf([`x = 1${'+1'.repeat(190)}`]).fault(0)).toContain('parts');
  });
  test('lines that double what they need stay one computation each', () => {
    const lines = ['a_0 = 1 +- 0.1', ...Array.from({ length: 150 }, (_, i) => `a_${i + 1} = a_${i} / 2 + a_${i} / 2`)];
    const { of } = sheetOf(lines);
    expect(of('a_150').value).toBeCloseTo(1, 12);
    expect(of('a_150').high).toBeCloseTo(1.1, 9);
  });
  test('the largest sheet that is let through, all of it uncertain and compared', () => {
    const sum = (i: number): string => Array.from({ length: 6 }, (_, k) => `a_${Math.max(0, i - k - 1)}`).join(' + ');
    const lines = [
      'a_0 = 1 +- 0.1 vs {mass}',
      ...Array.from(
        { length: 199 },
        (_, i) => `a_${i + 1} = (${sum(i + 1)}) / 6${i < 59 ? ' +- 0.01' : ''}${i < 39 ? ' vs {mass}' : ''}`,
      ),
    ];
    const links = { mass: { value: 50, dimension: [0, 0, 0] as const, unit: '' } };
    const { faults, of } = sheetOf(lines, links);
    expect(faults).toEqual([]);
    expect(of('a_199').value).toBeCloseTo(1, 9);
  });
});

test('what is let through has the value that the whole of mathjs gives it', () => {
  const mathjs = create(all);
  const leaf = fc.oneof(
    fc.integer({ min: 1, max: 9 }).map(String),
    fc.double({ min: 0.01, max: 100, noNaN: true }).map((x) => x.toFixed(4)),
    // whole turns have a sine of 0 here, of 1e-16 there
    fc.constantFrom('a', 'b', '(pi / 7)'),
  );
  const { tree } = fc.letrec<{ tree: string }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 5 },
      leaf,
      fc.tuple(tie('tree'), fc.constantFrom(' + ', ' - ', ' * ', ' / ', '^2 + '), tie('tree')).map((p) => p.join('')),
      tie('tree').map((t) => `(${t})`),
      tie('tree').map((t) => `-${t}`),
      fc
        .tuple(fc.constantFrom('sqrt', 'sin', 'cos', 'atan', 'abs', 'exp', 'cbrt'), tie('tree'))
        .map(([f, t]) => `${f}(${t})`),
    ),
  }));
  let compared = 0;
  fc.assert(
    fc.property(tree, (text) => {
      const line = sheetOf(['a = 1.7 rad', 'b = 0.3 rad', `x = ${text}`]).result.lines[2];
      const theirs: unknown = mathjs.evaluate(text, { a: 1.7, b: 0.3 });
      if (line.kind !== 'quantity') {
        expect(
          text.length > 380 || typeof theirs !== 'number' || !Number.isFinite(theirs) || line.kind === 'fault',
        ).toBe(true);
        if (typeof theirs === 'number' && Number.isFinite(theirs) && line.kind === 'fault')
          expect(line.message).toMatch(/letters|parts|too large|rad or|divided by|zero|negative/i);
        return;
      }
      compared++;
      expect(line.value).toBeCloseTo(theirs as number, Math.abs(theirs as number) > 1e6 ? -6 : 9);
    }),
    { seed: 31, numRuns: 600 },
  );
  expect(compared).toBeGreaterThan(300);
});
