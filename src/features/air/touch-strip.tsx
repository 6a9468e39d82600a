/** What touches, under the ruler: one span for each phase. A press goes there. */
import { For, Show } from 'solid-js';
import type { WholeState } from '../../app/whole-state.ts';
import type { PhaseSpan, WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { AirFrame } from './air-frame.ts';
import { airTexts as t } from './air-texts.ts';
import { wordPhase } from './phase-words.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';

/** px a letter, about */
const LETTER = 6.6;

export function TouchStrip(props: { state: WholeState; whole: WholeResult; axis: WholeAxis; frame: AirFrame }) {
  const place = (span: PhaseSpan): { left: number; width: number } => {
    const left = wholeX(props.axis, Math.max(span.from, props.axis.from));
    return { left, width: wholeX(props.axis, Math.min(span.to, props.axis.to)) - left };
  };
  const name = (span: PhaseSpan): string => {
    const { width } = place(span);
    return wordPhase(span).find((words) => words.length * LETTER + 10 < width) ?? '';
  };
  const bend = (): string => {
    const { columns: c, phases } = props.whole;
    const most = Math.max(0.02, ...Array.from(c.bendY, (v) => Math.abs(v)));
    let d = '';
    for (let i = 0; i < c.t.length; i++) {
      if (phases[c.phase[i]].kind !== 'swing' || c.t[i] < props.axis.from) continue;
      const y = 6 - (c.bendY[i] / most) * 9;
      d += `${d ? 'L' : 'M'}${wholeX(props.axis, c.t[i]).toFixed(1)} ${y.toFixed(1)}`;
    }
    return d;
  };
  return (
    <section
      class="touching-strip"
      aria-label={t.phasesLabel}
      style={{
        height: `${props.frame.strip}px`,
        'margin-left': `${props.frame.timeX}px`,
        width: `${props.axis.width}px`,
      }}
    >
      <For each={props.whole.phases}>
        {(span) => (
          <Show when={place(span).width > 1}>
            <button
              type="button"
              class={`touching ${span.kind}`}
              classList={{ here: props.state.phase() === span }}
              aria-label={`${wordPhase(span)[0]}, ${formatNumber(span.from, 2)} – ${formatNumber(span.to, 2)} s`}
              style={{ left: `${place(span).left}px`, width: `${place(span).width}px` }}
              onClick={() => {
                const at = props.state.cursor();
                if (at < span.from || at > span.to) props.state.setCursor(span.from);
              }}
            >
              <span>{name(span)}</span>
            </button>
          </Show>
        )}
      </For>
      <svg class="strip-bend" width={props.axis.width} height={props.frame.strip} aria-hidden="true">
        <path d={bend()} />
      </svg>
    </section>
  );
}
