/** What differs between two versions, and by how much: numbers, and a bar to the right for more, to the left for less. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import { wordEnding } from '../../app/say/sentence-words.ts';
import { formatCsv, listRows, speakRows } from './compare-rows.ts';
import type { CompareState, FlownVersion, Letter } from './compare-state.ts';
import { VersionTag } from './version-tag.tsx';
import { useVerdict } from './version-verdict.ts';
import { compareTexts as c } from './words.ts';

const hue = (key: string): string =>
  /^(twists|peakTwistRate|longMoment)$/.test(key)
    ? 'twist'
    : /^(somersaults|peakSomersaultRate|lateralMoment)$/.test(key)
      ? 'som'
      : /^(greatestTilt|landingTilt|frontBackMoment)$/.test(key)
        ? 'tilt'
        : '';

/** Which two are compared. */
export function PairChoice(props: { state: CompareState }) {
  const letters = (): Letter[] =>
    props.state
      .flown()
      .filter((f) => f.result)
      .map((f) => f.letter);
  const choice = (label: string, value: Letter, set: (l: Letter) => void) => (
    <label>
      <span class="spoken">{label}</span>
      <select value={value} onChange={(e) => set(e.currentTarget.value as Letter)}>
        <For each={letters()}>
          {(l) => (
            <option value={l} selected={l === value}>
              {l}
            </option>
          )}
        </For>
      </select>
    </label>
  );
  const base = (): Letter => props.state.base().letter;
  const other = (): Letter => props.state.other()?.letter ?? 'B';
  return (
    <span class="pair-choice">
      <Show
        when={letters().length > 2}
        fallback={
          <>
            <VersionTag letter={other()} /> {c.against('', '').trim()} <VersionTag letter={base()} />
          </>
        }
      >
        {choice(c.otherChoice, other(), (l) => props.state.choosePair(l === base() ? other() : base(), l))}
        {c.against('', '').trim()}
        {choice(c.baseChoice, base(), (l) => props.state.choosePair(l, l === other() ? base() : other()))}
      </Show>
    </span>
  );
}

export function CompareTable(props: { state: CompareState }) {
  const rows = createMemo(() => listRows(props.state.rows()));
  const verdictA = useVerdict(
    () => props.state.base(),
    () => props.state,
  );
  const verdictB = useVerdict(
    () => props.state.other(),
    () => props.state,
  );
  return (
    <Show when={props.state.other()}>
      {(other) => (
        <div class="compare-table">
          <table>
            <caption class="spoken">{c.against(other().letter, props.state.base().letter)}</caption>
            <thead>
              <tr>
                <th scope="col">{c.columns.measure}</th>
                <th scope="col">
                  <VersionTag letter={props.state.base().letter} small />
                </th>
                <th scope="col">
                  <VersionTag letter={other().letter} small />
                </th>
                <th scope="col" colSpan={2} class="wide">
                  <span class="spoken">{c.columns.difference}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              <tr data-row="ending">
                <th scope="row">{c.ending}</th>
                <td class="endings" colSpan={4}>
                  <p>
                    <VersionTag letter={props.state.base().letter} small /> {wordEnding(verdictA())}
                  </p>
                  <p>
                    <VersionTag letter={other().letter} small /> {wordEnding(verdictB())}
                  </p>
                </td>
              </tr>
              <For each={rows()}>
                {(row) => (
                  <tr data-row={row.key}>
                    <th scope="row" title={/Moment$/.test(row.key) ? c.momentsAt[props.state.align()] : undefined}>
                      {row.title}
                      <Show when={row.unit}>
                        <span class="unit">{row.unit}</span>
                      </Show>
                    </th>
                    <td>{row.base}</td>
                    <td>{row.other}</td>
                    <td class="difference" title={row.word}>
                      {row.difference}
                      <Show when={row.word && row.word !== c.same}>
                        <span classList={{ spoken: !row.isWordShown }}> {row.word}</span>
                      </Show>
                    </td>
                    <td class={`bar-cell ${hue(row.key)}`} aria-hidden="true">
                      <span class="difference-bar">
                        <i
                          classList={{ more: row.share > 0, less: row.share < 0 }}
                          style={{ '--share': Math.min(Math.abs(row.share), 1) }}
                        />
                      </span>
                    </td>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
          <p class="spoken" role="status" data-testid="compare-spoken">
            {c.spoken(other().letter, props.state.base().letter, speakRows(rows()) || c.spokenSame)}
          </p>
        </div>
      )}
    </Show>
  );
}

/** The table for a sheet of the reader's own. */
export function CopyTable(props: { state: CompareState; short?: boolean }) {
  const [copied, setCopied] = createSignal('');
  const nameOf = (f: FlownVersion): string => {
    const how = c.heldShort[props.state.held()];
    return `${f.letter} ${f.name}${how && f.letter !== 'A' ? ` (${how})` : ''}`;
  };
  const copy = async (): Promise<void> => {
    const names = props.state.flown().flatMap((f) => (f.result ? [nameOf(f)] : []));
    const text = formatCsv(props.state.allRows(), names);
    try {
      await navigator.clipboard.writeText(text);
      setCopied(c.copied);
    } catch {
      setCopied(c.notCopied);
    }
    setTimeout(() => setCopied(''), 4000);
  };
  return (
    <>
      <button
        type="button"
        class="plain copy"
        aria-label={c.copy}
        title={c.copy}
        disabled={props.state.allRows().length === 0}
        onClick={() => void copy()}
      >
        {props.short ? c.copyShort : c.copy}
      </button>
      <span class="copied" role="status">
        {copied()}
      </span>
    </>
  );
}
