/** Before a recording is open; what is under way; and what came to nothing. */
import { Show } from 'solid-js';
import type { ToolProps } from '../../app/tool.ts';
import { Icon } from '../../ui/icon.tsx';
import { FilmAir } from './film-frame.tsx';
import type { RecordingState } from './recording-state.ts';
import { recordingTexts as t } from './recording-words.ts';

export function RecordingEmpty(props: ToolProps & { state: RecordingState }) {
  return (
    <>
      <FilmAir>{null}</FilmAir>
      <div
        class="rec-empty"
        style={props.device === 'bench' ? { 'margin-left': `${props.timeLeft}px`, width: `${props.axis.width}px` } : {}}
      >
        <p>
          <b>{t.empty}</b>
        </p>
        <p class="quiet">{t.emptyHint}</p>
        <p class="rec-empty-ways">
          <button type="button" class="main" onClick={() => props.state.pick()}>
            {t.open}
          </button>
          <Show when={props.device === 'bench'}>
            <span class="quiet">{t.dropHere}</span>
          </Show>
        </p>
        <RecordingWork state={props.state} />
        <RecordingFault state={props.state} />
      </div>
    </>
  );
}

export function RecordingWork(props: { state: RecordingState }) {
  return (
    <Show when={props.state.work()}>
      {(work) => (
        <div class="rec-work" role="status">
          <span class="rec-bar" aria-hidden="true">
            <span style={{ width: `${100 * work().done}%` }} />
          </span>
          <span>{t.working(work().name, work().what, Math.round(100 * work().done))}</span>
          <button type="button" class="small" onClick={() => props.state.cancel()}>
            {t.cancel}
          </button>
        </div>
      )}
    </Show>
  );
}

export function RecordingFault(props: { state: RecordingState }) {
  return (
    <Show when={props.state.fault()}>
      {(fault) => (
        <p class="rec-fault" role="alert">
          <Icon name="caution" size={20} /> <span>{fault()}</span>
          <button type="button" class="plain square" aria-label={t.dismiss} onClick={() => props.state.dismiss()}>
            <Icon name="close" size={16} />
          </button>
        </p>
      )}
    </Show>
  );
}
