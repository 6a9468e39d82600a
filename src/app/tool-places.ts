/** Places of the bench that an open tool fills with parts of its own: the headline's, that of the take-off values, that beside the flight; the pictures', a strip under the floor, and what is beside the ruler. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';

export type ToolPlaceName = 'headline' | 'before' | 'cut' | 'pictures' | 'strip' | 'floor';

export type ToolPlaces = Readonly<Record<ToolPlaceName, Accessor<HTMLElement | undefined>>> & {
  /** undefined: it is no longer on the page */
  put(name: ToolPlaceName, element: HTMLElement | undefined): void;
  /** on touch what is under the floor has the most of the height, until the owner that asked is cleaned up */
  readonly isAirLow: Accessor<boolean>;
  lowerAir(): void;
};

export function createToolPlaces(): ToolPlaces {
  const [headline, setHeadline] = createSignal<HTMLElement>();
  const [before, setBefore] = createSignal<HTMLElement>();
  const [cut, setCut] = createSignal<HTMLElement>();
  const [pictures, setPictures] = createSignal<HTMLElement>();
  const [strip, setStrip] = createSignal<HTMLElement>();
  const [floor, setFloor] = createSignal<HTMLElement>();
  const setters = {
    headline: setHeadline,
    before: setBefore,
    cut: setCut,
    pictures: setPictures,
    strip: setStrip,
    floor: setFloor,
  };
  const [isAirLow, setAirLow] = createSignal(false);
  const lowerAir = (): void => {
    setAirLow(true);
    onCleanup(() => setAirLow(false));
  };
  return {
    isAirLow,
    lowerAir,
    headline,
    before,
    cut,
    pictures,
    strip,
    floor,
    put: (name, element) => void setters[name](() => element),
  };
}
