/** The sentences of all versions under each other: the coloured words stand in columns of meaning, so they can be read across. */
import { createSignal, For, type JSX, Show } from 'solid-js';
import { Clauses } from '../../app/clauses.tsx';
import { clausesOf, speakVerdict } from '../../app/say/sentence-words.ts';
import type { CompareState, FlownVersion } from './compare-state.ts';
import { VersionTag } from './version-tag.tsx';
import { useVerdict } from './version-verdict.ts';
import { compareTexts as c } from './words.ts';

export function VersionRows(props: { state: CompareState; actions: boolean; beside?: JSX.Element }) {
  return (
    <ul class="version-rows" aria-label={c.versions}>
      <For each={props.state.flown().map((f) => f.letter)}>
        {(letter, i) => (
          <Show when={props.state.flown()[i()]}>
            {(one) => (
              <li classList={{ paired: one() === props.state.base() || one() === props.state.other() }}>
                <VersionTag letter={letter} />
                <Show when={letter !== 'A'} fallback={<span class="version-name">{one().name}</span>}>
                  <VersionName one={one()} state={props.state} />
                </Show>
                <VersionSentence one={one()} state={props.state} />
                <Show when={letter === 'A'}>{props.beside}</Show>
                <Show when={props.actions && letter !== 'A'}>
                  <VersionActions letter={letter} state={props.state} />
                </Show>
              </li>
            )}
          </Show>
        )}
      </For>
    </ul>
  );
}

function VersionName(props: { one: FlownVersion; state: CompareState }) {
  const [typed, setTyped] = createSignal<string>();
  const take = (): void => {
    const name = typed();
    setTyped(undefined);
    if (name !== undefined && name.trim() !== '' && name !== props.one.name) props.state.rename(props.one.letter, name);
  };
  return (
    <input
      class="version-name"
      aria-label={`${c.rename} ${props.one.letter}`}
      value={typed() ?? props.one.name}
      maxLength={60}
      title={props.one.name}
      onInput={(e) => setTyped(e.currentTarget.value)}
      onBlur={take}
      onKeyDown={(e) => {
        if (e.key === 'Enter') e.currentTarget.blur();
        else if (e.key === 'Escape') {
          setTyped(undefined);
          e.currentTarget.value = props.one.name;
        } else return;
        e.preventDefault();
        e.stopPropagation();
      }}
    />
  );
}

function VersionSentence(props: { one: FlownVersion; state: CompareState }) {
  const verdict = useVerdict(
    () => props.one,
    () => props.state,
  );
  const letters = (): number => {
    const said = verdict();
    return said ? speakVerdict(said).length : 1;
  };
  return (
    <p class="version-sentence" style={{ '--letters': letters() }}>
      <Show when={verdict()} fallback={<span class="fault">{c.failed(props.one.letter, props.one.fault ?? '')}</span>}>
        {(o) => <Clauses clauses={clausesOf(o())} />}
      </Show>
    </p>
  );
}

export function VersionActions(props: { letter: FlownVersion['letter']; state: CompareState }) {
  return (
    <span class="version-actions">
      <button type="button" class="plain" onClick={() => props.state.swap(props.letter)}>
        {c.swap(props.letter)}
      </button>
      <button type="button" class="plain" onClick={() => props.state.promote(props.letter)}>
        {c.promote(props.letter)}
      </button>
      <button type="button" class="plain" onClick={() => props.state.remove(props.letter)}>
        {c.remove(props.letter)}
      </button>
    </span>
  );
}
