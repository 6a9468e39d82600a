/** What just happened, in one line with a way back or on. It stays until it is answered, closed or replaced. */
import { onCleanup, onMount, Show } from 'solid-js';
import { Icon } from '../ui/icon.tsx';
import { listen } from '../ui/listen.ts';
import { useShell } from './page.ts';
import { shelfTexts } from './shelf-words.ts';

export function NoticeLine(props: { inSheet?: boolean }) {
  const shell = useShell();
  onMount(() => {
    // what has the keyboard, and what is over the page, have an Escape of their own
    const onKey = (e: KeyboardEvent): void => {
      if (e.key !== 'Escape' || e.defaultPrevented || !shell.notice() || document.querySelector('dialog[open]')) return;
      e.preventDefault();
      shell.notify(undefined);
    };
    onCleanup(listen({ keydown: onKey }));
  });
  return (
    <div class="notice-place" classList={{ 'in-sheet': props.inSheet }} role="status" aria-live="polite">
      <Show when={shell.notice()}>
        {(notice) => (
          <div class="notice">
            <p>{notice().text}</p>
            <Show when={notice().action}>
              {(action) => (
                <button
                  type="button"
                  onClick={() => {
                    shell.notify(undefined);
                    action().run();
                  }}
                >
                  {action().title}
                </button>
              )}
            </Show>
            <Show
              when={notice().dismiss}
              fallback={
                <button
                  type="button"
                  class="plain square"
                  aria-label={shelfTexts.dismiss}
                  onClick={() => shell.notify(undefined)}
                >
                  <Icon name="close" size={16} />
                </button>
              }
            >
              <button type="button" class="plain" onClick={() => shell.notify(undefined)}>
                {notice().dismiss}
              </button>
            </Show>
          </div>
        )}
      </Show>
    </div>
  );
}
