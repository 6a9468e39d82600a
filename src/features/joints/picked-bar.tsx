/** What can be done with picked keys, for fingers and for those who do not know the keys: a bar while any are picked. */

import { createEffect, createSignal, For, on, onCleanup, Show } from 'solid-js';
import { useActions } from '../../app/actions.ts';
import { keyTexts } from '../../app/key-words.ts';
import { useKeys } from '../../app/key-work.ts';
import { useFlight } from '../../app/page.ts';
import { findCommand } from '../../commands/table.ts';
import { Icon } from '../../ui/icon.tsx';

const ACTS = [
  ['copy', 'copy'],
  ['mirror', 'mirror'],
  ['earlier', 'keys-earlier'],
  ['later', 'keys-later'],
  ['closer', 'keys-closer'],
  ['apart', 'keys-apart'],
  ['remove', 'remove-keys'],
] as const;

/** How long it is shown what was done, ms. */
const SHOWN = 2500;

export function PickedBar() {
  const keys = useKeys();
  const flight = useFlight();
  const actions = useActions();
  const [message, setMessage] = createSignal('');
  const isSeveral = (): boolean => keys.picked().length > 1;
  let timer: ReturnType<typeof setTimeout> | undefined;
  createEffect(
    on(
      () => keys.said(),
      (said) => {
        clearTimeout(timer);
        setMessage(said);
        timer = setTimeout(() => setMessage(''), SHOWN);
      },
      { defer: true },
    ),
  );
  onCleanup(() => clearTimeout(timer));
  return (
    <>
      {/* one key has its own cells beside its lane */}
      <Show when={isSeveral() && !flight.before()}>
        <div class="picked-bar" role="toolbar" aria-label={keyTexts.pickedBar}>
          <b>{keyTexts.pickedCount(keys.picked().length)}</b>
          <For each={ACTS}>
            {([word, id]) => (
              <button
                type="button"
                class="plain"
                title={`${findCommand(id).title} (${findCommand(id).keys[0]})`}
                disabled={findCommand(id).when?.(actions) === false}
                onClick={() => findCommand(id).run(actions)}
              >
                {keyTexts.bar[word]}
              </button>
            )}
          </For>
          <button
            type="button"
            class="plain square"
            aria-label={keyTexts.bar.none}
            title={keyTexts.bar.none}
            onClick={() => keys.pickNone()}
          >
            <Icon name="close" size={14} />
          </button>
        </div>
      </Show>
      <Show when={message() && !isSeveral()}>
        <p class="picked-bar message-bar" aria-hidden="true">
          {message()}
        </p>
      </Show>
      <p class="spoken" role="status" aria-live="polite">
        {keys.said()}
      </p>
    </>
  );
}
