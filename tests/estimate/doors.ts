// What a sheet passes through on its way from text to page.
export { computeSheet } from '../../sim/estimate/compute-sheet.ts';
export { formatSheetCsv } from '../../sim/estimate/sheet-csv.ts';
export { formatSheetPage } from '../../sim/estimate/sheet-page.ts';
export { readLinks } from '../../sim/index.ts';
