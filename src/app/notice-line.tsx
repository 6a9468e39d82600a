/** What just happened, in one line with a way back or on. It stays until it is answered, closed or replaced. */
import { Show } from 'solid-js';
import { Icon } from '../ui/icon.tsx';
import type { Bench } from './bench.ts';
import { shelfTexts } from './shelf-words.ts';

export function NoticeLine(props: { bench: Bench; inSheet?: boolean }) {
  return (
    <div class="notice-place" classList={{ 'in-sheet': props.inSheet }} role="status" aria-live="polite">
      <Show when={props.bench.notice()}>
        {(notice) => (
          <div class="notice">
            <p>{notice().text}</p>
            <Show when={notice().action}>
              {(action) => (
                <button
                  type="button"
                  onClick={() => {
                    props.bench.tell(undefined);
                    action().run();
                  }}
                >
                  {action().title}
                </button>
              )}
            </Show>
            <button
              type="button"
              class="plain square"
              aria-label={shelfTexts.dismiss}
              onClick={() => props.bench.tell(undefined)}
            >
              <Icon name="close" size={16} />
            </button>
          </div>
        )}
      </Show>
    </div>
  );
}
