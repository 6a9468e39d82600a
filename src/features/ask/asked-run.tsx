/** How far what was asked for has come, with a way to stop it; when it has become stale, with a way to ask again. */
import { Show } from 'solid-js';
import type { AskedWork } from '../../app/asked-work.ts';
import { askTexts as t } from './words.ts';

interface Progress {
  readonly done: number;
  readonly all: number;
}

export function AskedRun(props: {
  of: AskedWork<Progress> & { stop(): void };
  label: string;
  words: (progress: Progress) => string;
}) {
  return (
    <Show
      when={props.of.progress()}
      fallback={
        <Show when={props.of.stale()}>
          <span class="ask-stale">{t.staleMargin}</span>{' '}
          <button type="button" class="small" onClick={() => props.of.again()}>
            {t.again}
          </button>
        </Show>
      }
    >
      {(p) => (
        <>
          <span class="ask-progress" role="status">
            <progress max={p().all} value={p().done} aria-label={props.label} />
            {props.words(p())}
          </span>
          <button type="button" class="small" onClick={() => props.of.stop()}>
            {t.cancel}
          </button>
        </>
      )}
    </Show>
  );
}
