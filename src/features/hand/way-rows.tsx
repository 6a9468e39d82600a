/** The ways as rows under the floor: thumbnail, name and verb at the left, what it takes of the time on the ruler. */
import { createEffect, For, Match, onCleanup, onMount, Show, Switch } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import type { HandState, HandWay, WayTime } from './way.ts';
import { handTexts as t } from './words.ts';

/** px: a row with two lines and pegs, and one with little room */
const ROW = { most: 64, least: 50 };
const STEP = { fine: 0.01, coarse: 0.1 };

export const rowHeight = (room: number, count: number): number =>
  Math.max(ROW.least, Math.min(ROW.most, Math.floor(room / Math.max(count, 1))));

export function WayRows(props: {
  hand: HandState;
  ways: readonly HandWay[];
  axis: TimeAxis;
  left: number;
  height: number;
}) {
  return (
    <section class="way-rows" aria-label={t.waysLabel}>
      <For each={props.ways}>{(way) => <WayRow {...props} way={way} />}</For>
    </section>
  );
}

function WayRow(props: { hand: HandState; way: HandWay; axis: TimeAxis; left: number; height: number }) {
  const isPicked = (): boolean => props.hand.picked() === props.way.id;
  const refused = (): string | undefined => props.hand.cannot() ?? props.way.refused?.(props.hand);
  const time = (): WayTime | undefined => (refused() === undefined ? props.way.time?.(props.hand) : undefined);
  let button!: HTMLButtonElement;
  createEffect(() => {
    if (isPicked()) button.closest('.way-row')?.scrollIntoView({ block: 'nearest' });
  });
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the verb is the button; a press beside it only picks the row
    // biome-ignore lint/a11y/useKeyWithClickEvents: the arrow keys pick it
    <div
      class="way-row"
      classList={{ picked: isPicked(), refused: refused() !== undefined }}
      data-way={props.way.id}
      style={{ 'min-height': `${props.height}px` }}
      onClick={() => props.hand.pick(props.way.id)}
    >
      <div class="way-name" style={{ width: `${props.left}px` }}>
        <Dynamic component={props.way.Thumb} />
        <div>
          <b>{props.way.name}</b>
          <WayButton ref={(el) => (button = el)} hand={props.hand} way={props.way} word={props.way.verb} link />
        </div>
      </div>
      <div class="way-time" style={{ width: `${props.axis.width}px` }}>
        <div class="way-lines" style={{ 'margin-left': `${props.axis.x0 + 12}px` }}>
          <Show
            when={refused()}
            fallback={<For each={props.way.lines(props.hand).slice(0, time() ? 1 : 2)}>{(line) => <p>{line}</p>}</For>}
          >
            {(why) => <p class="way-refused">{why()}</p>}
          </Show>
        </div>
        <Show when={time()}>{(taken) => <TakenTime time={taken()} axis={props.axis} name={props.way.name} />}</Show>
      </div>
      <WaySaid hand={props.hand} way={props.way} />
    </div>
  );
}

/** "Cancel" while it is at work. */
export function WayButton(props: {
  hand: HandState;
  way: HandWay;
  word: string;
  link?: boolean;
  ref?: (el: HTMLButtonElement) => void;
}) {
  const work = () => props.hand.workOf(props.way.id);
  const said = (): string | undefined => (props.hand.said()?.id === props.way.id ? props.hand.said()?.text : undefined);
  const isRefused = (): boolean => props.hand.cannot() !== undefined || props.way.refused?.(props.hand) !== undefined;
  return (
    <button
      ref={props.ref}
      type="button"
      class={props.link ? 'link way-verb' : 'way-verb'}
      aria-label={`${work() ? t.cancel : (said() ?? props.word)}: ${props.way.name}`}
      disabled={isRefused()}
      onClick={(e) => {
        e.stopPropagation();
        const now = work();
        if (now) now.cancel();
        else props.hand.run(props.way);
      }}
    >
      {work() ? t.cancel : (said() ?? props.word)}
    </button>
  );
}

/** How far it is, or what went wrong. */
export function WaySaid(props: { hand: HandState; way: HandWay }) {
  const work = () => props.hand.workOf(props.way.id);
  const failed = () => (props.hand.failed()?.id === props.way.id ? props.hand.failed()?.text : undefined);
  return (
    <>
      <Show when={work()}>
        {(now) => (
          <div class="way-work">
            <p>{now().text}</p>
            <progress max={1} value={now().share} aria-label={now().text} />
          </div>
        )}
      </Show>
      <Show when={failed()}>
        {(text) => (
          <p class="way-failed" role="alert">
            {text()}
          </p>
        )}
      </Show>
    </>
  );
}

