/** What can be found by its name: commands, typed values, skills, athletes; and what is typed, as a draft. */
import type { DraftSpec } from '../../../sim/index.ts';
import type { Actions } from '../../commands/actions.ts';
import { type Findable, findRanked, RANK } from '../../commands/search.ts';
import { commands } from '../../commands/table.ts';
import { commandTexts } from '../../commands/words.ts';
import { getFields } from '../../document/fields.ts';
import { inWords } from '../../ui/names.ts';
import type { Page } from '../page.ts';
import { codeTexts } from '../say/code-texts.ts';
import type { PresetSkill } from '../services.ts';
import type { UserShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { texts } from '../words.ts';
import type { CodeState } from './code-state.ts';
import type { LateFinds } from './find-late.ts';

const t = commandTexts;

export interface FindEntry extends Findable {
  readonly id: string;
  readonly group: string;
  readonly keys?: readonly string[];
  /** it cannot be done now, and why */
  readonly why?: string;
  run(): void;
}

/** How near a word of the glossary is at most: nearer than letters alone. */
const WORD = 2.9;

/** What commands show when nothing is typed yet: the rest is a word away. */
const FIRST = 60;

export function listEntries(
  { doc, services, shell, flight, athletes }: Page,
  actions: Actions,
  shelf: UserShelf,
  late?: LateFinds,
): FindEntry[] {
  const own = doc.athlete().name;
  const shown = flight.result().names.place;
  const here = ({ about }: PresetSkill): number => Number(about?.place === shown);
  const isOpen = (title: string): boolean => doc.file().title === title;
  return [
    ...commands
      .filter((one) => one.id !== 'commands' && (one.group !== 'tool' || !one.when || one.when(actions)))
      .map((one) => ({
        id: one.id,
        title: one.titleNow?.(actions) ?? one.title,
        group: one.group,
        words: one.words ?? late?.words.commands[one.id],
        keys: one.keys.slice(0, 1),
        why: one.when && !one.when(actions) ? (one.why ?? t.why.other) : undefined,
        run: () => one.run(actions),
      })),
    ...getFields(doc.file(), doc.athlete(), flight.result().jump).map(({ id, label }) => ({
      id: `field-${id}`,
      title: label,
      group: 'field',
      words: late?.words.fields[id],
      run: () => {
        shell.openPanel('values');
        focusField(id);
      },
    })),
    ...(late?.pages ?? []).map(({ title, words, group, place }) => ({
      id: `read-${place.page}-${place.at ?? ''}`,
      title,
      words,
      group,
      run: () => shell.read(place),
    })),
    ...shelf.skills().map((entry) => ({
      id: `own-${entry.id}`,
      title: entry.value.title,
      group: 'skill',
      run: () => shelf.openSkill(entry),
    })),
    // of one name that of the place that is shown comes first
    ...[...services.presets.skills]
      .sort((a, b) => here(b) - here(a))
      .map(({ id, file, about }) => ({
        id: `demo-${id}`,
        title: file.title,
        group: 'skill',
        words: about?.words,
        why: isOpen(file.title) && !doc.origin() && doc.undoTitle() === undefined ? t.why.current : undefined,
        run: () => doc.openSoon(structuredClone(file), texts.files.opened(inWords(file.title))),
      })),
    ...shelf.athletes().map((entry) => ({
      id: `athlete-${entry.id}`,
      title: entry.value.name,
      group: 'athlete',
      run: () => shelf.give(entry.value),
    })),
    ...services.presets.athletes.map(({ id, athlete }) => ({
      id: `demo-athlete-${id}`,
      title: athlete.name,
      group: 'athlete',
      why: athlete.name === own ? t.why.given : undefined,
      run: () => athletes.give({ ref: id }, shelfTexts.given(inWords(athlete.name))),
    })),
  ];
}

/** Frames that a panel may take until its fields are there. */
const FIELD_FRAMES = 60;

function focusField(id: string, frames = FIELD_FRAMES): void {
  const field = document.querySelector<HTMLInputElement>(`dialog input[name="${id}"]`);
  if (field) field.focus();
  else if (frames > 0) requestAnimationFrame(() => focusField(id, frames - 1));
}

/** A code or a name as drafts, and how near they are to what was typed. */
function listDrafts(code: Pick<CodeState, 'read' | 'draft'>, typed: string): readonly [FindEntry, number][] {
  const asked = typed === '' ? undefined : code.read(typed);
  if (!asked) return [];
  const entryOf = (spec: DraftSpec, i: number): FindEntry => ({
    id: `draft-${i}`,
    title: t.draft(spec.title, spec.place === 'trampoline' ? spec.code : '', codeTexts.places[spec.place]),
    group: 'code',
    run: () => code.draft(spec),
  });
  if (asked.kind === 'one') return [[entryOf(asked.spec, 0), /\d/.test(typed) ? RANK.code : RANK.name]];
  // one plain word ("back") is more often a word of a command
  const rank = /\d/.test(typed) ? RANK.code : /\s/.test(typed) || asked.reason ? RANK.name : RANK.maybe;
  const refused: [FindEntry, number][] = asked.reason
    ? [[{ id: 'draft-none', title: asked.reason, group: 'code', why: codeTexts.nearest, run: () => {} }, rank]]
    : [];
  return [...refused, ...asked.offers.map(({ spec }, i): [FindEntry, number] => [entryOf(spec, i), rank])];
}

/** Best first; what cannot be done now after what can. */
export function findEntries(
  all: readonly FindEntry[],
  typed: string,
  code: Pick<CodeState, 'read' | 'draft'>,
): FindEntry[] {
  const words = typed.trim();
  if (words === '') return all.filter(({ group }) => group !== 'term').slice(0, FIRST);
  const found = findRanked(all, words, (e) => t.groups[e.group]);
  const drafts = listDrafts(code, words);
  // a word of the glossary comes after what can be done with it
  const rankOf = ({ group }: FindEntry, score: number): number => (group === 'term' ? Math.min(score, WORD) : score);
  const ranked = [...found.map(({ item, score }): [FindEntry, number] => [item, rankOf(item, score)]), ...drafts]
    .sort((a, b) => b[1] - a[1])
    .map(([entry]) => entry);
  const isNow = (e: FindEntry): boolean => e.why === undefined || e.id === 'draft-none';
  return [...ranked.filter(isNow), ...ranked.filter((e) => !isNow(e))];
}
