/**
 * How the tilt came: the body at take-off, at the end of the move that made most of the tilt, and at the cursor, seen from the
 * front with somersault and twist taken out and the tilt left in (the attitude is Rz Rx Ry: without Rz and Ry it is the tilt alone).
 */
import { createMemo, For, type JSX, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { wordShape } from '../../app/flight.ts';
import { useCursor, useFlight, useServices } from '../../app/page.ts';
import { calcPlace, readAt } from '../../app/plot/readout.ts';
import { TiltWedge } from '../../app/tilt-wedge.tsx';
import type { BlockSpan } from '../../document/spans.ts';
import type { FlightResult } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { trioTexts } from './words.ts';

const tiltAt = ({ frames }: FlightResult, s: number): number => readAt(frames.tilt, calcPlace(frames, s)) * DEG;

/** End of the move over which the tilt changed most; without shapes, where the tilt is largest. */
function findTiltingMove(result: FlightResult, spans: readonly BlockSpan[]): number {
  const { frames, flight } = result;
  const tilt = (s: number): number => tiltAt(result, Math.min(Math.max(s, 0), flight.duration)) || 0;
  let best = { s: 0, by: 0 };
  spans.forEach((span, i) => {
    const from = spans[i - 1]?.to ?? 0;
    if (span.from <= 0 || span.from > flight.duration) return;
    const by = Math.abs(tilt(span.from)) - Math.abs(tilt(from));
    if (by > best.by) best = { s: span.from, by };
  });
  if (best.s > 0) return best.s;
  let most = 0;
  for (let i = 1; i < frames.n; i++) if (Math.abs(frames.tilt[i]) > Math.abs(frames.tilt[most])) most = i;
  return frames.t[most];
}

/** Places of the three across the width, as shares of it. */
export const TRIO = { takeoff: 0.13, move: 0.42, cursor: 0.79 } as const;

/** The third is the handle, which is drawn by its owner; `hidden`: a hand is at work on it. `whole`: there is no handle, and all three are drawn here, as large as there is room. */
export function TiltTrio(props: { width: number; height: number; hidden: boolean; whole?: boolean }) {
  const flight = useFlight();
  const cursor = useCursor();
  const second = createMemo(() => findTiltingMove(flight.result(), flight.spans()));
  const places = () => [
    { s: 0, x: TRIO.takeoff * props.width },
    { s: second(), x: TRIO.move * props.width },
  ];
  const scale = (): number =>
    props.whole
      ? Math.min(props.width / WHOLE.wide, (props.height - WORDS) / WHOLE.tall)
      : Math.min(SCALE.most, (props.height - WORDS) / SCALE.tall);
  return (
    <section
      class="tilt-trio"
      aria-label={trioTexts.label}
      style={{ width: `${props.width}px`, height: `${props.height}px` }}
    >
      <Show when={!props.hidden}>
        <For each={[0, 1]}>{(i) => <Tilted place={places()[i]} height={props.height} scale={scale()} />}</For>
        <svg class="trio-arrows" width={props.width} height={props.height} aria-hidden="true">
          <For each={[0.275, 0.56]}>
            {(share) => <path d={`M${share * props.width - 11} ${props.height / 2} h20 m-6 -4 l6 4 l-6 4`} />}
          </For>
        </svg>
        <Show
          when={props.whole}
          fallback={
            <p class="trio-words now">
              <Words s={cursor.at()} />
            </p>
          }
        >
          <Tilted
            place={{ s: cursor.at(), x: TRIO.cursor * props.width }}
            height={props.height}
            scale={scale()}
            isNow
          />
        </Show>
      </Show>
    </section>
  );
}

function Words(props: { s: number }): JSX.Element {
  const flight = useFlight();
  return (
    <>
      {wordShape(flight.spans(), props.s)}{' '}
      <b class="tilt">{formatNumber(Math.abs(tiltAt(flight.result(), props.s)), 0)}°</b>
    </>
  );
}

interface TiltedPlace {
  readonly s: number;
  readonly x: number;
}

/** Height of the words under it, px; scale against the height of the air, px per m. */
const WORDS = 40;
const SCALE = { most: 69, tall: 3.4 } as const;
/** m of width and height, where all three are drawn here */
const WHOLE = { wide: 6, tall: 2.5 } as const;

function Tilted(props: {
  place: TiltedPlace;
  height: number;
  /** px per m */
  scale: number;
  /** the one at the cursor: there is nowhere to go */
  isNow?: boolean;
}) {
  const flight = useFlight();
  const cursor = useCursor();
  const services = useServices();
  const tilt = (): number => tiltAt(flight.result(), props.place.s) || 0;
  const box = () => ({ width: Math.round(2.1 * props.scale), height: Math.round(2.3 * props.scale) });
  const picture = createMemo(() =>
    services.pictures.held({
      result: flight.result(),
      angles: services.posing.anglesAt(flight.result(), props.place.s),
      azimuth: 0,
      roll: (tilt() * Math.PI) / 180,
      ...box(),
      pxPerM: props.scale,
      centreY: box().height / 2,
    }),
  );
  const words = (): string => `${wordShape(flight.spans(), props.place.s)} ${formatNumber(Math.abs(tilt()), 0)}°`;
  const style = (): JSX.CSSProperties => ({
    left: `${props.place.x - box().width / 2}px`,
    top: `${props.height - box().height - WORDS}px`,
    width: `${box().width}px`,
  });
  const drawn = (): JSX.Element => (
    <>
      <span class="tilted" style={{ height: `${box().height}px` }}>
        <TiltWedge deg={tilt()} x={box().width / 2} y={box().height / 2} pxPerM={props.scale} />
        {/* eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone */}
        <svg width={box().width} height={box().height} aria-hidden="true" innerHTML={picture().markup} />
      </span>
      <span class="trio-words">
        <Words s={props.place.s} />
      </span>
    </>
  );
  return (
    <Show
      when={props.isNow}
      fallback={
        <button
          type="button"
          class="trio-place"
          style={style()}
          aria-label={trioTexts.goTo(words(), formatNumber(props.place.s, 2))}
          onClick={() => cursor.set(props.place.s)}
        >
          {drawn()}
        </button>
      }
    >
      <div class="trio-place now" style={style()}>
        {drawn()}
      </div>
    </Show>
  );
}
