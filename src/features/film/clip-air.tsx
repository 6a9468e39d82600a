/** Over the floor: A from the side along time, on the ruler of the clip; without one, on its own. */
import { createMemo, For } from 'solid-js';
import { useCursor, useFlight } from '../../app/page.ts';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { unitSystem } from '../../ui/units.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** m over the highest place of the mass centre */
const OVER = 1.05;
const TOP = 8;

export function ClipAir(props: { desk: ClipDesk; axis: TimeAxis; left: number; height: number }) {
  const flight = useFlight();
  const cursor = useCursor();
  const low = (): number => Math.min(0, flight.result().flight.surfaceY);
  const high = (): number => flight.result().jump.highest + OVER;
  const place = createMemo(() => {
    const axis = props.axis;
    const height = props.height;
    const pxPerM = (height - TOP) / Math.max(1, high() - low());
    const floor = low();
    return { x: (s: number) => xOf(axis, s), y: (m: number) => height - (m - floor) * pxPerM, pxPerM };
  });
  const pictures = () => props.desk.room()?.pictures;
  const still = createMemo(() => (props.height > 0 ? (pictures()?.alongStill(flight.result(), place()) ?? '') : ''));
  const shown = (): number | undefined => (props.desk.frames() ? props.desk.instant()?.t : cursor.at());
  const now = createMemo((): string => {
    const at = shown();
    return at === undefined || props.height <= 0 ? '' : (pictures()?.alongNow(flight.result(), at, place()) ?? '');
  });
  const marks = createMemo(() => {
    const { unit, perUnitM } = unitSystem().lengthMarks;
    const every = [1, 2, 3, 5, 10].find((n) => n * perUnitM * place().pxPerM >= 34) ?? 20;
    const out: { y: number; text: string }[] = [];
    for (let k = every; k * perUnitM < high(); k += every)
      out.push({ y: place().y(k * perUnitM), text: `${k} ${unit}` });
    return out;
  });
  const hasTime = (): boolean => props.desk.frames() !== undefined && !props.desk.isStill();
  const at = (): number => (hasTime() ? props.desk.time.at() : cursor.at());
  const x = (): number => xOf(props.axis, at());
  const lineFrom = (): number => {
    const result = flight.result();
    const { p_WScm_W, t: times, n } = result.frames;
    const s = shown();
    if (s === undefined) return TOP;
    let i = 0;
    while (i < n - 1 && times[i] < s) i++;
    return place().y(p_WScm_W[3 * i + 1]);
  };
  const scrub = (e: PointerEvent): void =>
    hasTime()
      ? startScrub(e, { play: props.desk.time.play, at: props.desk.time.at, set: props.desk.time.setAt }, (px) =>
          tOf(props.axis, px),
        )
      : startScrub(e, { play: cursor.play, at: cursor.at, set: cursor.set }, (px) => tOf(props.axis, px));
  return (
    <svg
      class="clip-air"
      style={{ left: `${props.left}px` }}
      width={props.axis.width}
      height={props.height}
      role="img"
      aria-label={t.air}
      onPointerDown={scrub}
    >
      <For each={marks()}>
        {(mark) => (
          <>
            <line class="clip-hair" x1={46} x2={props.axis.width - 8} y1={mark.y} y2={mark.y} />
            <text class="clip-tick" x={40} y={mark.y + 4} text-anchor="end">
              {mark.text}
            </text>
          </>
        )}
      </For>
      {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
      <g innerHTML={still()} />
      {/* eslint-disable-next-line solid/no-innerhtml -- as above */}
      <g innerHTML={now()} />
      <path class="clip-line" d={`M${x()} ${lineFrom()}V${props.height}`} />
    </svg>
  );
}
