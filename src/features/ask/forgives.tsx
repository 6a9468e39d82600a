/** How much the picked answer forgives: slips one at a time, each try, or the map; the share of the tries is always beside it. */
import { createSignal, For, Match, Show, Switch } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import type { AskState } from './ask-state.ts';
import { percent } from './ask-words.ts';
import type { MapState } from './map-state.ts';
import { MapChoices, MapView } from './map-view.tsx';
import { MarginBars, StudyRun } from './margin.tsx';
import { BalanceWords, StudyChoices } from './study-choices.tsx';
import type { StudyState } from './study-state.ts';
import { Tries, TriesShare } from './tries.tsx';
import { askTexts as t } from './words.ts';

const VIEWS = ['slips', 'tries', 'map'] as const;
type View = (typeof VIEWS)[number];

/** Bars that a short ground has room for. */
const BARS = 5;
const MAP = 150;
const PAD = 20;

export function Forgives(props: {
  ask: AskState;
  study: StudyState;
  map: MapState;
  left: number;
  middle: number;
  right: number;
  height: number;
}) {
  const [view, setView] = createSignal<View>('slips');
  const inner = (): number => props.height - 12;
  const name = (): string => props.study.report()?.of ?? props.ask.subject()?.name ?? t.ofNow;
  return (
    <section class="ask-foot" style={{ 'min-height': `${props.height}px` }} aria-label={t.forgives(name())}>
      <div class="foot-left" style={{ width: `${props.left}px` }}>
        <h3>{t.forgives(name())}</h3>
        <p class="quiet">{t.forgivesHow}</p>
        <fieldset class="ask-switch">
          <legend class="spoken">{t.footShows}</legend>
          <For each={VIEWS}>
            {(one) => (
              <button type="button" aria-pressed={view() === one} onClick={() => setView(one)}>
                {t.footViews[one]}
              </button>
            )}
          </For>
        </fieldset>
        <StudyRun ask={props.ask} study={props.study} />
      </div>
      <div class="foot-middle" style={{ width: `${props.middle}px` }}>
        <Switch>
          <Match when={view() === 'slips'}>
            <MarginBars ask={props.ask} study={props.study} most={BARS} />
            <StudyChoices ask={props.ask} study={props.study} />
            <BalanceWords ask={props.ask} study={props.study} />
          </Match>
          <Match when={view() === 'tries'}>
            <Tries study={props.study} width={props.middle - PAD} height={Math.max(180, inner() - 40)} />
          </Match>
          <Match when={view() === 'map'}>
            <MapChoices ask={props.ask} map={props.map} />
            <div class="ask-map-place beside">
              <MapView
                ask={props.ask}
                map={props.map}
                width={Math.round(props.middle * 0.62)}
                height={Math.max(220, inner() - 60)}
              />
            </div>
          </Match>
        </Switch>
      </div>
      <div class="foot-right" style={{ width: `${props.right}px` }}>
        <div>
          <h3>
            {t.tries(String(props.study.report()?.share?.n ?? props.study.tries()))}{' '}
            <span class="quiet">{t.triesHow(props.study.report()?.balanced ? t.on : t.off)}</span>
          </h3>
          <Show when={view() !== 'tries'}>
            <BigShare ask={props.ask} study={props.study} />
            <TriesShare study={props.study} />
          </Show>
        </div>
        <Show when={view() !== 'map'}>
          <div class="foot-map">
            <MapView ask={props.ask} map={props.map} width={MAP} height={MAP} onOpen={() => setView('map')} />
          </div>
        </Show>
      </div>
    </section>
  );
}

/** The number a coach asks for; none where no share is what an athlete lands. */
function BigShare(props: { ask: AskState; study: StudyState }) {
  const report = () => props.study.report();
  const share = () => (report()?.reflex === undefined ? report()?.share : undefined);
  return (
    <Show when={share()}>
      {(s) => (
        <p class="big-share" classList={{ stale: props.study.stale() }}>
          <b>{formatNumber(s().share * s().n, 0)}</b> {t.ofTries(String(s().n), t.windows[report()?.kind ?? 'usual'])}
          <Show when={props.ask.picked() >= 0 && props.study.ownShare() !== undefined}>
            <span class="quiet"> {t.besideA(percent(props.study.ownShare() ?? 0))}</span>
          </Show>
        </p>
      )}
    </Show>
  );
}
