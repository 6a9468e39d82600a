/** What loadEstimate() brings: sheets computed, set and written. The only part of sim that loads mathjs. */

export { calcKeys, calcKeyValue, readLockedAnswers } from './answer-key.ts';
export { computeSheet } from './compute-sheet.ts';
export { formatRatio } from './estimate-words.ts';
export { figuresIn, figuresOf, formatFigures, plusMinus, spreadFactor } from './figures.ts';
export { sizeIn } from './imperial.ts';
export { setFormula, setName } from './mathml.ts';
export { readAnswer, readAnswerIn } from './read-answer.ts';
export { bracedText, formatSheetCsv } from './sheet-csv.ts';
export { formatSheetPage } from './sheet-page.ts';
export { computeStudentSheet, linesThatGiveAway } from './student-sheet.ts';
