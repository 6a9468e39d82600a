/** Ask on tablet and phone: one thing at a time, in tabs. */
import { Match, Switch } from 'solid-js';
import type { ToolProps } from '../../app/tool.ts';
import { TabPanel, ToolTabs } from '../../ui/tabs.tsx';
import { AnswerTable } from './answer-table.tsx';
import type { AskState } from './ask-state.ts';
import type { MapState } from './map-state.ts';
import { MapChoices, MapView } from './map-view.tsx';
import { MarginBars, StudyRun } from './margin.tsx';
import { RulerSpans, SpanList } from './may-change.tsx';
import { PickedAnswer } from './picked-answer.tsx';
import { SearchButtons } from './search-buttons.tsx';
import { BalanceWords, StudyChoices } from './study-choices.tsx';
import type { StudyState } from './study-state.ts';
import { Tries } from './tries.tsx';
import { WantedFill, WantedLine } from './wanted-line.tsx';
import { askTexts as t } from './words.ts';

const TOUCH_TABS = ['wanted', 'answers', 'margin', 'map'] as const;
export type TouchTab = (typeof TOUCH_TABS)[number];
const TAB_HEIGHT = 48;
const TOUCH_ROW = 48;

export function TouchAsk(
  props: ToolProps & {
    readonly ask: AskState;
    readonly study: StudyState;
    readonly map: MapState;
    readonly tab: TouchTab;
    setTab(tab: TouchTab): void;
  },
) {
  const phone = (): boolean => props.device === 'phone';
  const room = (): number => props.height - TAB_HEIGHT;
  const pad = (): number => (phone() ? 10 : 20);
  const plot = (): number => Math.round(phone() ? props.width - 2 * pad() : Math.min(520, props.width * 0.5));
  const bleed = () => ({ margin: `0 ${-pad()}px` });
  return (
    <div class="ask-touch">
      <p class="spoken" role="status" aria-live="polite">
        {props.ask.search.said()}
      </p>
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
              <SearchButtons state={props.ask} />
              <WantedFill state={props.ask} />
            </div>
            <h3>{t.mayChange}</h3>
            <p class="quiet">{t.mayHint}</p>
            <div class="ask-bleed" style={bleed()}>
              <RulerSpans state={props.ask} axis={props.axis} left={0} row={2 * TOUCH_ROW} stacked />
            </div>
            <SpanList state={props.ask} width={Math.min(props.width - 2 * pad() - 12, 460)} />
          </Match>
          <Match when={props.tab === 'answers'}>
            <div class="ask-row">
              <SearchButtons state={props.ask} />
            </div>
            <PickedAnswer state={props.ask} />
            <div class="ask-bleed" style={bleed()}>
              <AnswerTable state={props.ask} study={props.study} axis={props.axis} left={0} />
            </div>
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
