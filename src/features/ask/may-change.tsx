/** What may change: instants as spans on the page's own ruler, the rest as spans in a list. */
import { createMemo, For, Show } from 'solid-js';
import { useFlight } from '../../app/page.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import type { AskInput } from '../../engine/ask.ts';
import { Icon } from '../../ui/icon.tsx';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import type { Chosen } from './ask-start.ts';
import type { AskState } from './ask-state.ts';
import { decimalsOfInput, groupOf, type InputGroup, nameInput, sayIn, stepOf } from './ask-words.ts';
import { packLines } from './lines.ts';
import { Slot } from './slot.tsx';
import { SpanBar, type SpanScale } from './span-bar.tsx';
import { askTexts as t } from './words.ts';

type Props = { state: AskState };

/** Spans of times reach no further than this out of the flight, s. */
const FAR = 3;

function useRow(props: Props & { one: Chosen }) {
  const flight = useFlight();
  const input = createMemo(() => props.state.inputOf(props.one.id) as AskInput);
  const name = (): string => {
    const open = props.state.skill();
    return open ? nameInput(props.one.id, flight.spans(), open.spec) : props.one.id;
  };
  // neighbours may move as well, so a time may pass where they are now
  const bounds = (): readonly [number, number] => {
    const { unit, level, value, range } = input();
    return level === 'schedule' && unit === 's' && input().eventS !== undefined ? [value - FAR, value + FAR] : range;
  };
  const answer = (): number | undefined => {
    const found = props.state.found();
    const solution = props.state.pickedSolution();
    const at = found?.chosen.findIndex((c) => c.id === props.one.id) ?? -1;
    return solution && at >= 0 ? solution.values[at] : undefined;
  };
  return { input, name, bounds, answer };
}

function Ends(props: Props & { one: Chosen; shift: number; row: ReturnType<typeof useRow> }) {
  const least = (): number => stepOf(props.row.input().unit) / 10;
  return (
    <span class="span-ends">
      <Slot
        label={t.from(props.row.name())}
        unit={props.row.input().unit}
        withUnit={false}
        value={props.one.from + props.shift}
        min={props.row.bounds()[0] + props.shift}
        max={props.one.to - least() + props.shift}
        onChange={(v) => props.state.setSpan(props.one.id, v - props.shift, props.one.to)}
      />{' '}
      {t.toWord}{' '}
      <Slot
        label={t.to(props.row.name())}
        unit={props.row.input().unit}
        value={props.one.to + props.shift}
        min={props.one.from + least() + props.shift}
        max={props.row.bounds()[1] + props.shift}
        onChange={(v) => props.state.setSpan(props.one.id, props.one.from, v - props.shift)}
      />
    </span>
  );
}

function RowBar(props: Pick<Props, 'state'> & { one: Chosen; row: ReturnType<typeof useRow>; scale: SpanScale }) {
  return (
    <SpanBar
      label={props.row.name()}
      unit={props.row.input().unit}
      scale={props.scale}
      low={props.row.bounds()[0]}
      high={props.row.bounds()[1]}
      from={props.one.from}
      to={props.one.to}
      now={props.row.input().value}
      answer={props.row.answer()}
      onChange={(from, to) => props.state.setSpan(props.one.id, from, to)}
    />
  );
}

function Remove(props: Props & { one: Chosen; name: string }) {
  return (
    <button
      type="button"
      class="plain square span-remove"
      aria-label={t.remove(props.name)}
      title={t.remove(props.name)}
      onClick={() => props.state.remove(props.one.id)}
    >
      <Icon name="close" size={14} />
    </button>
  );
}

/** px of the words beside a span, and between two spans of a line. */
const WORDS = 250;
const GAP = 12;

const instantsOf = (state: AskState): Chosen[] =>
  state.chosen().filter(({ id }) => state.inputOf(id)?.eventS !== undefined);

/** Where span and words of an instant are, and on which side of the span its words have room; px. */
function extentOf(state: AskState, axis: TimeAxis, { id, from, to }: Chosen) {
  const shift = state.inputOf(id)?.eventS ?? 0;
  const end = Math.min(xOf(axis, to + shift), axis.width);
  const begin = Math.max(xOf(axis, from + shift), 0);
  const isAfter = axis.width - end > begin || begin < WORDS;
  return {
    begin,
    end,
    isAfter,
    left: begin - (isAfter ? 0 : WORDS) - GAP,
    right: end + (isAfter ? WORDS : 0) + GAP,
  };
}

const linesOf = (state: AskState, axis: TimeAxis): number[] =>
  packLines(instantsOf(state).map((one) => extentOf(state, axis, one)));

/** Lines that the instants take on the ruler. */
export const countLines = (state: AskState, axis: TimeAxis): number => Math.max(-1, ...linesOf(state, axis)) + 1;

