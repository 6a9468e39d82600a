/** Keeps document and cursor in the browser: at once after a step, a moment after the cursor moved. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import type { History } from '../document/history.ts';
import type { Keeper } from '../document/keep.ts';
import { shelfTexts } from './shelf-words.ts';
import type { Notice } from './shell.ts';

/** ms that the cursor rests before its place is kept */
const REST = 400;

export interface Keeping {
  /** the browser stores what is done */
  readonly isKept: Accessor<boolean>;
  keepNow(): void;
  keepSoon(): void;
  /** the page is looked at again */
  check(): void;
  /** the page goes away */
  leave(): void;
}

interface KeepingHost {
  readonly keeper: Keeper;
  history(): History<SkillFile>;
  cursorS(): number;
  notify(notice: Notice): void;
}

export function createKeeping({ keeper, history, cursorS, notify }: KeepingHost): Keeping {
  const [isKept, setKept] = createSignal(true);
  const keepNow = (): void => {
    void keeper.write({ history: history(), cursorS: cursorS() }).then(setKept);
  };
  keeper.watch((news) => {
    if (typeof news === 'object')
      notify({ text: shelfTexts.newerKept[news.newer.of](news.newer.has, news.newer.reads) });
    else setKept(news === 'kept');
    if (news === 'deleted') notify({ text: shelfTexts.databaseDeleted });
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  return {
    isKept,
    keepNow,
    keepSoon: () => {
      clearTimeout(timer);
      timer = setTimeout(keepNow, REST);
    },
    check: () => void keeper.check(),
    leave: () => keeper.leave({ history: history(), cursorS: cursorS() }),
  };
}
