/** Two numbers of the two ways are not the same: a question, and at a press its answer in place. */
import { createEffect, createMemo, createSignal, createUniqueId, For, type JSX, on, Show } from 'solid-js';
import type { Beside } from '../../app/beside.ts';
import type { BesideRows } from '../../app/beside-numbers.ts';
import { wordWhy } from '../../app/beside-why-words.ts';

export function BesideWhy(props: { beside: Beside; rows: BesideRows; style?: JSX.CSSProperties }) {
  const why = createMemo(() => wordWhy(props.rows, props.beside));
  const [isOpen, setOpen] = createSignal(false);
  const id = createUniqueId();
  createEffect(
    on(
      () => props.beside,
      () => setOpen(false),
      { defer: true },
    ),
  );
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key !== 'Escape' || !isOpen()) return;
    e.preventDefault();
    e.stopPropagation();
    setOpen(false);
  };
  return (
    <Show when={why()}>
      {(words) => (
        <>
          <button
            type="button"
            class="link why-beside"
            aria-expanded={isOpen()}
            aria-controls={id}
            onClick={() => setOpen(!isOpen())}
            onKeyDown={onKeyDown}
          >
            {words().ask}
          </button>
          <Show when={isOpen()}>
            <div id={id} class="beside-why" role="note" style={props.style}>
              <For each={words().sentences}>{(text) => <p>{text}</p>}</For>
            </div>
          </Show>
        </>
      )}
    </Show>
  );
}
