/** Skills to open: the user's own, with all that can be done to them, and the demo skills apart. */

import { type Accessor, createMemo, createSignal, For, type JSX, Show } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { FileButtons } from '../../app/file-buttons.tsx';
import { fileName, saveText } from '../../app/file-door.ts';
import { NoticeLine } from '../../app/notice-line.tsx';
import { useDocument } from '../../app/page.ts';
import { useShelf } from '../../app/shelf.ts';
import { shelfTexts } from '../../app/shelf-words.ts';
import { texts } from '../../app/words.ts';
import type { ShelfEntry } from '../../document/shelf.ts';
import { sayMoment } from '../../ui/dates.ts';
import { Icon } from '../../ui/icon.tsx';
import { DemoSkills } from './demo-skills.tsx';
import { pickerTexts } from './words.ts';

const t = { ...shelfTexts, ...pickerTexts };

/** Every word that was typed is somewhere in the text, in any order. */
function hasWords(text: string, typed: string): boolean {
  const all = text.toLowerCase();
  return typed
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}

export function SkillPicker(props: { close: () => void }) {
  const doc = useDocument();
  const shelf = useShelf();
  const [wanted, setWanted] = createSignal('');
  const [demos, setDemos] = createSignal(0);
  const matches = (file: SkillFile): boolean => hasWords(`${file.title} ${file.note ?? ''}`, wanted());
  const mine = createMemo(() => shelf.skills().filter((e) => matches(e.value)));
  return (
    <>
      <NoticeLine inSheet />
      <p class="shelf-open">
        <b>{doc.file().title || texts.untitled}</b> <span class="quiet">{t.state[shelf.state()]}</span>
      </p>
      <Show when={doc.file().note}>
        <details class="open-note">
          <summary>{t.note}</summary>
          <p class="quiet">{doc.file().note}</p>
        </details>
      </Show>
      <p class="sheet-actions">
        <button type="button" disabled={shelf.state() === 'saved'} onClick={() => void shelf.save()}>
          {shelf.state() === 'unsaved' ? t.save : t.saveAgain}
        </button>
        <button type="button" onClick={() => void shelf.saveCopy()}>
          {t.saveCopy}
        </button>
      </p>
      <input
        type="search"
        maxLength={200}
        class="search"
        aria-label={t.search}
        placeholder={t.search}
        onInput={(e) => setWanted(e.currentTarget.value)}
      />
      <h3>{t.mine}</h3>
      <Show when={shelf.refused()}>
        <p class="quiet">{t.notAvailable}</p>
      </Show>
      <Show when={!shelf.refused() && shelf.isRead() && shelf.skills().length === 0}>
        <p class="quiet">{t.none}</p>
      </Show>
      <Show when={shelf.damaged().length > 0}>
        <p role="status">
          {t.damagedEntries(shelf.damaged().length)}{' '}
          <button
            type="button"
            class="link"
            onClick={() => saveText(fileName(shelfTexts.damagedName), JSON.stringify(shelf.damaged()))}
          >
            {shelfTexts.saveFile}
          </button>
        </p>
      </Show>
      <ul class="list" aria-label={t.mine}>
        <EachEntry entries={mine()}>
          {(entry) => (
            <ShelfRow
              entry={entry()}
              name={entry().value.title}
              note={t.savedOn(sayMoment(entry().savedAt))}
              current={doc.origin()?.id === entry().id}
              onPick={() => {
                const picked = entry();
                props.close();
                shelf.openSkill(picked);
              }}
            />
          )}
        </EachEntry>
      </ul>
      <DemoSkills wanted={wanted()} close={props.close} setFound={setDemos} />
      <Show when={mine().length + demos() === 0}>
        <p role="status">{t.noneFound(wanted().trim())}</p>
      </Show>
      <p class="quiet">{t.opens}</p>
      <p class="sheet-actions">
        <FileButtons />
      </p>
    </>
  );
}

/** Rows are kept by their id: a new name or a save in another tab does not take the focus away from them. */
export function EachEntry<E extends ShelfEntry>(props: {
  entries: readonly E[];
  children: (entry: Accessor<E>) => JSX.Element;
}) {
  const ids = createMemo(() => props.entries.map((e) => e.id), [], { equals: (a, b) => a.join() === b.join() });
  const find = (id: string): E | undefined => props.entries.find((e) => e.id === id);
  return <For each={ids()}>{(id) => <Show when={find(id)}>{(entry) => props.children(entry)}</Show>}</For>;
}

/** An entry of the user's own: a press opens it, "more" shows what else can be done. */
export function ShelfRow(props: {
  entry: ShelfEntry;
  name: string;
  note: string;
  current: boolean;
  onPick: () => void;
}) {
  const shelf = useShelf();
  const [open, setOpen] = createSignal(false);
  const [renaming, setRenaming] = createSignal(false);
  let more!: HTMLButtonElement;
  let input!: HTMLInputElement;
  const stop = (): void => {
    setRenaming(false);
    more.focus();
  };
  /** The row goes: the focus goes on to the way back. */
  const remove = async (): Promise<void> => {
    const sheet = more.closest('dialog');
    await shelf.remove(props.entry);
    queueMicrotask(() => sheet?.querySelector<HTMLElement>('.notice button')?.focus());
  };
  const rename = (e: Event): void => {
    e.preventDefault();
    const name = input.value;
    stop();
    setOpen(false);
    if (name.trim() !== '' && name !== props.name) void shelf.rename(props.entry, name);
  };
  return (
    <li class="shelf-row">
      <div class="shelf-main">
        <button
          type="button"
          class="row-button"
          aria-current={props.current ? 'true' : undefined}
          onClick={() => props.onPick()}
        >
          <span>
            <b>{props.name}</b>
            <span class="quiet note">{props.note}</span>
          </span>
        </button>
        <button
          ref={more}
          type="button"
          class="plain square"
          aria-label={t.more(props.name)}
          aria-expanded={open()}
          onClick={() => setOpen(!open())}
        >
          <Icon name="more" />
        </button>
      </div>
      <Show when={open() && !renaming()}>
        <p class="shelf-actions">
          <button
            type="button"
            onClick={() => {
              setRenaming(true);
              input.focus();
              input.select();
            }}
          >
            {t.rename}
          </button>
          <button
            type="button"
            onClick={() => {
              setOpen(false);
              more.focus();
              void shelf.duplicate(props.entry);
            }}
          >
            {t.duplicate}
          </button>
          <button type="button" onClick={() => void remove()}>
            {t.remove}
          </button>
        </p>
      </Show>
      <Show when={renaming()}>
        <form class="shelf-actions" onSubmit={rename}>
          <input
            ref={input}
            class="search"
            aria-label={t.newName(props.name)}
            value={props.name}
            maxLength={120}
            onKeyDown={(e) => {
              if (e.key !== 'Escape') return;
              e.preventDefault();
              e.stopPropagation();
              stop();
            }}
          />
          <button type="submit">{t.setName}</button>
          <button type="button" class="plain" onClick={stop}>
            {t.keepName}
          </button>
        </form>
      </Show>
    </li>
  );
}
