/** What a limb at hand shows on the pictures above the floor: its outline and name, the plate, the way from limb to hand. */
import { For, Show } from 'solid-js';
import { useFlight, usePage } from '../../app/page.ts';
import type { HeldLimb, StageHandle } from '../../pictures/stage-input.ts';
import { useHand } from './hand.ts';
import type { ScreenPlace } from './limb-turn.ts';
import { wordPlate } from './limb-words.ts';
import type { Work } from './limb-work.ts';
import { placePlate } from './plate-place.ts';
import { PLATE_WIDE, PosePlate, plateHeight } from './pose-plate.tsx';
import type { StageGrip, StageLimb } from './stage-grip.ts';
import { wordLimb } from './words.ts';

export function StageGripMarks(props: {
  grip: StageGrip;
  handle: StageHandle | undefined;
  width: number;
  height: number;
}) {
  const flight = useFlight();
  const page = usePage();
  const hand = useHand();
  const clear = (): HeldLimb['outline'] =>
    (props.handle?.figures() ?? []).flatMap(({ limbs }) => limbs.flatMap(({ outline }) => outline));
  const plate = () => {
    const [finger, work] = [props.grip.finger(), hand.work()];
    if (!finger || !work) return undefined;
    const text = wordPlate(page, work, flight.result());
    const [x, y] = placePlate(
      { width: props.width, height: props.height, clear: clear(), hand: finger, apart: 12 },
      PLATE_WIDE.mouse,
      plateHeight(text, work, PLATE_WIDE.mouse),
    );
    return { work, text, x, y };
  };
  const line = () => {
    // asked again at every new flight, which is drawn before
    flight.result();
    const [finger, grip, work]: readonly [ScreenPlace | undefined, StageLimb | undefined, Work | undefined] = [
      props.grip.finger(),
      props.grip.grip(),
      hand.work(),
    ];
    if (!finger || !grip || !work || !(work.tooFast || work.short > 0.01 || work.stopped.length > 0)) return undefined;
    const spot = props.handle?.figures()[grip.index]?.spots.find(({ id }) => id === work.end);
    return spot && { x1: spot.x, y1: spot.y, x2: finger[0], y2: finger[1] };
  };
  return (
    <>
      <Show when={props.grip.hover()}>
        {(h) => (
          <svg class="figure-marks" aria-hidden="true" width={props.width} height={props.height}>
            <For each={h().limb.outline}>
              {(piece) => <polygon class="limb-edge" points={Array.from(piece, (v) => v.toFixed(1)).join(' ')} />}
            </For>
          </svg>
        )}
      </Show>
      <Show when={props.grip.hover()}>
        {(h) => (
          <span
            class="limb-name over-stage"
            aria-hidden="true"
            style={{ transform: `translate(${h().limb.line[1][0] + 24}px, ${h().limb.line[1][1] - 12}px)` }}
          >
            {wordLimb(h().limb.id)}
          </span>
        )}
      </Show>
      <Show when={line()}>
        {(l) => (
          <svg class="figure-marks" aria-hidden="true" width={props.width} height={props.height}>
            <line class="behind" {...l()} />
          </svg>
        )}
      </Show>
      <Show when={plate()}>
        {(p) => <PosePlate work={p().work} text={p().text} x={p().x} y={p().y} wide={PLATE_WIDE.mouse} />}
      </Show>
    </>
  );
}
