/** What the hand does to the flight, written above the finger: twist first, then the joints; and how far it is out of reach. */
import { createMemo, For, Show } from 'solid-js';
import { calcGains } from '../../app/drag-plate.tsx';
import { useFlight } from '../../app/page.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { Work } from './hand.ts';
import { poseTexts } from './words.ts';

/** Half the width that a plate may need, and its height, px. */
const HALF = 112;
const TALL = 110;

export function PosePlate(props: { work: Work; x: number; y: number; width: number; top?: number }) {
  const flight = useFlight();
  const gains = createMemo(() => {
    const before = flight.before();
    return before ? calcGains(before, flight.result().outline) : [];
  });
  const x = (): number => Math.min(Math.max(props.x, HALF), Math.max(props.width - HALF, HALF));
  // above the finger, never under it; at the top of the picture beside it
  const isHigh = (): boolean => props.y < TALL + (props.top ?? 0);
  return (
    <div
      class="pose-plate"
      classList={{ beside: isHigh() }}
      style={{
        left: `${isHigh() ? (props.x > props.width / 2 ? props.x - 40 : props.x + 40) : x()}px`,
        top: `${isHigh() ? Math.max(props.y - 30, 4) : props.y - 34}px`,
        '--shift': isHigh() ? (props.x > props.width / 2 ? '-100%' : '0') : '-50%',
      }}
      aria-hidden="true"
    >
      <For each={gains()}>
        {(g) => (
          <p class="gain">
            <span class={g.hue}>
              {g.name} <b>{g.from}</b> → <b>{g.to}</b>
            </span>
          </p>
        )}
      </For>
      <For each={props.work.lines}>{(line) => <p>{line}</p>}</For>
      <Show when={props.work.short > 0.01}>
        <p>{poseTexts.short(formatNumber(props.work.short * 100, 0))}</p>
      </Show>
      <Show when={flight.outcome().fault}>{(f) => <p class="stop">{f().message}</p>}</Show>
    </div>
  );
}
