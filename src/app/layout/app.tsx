/** The application: one bench in the layout of the device, keys, dropped files. */

import { createEffect, createMemo, createSignal, onCleanup, onMount, Show, untrack } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { findByKey, runKey } from '../../commands/keys.ts';
import { useLanes } from '../../features/joints/lane-list.ts';
import { PickedBar } from '../../features/joints/picked-bar.tsx';
import { listen } from '../../ui/listen.ts';
import { inWords } from '../../ui/names.ts';
import { useActions } from '../actions.ts';
import { makeLate } from '../late.tsx';
import { loadPart } from '../load-part.ts';
import { NoticeLine } from '../notice-line.tsx';
import { createPage, PageContext, readFiles, readLetters, useCursor, useDocument, usePage, useShell } from '../page.ts';
import type { Services } from '../services.ts';
import { texts } from '../words.ts';
import { Answers } from './answers.tsx';
import { playFirst } from './first-play.ts';
import { type Layout, useLayout } from './layouts.ts';
import { Sheets } from './sheets.tsx';

/** In the place of the bench, which is then not in the page: of its flight nothing is to be read there. */
const RoomPlace = makeLate(
  loadPart(
    () => import('./tools/room-place.tsx'),
    (m) => m.RoomPlace,
  ),
);
/** Commands that have a meaning there. */
const IN_ROOM = ['tool-class', 'commands', 'open', 'help'];

const WRITTEN = 'input:not([type="range"], [type="checkbox"], [type="radio"]), textarea, [contenteditable]';
const isTyped = (target: EventTarget | null): boolean => target instanceof Element && target.closest(WRITTEN) !== null;
/** A number that is typed and settled has no text to take back: undo is that of the document. */
const isSettled = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && target.dataset.settled === target.value;
/** Keys that a control on the page answers by itself: a slider its arrows, a list its letters too. */
const isOwn = (target: EventTarget | null, key: string): boolean => {
  if (!(target instanceof Element)) return false;
  if (target.closest('select')) return true;
  return target.closest('input') !== null && /^(Arrow|Page|Home$|End$|Enter$| $)/.test(key);
};

export function App(props: { services: Services; layout: Layout }) {
  // the services are the same for the life of the page
  const page = untrack(() => createPage(props.services));
  return (
    <PageContext.Provider value={page}>
      <Bench first={untrack(() => props.layout)} />
    </PageContext.Provider>
  );
}

function Bench(props: { first: Layout }) {
  const page = usePage();
  const doc = useDocument();
  const cursor = useCursor();
  const shell = useShell();
  const actions = useActions();
  const { keeping } = page;
  const layout = useLayout(
    untrack(() => props.first),
    shell.hall,
  );
  const lanes = useLanes(page, 4);
  const [over, setOver] = createSignal(false);
  const title = createMemo(() => `${inWords(doc.file().title)} – ${texts.product}`);

  const isRoom = (): boolean => shell.tool() === 'class';

  /** what is over the page or offered, and waits for an answer */
  const putAway = (): boolean => {
    if (doc.opening.cancel()) return true;
    if (doc.fileFault()) doc.clearFileFault();
    else if (shell.answer.said()?.from === 'fix') shell.answer.clear('fix');
    else if (isRoom()) shell.openTool(undefined);
    else return false;
    return true;
  };
  onMount(() => {
    if (page.isFresh) onCleanup(playFirst(cursor.play));
    const onKey = (e: KeyboardEvent): void => {
      if (e.defaultPrevented) return;
      const modal = document.querySelector('dialog[open]') !== null;
      const mod = e.ctrlKey || e.metaKey;
      const isPages = mod && (isSettled(e.target) ? /^[sokpzy]$/i : /^[sokp]$/i).test(e.key);
      if (isTyped(e.target) && !isPages) return;
      if (!mod && isOwn(e.target, e.key)) return;
      if (modal && !mod) return;
      if (e.key === 'Escape' && (doc.abandon() || putAway())) {
        e.preventDefault();
        return;
      }
      // Space and Enter press the focused button
      if ((e.key === ' ' || e.key === 'Enter') && e.target instanceof Element && e.target.closest('button, a')) return;
      // marked words are copied as words
      if (mod && /^[cC]$/.test(e.key) && getSelection()?.isCollapsed === false) return;
      if (isRoom() && !IN_ROOM.includes(findByKey(e)?.id ?? '')) return;
      if (runKey(e, actions)) e.preventDefault();
    };
    const onDrag = (e: DragEvent): void => {
      e.preventDefault();
      setOver(e.type === 'dragover');
    };
    const onDrop = (e: DragEvent): void => {
      setOver(false);
      const files = [...(e.dataTransfer?.files ?? [])];
      // what is open has taken it, or a field takes letters
      if (e.defaultPrevented || (files.length === 0 && isTyped(e.target))) return;
      e.preventDefault();
      if (files.length > 0) readFiles(page, files);
      else readLetters(page, e.dataTransfer?.getData('text') ?? '');
    };
    const keep = (): void => keeping.leave();
    const hide = (): void => {
      if (document.visibilityState === 'hidden') keeping.keepNow();
      else keeping.check();
    };
    onCleanup(listen({ keydown: onKey, dragover: onDrag, dragleave: onDrag, drop: onDrop, pagehide: keep }));
    document.addEventListener('visibilitychange', hide);
    onCleanup(() => document.removeEventListener('visibilitychange', hide));
  });
  createEffect(() => {
    document.title = title();
  });

  return (
    <>
      <Show
        when={isRoom()}
        fallback={
          <>
            <Dynamic component={layout()} lanes={lanes} />
            <PickedBar />
          </>
        }
      >
        <RoomPlace />
      </Show>
      <Sheets lanes={lanes} />
      <Answers />
      <Show when={shell.panel() === undefined}>
        <NoticeLine />
      </Show>
      <Show when={doc.opening.now()}>
        {(opening) => (
          <div class="file-fault coming" role="status">
            <p>{texts.files.opening(opening().name)}</p>
            <button type="button" onClick={() => doc.opening.cancel()}>
              {texts.sentence.cancel}
            </button>
          </div>
        )}
      </Show>
      <Show when={doc.fileFault()}>
        {(fault) => (
          <div class="file-fault" role="alert">
            <p>
              <b>{fault().said ?? texts.files.failed(fault().name)}</b> {fault().reason}{' '}
              <span class="quiet">{fault().kept ?? texts.files.nothingLost}</span>
            </p>
            <button type="button" onClick={() => doc.clearFileFault()}>
              {texts.files.dismiss}
            </button>
          </div>
        )}
      </Show>
      <Show when={over()}>
        <div class="drop-over" aria-hidden="true">
          {texts.files.drop}
        </div>
      </Show>
    </>
  );
}
