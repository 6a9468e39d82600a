/** The text of the worksheet that is written, kept in this browser, and of this tab first: two tabs write two worksheets. */

export const KEY = 'shapeflight.worksheet.writing';

interface DraftStores {
  readonly local: Storage | undefined;
  readonly tab: Storage | undefined;
}

export interface DraftKeep {
  read(): string | null;
  /** false: another load of the page does not find it */
  write(text: string): boolean;
}

const attempt = <T>(work: () => T): T | undefined => {
  try {
    return work();
  } catch {
    return undefined;
  }
};

export function makeDraftKeep({ local, tab }: DraftStores): DraftKeep {
  /** what the browser did not take lasts as long as the page */
  let unkept: string | undefined;
  return {
    read: () => unkept ?? attempt(() => tab?.getItem(KEY)) ?? attempt(() => local?.getItem(KEY)) ?? null,
    write: (text) => {
      const put = (to: Storage | undefined) =>
        attempt(() => {
          to?.setItem(KEY, text);
          return to;
        }) !== undefined;
      const isInTab = put(tab);
      const isKept = put(local);
      // an older one of this tab would be found before it
      if (!isInTab) attempt(() => tab?.removeItem(KEY));
      unkept = isKept ? undefined : text;
      return isKept;
    },
  };
}
