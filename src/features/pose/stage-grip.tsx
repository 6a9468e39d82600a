/**
 * Posing on the pictures above the floor: a press on a hand, elbow, foot, knee or the head of the figure at the cursor
 * leads that limb, anywhere else it moves the cursor as ever. A finger takes hold only while the pose tool is open, so that
 * a sweep through the flight does not change it.
 */
import { createSignal, Show } from 'solid-js';
import { useFlight, useShell } from '../../app/page.ts';
import type { FigureGrip, StageHandle } from '../../pictures/stage-input.ts';
import { DEAD_PX, startDrag } from '../../ui/drag.ts';
import { type Gesture, useHand } from './hand.ts';
import { PosePlate } from './pose-plate.tsx';

const REACH = { mouse: 11, touch: 26 };

interface Point {
  readonly x: number;
  readonly y: number;
}

export function useStageGrip(handle: () => StageHandle | undefined) {
  const shell = useShell();
  const hand = useHand();
  const [hover, setHover] = createSignal<Point>();
  const [grip, setGrip] = createSignal<FigureGrip>();
  const [finger, setFinger] = createSignal<Point>();

  const find = (e: PointerEvent, x: number, y: number): FigureGrip | undefined => {
    const isMouse = e.pointerType === 'mouse';
    if (!isMouse && shell.tool() !== 'pose') return undefined;
    return handle()?.findGrip(x, y, isMouse ? REACH.mouse : REACH.touch);
  };
  /** true: the press took hold of the figure */
  const press = (e: PointerEvent, x: number, y: number): boolean => {
    const found = e.button === 0 ? find(e, x, y) : undefined;
    if (!found) return false;
    setHover(undefined);
    let gesture: Gesture | undefined;
    const stage = e.currentTarget as HTMLElement;
    const { left, top } = stage.getBoundingClientRect();
    const done = (): void => {
      setFinger(undefined);
      setGrip(undefined);
    };
    startDrag(e, {
      move: (dx, dy, m) => {
        gesture ??= hand.begin(found.end);
        setGrip(found);
        // the page above may grow a line while the hand is at work
        const now = stage.getBoundingClientRect();
        const [px, py] = [dx - (now.left - left), dy - (now.top - top)];
        gesture.move(px, py, found.pxPerM, found.view_B, m.altKey);
        setFinger({ x: x + px, y: y + py });
      },
      end: () => {
        done();
        gesture?.settle();
      },
      cancel: () => {
        done();
        gesture?.abandon();
      },
    });
    return true;
  };
  const move = (e: PointerEvent, x: number, y: number): void => {
    if (e.buttons !== 0 || e.pointerType !== 'mouse') return;
    const found = find(e, x, y);
    setHover(found && { x: found.x, y: found.y });
  };
  return { press, move, leave: () => setHover(undefined), hover, grip, finger };
}
type StageGrip = ReturnType<typeof useStageGrip>;

export function StageGripMarks(props: {
  grip: StageGrip;
  handle: StageHandle | undefined;
  width: number;
  height: number;
}) {
  const flight = useFlight();
  const hand = useHand();
  const line = () => {
    // asked again at every new flight, which is drawn before
    flight.result();
    const [f, g] = [props.grip.finger(), props.grip.grip()];
    const at = f && g && props.handle?.followGrip(g);
    return at && f ? { at, far: Math.hypot(at.x - f.x, at.y - f.y) > DEAD_PX, f } : undefined;
  };
  return (
    <>
      <Show when={props.grip.hover() ?? line()}>
        <svg class="posing-finger" aria-hidden="true" width={props.width} height={props.height}>
          <Show when={props.grip.hover()}>{(h) => <circle class="spot" cx={h().x} cy={h().y} r="6" />}</Show>
          <Show when={line()}>
            {(l) => (
              <>
                <Show when={l().far}>
                  <line x1={l().at.x} y1={l().at.y} x2={l().f.x} y2={l().f.y} />
                </Show>
                <circle class="spot held" cx={l().at.x} cy={l().at.y} r="5" />
                <circle cx={l().f.x} cy={l().f.y} r="12" />
              </>
            )}
          </Show>
        </svg>
      </Show>
      <Show when={props.grip.finger()}>
        {(f) => (
          <Show when={hand.work()}>
            {(work) => <PosePlate work={work()} x={f().x} y={f().y} width={props.width} />}
          </Show>
        )}
      </Show>
    </>
  );
}
