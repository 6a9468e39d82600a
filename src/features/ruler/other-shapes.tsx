/** The shapes of another way of the skill on the same ruler: to be seen beside one's own, and not to be pressed. */
import { createMemo, For, Show } from 'solid-js';
import { useCursor, useServices } from '../../app/page.ts';
import { type BlockSpan, getSpans } from '../../document/spans.ts';
import type { FlightResult } from '../../engine/result.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';

/** px: a tile narrower than this shows no small figure, a move no word */
const LEAST = { figure: 30, word: 34 } as const;
/** of the height of a tile */
const FIGURE = 0.72;

export function OtherShapes(props: {
  axis: TimeAxis;
  tile: number;
  result: FlightResult;
  /** what the row is called */
  label: string;
}) {
  const cursor = useCursor();
  const { pictures, presets } = useServices();
  const spans = createMemo(() => {
    const { file, outline, flight } = props.result;
    return getSpans(file, presets.shapes, { apex: outline.apex, touchdown: flight.duration });
  });
  const end = (): number => Math.min(props.axis.duration, props.result.flight.duration);
  const place = (from: number, to: number): { left: number; width: number } => {
    const left = xOf(props.axis, Math.max(from, 0));
    return { left, width: xOf(props.axis, Math.min(to, end())) - left };
  };
  const styleOf = ({ left, width }: { left: number; width: number }) => ({ left: `${left}px`, width: `${width}px` });
  const isHeld = ({ from, to }: BlockSpan): boolean => cursor.at() >= from - 1e-6 && cursor.at() <= to + 1e-6;
  const figureOf = (index: number): string =>
    pictures.tile(props.result, index, Math.round(props.tile * FIGURE), props.tile - 4);
  return (
    <div
      class="other-shapes"
      role="img"
      aria-label={`${props.label}: ${spans()
        .map(({ title }) => title)
        .join(', ')}`}
      style={{ height: `${props.tile}px`, '--tile': `${props.tile}px` }}
    >
      <For each={spans()}>
        {(span, i) => {
          const before = (): BlockSpan | undefined => spans()[i() - 1];
          const move = () => place(before()?.to ?? Math.min(span.from, 0), span.from);
          const tile = () => place(span.from, span.to);
          return (
            <>
              <Show when={move().width > 1}>
                <div class="move" classList={{ still: before() === undefined }} style={styleOf(move())}>
                  <Show when={before() && move().width > LEAST.word}>
                    <CutText class="move-word" text={span.word} />
                  </Show>
                </div>
              </Show>
              <Show when={tile().width >= 0}>
                <div
                  class="tile"
                  classList={{ held: isHeld(span) }}
                  style={styleOf({ ...tile(), width: Math.max(tile().width, 2) })}
                >
                  <Show when={tile().width >= LEAST.figure}>
                    {/* eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone */}
                    <span class="figure" innerHTML={figureOf(span.index)} />
                  </Show>
                </div>
              </Show>
            </>
          );
        }}
      </For>
    </div>
  );
}
