/** Keeps document and cursor in the browser: at once after a step, a moment after the cursor moved. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';
import type { SkillFile } from '../../sim/index.ts';
import type { History } from '../document/history.ts';
import type { Keeper, KeepNews } from '../document/keep.ts';
import type { KeptSession } from '../document/keep-record.ts';
import type { Damaged } from '../document/keep-start.ts';
import { fileName, saveText } from './file-door.ts';
import { shelfTexts } from './shelf-words.ts';
import type { Notice } from './shell.ts';

/** ms that the cursor rests before its place is kept */
const REST = 400;

export interface Keeping {
  /** the browser stores what is done */
  readonly isKept: Accessor<boolean>;
  /** what was kept before is still to come */
  readonly isReading: Accessor<boolean>;
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
  /** what was kept before has come after the page was opened: false where something was done meanwhile, and it lies under that */
  receive(late: KeptSession): boolean;
  /** as one step */
  open(kept: KeptSession): void;
}

export function createKeeping({ keeper, history, cursorS, notify, receive, open }: KeepingHost): Keeping {
  const [isKept, setKept] = createSignal(true);
  const [isReading, setReading] = createSignal(false);
  const keepNow = (): void => {
    void keeper.write({ history: history(), cursorS: cursorS() }).then(setKept);
  };
  const offer = (kept: KeptSession): void =>
    notify({
      text: shelfTexts.cameLate(kept.history.doc.title),
      action: { title: shelfTexts.open, run: () => open(kept) },
    });
  const hear = (news: KeepNews): void => {
    if (news === 'reading' || news === 'read') setReading(news === 'reading');
    else if (news === 'unreadable') {
      setReading(false);
      notify({ text: shelfTexts.unreadable });
    } else if (typeof news === 'string') {
      setKept(news === 'kept');
      if (news === 'deleted') notify({ text: shelfTexts.databaseDeleted });
    } else if ('newer' in news) notify({ text: shelfTexts.newerKept[news.newer.of](news.newer.has, news.newer.reads) });
    else if ('damaged' in news) sayDamaged(news.damaged, notify);
    else if ('under' in news) offer(news.under);
    else {
      if (!receive(news.late)) offer(news.late);
      keepNow();
    }
  };
  // once the page is whole
  queueMicrotask(() => keeper.watch(hear));
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  return {
    isKept,
    isReading,
    keepNow,
    keepSoon: () => {
      clearTimeout(timer);
      timer = setTimeout(keepNow, REST);
    },
    check: () => void keeper.check(),
    leave: () => keeper.leave({ history: history(), cursorS: cursorS() }),
  };
}

function sayDamaged({ record, steps }: Damaged, notify: KeepingHost['notify']): void {
  const text = steps ? shelfTexts.damagedSteps(steps) : shelfTexts.damaged;
  const run = (): void => saveText(fileName(shelfTexts.damagedName), JSON.stringify(record));
  notify({ text, action: { title: shelfTexts.saveFile, run } });
}
