/** The figure over the athlete as its own handle: limbs led by their ends, the trunk moves all of it, a ring turns it. By mouse, finger and keys. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import type { PosedFrame, Spot } from '../../../sim/index.ts';
import { useFlight } from '../../app/page.ts';
import type { LimbName } from '../../pictures/stage-input.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { makePoseHands } from './clip-pose-hands.ts';
import type { ClipPosing } from './clip-pose-state.ts';
import { clipPoseTexts as t } from './clip-pose-words.ts';
import './clip-pose.css';

/** px of the screen from the mass centre to the ring */
const RING = 92;
const NAMES: readonly LimbName[] = ['head', 'armL', 'armR', 'legL', 'legR'];

export function ClipPosingFigure(props: {
  posing: ClipPosing;
  here: PosedFrame;
  k: number;
  width: number;
  height: number;
  opacity: number;
}) {
  const flight = useFlight();
  const [hover, setHover] = createSignal<LimbName>();
  const [focused, setFocused] = createSignal<LimbName>();
  let root!: HTMLDivElement;
  const desk = () => props.posing.desk;
  const picture = createMemo(() => {
    const [room, sight] = [desk().room(), desk().sight()];
    const lifted = hover() ?? focused();
    return room && sight
      ? room.posedPictures.over(flight.result(), props.here, sight, props.k, lifted ? [lifted] : [])
      : undefined;
  });
  const middle = createMemo((): Spot => {
    const [room, sight] = [desk().room(), desk().sight()];
    const [x, y] = room && sight ? room.posings.middle(props.here, sight) : [0, 0];
    return [x * props.k, y * props.k];
  });
  const hands = makePoseHands({
    posing: () => props.posing,
    here: () => props.here,
    k: () => props.k,
    root: () => root,
    limbs: () => picture()?.limbs ?? [],
    middle,
    result: flight.result,
    setHover,
  });
  const placed = ([x, y]: Spot): string => `translate(${x}px, ${y}px)`;
  const limbSpot = (id: LimbName): Spot => {
    const line = picture()?.limbs.find((limb) => limb.id === id)?.line;
    const [x, y] = line?.[Math.min(2, line.length - 1)] ?? middle();
    return [x, y];
  };
  const px = (v: number): string => formatNumber(v / props.k, 0);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be the box that its handles are placed in
    <div
      ref={root}
      class="clip-posing"
      classList={{ grabs: hover() !== undefined }}
      role="group"
      aria-label={t.figure}
      style={{ width: `${props.width}px`, height: `${props.height}px` }}
      onPointerDown={(e) => hands.press(e)}
      onPointerMove={hands.look}
      onPointerLeave={() => setHover(undefined)}
    >
      <svg width={props.width} height={props.height} aria-hidden="true">
        {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
        <g opacity={props.opacity} innerHTML={picture()?.markup ?? ''} />
        <circle class="clip-ring-line" cx={middle()[0]} cy={middle()[1]} r={RING} />
      </svg>
      <div
        class="clip-handle clip-trunk"
        data-own-keys
        role="slider"
        tabIndex={0}
        aria-label={t.trunk}
        aria-valuemin={0}
        aria-valuemax={Math.round(props.width / props.k)}
        aria-valuenow={Math.round(middle()[0] / props.k)}
        aria-valuetext={t.trunkAt(px(middle()[0]), px(middle()[1]))}
        style={{ transform: placed(middle()) }}
        onKeyDown={hands.trunkKeys}
      />
      <For each={NAMES}>
        {(id) => (
          <Show when={picture()?.limbs.some((limb) => limb.id === id)}>
            <div
              class="clip-handle"
              data-own-keys
              data-limb={id}
              role="slider"
              tabIndex={0}
              aria-label={t.limbs[id]}
              aria-valuemin={0}
              aria-valuemax={Math.round(props.width / props.k)}
              aria-valuenow={Math.round(limbSpot(id)[0] / props.k)}
              aria-valuetext={t.limbAt(px(limbSpot(id)[0]), px(limbSpot(id)[1]))}
              style={{ transform: placed(limbSpot(id)) }}
              onFocus={() => setFocused(id)}
              onBlur={() => setFocused(undefined)}
              onKeyDown={hands.limbKeys(id)}
            />
          </Show>
        )}
      </For>
      <div
        class="clip-handle clip-ring"
        data-own-keys
        role="slider"
        tabIndex={0}
        aria-label={t.turn}
        aria-valuemin={-720}
        aria-valuemax={720}
        aria-valuenow={Math.round((props.here.somersault * 180) / Math.PI)}
        aria-valuetext={t.turnAt(`${formatNumber((props.here.somersault * 180) / Math.PI, 0)}°`)}
        style={{ transform: placed([middle()[0] + RING * Math.SQRT1_2, middle()[1] - RING * Math.SQRT1_2]) }}
        onPointerDown={hands.pressRing}
        onKeyDown={hands.ringKeys}
      />
    </div>
  );
}
