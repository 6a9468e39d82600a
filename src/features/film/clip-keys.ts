/** Keys of a clip: frames, marks, and the figure held away. */
import { onCleanup, onMount } from 'solid-js';
import type { ClipDesk } from './clip-state.ts';

const TYPED = 'input:not([type="radio"], [type="checkbox"], [type="range"]), textarea, select, [contenteditable]';
/** these have arrow keys of their own */
const OWN_ARROWS = '[data-own-keys], [role="tab"], input';
/** a peg that has the focus moves itself */
const PEG_KEYS = new Set(['ArrowLeft', 'ArrowRight', ',', '.', 'Delete', 'Backspace']);
const STEP = 0.01;
const BIG = 0.1;

/** Returns what the floor does with a key. `menu`: the list of what can be marked. */
export function useClipKeys(desk: ClipDesk, menu: () => void): (e: KeyboardEvent) => void {
  const frameBy = (n: number): void => desk.setFrame(desk.frame() + n);
  const markNext = (): void => {
    const [next] = desk.wanted();
    if (next) desk.mark(next.kind, next.quarters);
  };
  const takeOff = (): void => {
    const here = desk.measuring().marks.filter(({ frame }) => frame === desk.frame());
    const last = here.at(-1);
    if (last) desk.takeOff(last);
  };
  const isUnderWay = (): boolean => (desk.opening.work() ?? desk.opening.live()) !== undefined;
  const onKey = (e: KeyboardEvent): void => {
    const { target } = e;
    if (e.ctrlKey || e.metaKey || e.altKey || document.querySelector('dialog[open]')) return;
    if (!(target instanceof Element) || target.closest(TYPED)) return;
    if (target.closest('.clip-peg') && PEG_KEYS.has(e.key)) return;
    const step = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    const isButton = target.closest('button, summary, input, [role="menuitem"]') !== null;
    if (!desk.frames()) {
      if (e.key !== 'Escape' || !isUnderWay()) return;
      desk.opening.cancel();
    } else if (e.key === ',' || e.key === '.') frameBy(e.key === ',' ? -1 : 1);
    else if (e.key === 'm') markNext();
    else if (e.key === 'M') menu();
    else if (e.key === 'b' || e.key === 'B') desk.setBlursHere(!desk.blursHere());
    else if (e.key === ' ' && !isButton) desk.setAway(true);
    else if (e.key === 'Escape' && isUnderWay()) desk.opening.cancel();
    else if (e.key === 'Escape' && desk.hand() !== 'look') desk.abandonHand();
    else if (target.closest(OWN_ARROWS)) return;
    else if (step) {
      desk.time.play.pause();
      desk.time.moveBy(step * (e.shiftKey ? BIG : STEP));
    } else if (e.key === 'Delete') takeOff();
    else if (e.key === 'Home') desk.setFrame(0);
    else if (e.key === 'End') desk.setFrame(Number.MAX_SAFE_INTEGER);
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  const onUp = (e: KeyboardEvent): void => {
    if (e.key === ' ') desk.setAway(false);
  };
  const onBlur = (): void => desk.setAway(false);
  onMount(() => {
    window.addEventListener('keydown', onKey, true);
    window.addEventListener('keyup', onUp, true);
    window.addEventListener('blur', onBlur);
    onCleanup(() => {
      window.removeEventListener('keydown', onKey, true);
      window.removeEventListener('keyup', onUp, true);
      window.removeEventListener('blur', onBlur);
      desk.setAway(false);
    });
  });
  return onKey;
}
