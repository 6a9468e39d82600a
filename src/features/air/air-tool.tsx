/** Before and after the air: a whole skill, from what gives its first flight to where its verdict is reached, on one ruler. */
import { createEffect, createMemo, createSignal, For, onCleanup, onMount, Show, untrack } from 'solid-js';
import { Portal } from 'solid-js/web';
import { FailedLine } from '../../app/failed-line.tsx';
import { useDocument, useFlight, useShell } from '../../app/page.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import type { ToolProps } from '../../app/tool.ts';
import { useWholeState, type WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import type { WholeReach } from '../../pictures/whole-input.ts';
import { AfterKnobs } from './after-knobs.tsx';
import { AirCards } from './air-cards.tsx';
import { AirDetails, AirVerdict } from './air-details.tsx';
import { type AirFrame, makeFrame } from './air-frame.ts';
import { AirInstants } from './air-instants.tsx';
import { AirNow, SpokenNow } from './air-now.tsx';
import { airTexts as t } from './air-texts.ts';
import { BedAbove } from './bed-above.tsx';
import { BedCards, isBedSeries } from './bed-cards.tsx';
import { BeforeKnobs } from './before-knobs.tsx';
import { CatchRows } from './catch-rows.tsx';
import { CatchSide } from './catch-side.tsx';
import { ChoiceTiles } from './choice-tiles.tsx';
import { ContactGave } from './contact-gave.tsx';
import { timeOfKey } from './instants.ts';
import { ReleaseStudy } from './release-study.tsx';
import { SideMetres } from './side-metres.tsx';
import { SidePicture, type SideRange, useSideRange } from './side-picture.tsx';
import { TimePicture } from './time-picture.tsx';
import { TouchStrip } from './touch-strip.tsx';
import { makeWholeAxis, type WholeAxis } from './whole-axis.ts';
import { RowTitle, rowsThatFit, WholeRow, wholeRows } from './whole-rows.tsx';

/** what is shown of a long swing at first, s */
const LAST = 1.5;
const VIEWS = ['time', 'side'] as const;
/** a row is no lower than this, px */
const LEAST_ROW = 44;

export function AirTool(props: ToolProps) {
  const state = useWholeState();
  return (
    <div class="contact" classList={{ touch: props.device !== 'bench' }} style={{ height: `${props.height}px` }}>
      <Show when={state.failed()}>
        <FailedLine class="contact-failed" again={state.again}>
          <b>{t.failed}</b> {state.failed()}
        </FailedLine>
      </Show>
      <Show when={state.whole()} fallback={<p class="quiet contact-empty">{t.working}</p>}>
        {(whole) => <Whole {...props} state={state} whole={whole()} />}
      </Show>
    </div>
  );
}

interface PartProps {
  state: WholeState;
  whole: WholeResult;
  frame: AirFrame;
  axis: WholeAxis;
  range: SideRange;
}

function Whole(props: ToolProps & { state: WholeState; whole: WholeResult }) {
  const flight = useFlight();
  const doc = useDocument();
  const { floor, places } = useShell();
  const [all, setAll] = createSignal(false);
  const [view, setView] = createSignal<(typeof VIEWS)[number]>('time');
  const isLong = (): boolean => props.whole.phases[0].kind === 'swing' && props.whole.from < -LAST - 0.4;
  const showsAll = (): boolean => all() || props.state.cursor() < -LAST;
  const top = createMemo(() => {
    let most = 1;
    const { p_WScm_W: p } = props.whole.poses;
    for (let i = 1; i < p.length; i += 3) most = Math.max(most, p[i]);
    return most;
  });
  const across = createMemo(() => {
    const extent = props.state.pictures()?.extent(props.whole, untrack(flight.result));
    return extent ? extent.to - extent.from : 4;
  });
  const frame = createMemo(() => makeFrame(props, top(), across()));
  const reaches = createMemo<WholeReach[]>(() =>
    (props.state.pictures()?.reaches(props.whole, untrack(flight.result)) ?? []).map(({ t: at, left, right }) => ({
      t: at,
      left: left * frame().pxPerM,
      right: right * frame().pxPerM,
    })),
  );
  const axis = createMemo<WholeAxis>(() =>
    makeWholeAxis(isLong() && !showsAll() ? -LAST : props.whole.from, props.whole.to, frame().timeWidth, reaches()),
  );
  const range = useSideRange(
    () => props.state.pictures(),
    () => props.whole,
    () => frame(),
    () => props.state.cursor(),
  );
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.ctrlKey || e.metaKey || e.altKey || isTyped(e.target)) return;
    if (e.key === ' ' && !(e.target as HTMLElement).closest('button, summary')) {
      props.state.play.toggle();
    } else {
      const next = timeOfKey(e, props.whole, doc.leg(), props.state.cursor());
      if (next === undefined) return;
      const to = Math.min(Math.max(next, props.whole.from), props.whole.to);
      props.state.setCursor(Math.round(to * 1000) / 1000);
    }
    e.preventDefault();
    e.stopPropagation();
  };
  floor.take({
    axis,
    label: t.time,
    at: () => props.state.cursor(),
    set: (s) => props.state.setCursor(Math.min(Math.max(s, props.whole.from), props.whole.to)),
    get play() {
      return props.state.play;
    },
    onKeyDown,
  });
  let root!: HTMLDivElement;
  // the tool itself has the focus as it opens
  onMount(() => {
    const tool = root.closest<HTMLElement>('[data-tool]');
    tool?.addEventListener('keydown', onKeyDown);
    onCleanup(() => tool?.removeEventListener('keydown', onKeyDown));
  });
  const isBench = (): boolean => props.device === 'bench';
  const parts = (): PartProps => ({
    state: props.state,
    whole: props.whole,
    frame: frame(),
    axis: axis(),
    range: range(),
  });
  return (
    <div class="air-whole" ref={root}>
      <Show when={(props.pictures ?? 0) > 0 && places.pictures()}>
        {(mount) => (
          <Portal mount={mount()}>
            <Show when={frame().sideWidth === 0}>
              <div class="air-tabs">
                <For each={VIEWS}>
                  {(name) => (
                    <button type="button" aria-pressed={view() === name} onClick={() => setView(name)}>
                      {t.views[name]}
                    </button>
                  )}
                </For>
              </div>
            </Show>
            <div class="air-pictures" style={{ height: `${frame().picture}px` }}>
              <Show when={isBench()}>
                <div class="contact-knobs" style={{ width: `${frame().timeX}px` }}>
                  <BeforeKnobs />
                  <AfterKnobs />
                </div>
              </Show>
              <Show when={frame().sideWidth > 0 || view() === 'time'}>
                <TimePicture {...parts()} isLong={isLong()} showsAll={showsAll()} setAll={setAll} />
              </Show>
              <Show when={frame().sideWidth > 0 || view() === 'side'}>
                <SidePicture {...parts()} width={frame().sideWidth || frame().width} />
              </Show>
            </div>
          </Portal>
        )}
      </Show>
      <Show when={places.strip()}>
        {(mount) => (
          <Portal mount={mount()}>
            <TouchStrip {...parts()} />
            <Show when={(props.pictures ?? 0) > 0 && frame().sideWidth > 0}>
              <SideMetres {...parts()} />
            </Show>
          </Portal>
        )}
      </Show>
      <Under {...parts()} />
      <SpokenNow state={props.state} whole={props.whole} />
    </div>
  );
}

