// Formulas set as mathematics, and numbers with as many figures as they are known to.
import { describe, expect, test } from 'vitest';
import { figuresOf, formatFigures, showUnit, spreadFactor } from '../../sim/estimate/figures.ts';
import { formatMathml, setExpression, setFormula } from '../../sim/estimate/mathml.ts';
import { readFormula } from '../../sim/estimate/read-formula.ts';
import { tokenize } from '../../sim/estimate/tokens.ts';
import { sheetOf } from './sheet-of.ts';

const set = (text: string): string => formatMathml(setExpression(readFormula(tokenize(text).tokens)));

describe('a formula as mathematics', () => {
  test.each([
    ['a / b', '<mfrac><mi>a</mi><mi>b</mi></mfrac>'],
    ['a^2', '<msup><mi>a</mi><mn>2</mn></msup>'],
    ['sqrt(a)', '<mrow><mo>√</mo><mrow><mo>(</mo><mi>a</mi><mo>)</mo></mrow></mrow>'],
    ['cbrt(a)', '<mroot><mi>a</mi><mn>3</mn></mroot>'],
    ['pi', '<mi mathvariant="normal">π</mi>'],
    ['omega', '<mi>ω</mi>'],
    ['inertia_flip', '<msub><mi mathvariant="normal">inertia</mi><mtext>flip</mtext></msub>'],
    ['5 ft', '<mrow><mn>5</mn><mspace width="0.17em"></mspace><mi mathvariant="normal">ft</mi></mrow>'],
    [
      'a - (b + c)',
      '<mrow><mi>a</mi><mo>−</mo><mrow><mo>(</mo><mrow><mi>b</mi><mo>+</mo><mi>c</mi></mrow><mo>)</mo></mrow></mrow>',
    ],
    [
      '(a + b) * c',
      '<mrow><mrow><mo>(</mo><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mo>)</mo></mrow><mo>·</mo><mi>c</mi></mrow>',
    ],
    [
      '(a * b)^2',
      '<msup><mrow><mo>(</mo><mrow><mi>a</mi><mo>·</mo><mi>b</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>',
    ],
    ['(-a)^2', '<msup><mrow><mo>(</mo><mrow><mo>−</mo><mi>a</mi></mrow><mo>)</mo></mrow><mn>2</mn></msup>'],
    ['-a^2', '<mrow><mo>−</mo><msup><mi>a</mi><mn>2</mn></msup></mrow>'],
    ['sin(a)', '<mrow><mi mathvariant="normal">sin</mi><mrow><mo>(</mo><mi>a</mi><mo>)</mo></mrow></mrow>'],
  ])('%s', (text, wanted) => expect(set(text)).toBe(wanted));

  test('what is read back from brackets means the same: a / (b * c) and a / b * c differ', () => {
    expect(set('a / (b * c)')).toBe('<mfrac><mi>a</mi><mrow><mi>b</mi><mo>·</mo><mi>c</mi></mrow></mfrac>');
    expect(set('a / b * c')).toBe('<mrow><mfrac><mi>a</mi><mi>b</mi></mfrac><mo>·</mo><mi>c</mi></mrow>');
  });
  test('a whole line has its name and an equals sign', () =>
    expect(formatMathml(setFormula('T', readFormula(tokenize('2').tokens)))).toBe(
      '<math displaystyle="true"><mrow><mi>T</mi><mo>=</mo><mn>2</mn></mrow></math>',
    ));
});

describe('figures', () => {
  test.each([
    ['x = 0.15 m +- 0.02 m', '0.150', '0.020', 'm'],
    ['x = 1254.03 J +- 95 J', '1,254', '95', 'J'],
    ['x = 55 kg', '55', undefined, 'kg'],
    ['x = 2 * 3.14159265', '6.283', undefined, ''],
    ['x = 12345678 N', '1.235e7', undefined, 'N'],
    ['x = -3 m/s +- 0.5 m/s', '−3.00', '0.50', 'm/s'],
    ['x = 2 kg * (3 m)^2', '18', undefined, 'kg·m²'],
  ])('%s is written as %s', (line, value, plusMinus, unit) => {
    expect(figuresOf(sheetOf([line]).of('x'))).toEqual({ value, unit, ...(plusMinus ? { plusMinus } : {}) });
  });
  test('what cancels is written without a ±', () =>
    expect(figuresOf(sheetOf(['a = 3 +- 1', 'x = (a + 1) / (a + 1)']).of('x'))).toEqual({ value: '1', unit: '' }));
  test('the factor of a result', () =>
    expect(spreadFactor(sheetOf(['a = 3 +- 1', 'x = a']).of('x'))).toBeCloseTo(Math.SQRT2, 2));
  test('units as they are set', () => expect(showUnit('kg m^2/s^2')).toBe('kg·m²/s²'));
  test.each([
    [0, '0'],
    [0.00001, '1e-5'],
    [1.5, '1.5'],
    [Number.POSITIVE_INFINITY, 'no bound'],
    [999.96, '1,000'],
  ])('%d is %s', (x, wanted) => expect(formatFigures(x)).toBe(wanted));
});
