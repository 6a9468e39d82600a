/** A canvas of the page with what draws on it, from mount to cleanup. */
import { type Accessor, createSignal, onCleanup, onMount } from 'solid-js';
import type { StageHandle } from '../pictures/stage-input.ts';
import { watchTheme } from '../ui/theme.ts';
import { useServices, useShell } from './page.ts';

interface MountedStage {
  readonly handle: Accessor<StageHandle | undefined>;
  /** why nothing can be drawn here */
  readonly failed: Accessor<string>;
}

export function useMountedStage(canvas: () => HTMLCanvasElement, size: () => readonly [number, number]): MountedStage {
  const { pictures } = useServices();
  const shell = useShell();
  const [handle, setHandle] = createSignal<StageHandle>();
  const [failed, setFailed] = createSignal('');
  onMount(() => {
    let gone = false;
    let made: StageHandle | undefined;
    pictures
      .mount(canvas(), ...size())
      .then((h) => {
        if (gone) return h.destroy();
        made = h;
        setHandle(h);
      })
      .catch((error: unknown) => setFailed(error instanceof Error ? error.message : String(error)))
      .finally(() => shell.stage.drawn());
    const unwatch = watchTheme(() => made?.setTheme());
    onCleanup(() => {
      gone = true;
      unwatch();
      made?.destroy();
    });
  });
  return { handle, failed };
}
