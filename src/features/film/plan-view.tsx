/** Plan: where a camera stands, and what is to be expected of it. */
import type { ToolProps } from '../../app/tool.ts';
import { FilmSentence } from './film-frame.tsx';
import { planTexts as t } from './plan-words.ts';

export function PlanView(_props: ToolProps) {
  return (
    <>
      <FilmSentence>{t.none}</FilmSentence>
      <p class="film-empty quiet">{t.noneHint}</p>
    </>
  );
}
