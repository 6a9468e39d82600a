/**
 * The athlete held upright from the front and from the left, with round handles on hands, elbows, feet, knees and head. A
 * drag leads the limb in both pictures at once; Tab walks the handles and the arrow keys move them. The camera is on
 * the body as the hand found it, so that nothing but the limb moves.
 */
import { batch, createMemo, createSignal, For, onCleanup, Show } from 'solid-js';
import { useCursor, useFlight, useServices } from '../../app/page.ts';
import { wordCaution } from '../../app/say/caution-words.ts';
import type { HeldPicture } from '../../pictures/stage-input.ts';
import { DEAD_PX, startDrag } from '../../ui/drag.ts';
import { Icon } from '../../ui/icon.tsx';
import { type Gesture, useHand } from './hand.ts';
import { PosePlate } from './pose-plate.tsx';
import { poseTexts } from './words.ts';

const VIEWS = [
  { id: 'front', azimuth: 0 },
  { id: 'side', azimuth: Math.PI / 2 },
] as const;
type ViewId = (typeof VIEWS)[number]['id'];

/** Room for a body with its arms overhead and its toes pointed, in statures; and the mass centre's place in it. */
const TALL = 1.4;
const CENTRE = 0.56;
/** Room across, in statures: arms out to the sides. */
const WIDE = 1.06;
const REACH = { mouse: 16, touch: 34 };
/** An overlap that is deepest within this time of the cursor, s, is shown there. */
const NEAR = 0.03;
/** The handle of a segment of a limb. */
const endOfLimb = (segment: string): string => {
  const side = segment.slice(-1);
  const part = segment.slice(0, -1);
  return `${{ hand: 'hand', forearm: 'hand', upperArm: 'elbow', thigh: 'knee', shank: 'foot', foot: 'foot' }[part] ?? part}${side}`;
};
const STEP_M = { near: 0.01, far: 0.05 };

