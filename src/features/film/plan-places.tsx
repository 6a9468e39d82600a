/** Where the camera is, from above and from the side: to scale, and dragged in both. */
import { createMemo, For, Show } from 'solid-js';
import type { FilmCamera, FilmingPlan } from '../../../sim/index.ts';
import { roomSize } from '../../../sim/words/filming-words.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import { say } from '../../ui/units.ts';
import type { PlanState } from './plan-state.ts';
import { planTexts as t } from './plan-words.ts';

interface PlaceProps {
  state: PlanState;
  camera: FilmCamera;
  plan: FilmingPlan;
  width: number;
  height: number;
}

const tenth = (m: number): number => Math.round(10 * m) / 10;
const KEYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-0.1, 0],
  ArrowRight: [0.1, 0],
  ArrowUp: [0, 0.1],
  ArrowDown: [0, -0.1],
};

/** `put`: metres to the right and up, from where the press began. */
function startDrag(e: PointerEvent, pxPerM: number, put: (dx: number, dy: number) => void): void {
  if (e.button !== 0) return;
  const target = e.currentTarget as HTMLElement;
  target.setPointerCapture(e.pointerId);
  e.preventDefault();
  target.focus();
  const [x, y] = [e.clientX, e.clientY];
  const move = (m: PointerEvent): void => put((m.clientX - x) / pxPerM, (y - m.clientY) / pxPerM);
  const end = (): void => {
    target.removeEventListener('pointermove', move);
    target.removeEventListener('pointerup', end);
    target.removeEventListener('pointercancel', end);
  };
  target.addEventListener('pointermove', move);
  target.addEventListener('pointerup', end);
  target.addEventListener('pointercancel', end);
}

