/** The bench, for a laptop and wider: before at the left, the flight in the middle, the cut at the right. */

import { createMemo, Match, Show, Switch } from 'solid-js';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { FloorControls, Metres, Ruler } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { BeforeColumn } from '../../features/takeoff/fields.tsx';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import { Icon } from '../../ui/icon.tsx';
import { makeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { useSize } from '../../ui/size.ts';
import { LEFT, RIGHT } from '../bench-columns.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { fitStage, leavingRoom } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { Bar } from './bar.tsx';
import { CautionLine } from './caution-line.tsx';
import { Ground } from './ground.tsx';
import { Result } from './sentence.tsx';
import { LargeStageArea } from './stage/large-stage.tsx';
import { Stage } from './stage/stage.tsx';
import { StageNames } from './stage/stage-names.tsx';
import { stageTexts } from './stage/words.ts';
import { useAxis, useFit } from './steady.ts';
import { GroundTool } from './tools/ground-tool.tsx';
import { findTool } from './tools/tool-list.ts';
import { ToolPlace } from './tools/tool-place.tsx';
import { unrolledPlace } from './unrolled-place.ts';

const FRONT = 122;
const FLOOR = 34;
/** room of the height labels, and of what is left at take-off */
const LABELS = 46;
const LEAVES = 64;
const ABOVE_AIR = 96;
/** share of the page that the large stage takes */
const LARGE = 0.66;

export function BenchLayout(props: { lanes: LaneList }) {
  const shell = useShell();
  const flight = useFlight();
  const cursor = useCursor();
  let root!: HTMLDivElement;
  const size = useSize(() => root);
  const width = (): number => Math.max(size().width, 1160);
  const height = (): number => Math.max(size().height, 812);
  const airHeight = createMemo(() =>
    shell.large.isOpen()
      ? Math.round(Math.max(294, (height() - ABOVE_AIR - FLOOR) * LARGE))
      : Math.round(Math.min(Math.max(294 + (height() - 900) * 0.45, 294), 560)),
  );
  const timeWidth = (): number => width() - LEFT - RIGHT;
  const sideX = (): number => timeWidth() + 24 + FRONT;
  const sideWidth = (): number => width() - LEFT - sideX();
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(timeWidth(), result.flight.duration, LABELS + leavingRoom(result, LEAVES), 52);
  });
  const framing = useFit(flight.id, () => fitStage(flight.result(), airHeight() - 22, sideWidth(), 160));
  const views = createMemo<ViewPlace[]>(() => {
    const common = { y: 0, height: airHeight(), floorY: airHeight(), pxPerM: framing().pxPerM, pxPerS: axis().pxPerS };
    return [
      unrolledPlace(axis(), framing(), { width: timeWidth(), height: airHeight(), labelX: LABELS - 7, ghosts: 10 }),
      { ...common, kind: 'front', x: timeWidth() + 24, width: FRONT, x0: FRONT / 2, ghosts: 0 },
      { ...common, kind: 'side', x: sideX(), width: sideWidth(), x0: framing().sideX0, ghosts: 5 },
    ];
  });
  // the posing stage is in the place of front and side
  const seen = (): readonly ViewPlace[] => (shell.tool() === 'pose' ? views().slice(0, 1) : views());
  const groundHeight = (): number => height() - ABOVE_AIR - airHeight() - FLOOR;
  const ground = () => (
    <Ground
      lanes={props.lanes}
      axis={axis()}
      width={width()}
      height={groundHeight()}
      pxPerM={framing().pxPerM}
      sideX0={framing().sideX0}
    />
  );
  const pictures = () => (
    <>
      <section class="air" style={{ height: `${airHeight()}px` }}>
        <BeforeColumn />
        <Show
          when={shell.large.isOpen()}
          fallback={
            <>
              <Stage
                width={width() - LEFT}
                height={airHeight()}
                views={seen()}
                timeAt={(x) => (x < timeWidth() ? tOf(axis(), x) : undefined)}
              >
                <StageNames views={seen()} compressed={framing().unrolledPxPerM > framing().pxPerM + 0.5} />
              </Stage>
              <button type="button" class="plain small enlarge" onClick={() => shell.toggleLarge()}>
                <Icon name="enlarge" size={16} /> {stageTexts.enlarge}
              </button>
            </>
          }
        >
          <LargeStageArea width={width() - LEFT} height={airHeight()} />
        </Show>
        <p class="standing">{texts.standingCaution}</p>
      </section>
      <section class="floor" aria-label={floorTexts.label}>
        <FloorControls />
        <Ruler axis={axis()} height={FLOOR} grip={76} />
        <Show when={!shell.large.isOpen()}>
          <Metres
            x0={framing().sideX0}
            pxPerM={framing().pxPerM}
            width={sideWidth()}
            height={FLOOR}
            direction={framing().direction}
          />
        </Show>
      </section>
      <Switch fallback={ground()}>
        <Match when={findTool(shell.tool(), 'ground')}>
          {(tool) => <GroundTool tool={tool()} axis={axis()} width={width()} height={groundHeight()} />}
        </Match>
      </Switch>
      <div
        class="plumb"
        aria-hidden="true"
        style={{
          left: `${LEFT}px`,
          transform: `translate(${xOf(axis(), cursor.at())}px, ${airHeight()}px)`,
          height: `${FLOOR + groundHeight()}px`,
        }}
      />
    </>
  );
  return (
    <div class="bench" ref={root}>
      <Bar />
      <section class="line" aria-label={texts.sentence.label}>
        <Result />
        <CautionLine />
      </section>
      <main>
        <Show when={size().width > 0}>
          <Show when={findTool(shell.tool(), 'whole')} fallback={pictures()}>
            {(tool) => (
              <ToolPlace
                tool={tool()}
                axis={axis()}
                width={width()}
                height={height() - ABOVE_AIR}
                timeLeft={LEFT}
                device="bench"
              />
            )}
          </Show>
        </Show>
      </main>
    </div>
  );
}
