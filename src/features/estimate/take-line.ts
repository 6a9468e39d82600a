/** A line that another part of the page gives, put at the end of the open sheet: one step there, with undo. */
import type { Page } from '../../app/page.ts';
import { estimateStateOf } from './estimate-state.ts';

const NAMED = /^\s*(\p{L}[\p{L}\p{N}_]*)\s*=/u;

/** Gives the title of the sheet. */
export async function takeLine(page: Page, line: (taken: ReadonlySet<string>) => string): Promise<string> {
  const state = estimateStateOf(page);
  await page.services.load.estimating();
  const lines = state.sheet()?.lines ?? [];
  const taken = new Set(lines.flatMap((one) => NAMED.exec(one)?.[1] ?? []));
  // an empty line at the end is one to type into: it is what the new one takes the place of
  const isOpenEnd = lines.length > 0 && lines[lines.length - 1].trim() === '';
  if (isOpenEnd) state.setLine(lines.length - 1, line(taken));
  else state.insertLines(lines.length - 1, [line(taken)]);
  state.desk.settle();
  return state.sheet()?.title ?? '';
}
