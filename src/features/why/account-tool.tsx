/** Why: what just changed, where the tilt came from, twist or wobble, what the eyes see, who holds the momentum. */
import { createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import { Composition } from '../../app/composition.tsx';
import { type CutValues, useCut, useExplanation } from '../../app/cut-values.ts';
import { findStory } from '../../app/first-rows.ts';
import { useFlight } from '../../app/page.ts';
import { resultTexts } from '../../app/result-words.ts';
import { useSensitivity } from '../../app/sensitivity.ts';
import { Term } from '../../app/terms/term.tsx';
import type { ToolProps } from '../../app/tool.ts';
import { TabPanel, ToolTabs } from '../../ui/tabs.tsx';
import { say } from '../../ui/units.ts';
import { type AccountState, useAccountState } from './account-state.ts';
import { LoopPicture } from './loop-picture.tsx';
import { MomentumParts } from './momentum-parts.tsx';
import { findLoop } from './shape-loop.ts';
import { SightStrip } from './sight-strip.tsx';
import { TiltBars } from './tilt-bars.tsx';
import { WHY_TABS, type WhyTab, whyOpening } from './why-opening.ts';
import { WobbleMap } from './wobble-map.tsx';
import { accountTexts as a } from './words.ts';

type Parts = ToolProps & { state: AccountState; cut: CutValues; words: string };

export function AccountTool(props: ToolProps) {
  const state = useAccountState();
  const cut = useCut();
  const explanation = useExplanation();
  return (
    <div class="account" classList={{ touch: props.device !== 'bench' }}>
      <Show
        when={props.device === 'bench'}
        fallback={<TouchAccount {...props} state={state} cut={cut()} words={explanation()} />}
      >
        <WideAccount {...props} state={state} cut={cut()} words={explanation()} />
      </Show>
    </div>
  );
}

function Changed(props: { words: string }) {
  const sensitivity = useSensitivity();
  return (
    <div>
      <p class="account-changed">
        <b>{a.changed}</b> {props.words || a.nothingYet}
      </p>
      <Show when={sensitivity.parts()}>
        {(parts) => (
          <p class="account-changed" title={resultTexts.sensitive.how}>
            <b>{resultTexts.sensitive.title}</b> {parts().join('; ')}.
          </p>
        )}
      </Show>
    </div>
  );
}

function Momentum(props: Parts) {
  const none = (): boolean => !(props.cut.momentum > 0.05);
  return (
    <section class="account-momentum">
      <h3>
        <Term name="angularMomentum">{a.momentumTitle}</Term>{' '}
        <span class="number">{none() ? '' : say('momentum', props.cut.momentum)}</span>
      </h3>
      <Composition cut={props.cut} kind="momentum" />
      <p class="quiet">{none() ? a.noMomentumHere : a.momentumHint}</p>
    </section>
  );
}

/** Of the flight shown, where it turns by its way through shapes alone. */
function useLoop() {
  const flight = useFlight();
  const loop = createMemo(() => {
    const { frames, flight: flown } = flight.result();
    return findLoop(
      frames,
      flown.body.angles.map((one) => one.name),
    );
  });
  return loop;
}

function useOpening() {
  const flight = useFlight();
  const opening = createMemo(() => whyOpening(findStory(flight.result().frames)));
  return opening;
}

const MAP = 416;
const SIGHT = 84;
const PARTS = 92;

/** Laptop: the strip is under the ruler, the account under it, the map at the right. */
function WideAccount(props: Parts) {
  const left = (): number => props.timeLeft + props.axis.width;
  const mapWidth = (): number => Math.max(280, props.width - left() - 44);
  const loop = useLoop();
  const opening = useOpening();
  const isTilt = (): boolean => opening().tab === 'tilt';
  // where all turning is about one axis, the tilt of this map is not that of the account beside it
  const [isMapAsked, setMapAsked] = createSignal(false);
  const foot = () => (
    <div class="account-foot">
      <Changed words={props.words} />
      <Momentum {...props} />
    </div>
  );
  return (
    <div class="account-wide">
      <div class="account-left" style={{ width: `${left()}px` }}>
        <div class="account-row" style={{ height: `${SIGHT}px` }}>
          <div class="row-title">
            <h3>{a.sightTitle}</h3>
            <p class="quiet" title={a.sightHow}>
              {a.seen}, {a.why.behind} …
            </p>
          </div>
          <SightStrip state={props.state} axis={props.axis} left={props.timeLeft} tall={26} />
        </div>
        <MomentumParts axis={props.axis} left={props.timeLeft} height={PARTS} opensAbout={opening().axis} />
        <div class="account-under">
          <Show when={!isTilt()}>{foot()}</Show>
          <h3>{a.tabs.tilt}</h3>
          <TiltBars state={props.state} stacked={false} />
          <Show when={isTilt()}>{foot()}</Show>
        </div>
      </div>
      <section class="account-right" aria-label={a.mapTitle} style={{ width: `${Math.max(MAP, mapWidth() + 24)}px` }}>
        <Show
          when={loop()}
          fallback={
            <>
              <h3>
                <Term name="wobble">{a.mapTitle}</Term>
              </h3>
              <Show
                when={isTilt() || isMapAsked()}
                fallback={
                  <button type="button" onClick={() => setMapAsked(true)}>
                    {a.showMap}
                  </button>
                }
              >
                <WobbleMap state={props.state} width={mapWidth()} height={Math.max(170, props.height - 172)} />
                <p class="quiet map-hint">{a.mapHint}</p>
              </Show>
            </>
          }
        >
          {(found) => (
            <>
              <h3>{a.loop.title}</h3>
              <LoopPicture loop={found()} width={mapWidth()} height={Math.max(170, props.height - 150)} />
            </>
          )}
        </Show>
      </section>
    </div>
  );
}

const TAB_HEIGHT = 48;

function TouchAccount(props: Parts) {
  const opening = useOpening();
  const [chosen, setTab] = createSignal<WhyTab>();
  const tab = (): WhyTab => chosen() ?? opening().tab;
  const room = (): number => props.height - TAB_HEIGHT;
  const phone = (): boolean => props.device === 'phone';
  const loop = useLoop();
  return (
    <div class="account-touch">
      <ToolTabs id="account" label={a.changed} names={WHY_TABS} titles={a.tabsShort} chosen={tab()} choose={setTab} />
      <TabPanel class="account-panel" id="account" chosen={tab()} heightPx={room()}>
        <Switch>
          <Match when={tab() === 'tilt'}>
            <TiltBars state={props.state} stacked={phone()} />
          </Match>
          <Match when={tab() === 'map'}>
            <div class="touch-map" classList={{ beside: !phone() }}>
              <WobbleMap
                state={props.state}
                width={phone() ? props.width - 20 : Math.round(props.width * 0.58)}
                height={Math.max(170, phone() ? room() - 84 : room() - 12)}
              />
            </div>
            <p class="quiet map-hint">
              <Term name="wobble">{a.tabs.map}</Term>: {a.mapHint}
            </p>
          </Match>
          <Match when={tab() === 'sight'}>
            <SightStrip state={props.state} axis={props.axis} left={0} tall={44} />
            <p class="quiet account-how">{a.sightHow}</p>
          </Match>
          <Match when={tab() === 'momentum'}>
            <Show when={loop()}>
              {(found) => <LoopPicture loop={found()} width={Math.min(props.width - 28, 420)} height={240} />}
            </Show>
            <MomentumParts axis={props.axis} left={0} height={phone() ? 150 : 110} opensAbout={opening().axis} />
            <Changed words={props.words} />
            <Momentum {...props} />
          </Match>
        </Switch>
      </TabPanel>
    </div>
  );
}
