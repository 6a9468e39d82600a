/** Crosses on the plate: dragged by hand or moved by arrow keys, with what is under the finger shown larger beside it. */
import { createEffect, createSignal, Index, Show } from 'solid-js';
import type { Spot } from '../../../sim/index.ts';
import { startDrag } from '../../ui/drag.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type Cross, crossesOf } from './clip-placing.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** px of the picture */
const STEP = 1;
const BIG = 10;
/** px of the lens, and how much larger it shows */
const LENS = { px: 112, times: 3, above: 84 } as const;

export function ClipCrosses(props: { desk: ClipDesk; k: number; width: number; height: number }) {
  const crosses = (): Cross[] => crossesOf(props.desk.measuring());
  const [held, setHeld] = createSignal<Spot>();
  let root!: HTMLDivElement;
  const isMine = (cross: Cross): boolean => cross.hand === props.desk.hand();
  const put = (cross: Cross, [x, y]: Spot): Spot => {
    const spot: Spot = [
      Math.min(Math.max(x, 0), props.width / props.k),
      Math.min(Math.max(y, 0), props.height / props.k),
    ];
    props.desk.past.draft(cross.put(spot));
    return spot;
  };
  const drag = (e: PointerEvent, cross: Cross): void => {
    const [x, y] = cross.spot;
    const isTouch = e.pointerType !== 'mouse';
    (e.currentTarget as HTMLElement).focus();
    startDrag(e, {
      move: (dx, dy) => {
        const spot = put(cross, [x + dx / props.k, y + dy / props.k]);
        if (isTouch) setHeld(spot);
      },
      end: () => setHeld(undefined),
      cancel: () => {
        setHeld(undefined);
        put(cross, [x, y]);
      },
    });
  };
  const onKey = (e: KeyboardEvent, cross: Cross): void => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (!way || e.ctrlKey || e.metaKey || e.altKey) return;
    e.preventDefault();
    e.stopPropagation();
    const by = e.shiftKey ? BIG : STEP;
    put(cross, [cross.spot[0] + way[0] * by, cross.spot[1] + way[1] * by]);
  };
  const placeOf = ({ spot: [x, y] }: Cross): string => `translate(${x * props.k}px, ${y * props.k}px)`;
  const line = (): string => {
    const all = crosses().filter(({ hand }) => hand === 'length' || hand === 'plane');
    if (all.length < 2) return '';
    return `M${all.map(({ spot: [x, y] }) => `${x * props.k} ${y * props.k}`).join('L')}${all.length > 2 ? 'Z' : ''}`;
  };
  return (
    <div class="clip-crosses" ref={root}>
      <svg width={props.width} height={props.height} aria-hidden="true">
        <path class="clip-lay" d={line()} />
      </svg>
      <Index each={crosses()}>
        {(cross) => (
          <Show when={isMine(cross())} fallback={<Sign at={placeOf(cross())} />}>
            <div
              class="clip-cross mine"
              data-own-keys
              role="slider"
              tabIndex={0}
              aria-label={t.cross(cross().name)}
              aria-valuemin={0}
              aria-valuemax={Math.round(props.width / props.k)}
              aria-valuenow={Math.round(cross().spot[0])}
              aria-valuetext={t.crossAt(formatNumber(cross().spot[0], 0), formatNumber(cross().spot[1], 0))}
              style={{ transform: placeOf(cross()) }}
              onPointerDown={(e) => drag(e, cross())}
              onKeyDown={(e) => onKey(e, cross())}
            >
              <Sign />
            </div>
          </Show>
        )}
      </Index>
      <Show when={held()}>
        {(spot) => <Lens spot={spot()} k={props.k} width={props.width} from={() => root.parentElement} />}
      </Show>
    </div>
  );
}

const Sign = (props: { at?: string }) => (
  <svg
    class="clip-cross"
    width="22"
    height="22"
    viewBox="-11 -11 22 22"
    aria-hidden="true"
    style={{ transform: props.at }}
  >
    <path class="under" d="M-9 0H9M0 -9V9" />
    <path class="over" d="M-9 0H9M0 -9V9" />
  </svg>
);

/** What a finger covers, over it and larger. */
function Lens(props: { spot: Spot; k: number; width: number; from: () => HTMLElement | null }) {
  let canvas!: HTMLCanvasElement;
  createEffect(() => {
    const [x, y] = props.spot;
    const picture = props.from()?.querySelector('canvas');
    const context = canvas.getContext('2d');
    if (!picture || !context) return;
    const ratio = picture.width / props.width;
    const part = (LENS.px / LENS.times) * ratio;
    context.clearRect(0, 0, canvas.width, canvas.height);
    context.drawImage(
      picture,
      x * props.k * ratio - part / 2,
      y * props.k * ratio - part / 2,
      part,
      part,
      0,
      0,
      canvas.width,
      canvas.height,
    );
  });
  const x = (): number => Math.min(Math.max(props.spot[0] * props.k - LENS.px / 2, 0), props.width - LENS.px);
  const y = (): number => {
    const over = props.spot[1] * props.k - LENS.above - LENS.px / 2;
    return over < 0 ? props.spot[1] * props.k + LENS.above - LENS.px / 2 : over;
  };
  return (
    <div class="clip-lens" aria-hidden="true" style={{ transform: `translate(${x()}px, ${y()}px)` }}>
      <canvas ref={canvas} width={2 * LENS.px} height={2 * LENS.px} />
      <svg width={LENS.px} height={LENS.px} aria-hidden="true">
        <path d={`M${LENS.px / 2} 0V${LENS.px}M0 ${LENS.px / 2}H${LENS.px}`} />
      </svg>
    </div>
  );
}
