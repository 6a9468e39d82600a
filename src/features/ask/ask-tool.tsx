/** Ask: what it needs (wanted, may change, answers) and how much it forgives (margin, tries, map). */
import { createEffect, createSignal, Match, onCleanup, onMount, Show, Switch } from 'solid-js';
import { keptState, type Page } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { TabPanel, ToolTabs } from '../../ui/tabs.tsx';
import { AnswerActions, Answers, AskButton } from './answers.tsx';
import { type AskState, makeAskState } from './ask-state.ts';
import { type MapState, makeMapState } from './map-state.ts';
import { MapChoices, MapView } from './map-view.tsx';
import { MarginBars, StudyRun } from './margin.tsx';
import { RulerSpans, SpanList } from './may-change.tsx';
import { BalanceWords, StudyChoices } from './study-choices.tsx';
import { makeStudyState, type StudyState } from './study-state.ts';
import { Tries } from './tries.tsx';
import { WantedFill, WantedLine } from './wanted-line.tsx';
import { askTexts as t } from './words.ts';

interface States {
  readonly ask: AskState;
  readonly study: StudyState;
  readonly map: MapState;
}

function makeStates(page: Page): States {
  const ask = makeAskState(page);
  const study = makeStudyState(page, ask);
  return { ask, study, map: makeMapState(page, ask, study) };
}

const useStates = keptState(makeStates);

type Parts = ToolProps & States;

export function AskTool(props: ToolProps) {
  const states = useStates();
  const [tab, setTab] = createSignal<TouchTab>('wanted');
  const wide = (): boolean => props.device === 'bench';
  createEffect(() => {
    states.study.setShown(wide() || tab() === 'margin');
    states.map.setShown(wide() || tab() === 'map');
  });
  onCleanup(() => {
    states.study.setShown(false);
    states.map.setShown(false);
  });
  return (
    <div class="ask" classList={{ touch: !wide() }}>
      <Show when={wide()} fallback={<TouchAsk {...props} {...states} tab={tab()} setTab={setTab} />}>
        <WideAsk {...props} {...states} />
      </Show>
    </div>
  );
}

const ROW = 28;
const SENTENCE = 40;
const CHOICES = 50;
const CAPTION = 150;
/** answers, margin, map, tries */
const PARTS = 4;

/** Laptop: the sentence over all; times on the ruler, margin and map in the middle; what may change left, answers right. */
function WideAsk(props: Parts) {
  // a part a task, so that opening never holds the page for long
  const [part, setPart] = createSignal(0);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const next = (): void => {
    timer = setTimeout(() => {
      if (setPart((n) => n + 1) < PARTS) next();
    });
  };
  onMount(next);
  onCleanup(() => clearTimeout(timer));
  const right = (): number => props.width - props.timeLeft - props.axis.width;
  const margin = (): number => Math.round(props.axis.width * 0.46);
  const map = (): number => props.axis.width - margin();
  const times = (): number => props.ask.chosen().filter(({ id }) => props.ask.inputOf(id)?.eventS !== undefined).length;
  const under = (): number => Math.max(200, props.height - SENTENCE - times() * ROW);
  return (
    <div class="ask-wide" style={{ height: `${props.height}px` }}>
      <div class="ask-said" style={{ 'min-height': `${SENTENCE}px` }}>
        <WantedLine state={props.ask} />
      </div>
      <div class="ask-columns">
        <section class="ask-left" style={{ width: `${props.timeLeft}px` }} aria-label={t.mayChange}>
          <h3>{t.mayChange}</h3>
          <p class="quiet">{t.mayHint}</p>
          <SpanList state={props.ask} width={props.timeLeft - 44} />
          <h3>{t.fillTitle}</h3>
          <WantedFill state={props.ask} />
        </section>
        <div class="ask-middle" style={{ width: `${props.axis.width}px` }}>
          <div style={{ height: `${times() * ROW}px` }} class="ask-ruler">
            <RulerSpans state={props.ask} axis={props.axis} left={0} row={ROW} />
          </div>
          <div class="ask-under">
            <section class="ask-margin" style={{ width: `${margin()}px` }} aria-label={t.margin}>
              <header>
                <h3>{t.margin}</h3>
                <StudyRun ask={props.ask} study={props.study} />
              </header>
              <Show when={part() >= 2}>
                <StudyChoices ask={props.ask} study={props.study} />
                <MarginBars ask={props.ask} study={props.study} />
                <BalanceWords ask={props.ask} study={props.study} />
              </Show>
            </section>
            <section class="ask-map-place beside" style={{ width: `${map()}px` }} aria-label={t.map}>
              <Show when={part() >= 3}>
                <MapChoices ask={props.ask} map={props.map} />
                <MapView
                  ask={props.ask}
                  map={props.map}
                  width={map() - CAPTION - 24}
                  height={Math.max(150, Math.min(420, under() - CHOICES - 14))}
                />
              </Show>
            </section>
          </div>
        </div>
        <div class="ask-right" style={{ width: `${right()}px` }}>
          <header>
            <h3>{t.answersTitle}</h3>
            <AnswerActions state={props.ask} />
            <AskButton state={props.ask} />
          </header>
          <Show when={part() >= 1}>
            <Answers state={props.ask} />
          </Show>
          <Show when={part() >= 4}>
            <Tries study={props.study} width={right() - 44} height={Math.max(140, Math.min(260, props.height - 260))} />
          </Show>
        </div>
      </div>
    </div>
  );
}

