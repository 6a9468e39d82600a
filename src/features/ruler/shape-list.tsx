/** The body shapes as a list: what is dragged on the ruler is typed here; shapes are added, changed and taken out. */

import { createMemo, For, Show } from 'solid-js';
import type { ArmPath } from '../../../sim/index.ts';
import { keyTexts } from '../../app/key-words.ts';
import { MOVE, useLaying } from '../../app/laying.ts';
import { useCursor, useDocument, useFlight } from '../../app/page.ts';
import { SpanFields } from '../../app/span-fields.tsx';
import { texts } from '../../app/words.ts';
import { changeBlock, removeBlock, setBlockEdge } from '../../document/edits.ts';
import { setMoveTime } from '../../document/lay-shape.ts';
import { getSchedule } from '../../document/phases.ts';
import { type BlockSpan, limitEdge } from '../../document/spans.ts';
import { moveTime } from '../../document/times.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { SecondsField } from '../../ui/seconds-field.tsx';

const t = texts.shapes;

const PATHS: readonly ArmPath[] = ['front', 'side', 'direct'];

export function ShapeList() {
  const doc = useDocument();
  const flight = useFlight();
  const cursor = useCursor();
  const laying = useLaying();
  const title = (id: string): string => laying.shapes()[id]?.title ?? id;
  const names = createMemo(() => Object.keys(laying.shapes()).sort((a, b) => title(a).localeCompare(title(b))));
  const edge = (span: BlockSpan, side: 'from' | 'to', s: number): void => {
    const block = getSchedule(doc.file()).blocks?.[span.index];
    if (!block) return;
    const at = moveTime(block[side], limitEdge(flight.spans(), span.index, side, s), flight.anchors());
    doc.edit(setBlockEdge(doc.file(), span.index, side, at), t.retime(span.title));
  };
  const change = (span: BlockSpan, part: Parameters<typeof changeBlock>[2], what: string): void =>
    doc.edit(changeBlock(doc.file(), span.index, part), what);
  return (
    <>
      <ol class="shape-list">
        <For each={flight.spans().map((_, i) => i)}>
          {(i) => (
            <Show when={flight.spans()[i]}>
              {(span) => (
                <li>
                  <label class="choose">
                    <span class="spoken">{t.shapeOf(formatNumber(i + 1, 0))}</span>
                    <select value={span().shape} onChange={(e) => laying.replace(i, e.currentTarget.value)}>
                      <For each={names()}>{(id) => <option value={id}>{title(id)}</option>}</For>
                    </select>
                  </label>
                  {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is no row of fields */}
                  <div class="shape-times" role="group" aria-label={t.timesOf(formatNumber(i + 1, 0), span().title)}>
                    <SpanFields from={span().from} to={span().to} change={(which, v) => edge(span(), which, v)} />
                    <Show when={flight.spans()[i - 1]}>
                      {(before) => (
                        <SecondsField
                          label={keyTexts.moveTakes}
                          value={span().from - before().to}
                          min={MOVE.least}
                          max={Math.max(MOVE.most, span().from - before().from)}
                          onChange={(v) =>
                            doc.edit(setMoveTime(doc.file(), i, v, flight.anchors()), t.retime(span().title))
                          }
                        />
                      )}
                    </Show>
                  </div>
                  <div class="shape-more">
                    <label>
                      {t.arms}{' '}
                      <select
                        value={getSchedule(doc.file()).blocks?.[i]?.arms ?? 'direct'}
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
                      onClick={() => doc.edit(removeBlock(doc.file(), i), t.removed(span().title))}
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
      <h3>{t.addHere(formatNumber(cursor.at(), 2))}</h3>
      <p class="shape-add">
        <For each={names()}>
          {(id) => (
            <button type="button" onClick={() => laying.lay(id, cursor.at())}>
              {title(id)}
            </button>
          )}
        </For>
      </p>
    </>
  );
}
