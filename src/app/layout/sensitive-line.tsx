/** How sensitive the result is, beside the code: a press opens it. */
import { createUniqueId, For, Show } from 'solid-js';
import { useSensitivity } from '../sensitivity.ts';
import { texts } from '../words.ts';

const s = texts.sensitive;

export function SensitiveLine() {
  const sensitivity = useSensitivity();
  const id = createUniqueId();
  return (
    <div class="sensitive-place">
      <button
        type="button"
        class="code-open"
        aria-expanded={sensitivity.isOpen()}
        aria-controls={sensitivity.isOpen() ? id : undefined}
        onClick={() => sensitivity.toggle()}
        onKeyDown={(e) => {
          if (e.key !== 'Escape' || !sensitivity.isOpen()) return;
          e.stopPropagation();
          sensitivity.toggle();
        }}
      >
        {s.open}
      </button>
      <Show when={sensitivity.isOpen()}>
        <div class="code-form sensitive" id={id} role="status">
          <Show
            when={sensitivity.parts()}
            fallback={<p class="quiet">{sensitivity.failed() ? s.failed : s.working}</p>}
          >
            {(parts) => (
              <ul>
                <For each={parts()}>{(part) => <li>{part}</li>}</For>
              </ul>
            )}
          </Show>
          <p class="quiet">{s.how}</p>
        </div>
      </Show>
    </div>
  );
}
