/** Under the floor: a tooth for each frame at its true time, the present one long; pegs among them; and the line down to the plate. */
import { createMemo, For, Show } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { sayMark } from './clip-marks.ts';
import { ClipPegs } from './clip-pegs.tsx';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

const TOOTH = 13;
const LONG = 24;
/** px between two teeth under which every second, fifth, … is drawn */
const FINE = 3;

export function ClipComb(props: { desk: ClipDesk; axis: TimeAxis; left: number; height: number; isTouch: boolean }) {
  const teeth = createMemo((): string => {
    const all = props.desk.frames();
    if (!all) return '';
    const gap = props.axis.pxPerS / all.hz;
    const every = [1, 2, 5, 10, 20, 50, 100].find((n) => n * gap >= FINE) ?? 200;
    const { from = 0, duration } = props.axis;
    let d = '';
    for (let k = 0; k < all.t.length; k += every) {
      const s = props.desk.timeOf(k);
      if (s >= from - 1e-9 && s <= duration + 1e-9) d += `M${xOf(props.axis, s).toFixed(1)} 0v${TOOTH}`;
    }
    return d;
  });
  const x = (): number => xOf(props.axis, props.desk.time.at());
  const scrub = (e: PointerEvent): void =>
    startScrub(e, { play: props.desk.time.play, at: props.desk.time.at, set: props.desk.time.setAt }, (px) =>
      tOf(props.axis, px),
    );
  return (
    <div
      class="clip-comb"
      style={{ left: `${props.left}px`, width: `${props.axis.width}px`, height: `${props.height}px` }}
    >
      <svg width={props.axis.width} height={props.height} aria-hidden="true" onPointerDown={scrub}>
        <rect class="clip-comb-ground" width={props.axis.width} height={LONG + 6} />
        <path class="clip-teeth" d={teeth()} />
        <path class="clip-tooth" d={`M${x()} 0V${LONG}`} />
        <path class="clip-line" d={`M${x()} 0V${props.height}`} />
        <path class="clip-point" d={`M${x() - 7} ${props.height}h14l-7 8z`} />
      </svg>
      <ClipPegs desk={props.desk} axis={props.axis} isTouch={props.isTouch} />
    </div>
  );
}

/** Instants that are kept with the skill, on the ruler of its own flight, while the clip is not open. */
export function ClipKeptPegs(props: { desk: ClipDesk; axis: TimeAxis; left: number }) {
  return (
    <Show when={!props.desk.clip() && props.desk.kept()?.times}>
      {(times) => (
        <ul class="clip-kept-pegs" aria-label={t.keptPegs} style={{ left: `${props.left}px` }}>
          <For each={times().marks}>
            {({ mark, at }) => (
              <li style={{ transform: `translateX(${xOf(props.axis, at.value)}px)` }}>
                {sayMark(mark)} <b>{formatNumber(at.value, at.plusMinus > 0.015 ? 2 : 3)}</b>
              </li>
            )}
          </For>
        </ul>
      )}
    </Show>
  );
}

/** While a clip is read the comb fills from the left. */
export function ClipFilling(props: { axis: TimeAxis; left: number; share: number }) {
  const width = (): number => props.axis.width - 72;
  const teeth = (): string => {
    let d = '';
    for (let px = 0; px <= width() * props.share; px += 6) d += `M${46 + px} 0v${TOOTH}`;
    return d;
  };
  return (
    <Show when={props.share > 0}>
      <svg
        class="clip-filling"
        aria-hidden="true"
        width={props.axis.width}
        height={TOOTH + 2}
        style={{ left: `${props.left}px` }}
      >
        <path class="clip-teeth" d={teeth()} />
      </svg>
    </Show>
  );
}
