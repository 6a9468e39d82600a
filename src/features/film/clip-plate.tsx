/** One frame of the clip, and A over it or beside it. */
import { createEffect, createMemo, createSignal, Show } from 'solid-js';
import { useFlight } from '../../app/page.ts';
import type { ClipPicture } from '../../clip/clip-source.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { ClipCrosses } from './clip-crosses.tsx';
import { useClipPosing } from './clip-pose-state.ts';
import { ClipPosingFigure } from './clip-posing.tsx';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** What of the figure is seen at none, half and full. */
const OPACITY = { half: 0.55, full: 1 } as const;
/** requests that may have followed one whose picture is still drawn */
const LATE = 3;
/** what is posed is seen */
const LEAST_POSED = 0.5;
const opacityOf = (share: number): number =>
  share <= 0.5 ? 2 * share * OPACITY.half : OPACITY.half + (2 * share - 1) * (OPACITY.full - OPACITY.half);

export function ClipPlate(props: { desk: ClipDesk; width: number; height: number }) {
  const flight = useFlight();
  const posing = useClipPosing();
  const isPosing = (): boolean => posing.isOn() && !props.desk.isApart();
  const [damaged, setDamaged] = createSignal<string>();
  let canvas!: HTMLCanvasElement;
  const facts = () => props.desk.clip()?.facts;
  const width = (): number => (props.desk.isApart() ? Math.floor(props.width / 2) - 1 : props.width);
  const height = (): number => props.height;
  const k = (): number => width() / (facts()?.width ?? width());
  let asked = 0;
  createEffect(() => {
    const [opened, reader] = [props.desk.opening.opened(), props.desk.room()?.reader];
    const [frame, blur] = [props.desk.frame(), props.desk.blursHere()];
    const [w, h] = [width(), height()];
    if (!opened || !reader) return;
    asked++;
    const mine = asked;
    const draw = (picture: ClipPicture): void => {
      // one that is a little late is drawn too: a hand that drags sees what it passes
      if (mine < asked - LATE) return;
      canvas.width = Math.round(w * devicePixelRatio);
      canvas.height = Math.round(h * devicePixelRatio);
      if (blur) reader.drawBlurred(canvas, picture);
      else canvas.getContext('2d')?.drawImage(picture.source, 0, 0, canvas.width, canvas.height);
      canvas.dataset.frame = String(picture.index);
      if (mine === asked)
        setDamaged(picture.index === frame ? undefined : t.frameDamaged(frame + 1, picture.index + 1));
    };
    const fail = (error: unknown): void => {
      if (mine === asked && !(error instanceof Error && error.name === 'AbortError'))
        setDamaged(t.frameLost(frame + 1));
    };
    void opened.clip.picture(frame).then(draw, fail);
  });
  const figure = createMemo((): string => {
    const [sight, instant, pictures] = [props.desk.sight(), props.desk.instant(), props.desk.room()?.pictures];
    return sight && instant && pictures && props.desk.figure() > 0
      ? pictures.over(flight.result(), sight, instant.t, k())
      : '';
  });
  const isShown = (): boolean => (!props.desk.isAway() && !isPosing()) || props.desk.isApart();
  const of = (): number => props.desk.frames()?.t.length ?? 1;
  const s = (): string => formatNumber(props.desk.time.at(), 3);
  return (
    <div
      class="clip-plate"
      classList={{ apart: props.desk.isApart() }}
      style={{ width: `${props.width}px`, height: `${height()}px` }}
    >
      <canvas
        ref={canvas}
        role="img"
        aria-label={t.plate(props.desk.frame() + 1, of(), s())}
        style={{ width: `${width()}px`, height: `${height()}px` }}
      />
      <svg
        class="clip-figure"
        style={{ left: `${props.desk.isApart() ? props.width - width() : 0}px` }}
        width={width()}
        height={height()}
        aria-hidden="true"
      >
        <Show when={isShown()}>
          {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
          <g opacity={props.desk.isApart() ? 1 : opacityOf(props.desk.figure())} innerHTML={figure()} />
        </Show>
      </svg>
      <Show when={!props.desk.isApart()}>
        <ClipCrosses desk={props.desk} k={k()} width={width()} height={height()} />
      </Show>
      <Show when={isPosing() && posing.here()}>
        {(here) => (
          <ClipPosingFigure
            posing={posing}
            here={here()}
            k={k()}
            width={width()}
            height={height()}
            opacity={props.desk.isAway() ? 0 : opacityOf(Math.max(props.desk.figure(), LEAST_POSED))}
          />
        )}
      </Show>
      <Show when={damaged()}>
        <p class="clip-damaged" role="status">
          {damaged()}
        </p>
      </Show>
    </div>
  );
}
