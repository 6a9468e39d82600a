/** Keys of a recording: the cursor on its ruler, the ends of the air, the next angle. */
import { onCleanup, onMount } from 'solid-js';
import type { RecordingState } from './recording-state.ts';

const TYPED = 'input:not([type="radio"]), textarea, select, [contenteditable]';
const OWN_KEYS = '.rec-end, [role="tab"], input[type="radio"]';
const STEP = 0.01;
const BIG = 0.1;

/** Returns what the floor does with a key. */
export function useRecordingKeys(state: RecordingState): (e: KeyboardEvent) => void {
  const onKey = (e: KeyboardEvent): void => {
    const { target } = e;
    if (e.ctrlKey || e.metaKey || e.altKey || document.querySelector('dialog[open]')) return;
    if (!(target instanceof Element) || target.closest(TYPED)) return;
    const ends = { '[': 'start', ']': 'end' }[e.key];
    const step = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (ends) document.querySelector<HTMLElement>(`.rec-end[data-end="${ends}"]`)?.focus();
    else if (e.key === 'n' || e.key === 'N') state.nextAngle();
    else if (e.key === ' ' && !target.closest('button, summary, input')) state.play.toggle();
    else if (target.closest(OWN_KEYS)) return;
    else if (step) {
      state.play.pause();
      state.setCursor(Math.round((state.cursor() + step * (e.shiftKey ? BIG : STEP)) * 1000) / 1000);
    } else if (e.key === 'Home') state.setCursor(0);
    else if (e.key === 'End') state.setCursor(Number.POSITIVE_INFINITY);
    else if (e.key === 'Escape' && state.work()) state.cancel();
    else return;
    e.preventDefault();
    e.stopPropagation();
  };
  onMount(() => {
    window.addEventListener('keydown', onKey, true);
    onCleanup(() => window.removeEventListener('keydown', onKey, true));
  });
  return onKey;
}
