/** Places of the bench that an open tool fills with parts of its own: the headline's, that of the take-off values, that beside the flight. */
import { type Accessor, createSignal } from 'solid-js';

type Name = 'headline' | 'before' | 'cut';

export type ToolPlaces = Readonly<Record<Name, Accessor<HTMLElement | undefined>>> & {
  /** undefined: it is no longer on the page */
  put(name: Name, element: HTMLElement | undefined): void;
};

export function createToolPlaces(): ToolPlaces {
  const [headline, setHeadline] = createSignal<HTMLElement>();
  const [before, setBefore] = createSignal<HTMLElement>();
  const [cut, setCut] = createSignal<HTMLElement>();
  const setters = { headline: setHeadline, before: setBefore, cut: setCut };
  return { headline, before, cut, put: (name, element) => void setters[name](() => element) };
}
