/** The sheet in one sentence: what was found by hand, what the simulation has, and what makes the difference. */
import { createMemo, For, Show } from 'solid-js';
import type { SheetRow } from '../../engine/estimate.ts';
import type { EstimateState } from './estimate-state.ts';
import { hueOf } from './ratio-line.tsx';
import { estimateTexts as e } from './words.ts';

const COUNTS = ['somersaults', 'twists'];
const comparedOf = (row: SheetRow) => (row.result.kind === 'quantity' ? row.result.compared : undefined);

export function SheetSaid(props: { state: EstimateState }) {
  /** counts of somersaults and twists where the sheet has them, else its last line with a ratio */
  const rows = createMemo<readonly SheetRow[]>(() => {
    const found = props.state.rows().filter((row) => comparedOf(row)?.ratio !== undefined && row.numbers);
    const counts = found.filter((row) => COUNTS.includes(comparedOf(row)?.text ?? ''));
    return counts.length > 0 ? counts.slice(0, 2) : found.slice(-1);
  });
  const nameOf = (row: SheetRow): string =>
    row.result.kind !== 'quantity'
      ? ''
      : COUNTS.includes(comparedOf(row)?.text ?? '')
        ? (comparedOf(row)?.text ?? '')
        : row.result.name.replace(/_/g, ' ');
  const hue = (row: SheetRow): string => hueOf(comparedOf(row)?.text ?? '');
  /** "The straight rod", where one is named */
  const cause = (): string | undefined => {
    const last = rows().at(-1);
    const c = last && comparedOf(last);
    return c?.cause === undefined ? undefined : c.sentence.slice(0, c.sentence.indexOf('. '));
  };
  return (
    <Show when={rows().length > 0 && !props.state.stale()}>
      <p class="sheet-said">
        {e.byHand}{' '}
        <For each={rows()}>
          {(row, i) => (
            <>
              {i() > 0 ? ', ' : ''}
              <b class={hue(row)}>{row.value}</b> {row.unit ? `${row.unit} ` : ''}
              <span class={hue(row)}>{nameOf(row)}</span>
            </>
          )}
        </For>
        {e.simulatedThere}
        <For each={rows()}>
          {(row, i) => (
            <>
              {i() > 0 ? e.and : ''}
              <b class={hue(row)}>{row.simulated}</b>
              {row.unit ? ` ${row.unit}` : ''}
            </>
          )}
        </For>
        .
        <Show when={cause()}>
          {(named) => (
            <>
              {' '}
              <b>{named()}</b> {e.makesIt}
            </>
          )}
        </Show>
      </p>
    </Show>
  );
}
