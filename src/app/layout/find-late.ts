/** What is found comes with words that the first picture does not need: of tools and values, and the pages to read. */
import { findWords } from '../../commands/find-words.ts';
import { listFound } from '../../features/read/pages.ts';
import type { FoundPage } from '../reading.ts';

export interface LateFinds {
  readonly pages: readonly FoundPage[];
  readonly words: typeof findWords;
}

export const listLate = (): LateFinds => ({ pages: listFound(), words: findWords });
