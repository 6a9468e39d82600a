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

type Device = 'bench' | 'tablet' | 'phone';

export function useDevice(): Accessor<Device> {
  const wide = matchMedia('(min-width: 1160px)');
  const middle = matchMedia('(min-width: 700px)');
  const read = (): Device => (wide.matches ? 'bench' : middle.matches ? 'tablet' : 'phone');
  const [device, setDevice] = createSignal<Device>(read());
  const again = (): void => {
    setDevice(read());
  };
  for (const q of [wide, middle]) q.addEventListener('change', again);
  onCleanup(() => {
    for (const q of [wide, middle]) q.removeEventListener('change', again);
  });
  return device;
}
