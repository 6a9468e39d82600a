/** A span that something may move in: thick ends to drag or step, a dot where it is now, a dashed ring where the answer has it. */
import { createSignal, For, Show } from 'solid-js';
import { startDrag } from '../../ui/drag.ts';
import { type AskUnit, sayIn, stepOf } from './ask-words.ts';
import { askTexts as t } from './words.ts';

export interface SpanScale {
  readonly x: (v: number) => number;
  readonly v: (x: number) => number;
  readonly width: number;
}

export function SpanBar(props: {
  label: string;
  unit: AskUnit;
  scale: SpanScale;
  /** how far the ends may go */
  low: number;
  high: number;
  from: number;
  to: number;
  now: number;
  answer?: number;
  onChange: (from: number, to: number) => void;
}) {
  const [draft, setDraft] = createSignal<readonly [number, number]>();
  const ends = (): readonly [number, number] => draft() ?? [props.from, props.to];
  const grid = (v: number): number => {
    const step = stepOf(props.unit);
    return Math.round(v / step) * step;
  };
  const put = (side: 0 | 1, v: number): readonly [number, number] => {
    const least = stepOf(props.unit);
    const [from, to] = [props.from, props.to];
    return side === 0
      ? [Math.min(Math.max(v, props.low), to - least), to]
      : [from, Math.max(Math.min(v, props.high), from + least)];
  };
  const press = (side: 0 | 1, e: PointerEvent): void => {
    e.stopPropagation();
    const start = side === 0 ? props.from : props.to;
    const at = props.scale.x(start);
    startDrag(e, {
      move: (dx) => setDraft(put(side, grid(props.scale.v(at + dx)))),
      end: () => {
        const d = draft();
        setDraft(undefined);
        if (d) props.onChange(...d);
      },
      cancel: () => setDraft(undefined),
    });
  };
  const onKey = (side: 0 | 1, e: KeyboardEvent): void => {
    const way = /Right|Up/.test(e.key) ? 1 : /Left|Down/.test(e.key) ? -1 : 0;
    if (!e.key.startsWith('Arrow') || way === 0) return;
    e.preventDefault();
    e.stopPropagation();
    const step = stepOf(props.unit) * (e.shiftKey ? 10 : 1);
    props.onChange(...put(side, grid((side === 0 ? props.from : props.to) + way * step)));
  };
  const x = (v: number): string => `${Math.min(Math.max(props.scale.x(v), 0), props.scale.width).toFixed(1)}px`;
  return (
    <div class="span-bar" style={{ width: `${props.scale.width}px` }}>
      <span
        class="span-fill"
        style={{
          left: x(ends()[0]),
          width: `${Math.max(0, Number.parseFloat(x(ends()[1])) - Number.parseFloat(x(ends()[0])))}px`,
        }}
      />
      <span class="span-now" style={{ left: x(props.now) }} />
      <Show when={props.answer !== undefined}>
        <span class="span-answer" style={{ left: x(props.answer ?? 0) }} />
      </Show>
      <For each={[0, 1] as const}>
        {(side) => (
          <span
            class="span-end"
            role="slider"
            tabIndex={0}
            aria-label={side === 0 ? t.from(props.label) : t.to(props.label)}
            aria-valuenow={ends()[side]}
            aria-valuemin={side === 0 ? props.low : ends()[0]}
            aria-valuemax={side === 0 ? ends()[1] : props.high}
            aria-valuetext={sayIn(props.unit, ends()[side])}
            style={{ left: x(ends()[side]) }}
            onPointerDown={(e) => press(side, e)}
            onKeyDown={(e) => onKey(side, e)}
          />
        )}
      </For>
    </div>
  );
}
