/** The user's shelf as the page sees it: what stands there, how the open skill relates to it, and what was just done. */
import { type Accessor, createMemo, createSignal, onCleanup } from 'solid-js';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import { setAthlete } from '../document/edits.ts';
import { type AthleteEntry, nameOf, type ShelfEntry, type SkillEntry } from '../document/shelf.ts';
import type { Bench } from './bench.ts';
import { shelfTexts } from './shelf-words.ts';
import { getPart } from './tool.ts';

const t = shelfTexts;

export type ShelfState = 'unsaved' | 'changed' | 'saved';

export interface UserShelf {
  readonly skills: Accessor<readonly SkillEntry[]>;
  readonly athletes: Accessor<readonly AthleteEntry[]>;
  /** the browser gives no database */
  readonly refused: Accessor<boolean>;
  /** how the open skill stands against its entry */
  readonly state: Accessor<ShelfState>;
  save(): Promise<void>;
  saveCopy(): Promise<void>;
  saveAthlete(athlete: Athlete): Promise<AthleteEntry | undefined>;
  openSkill(entry: SkillEntry): void;
  give(athlete: Athlete): void;
  rename(entry: ShelfEntry, name: string): Promise<void>;
  duplicate(entry: ShelfEntry): Promise<void>;
  remove(entry: ShelfEntry): Promise<void>;
}

const made = (bench: Bench): UserShelf => makeUserShelf(bench);
export const useShelf = (bench: Bench): UserShelf => getPart(bench, made);

function makeUserShelf(bench: Bench): UserShelf {
  const { shelf } = bench.ports;
  const [entries, setEntries] = createSignal<readonly ShelfEntry[]>([]);
  const [refused, setRefused] = createSignal(false);
  const reload = async (): Promise<void> => {
    try {
      setEntries(await shelf.list());
      setRefused(false);
    } catch {
      setRefused(true);
    }
  };
  void reload();
  onCleanup(
    shelf.watch((news) => {
      if (news === 'deleted') bench.tell({ text: t.databaseDeleted });
      else void reload();
    }),
  );

  const skills = createMemo(() => entries().filter((e) => e.kind === 'skill'));
  const athletes = createMemo(() => entries().filter((e) => e.kind === 'athlete'));
  const state = createMemo<ShelfState>(() => {
    const origin = bench.origin();
    if (!origin) return 'unsaved';
    const own = skills().find((e) => e.id === origin.id);
    if (!own) return 'unsaved';
    return own.revision === origin.revision && JSON.stringify(own.value) === JSON.stringify(bench.file())
      ? 'saved'
      : 'changed';
  });

  /** Does it, shows what stands now, and says what became of it; a refusal is said with the way out. */
  const act = async (work: () => Promise<string | undefined>): Promise<void> => {
    try {
      const said = await work();
      await reload();
      if (said) bench.tell({ text: said });
    } catch {
      bench.tell({ text: t.refused, action: { title: t.saveFile, run: () => bench.saveFile() } });
    }
  };
  const put = (file: SkillFile, base = bench.origin()): Promise<void> =>
    act(async () => {
      const { entry, isCopy } = await shelf.saveSkill(file, base, t.copyElsewhere);
      const isSame = JSON.stringify(bench.file()) === JSON.stringify(file);
      const origin = { id: entry.id, revision: entry.revision };
      if (isCopy && isSame) bench.open(entry.value, t.copyElsewhere(file.title), origin);
      else bench.setOrigin(origin);
      if (isCopy) return t.madeCopy(file.title, entry.value.title);
      return entry.revision > 1 ? t.savedChanges(file.title) : t.savedTo(file.title);
    });

  return {
    skills,
    athletes,
    refused,
    state,
    save: () => put(bench.file()),
    saveCopy: () => {
      const titles = new Set(skills().map(nameOf));
      let title = bench.file().title;
      while (titles.has(title)) title = t.copyOf(title);
      const file = { ...bench.file(), title };
      bench.open(file, t.saveCopy);
      return put(file, undefined);
    },
    saveAthlete: async (athlete) => {
      let kept: AthleteEntry | undefined;
      await act(async () => {
        kept = await shelf.saveAthlete(athlete);
        return t.savedTo(athlete.name);
      });
      return kept;
    },
    openSkill: (entry) =>
      bench.open(structuredClone(entry.value), entry.value.title, { id: entry.id, revision: entry.revision }),
    give: (athlete) => bench.edit(setAthlete(bench.file(), structuredClone(athlete)), t.given(athlete.name)),
    rename: (entry, name) =>
      act(async () => {
        const origin = bench.origin();
        const isOpen = origin?.id === entry.id && origin.revision === entry.revision;
        const renamed = await shelf.rename(entry.id, name);
        if (!renamed) return t.gone(nameOf(entry));
        // the open skill goes with its entry: its next save is no change of somebody else's
        if (isOpen && renamed.kind === 'skill') {
          bench.setOrigin({ id: renamed.id, revision: renamed.revision });
          bench.edit({ ...bench.file(), title: renamed.value.title }, t.rename);
        }
        return t.renamed(nameOf(renamed));
      }),
    duplicate: (entry) =>
      act(async () => ((await shelf.duplicate(entry.id, t.copyOf(nameOf(entry)))) ? undefined : t.gone(nameOf(entry)))),
    remove: async (entry) => {
      await act(async () => {
        const removed = await shelf.remove(entry.id);
        if (!removed) return t.gone(nameOf(entry));
        bench.tell({
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
