/** The link as a code that another device scans, shown large. */
import { onCleanup, onMount, Show } from 'solid-js';
import { Icon } from '../../ui/icon.tsx';
import { hasCode } from './code-picture.ts';
import { CodeView } from './code-view.tsx';
import type { HandWay, WayOverProps, WayProps } from './way.ts';
import { handTexts } from './words.ts';

const t = handTexts.code;
/** px */
const PREVIEW = 240;

function Thumb() {
  return (
    <svg viewBox="0 0 60 40" width="60" height="40" aria-hidden="true">
      <rect class="thumb-paper" x="10.5" y="0.5" width="39" height="39" />
      <path
        class="thumb-ink"
        d="M15 5 H23 V13 H15 Z M37 5 H45 V13 H37 Z M15 27 H23 V35 H15 Z M28 6 V12 M32 6 V9 M28 18 H45 M15 18 H23 M28 23 V35 M33 25 H38 M43 24 V34 M33 31 H38"
      />
    </svg>
  );
}

function View(props: WayProps) {
  return (
    <Show when={props.hand.code.shown()}>
      {(code) => (
        <figure class="code-figure">
          <CodeView code={code()} side={Math.min(PREVIEW, props.width)} label={t.label} />
          <figcaption class="quiet">{t.opens}</figcaption>
        </figure>
      )}
    </Show>
  );
}

function Over(props: WayOverProps) {
  let dialog!: HTMLDialogElement;
  onMount(() => {
    dialog.showModal();
    onCleanup(() => dialog.close());
  });
  return (
    <dialog
      ref={dialog}
      class="code-large"
      aria-label={t.name}
      onKeyDown={(e) => {
        // it closes this, and not the tool under it
        if (e.key === 'Escape') e.stopPropagation();
      }}
      onCancel={(e) => {
        e.preventDefault();
        props.close();
      }}
    >
      <header>
        <h2>{props.hand.handed()?.file.title}</h2>
        <button type="button" class="plain square" aria-label={handTexts.close} onClick={() => props.close()}>
          <Icon name="close" />
        </button>
      </header>
      <Show when={props.hand.code.shown()}>{(code) => <CodeView code={code()} label={t.label} />}</Show>
      <p>{t.scan}</p>
    </dialog>
  );
}

export const codeWay: HandWay = {
  id: 'code',
  name: t.name,
  verb: t.verb,
  short: t.short,
  Thumb,
  lines: (hand) => [t.hint, hand.codeLink()?.isWithoutSheets ? t.withoutSheets : t.hint2],
  brief: () => t.brief,
  View,
  Over,
  refused: (hand) => {
    if (hand.base() === undefined) return t.noAddress;
    const link = hand.codeLink()?.link;
    return link === undefined || !hasCode(link) ? t.long : undefined;
  },
  run: (hand) => hand.open('code'),
};
