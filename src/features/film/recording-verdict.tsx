/** Whether the recording obeys physics: the verdict first, then what it is made of. */
import { createMemo, For, Show } from 'solid-js';
import type { RecordingQuality, RecordingStudy } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { sayPercent } from './recording-rows.tsx';
import { mm } from './recording-values.ts';
import { recordingTexts as t } from './recording-words.ts';

type Refusal = RecordingQuality['refusals'][number];

export function sayRefusal({ g }: RecordingQuality, { reason, value }: Refusal): string {
  const shown: Record<Refusal['reason'], () => string> = {
    gravity: () => formatNumber(g, 1),
    momentum: () => sayPercent(value),
    parabola: () => mm(value, 0),
    gap: () => formatNumber(value, 2),
    short: () => formatNumber(value, 2),
    unmapped: () => formatNumber(value, 0),
  };
  return t.reasons[reason](shown[reason]());
}

export function verdictOf({ span, quality, body }: RecordingStudy): string {
  if (!body) return t.verdicts.unmapped;
  if (!span || !quality) return t.verdicts.noSpan;
  return quality.refusals.length === 0 ? t.verdicts.good : t.verdicts.bad;
}

export function RecordingVerdict(props: { study: RecordingStudy }) {
  const quality = () => props.study.quality;
  const rows = createMemo(() => {
    const q = quality();
    if (!q) return [];
    return [
      [t.g, formatNumber(q.g, 2), q.gError > 0 ? `± ${formatNumber(2 * q.gError, 2)}` : '', t.gMust],
      [t.off, mm(q.offParabola), '', t.offUnit],
      [t.constant, sayPercent(q.momentumSpread), '', t.constantMust],
    ] as const;
  });
  const refusals = (): readonly Refusal[] => quality()?.refusals ?? [];
  return (
    <section class="rec-verdict" aria-label={verdictOf(props.study)}>
      <h2>
        {verdictOf(props.study)}
        <For each={refusals()}>
          {(one) => <span> {quality() && sayRefusal(quality() as RecordingQuality, one)}</span>}
        </For>
      </h2>
      <Show when={refusals().length > 0}>
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
