/** What touches, under the ruler: one span for each phase. A press goes there. */
import { For, Show } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { useDocument, useServices } from '../../app/page.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import type { WholeState } from '../../app/whole-state.ts';
import { changeContact } from '../../document/contact-edits.ts';
import type { PhaseSpan, WholeResult } from '../../jobs/kinds/whole-data.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { putBeside } from '../../ui/plot/beside-line.ts';
import type { AirFrame } from './air-frame.ts';
import { airTexts as t } from './air-texts.ts';
import { withoutPhase } from './phase-edits.ts';
import { wordPhase } from './phase-words.ts';
import { type WholeAxis, wholeX } from './whole-axis.ts';
import { contactTexts } from './words.ts';

/** px a letter, about */
const LETTER = 6.6;

export function TouchStrip(props: { state: WholeState; whole: WholeResult; axis: WholeAxis; frame: AirFrame }) {
  const doc = useDocument();
  const { flying } = useServices();
  const isFile = (file: SkillFile): boolean => {
    try {
      flying.checkChain(flying.readFile(file));
      return true;
    } catch {
      return false;
    }
  };
  const place = (span: PhaseSpan): { left: number; width: number } => {
    const left = wholeX(props.axis, Math.max(span.from, props.axis.from));
    return { left, width: wholeX(props.axis, Math.min(span.to, props.axis.to)) - left };
  };
  /** Its words, and px to them from its left: in the middle of the air, else at the left, clear of the plumb line. */
  const name = (span: PhaseSpan): { words: string; x: number } => {
    const { left, width } = place(span);
    const plumb = wholeX(props.axis, props.state.cursor()) - left;
    for (const words of wordPhase(span)) {
      const long = words.length * LETTER;
      const usual = span.kind === 'flight' ? (width - long) / 2 : 6;
      const x = putBeside(usual, long, width, plumb);
      if (x !== undefined) return { words, x };
    }
    return { words: '', x: 0 };
  };
  /** Its first edge: a longer or shorter contact before the same take-off. */
  const dragTime = (e: PointerEvent, span: PhaseSpan): void => {
    e.stopPropagation();
    if (doc.leg() !== span.leg) {
      props.state.setCursor(span.from);
      return;
    }
    const from = doc.begin();
    const time = span.to - span.from;
    startDrag(e, {
      move: (dx) => {
        const timeS = Math.min(2, Math.max(0.005, time - dx / props.axis.pxPerS));
        doc.draft(changeContact(from, { timeS: Math.round(timeS * 1000) / 1000 }));
      },
      end: () => doc.settle(contactTexts.changed(contactTexts.knobs.time)),
      cancel: () => doc.abandon(),
    });
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
              onKeyDown={(e) => {
                if (e.key !== 'Delete' && e.key !== 'Backspace') return;
                const without = withoutPhase(doc.chain(), span, props.whole.legs[span.leg].takeoff, isFile);
                if (!without) return;
                e.preventDefault();
                e.stopPropagation();
                doc.editChain(without, contactTexts.removed);
              }}
              onClick={() => {
                const at = props.state.cursor();
                if (at < span.from || at > span.to) props.state.setCursor(span.from);
              }}
            >
              <span style={{ 'margin-left': `${name(span).x}px` }}>{name(span).words}</span>
            </button>
            <Show when={span.kind === 'contact'}>
              <span
                class="contact-edge"
                title={t.edge}
                style={{ left: `${place(span).left}px` }}
                onPointerDown={(e) => dragTime(e, span)}
              />
            </Show>
          </Show>
        )}
      </For>
      <svg class="strip-bend" width={props.axis.width} height="22" aria-hidden="true">
        <path d={bend()} />
      </svg>
      <TouchPlumb axis={props.axis} />
    </section>
  );
}