function TakenTime(props: { time: WayTime; axis: TimeAxis; name: string }) {
  const pegs = () => (props.time.kind === 'pegs' ? props.time : undefined);
  const span = () => (props.time.kind === 'span' ? props.time : undefined);
  const ends = () => pegs()?.times ?? [span()?.from ?? 0, span()?.to ?? 0];
  const x = (t: number): string => `${xOf(props.axis, t)}px`;
  return (
    <div class="taken-time">
      <span
        class="taken-line"
        classList={{ span: span() !== undefined }}
        style={{
          left: x(Math.min(...ends())),
          width: `${(Math.max(...ends()) - Math.min(...ends())) * props.axis.pxPerS}px`,
        }}
      />
      <Switch>
        <Match when={span()}>
          <For each={ends()}>{(t) => <span class="span-stop" style={{ left: x(t) }} />}</For>
        </Match>
        <Match when={pegs()}>
          {(all) => (
            <For each={all().times}>
              {(t, i) => (
                <Peg
                  t={t}
                  axis={props.axis}
                  name={`${props.name}, ${all().names?.[i()] ?? i() + 1}`}
                  label={hasRoom(all().times, all().names ?? [], i(), props.axis) ? all().names?.[i()] : undefined}
                  move={all().move && ((to: number) => all().move?.(i(), to))}
                />
              )}
            </For>
          )}
        </Match>
      </Switch>
    </div>
  );
}

const LETTER = 7;
/** from a mark to its name, and half a mark */
const BESIDE = 12;
const HALF = 14;

/** Whether a name meets no other mark, nor the name of the last, which is before it; what has no room is said and not seen. */
function hasRoom(times: readonly number[], names: readonly string[], i: number, axis: TimeAxis): boolean {
  const last = times.length - 1;
  const x = (k: number): number => xOf(axis, times[k]);
  const begin = (k: number): number => x(k) - BESIDE - widthOf(names[k]);
  if (i === last) return last === 0 || begin(i) > x(i - 1) + HALF;
  const isNamed = i + 1 === last && hasRoom(times, names, last, axis);
  return x(i) + BESIDE + widthOf(names[i]) < (isNamed ? begin(last) : x(i + 1) - HALF);
}

const widthOf = (name = ''): number => name.length * LETTER + 6;

function Peg(props: {
  t: number;
  axis: TimeAxis;
  name: string;
  label: string | undefined;
  move: ((t: number) => void) | undefined;
}) {
  const put = (t: number): void => props.move?.(Math.min(Math.max(t, 0), props.axis.duration));
  const onKeyDown = (e: KeyboardEvent): void => {
    const way = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (way === undefined || !props.move) return;
    e.preventDefault();
    put(Math.round((props.t + way * (e.shiftKey ? STEP.coarse : STEP.fine)) * 100) / 100);
  };
  let held: { from: number; x: number } | undefined;
  let root!: HTMLButtonElement;
  const onMove = (e: PointerEvent): void => {
    if (held) put(tOf(props.axis, xOf(props.axis, held.from) + e.clientX - held.x));
  };
  const onUp = (): void => {
    held = undefined;
  };
  onMount(() => {
    window.addEventListener('pointermove', onMove);
    window.addEventListener('pointerup', onUp);
    onCleanup(() => {
      window.removeEventListener('pointermove', onMove);
      window.removeEventListener('pointerup', onUp);
    });
  });
  return (
    <>
      <button
        ref={root}
        type="button"
        class="peg"
        style={{ left: `${xOf(props.axis, props.t)}px` }}
        disabled={!props.move}
        aria-label={`${props.name}, ${props.t.toFixed(2)} s`}
        onPointerDown={(e) => {
          if (!props.move) return;
          held = { from: props.t, x: e.clientX };
          root.focus();
        }}
        onKeyDown={onKeyDown}
      />
      <Show when={props.label}>
        {(label) => (
          <span class="peg-name" aria-hidden="true" style={{ left: `${xOf(props.axis, props.t) + 12}px` }}>
            {label()}
          </span>
        )}
      </Show>
    </>
  );
}
