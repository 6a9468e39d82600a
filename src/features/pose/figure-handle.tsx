/**
 * The athlete held upright and large, and the handle is the whole limb: it is grabbed where it is, turns about its joint, and
 * what that does to the flight is read beside the hand. By mouse, finger and keys. The figure's middle is at `centre`,
 * so that other things may be beside it; while a hand is at work (`useHand().shown()`) the rest of the width is for the plate.
 */
import { createMemo, createUniqueId, For, Show } from 'solid-js';
import { usePage } from '../../app/page.ts';
import { TiltWedge } from '../../app/tilt-wedge.tsx';
import type { LimbName } from '../../pictures/stage-input.ts';
import { Icon } from '../../ui/icon.tsx';
import { FigureOptions } from './figure-options.tsx';
import { useFigurePlate } from './figure-plate.ts';
import { type HandlePlace, useFigureViews } from './figure-views.ts';
import { wasGrabbed } from './first-lift.ts';
import { useHand } from './hand.ts';
import { boxOf, boxStyle, middlesOf } from './limb-boxes.ts';
import { createFinger, useLimbDrag } from './limb-drag.ts';
import { useLimbKeys } from './limb-keys.ts';
import { LimbNames } from './limb-names.tsx';
import { turnsOf } from './limb-words.ts';
import { useMeantLimb } from './meant-limb.ts';
import { PosePlate } from './pose-plate.tsx';
import { poseTexts, wordLimb } from './words.ts';

interface FigureHandleProps extends HandlePlace {
  /** px from the left that other pictures take while no hand is at work: no name goes there */
  readonly taken?: number;
  /** the button that opens the large stage; left out where it is that one */
  readonly onLarger?: () => void;
}

export function FigureHandle(props: FigureHandleProps) {
  const { flight, services } = usePage();
  const hand = useHand();
  const group = createUniqueId();
  let root!: HTMLDivElement;
  const [finger, setFinger] = createFinger();
  const meant = useMeantLimb(
    () => root,
    () => figure,
  );
  const figure = useFigureViews(props, { chains: meant.lifted, isTouch: () => finger()?.isTouch === true });
  const press = useLimbDrag(() => root, figure, meant, setFinger);
  const keys = useLimbKeys(figure, meant);
  const beside = useFigurePlate(props, figure, meant, finger);
  const named = createMemo(meant.named);
  const isTilted = (): boolean => props.tiltDeg !== undefined;
  const spoken = (id: LimbName): string =>
    poseTexts.spoken(
      id,
      services.posing.raisedDeg(flight.result().flight.body, figure.angles(), id).toFixed(0),
      turnsOf(flight.result().outline),
    );

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be the box that its handles are placed in
    <div
      ref={root}
      class="figure-handle"
      classList={{
        touch: props.touch,
        both: props.both,
        tilted: isTilted(),
        grabs: meant.hover() !== undefined,
        holds: finger() !== undefined,
      }}
      role="group"
      aria-label={poseTexts.stage}
      style={{ width: `${props.width}px`, height: `${figure.height()}px` }}
      onPointerDown={press}
      onPointerMove={meant.onMove}
      onPointerLeave={meant.leave}
    >
      <Show when={props.tiltDeg}>
        {(tilt) => (
          <TiltWedge deg={tilt()} x={figure.middle()} y={figure.size().centreY} pxPerM={figure.size().pxPerM} />
        )}
      </Show>
      <For each={figure.views()}>
        {(view) => (
          <svg
            class="figure-picture"
            aria-hidden="true"
            width={figure.wide()}
            height={figure.height()}
            style={{ left: `${figure.leftOf(view)}px` }}
            // eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone
            innerHTML={figure.pictures()[view]?.markup}
          />
        )}
      </For>
      <For each={figure.views()}>
        {(view) => (
          <For each={(figure.pictures()[view]?.limbs ?? []).map(({ id }) => id)}>
            {(id) => (
              <div
                class="limb-target"
                role="slider"
                tabIndex={0}
                data-limb={`${view} ${id}`}
                data-at={middlesOf(figure.limbIn(view, id), figure.leftOf(view))}
                aria-label={wordLimb(id) + (props.both ? poseTexts.limbIn[view] : '')}
                aria-orientation="vertical"
                aria-valuemin={0}
                aria-valuemax={360}
                aria-valuenow={Math.round(services.posing.raisedDeg(flight.result().flight.body, figure.angles(), id))}
                aria-valuetext={spoken(id)}
                style={boxStyle(figure.limbIn(view, id), figure.leftOf(view), props.touch ? 44 : 0)}
                onFocus={() => meant.setFocused({ view, id })}
                onBlur={() => {
                  keys.finish();
                  meant.setFocused(undefined);
                }}
                onKeyDown={(e) => keys.onKeyDown(e, view, id)}
                onKeyUp={keys.onKeyUp}
              />
            )}
          </For>
        )}
      </For>
      <svg class="figure-marks" aria-hidden="true" width={props.width} height={figure.height()}>
        <Show when={beside.leader()}>{(l) => <line class="leader" {...l()} />}</Show>
        <Show when={beside.behind()}>{(l) => <line class="behind" {...l()} />}</Show>
        <Show when={beside.stop()}>
          {(s) => (
            <>
              <Line class="stop" at={s().stop} />
              <For each={s().hatch}>{(at) => <Line class="hatch" at={at} />}</For>
            </>
          )}
        </Show>
        <Show when={finger()?.isTouch && finger()}>{(f) => <circle cx={f().x} cy={f().y} r="22" />}</Show>
      </svg>
      <Show when={named()}>
        {(n) => (
          <LimbNames
            names={n().limbs.map(({ id }) => id)}
            isChoice={n().isChoice}
            x={n().x}
            y={n().y}
            room={{
              width: props.width,
              height: figure.height(),
              clear: [...figure.outlines(), ...beside.controls(), ...boxOf(0, 0, props.taken ?? 0, figure.height())],
            }}
            choose={(id) => meant.choose(n().view, id)}
          />
        )}
      </Show>
      <Show when={beside.plate()}>
        {(p) => <PosePlate work={p().work} text={p().words} x={p().x} y={p().y} wide={p().wide} />}
      </Show>
      <Show when={!hand.active() && hand.shown()}>
        {(work) => (
          <>
            <Show when={beside.hasOptions()}>
              <FigureOptions work={work()} name={group} />
            </Show>
            <Show when={props.touch}>
              <button type="button" class="put-back" onClick={() => hand.putBack()}>
                {poseTexts.putBackShort}
              </button>
            </Show>
          </>
        )}
      </Show>
      <Show when={!wasGrabbed() && (figure.pictures()[figure.views()[0]]?.limbs.length ?? 0) > 0}>
        <p class="grab-any">{poseTexts.grabAny}</p>
      </Show>
      <Show when={props.onLarger}>
        {(open) => (
          <button type="button" class="larger" onClick={() => open()()}>
            {poseTexts.larger} <Icon name="enlarge" size={16} />
          </button>
        )}
      </Show>
      <Show when={(figure.pictures()[figure.views()[0]]?.limbs.length ?? 0) === 0}>
        <p class="quiet figure-none">{poseTexts.noHandles}</p>
      </Show>
      <p class="spoken" role="status" aria-live="polite">
        {hand.said()}
      </p>
    </div>
  );
}

function Line(props: { class: string; at: readonly [number, number, number, number] }) {
  return <line class={props.class} x1={props.at[0]} y1={props.at[1]} x2={props.at[2]} y2={props.at[3]} />;
}
