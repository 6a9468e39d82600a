/** What a sheet is asked and what it comes to. Plain data; numbers come back as text for people too. */
import type { LineResult, MathNode } from '../../../sim/index.ts';
import type { SheetSkill } from './sheet-skill.ts';

interface SheetPageHead {
  readonly title: string;
  readonly lesson?: string;
  readonly skill?: string;
  readonly caution: string;
}

export interface SheetRequest extends SheetSkill {
  readonly lines: readonly string[];
  readonly measure?: 'metric' | 'imperial';
  /** also as CSV, or as a page to print */
  readonly csv?: true;
  readonly page?: SheetPageHead;
}

/** One line of the sheet as it is shown. */
export interface SheetRow {
  readonly result: LineResult;
  /** of a quantity */
  readonly formula?: MathNode;
  /** the formula with numbers in place of names */
  readonly numbers?: string;
  readonly value?: string;
  readonly plusMinus?: string;
  readonly unit?: string;
  readonly least?: string;
  readonly greatest?: string;
  /** how far off the middle the ends of 95 % lie */
  readonly factor?: string;
  readonly simulated?: string;
  readonly ratio?: string;
  /** size of a plain body, with its unit */
  readonly size?: string;
}

export interface SheetAnswer {
  readonly rows: readonly SheetRow[];
  readonly csv?: string;
  readonly page?: string;
}
