/** The tablet on a gym floor: the same order, fewer rows, the athlete held upright, two numbers that reach across a hall. */

import { createMemo, createSignal, For, Show } from 'solid-js';
import { SpokenCut } from '../../features/instant/cut.tsx';
import { isTwisting, RateMoment } from '../../features/instant/rate-moment.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { LaneSheet } from '../../features/joints/lane-sheet.tsx';
import { Ruler } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import { makeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { useSize } from '../../ui/size.ts';
import { unitOf } from '../../ui/units.ts';
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
import { PLOT_QUANTITIES, PLOTS, TouchGround } from './touch-ground.tsx';
import { unrolledPlace } from './unrolled-place.ts';

const SIDE = 260;
const FLOOR = 48;
const BAR = 52;
const THUMB = 68;
const STANDING = 22;
/** what stays under the floor beneath the large stage */
const SHAPES = 108;
/** px for what is left at take-off */
const LEAVES = 30;

export function TabletLayout(props: { lanes: LaneList }) {
  const flight = useFlight();
  const shell = useShell();
  const cursor = useCursor();
  let root!: HTMLDivElement;
  let said!: HTMLElement;
  const size = useSize(() => root);
  const cut = useCut();
  const explanation = useExplanation();
  const twisting = createMemo(() => isTwisting(flight.result().outline));
  const [firstChoice, setFirst] = createSignal<string>();
  const first = (): string => firstChoice() ?? (twisting() ? 'twistRate' : 'somersaultRate');
  const [secondChoice, setSecond] = createSignal<string>();
  const second = (): string => secondChoice() ?? (twisting() ? 'longMoment' : 'lateralMoment');
  const width = (): number => Math.max(size().width, 700);
  const lineSize = useSize(() => said);
  const line = (): number => lineSize().height;
  const height = (): number => Math.max(size().height, 640);
  const timeWidth = (): number => width() - SIDE;
  const airHeight = (): number =>
    shell.large.isOpen()
      ? height() - BAR - line() - FLOOR - THUMB - STANDING - SHAPES
      : Math.round(Math.min(Math.max((height() - BAR - line() - FLOOR - THUMB) * 0.45, 210), 460));
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(timeWidth(), result.flight.duration, 76 + leavingRoom(result, LEAVES), 56);
  });
  const framing = useFit(flight.id, () => fitStage(flight.result(), airHeight() - 6, 9999, 130));
  const stature = (): number => flight.result().flight.body.stature ?? 1.6;
  const views = createMemo<ViewPlace[]>(() => {
    const common = { y: 0, height: airHeight(), floorY: airHeight(), pxPerS: axis().pxPerS };
    return [
      unrolledPlace(axis(), framing(), {
        width: timeWidth(),
        height: airHeight(),
        labelX: 46,
        ghosts: 10,
        labelSize: 15,
      }),
      {
        ...common,
        kind: 'upright',
        x: timeWidth() + 60,
        width: SIDE - 60,
        x0: SIDE / 2 + 10,
        pxPerM: Math.min(140, (airHeight() - 12) / (stature() * 1.3)),
        ghosts: 0,
      },
    ];
  });
  const ground = (): number => height() - BAR - line() - airHeight() - FLOOR - THUMB - STANDING;
  /** lines for why it changed: what the shape, the attitude and the two large numbers leave of the column */
  const saidLines = (): number => Math.min(4, Math.max(1, Math.floor((ground() - 200) / 16)));
  const choice = (value: () => string, set: (v: string) => void) => (
    <label class="plot-choice">
      <span class="spoken">{texts.plots.choose}</span>
      <select value={value()} onChange={(e) => set(e.currentTarget.value)}>
        <For each={Object.keys(PLOTS)}>
          {(kind) => (
            <option value={kind}>
              {texts.plots.kinds[kind]}, {unitOf(PLOT_QUANTITIES[kind])}
            </option>
          )}
        </For>
      </select>
    </label>
  );
  return (
    <div class="tablet" ref={root}>
      <TouchBar title />
      <section class="line" ref={said} aria-label={texts.sentence.label}>
        <Result />
        <CautionLine />
      </section>
      <main>
        <Show when={size().width > 0 && line() > 0}>
          <section class="air" style={{ height: `${airHeight()}px` }}>
            <Show
              when={shell.large.isOpen()}
              fallback={
                <Stage
                  width={width()}
                  height={airHeight()}
                  views={views()}
                  timeAt={(x) => (x < timeWidth() ? tOf(axis(), x) : undefined)}
                >
                  <p class="stage-name" style={{ left: `${timeWidth() + 12}px`, 'max-width': '96px' }}>
                    {texts.stage.upright}
                  </p>
                </Stage>
              }
            >
              <LargeStageArea width={width()} height={airHeight()} />
            </Show>
          </section>
          <section class="floor" aria-label={floorTexts.label}>
            <Ruler axis={axis()} height={FLOOR} grip={108} />
          </section>
          <div class="touch-row" style={{ height: `${ground()}px` }}>
            <TouchGround
              axis={axis()}
              height={ground()}
              tile={68}
              nameHeight={26}
              names="all"
              lineWidth={3.2}
              plots={
                shell.large.isOpen()
                  ? []
                  : [
                      { kind: first(), share: 1.7, headHeight: 24, head: choice(first, setFirst) },
                      { kind: second(), share: 1, headHeight: 24, head: choice(second, setSecond) },
                    ]
              }
            />
            <Show when={!shell.large.isOpen()}>
              <section
                class="touch-cut"
                style={{ width: `${SIDE}px`, '--said-lines': saidLines() }}
                aria-label={texts.cut.label}
              >
                <RateMoment
                  twisting={twisting()}
                  cut={cut()}
                  explanation={explanation()}
                  width={100}
                  height={Math.max(80, Math.min(150, ground() - 158))}
                />
              </section>
            </Show>
          </div>
          <div
            class="plumb"
            aria-hidden="true"
            style={{
              transform: `translate(${xOf(axis(), cursor.at())}px, ${airHeight()}px)`,
              height: `${FLOOR + ground()}px`,
            }}
          />
          <LaneSheet lanes={props.lanes} axis={axis()} plotHeight={Math.max(120, ground() - 13)} />
          <ToolSheet
            axis={axis()}
            width={width()}
            height={ground() + STANDING}
            tall={height() - BAR - line() - THUMB}
            device="tablet"
          />
          <SpokenCut cut={cut()} explanation={explanation()} />
        </Show>
      </main>
      <footer class="standing">{texts.standingCaution}</footer>
      <ThumbBar wide />
    </div>
  );
}
