/** The map with its axes, the ring of the skill as it is, the answers as numbers, and the ways to go to a place of it. */
import { createEffect, createMemo, createSignal, For, Show } from 'solid-js';
import { useFlight } from '../../app/page.ts';
import { usePalette } from '../../app/plot/plot-canvas.tsx';
import { Icon } from '../../ui/icon.tsx';
import type { AskState } from './ask-state.ts';
import { type AskUnit, nameInput, numberIn, sayIn, stepOf, unitIn } from './ask-words.ts';
import { AskedRun } from './asked-run.tsx';
import { drawMap, type MapPlace, STEPS } from './map-draw.ts';
import { COARSE, FINE, type MapAxis, type MapResult, type MapState } from './map-state.ts';
import { InputOptions } from './may-change.tsx';
import { Slot } from './slot.tsx';
import { askTexts as t } from './words.ts';

type Props = {
  ask: AskState;
  map: MapState;
  width: number;
  height: number;
  /** the picture alone, which a press opens */
  onOpen?: () => void;
};

const LEFT = 46;
const BOTTOM = 32;
/** the title of the upright axis is over the plot, off its contours */
const TOP = 22;
const RIGHT = 10;

export function MapChoices(props: Pick<Props, 'ask' | 'map'>) {
  return (
    <div class="map-choices">
      <For each={['x', 'y'] as const}>
        {(which) => (
          <label class="ask-pick">
            <span>{which === 'x' ? t.mapX : t.mapY}</span>
            <select
              value={props.map[which]()?.input ?? ''}
              onChange={(e) => props.map.setAxis(which, { input: e.currentTarget.value })}
            >
              <InputOptions
                state={props.ask}
                value={props.map[which]()?.input}
                without={[props.map[which === 'x' ? 'y' : 'x']()?.input ?? '']}
              />
            </select>
          </label>
        )}
      </For>
      <label class="ask-pick">
        <span>{t.mapOf}</span>
        <select value={props.map.of()} onChange={(e) => props.map.setOf(e.currentTarget.value)}>
          <For each={props.ask.asking()?.results ?? []}>
            {({ id }) => (
              <option value={id} selected={props.map.of() === id}>
                {t.results[id] ?? id}
              </option>
            )}
          </For>
        </select>
      </label>
    </div>
  );
}

/** The word of the verdict where a landing on the feet, or a catch, is judged. */
function insideWords(one?: MapResult): readonly [string, string] {
  const has = (result: string): boolean => one?.window.some((b) => b.result === result) === true;
  if (one?.kind === 'wanted') return t.insides.wanted;
  return t.insides[has('reach') ? 'held' : has('catch.gap') ? 'caught' : 'usual'];
}

