/** All versions in numbers: a column each, and how many times A's its values are. */
import { createMemo, For, Show } from 'solid-js';
import { wordEnding } from '../../app/say/sentence-words.ts';
import { listAllRows } from './compare-rows.ts';
import type { CompareState, FlownVersion } from './compare-state.ts';
import { VersionTag } from './version-tag.tsx';
import { useVerdict } from './version-verdict.ts';
import { compareTexts as c } from './words.ts';

export function AllTable(props: { state: CompareState; height: number }) {
  const flown = () => props.state.flown().filter((f) => f.result);
  const rows = createMemo(() => listAllRows(props.state.allRows()));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is scrolled by keys only when it has the focus
    <section class="all-table" style={{ height: `${props.height}px` }} aria-label={c.allRows} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span class="quiet">{c.timesA}</span>
            </th>
            <For each={flown()}>
              {(one) => (
                <th scope="col" title={one.name}>
                  <VersionTag letter={one.letter} small />
                </th>
              )}
            </For>
          </tr>
        </thead>
        <tbody>
          <tr data-row="ending">
            <th scope="row">{c.ending}</th>
            <For each={flown()}>{(one) => <Ending one={one} state={props.state} />}</For>
          </tr>
          <For each={rows()}>
            {(row) => (
              <tr data-row={row.key}>
                <th scope="row">
                  {row.title} <span class="unit">{row.unit}</span>
                </th>
                <For each={row.cells}>
                  {(one) => (
                    <td>
                      {one.value}
                      <Show when={one.ratio}>
                        <span class="ratio"> {one.ratio}</span>
                      </Show>
                    </td>
                  )}
                </For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

function Ending(props: { one: FlownVersion; state: CompareState }) {
  const verdict = useVerdict(
    () => props.one,
    () => props.state,
  );
  return <td class="all-ending">{wordEnding(verdict())}</td>;
}
