/** On the first visit one limb lifts by itself, so that it is seen what can be grabbed: once, and never after the first grab. */
import { type Accessor, createSignal, onCleanup, onMount } from 'solid-js';
import { readStored, writeStored } from '../../ui/stored.ts';

const KEY = 'shapeflight.grabbed';
/** ms at rest before it lifts, and how long it is up */
const REST = 1500;
const UP = 600;

const [grabbed, setGrabbed] = createSignal(readStored(KEY) !== null);
/** a limb was grabbed before, on this page or an earlier visit */
export const wasGrabbed: Accessor<boolean> = grabbed;

export function keepGrabbed(): void {
  if (grabbed()) return;
  setGrabbed(true);
  writeStored(KEY, 'yes');
}

/** `up`: the limb is lifted; `named`: its name is shown. With reduced motion the name alone appears, and stays. */
export function useFirstLift(): { up: Accessor<boolean>; named: Accessor<boolean> } {
  const [up, setUp] = createSignal(false);
  const [named, setNamed] = createSignal(false);
  onMount(() => {
    if (grabbed()) return;
    const isCalm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let timer: ReturnType<typeof setTimeout>;
    const show = (): void => {
      stop();
      if (grabbed()) return;
      setNamed(true);
      if (isCalm) return;
      setUp(true);
      timer = setTimeout(() => {
        setUp(false);
        setNamed(false);
      }, UP);
    };
    const wait = (): void => {
      clearTimeout(timer);
      timer = setTimeout(show, REST);
    };
    const stop = (): void => {
      clearTimeout(timer);
      for (const sign of ['pointermove', 'pointerdown', 'keydown']) window.removeEventListener(sign, wait);
    };
    for (const sign of ['pointermove', 'pointerdown', 'keydown'])
      window.addEventListener(sign, wait, { passive: true });
    wait();
    onCleanup(stop);
  });
  return { up: () => up() && !grabbed(), named: () => named() && !grabbed() };
}
