/** Recording: what was measured of a body, and whether the model agrees with it. */
import type { ToolProps } from '../../app/tool.ts';
import { FilmSentence } from './film-frame.tsx';
import { recordingTexts as t } from './recording-words.ts';

export function RecordingView(_props: ToolProps) {
  return (
    <>
      <FilmSentence>{t.none}</FilmSentence>
      <p class="film-empty quiet">{t.noneHint}</p>
    </>
  );
}