const TOUCH_TABS = ['wanted', 'answers', 'margin', 'map'] as const;
type TouchTab = (typeof TOUCH_TABS)[number];
const TAB_HEIGHT = 48;
const TOUCH_ROW = 48;

/** Tablet and phone: one thing at a time. */
function TouchAsk(props: Parts & { tab: TouchTab; setTab: (tab: TouchTab) => void }) {
  const phone = (): boolean => props.device === 'phone';
  const room = (): number => props.height - TAB_HEIGHT;
  const pad = (): number => (phone() ? 10 : 20);
  const plot = (): number => Math.round(phone() ? props.width - 2 * pad() : Math.min(520, props.width * 0.5));
  return (
    <div class="ask-touch">
      <ToolTabs
        id="ask"
        label={t.tabsLabel}
        titles={t.tabs}
        names={TOUCH_TABS}
        chosen={props.tab}
        choose={(tab) => props.setTab(tab)}
      />
      <TabPanel class="ask-panel" id="ask" chosen={props.tab} heightPx={room()}>
        <Switch>
          <Match when={props.tab === 'wanted'}>
            <WantedLine state={props.ask} />
            <div class="ask-row">
              <AskButton state={props.ask} />
              <WantedFill state={props.ask} />
            </div>
            <h3>{t.mayChange}</h3>
            <p class="quiet">{t.mayHint}</p>
            <div class="ask-bleed" style={{ margin: `0 ${-pad()}px` }}>
              <RulerSpans
                state={props.ask}
                axis={props.axis}
                left={0}
                row={phone() ? 2 * TOUCH_ROW : TOUCH_ROW}
                stacked={phone()}
              />
            </div>
            <SpanList state={props.ask} width={Math.min(props.width - 2 * pad() - 12, 460)} />
          </Match>
          <Match when={props.tab === 'answers'}>
            <div class="ask-row">
              <AskButton state={props.ask} />
              <AnswerActions state={props.ask} />
            </div>
            <Answers state={props.ask} />
          </Match>
          <Match when={props.tab === 'margin'}>
            <div class="touch-study" classList={{ beside: !phone() }}>
              <div>
                <StudyChoices ask={props.ask} study={props.study} />
                <StudyRun ask={props.ask} study={props.study} />
                <MarginBars ask={props.ask} study={props.study} />
                <BalanceWords ask={props.ask} study={props.study} />
              </div>
              <Tries
                study={props.study}
                width={phone() ? plot() : Math.round(props.width * 0.42)}
                height={Math.max(200, Math.min(300, room() - 110))}
              />
            </div>
          </Match>
          <Match when={props.tab === 'map'}>
            <MapChoices ask={props.ask} map={props.map} />
            <div class="touch-map" classList={{ beside: !phone() }}>
              <MapView
                ask={props.ask}
                map={props.map}
                width={plot()}
                height={Math.max(phone() ? 230 : 150, Math.min(420, room() - 84))}
              />
            </div>
          </Match>
        </Switch>
      </TabPanel>
    </div>
  );
}
