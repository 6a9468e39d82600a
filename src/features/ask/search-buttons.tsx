/** The ways to ask: for answers, for the most forgiving, for the most twist; how far a search has come, and the way to end it. */
import { Show } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import type { AskState } from './ask-state.ts';
import { percent } from './ask-words.ts';
import type { SearchKind } from './search-found.ts';
import { askTexts as t } from './words.ts';

export function SearchButtons(props: { state: AskState }) {
  const ready = (): boolean => props.state.aim().aim !== undefined && props.state.chosen().length > 0;
  /** one filled button: that of the answer, once there is one */
  const isFilled = (): boolean => props.state.pickedSolution() === undefined;
  const button = (kind: SearchKind, title: string) => (
    <button
      type="button"
      classList={{ main: kind === 'meet' && isFilled() }}
      disabled={!ready()}
      title={t.searchesMean[kind]}
      onClick={() => props.state.ask(kind)}
    >
      {title}
    </button>
  );
  return (
    <div class="ask-run">
      <Show
        when={props.state.search.progress()}
        fallback={
          <>
            {button('meet', props.state.found() ? t.askAgain : t.searches.meet)}
            {button('forgiving', t.searches.forgiving)}
            {button('twist', t.searches.twist)}
          </>
        }
      >
        {(p) => (
          <>
            <span class="ask-progress">
              <progress
                {...(p().all > 0 ? { max: p().all, value: p().done } : {})}
                aria-label={t.searchesMean[p().kind]}
              />
              {sayProgress(p())}
            </span>
            <button type="button" onClick={() => props.state.search.stop()}>
              {t.cancel}
            </button>
          </>
        )}
      </Show>
    </div>
  );
}

function sayProgress({ kind, done, all, best }: { kind: SearchKind; done: number; all: number; best: number }): string {
  if (kind === 'twist')
    return done > 0 ? t.searching.twist(formatNumber(done, 2), '', formatNumber(best, 2)) : t.searching.begins;
  if (all === 0 || Number.isNaN(best)) return t.searching.begins;
  const words = t.searching[kind];
  return words(String(Math.min(done + 1, all)), String(all), kind === 'meet' ? String(best) : percent(best));
}
