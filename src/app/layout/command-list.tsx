/** Everything by its name: commands, values, skills, athletes, codes. Words find, arrow keys choose, Enter does. */
import {
  createEffect,
  createMemo,
  createResource,
  createSignal,
  createUniqueId,
  For,
  onCleanup,
  onMount,
  Show,
} from 'solid-js';
import { printKey } from '../../commands/keys.ts';
import { commandTexts } from '../../commands/words.ts';
import { useActions } from '../actions.ts';
import { FailedLine } from '../failed-line.tsx';
import { loadPart } from '../load-part.ts';
import { usePage } from '../page.ts';
import { useShelf } from '../shelf.ts';
import { texts } from '../words.ts';
import { useCode } from './code-state.ts';
import type { FindEntry } from './find-entries.ts';

const t = commandTexts;
/** What is typed until it comes stays in the box, and finds then. */
export const loadEntries = loadPart(
  () => import('./find-entries.ts'),
  (m) => m,
);
const loadFinds = loadPart(
  () => import('./find-late.ts'),
  (m) => m.listLate(),
);

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
  // other words, and what can be read, come a moment later; without a network the rest is there
  const [late] = createResource(() => loadFinds().catch(() => undefined));
  const [parts, { refetch }] = createResource(loadEntries);
  const finding = () => (parts.state === 'ready' ? parts() : undefined);
  const all = createMemo(() => finding()?.listEntries(page, actions, shelf, late.latest) ?? []);
  const found = createMemo(() => finding()?.findEntries(all(), typed(), code) ?? []);
  const isNone = () => finding() !== undefined && found().length === 0;
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
  const doIt = (entry: FindEntry | undefined): void => {
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
        maxLength={200}
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
        {isNone() ? t.none : finding() && t.found(found().length)}
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
      <Show when={parts.error}>
        <FailedLine again={() => void refetch()}>{texts.panelFailed}</FailedLine>
      </Show>
      <Show when={isNone()}>
        <p class="quiet">{t.none}</p>
      </Show>
    </div>
  );
}
