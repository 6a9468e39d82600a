/** The sentence of a recording: how far the model ends from what was measured, or why there is no saying. */
import { createMemo, For, Show } from 'solid-js';
import type { RecordingState } from './recording-state.ts';
import { AXES, HUES, sayApart } from './recording-values.ts';
import { verdictOf } from './recording-verdict.tsx';
import { recordingTexts as t } from './recording-words.ts';

export function RecordingSaid(props: { state: RecordingState }) {
  const study = () => props.state.study();
  const other = createMemo(() => {
    const now = study();
    if (!now) return t.none;
    if (!now.span || !now.body) return t.sentenceNoSpan;
    return now.quality?.refusals.length ? t.sentenceBad : `${verdictOf(now)}.`;
  });
  return (
    <Show when={study()?.test} fallback={other()}>
      {(test) => (
        <>
          {t.sentence}{' '}
          <For each={AXES}>
            {(name, i) => (
              <>
                <b class={HUES[name]}>{sayApart(name, Math.abs(test().atEnd[i()]))}</b> {t[name].toLowerCase()}
                {i() < 2 ? ', ' : ' '}
              </>
            )}
          </For>
          {t.apartWord}.
        </>
      )}
    </Show>
  );
}
