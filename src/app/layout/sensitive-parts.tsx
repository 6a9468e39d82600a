/** How sensitive the result is, in words, once it is known. */
import { For, Show } from 'solid-js';
import { resultTexts } from '../result-words.ts';
import { useSensitivity } from '../sensitivity.ts';

const s = resultTexts.sensitive;

export function SensitiveParts() {
  const sensitivity = useSensitivity();
  return (
    <>
      <Show when={sensitivity.parts()} fallback={<p class="quiet">{sensitivity.failed() ? s.failed : s.working}</p>}>
        {(parts) => (
          <ul>
            <For each={parts()}>{(part) => <li>{part}</li>}</For>
          </ul>
        )}
      </Show>
      <p class="quiet">{s.how}</p>
    </>
  );
}
