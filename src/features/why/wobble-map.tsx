/** Tilt against twist: the way of the flight over the map, and the boundary that the shape at the cursor would have. */

import { createMemo, For, Show } from 'solid-js';
import { DEG, REV } from '../../../sim/math/angles.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import { niceTop } from '../../app/plot/pen.ts';
import { calcPlace } from '../../app/plot/readout.ts';
import type { MapPoint } from '../../engine/account.ts';
import { listen } from '../../ui/listen.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { AccountState } from './account-state.ts';
import { accountTexts as a } from './words.ts';

const LEFT = 40;
const BOTTOM = 30;
const TOP = 8;
const RIGHT = 12;
/** A twist of less than this is shown as half a twist wide, revolutions. */
const LEAST_WIDE = 0.5;

/** A period this near to the flight's time, as a share, is as long. */
const AS_LONG = 0.1;
/** Axes that differ by less, deg, and twists slower than this, rev/s, have no sentence. */
const LEAN = 0.5;
const SLOW = 0.05;

const line = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

export function WobbleMap(props: { state: AccountState; width: number; height: number }) {
  const flight = useFlight();
  const cursor = useCursor();
  const points = createMemo(() => props.state.path().map(([x, y]): MapPoint => [x / REV, y * DEG]));
  const known = createMemo(() => points().filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y)));
  const here = createMemo<MapPoint | undefined>(() => {
    const list = points();
    if (list.length < 2) return undefined;
    const { i, share } = calcPlace(flight.result().frames, cursor.at());
    const [p, q] = [list[i], list[i + 1]];
    const at: MapPoint = [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share];
    return Number.isFinite(at[0] + at[1]) ? at : undefined;
  });
  const box = createMemo(() => {
    const xs = known().map((p) => p[0]);
    const ys = known().map((p) => p[1]);
    const [x0, x1] = [Math.min(...xs, 0), Math.max(...xs, 0)];
    const wide = Math.max(x1 - x0, LEAST_WIDE);
    const pad = 0.06 * wide;
    const middle = (x0 + x1) / 2;
    const critical = (props.state.wobble()?.criticalTilt ?? 0) * DEG;
    const reach = niceTop(Math.max(...ys.map(Math.abs), critical * 1.15, 4));
    const down = Math.min(...ys, 0) < -0.15 * reach;
    const up = Math.max(...ys, 0) > 0.15 * reach;
    return {
      x0: middle - wide / 2 - pad,
      x1: middle + wide / 2 + pad,
      high: up || !down ? reach : Math.max(critical * 1.3, 0.3 * reach),
      low: down ? -reach : -Math.max(critical * 1.3, 0.2 * reach),
    };
  });
  const x = (v: number): number => LEFT + ((v - box().x0) / (box().x1 - box().x0)) * (props.width - LEFT - RIGHT);
  const y = (v: number): number => TOP + ((box().high - v) / (box().high - box().low)) * (props.height - TOP - BOTTOM);
  /** the boundary is known for one twist: the same again for the others in sight */
  const regions = createMemo(() => {
    const found = props.state.wobble()?.boundary ?? [];
    const [upper, lower] = found;
    const out: { edge: string[]; area: string }[] = [];
    const from = Math.floor(box().x0) - 1;
    for (let k = from; k <= box().x1 + 1; k++) {
      const near = here()?.[0] ?? 0;
      const shift = k - Math.round(near);
      const place = (l: readonly MapPoint[]): [number, number][] =>
        l.map(([px, py]) => [x(px / REV + shift), y(py * DEG)]);
      const both = upper && lower && found.length === 2 && upper.length === lower.length;
      out.push({
        edge: found.map((l) => line(place(l))),
        area: both ? `${line([...place(upper), ...place(lower).reverse()])}Z` : '',
      });
    }
    return out;
  });
  const mode = (): string => {
    const w = props.state.wobble();
    return w ? a.modes[w.mode] : a.noMomentum;
  };
  const boundaryWords = (): string => {
    const w = props.state.wobble();
    if (!w) return '';
    if (w.criticalTilt === undefined) return a.noBoundary;
    return a.boundaryAt(
      `${formatNumber(w.criticalTilt * DEG, 1)}°`,
      `${formatNumber(Math.abs(here()?.[1] ?? Number.NaN), 1)}°`,
    );
  };
  const timeWords = (): string => {
    const period = props.state.wobble()?.period;
    if (period === undefined || !Number.isFinite(period)) return '';
    const share = period / flight.result().flight.duration;
    const kind = props.state.wobble()?.mode === 'twists' ? 'twist' : 'wobble';
    const compared = share > 1 + AS_LONG ? 'longer' : share < 1 - AS_LONG ? 'shorter' : 'same';
    return a.takesAgain[kind](formatNumber(period, 2)) + a.compared[compared];
  };
  /** what the twist rate follows: said where the two axes differ */
  const axisWords = (): string => {
    const long = props.state.wobble()?.long;
    if (!long || long.lean * DEG < LEAN || Math.abs(long.rate / REV) < SLOW) return '';
    const rate = (v: number): string => say('rate', Math.abs(v) / REV);
    const deg = (v: number): string => `${formatNumber(Math.abs(v) * DEG, 1)}°`;
    return a.byAxes(
      rate(long.rate),
      deg(long.axisTilt),
      rate(long.rateByAxis),
      deg(long.bodyTilt),
      rate(long.rateByBody),
    );
  };
  const quarters = createMemo(() => {
    const step = box().x1 - box().x0 > 3 ? 0.5 : 0.25;
    const out: number[] = [];
    for (let q = Math.ceil(box().x0 / step) * step; q <= box().x1; q += step) out.push(Math.round(q * 100) / 100);
    return out;
  });
  const heights = createMemo(() => {
    const b = box();
    return [b.high, 0, b.low].filter((v) => v === 0 || Math.abs(v) === Math.max(b.high, -b.low));
  });
  const press = (e: PointerEvent): void => {
    const rect = (e.currentTarget as Element).getBoundingClientRect();
    const go = (px: number, py: number): void => {
      let best = -1;
      let near = Number.POSITIVE_INFINITY;
      points().forEach(([mx, my], i) => {
        const d = Math.hypot(x(mx) - (px - rect.left), y(my) - (py - rect.top));
        if (d < near) {
          near = d;
          best = i;
        }
      });
      if (best >= 0) cursor.set(flight.result().frames.t[best]);
    };
    cursor.play.pause();
    go(e.clientX, e.clientY);
    const move = (m: PointerEvent): void => go(m.clientX, m.clientY);
    const end = (): void => stop();
    const stop = listen({ pointermove: move, pointerup: end, pointercancel: end });
  };
  const wobbleLabel = createMemo(() => {
    const critical = props.state.wobble()?.criticalTilt;
    if (critical === undefined || regions().length === 0) return undefined;
    const tall = y(0) - y(critical * DEG);
    // at a quarter twist, where the boundary is highest, away from the marker
    const at = quarters().filter(
      (q) => Math.abs(Math.abs(q % 0.5) - 0.25) < 0.01 && x(q) > LEFT + 34 && x(q) < props.width - 46,
    );
    const free = at.find((q) => Math.abs(x(q) - x(here()?.[0] ?? -9)) > 40);
    return tall > 12 && free !== undefined ? { x: x(free), y: y(0) - 5 } : undefined;
  });
  return (
    <figure class="wobble-map">
      <svg
        width={props.width}
        height={props.height}
        viewBox={`0 0 ${props.width} ${props.height}`}
        role="img"
        aria-label={a.mapPicture(
          mode(),
          `${formatNumber(here()?.[1] ?? Number.NaN, 1)}°`,
          say('turns', here()?.[0] ?? Number.NaN, 2),
        )}
        onPointerDown={press}
      >
        <clipPath id="wobble-clip">
          <rect
            x={LEFT}
            y={TOP}
            width={Math.max(0, props.width - LEFT - RIGHT)}
            height={Math.max(0, props.height - TOP - BOTTOM)}
          />
        </clipPath>
        <rect
          class="map-air"
          x={LEFT}
          y={TOP}
          width={Math.max(0, props.width - LEFT - RIGHT)}
          height={Math.max(0, props.height - TOP - BOTTOM)}
        />
        <g clip-path="url(#wobble-clip)">
          <For each={regions()}>{(r) => <path class="map-wobble" d={r.area} />}</For>
          <For each={quarters()}>{(q) => <path class="map-grid" d={`M${x(q)} ${TOP}V${props.height - BOTTOM}`} />}</For>
          <path class="map-zero" d={`M${LEFT} ${y(0)}H${props.width - RIGHT}`} />
          <For each={regions()}>{(r) => <For each={r.edge}>{(d) => <path class="map-edge" d={d} />}</For>}</For>
          <path class="map-path" d={line(known().map(([px, py]) => [x(px), y(py)]))} />
        </g>
        <For each={quarters()}>
          {(q) => (
            <text class="map-tick" x={x(q)} y={props.height - BOTTOM + 14} text-anchor="middle">
              {formatNumber(q, q % 0.5 === 0 ? (q % 1 === 0 ? 0 : 1) : 2)}
            </text>
          )}
        </For>
        <For each={heights()}>
          {(v) => (
            <text class="map-tick" x={LEFT - 6} y={y(v) + 4} text-anchor="end">
              {formatNumber(v, 0)}°
            </text>
          )}
        </For>
        <text class="map-name" x={props.width - RIGHT} y={props.height - 3} text-anchor="end">
          {a.mapX}
        </text>
        <text class="map-name" x={LEFT - 6} y={TOP + 18} text-anchor="end">
          {a.mapY}
        </text>
        <Show when={wobbleLabel()}>
          {(at) => (
            <text class="map-word" x={at().x} y={at().y} text-anchor="middle">
              {a.wobbling}
            </text>
          )}
        </Show>
        <Show when={props.state.wobble()?.criticalTilt !== undefined}>
          <text class="map-word" x={LEFT + 7} y={TOP + 16}>
            {a.twisting}
          </text>
        </Show>
        <Show when={known().length > 1}>
          <circle class="map-end" cx={x(known()[0][0])} cy={y(known()[0][1])} r="3.5" />
          <path
            class="map-end"
            d={`M${x(known()[known().length - 1][0]) - 4} ${y(known()[known().length - 1][1]) - 4}h8v8h-8Z`}
          />
        </Show>
        <Show when={here()}>{(p) => <circle class="map-here" cx={x(p()[0])} cy={y(p()[1])} r="6" />}</Show>
      </svg>
      <figcaption>
        <p class="map-mode">{mode()}</p>
        <p class="quiet">
          {timeWords()} {boundaryWords()} {axisWords()}
        </p>
      </figcaption>
    </figure>
  );
}
