/** What was changed, in words: A since the last version kept of it, or one version against another. */
import { createMemo, For, Show } from 'solid-js';
import { findLastKept, VERSION_LETTERS } from '../../document/versions.ts';
import { compareTexts as c } from '../../texts/compare.ts';
import type { Bench } from '../bench.ts';
import type { CompareState } from './compare-state.ts';

export function CompareChanges(props: { bench: Bench; state: CompareState }) {
  const since = createMemo(() => {
    const place = findLastKept(props.bench.versions());
    const version = props.bench.versions()[place];
    if (!version) return undefined;
    return {
      title: c.changesSince(VERSION_LETTERS[place], version.name),
      list: props.state.comparing()?.changes(version.file, props.bench.file()) ?? [],
    };
  });
  const between = createMemo(() => {
    const [base, other] = [props.state.base(), props.state.other()];
    if (!base.result || !other?.result) return undefined;
    return {
      title: c.changesAgainst(base.letter, other.letter),
      list: props.state.comparing()?.changes(base.result.file, other.result.file) ?? [],
    };
  });
  const part = (told: { title: string; list: readonly { words: string }[] }) => (
    <section>
      <h3>{told.title}</h3>
      <Show when={told.list.length > 0} fallback={<p class="quiet">{c.noChanges}</p>}>
        <ul>
          <For each={told.list}>{(one) => <li>{one.words.replace(' -> ', ' → ')}</li>}</For>
        </ul>
      </Show>
    </section>
  );
  return (
    <div class="compare-changes">
      <Show when={since()} fallback={<p class="quiet">{c.noKept}</p>}>
        {(told) => part(told())}
      </Show>
      <Show when={between()}>{(told) => part(told())}</Show>
    </div>
  );
}