const isTyped = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, select, textarea') !== null;

function Under(props: PartProps) {
  const isBench = (): boolean => props.frame.device === 'bench';

  const [cardsHeight, setCardsHeight] = createSignal(0);
  let cards: HTMLDivElement | undefined;
  const isBed = createMemo(() => isBedSeries(props.whole));
  const hasCards = createMemo(() => props.whole.phases.some((span) => span.kind === 'contact'));
  createEffect(() => {
    if (!cards) return;
    const watch = new ResizeObserver(([entry]) => setCardsHeight(entry.contentRect.height));
    watch.observe(cards);
    onCleanup(() => watch.disconnect());
  });
  const room = (): number => (isBench() ? props.frame.height - cardsHeight() : 330);
  const rows = createMemo(() => rowsThatFit(wholeRows(props.whole), room(), LEAST_ROW));
  const share = (): number => rows().reduce((sum, row) => sum + row.share, 0);
  const sideRoom = (): number => (props.frame.sideWidth || props.frame.width) - 36;
  return (
    <>
      <div class="air-cards-place" ref={cards}>
        <Show when={props.whole.legs.length === 1 && !props.whole.legs[0].catch}>
          <ChoiceTiles />
        </Show>
        <Show when={hasCards()}>
          <Show when={isBed()} fallback={<AirCards {...props} />}>
            <BedCards {...props} />
          </Show>
        </Show>
      </div>
      <div class="air-under" style={isBench() ? { height: `${room()}px` } : {}}>
        <div class="air-rows" style={{ width: `${props.frame.timeX + props.frame.timeWidth}px` }}>
          <TouchPlumb axis={props.axis} />
          <Show when={props.state.leg()?.catch}>
            {(caught) => <CatchRows {...props} caught={caught()} room={room()} />}
          </Show>
          <For each={props.state.leg()?.catch ? [] : rows()}>
            {(row) => (
              <div class="whole-line" classList={{ over: props.frame.timeX === 0 }}>
                <RowTitle
                  row={row}
                  width={props.frame.timeX || props.frame.timeWidth}
                  isOnBar={props.whole.phases.some(({ kind }) => kind === 'swing')}
                />
                <WholeRow {...props} row={row} height={Math.max(LEAST_ROW - 4, (room() * row.share) / share() - 4)} />
              </div>
            )}
          </For>
          <Show when={!isBench()}>
            <AirInstants state={props.state} whole={props.whole} />
          </Show>
        </div>
        <div class="air-side" style={{ width: `${props.frame.sideWidth || props.frame.width}px` }}>
          <Show when={props.state.leg()?.catch}>
            {(caught) => (
              <CatchSide
                caught={caught()}
                way={(props.state.leg()?.vx ?? 0) < 0 ? -1 : 1}
                window={props.state.catchWindow()}
                width={sideRoom()}
              />
            )}
          </Show>
          <Show when={!props.state.leg()?.catch && props.whole.legs.some((leg) => leg.swing) && props.state.window()}>
            {(window) => <ReleaseStudy state={props.state} window={window()} width={sideRoom()} touch={!isBench()} />}
          </Show>
          <Show when={isBed()}>
            <BedAbove state={props.state} whole={props.whole} width={sideRoom()} />
          </Show>
          <ContactGave whole={props.whole} />
          <AirNow state={props.state} whole={props.whole} />
          <AirVerdict whole={props.whole} />
          <AirDetails state={props.state} whole={props.whole} isTouch={!isBench()} />
          <Show when={!isBench()}>
            <BeforeKnobs />
            <AfterKnobs />
          </Show>
        </div>
      </div>
    </>
  );
}
