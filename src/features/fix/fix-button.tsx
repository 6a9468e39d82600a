/** The button that looks for the one change that lands it; while it looks, how far it is and the way to stop. */
import { onCleanup, onMount, Show } from 'solid-js';
import { useDocument } from '../../app/page.ts';
import { useWholeState } from '../../app/whole-state.ts';
import { listen } from '../../ui/listen.ts';
import { useFixState } from './fix-state.ts';
import { fixTexts as t } from './words.ts';

export function FixButton() {
  const fix = useFixState();
  const whole = useWholeState();
  const doc = useDocument();
  onMount(() => {
    // what is in a hand, and what is over the page, have an Escape of their own
    const onKey = (e: KeyboardEvent): void => {
      if (e.key !== 'Escape' || e.defaultPrevented || !fix.progress() || doc.isHeld()) return;
      if (document.querySelector('dialog[open]')) return;
      e.preventDefault();
      fix.stop();
    };
    onCleanup(listen({ keydown: onKey }));
  });
  return (
    <>
      <Show when={fix.canAsk(whole.verdict())}>
        <button type="button" title={t.fixMeans} onClick={() => fix.ask()}>
          {t.fix}
        </button>
      </Show>
      <Show when={fix.progress()}>
        {(at) => (
          <span class="fixing" role="status">
            {t.working(at().done, at().all)}{' '}
            <button type="button" onClick={() => fix.stop()}>
              {t.stop}
            </button>
          </span>
        )}
      </Show>
      <Show when={fix.old()}>
        <button type="button" onClick={() => fix.keepOld()}>
          {t.keepOld}
        </button>
      </Show>
    </>
  );
}