/** Instants on the ruler, under the shapes; those that do not touch share a line, unless each has one of its own (stacked). */
export function RulerSpans(props: Props & { axis: TimeAxis; left: number; row: number; stacked?: boolean }) {
  const list = createMemo(() => instantsOf(props.state));
  const lines = createMemo(() => (props.stacked ? list().map((_, i) => i) : linesOf(props.state, props.axis)));
  return (
    <ul
      class="ruler-spans"
      classList={{ stacked: props.stacked }}
      style={{ height: `${(Math.max(-1, ...lines()) + 1) * props.row}px` }}
      aria-label={t.mayChange}
    >
      <For each={list()}>
        {(one, i) => {
          const row = useRow({ ...props, one });
          const shift = (): number => row.input().eventS ?? 0;
          const scale = (): SpanScale => ({
            x: (v) => xOf(props.axis, v + shift()),
            v: (x) => tOf(props.axis, x) - shift(),
            width: props.axis.width,
          });
          const extent = createMemo(() => extentOf(props.state, props.axis, one));
          return (
            <li style={{ height: `${props.row}px`, top: `${(lines()[i()] ?? 0) * props.row}px` }} data-input={one.id}>
              <div class="ruler-span" style={{ left: `${props.left}px`, width: `${props.axis.width}px` }}>
                <TouchPlumb axis={props.axis} />
                <RowBar state={props.state} one={one} row={row} scale={scale()} />
                <span
                  class="ruler-words"
                  style={
                    props.stacked
                      ? {}
                      : extent().isAfter
                        ? { left: `${extent().end + 14}px` }
                        : { right: `${props.axis.width - extent().begin + 14}px` }
                  }
                >
                  {row.name()} <Ends {...props} one={one} shift={shift()} row={row} />
                  <Remove {...props} one={one} name={row.name()} />
                </span>
              </div>
            </li>
          );
        }}
      </For>
    </ul>
  );
}

/** Everything that is no instant, and the way to let more change. */
export function SpanList(props: Props & { width: number }) {
  const list = createMemo(() => props.state.chosen().filter(({ id }) => props.state.inputOf(id)?.eventS === undefined));
  return (
    <div class="span-list">
      <For each={list()}>
        {(one) => {
          const row = useRow({ ...props, one });
          const scale = createMemo<SpanScale>(() => {
            const now = row.input().value;
            const usual = props.state.asking()?.spanOf(props.state.skill() as never, one.id) ?? [one.from, one.to];
            const low = Math.min(usual[0], one.from, now);
            const high = Math.max(usual[1], one.to, now);
            const pad = 0.12 * (high - low);
            const [a, b] = [low - pad, high + pad];
            const inner = props.width - 16;
            return {
              x: (v) => 8 + ((v - a) / (b - a)) * inner,
              v: (x) => a + ((x - 8) / inner) * (b - a),
              width: props.width,
            };
          });
          return (
            <div class="span-row" data-input={one.id}>
              <span class="span-head">
                <span class="span-name">{row.name()}</span>
                <Remove {...props} one={one} name={row.name()} />
              </span>
              <Ends {...props} one={one} shift={0} row={row} />
              <RowBar state={props.state} one={one} row={row} scale={scale()} />
              <span class="quiet span-is">
                {t.now(sayIn(row.input().unit, row.input().value, decimalsOfInput(one.id, row.input().unit)))}
              </span>
            </div>
          );
        }}
      </For>
      <AddInput {...props} />
      <p class="quiet">{props.state.chosen().length === 0 ? t.nothingMay : t.fixed}</p>
      <Show when={props.state.skill()?.isReleased}>
        <p class="quiet">{t.released}</p>
      </Show>
    </div>
  );
}

const GROUPS: readonly InputGroup[] = ['swing', 'contact', 'takeoff', 'times', 'angles', 'body', 'segments'];

/** Inputs by group, as options. */
export function InputOptions(
  props: Props & { groups?: readonly InputGroup[]; without?: readonly string[]; value?: string },
) {
  const flight = useFlight();
  const groups = createMemo(() => {
    const open = props.state.skill();
    if (!open) return [];
    const without = new Set(props.without ?? []);
    return (props.groups ?? GROUPS)
      .map((group) => ({
        group,
        inputs: open.inputs.filter((i) => groupOf(i) === group && !without.has(i.id)),
      }))
      .filter((g) => g.inputs.length > 0);
  });
  return (
    <For each={groups()}>
      {({ group, inputs }) => (
        <optgroup label={t.groups[group]}>
          <For each={inputs}>
            {(i) => (
              <option value={i.id} selected={props.value === i.id}>
                {nameInput(i.id, flight.spans(), props.state.skill()?.spec as never)}
              </option>
            )}
          </For>
        </optgroup>
      )}
    </For>
  );
}

function AddInput(props: Props) {
  return (
    <select
      class="ask-add"
      aria-label={t.add}
      value=""
      onChange={(e) => {
        const id = e.currentTarget.value;
        e.currentTarget.value = '';
        if (id) props.state.add(id);
      }}
    >
      <option value="">{t.addShort} …</option>
      <InputOptions
        {...props}
        groups={['swing', 'contact', 'takeoff', 'times', 'angles']}
        without={props.state.chosen().map((c) => c.id)}
      />
    </select>
  );
}
