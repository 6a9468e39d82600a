/** What the times give: value, ±, the same of A, and where it goes. */
import { createMemo, For, Show } from 'solid-js';
import { clipRows, wordFlown, wordMeasured } from '../../../sim/words/clip-words.ts';
import { usePage } from '../../app/page.ts';
import { giveSheet, giveTakeoff, whyNoTakeoff } from './clip-give.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipNumbers, fieldOf, type GivenRow } from './clip-values.ts';
import { clipTexts as t } from './clip-words.ts';

export function ClipGiven(props: { desk: ClipDesk; height?: number }) {
  const page = usePage();
  const rows = createMemo((): GivenRow[] => {
    const [times, flown] = [props.desk.times(), props.desk.flown()];
    return times ? clipRows(times, flown) : [];
  });
  const why = createMemo(() => whyNoTakeoff(page));
  const line = (): number =>
    props.height === undefined ? 46 : Math.min(27, Math.max(21, (props.height - 30) / Math.max(rows().length, 1)));
  return (
    <section class="clip-given" aria-label={t.gives}>
      <table style={{ '--line': `${line()}px` }}>
        <thead>
          <tr>
            <th scope="col">{t.gives}</th>
            <th scope="col" colSpan={2}>
              {t.nameClip}
            </th>
            <th scope="col">{t.nameA}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          <For each={rows()}>
            {(row) => (
              <tr>
                <th scope="row">{row.label}</th>
                <td>
                  <b>{wordMeasured(row, clipNumbers)[0]}</b>
                </td>
                <td>{wordMeasured(row, clipNumbers)[1]}</td>
                <td>{wordFlown(row, clipNumbers)}</td>
                <td>
                  <Show
                    when={fieldOf(row)}
                    fallback={
                      <button
                        type="button"
                        class="link"
                        onClick={() => void giveSheet(page, row, props.desk.measuring().trueHz ?? Number.NaN)}
                      >
                        {t.toSheet}
                      </button>
                    }
                  >
                    {(field) => (
                      <button
                        type="button"
                        class="link"
                        aria-disabled={why() !== undefined}
                        title={why()}
                        onClick={() => giveTakeoff(page, field(), row)}
                      >
                        {t.toTakeoff}
                      </button>
                    )}
                  </Show>
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={rows().length === 0}>
        <p class="quiet">{t.givesNone}</p>
      </Show>
      <Show when={why() && rows().some(fieldOf)}>
        <p class="quiet">{why()}</p>
      </Show>
    </section>
  );
}
