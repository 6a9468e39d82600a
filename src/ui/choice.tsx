/** One of a few, as buttons side by side under a legend. */
import { For, type JSX } from 'solid-js';

export function Choice<T extends string>(props: {
  legend: string;
  names: readonly T[];
  words: Readonly<Record<T, string>>;
  chosen: T | undefined;
  choose: (name: T) => void;
  children?: JSX.Element;
}) {
  return (
    <fieldset class="choice">
      <legend>{props.legend}</legend>
      <ChoiceButtons {...props} />
      {props.children}
    </fieldset>
  );
}

export function ChoiceButtons<T extends string>(props: {
  names: readonly T[];
  words: Readonly<Record<T, string>>;
  chosen: T | undefined;
  choose: (name: T) => void;
}) {
  return (
    <For each={props.names}>
      {(name) => (
        <button type="button" aria-pressed={props.chosen === name} onClick={() => props.choose(name)}>
          {props.words[name]}
        </button>
      )}
    </For>
  );
}
