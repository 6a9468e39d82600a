/** The size of an element or of the window, as signals. */
import { type Accessor, createSignal, onCleanup, onMount } from 'solid-js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export function useSize(element: () => HTMLElement): Accessor<Size> {
  const [size, setSize] = createSignal<Size>(
    { width: 0, height: 0 },
    { equals: (a, b) => a.width === b.width && a.height === b.height },
  );
  onMount(() => {
    const read = (): void => {
      const { clientWidth, clientHeight } = element();
      setSize({ width: clientWidth, height: clientHeight });
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(element());
    onCleanup(() => observer.disconnect());
  });
  return size;
}

export type Device = 'bench' | 'tablet' | 'phone';

/** a page zoomed in with a mouse has little room, but no fingers */
const WIDE = '(min-width: 1160px), (min-width: 960px) and (pointer: fine)';
/** a phone on its side is wide and low */
const MIDDLE = '(min-width: 700px) and (min-height: 500px)';

export const readDevice = (): Device =>
  matchMedia(WIDE).matches ? 'bench' : matchMedia(MIDDLE).matches ? 'tablet' : 'phone';

export function useDevice(): Accessor<Device> {
  const [wide, middle] = [matchMedia(WIDE), matchMedia(MIDDLE)];
  const [device, setDevice] = createSignal<Device>(readDevice());
  const again = (): void => {
    setDevice(readDevice());
  };
  for (const q of [wide, middle]) q.addEventListener('change', again);
  onCleanup(() => {
    for (const q of [wide, middle]) q.removeEventListener('change', again);
  });
  return device;
}
