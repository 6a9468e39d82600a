/** How a table goes out: as CSV for people's tools, or numbers alone for a loader that takes nothing else. */
import { type Provenance, provenanceCsv } from './provenance.ts';

export interface TableStyle {
  /** in lines over the names; never over numbers alone */
  readonly from?: Provenance;
  /** one line of names, then numbers: no lines of words, no cell of words, NaN where nothing is defined */
  readonly isNumeric?: boolean;
}

export const originLines = ({ from, isNumeric }: TableStyle): string => (from && !isNumeric ? provenanceCsv(from) : '');

/** A number as a cell has it: the shortest decimal that reads back to the same. */
export const numberCell = (x: number, { isNumeric }: TableStyle): string =>
  Number.isFinite(x) ? String(x) : isNumeric ? 'NaN' : '';

/** RFC 4180: names of a tree of one's own may hold a comma; where there are numbers alone they hold neither comma, quote nor space. */
export const nameCell = (text: string, { isNumeric }: TableStyle): string =>
  isNumeric ? text.replace(/[\s",#]+/g, '_') : quoteCell(text);

export const quoteCell = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
