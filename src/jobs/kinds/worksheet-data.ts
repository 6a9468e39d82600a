/** What a worksheet is asked and what it comes to. Plain data; numbers come back as text for people too. */
import type { AnswerRead, ClassOfFiles, KeyValue, Worksheet } from '../../../sim/index.ts';
import type { SheetRow } from './sheet-data.ts';
import type { SheetSkill } from './sheet-skill.ts';

export interface WorksheetRequest extends Omit<SheetSkill, 'file'> {
  readonly worksheet: Worksheet;
  readonly measure?: 'metric' | 'imperial';
  /** the simulated values of these questions, and of no other, are answered; 'all': for who writes the worksheet */
  readonly open: readonly number[] | 'all';
}

export interface WorksheetNumbers {
  /** of each line of the sheet, without what it is set against */
  readonly sheet: readonly SheetRow[];
  /** of each question: the working, where a number is asked for and something is written */
  readonly workings: readonly (SheetRow | undefined)[];
  /** of each question: the answer as it is read; undefined where words are asked for */
  readonly answers: readonly (AnswerRead | undefined)[];
  /** of each question that is open and asks for a number */
  readonly simulated: readonly (KeyValue | undefined)[];
  /** where all is open: of each question, the lines of the sheet that hold its answer already */
  readonly givenAway?: readonly (readonly number[])[];
}

export interface ClassRequest extends Omit<SheetSkill, 'file'> {
  readonly class: ClassOfFiles;
}
