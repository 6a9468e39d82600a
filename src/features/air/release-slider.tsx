/** Let go earlier or later: a thumb on an axis of ms. A drag flies along; what the try there gives stands above the finger meanwhile. */
import { createSignal, For, Show } from 'solid-js';
import type { FileSwing, SkillFile } from '../../../sim/index.ts';
import { beforeOf } from '../../../sim/math/phases.ts';
import { useDocument } from '../../app/page.ts';
import { changeSwing, isSwing } from '../../document/contact-edits.ts';
import type { WindowResult } from '../../jobs/kinds/leg-data.ts';
import { startDrag } from '../../ui/drag.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { StudyScale } from './study-scale.ts';
import { studyTexts as t } from './study-texts.ts';
import { tryNear, type WindowStudy } from './window-study.ts';
import { wordMs, wordOff } from './window-words.ts';
import { contactTexts } from './words.ts';

const swingOf = (file: SkillFile): FileSwing | undefined => {
  const before = beforeOf(file);
  return isSwing(before) ? before : undefined;
};

/** ms that the release is late now, counted from the one that was studied */
export function useOffset(window: () => WindowResult): () => number {
  const doc = useDocument();
  return () => {
    const late = (swingOf(doc.file())?.releaseLateS ?? 0) * 1000;
    return Math.round((late - window().baseMs) * 10) / 10;
  };
}

export function ReleaseSlider(props: { window: WindowResult; study: WindowStudy; scale: StudyScale; touch: boolean }) {
  const doc = useDocument();
  const title = contactTexts.changed(contactTexts.knobs.late);
  const offset = useOffset(() => props.window);
  const [held, setHeld] = createSignal(false);
  const withOffset = (file: SkillFile, ms: number) =>
    changeSwing(file, { releaseLateS: Math.round(props.window.baseMs + ms) / 1000 });
  const press = (e: PointerEvent): void => {
    const { left } = (e.currentTarget as HTMLElement).getBoundingClientRect();
    const onThumb = (e.target as HTMLElement).closest('.study-thumb') !== null;
    const shift = onThumb ? e.clientX - left - props.scale.x(offset()) : 0;
    const from = doc.begin();
    const put = (m: PointerEvent): void => {
      setHeld(true);
      doc.draft(withOffset(from, Math.round(props.scale.ms(m.clientX - left - shift))));
    };
    startDrag(e, {
      start: (m) => {
        if (!onThumb) put(m);
      },
      move: (_x, _y, m) => put(m),
      end: () => {
        setHeld(false);
        doc.settle(title);
      },
      cancel: () => {
        setHeld(false);
        doc.abandon();
      },
    });
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const step = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    if (step === 0) return;
    e.preventDefault();
    e.stopPropagation();
    doc.edit(withOffset(doc.file(), Math.round(offset()) + step * (e.shiftKey ? 5 : 1)), title);
  };
  const here = () => tryNear(props.window.tries, offset());
  const outcome = (): string => {
    const { nearM, overDeg } = here();
    return [nearM === undefined ? '' : nearM <= 0 ? t.touches : say('length', nearM), wordOff(overDeg)]
      .filter(Boolean)
      .join(', ');
  };
  const x = (ms: number): number => props.scale.x(ms);
  const tall = (): number => (props.touch ? 48 : 26);
  return (
    <div class="study-slider">
      <div class="study-head">
        <h3>{t.title}</h3>
        <NumberField
          label={`${t.title}, ms`}
          compact
          unit="ms"
          value={Math.round((swingOf(doc.file())?.releaseLateS ?? 0) * 1000)}
          min={-80}
          max={80}
          step={1}
          decimals={0}
          onChange={(v) => doc.edit(changeSwing(doc.file(), { releaseLateS: v / 1000 }), title)}
        />
      </div>
      <p class="study-ways" aria-hidden="true">
        <span>{t.earlier}</span>
        <span>{t.later}</span>
      </p>
      <div
        class="study-track"
        style={{ height: `${tall() + 20}px`, width: `${props.scale.width}px` }}
        onPointerDown={press}
      >
        <svg width={props.scale.width} height={tall() + 20} aria-hidden="true">
          <rect
            class="track"
            x={x(props.scale.from)}
            width={x(props.scale.to) - x(props.scale.from)}
            y={tall() / 2 - 3}
            height="6"
          />
          <Show when={props.study.held}>
            {(span) => (
              <rect
                class="window"
                x={x(span().from)}
                width={Math.max(1, x(span().to) - x(span().from))}
                y={tall() / 2 - 8}
                height="16"
              />
            )}
          </Show>
          <For each={props.study.near.filter((span) => span.from < props.scale.to && span.to > props.scale.from)}>
            {(span) => (
              <rect
                class="near"
                x={x(span.from)}
                width={Math.max(0, x(span.to) - x(span.from))}
                y={tall() / 2 - 7}
                height="14"
              />
            )}
          </For>
          <For each={props.scale.ticks}>
            {(ms) => (
              <text x={x(ms)} y={tall() + 14} text-anchor="middle">
                {ms > 0 ? `+${ms}` : formatNumber(ms, 0)}
              </text>
            )}
          </For>
        </svg>
        <div
          class="study-thumb"
          classList={{ touch: props.touch }}
          role="slider"
          tabIndex={0}
          aria-label={t.title}
          aria-valuemin={Math.round(props.scale.from)}
          aria-valuemax={Math.round(props.scale.to)}
          aria-valuenow={Math.round(offset())}
          aria-valuetext={t.value(wordMs(offset()), outcome())}
          style={{ left: `${x(offset())}px`, height: `${tall()}px` }}
          onKeyDown={onKeyDown}
        />
        <Show when={held()}>
          <output class="study-above" style={{ left: `${x(offset())}px` }}>
            {t.value(wordMs(offset()), outcome())}
          </output>
        </Show>
      </div>
    </div>
  );
}
