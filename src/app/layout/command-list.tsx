/** Everything by its name: commands, skills, athletes, codes. Words find, arrow keys choose, Enter does. */
import { createEffect, createMemo, createSignal, createUniqueId, For, onCleanup, onMount, Show } from 'solid-js';
import type { Actions } from '../../commands/actions.ts';
import { printKey } from '../../commands/keys.ts';
import { findByWords } from '../../commands/search.ts';
import { commands } from '../../commands/table.ts';
import { commandTexts } from '../../commands/words.ts';
import { setAthlete } from '../../document/edits.ts';
import { useActions } from '../actions.ts';
import { type Page, usePage } from '../page.ts';
import { type UserShelf, useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { texts } from '../words.ts';
import { useCode } from './code-line.tsx';

const t = commandTexts;

interface Entry {
  readonly id: string;
  readonly title: string;
  readonly group: string;
  readonly keys?: readonly string[];
  /** it cannot be done now, and why */
  readonly why?: string;
  run(): void;
}

/** What commands show when nothing is typed yet: the rest is a word away. */
const FIRST = 60;

function listEntries({ doc, services }: Page, actions: Actions, shelf: UserShelf): Entry[] {
  const own = doc.athlete().name;
  const isOpen = (title: string): boolean => doc.file().title === title;
  return [
    ...commands
      .filter((one) => one.id !== 'commands' && (one.group !== 'tool' || !one.when || one.when(actions)))
      .map((one) => ({
        id: one.id,
        title: one.titleNow?.(actions) ?? one.title,
        group: one.group,
        keys: one.keys.slice(0, 1),
        why: one.when && !one.when(actions) ? (one.why ?? t.why.other) : undefined,
        run: () => one.run(actions),
      })),
    ...shelf.skills().map((entry) => ({
      id: `own-${entry.id}`,
      title: entry.value.title,
      group: 'skill',
      run: () => shelf.openSkill(entry),
    })),
    ...services.presets.skills.map(({ id, file }) => ({
      id: `demo-${id}`,
      title: file.title,
      group: 'skill',
      why: isOpen(file.title) && !doc.origin() && doc.undoTitle() === undefined ? t.why.current : undefined,
      run: () => doc.openSoon(structuredClone(file), texts.files.opened(file.title)),
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
      run: () => doc.edit(setAthlete(doc.file(), { ref: id }), shelfTexts.given(athlete.name)),
    })),
  ];
}

export function CommandList(props: { close: () => void }) {
  const page = usePage();
  const actions = useActions();
  const shelf = useShelf();
  const listId = createUniqueId();
  const code = useCode();
  const [typed, setTyped] = createSignal('');
  const [at, setAt] = createSignal(0);
  let input!: HTMLInputElement;
  let list!: HTMLDivElement;
  const all = createMemo(() => listEntries(page, actions, shelf));
  const found = createMemo<Entry[]>(() => {
    const words = typed().trim();
    const asCode = code.isCode(words);
    const fitting = findByWords(all(), words, (e) => `${e.title} ${t.groups[e.group]}`);
    // what cannot be done now comes last
    const entries = [...fitting.filter((e) => e.why === undefined), ...fitting.filter((e) => e.why !== undefined)];
    const draft: Entry[] = asCode
      ? [{ id: 'draft', title: t.draft(words), group: 'code', run: () => code.start(words) }]
      : [];
    return [...draft, ...(words ? entries : entries.slice(0, FIRST))];
  });
  createEffect(() => {
    found();
    setAt(0);
  });
  createEffect(() => {
    list.children[at()]?.scrollIntoView({ block: 'nearest' });
  });
  onMount(() => {
    input.focus();
    onCleanup(() => setTyped(''));
  });
  const doIt = (entry: Entry | undefined): void => {
    if (!entry || entry.why !== undefined) return;
    props.close();
    entry.run();
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const n = found().length;
    const to: Record<string, number> = {
      ArrowDown: (at() + 1) % Math.max(n, 1),
      ArrowUp: (at() - 1 + n) % Math.max(n, 1),
      PageDown: Math.min(at() + 8, n - 1),
      PageUp: Math.max(at() - 8, 0),
    };
    if (e.key === 'Enter') doIt(found()[at()]);
    else if (e.key in to) setAt(to[e.key]);
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const mac = /Mac|iPhone|iPad/.test(navigator.platform);
  const optionId = (i: number): string => `${listId}-${i}`;
  return (
    <div class="command-list" data-leaves-undo>
      <input
        ref={input}
        class="search"
        type="text"
        role="combobox"
        aria-expanded="true"
        aria-controls={listId}
        aria-autocomplete="list"
        aria-activedescendant={found().length > 0 ? optionId(at()) : undefined}
        aria-label={t.label}
        placeholder={t.placeholder}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="go"
        onInput={(e) => setTyped(e.currentTarget.value)}
        onKeyDown={onKeyDown}
      />
      <p class="spoken" role="status">
        {found().length > 0 ? t.found(found().length) : t.none}
      </p>
      <div ref={list} id={listId} role="listbox" aria-label={t.findTitle} class="commands">
        <For each={found()}>
          {(entry, i) => (
            // the arrow keys of the box above move through the list; a press is the pointer's way to do the same
            // biome-ignore lint/a11y/useKeyWithClickEvents: keys are the combobox's
            // biome-ignore lint/a11y/useFocusableInteractive: focus stays in the combobox, which names the active option
            <div
              role="option"
              id={optionId(i())}
              aria-selected={i() === at()}
              aria-disabled={entry.why !== undefined}
              onClick={() => doIt(entry)}
              onPointerMove={() => setAt(i())}
            >
              <span class="command-title">{entry.title}</span>
              <span class="command-group quiet">{entry.why ?? t.groups[entry.group]}</span>
              <span class="keys">
                <For each={entry.keys ?? []}>
                  {(name) => <For each={printKey(name, mac)}>{(part) => <kbd>{part}</kbd>}</For>}
                </For>
              </span>
            </div>
          )}
        </For>
      </div>
      <Show when={found().length === 0}>
        <p class="quiet">{t.none}</p>
      </Show>
    </div>
  );
}
