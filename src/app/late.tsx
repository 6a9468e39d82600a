/** Parts of the page that come when they are first shown: the page starts light. */
import { type Component, createResource, onCleanup, onMount, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { FailedLine } from './failed-line.tsx';
import { texts } from './words.ts';

/** A component whose place stays empty until it is loaded; where it cannot be, the place says so, with a way to try again. */
export function makeLate<P extends object>(load: () => Promise<Component<P>>): Component<P> {
  return (props) => {
    const [part, { refetch }] = createResource(load);
    return (
      <Show
        when={part.state === 'ready'}
        fallback={
          <Show when={part.error}>
            <FailedLine again={() => void refetch()}>{texts.panelFailed}</FailedLine>
          </Show>
        }
      >
        <Dynamic component={part.latest as Component<P>} {...props} />
      </Show>
    );
  };
}

const SIGNS = ['pointerdown', 'keydown'] as const;

/** At the first sign of a hand: what it may ask for next is on its way. */
export function useFirstSign(load: () => Promise<unknown>): void {
  const prepare = (): void => void load().catch(() => undefined);
  onMount(() => {
    for (const sign of SIGNS) window.addEventListener(sign, prepare, { once: true });
    onCleanup(() => {
      for (const sign of SIGNS) window.removeEventListener(sign, prepare);
    });
  });
}
