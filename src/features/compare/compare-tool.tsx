/** Compare: versions of a skill fly together, in the pictures, in sentences, in curves and in a table of what differs. */
import { createEffect, createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import type { ToolProps } from '../../app/tool.ts';
import { TabPanel, ToolTabs } from '../../ui/tabs.tsx';
import { AllTable } from './all-table.tsx';
import { CompareChanges } from './compare-changes.tsx';
import { CompareControls, StaysChoice } from './compare-controls.tsx';
import { ComparePlots } from './compare-plots.tsx';
import { useCompareState } from './compare-state.ts';
import { CompareTable, CopyTable, PairChoice } from './compare-table.tsx';
import { VersionAdd } from './version-add.tsx';
import { VersionActions, VersionRows } from './version-rows.tsx';
import { VersionStrips } from './version-strips.tsx';
import { compareTexts as c } from './words.ts';

const VALUES = 88;
const CONTROLS = 40;
/** the controls take two lines where the page is narrower, and three under the second; px */
const NARROW = 1400;
const NARROWER = 1160;
const ROW = 30;
/** one curve; on a low page the others come with the height */
const LEAST_PLOTS = 80;
/** of many versions */
const LOW_ROW = 24;
const MANY = 4;

export function CompareTool(props: ToolProps) {
  const state = useCompareState();
  const any = createMemo(() => state.flown().length > 1);
  const wide = (): boolean => props.device === 'bench';
  return (
    <div class="compare" classList={{ touch: !wide() }}>
      <Show when={wide()} fallback={<TouchCompare {...props} state={state} any={any()} />}>
        <WideCompare {...props} state={state} any={any()} />
      </Show>
    </div>
  );
}

type Parts = ToolProps & { state: ReturnType<typeof useCompareState>; any: boolean };

/** Where nothing is beside the skill yet: what would be there, and where. */
function Empty() {
  return (
    <p class="compare-empty">
      <b>{c.empty}</b> {c.emptyHelp}
    </p>
  );
}

/** The place of the version that is not there yet. */
function EmptyRow() {
  return (
    <p class="empty-row">
      <span class="version-tag tag-B">B</span> <span class="quiet">{c.yours}</span>
    </p>
  );
}

/** Laptop: everything at once; at the right the two that are compared. */
function WideCompare(props: Parts) {
  const [tab, setTab] = createSignal<'table' | 'changes'>('table');
  const left = (): number => props.timeLeft + props.axis.width;
  const count = (): number => Math.max(2, props.state.flown().length);
  const row = (): number => (count() > MANY ? LOW_ROW : ROW);
  const controls = (): number => CONTROLS * (props.width < NARROWER ? 3 : props.width < NARROW ? 2 : 1);
  const plotsHeight = (): number => Math.max(LEAST_PLOTS, props.height - controls() - count() * row() - 10);
  return (
    <div class="compare-wide" style={{ '--row': `${row()}px` }}>
      <div class="compare-left" style={{ width: `${left() + VALUES}px` }}>
        <div class="compare-top" style={{ height: `${controls()}px` }}>
          <VersionAdd state={props.state} />
          <CompareControls state={props.state} layout />
        </div>
        <VersionRows state={props.state} actions={false} beside={<StaysChoice state={props.state} />} />
        <Show when={!props.any}>
          <EmptyRow />
        </Show>
        <Switch>
          <Match when={props.state.layout() === 'together'}>
            <ComparePlots
              state={props.state}
              axis={props.axis}
              height={plotsHeight()}
              timeLeft={props.timeLeft}
              valuesWidth={VALUES}
              lineWidth={2.2}
            />
          </Match>
          <Match when={props.state.layout() === 'apart'}>
            <VersionStrips
              state={props.state}
              axis={props.axis}
              height={plotsHeight()}
              timeLeft={props.timeLeft}
              side={VALUES}
            />
          </Match>
          <Match when={props.state.layout() === 'numbers'}>
            <AllTable state={props.state} height={plotsHeight()} />
          </Match>
        </Switch>
      </div>
      <section class="compare-right" aria-label={c.tabs.table}>
        <Show
          when={props.any}
          fallback={
            <>
              <Empty />
              <AllTable state={props.state} height={props.height - 110} />
            </>
          }
        >
          <header>
            <PairChoice state={props.state} />
            <ToolTabs
              id="pair"
              label={c.tabs.table}
              titles={c.tabs}
              names={['table', 'changes']}
              chosen={tab()}
              choose={setTab}
            />
            <CopyTable state={props.state} short />
          </header>
          <TabPanel class="compare-pair" id="pair" chosen={tab()}>
            <Show when={tab() === 'table'} fallback={<CompareChanges state={props.state} />}>
              <CompareTable state={props.state} />
            </Show>
          </TabPanel>
          <Show when={props.state.other()?.letter !== 'A' ? props.state.other() : props.state.base()}>
            {(one) => <VersionActions letter={one().letter} state={props.state} />}
          </Show>
        </Show>
      </section>
    </div>
  );
}

const TOUCH_TABS = ['versions', 'curves', 'numbers', 'table', 'strips', 'changes'] as const;
type TouchTab = (typeof TOUCH_TABS)[number];
const TAB_HEIGHT = 48;

/** Tablet and phone: one thing at a time. */
function TouchCompare(props: Parts) {
  const [tab, setTab] = createSignal<TouchTab>('versions');
  const phone = (): boolean => props.device === 'phone';
  // beside each other they are not in one picture too
  createEffect(() => props.state.setLayout(tab() === 'strips' ? 'apart' : 'together'));
  const room = (): number => props.height - TAB_HEIGHT;
  const values = (): number => (phone() ? 0 : Math.max(0, props.width - props.axis.width - 12));
  return (
    <div class="compare-touch">
      <ToolTabs id="compare" label={c.versions} titles={c.tabs} names={TOUCH_TABS} chosen={tab()} choose={setTab} />
      <TabPanel class="compare-pair" id="compare" chosen={tab()} heightPx={room()}>
        <Switch>
          <Match when={tab() === 'versions'}>
            <Show when={!props.any}>
              <Empty />
            </Show>
            <VersionRows state={props.state} actions />
            <Show when={!props.any}>
              <EmptyRow />
            </Show>
            <VersionAdd state={props.state} />
            <CompareControls state={props.state} layout={false} />
            <StaysChoice state={props.state} />
          </Match>
          <Match when={tab() === 'curves'}>
            <ComparePlots
              state={props.state}
              axis={props.axis}
              height={Math.max(phone() ? 330 : 250, room())}
              timeLeft={props.timeLeft}
              valuesWidth={values()}
              lineWidth={phone() ? 2.2 : 2.8}
            />
          </Match>
          <Match when={tab() === 'numbers'}>
            <AllTable state={props.state} height={room() - 8} />
          </Match>
          <Match when={tab() === 'table'}>
            <p class="touch-pair">
              <PairChoice state={props.state} />
            </p>
            <CompareTable state={props.state} />
            <p class="touch-pair">
              <CopyTable state={props.state} />
            </p>
          </Match>
          <Match when={tab() === 'strips'}>
            <VersionStrips
              state={props.state}
              axis={props.axis}
              height={room()}
              timeLeft={props.timeLeft}
              side={phone() ? 0 : values()}
            />
          </Match>
          <Match when={tab() === 'changes'}>
            <CompareChanges state={props.state} />
          </Match>
        </Switch>
      </TabPanel>
    </div>
  );
}
