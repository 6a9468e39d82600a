/** What was changed, in words: A since the last version kept of it, or one version against another. */
import { createMemo, For, Show } from 'solid-js';
import { useDocument, useServices } from '../../app/page.ts';
import { findLastKept, VERSION_LETTERS } from '../../document/versions.ts';
import type { Change } from '../../engine/compare.ts';
import { soften } from '../../ui/numbers.ts';
import type { CompareState } from './compare-state.ts';
import { compareTexts as c } from './words.ts';

export function CompareChanges(props: { state: CompareState }) {
  const doc = useDocument();
  const services = useServices();
  const since = createMemo(() => {
    const place = findLastKept(doc.versions());
    const version = doc.versions()[place];
    if (!version) return undefined;
    return {
      title: c.changesSince(VERSION_LETTERS[place], version.name),
      list: props.state.comparing()?.changes(version.file, doc.file()) ?? [],
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
  // files speak of blocks and names in code, people of shapes and athletes
  const wordOf = ({ field, words, before, after }: Change): string => {
    const nameOf = (id: unknown): string =>
      services.presets.athletes.find((one) => one.id === id)?.athlete.name ?? String(id);
    if (field === 'athlete.ref' && before !== undefined && after !== undefined)
      return c.athleteIs(nameOf(before), nameOf(after));
    const shapes = { ...doc.file().shapes, ...services.presets.shapes };
    const title = (id: string): string => {
      const known = shapes[id]?.title;
      return known ? soften(known) : id;
    };
    const named = /"([^"]+)"/g;
    return [...words.matchAll(named)]
      .reduce((text, [quoted, id]) => text.replace(quoted, `(${title(id)})`), words)
      .replace(/^block (\d+)/, (_, n: string) => c.shapeOf(n))
      .replace(' -> ', ' → ');
  };
  const part = (section: { title: string; list: readonly Change[] }) => (
    <section>
      <h3>{section.title}</h3>
      <Show when={section.list.length > 0} fallback={<p class="quiet">{c.noChanges}</p>}>
        <ul>
          <For each={section.list}>{(one) => <li>{wordOf(one)}</li>}</For>
        </ul>
      </Show>
    </section>
  );
  return (
    <div class="compare-changes">
      <Show when={since()} fallback={<p class="quiet">{c.noKept}</p>}>
        {(section) => part(section())}
      </Show>
      <Show when={between()}>{(section) => part(section())}</Show>
    </div>
  );
}
