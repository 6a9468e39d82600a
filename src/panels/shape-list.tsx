/** The body shapes as a list: what is dragged on the ruler is typed here; shapes are added, changed and taken out. */
import { For, Show } from 'solid-js';
import type { FileBlock, FileTime } from '../../sim/index.ts';
import { addBlock, changeBlock, removeBlock, setBlockEdge } from '../document/edits.ts';
import { type BlockSpan, findSpan, limitEdge, SHORTEST_MOVE } from '../document/spans.ts';
import { moveTime } from '../document/times.ts';
import { texts } from '../texts.ts';
import type { Bench } from './bench.ts';
import { formatNumber } from './numbers.ts';
import { NumberField } from './parts/number-field.tsx';

const t = texts.shapes;
type ArmPath = NonNullable<FileBlock['arms']>;

const PATHS: readonly ArmPath[] = ['front', 'side', 'direct'];
/** A shape that is laid down is held this long, s, where there is room. */
const HOLD = 0.1;

export function ShapeList(props: { bench: Bench }) {
  const names = (): string[] =>
    Object.keys({ ...props.bench.ports.shapes, ...props.bench.file().shapes }).sort((a, b) =>
      title(a).localeCompare(title(b)),
    );
  const title = (id: string): string =>
    props.bench.file().shapes?.[id]?.title ?? props.bench.ports.shapes[id]?.title ?? id;
  const edge = (span: BlockSpan, side: 'from' | 'to', s: number): void => {
    const bench = props.bench;
    const block = bench.file().schedule.blocks?.[span.index];
    if (!block) return;
    const at = moveTime(block[side], limitEdge(bench.spans(), span.index, side, s), bench.anchors());
    bench.edit(setBlockEdge(bench.file(), span.index, side, at), t.retime(span.title));
  };
  const change = (span: BlockSpan, part: Parameters<typeof changeBlock>[2], what: string): void =>
    props.bench.edit(changeBlock(props.bench.file(), span.index, part), what);
  /** Lays a shape at the cursor, in the room between its neighbours. */
  const add = (shape: string): void => {
    const bench = props.bench;
    const spans = bench.spans();
    const s = bench.cursor();
    const found = findSpan(spans, s);
    const index = found ? (found.held ? found.span.index + 1 : found.span.index) : spans.length;
    const low = (spans[index - 1]?.to ?? -1) + SHORTEST_MOVE;
    const high = (spans[index]?.from ?? Number.POSITIVE_INFINITY) - SHORTEST_MOVE;
    if (low > high) return;
    const from = Math.min(Math.max(s, low), high);
    const to = Math.min(from + HOLD, high);
    const time = (v: number): FileTime => ({ anchor: 'takeoff', s: Math.round(v * 1000) / 1000 });
    bench.edit(
      addBlock(bench.file(), index, { shape, from: time(from), to: time(to), arms: 'direct' }),
      t.added(title(shape)),
    );
  };
  return (
    <>
      <ol class="shape-list">
        <For each={props.bench.spans().map((_, i) => i)}>
          {(i) => (
            <Show when={props.bench.spans()[i]}>
              {(span) => (
                <li>
                  <label class="choose">
                    <span class="spoken">{t.shapeOf(formatNumber(i + 1, 0))}</span>
                    <select
                      value={span().shape}
                      onChange={(e) =>
                        change(span(), { shape: e.currentTarget.value, adjustDeg: undefined }, t.changed(span().title))
                      }
                    >
                      <For each={names()}>{(id) => <option value={id}>{title(id)}</option>}</For>
                    </select>
                  </label>
                  <div class="shape-times">
                    <NumberField
                      label={t.from}
                      unit="s"
                      value={span().from}
                      min={-5}
                      max={20}
                      step={0.01}
                      decimals={2}
                      onChange={(v) => edge(span(), 'from', v)}
                    />
                    <NumberField
                      label={t.to}
                      unit="s"
                      value={span().to}
                      min={-5}
                      max={20}
                      step={0.01}
                      decimals={2}
                      onChange={(v) => edge(span(), 'to', v)}
                    />
                  </div>
                  <div class="shape-more">
                    <label>
                      {t.arms}{' '}
                      <select
                        value={props.bench.file().schedule.blocks?.[i]?.arms ?? 'direct'}
                        onChange={(e) =>
                          change(span(), { arms: e.currentTarget.value as ArmPath }, t.armsOf(span().title))
                        }
                      >
                        <For each={PATHS}>{(path) => <option value={path}>{t.paths[path]}</option>}</For>
                      </select>
                    </label>
                    <Show when={span().changed}>
                      <button
                        type="button"
                        class="plain small"
                        onClick={() => change(span(), { adjustDeg: undefined }, t.asShape(span().title))}
                      >
                        {t.plain}
                      </button>
                    </Show>
                    <button
                      type="button"
                      class="plain small"
                      onClick={() => props.bench.edit(removeBlock(props.bench.file(), i), t.removed(span().title))}
                    >
                      {t.remove}
                    </button>
                  </div>
                </li>
              )}
            </Show>
          )}
        </For>
      </ol>
      <h3>{t.addHere(formatNumber(props.bench.cursor(), 2))}</h3>
      <p class="shape-add">
        <For each={names()}>
          {(id) => (
            <button type="button" onClick={() => add(id)}>
              {title(id)}
            </button>
          )}
        </For>
      </p>
    </>
  );
}
