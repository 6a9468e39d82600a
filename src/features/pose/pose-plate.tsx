/** The plate beside the hand: the part, what it does to the flight, where the limb is; and when it is too fast, what helps. */
import { createMemo, For, Show } from 'solid-js';
import { useFlight, usePage } from '../../app/page.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { useHand } from './hand.ts';
import { type PlateText, wordPlate } from './limb-words.ts';
import type { Work } from './limb-work.ts';
import { MOST_MORE } from './seconds-more.ts';
import { poseTexts } from './words.ts';

/** m: less than this out of reach is not worth a word */
const SHORT = 0.03;

/** px: what the plates take at most; where a finger needs the room they are narrow, and what is too fast takes a line more */
const PLATE = { line: 18, frame: 14, caution: 78 } as const;
export const PLATE_WIDE = { mouse: 168, touch: 152 } as const;

export function usePlateText(work: () => Work | undefined): () => PlateText | undefined {
  const page = usePage();
  const text = createMemo(() => {
    const now = work();
    return now && wordPlate(page, now, page.flight.result());
  });
  return text;
}

const isShort = ({ short, stopped, tooFast }: Work): boolean => short > SHORT && stopped.length === 0 && !tooFast;

export function plateHeight(text: PlateText, work: Work, wide: number): number {
  const lines = 2 + text.result.length + (text.rate ? 1 : 0) + (text.end ? 1 : 0) + (isShort(work) ? 1 : 0);
  return (
    PLATE.frame +
    PLATE.line * lines +
    (work.tooFast ? PLATE.caution + 4 + (wide < PLATE_WIDE.mouse ? PLATE.line : 0) : 0)
  );
}

export function PosePlate(props: { work: Work; text: PlateText; x: number; y: number; wide: number }) {
  const flight = useFlight();
  const hand = useHand();
  return (
    <div class="pose-plates" style={{ transform: `translate(${props.x}px, ${props.y}px)`, width: `${props.wide}px` }}>
      <div class="pose-plate">
        <p class="part">{props.text.part}</p>
        <Show when={props.text.end}>{(end) => <p>{end()}</p>}</Show>
        <For each={props.text.result}>
          {(g) => (
            <p class="gain">
              <span class={g.hue}>
                {g.name} <b>{g.from}</b> → <b>{g.to}</b>
              </span>
            </p>
          )}
        </For>
        <Show when={props.text.rate}>
          {(rate) => (
            <p>
              {rate().name} <b>{rate().from}</b> → <b>{rate().to}</b> <span class="unit">{rate().unit}</span>
            </p>
          )}
        </Show>
        <p>{props.text.raised}</p>
        <Show when={isShort(props.work)}>
          <p>{poseTexts.short(formatNumber(props.work.short * 100, 0))}</p>
        </Show>
        <Show when={flight.outcome().fault}>{(f) => <p class="stop">{f().message}</p>}</Show>
      </div>
      <Show when={props.work.tooFast}>
        {(fast) => (
          <div class="pose-plate too-fast">
            <p class="part">{poseTexts.fasterThan(fast().angle)}</p>
            <Show when={hand.lag.more()}>
              {(more) => {
                const given = () => {
                  const found = more();
                  return found === 'none' ? undefined : found;
                };
                return (
                  <Show when={given()} fallback={<p>{poseTexts.noMore(formatNumber(MOST_MORE, 2))}</p>}>
                    {(found) => (
                      <button type="button" onClick={() => hand.giveMore()}>
                        {poseTexts.giveMore(found().s)}
                      </button>
                    )}
                  </Show>
                );
              }}
            </Show>
          </div>
        )}
      </Show>
    </div>
  );
}
