/** The worksheets that come with Shapeflight, each with the id of its skill; apart from the rest so that the page can start without them. */
import type { LockOrder, Question, SheetPart } from '../sim/index.ts';

export interface ReadyWorksheet {
  readonly title: string;
  readonly order: LockOrder;
  /** id of a ready skill */
  readonly skill: string;
  readonly sheet: SheetPart;
  readonly questions: readonly Question[];
}

const files = import.meta.glob<ReadyWorksheet>('./worksheets/*.json', { eager: true, import: 'default' });

export const worksheets: Readonly<Record<string, ReadyWorksheet>> = Object.fromEntries(
  Object.entries(files).map(([path, file]) => [path.replace(/^.*\/|\.json$/g, ''), file]),
);
