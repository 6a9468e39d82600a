/** A panel over the page: from the side on the bench, from below on the phone. Escape closes, focus stays inside. */

import { type JSX, onCleanup, onMount } from 'solid-js';
import { Icon } from './icon.tsx';
import { sheetTexts } from './words.ts';

export function Sheet(props: { title: string; onClose: () => void; children: JSX.Element; wide?: boolean }) {
  let dialog!: HTMLDialogElement;
  onMount(() => {
    dialog.showModal();
    onCleanup(() => dialog.close());
  });
  const onClick = (e: MouseEvent): void => {
    if (e.target === dialog) props.onClose();
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a press on the backdrop closes; by key that is Escape, which the dialog has
    <dialog
      ref={dialog}
      class="sheet"
      classList={{ wide: props.wide }}
      aria-label={props.title}
      onClick={onClick}
      onCancel={(e) => {
        e.preventDefault();
        props.onClose();
      }}
    >
      <div class="sheet-body">
        <header>
          <h2>{props.title}</h2>
          <button type="button" class="plain square" aria-label={sheetTexts.close} onClick={() => props.onClose()}>
            <Icon name="close" />
          </button>
        </header>
        {props.children}
      </div>
    </dialog>
  );
}
