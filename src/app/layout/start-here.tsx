/** The row at the foot of the calm bench: three skills to begin with, what can be read, and the way to all rows. */
import { For, Show } from 'solid-js';
import { useShell } from '../page.ts';
import { STORIES, useStart } from '../start-state.ts';
import { texts } from '../words.ts';

const t = texts.start;

export function StartHere() {
  const shell = useShell();
  const start = useStart();
  return (
    <section class="start-here" aria-label={start.isFolded() ? t.rows : t.title}>
      <Show when={!start.isFolded()}>
        <h2>{t.title}</h2>
        <Stories />
        <span class="start-read">
          <button type="button" class="plain" onClick={() => shell.read({ page: 'lessons' })}>
            {t.lessons}
          </button>
        </span>
      </Show>
      <Show when={start.isFolded()}>
        <button type="button" class="plain start-again" aria-haspopup="dialog" onClick={() => shell.openPanel('start')}>
          {t.title}
        </button>
      </Show>
      <button
        type="button"
        class="plain start-rows"
        aria-keyshortcuts={t.rowsKey}
        onClick={() => shell.rows.toggleAll()}
      >
        {shell.rows.isAll() ? t.fewer : t.rows}
      </button>
    </section>
  );
}

/** The one that is open is marked, and no button. */
export function Stories(props: { onOpened?: () => void }) {
  const start = useStart();
  return (
    <ul class="stories">
      <For each={STORIES}>
        {({ id, word }) => {
          const picture = () => (
            // eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone
            <span class="story-picture" aria-hidden="true" innerHTML={start.picture(id) ?? ''} />
          );
          return (
            <li>
              <Show
                when={start.shown() === id}
                fallback={
                  <button
                    type="button"
                    class="story"
                    onClick={() => {
                      start.open(id);
                      props.onOpened?.();
                    }}
                  >
                    {picture()} {word}
                  </button>
                }
              >
                <span class="story" aria-current="true">
                  {picture()} <b>{word}</b>
                </span>
              </Show>
            </li>
          );
        }}
      </For>
    </ul>
  );
}
