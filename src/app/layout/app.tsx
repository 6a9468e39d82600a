/** The application: one bench in the layout of the device, keys, dropped files. */
import { createEffect, createMemo, createSignal, Match, onCleanup, onMount, Show, Switch, untrack } from 'solid-js';
import { runKey } from '../../commands/keys.ts';
import { useLanes } from '../../features/joints/lane-list.ts';
import { PickedBar } from '../../features/joints/picked-bar.tsx';
import { useDevice } from '../../ui/size.ts';
import { createBench } from '../bench.ts';
import { NoticeLine } from '../notice-line.tsx';
import type { BenchPorts } from '../ports.ts';
import { texts } from '../words.ts';
import { Answers } from './answers.tsx';
import { BenchLayout } from './bench-layout.tsx';
import { playFirst } from './first-play.ts';
import { PhoneLayout } from './phone-layout.tsx';
import { Sheets } from './sheets.tsx';
import { TabletLayout } from './tablet-layout.tsx';

const WRITTEN = 'input:not([type="range"], [type="checkbox"], [type="radio"]), textarea, [contenteditable]';
const isTyped = (target: EventTarget | null): boolean => target instanceof Element && target.closest(WRITTEN) !== null;
/** Keys that a control on the page answers by itself: a slider its arrows, a list its letters too. */
const isOwn = (target: EventTarget | null, key: string): boolean => {
  if (!(target instanceof Element)) return false;
  if (target.closest('select')) return true;
  return target.closest('input') !== null && /^(Arrow|Page|Home$|End$|Enter$| $)/.test(key);
};

export function App(props: { ports: BenchPorts }) {
  // the ports are the same for the life of the page
  const bench = untrack(() => createBench(props.ports));
  const device = useDevice();
  const lanes = useLanes(bench, 4);
  const [over, setOver] = createSignal(false);
  const title = createMemo(() => `${bench.file().title} – ${texts.product}`);

  onMount(() => {
    if (bench.fresh) onCleanup(playFirst(bench.play));
    const onKey = (e: KeyboardEvent): void => {
      if (e.defaultPrevented) return;
      const modal = document.querySelector('dialog[open]') !== null;
      const mod = e.ctrlKey || e.metaKey;
      if (isTyped(e.target) && !(mod && /^[sSoOkKpP]$/.test(e.key))) return;
      if (!mod && isOwn(e.target, e.key)) return;
      if (modal && !mod) return;
      if (e.key === 'Escape' && bench.abandon()) {
        e.preventDefault();
        return;
      }
      // Space and Enter press the focused button
      if ((e.key === ' ' || e.key === 'Enter') && e.target instanceof Element && e.target.closest('button, a')) return;
      // marked words are copied as words
      if (mod && /^[cC]$/.test(e.key) && getSelection()?.isCollapsed === false) return;
      if (runKey(e, bench)) e.preventDefault();
    };
    const onDrag = (e: DragEvent): void => {
      e.preventDefault();
      setOver(e.type === 'dragover');
    };
    const onDrop = (e: DragEvent): void => {
      e.preventDefault();
      setOver(false);
      for (const file of e.dataTransfer?.files ?? []) void file.text().then((text) => bench.readText(file.name, text));
    };
    const keep = (): void => bench.leave();
    const hide = (): void => {
      if (document.visibilityState === 'hidden') bench.keepNow();
      else bench.checkKept();
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('dragover', onDrag);
    window.addEventListener('dragleave', onDrag);
    window.addEventListener('drop', onDrop);
    window.addEventListener('pagehide', keep);
    document.addEventListener('visibilitychange', hide);
    onCleanup(() => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('dragover', onDrag);
      window.removeEventListener('dragleave', onDrag);
      window.removeEventListener('drop', onDrop);
      window.removeEventListener('pagehide', keep);
      document.removeEventListener('visibilitychange', hide);
    });
  });
  createEffect(() => {
    document.title = title();
  });

  return (
    <>
      <Switch>
        <Match when={device() === 'bench'}>
          <BenchLayout bench={bench} lanes={lanes} />
        </Match>
        <Match when={device() === 'tablet'}>
          <TabletLayout bench={bench} lanes={lanes} />
        </Match>
        <Match when={device() === 'phone'}>
          <PhoneLayout bench={bench} lanes={lanes} />
        </Match>
      </Switch>
      <Sheets bench={bench} lanes={lanes} />
      <PickedBar bench={bench} />
      <Answers bench={bench} />
      <Show when={bench.panel() === undefined}>
        <NoticeLine bench={bench} />
      </Show>
      <Show when={bench.fileFault()}>
        {(fault) => (
          <div class="file-fault" role="alert">
            <p>
              <b>{texts.files.failed(fault().name)}</b> {fault().reason}{' '}
              <span class="quiet">{texts.files.nothingLost}</span>
            </p>
            <button type="button" onClick={() => bench.clearFileFault()}>
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
