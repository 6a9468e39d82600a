/** A tool with the whole page under the bar. Undo of the bench is not in it. */
import { createEffect, createResource, on, onCleanup, onMount, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { toolTexts } from '../../../commands/tool-words.ts';
import { useDevice } from '../../../ui/size.ts';
import { FailedLine } from '../../failed-line.tsx';
import { useDocument, usePage, useShell } from '../../page.ts';
import type { Undoing } from '../../undoing.ts';
import { Bar, TouchBar } from '../bar.tsx';
import { findTool } from './tool-list.ts';

const NOTHING: Undoing = { undoTitle: () => undefined, redoTitle: () => undefined, undo: () => {}, redo: () => {} };

export function RoomPlace() {
  const shell = useShell();
  const doc = useDocument();
  const { services } = usePage();
  const device = useDevice();
  let root!: HTMLElement;
  const tool = findTool(shell.tool(), 'room');
  const [part, { refetch }] = createResource(async () => {
    const [loaded] = await Promise.all([tool?.load(), tool?.loadEngine?.(services.load)]);
    return loaded;
  });
  onMount(() => {
    shell.notify(undefined);
    shell.takeUndo(NOTHING);
    scrollTo(0, 0);
    root.focus({ preventScroll: true });
  });
  onCleanup(() => shell.takeUndo(undefined));
  // another skill was opened: that is on the bench
  createEffect(on(doc.id, () => shell.openTool(undefined), { defer: true }));
  return (
    <div class="room" data-device={device()}>
      <Show when={device() === 'bench'} fallback={<TouchBar title={device() === 'tablet'} />}>
        <Bar />
      </Show>
      <main ref={root} tabIndex={-1} data-tool={tool?.name} aria-label={tool && toolTexts.titles[tool.name]}>
        <Show
          when={part.state === 'ready' && part()}
          fallback={
            <Show
              when={part.error}
              fallback={<p class="quiet tool-loading">{toolTexts.loading(toolTexts.titles.class)}</p>}
            >
              <FailedLine again={() => void refetch()}>{toolTexts.failed(toolTexts.titles.class)}</FailedLine>
            </Show>
          }
        >
          {(loaded) => <Dynamic component={loaded() as () => null} />}
        </Show>
      </main>
    </div>
  );
}
