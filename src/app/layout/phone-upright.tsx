/** The phone upright: sentence, flight or athlete, floor, shapes, two curves, three numbers, one under the other. */
import { createMemo, createSignal, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { LaneSheet } from '../../features/joints/lane-sheet.tsx';
import { FigureHandle } from '../../features/pose/figure-handle.tsx';
import { makeAxis, tOf } from '../../ui/plot/axis.ts';
import { type Size, useSize } from '../../ui/size.ts';
import type { CutValues } from '../cut-values.ts';
import type { FirstStoryState } from '../first-story.ts';
import { useFloorTime } from '../floor-hand.ts';
import { useFlight, useShell } from '../page.ts';
import { leavingRoom } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { TouchBar } from './bar.tsx';
import { CautionLine } from './caution-line.tsx';
import { FirstNumbers } from './first-numbers.tsx';
import { FloorBand } from './floor-band.tsx';
import { useBesideParts } from './late-beside.ts';
import { isRowsOpen, MORE_ROWS, RowsSheet, UNDER_SHAPES } from './rows-sheet.tsx';
import { EnlargeButton } from './stage/enlarge-button.tsx';
import { LargeStageArea } from './stage/late-large.ts';
import { Stage } from './stage/stage.tsx';
import { StandingLine } from './standing-line.tsx';
import { useAxis, useRestHeight } from './steady.ts';
import { FilledPlace } from './tools/filled-place.tsx';
import { findTool, hasOwnAir } from './tools/tool-list.ts';
import { isToolTall, ToolSheet } from './tools/tool-sheet.tsx';
import { TouchGround, TWO } from './touch-ground.tsx';
import { FittedSentence, TouchAnswer } from './touch-result.tsx';
import type { TouchRows } from './touch-rows.ts';
import { touchTexts as t } from './touch-words.ts';
import { useUnrolledViews } from './unrolled-views.ts';

const BAR = 48;
const FLOOR = 44;
const NAMES = 24;
const TILE = 46;
const SHAPES = NAMES + TILE;
/** with those of another way */
const SHAPES_TWO = NAMES + TWO.own + TWO.gap + TWO.tile;
const NUMBERS = { one: 54, two: 76 } as const;
/** on a low screen there is one curve, so that the page does not scroll */
const LOW = 700;
/** of the sentence: two lines of the largest letters, on a low screen three, since nothing may move it off the screen */
const SENTENCE = { tall: 56, low: 84 } as const;
const STANDING = { tall: 44, low: 32 } as const;
/** of what pictures and curves share: the pictures' part, and the least of each */
const AIR = 0.59;
const LEAST = { tall: { air: 124, curves: 100 }, low: { air: 84, curves: 52 }, two: { air: 90, curves: 60 } } as const;
/** under the athlete is one curve, on a low screen none: limbs are apart enough for a finger */
const UNDER_ATHLETE = { tall: 62, low: 0 } as const;
/** a curve in less says nothing */
const LEAST_CURVE = 40;
const MOST_AIR = 360;
/** letters of an answer that two lines have room for; a longer one is smaller, in three lines of the same height */
const TWO_LINES = 116;
/** the figure that is posed is in the place of the flight: limbs apart enough for a finger */
const POSE_AIR = { tall: 206, low: 136 } as const;
/** a tool's own, with the choice of the view over them */
const OWN_PICTURES = { tall: 184, low: 132 } as const;
/** px left of take-off and right of the landing: titles of the curves, and a body that leaves and lands */
const BESIDE = { left: 72, right: 62 } as const;
const LANE = { left: 42, right: 24 } as const;
/** px for what is left at take-off */
const LEAVES = 22;
/** px that a tool has at least, under a floor that stays in sight */
const LEAST_TOOL = 150;
/** a sheet of rows lower than this takes the shapes' place too */
const LEAST_SHEET = 130;

export interface PhoneParts {
  lanes: LaneList;
  cut: CutValues;
  explanation: string;
  story: FirstStoryState;
  rows: TouchRows;
  size: Size;
  thumb: number;
}

export function PhoneUpright(props: PhoneParts) {
  const shell = useShell();
  const flight = useFlight();
  const time = useFloorTime();
  let line!: HTMLElement;
  const said = useSize(() => line);
  const [isAthlete, setAthlete] = createSignal(false);
  const width = (): number => Math.max(props.size.width, 300);
  const height = (): number => props.size.height;
  const above = (): number => BAR + said().height;
  const rest = useRestHeight(() => said().height);
  const isLengthy = (): boolean => {
    const answer = shell.answer.said() ?? shell.answer.opening();
    return (answer?.lead.length ?? 0) + (answer?.rest.length ?? 0) > TWO_LINES;
  };
  const kind = (): 'tall' | 'low' => (height() < LOW ? 'low' : 'tall');
  const two = useBesideParts();
  const shapes = (): number => (two() ? SHAPES_TWO : SHAPES);
  const numbers = (): number => NUMBERS[two() ? 'two' : 'one'];
  const least = () => LEAST[two() ? 'two' : kind()];
  /** pictures and curves */
  const shared = (): number => height() - above() - FLOOR - shapes() - numbers() - STANDING[kind()] - props.thumb;
  /** in the place of the flight, with nothing else there */
  const isOnAthlete = (): boolean =>
    isAthlete() && !shell.large.isOpen() && shell.tool() === undefined && !isRowsOpen(shell, props.lanes);
  const hasPictures = (): boolean => hasOwnAir(findTool(shell.tool()));
  const airHeight = (): number => {
    if (isToolTall(shell)) return 0;
    if (shell.large.isOpen()) return Math.max(220, shared() + numbers() + (kind() === 'low' ? shapes() : 0));
    if (shell.tool() === 'pose')
      return Math.max(80, Math.min(POSE_AIR[kind()], height() - above() - FLOOR - props.thumb - LEAST_TOOL));
    if (hasPictures()) return OWN_PICTURES[kind()];
    if (shell.tool() || isRowsOpen(shell, props.lanes)) return least().air;
    if (isOnAthlete()) return Math.min(Math.max(shared() - UNDER_ATHLETE[kind()], least().air), MOST_AIR);
    const share = Math.min(shared() * AIR, shared() - least().curves);
    return Math.round(Math.min(Math.max(share, least().air), MOST_AIR));
  };
  const plots = () => {
    const all = props.rows.plots();
    if (curves() < LEAST_CURVE) return [];
    // of two ways the moments are among the numbers
    if (two()) return all.slice(0, 1);
    return kind() === 'tall' && curves() >= LEAST.tall.curves
      ? all
      : all.slice(props.rows.kept() ? 1 : 0, props.rows.kept() ? 2 : 1);
  };
  /** what the pictures leave: the numbers under them are never cut */
  const curves = (): number => Math.max(shared() - airHeight(), 0);
  const ground = (): number => (shell.large.isOpen() ? (kind() === 'low' ? 0 : shapes()) : shapes() + curves());
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(width(), result.flight.duration, BESIDE.left + leavingRoom(result, LEAVES), BESIDE.right);
  });
  /** keys of a joint are as far apart as the screen allows */
  const laneAxis = createMemo(() => makeAxis(width(), flight.result().flight.duration, LANE.left, LANE.right));
  const views = useUnrolledViews({
    axis,
    width: width,
    height: airHeight,
    margin: 4,
    scale: 110,
    place: { labelX: 38, ghosts: 1, labelSize: 13 },
  });
  const flightPicture = () => (
    <>
      <Stage width={width()} height={airHeight()} views={views()} timeAt={(x) => tOf(axis(), x)} />
      <EnlargeButton right={0} />
    </>
  );
  return (
    <>
      <TouchBar title={false} />
      <section
        class="line"
        classList={{ lengthy: isLengthy() }}
        ref={line}
        style={{ 'min-height': rest() }}
        aria-label={texts.sentence.label}
      >
        <Show
          when={findTool(shell.tool())?.fillsAir}
          fallback={
            <>
              <FittedSentence room={width() - 28} least={SENTENCE[kind()]} />
              <TouchAnswer>
                <button
                  type="button"
                  class="to-athlete"
                  onClick={() => {
                    if (shell.large.isOpen()) shell.toggleLarge();
                    else setAthlete(!isAthlete());
                  }}
                >
                  {isAthlete() || shell.large.isOpen() ? t.flight : t.athlete}
                </button>
              </TouchAnswer>
              <CautionLine short />
            </>
          }
        >
          <FilledPlace name="headline" />
        </Show>
      </section>
      <main>
        <Show when={said().width > 0}>
          <section class="air" style={{ height: `${airHeight()}px` }}>
            <Show when={airHeight() > 0 && hasPictures()}>
              <FilledPlace name="pictures" />
            </Show>
            <Show when={airHeight() > 0 && !hasPictures()}>
              <Show
                when={shell.large.isOpen()}
                fallback={
                  <Show when={isAthlete()} fallback={flightPicture()}>
                    <FigureHandle
                      width={width()}
                      height={airHeight()}
                      touch
                      behind={two()?.beside}
                      onLarger={() => shell.openTool('pose')}
                    />
                    <Show when={two()}>
                      {(both) => <Dynamic component={both().BesideKey} beside={both().beside} />}
                    </Show>
                  </Show>
                }
              >
                <LargeStageArea width={width()} height={airHeight()} />
              </Show>
            </Show>
          </section>
          <FloorBand axis={axis()} height={FLOOR} grip={92} />
          <Show when={ground() > 0}>
            <TouchGround
              axis={axis()}
              height={ground()}
              tile={TILE}
              nameHeight={NAMES}
              lineWidth={2.6}
              plots={shell.large.isOpen() ? [] : plots()}
              unticked
            />
          </Show>
          <div
            class="plumb"
            aria-hidden="true"
            style={{
              transform: `translate(${time.x(axis())}px, ${airHeight()}px)`,
              height: `${FLOOR + ground()}px`,
            }}
          />
          <Show when={!shell.large.isOpen()}>
            <FirstNumbers story={props.story} />
          </Show>
          <RowsSheet
            axis={axis()}
            lanes={props.lanes}
            cut={props.cut}
            explanation={props.explanation}
            height={Math.max(
              height() - props.thumb - above() - airHeight() - FLOOR - SHAPES - UNDER_SHAPES,
              LEAST_SHEET,
            )}
            kept={props.rows.kept()}
            keep={props.rows.keep}
          />
          <LaneSheet lanes={props.lanes} axis={laneAxis()} plotHeight={120} />
          <ToolSheet
            axis={axis()}
            width={width()}
            height={Math.max(height() - above() - airHeight() - FLOOR - props.thumb, LEAST_TOOL)}
            pictures={airHeight()}
            device="phone"
          />
        </Show>
      </main>
      <StandingLine height={STANDING[kind()]}>
        <button
          type="button"
          class="link more-rows"
          aria-expanded={shell.rows.open().size > 0}
          onClick={() => shell.rows.toggleAll()}
        >
          {t.moreRows(MORE_ROWS)}
        </button>
      </StandingLine>
    </>
  );
}
