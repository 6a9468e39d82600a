/** The user's shelf as the page sees it: what is on it, how the open skill relates to it, and what was just done. */
import { type Accessor, batch, createMemo, createSignal, onCleanup } from 'solid-js';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import { type AthleteEntry, nameOf, type ShelfEntry, type SkillEntry } from '../document/shelf.ts';
import { inWords } from '../ui/names.ts';
import { keptState, type Page } from './page.ts';
import { shelfTexts } from './shelf-words.ts';

const t = shelfTexts;
/** ms until a shelf that was refused is asked for again */
const AGAIN = 5000;

type ShelfState = 'unsaved' | 'changed' | 'saved';

export interface UserShelf {
  readonly skills: Accessor<readonly SkillEntry[]>;
  readonly athletes: Accessor<readonly AthleteEntry[]>;
  /** the browser gives no database now; it is asked again */
  readonly refused: Accessor<boolean>;
  /** what is there has been read */
  readonly isRead: Accessor<boolean>;
  /** what is there and cannot be read */
  readonly damaged: Accessor<readonly unknown[]>;
  /** how the open skill compares with its entry */
  readonly state: Accessor<ShelfState>;
  save(): Promise<void>;
  saveCopy(): Promise<void>;
  saveAthlete(athlete: Athlete): Promise<AthleteEntry | undefined>;
  openSkill(entry: SkillEntry): void;
  /** shows what is there now */
  reload(): Promise<void>;
  give(athlete: Athlete): void;
  rename(entry: ShelfEntry, name: string): Promise<void>;
  duplicate(entry: ShelfEntry): Promise<void>;
  remove(entry: ShelfEntry): Promise<void>;
}

function makeUserShelf(page: Page): UserShelf {
  const { services, shell, doc } = page;
  const { shelf } = services;
  const [entries, setEntries] = createSignal<readonly ShelfEntry[]>([]);
  const [refused, setRefused] = createSignal(false);
  const [damaged, setDamaged] = createSignal<readonly unknown[]>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => clearTimeout(timer));
  const reload = async (): Promise<void> => {
    clearTimeout(timer);
    try {
      const list = await shelf.list();
      batch(() => {
        setEntries(list);
        setDamaged(shelf.damaged());
        setRefused(false);
      });
    } catch {
      setRefused(true);
      timer = setTimeout(reload, AGAIN);
    }
  };
  void reload();
  onCleanup(
    shelf.watch((news) => {
      if (news === 'deleted') shell.notify({ text: t.databaseDeleted });
      else void reload();
    }),
  );

  const skills = createMemo(() => entries().filter((e) => e.kind === 'skill'));
  const athletes = createMemo(() => entries().filter((e) => e.kind === 'athlete'));
  const state = createMemo<ShelfState>(() => {
    const origin = doc.origin();
    if (!origin) return 'unsaved';
    const own = skills().find((e) => e.id === origin.id);
    if (!own) return 'unsaved';
    return own.revision === origin.revision && JSON.stringify(own.value) === JSON.stringify(doc.chain())
      ? 'saved'
      : 'changed';
  });

  /** Does it, shows what is there now, and says what became of it; a refusal is said with the way out. */
  const act = async (work: () => Promise<string | undefined>): Promise<void> => {
    try {
      const said = await work();
      await reload();
      if (said) shell.notify({ text: said });
    } catch {
      shell.notify({ text: t.refused, action: { title: t.saveFile, run: () => doc.saveFile() } });
    }
  };
  const put = (file: SkillFile, base = doc.origin()): Promise<void> =>
    act(async () => {
      const id = doc.id();
      const { entry, isCopy } = await shelf.saveSkill(file, base, t.copyElsewhere);
      const isSame = JSON.stringify(doc.chain()) === JSON.stringify(file);
      const origin = { id: entry.id, revision: entry.revision };
      if (isCopy && isSame && doc.id() === id) doc.open(entry.value, t.copyElsewhere(file.title), origin);
      // another skill that was opened meanwhile has its own place
      else if (doc.id() === id) doc.setOrigin(origin);
      if (isCopy) return t.madeCopy(inWords(file.title), inWords(entry.value.title));
      return entry.revision > 1 ? t.savedChanges(inWords(file.title)) : t.savedTo(inWords(file.title));
    });

  return {
    skills,
    athletes,
    refused,
    isRead: () => damaged() !== undefined,
    damaged: () => damaged() ?? [],
    state,
    save: () => put(doc.chain()),
    saveCopy: () => {
      const titles = new Set(skills().map(nameOf));
      let title = doc.file().title;
      while (titles.has(title)) title = t.copyOf(title);
      const file = { ...doc.chain(), title };
      doc.open(file, t.saveCopy);
      return put(file, undefined);
    },
    saveAthlete: async (athlete) => {
      let kept: AthleteEntry | undefined;
      await act(async () => {
        kept = await shelf.saveAthlete(athlete);
        return t.savedTo(inWords(athlete.name));
      });
      return kept;
    },
    openSkill: doc.openEntry,
    reload,
    give: (athlete) => page.athletes.give(structuredClone(athlete), t.given(inWords(athlete.name))),
    rename: (entry, name) =>
      act(async () => {
        const origin = doc.origin();
        const isOpen = origin?.id === entry.id && origin.revision === entry.revision;
        const renamed = await shelf.rename(entry.id, name);
        if (!renamed) return t.gone(nameOf(entry));
        // the open skill goes with its entry: its next save is no change of somebody else's
        if (isOpen && renamed.kind === 'skill') {
          doc.setOrigin({ id: renamed.id, revision: renamed.revision });
          doc.edit({ ...doc.file(), title: renamed.value.title }, t.rename);
        }
        return t.renamed(nameOf(renamed));
      }),
    duplicate: (entry) =>
      act(async () => ((await shelf.duplicate(entry.id, t.copyOf(nameOf(entry)))) ? undefined : t.gone(nameOf(entry)))),
    remove: async (entry) => {
      await act(async () => {
        const removed = await shelf.remove(entry.id);
        if (!removed) return t.gone(nameOf(entry));
        shell.notify({
          text: t.deleted(nameOf(removed)),
          action: {
            title: t.undo,
            run: () =>
              void act(async () => {
                await shelf.restore(removed);
                return t.broughtBack(nameOf(removed));
              }),
          },
        });
        return undefined;
      });
    },
  };
}

export const useShelf = keptState(makeUserShelf);
