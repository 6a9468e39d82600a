/** The bench, for a laptop and wider: before at the left, the flight in the middle, the values at the cursor at the right. */

import { createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import { LiveNumbers } from '../../features/instant/live-numbers.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { FloorControls, Ruler } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { makeAxis } from '../../ui/plot/axis.ts';
import { useSize } from '../../ui/size.ts';
import { LEFT, rightOf } from '../bench-columns.ts';
import { useCut } from '../cut-values.ts';
import { findStory } from '../first-rows.ts';
import { useFloorTime } from '../floor-hand.ts';
import { useFlight, useShell } from '../page.ts';
import { fitStage, leavingRoom } from '../stage-fit.ts';
import { useWholeState } from '../whole-state.ts';
import { Bar } from './bar.tsx';
import { BenchAir, FRONT, LABELS } from './bench-air.tsx';
import { Ground } from './ground.tsx';
import { FOOT, planGround } from './ground-plan.ts';
import { Head } from './head.tsx';
import { useAxis, useFit } from './steady.ts';
import { FilledPlace } from './tools/filled-place.tsx';
import { GroundTool } from './tools/ground-tool.tsx';
import { findTool } from './tools/tool-list.ts';

const FLOOR = 44;
const BAR = 44;
/** what is left at take-off, px */
const LEAVES = 64;
/** bar and head, while each line of that is one */
const ABOVE_AIR = 116;
/** narrower or lower than this the page scrolls */
const LEAST = { width: 960, height: 720 };
/** lower than this, rows and air are small */
const SHORT = 800;
/** the pictures are drawn for this height at least, px */
const LEAST_AIR = 200;
/** px that the pictures yield to the rows under them */
const YIELDS = 16;
/** least height of what a tool is given, px */
const LEAST_TOOL = 290;
/** of what a tool with pictures of its own shares with them: the pictures' part */
const OWN_PICTURES = 0.46;
/** of what a tool that fills the air shares with it: the air's part */
const FILLED_AIR = 0.29;
/** share of the page that the large stage takes */
const LARGE = 0.66;
/** px between the time column and the values */
const GUTTER = 24;

export function BenchLayout(props: { lanes: LaneList }) {
  const shell = useShell();
  const flight = useFlight();
  const time = useFloorTime();
  const cut = useCut();
  const whole = useWholeState();
  let said!: HTMLElement;
  let oneLine!: HTMLElement;
  const page = useSize(() => document.documentElement);
  const line = useSize(() => said);
  const lineHeight = useSize(() => oneLine);
  const spacing = (): number => Math.max(0, lineHeight().height / 20 - 1) * 2;
  const [isListed, setListed] = createSignal(false);
  const isCoarse = matchMedia('(pointer: coarse)').matches;
  const above = (): number => Math.max(tool()?.fillsAir ? 0 : ABOVE_AIR, BAR + line().height);
  const width = (): number => Math.max(page().width, LEAST.width);
  const height = (): number => Math.max(page().height, LEAST.height);
  const isShort = (): boolean => height() < SHORT;
  const story = createMemo(() => findStory(flight.result().frames), undefined, {
    equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  });
  const hasViews = (): boolean => shell.rows.isOpen('views');
  const tool = () => findTool(shell.tool(), 'ground');
  /** the tool has the place of the pictures too: the floor is under the head */
  const isTall = (): boolean => tool() !== undefined && (shell.tall() ?? (isShort() && tool()?.wantsHeight === true));
  /** until they are computed the flight's are there */
  const hasOwnPictures = (): boolean =>
    tool()?.fillsAir === true ||
    (tool()?.hasPictures === true && whole.whole() !== undefined && whole.pictures() !== undefined);
  /** px under the floor while no row is opened */
  const calmNeed = createMemo(
    () =>
      planGround({
        story: story(),
        open: new Set(),
        lanes: [],
        openLane: undefined,
        isShort: isShort(),
        isListed: false,
        isCoarse,
        hasBeside: false,
        height: 0,
      }).height,
  );
  const airHeight = createMemo(() => {
    if (isTall()) return 0;
    if (tool()?.fillsAir) return Math.round((height() - above() - FLOOR) * FILLED_AIR);
    if (tool()?.hasPictures) return Math.round((height() - above() - FLOOR) * OWN_PICTURES);
    if (shell.large.isOpen() || shell.tool() === 'pose')
      return Math.round(Math.max(264, (height() - above() - FLOOR) * LARGE));
    // what comes before has more values there
    const calm = isShort() && !shell.rows.isAll() ? 200 : 264;
    const grown = calm + Math.max(0, height() - 900) * 0.45;
    // a line more in the head is not to push the foot off the page
    const over = calmNeed() - (height() - above() - grown - FLOOR);
    return Math.round(Math.min(hasViews() ? grown - 16 : grown - Math.min(Math.max(over, 0), YIELDS), 560));
  });
  const right = (): number => rightOf(width());
  const timeWidth = (): number => width() - LEFT - right();
  const cutX = (): number => LEFT + timeWidth() + GUTTER;
  const cutWidth = (): number => right() - GUTTER - 20;
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(timeWidth(), result.flight.duration, LABELS + leavingRoom(result, LEAVES), 52);
  });
  const framing = useFit(
    flight.id,
    () => ({ width: width() - cutX() - FRONT, height: Math.max(airHeight(), LEAST_AIR) - 22 }),
    (room) => fitStage(flight.result(), room, 160),
  );
  const left = (): number => height() - above() - airHeight() - FLOOR;
  const plan = createMemo(() =>
    planGround({
      story: story(),
      open: shell.rows.open(),
      lanes: props.lanes.shown().map(({ id }) => id),
      openLane: props.lanes.open(),
      isShort: isShort(),
      isListed: isListed(),
      isCoarse,
      hasBeside: shell.beside.shown() !== undefined,
      height: left(),
      spacing: spacing(),
    }),
  );
  const groundHeight = (): number => (tool() ? Math.max(left(), LEAST_TOOL) : plan().height);
  return (
    <div class="bench">
      <Bar />
      <Head ref={(el) => (said = el)} />
      <i ref={oneLine} class="one-line" aria-hidden="true" />
      <main>
        <Show when={page().width > 0}>
          <Show when={!isTall() && hasOwnPictures()}>
            <section class="air" style={{ height: `${airHeight()}px` }}>
              <FilledPlace name="pictures" />
            </section>
          </Show>
          <Show when={!isTall() && !hasOwnPictures()}>
            <BenchAir
              story={story()}
              cut={cut()}
              axis={axis()}
              fit={framing()}
              width={width()}
              height={airHeight()}
              cutX={cutX()}
              cutWidth={cutWidth()}
            />
          </Show>
          <section class="floor" aria-label={time.label(floorTexts.label)} on:keydown={(e) => time.onKeyDown(e)}>
            <FloorControls />
            <Ruler axis={axis()} height={FLOOR} grip={76} />
            <div
              class="floor-numbers"
              classList={{ narrow: cutWidth() < 380 }}
              style={{ left: `${cutX()}px`, width: `${cutWidth()}px` }}
            >
              <Show when={tool()?.fillsAir} fallback={<LiveNumbers cut={cut()} />}>
                <FilledPlace name="floor" />
              </Show>
            </div>
          </section>
          <Switch
            fallback={
              <Ground
                lanes={props.lanes}
                plan={plan()}
                story={story()}
                cut={cut()}
                axis={axis()}
                width={width()}
                cutX={cutX()}
                cutWidth={cutWidth()}
                fit={framing()}
                isCompressed={framing().unrolledPxPerM > framing().pxPerM + 0.5}
                listRows={() => setListed(true)}
              />
            }
          >
            <Match when={tool()}>
              {(open) => (
                <GroundTool
                  tool={open()}
                  axis={axis()}
                  width={width()}
                  height={groundHeight()}
                  pictures={airHeight()}
                  isTall={isTall()}
                />
              )}
            </Match>
          </Switch>
          <div
            class="plumb"
            aria-hidden="true"
            style={{
              left: `${LEFT}px`,
              transform: `translate(${time.x(axis())}px, ${airHeight()}px)`,
              height: `${FLOOR + groundHeight() - (tool() || !plan().hasFoot ? 0 : FOOT + 6)}px`,
            }}
          />
        </Show>
      </main>
    </div>
  );
}
