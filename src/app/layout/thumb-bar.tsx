/** One hand on a gym floor: shapes, speed, the jog wheel and play, at the lower edge. */

import { createSignal, For, Show } from 'solid-js';
import { titleTexts } from '../../commands/words.ts';
import { findSpan } from '../../document/spans.ts';
import { pinTexts } from '../../features/instant/words.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { PlayButton, SpeedButton } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { startDrag } from '../../ui/drag.ts';
import { Icon } from '../../ui/icon.tsx';
import { useCursor, useFlight, useShell } from '../page.ts';

/** s per px of the wheel: slow enough to find a hundredth with a thumb */
const JOG = 0.0025;

function JogWheel() {
  const cursor = useCursor();
  const flight = useFlight();
  const [turn, setTurn] = createSignal(0);
  const press = (e: PointerEvent): void => {
    const from = cursor.at();
    const turned = turn();
    cursor.play.pause();
    startDrag(e, {
      move: (dx) => {
        cursor.set(Math.round((from + dx * JOG) * 1000) / 1000);
        setTurn(turned + dx);
      },
      end: () => {},
      cancel: () => cursor.set(from),
    });
  };
  const ribs = Array.from({ length: 25 }, (_, i) => i);
  const place = (i: number): { x: number; strength: number } => {
    const angle = ((i / 25) * 2 - 1) * 1.45 + ((turn() % 14) / 14) * 0.116;
    return { x: 50 + 49 * Math.sin(angle), strength: Math.max(0.15, Math.cos(angle)) };
  };
  return (
    <div
      class="jog"
      role="slider"
      tabIndex={0}
      aria-label={floorTexts.jog}
      aria-valuemin={0}
      aria-valuemax={Number(flight.anchors().touchdown.toFixed(3))}
      aria-valuenow={Number(cursor.at().toFixed(3))}
      aria-valuetext={floorTexts.time(cursor.at().toFixed(2))}
      onPointerDown={press}
    >
      <svg viewBox="0 0 100 30" preserveAspectRatio="none" aria-hidden="true">
        <For each={ribs}>
          {(i) => (
            <rect
              x={place(i).x}
              y={15 - 9 * place(i).strength}
              width={0.7 * place(i).strength}
              height={18 * place(i).strength}
              opacity={place(i).strength}
            />
          )}
        </For>
        <rect class="jog-now" x="49.4" y="2" width="1.2" height="26" />
      </svg>
    </div>
  );
}

/** The instants before and after by name: the shape behind and the shape to come. */
export function ThumbBar(props: { wide: boolean }) {
  const shell = useShell();
  // a whole skill has instants and a play of its own
  return (
    <Show when={shell.tool() !== 'contact'}>
      <FlightThumb wide={props.wide} />
    </Show>
  );
}

function FlightThumb(props: { wide: boolean }) {
  const flight = useFlight();
  const cursor = useCursor();
  const around = () => {
    const spans = flight.spans();
    const found = findSpan(spans, cursor.at());
    const i = found ? spans.indexOf(found.span) : -1;
    const before = spans[i - 1];
    const after = found?.held ? spans[i + 1] : found?.span;
    return { before, after };
  };
  return (
    <nav class="thumb" aria-label={floorTexts.controls}>
      <Show
        when={props.wide}
        fallback={
          <button
            type="button"
            class="on-floor square"
            aria-label={titleTexts.shapeBefore}
            onClick={() => cursor.goToShape(-1)}
          >
            <Icon name="toBack" />
          </button>
        }
      >
        <button type="button" class="on-floor word" onClick={() => cursor.goToShape(-1)}>
          <span aria-hidden="true">‹</span>
          {around().before?.word ?? laneTexts.anchors.takeoff}
        </button>
        <button type="button" class="on-floor word" onClick={() => cursor.goToShape(1)}>
          {around().after?.word ?? laneTexts.anchors.touchdown}
          <span aria-hidden="true">›</span>
        </button>
        <PinButton />
        <SpeedButton />
        <span class="gap" />
      </Show>
      <JogWheel />
      <Show when={!props.wide}>
        <button
          type="button"
          class="on-floor square"
          aria-label={titleTexts.shapeAfter}
          onClick={() => cursor.goToShape(1)}
        >
          <Icon name="toOn" />
        </button>
      </Show>
      <PlayButton size={24} />
    </nav>
  );
}

function PinButton() {
  const cursor = useCursor();
  const pinned = (): boolean => cursor.pin() !== undefined;
  return (
    <button
      type="button"
      class="on-floor word"
      aria-pressed={pinned()}
      onClick={() => cursor.setPin(pinned() ? undefined : cursor.at())}
    >
      <Icon name="pin" size={18} /> {pinned() ? pinTexts.remove : pinTexts.here}
    </button>
  );
}