export function FromAbove(props: PlaceProps) {
  const flight = useFlight();
  const cursor = useCursor();
  /** m: along the flight from the middle (where the camera stands before it this is negative), and across to the camera */
  const along = (): number => -props.camera.away * Math.sin(props.camera.offSquare);
  const across = (): number => props.camera.away * Math.cos(props.camera.offSquare);
  const size = createMemo(() => roomSize(props.plan));
  /** the camera is at the lower edge, and the room at the upper */
  const scale = createMemo(() => {
    const deep = across() + size()[1] / 2 + 1.2;
    const broad = 2 * Math.max(Math.abs(along()) + 0.7, size()[0] / 2 + 0.4, 2.2);
    return Math.min(props.height / deep, props.width / broad);
  });
  const at = createMemo(() => {
    const k = scale();
    const y = (size()[1] / 2 + 0.45) * k + Math.max(0, (props.height - (across() + size()[1] / 2 + 1.2) * k) / 2);
    return { x: props.width / 2 + 14, y, cameraX: props.width / 2 + 14 + along() * k, cameraY: y + across() * k };
  });
  const put = (x: number, z: number): void => {
    const away = Math.hypot(x, z);
    // it stands at one side of the flight: that is what off square ends at
    props.state.put({ away, offSquare: Math.min(Math.PI / 2, Math.max(-Math.PI / 2, Math.atan2(-x, Math.max(z, 0)))) });
  };
  const press = (e: PointerEvent): void => {
    const [x, z] = [along(), across()];
    // eslint-disable-next-line solid/reactivity -- a drag goes on in events of its own
    startDrag(e, scale(), (dx, dy) => put(tenth(x + dx), tenth(z - dy)));
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const by = KEYS[e.key];
    if (!by) return;
    e.preventDefault();
    e.stopPropagation();
    put(tenth(along() + by[0]), tenth(across() - by[1]));
  };
  const wedge = createMemo(() => {
    const { cameraX: x, cameraY: y, x: mx, y: my } = at();
    const reach = (props.camera.away + size()[1] / 2 + 0.4) * scale();
    const middle = Math.atan2(my - y, mx - x);
    const edge = (a: number): string =>
      `${(x + (reach * Math.cos(middle + a)) / Math.cos(a)).toFixed(1)} ${(y + (reach * Math.sin(middle + a)) / Math.cos(a)).toFixed(1)}`;
    const half = Math.min(props.camera.view / 2, 1.2);
    return `M${x.toFixed(1)} ${y.toFixed(1)}L${edge(-half)}L${edge(half)}Z`;
  });
  const figure = createMemo(
    () =>
      props.state
        .parts()
        ?.pictures.figure(flight.result(), props.plan, cursor.at(), { from: 'above', pxPerM: scale(), ...at() }) ?? '',
  );
  const aside = (): string => `${say('length', Math.abs(along()), 1)} ${along() > 0 ? t.after : t.before}`;
  return (
    <div class="plan-place" style={{ width: `${props.width}px`, height: `${props.height}px` }}>
      <svg width={props.width} height={props.height} aria-hidden="true">
        <path class="plan-wedge" d={wedge()} />
        <rect
          class="plan-room"
          x={at().x - (size()[0] / 2) * scale()}
          y={at().y - (size()[1] / 2) * scale()}
          width={size()[0] * scale()}
          height={size()[1] * scale()}
        />
        {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
        <g innerHTML={figure()} />
        <line class="plan-plumb" x1={at().x} x2={at().x} y1={at().y} y2={at().cameraY} />
        <path class="plan-measure" d={`M16 ${at().y}h10m-5 0V${at().cameraY}m-5 0h10`} />
        <text class="plan-size-text" x={30} y={(at().y + at().cameraY) / 2 + 5}>
          {say('length', across(), 1)}
        </text>
        <Show when={Math.abs(along()) > 0.05}>
          <path class="plan-measure" d={`M${at().x} ${at().cameraY + 17}v8m0 -4H${at().cameraX}m0 -4v8`} />
          <text
            class="plan-size-text"
            x={Math.max(at().x, at().cameraX) + 8}
            y={at().cameraY + 26}
            text-anchor={Math.max(at().x, at().cameraX) > 0.7 * props.width ? 'end' : 'start'}
          >
            {aside()}
          </text>
        </Show>
      </svg>
      <button
        type="button"
        class="plan-camera"
        aria-label={t.moveAbove(say('length', across(), 1), aside())}
        style={{ left: `${at().cameraX}px`, top: `${at().cameraY}px` }}
        onPointerDown={press}
        onKeyDown={onKeyDown}
      >
        <svg width="40" height="40" viewBox="-20 -20 40 40" aria-hidden="true">
          <path
            d="M-8 0h16v13h-16zM-7 -8h14l-3 7h-8z"
            transform={`rotate(${(Math.atan2(at().x - at().cameraX, at().cameraY - at().y) * 180) / Math.PI})`}
          />
        </svg>
      </button>
    </div>
  );
}

export function FromSide(props: PlaceProps) {
  const flight = useFlight();
  const cursor = useCursor();
  /** half of the room, as broad as it is along the line of sight */
  const deep = createMemo(() => {
    const [length, breadth] = roomSize(props.plan);
    const a = Math.abs(props.camera.offSquare);
    return (length * Math.sin(a) + breadth * Math.cos(a)) / 2;
  });
  const high = createMemo(() => roomSize(props.plan)[2]);
  const FLOOR = 20;
  const scale = createMemo(() =>
    Math.min(
      (props.width - 34) / (props.camera.away + deep() + 0.5),
      (props.height - FLOOR - 10) / Math.max(high() + 0.4, props.camera.up + 0.6),
    ),
  );
  const x = (m: number): number => 24 + m * scale();
  const y = (m: number): number => props.height - FLOOR - m * scale();
  const wedge = createMemo(() => {
    const [camera, plan] = [props.camera, props.plan];
    const half = Math.atan(plan.sightline.height / 2 / plan.sightline.focal);
    const aim = camera.aim ?? plan.stand.middle[1] - plan.stand.floorY;
    const pitch = Math.atan2(aim - camera.up, camera.away);
    const reach = camera.away + deep() + 0.3;
    const ends = [pitch + half, pitch - half].map((a): readonly [number, number] => {
      const rise = camera.up + reach * Math.tan(Math.min(1.4, Math.max(-1.4, a)));
      // under the floor it ends where it meets it
      return rise >= 0 ? [reach, rise] : [camera.up / Math.tan(-a), 0];
    });
    const foot = ends[1][1] === 0 ? `L${x(reach)} ${y(0)}` : '';
    return `M${x(0)} ${y(camera.up)}L${x(ends[0][0])} ${y(ends[0][1])}${foot}L${x(ends[1][0])} ${y(ends[1][1])}Z`;
  });
  const figure = createMemo(
    () =>
      props.state.parts()?.pictures.figure(flight.result(), props.plan, cursor.at(), {
        from: 'side',
        pxPerM: scale(),
        x: x(props.camera.away),
        y: y(props.plan.stand.middle[1] - props.plan.stand.floorY),
      }) ?? '',
  );
  const press = (e: PointerEvent): void => {
    const { away, up } = props.camera;
    // eslint-disable-next-line solid/reactivity -- a drag goes on in events of its own
    startDrag(e, scale(), (dx, dy) => props.state.put({ away: tenth(away - dx), up: tenth(up + dy) }));
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const by = KEYS[e.key];
    if (!by) return;
    e.preventDefault();
    e.stopPropagation();
    props.state.put({ away: tenth(props.camera.away - by[0]), up: tenth(props.camera.up + by[1]) });
  };
  const ticks = createMemo(() => {
    const step = scale() > 22 ? 2 : 5;
    const out: number[] = [];
    for (let m = 0; m <= props.camera.away + deep() + 0.4; m += step) out.push(m);
    return out;
  });
  return (
    <div class="plan-place" style={{ width: `${props.width}px`, height: `${props.height}px` }}>
      <svg width={props.width} height={props.height} aria-hidden="true">
        <path class="plan-wedge" d={wedge()} />
        <rect
          class="plan-room"
          x={x(props.camera.away - deep())}
          width={2 * deep() * scale()}
          y={y(props.plan.room.high[1] - props.plan.stand.floorY)}
          height={high() * scale()}
        />
        {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
        <g innerHTML={figure()} />
        <line class="plan-ground" x1={4} x2={props.width - 4} y1={y(0)} y2={y(0)} />
        <For each={ticks()}>
          {(m) => (
            <text class="plan-tick" x={x(m)} y={props.height - 4} text-anchor="middle">
              {say('length', m, 0)}
            </text>
          )}
        </For>
        <path
          class="plan-legs"
          d={`M${x(0)} ${y(props.camera.up)}L${x(0) - 8} ${y(0)}M${x(0)} ${y(props.camera.up)}L${x(0) + 8} ${y(0)}`}
        />
        <text class="plan-size-text" x={x(0) - 14} y={y(props.camera.up) - 12}>
          {say('length', props.camera.up, 2)}
        </text>
      </svg>
      <button
        type="button"
        class="plan-camera"
        aria-label={t.moveSide(say('length', props.camera.away, 1), say('length', props.camera.up, 2))}
        style={{ left: `${x(0)}px`, top: `${y(props.camera.up)}px` }}
        onPointerDown={press}
        onKeyDown={onKeyDown}
      >
        <svg width="40" height="40" viewBox="-20 -20 40 40" aria-hidden="true">
          <path d="M-8 -5h14v11h-14zM6 0l6 -5v10z" />
        </svg>
      </button>
    </div>
  );
}