export function PosingStage(props: { width: number; height: number; touch?: boolean }) {
  const flight = useFlight();
  const services = useServices();
  const cursor = useCursor();
  let root!: HTMLDivElement;
  const hand = useHand();
  const [finger, setFinger] = createSignal<{ x: number; y: number; view: ViewId }>();
  const [track, setTrack] = createSignal<readonly string[]>([]);
  const [focused, setFocused] = createSignal<string>();
  /** the picture keeps its size while the hand is at work */
  const height = createMemo<number>((last) => (finger() && last ? last : props.height));
  const half = (): number => Math.floor(props.width / 2);
  const stature = (): number => flight.result().flight.body.stature ?? 1.6;
  const pxPerM = (): number => Math.min((height() - 8) / (TALL * stature()), half() / (WIDE * stature()));
  const angles = createMemo(() => services.posing.anglesAt(flight.result(), cursor.at()));
  const pictures = createMemo((): Record<ViewId, HeldPicture> => {
    const work = hand.work();
    const draw = (azimuth: number): HeldPicture =>
      services.pictures.held({
        result: flight.result(),
        angles: angles(),
        ...(work ? { camera: work.camera, before: work.before } : {}),
        azimuth,
        width: half(),
        height: height(),
        pxPerM: pxPerM(),
        centreY: height() * CENTRE + 4,
      });
    return { front: draw(0), side: draw(Math.PI / 2) };
  });
  const spotOf = (view: ViewId, end: string) => pictures()[view].spots.find((spot) => spot.id === end);
  const label = (view: ViewId, end: string): string => {
    const name = poseTexts.ends[end] ?? end;
    return view === 'front' ? poseTexts.frontOf(name) : poseTexts.sideOf(name);
  };

  /** a limb that passes through the body at the cursor */
  const overlaps = createMemo(() =>
    flight.cautions().flatMap((one) => {
      if (one.kind !== 'overlap' || Math.abs(one.t - cursor.at()) > NEAR) return [];
      return [{ words: wordCaution(one), end: endOfLimb(one.limb) }];
    }),
  );

  const press = (e: PointerEvent): void => {
    const box = root.getBoundingClientRect();
    const [px, py] = [e.clientX - box.left, e.clientY - box.top];
    const view: ViewId = px < half() ? 'front' : 'side';
    const picture = pictures()[view];
    const reach = e.pointerType === 'mouse' ? REACH.mouse : REACH.touch;
    const left = view === 'side' ? half() : 0;
    const off = (s: { x: number; y: number; depth: number }): number =>
      // of two that lie on each other the nearer to the eye
      Math.hypot(s.x + left - px, s.y - py) - 0.01 * s.depth;
    const spot = [...picture.spots].sort((a, b) => off(a) - off(b))[0];
    if (!spot || off(spot) > reach) return;
    e.preventDefault();
    root.querySelector<HTMLElement>(`[data-handle="${view} ${spot.id}"]`)?.focus({ preventScroll: true });
    const { view_B } = picture;
    const scale = pxPerM();
    let gesture: Gesture | undefined;
    startDrag(e, {
      move: (dx, dy, m) => {
        gesture ??= hand.begin(spot.id);
        // on tablet and phone the page above may grow a line while the hand is at work: what counts is the way over the picture
        const now = props.touch ? root.getBoundingClientRect() : box;
        batch(() => {
          setFinger({ x: m.clientX - now.left, y: m.clientY - now.top, view });
          gesture?.move(dx - (now.left - box.left), dy - (now.top - box.top), scale, view_B, m.altKey);
        });
        const at = spotOf(view, spot.id);
        if (at) setTrack([...track(), `${(at.x + (view === 'side' ? half() : 0)).toFixed(1)},${at.y.toFixed(1)}`]);
      },
      end: () => {
        setFinger(undefined);
        setTrack([]);
        gesture?.settle();
      },
      cancel: () => {
        setFinger(undefined);
        setTrack([]);
        gesture?.abandon();
      },
    });
  };

  // a key held down is one gesture, as a drag is
  let held: { gesture: Gesture; key: string; dx: number; dy: number; view: HeldPicture['view_B'] } | undefined;
  const finish = (): void => {
    held?.gesture.settle();
    held = undefined;
  };
  onCleanup(finish);
  const WAYS: Record<string, readonly [number, number]> = {
    ArrowLeft: [-1, 0],
    ArrowRight: [1, 0],
    ArrowUp: [0, -1],
    ArrowDown: [0, 1],
  };
  const onKeyDown = (e: KeyboardEvent, view: ViewId, end: string): void => {
    if (e.key === 'Escape' && held) {
      held.gesture.abandon();
      held = undefined;
      e.preventDefault();
      e.stopPropagation();
      return;
    }
    const way = WAYS[e.key];
    if (!way || e.ctrlKey || e.metaKey) return;
    e.preventDefault();
    e.stopPropagation();
    if (held && held.key !== e.key) finish();
    held ??= { gesture: hand.begin(end), key: e.key, dx: 0, dy: 0, view: pictures()[view].view_B };
    const step = (e.shiftKey ? STEP_M.far : STEP_M.near) * 1000;
    held.dx += way[0] * step;
    held.dy += way[1] * step;
    // mm as px of a picture of 1000 px per m
    held.gesture.move(held.dx, held.dy, 1000, held.view, e.altKey);
  };

  const line = () => {
    const f = finger();
    const work = hand.work();
    const spot = f && work && spotOf(f.view, work.end);
    if (!f || !spot) return undefined;
    const x = spot.x + (f.view === 'side' ? half() : 0);
    return Math.hypot(x - f.x, spot.y - f.y) > DEAD_PX ? { x1: x, y1: spot.y, x2: f.x, y2: f.y } : undefined;
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be the box that its handles are placed in
    <div
      ref={root}
      class="posing"
      classList={{ touch: props.touch }}
      role="group"
      aria-label={poseTexts.stage}
      style={{ width: `${props.width}px`, height: `${height()}px` }}
      onPointerDown={press}
    >
      <For each={VIEWS}>
        {({ id }, i) => (
          <>
            <svg
              class="posing-picture"
              aria-hidden="true"
              width={half()}
              height={height()}
              style={{ left: `${i() * half()}px` }}
              // eslint-disable-next-line solid/no-innerhtml -- markup made by our own scene writer from numbers alone
              innerHTML={pictures()[id].markup}
            />
            <p class="posing-name" aria-hidden="true" style={{ left: `${i() * half() + 10}px` }}>
              {poseTexts[id]}
            </p>
          </>
        )}
      </For>
      <For each={VIEWS}>
        {({ id }, i) => (
          <For each={pictures()[id].spots.map((spot) => spot.id)}>
            {(end) => (
              <button
                type="button"
                class="handle"
                classList={{
                  held: hand.work()?.end === end,
                  twin: focused() !== undefined && focused() !== `${id} ${end}` && focused()?.endsWith(` ${end}`),
                  behind: (spotOf(id, end)?.depth ?? 0) < -20,
                }}
                data-handle={`${id} ${end}`}
                aria-label={label(id, end)}
                title={`${poseTexts.ends[end] ?? end}. ${poseTexts.handleHint}`}
                style={{
                  transform: `translate(${(spotOf(id, end)?.x ?? 0) + i() * half()}px, ${spotOf(id, end)?.y ?? 0}px)`,
                }}
                onFocus={() => setFocused(`${id} ${end}`)}
                onBlur={() => {
                  setFocused(undefined);
                  finish();
                }}
                onKeyDown={(e) => onKeyDown(e, id, end)}
                onKeyUp={(e) => {
                  if (held && e.key === held.key) finish();
                }}
              />
            )}
          </For>
        )}
      </For>
      <Show when={finger()}>
        {(f) => (
          <svg class="posing-finger" aria-hidden="true" width={props.width} height={height()}>
            <polyline points={track().join(' ')} />
            <Show when={line()}>{(l) => <line {...l()} />}</Show>
            <circle cx={f().x} cy={f().y} r={props.touch ? 26 : 12} />
          </svg>
        )}
      </Show>
      <Show when={finger()}>
        {(f) => (
          <Show when={hand.work()}>
            {(work) => <PosePlate work={work()} x={f().x} y={f().y - (props.touch ? 30 : 0)} width={props.width} />}
          </Show>
        )}
      </Show>
      <For each={overlaps()}>
        {({ end }) => (
          <For each={VIEWS}>
            {({ id }, i) => (
              <Show when={spotOf(id, end)}>
                {(spot) => (
                  <span
                    class="posing-mark"
                    aria-hidden="true"
                    style={{ transform: `translate(${spot().x + i() * half() + 12}px, ${spot().y - 8}px)` }}
                  >
                    <Icon name="caution" size={18} />
                  </span>
                )}
              </Show>
            )}
          </For>
        )}
      </For>
      <Show when={!finger() && overlaps()[0]}>
        {(one) => (
          <p class="posing-caution">
            <Icon name="caution" size={16} /> {one().words}
          </p>
        )}
      </Show>
      <Show when={pictures().front.spots.length === 0}>
        <p class="quiet posing-none">{poseTexts.noHandles}</p>
      </Show>
      <p class="spoken" role="status" aria-live="polite">
        {hand.said()}
      </p>
    </div>
  );
}
