/** Whether the recording obeys physics: the verdict first, then what it is made of. */
import { createMemo, For, Show } from 'solid-js';
import type { RecordingStudy } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { wordRecordingVerdict } from '../../../sim/words/recording-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { sayPercent } from './recording-rows.tsx';
import { mm, sayPlusMinus } from './recording-values.ts';
import { recordingTexts as t } from './recording-words.ts';

export function verdictOf({ span, quality, body }: RecordingStudy): string {
  if (!body) return t.verdicts.unmapped;
  if (!span || !quality) return t.verdicts.noSpan;
  // words of the shell are plain text
  return wordRecordingVerdict(quality).replace('m/s2', 'm/s²');
}

export function RecordingVerdict(props: { study: RecordingStudy }) {
  const quality = () => props.study.quality;
  const rows = createMemo(() => {
    const q = quality();
    if (!q) return [];
    return [
      [t.g, formatNumber(q.g, 2), sayPlusMinus(2 * q.gError, 2), t.gMust],
      [t.off, mm(q.offParabola), '', t.offUnit],
      [t.constant, sayPercent(q.momentumSpread), '', t.constantMust],
    ] as const;
  });
  return (
    <section class="rec-verdict" aria-label={verdictOf(props.study)}>
      <h2>{verdictOf(props.study)}</h2>
      <Show when={(quality()?.refusals.length ?? 0) > 0}>
        <p class="quiet">{t.noErrors}</p>
      </Show>
      <Show when={!props.study.span}>
        <p>{t.noSpanWhy}</p>
      </Show>
      <dl>
        <For each={rows()}>
          {([name, value, error, unit]) => (
            <div>
              <dt>{name}</dt>
              <dd>
                <b>{value}</b> <span>{error}</span> <span class="quiet">{unit}</span>
              </dd>
            </div>
          )}
        </For>
      </dl>
    </section>
  );
}

export const degOf = (rad: number): string => `${formatNumber(rad * DEG, 1)}°`;
