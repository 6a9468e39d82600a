/** The phone: one picture, one group of plots by tab, everything else one tap away. */

import { createMemo, createSignal, For, Show } from 'solid-js';
import { SpokenCut, Value } from '../../features/instant/cut.tsx';
import { isTwisting } from '../../features/instant/rate-moment.tsx';
import { pinTexts } from '../../features/instant/words.ts';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { LaneSheet } from '../../features/joints/lane-sheet.tsx';
import { Ruler } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import { makeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { useSize } from '../../ui/size.ts';
import { stepTab } from '../../ui/tabs.tsx';
import { say } from '../../ui/units.ts';
import { useCut, useExplanation } from '../cut-values.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { fitStage, leavingRoom } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { TouchBar } from './bar.tsx';
import { CautionLine } from './caution-line.tsx';
import { Result } from './sentence.tsx';
import { LargeStageArea } from './stage/large-stage.tsx';
import { Stage } from './stage/stage.tsx';
import { useAxis, useFit } from './steady.ts';
import { ThumbBar } from './thumb-bar.tsx';
import { ToolSheet } from './tools/tool-sheet.tsx';
import { TouchGround, type TouchPlot } from './touch-ground.tsx';
import { unrolledPlace } from './unrolled-place.ts';

const FLOOR = 44;
const BAR = 48;
const THUMB = 76;
/** what stays under the floor beneath the large stage */
const SHAPES = 84;
/** shapes, tabs, and two plots that can still be read */
const LEAST_GROUND = 236;
const TABS = ['twist', 'tilt', 'momentum', 'energy'] as const;
/** px for what is left at take-off */
const LEAVES = 22;
type Tab = (typeof TABS)[number];

export function PhoneLayout(props: { lanes: LaneList }) {
  const shell = useShell();
  const flight = useFlight();
  const cursor = useCursor();
  let root!: HTMLDivElement;
  let line!: HTMLElement;
  const size = useSize(() => root);
  const lineSize = useSize(() => line);
  const cut = useCut();
  const explanation = useExplanation();
  const [tab, setTab] = createSignal<Tab>('twist');
  const width = (): number => Math.max(size().width, 300);
  const height = (): number => Math.max(size().height, 600);
  const airHeight = (): number =>
    shell.large.isOpen()
      ? height() - BAR - lineSize().height - FLOOR - THUMB - 18 - SHAPES
      : Math.round(Math.min(Math.max((height() - BAR - lineSize().height - FLOOR - THUMB) * 0.385, 170), 330));
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(width(), result.flight.duration, 42 + leavingRoom(result, LEAVES), 37);
  });
  const framing = useFit(flight.id, () => fitStage(flight.result(), airHeight() - 4, 9999, 110));
  const stature = (): number => flight.result().flight.body.stature ?? 1.6;
  const views = createMemo<ViewPlace[]>(() => {
    const common = { y: 0, height: airHeight(), floorY: airHeight(), pxPerS: axis().pxPerS };
    return [
      unrolledPlace(axis(), framing(), {
        width: width(),
        height: airHeight(),
        labelX: 32,
        ghosts: 6,
        labelSize: 13,
        unlabelled: true,
      }),
      {
        ...common,
        kind: 'upright',
        x: width() - 70,
        y: 18,
        width: 68,
        height: 92,
        floorY: 90,
        x0: 36,
        pxPerM: 66 / stature(),
        ghosts: 0,
      },
    ];
  });
  const ground = (): number =>
    Math.max(
      shell.large.isOpen() ? SHAPES : LEAST_GROUND,
      height() - BAR - lineSize().height - airHeight() - FLOOR - THUMB - 18,
    );
  const plots = createMemo<TouchPlot[]>(() => {
    const c = texts.cut;
    switch (tab()) {
      case 'twist':
        return [
          {
            kind: 'rates',
            share: 1.7,
            headHeight: 40,
            head: (
              <>
                <Value value={cut().twistRate} decimals={2} quantity="rate" unit={pinTexts.rateTwist} hue="twist" />
                <Value value={cut().somersaultRate} decimals={2} quantity="rate" unit={c.somersault} hue="som" />
              </>
            ),
          },
          {
            kind: isTwisting(flight.result().outline) ? 'longMoment' : 'lateralMoment',
            share: 1,
            headHeight: 38,
            head: isTwisting(flight.result().outline) ? (
              <Value value={cut().long} decimals={2} quantity="moment" unit={c.longAxis} hue="twist" />
            ) : (
              <Value value={cut().lateral} decimals={2} quantity="moment" unit={c.lateralAxis} hue="som" />
            ),
          },
        ];
      case 'tilt':
        return [
          {
            kind: 'tilt',
            share: 1,
            headHeight: 40,
            head: <Value value={Math.abs(cut().tilt)} decimals={1} unit={`° ${c.tiltWord(cut().tilt)}`} hue="tilt" />,
          },
        ];
      case 'momentum':
        return [
          {
            kind: 'momentum',
            share: 1,
            headHeight: 40,
            head: <Value value={cut().momentum} decimals={1} quantity="momentum" unit={c.constant} />,
          },
          {
            kind: 'moments',
            share: 1,
            headHeight: 40,
            head: <Value value={cut().lateral} decimals={2} quantity="moment" unit={texts.plots.lateral} hue="som" />,
          },
        ];
      case 'energy':
        return [
          {
            kind: 'energy',
            share: 1,
            headHeight: 40,
            head: (
              <Value value={cut().energy} decimals={0} quantity="energy" unit={c.muscle(say('energy', cut().work))} />
            ),
          },
        ];
    }
  });
  const onTabKey = (e: KeyboardEvent): void => stepTab(e, 'tab', TABS, tab(), setTab);
  return (
    <div class="phone" ref={root}>
      <TouchBar title={false} />
      <section class="line" ref={line} aria-label={texts.sentence.label}>
        <Result />
        <CautionLine short />
      </section>
      <main>
        <Show when={size().width > 0 && lineSize().width > 0}>
          <section class="air" style={{ height: `${airHeight()}px` }}>
            <Show
              when={shell.large.isOpen()}
              fallback={
                <Stage width={width()} height={airHeight()} views={views()} timeAt={(x) => tOf(axis(), x)}>
                  <p class="stage-name" style={{ right: '12px' }}>
                    {texts.stage.uprightShort}
                  </p>
                </Stage>
              }
            >
              <LargeStageArea width={width()} height={airHeight()} />
            </Show>
          </section>
          <section class="floor" aria-label={floorTexts.label}>
            <Ruler axis={axis()} height={FLOOR} grip={92} />
          </section>
          <TouchGround
            axis={axis()}
            height={ground()}
            tile={46}
            nameHeight={26}
            names="chosen"
            lineWidth={2.4}
            betweenHeight={50}
            between={
              shell.large.isOpen() ? undefined : (
                <div class="tabs" role="tablist" onKeyDown={onTabKey}>
                  <For each={TABS}>
                    {(name) => (
                      <button
                        type="button"
                        role="tab"
                        id={`tab-${name}`}
                        aria-selected={tab() === name}
                        tabIndex={tab() === name ? 0 : -1}
                        onClick={() => setTab(name)}
                      >
                        {texts.plots.tabs[name]}
                      </button>
                    )}
                  </For>
                </div>
              )
            }
            plots={shell.large.isOpen() ? [] : plots()}
          />
          <div
            class="plumb"
            aria-hidden="true"
            style={{
              transform: `translate(${xOf(axis(), cursor.at())}px, ${airHeight()}px)`,
              height: `${FLOOR + 26 + 46}px`,
            }}
          />
          <LaneSheet lanes={props.lanes} axis={axis()} plotHeight={120} />
          <ToolSheet
            axis={axis()}
            width={width()}
            height={ground()}
            tall={height() - BAR - lineSize().height - THUMB}
            device="phone"
          />
          <SpokenCut cut={cut()} explanation={explanation()} />
        </Show>
      </main>
      <footer class="standing">{texts.standingCautionShort}</footer>
      <ThumbBar wide={false} />
    </div>
  );
}
