/** Which flight of a chain everything but the whole skill is about. Nothing for a skill of one flight. */
import { createMemo, For, Show } from 'solid-js';
import { legsOf } from '../../../sim/math/phases.ts';
import { useDocument } from '../page.ts';
import { texts } from '../words.ts';

const t = texts.legs;

export function LegPick() {
  const doc = useDocument();
  const titles = createMemo(() => {
    const file = doc.chain();
    return legsOf(file).map(({ flight }, i) => {
      const phase = file.phases[flight];
      return (phase.kind === 'flight' && phase.title) || t.untitled(i + 1);
    });
  });
  return (
    <Show when={titles().length > 1}>
      <select
        class="leg-pick"
        aria-label={t.label}
        value={doc.leg()}
        onChange={(e) => doc.setLeg(Number(e.currentTarget.value))}
      >
        <For each={titles()}>
          {(title, i) => (
            <option value={i()} selected={i() === doc.leg()}>
              {t.option(i() + 1, titles().length, title)}
            </option>
          )}
        </For>
      </select>
    </Show>
  );
}
