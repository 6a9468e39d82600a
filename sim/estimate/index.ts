/** What loadEstimate() brings: sheets computed, set and written. The only part of sim that loads mathjs. */
export { computeSheet } from './compute-sheet.ts';
export { formatRatio } from './estimate-words.ts';
export { figuresIn, figuresOf, formatFigures, plusMinus, showUnit, spreadFactor } from './figures.ts';
export { formatMathml, type MathNode, setExpression, setFormula, setName } from './mathml.ts';
export { formatSheetCsv } from './sheet-csv.ts';
export { formatSheetPage, type PageHead } from './sheet-page.ts';
export { UNIT_NAMES } from './units.ts';