export function MapView(props: Props) {
  const flight = useFlight();
  let canvas!: HTMLCanvasElement;
  const palette = usePalette();
  const report = () => props.map.report();
  const axis = (which: 'x' | 'y'): MapAxis | undefined => report()?.[which] ?? props.map[which]();
  const unitOf = (which: 'x' | 'y'): AskUnit => props.ask.inputOf(axis(which)?.input ?? '')?.unit ?? 'count';
  const nameOf = (which: 'x' | 'y'): string => {
    const open = props.ask.skill();
    const id = axis(which)?.input;
    return open && id ? nameInput(id, flight.spans(), open.spec) : '';
  };
  /** the small picture has no room for the unit */
  const titleOf = (which: 'x' | 'y'): string =>
    props.onOpen ? nameOf(which) : `${nameOf(which)}, ${unitIn(unitOf(which))}`;
  const resultUnit = (): AskUnit => props.ask.asking()?.results.find((r) => r.id === props.map.of())?.unit ?? 'count';
  const place = createMemo<MapPlace>(() => ({
    left: LEFT,
    top: TOP,
    width: Math.max(40, props.width - LEFT - RIGHT),
    height: Math.max(40, props.height - TOP - BOTTOM),
  }));
  const toX = (v: number): number => {
    const a = axis('x');
    return a ? place().left + ((v - a.from) / (a.to - a.from)) * place().width : 0;
  };
  const toY = (v: number): number => {
    const a = axis('y');
    return a ? place().top + (1 - (v - a.from) / (a.to - a.from)) * place().height : 0;
  };
  createEffect(() => {
    const [one, engine] = [report(), props.ask.asking()];
    const ratio = window.devicePixelRatio || 1;
    canvas.width = Math.round(props.width * ratio);
    canvas.height = Math.round(props.height * ratio);
    const g = canvas.getContext('2d');
    if (!g || !engine) return;
    g.setTransform(ratio, 0, 0, ratio, 0, 0);
    const p = palette();
    g.fillStyle = p.colour.ground;
    g.fillRect(place().left, place().top, place().width, place().height);
    if (one) {
      g.globalAlpha = props.map.stale() ? 0.45 : 1;
      const rings = [props.map.now(), ...props.map.answers()].flatMap((at) =>
        at && inSight(at) ? [[toX(at[0]), toY(at[1])] as const] : [],
      );
      drawMap(g, engine, one, props.map.of(), resultUnit(), place(), p, rings);
      g.globalAlpha = 1;
    }
    g.strokeStyle = p.colour['rule-2'];
    g.lineWidth = 1;
    g.strokeRect(place().left + 0.5, place().top + 0.5, place().width - 1, place().height - 1);
  });

  // the place that keys and steppers move, in steps of the grid
  const [probe, setProbe] = createSignal<readonly [number, number]>();
  const at = (): readonly [number, number] => {
    const n = (report()?.count ?? 2) - 1;
    const p = probe();
    if (p) return [Math.min(p[0], n), Math.min(p[1], n)];
    const [now, x, y] = [props.map.now(), axis('x'), axis('y')];
    if (!now || !x || !y) return [0, 0];
    const grid = (v: number, a: MapAxis): number =>
      Math.min(n, Math.max(0, Math.round(((v - a.from) / (a.to - a.from)) * n)));
    return [grid(now[0], x), grid(now[1], y)];
  };
  const valueAt = (which: 'x' | 'y', k: number): number => {
    const a = axis(which);
    const n = (report()?.count ?? 2) - 1;
    return a ? a.from + ((a.to - a.from) * k) / n : Number.NaN;
  };
  const sayPlace = (): string => {
    const one = report();
    if (!one) return '';
    const [i, j] = at();
    if (j >= one.rows) return '';
    const words = (which: 'x' | 'y', k: number): string => sayIn(unitOf(which), valueAt(which, k));
    const value = one.values.get(props.map.of())?.[j * one.count + i] ?? Number.NaN;
    if (!Number.isFinite(value)) return t.noPlace(words('x', i), words('y', j));
    const inside = one.distance[j * one.count + i] <= 1;
    return t.place(words('x', i), words('y', j), sayIn(resultUnit(), value), insideWords(one)[inside ? 0 : 1]);
  };
  const move = (dx: number, dy: number): void => {
    const n = (report()?.count ?? 2) - 1;
    const [i, j] = at();
    setProbe([Math.min(n, Math.max(0, i + dx)), Math.min(n, Math.max(0, j + dy))]);
  };
  const go = (x: number, y: number): void => {
    if (props.map.stale()) return;
    // onto the grid of what can be felt
    const tidy = (which: 'x' | 'y', v: number): number => {
      const step = stepOf(unitOf(which)) / 10;
      return Math.round(v / step) * step;
    };
    props.map.go(tidy('x', x), tidy('y', y), [nameOf('x'), nameOf('y')]);
    setProbe(undefined);
  };
  const goProbe = (): void => {
    const [i, j] = at();
    go(valueAt('x', i), valueAt('y', j));
  };
  const press = (e: MouseEvent): void => {
    const [x, y] = [axis('x'), axis('y')];
    if (!x || !y || !report()) return;
    const rect = (e.currentTarget as HTMLElement).getBoundingClientRect();
    const s = (e.clientX - rect.left - place().left) / place().width;
    const u = 1 - (e.clientY - rect.top - place().top) / place().height;
    if (s < 0 || s > 1 || u < 0 || u > 1) return;
    go(x.from + s * (x.to - x.from), y.from + u * (y.to - y.from));
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    const by = e.shiftKey ? 4 : 1;
    if (e.key === 'ArrowLeft') move(-by, 0);
    else if (e.key === 'ArrowRight') move(by, 0);
    else if (e.key === 'ArrowUp') move(0, by);
    else if (e.key === 'ArrowDown') move(0, -by);
    else if (e.key === 'Enter') goProbe();
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const ticks = (which: 'x' | 'y'): number[] => {
    const a = axis(which);
    if (!a) return [];
    return [a.from, (a.from + a.to) / 2, a.to];
  };
  /** values of times are counted from take-off */
  const tick = (which: 'x' | 'y', v: number): string => {
    const unit = unitOf(which);
    const shift = props.ask.inputOf(axis(which)?.input ?? '')?.eventS ?? 0;
    return numberIn(unit, v + shift, unit === 's' ? 2 : undefined);
  };
  const inSight = (p: readonly [number, number] | undefined): boolean => {
    const [x, y] = [axis('x'), axis('y')];
    return !!p && !!x && !!y && p[0] >= x.from && p[0] <= x.to && p[1] >= y.from && p[1] <= y.to;
  };
  /** else the one mark is that of the nearest miss, as in the list */
  const isAnswer = (): boolean => (props.ask.found()?.answer.solutions.length ?? 0) > 0;
  const bound = () => report()?.window.find((b) => b.result === props.map.of());
  return (
    <figure class="ask-map">
      <div
        class="ask-map-plot"
        role="application"
        inert={props.onOpen !== undefined}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move a place in it, Enter goes there
        tabIndex={0}
        aria-label={`${t.mapPicture(t.results[props.map.of()] ?? '', nameOf('x'), nameOf('y'))}. ${t.mapHint}`}
        aria-busy={props.map.progress() !== undefined}
        style={{ width: `${props.width}px`, height: `${props.height}px` }}
        onClick={press}
        onKeyDown={onKeyDown}
      >
        <canvas ref={canvas} style={{ width: `${props.width}px`, height: `${props.height}px` }} />
        <svg width={props.width} height={props.height} aria-hidden="true">
          <For each={ticks('x')}>
            {(v, i) => (
              <text
                x={toX(v)}
                y={props.height - BOTTOM + 13}
                text-anchor={i() === 0 ? 'start' : i() === 2 ? 'end' : 'middle'}
              >
                {tick('x', v)}
              </text>
            )}
          </For>
          <For each={ticks('y')}>
            {(v, i) => (
              <text x={LEFT - 5} y={toY(v) + (i() === 0 ? 0 : i() === 2 ? 10 : 4)} text-anchor="end">
                {tick('y', v)}
              </text>
            )}
          </For>
          <text class="map-axis" x={place().left} y={props.height - 4}>
            {titleOf('x')}
          </text>
          <text class="map-axis" x={0} y={14}>
            {titleOf('y')}
          </text>
          <Show when={inSight(props.map.now())}>
            <g
              class="map-ring"
              transform={`translate(${toX(props.map.now()?.[0] ?? 0)} ${toY(props.map.now()?.[1] ?? 0)})`}
            >
              <circle r="8" class="halo" />
              <circle r="6.5" />
            </g>
          </Show>
          <For each={props.map.answers()}>
            {(p, i) => (
              <Show when={inSight(p)}>
                <g
                  class="map-answer"
                  classList={{ picked: props.ask.picked() === i() }}
                  transform={`translate(${toX(p[0])} ${toY(p[1])})`}
                >
                  <circle r="8" />
                  <text y="4" text-anchor="middle">
                    {isAnswer() ? i() + 1 : '~'}
                  </text>
                </g>
              </Show>
            )}
          </For>
          <Show when={probe()}>
            <path
              class="map-probe"
              d={`M${toX(valueAt('x', at()[0]))} ${place().top}v${place().height}M${place().left} ${toY(valueAt('y', at()[1]))}h${place().width}`}
            />
          </Show>
        </svg>
      </div>
      <Show
        when={!props.onOpen}
        fallback={<button type="button" class="map-open" aria-label={t.openMap} onClick={() => props.onOpen?.()} />}
      >
        <figcaption>
          <p class="map-place" role="status">
            {sayPlace()}
          </p>
          <Show when={report()?.notFlown}>
            {(n) => (
              <p class="map-faults" role="status">
                {t.mapFaults(n(), (report()?.rows ?? 0) * (report()?.count ?? 0))}
              </p>
            )}
          </Show>
          <div class="map-steps">
            <For each={['x', 'y'] as const}>
              {(which) => (
                <span class="map-stepper">
                  <For each={[-1, 1] as const}>
                    {(way) => (
                      <button
                        type="button"
                        class="square"
                        aria-label={t.step(nameOf(which), way < 0 ? t.less : t.more)}
                        onClick={() => move(which === 'x' ? way : 0, which === 'y' ? way : 0)}
                      >
                        <Icon name={way < 0 ? 'minus' : 'plus'} size={14} />
                      </button>
                    )}
                  </For>
                  <span class="quiet">{which === 'x' ? t.mapX : t.mapY}</span>
                </span>
              )}
            </For>
            <button type="button" disabled={props.map.stale() || !report() || !probe()} onClick={goProbe}>
              {t.go}
            </button>
          </div>
          <ul class="map-legend">
            <Show when={bound()}>
              {(b) => (
                <For each={[...STEPS, 0]}>
                  {(s, i) => (
                    <li>
                      <i class={`tone tone-${i()}`} />
                      {s === 0
                        ? t.more
                        : `± ${numberIn(resultUnit(), (s * (b().high - b().low)) / 2, resultUnit() === 'rad' ? 0 : 2)}${unitIn(resultUnit()) === '°' ? '°' : ''}`}
                    </li>
                  )}
                </For>
              )}
            </Show>
            <li>
              <i class="tone hatch" />
              {insideWords(report())[1]}
            </li>
            <li>
              <i class="ring" />
              {t.asNowRing}
            </li>
          </ul>
          <div class="map-run">
            <AskedRun of={props.map} label={t.map} words={(p) => t.fill(String(p.done), String(p.all))} />
            <button
              type="button"
              class="small"
              onClick={() => props.map.setCount(props.map.count() === COARSE ? FINE : COARSE)}
            >
              {props.map.count() === COARSE ? t.fine : t.coarse}
            </button>
          </div>
          <MapSpans ask={props.ask} map={props.map} nameOf={nameOf} />
          <Show when={props.map.failed()}>
            <p role="alert" class="ask-fault">
              {t.failed(props.map.failed())}
            </p>
          </Show>
        </figcaption>
      </Show>
    </figure>
  );
}

function MapSpans(props: { ask: AskState; map: MapState; nameOf: (which: 'x' | 'y') => string }) {
  return (
    <div class="map-spans quiet">
      <For each={['x', 'y'] as const}>
        {(which) => (
          <Show when={props.map[which]()}>
            {(a) => {
              const input = () => props.ask.inputOf(a().input);
              const least = (): number => (input()?.scale ?? 1) / 10;
              return (
                <span>
                  {which === 'x' ? t.mapX : t.mapY}{' '}
                  <Slot
                    label={t.from(props.nameOf(which))}
                    unit={input()?.unit ?? 'count'}
                    withUnit={false}
                    value={a().from}
                    min={input()?.range[0] ?? 0}
                    max={a().to - least()}
                    onChange={(from) => props.map.setAxis(which, { from })}
                  />{' '}
                  {t.toWord}{' '}
                  <Slot
                    label={t.to(props.nameOf(which))}
                    unit={input()?.unit ?? 'count'}
                    value={a().to}
                    min={a().from + least()}
                    max={input()?.range[1] ?? 1}
                    onChange={(to) => props.map.setAxis(which, { to })}
                  />
                </span>
              );
            }}
          </Show>
        )}
      </For>
    </div>
  );
}
