/** The phone on its side: ruler, shapes, one curve and three numbers on one screen that does not scroll. */
import { createSignal, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { LaneSheet } from '../../features/joints/lane-sheet.tsx';
import { FigureHandle } from '../../features/pose/figure-handle.tsx';
import { makeAxis, tOf } from '../../ui/plot/axis.ts';
import { useFloorTime } from '../floor-hand.ts';
import { useFlight, useShell } from '../page.ts';
import { leavingRoom } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { TouchBar } from './bar.tsx';
import { CautionLine } from './caution-line.tsx';
import { FirstNumbers } from './first-numbers.tsx';
import { FloorBand } from './floor-band.tsx';
import { useBesideParts } from './late-beside.ts';
import type { PhoneParts } from './phone-upright.tsx';
import { MORE_ROWS, RowsSheet } from './rows-sheet.tsx';
import { EnlargeButton } from './stage/enlarge-button.tsx';
import { LargeStageArea } from './stage/late-large.ts';
import { Stage } from './stage/stage.tsx';
import { StandingLine } from './standing-line.tsx';
import { useAxis } from './steady.ts';
import { FilledPlace } from './tools/filled-place.tsx';
import { findTool, hasOwnAir } from './tools/tool-list.ts';
import { isToolTall, ToolSheet } from './tools/tool-sheet.tsx';
import { TouchGround } from './touch-ground.tsx';
import { TouchAnswer, TouchSentence } from './touch-result.tsx';
import { touchTexts as t } from './touch-words.ts';
import { useUnrolledViews } from './unrolled-views.ts';

const BAR = 42;
const FLOOR = 44;
const NAMES = 22;
const TILE = 44;
/** the curve's part of what it shares with the pictures, and its least; under three numbers without a curve */
const CURVE = { share: 0.24, least: 44, none: 32 } as const;
const LEAST_AIR = 96;
const SHAPES = NAMES + TILE;
/** px of a tool under pictures of its own: what touches, its head, the caution */
const LEAST_STRIP = 101;
/** of two ways: the other's shapes, which are not pressed, and px over them */
const TILES_TWO = { own: TILE, tile: 20, gap: 2 } as const;
const SHAPES_TWO = SHAPES + TILES_TWO.gap + TILES_TWO.tile;
/** px of the column with what is asked and the numbers */
const COLUMN = 232;
const BESIDE = { left: 96, right: 60 } as const;
const LEAVES = 30;

export function PhoneSide(props: PhoneParts) {
  const shell = useShell();
  const flight = useFlight();
  const time = useFloorTime();
  const width = (): number => props.size.width;
  const timeWidth = (): number => width() - COLUMN;
  const [isAthlete, setAthlete] = createSignal(false);
  /** under the sentence, over the thumb bar */
  const whole = (): number => props.size.height - BAR - props.thumb;
  const isPosing = (): boolean => shell.tool() === 'pose';
  /** beside the pictures is what is asked, where neither has their place */
  const hasTool = (): boolean => shell.tool() !== undefined;
  /** a tool's own pictures keep their place until it takes the height */
  const hasPictures = (): boolean => hasOwnAir(findTool(shell.tool())) && !isToolTall(shell);
  const two = useBesideParts();
  const shapes = (): number => (two() ? SHAPES_TWO : SHAPES);
  const isLarge = (): boolean => shell.large.isOpen() || isAthlete();
  /** of what is under the floor: a tool has all of it, the pose tool none */
  const ground = (): number =>
    isPosing() || shell.large.isOpen()
      ? 0
      : hasPictures()
        ? LEAST_STRIP
        : hasTool()
          ? whole() - FLOOR
          : shapes() + (isLarge() ? CURVE.none : curve());
  const curve = (): number => Math.max(CURVE.least, Math.round((whole() - FLOOR - shapes()) * CURVE.share));
  const airHeight = (): number => Math.max(whole() - FLOOR - ground(), hasTool() ? 0 : LEAST_AIR);
  /** the athlete beside the pose tool */
  const poseWidth = (): number => Math.round(width() / 2);
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(timeWidth(), result.flight.duration, BESIDE.left + leavingRoom(result, LEAVES), BESIDE.right);
  });
  const views = useUnrolledViews({
    axis,
    width: timeWidth,
    height: airHeight,
    margin: 4,
    scale: 110,
    place: { labelX: 38, ghosts: 5, labelSize: 13 },
  });
  return (
    <>
      <TouchBar title={false} />
      <div class="side-sentence">
        <Show when={findTool(shell.tool())?.fillsAir} fallback={<TouchSentence />}>
          <FilledPlace name="headline" />
        </Show>
      </div>
      <section
        class="line"
        classList={{ away: hasTool() }}
        style={{ height: `${airHeight()}px` }}
        aria-label={texts.sentence.label}
      >
        <TouchAnswer />
        <CautionLine short />
        <StandingLine />
      </section>
      <main>
        <section
          class="air"
          style={{ height: `${airHeight()}px`, ...(isPosing() ? { width: `${poseWidth()}px` } : {}) }}
        >
          <Show when={hasPictures()}>
            <FilledPlace name="pictures" />
          </Show>
          <Show when={!hasTool()}>
            <Show
              when={shell.large.isOpen()}
              fallback={
                <Show
                  when={isAthlete()}
                  fallback={
                    <>
                      <Stage width={timeWidth()} height={airHeight()} views={views()} timeAt={(x) => tOf(axis(), x)} />
                      <EnlargeButton right={COLUMN} />
                    </>
                  }
                >
                  <FigureHandle
                    width={timeWidth()}
                    height={airHeight()}
                    touch
                    behind={two()?.beside}
                    onLarger={() => shell.openTool('pose')}
                  />
                  <Show when={two()}>{(both) => <Dynamic component={both().BesideKey} beside={both().beside} />}</Show>
                </Show>
              }
            >
              <LargeStageArea width={timeWidth()} height={airHeight()} />
            </Show>
          </Show>
        </section>
        <FloorBand axis={axis()} height={FLOOR} grip={86}>
          <Show when={!hasTool()}>
            <button
              type="button"
              class="on-floor to-athlete"
              onClick={() => {
                if (shell.large.isOpen()) shell.toggleLarge();
                else setAthlete(!isAthlete());
              }}
            >
              {isLarge() ? t.flight : t.athlete}
            </button>
            <button
              type="button"
              class="on-floor more-rows"
              aria-expanded={shell.rows.open().size > 0}
              onClick={() => shell.rows.toggleAll()}
            >
              {t.moreRows(MORE_ROWS)}
            </button>
          </Show>
        </FloorBand>
        <Show when={!hasTool() && ground() > 0}>
          <div class="touch-row" style={{ height: `${ground()}px` }}>
            <TouchGround
              axis={axis()}
              height={ground()}
              tile={TILE}
              nameHeight={NAMES}
              lineWidth={2.6}
              plots={isLarge() ? [] : props.rows.plots().slice(props.rows.kept() ? 1 : 0, props.rows.kept() ? 2 : 1)}
              unticked
              two={TILES_TWO}
              shapesTitle={texts.shapes.title}
            />
            <FirstNumbers story={props.story} />
          </div>
        </Show>
        <div
          class="plumb"
          aria-hidden="true"
          style={{
            transform: `translate(${time.x(axis())}px, ${airHeight()}px)`,
            height: `${FLOOR + ground()}px`,
          }}
        />
        <RowsSheet
          axis={axis()}
          lanes={props.lanes}
          cut={props.cut}
          explanation={props.explanation}
          height={airHeight() - 2}
          kept={props.rows.kept()}
          keep={props.rows.keep}
        />
        <LaneSheet lanes={props.lanes} axis={axis()} plotHeight={120} />
        <ToolSheet
          axis={axis()}
          width={isPosing() ? width() - poseWidth() : width()}
          height={hasPictures() ? ground() : whole() - FLOOR}
          pictures={hasPictures() ? airHeight() : 0}
          device="phone"
          fixed
          bottom={isPosing() ? FLOOR : 0}
          left={isPosing() ? poseWidth() : 0}
        />
      </main>
    </>
  );
}
