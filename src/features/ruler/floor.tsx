/**
 * The floor is the time axis: controls at its left end, seconds in the middle, metres under the side view. The bob on it
 * is the one cursor; a press anywhere on the floor brings it there.
 */

import { createMemo, For, Show } from 'solid-js';
import { useFloorTime } from '../../app/floor-hand.ts';
import { TimeBob } from '../../app/time-bob.tsx';
import { startDrag } from '../../ui/drag.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { PlayKey } from '../../ui/play-key.tsx';
import { labelStep, type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { unitSystem } from '../../ui/units.ts';
import { floorTexts } from './words.ts';

const t = floorTexts;
const SPEEDS: readonly number[] = [0.25, 0.5, 1];

export function PlayButton(props: { size?: number }) {
  const time = useFloorTime();
  return <PlayKey playing={time.play().playing()} words={t} size={props.size} onPress={() => time.play().toggle()} />;
}

export function SpeedButton() {
  const time = useFloorTime();
  const next = (): void => {
    const i = SPEEDS.indexOf(time.play().rate());
    time.play().setRate(SPEEDS[(i + 1) % SPEEDS.length]);
  };
  return (
    <button type="button" class="on-floor speed" title={t.speed} onClick={next}>
      {t.speeds[String(time.play().rate())]}
    </button>
  );
}

export function FloorControls() {
  const time = useFloorTime();
  return (
    <div class="floor-controls">
      <PlayButton />
      <button type="button" class="on-floor square" aria-label={t.back} onClick={() => time.moveBy(-0.01)}>
        <Icon name="back" />
      </button>
      <button type="button" class="on-floor square" aria-label={t.on} onClick={() => time.moveBy(0.01)}>
        <Icon name="on" />
      </button>
      <SpeedButton />
    </div>
  );
}

/** Ticks, seconds and the bob. Its left edge is the left edge of the time column. `label`: px between two seconds that are written. */
export function Ruler(props: { axis: TimeAxis; height: number; grip: number; label?: number }) {
  const time = useFloorTime();
  const axis = (): TimeAxis => time.axis(props.axis);
  const ticks = createMemo(() => {
    const { duration, pxPerS, from = 0 } = axis();
    const fine = pxPerS > 300 ? 0.02 : pxPerS > 130 ? 0.05 : 0.1;
    const step = labelStep(axis(), props.label ?? 44);
    let lines = '';
    for (let k = Math.ceil(from / fine - 1e-9); k * fine <= duration + 1e-9; k++) {
      const s = k * fine;
      const x = Math.round(xOf(axis(), s)) + 0.5;
      const near = Math.abs(s / 0.1 - Math.round(s / 0.1)) < 1e-6;
      lines += `M${x} 0v${near ? 9 : 5}`;
    }
    const labels: number[] = [];
    for (let k = Math.ceil(from / step - 1e-9); k * step <= duration + 1e-9; k++)
      if (duration - k * step > 0.03 || k === 0) labels.push(k * step);
    return { lines, labels, end: xOf(axis(), duration) };
  });
  const cursorX = (): number => time.x(props.axis);
  const hides = (s: number): boolean => Math.abs(xOf(axis(), s) - cursorX()) < props.grip / 2 + 12;
  const put = (x: number): void => {
    time.play().pause();
    time.set(Math.round(tOf(axis(), x) * 1000) / 1000);
  };
  const press = (e: PointerEvent): void => {
    const band = e.currentTarget as HTMLElement;
    const left = band.getBoundingClientRect().left;
    const onGrip = (e.target as HTMLElement).closest('.bob') !== null;
    const offset = onGrip ? e.clientX - left - cursorX() : 0;
    const start = e.clientX - left - offset;
    const from = time.at();
    startDrag(e, {
      start: () => {
        if (!onGrip) put(start);
      },
      move: (dx) => put(start + dx),
      end: () => {},
      cancel: () => time.set(from),
    });
  };
  return (
    <div class="ruler" onPointerDown={press} style={{ height: `${props.height}px`, width: `${axis().width}px` }}>
      <svg class="ticks" width={axis().width} height={props.height} aria-hidden="true">
        <path d={ticks().lines} stroke="var(--floor-tick)" stroke-width="1" />
        <path d={`M${Math.round(ticks().end) + 0.5} 0v14`} stroke="var(--floor-ink)" stroke-width="1.5" />
        <For each={ticks().labels}>
          {(s) => (
            <Show when={!hides(s)}>
              <text class="tick-label" x={xOf(axis(), s)} y={props.height / 2 + 9} text-anchor="middle">
                {formatNumber(s, 1)}
              </text>
            </Show>
          )}
        </For>
        <Show when={axis().width - ticks().end > 44 && !hides(axis().duration + 22 / axis().pxPerS)}>
          <text class="tick-end" x={ticks().end + 6} y={props.height / 2 + 9}>
            {formatNumber(axis().duration, 2)} s
          </text>
        </Show>
      </svg>
      <TimeBob
        label={time.label(t.label)}
        least={axis().from ?? 0}
        most={axis().duration}
        now={time.at()}
        words={t.time(formatNumber(time.at(), 2))}
        x={cursorX()}
      >
        <Icon name="back" size={13} />
        <output>{formatNumber(time.at(), 2)} s</output>
        <Icon name="on" size={13} />
      </TimeBob>
    </div>
  );
}

/** Metres under the side view. */
export function Metres(props: { x0: number; pxPerM: number; width: number; height: number }) {
  const px = (): number => props.pxPerM * unitSystem().lengthMarks.perUnitM;
  const marks = createMemo(() => {
    const list: number[] = [];
    const low = Math.ceil((16 - props.x0) / px());
    const high = Math.floor((props.width - props.x0 - 12) / px());
    const step = [1, 2, 5, 10].find((n) => n * px() >= 30) ?? 20;
    for (let n = Math.ceil(Math.max(low, -60) / step) * step; n <= high; n += step) list.push(n);
    return list;
  });
  return (
    <div class="metres">
      <svg width={props.width} height={props.height} aria-hidden="true">
        <For each={marks()}>
          {(m) => (
            <>
              <path d={`M${Math.round(props.x0 + m * px()) + 0.5} 0v8`} stroke="var(--floor-tick)" />
              <text class="tick-label" x={props.x0 + m * px()} y={props.height / 2 + 9} text-anchor="middle">
                {formatNumber(m, 0)}
                {m === marks().at(-1) ? ` ${unitSystem().lengthMarks.unit}` : ''}
              </text>
            </>
          )}
        </For>
      </svg>
    </div>
  );
}
