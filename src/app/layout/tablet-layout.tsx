/** The tablet on a gym floor: flight and athlete over the floor; shapes, two curves and three numbers that reach across a hall. */

import { Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { SpokenCut } from '../../features/instant/cut.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { LaneSheet } from '../../features/joints/lane-sheet.tsx';
import { FigureHandle } from '../../features/pose/figure-handle.tsx';
import { SideSign } from '../../ui/icon.tsx';
import { makeAxis, tOf } from '../../ui/plot/axis.ts';
import { useSize } from '../../ui/size.ts';
import { useCut, useExplanation } from '../cut-values.ts';
import { useFirstRows } from '../first-story.ts';
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
import { LargeStageArea } from './stage/large-stage.tsx';
import { Stage } from './stage/stage.tsx';
import { StandingLine } from './standing-line.tsx';
import { useAxis, useRestHeight } from './steady.ts';
import { ThumbBar } from './thumb-bar.tsx';
import { FilledPlace } from './tools/filled-place.tsx';
import { findTool, hasOwnAir } from './tools/tool-list.ts';
import { isToolTall, ToolSheet } from './tools/tool-sheet.tsx';
import { TouchGround } from './touch-ground.tsx';
import { TouchAnswer, TouchSentence } from './touch-result.tsx';
import { useTouchRows } from './touch-rows.ts';
import { touchTexts as t } from './touch-words.ts';
import { useUnrolledViews } from './unrolled-views.ts';

const FLOOR = 48;
const BAR = 52;
const THUMB = 78;
const NAMES = 28;
const TILE = 56;
const SHAPES = NAMES + TILE;
/** px of the column with the athlete and the numbers: wide and narrow */
const COLUMN = { wide: 376, narrow: 292, from: 960 } as const;
const BESIDE = { left: 102, right: 50 } as const;
/** of what pictures and ground share: the pictures' part, and its bounds */
const AIR = { share: 0.58, least: 190, most: 560, ofTool: 0.44, low: 0.29 } as const;
const LEAST_GROUND = { one: 210, two: 252 } as const;
/** px for what is left at take-off */
const LEAVES = 30;

export function TabletLayout(props: { lanes: LaneList }) {
  const flight = useFlight();
  const shell = useShell();
  const time = useFloorTime();
  let root!: HTMLDivElement;
  let said!: HTMLElement;
  const size = useSize(() => root);
  const lineSize = useSize(() => said);
  const cut = useCut();
  const explanation = useExplanation();
  const story = useFirstRows();
  const rows = useTouchRows(story.rows);
  const two = useBesideParts();
  const width = (): number => Math.max(size().width, 700);
  const height = (): number => Math.max(size().height, 600);
  const above = (): number => BAR + lineSize().height;
  const rest = useRestHeight(() => lineSize().height);
  const column = (): number => (width() >= COLUMN.from ? COLUMN.wide : COLUMN.narrow);
  const timeWidth = (): number => width() - column();
  /** pictures and ground */
  const shared = (): number => height() - above() - FLOOR - THUMB;
  const hasPictures = (): boolean => hasOwnAir(findTool(shell.tool()));
  const airHeight = (): number =>
    isToolTall(shell)
      ? 0
      : shell.large.isOpen()
        ? shared() - SHAPES
        : hasPictures()
          ? Math.round(shared() * (shell.places.isAirLow() ? AIR.low : AIR.ofTool))
          : shell.tool() || isRowsOpen(shell, props.lanes)
            ? AIR.least
            : Math.round(
                Math.min(
                  Math.max(shared() * AIR.share, AIR.least),
                  AIR.most,
                  shared() - LEAST_GROUND[two() ? 'two' : 'one'],
                ),
              );
  const ground = (): number => shared() - airHeight();
  const axis = useAxis(flight.id, () => {
    const result = flight.result();
    return makeAxis(timeWidth(), result.flight.duration, BESIDE.left + leavingRoom(result, LEAVES), BESIDE.right);
  });
  const views = useUnrolledViews({
    axis,
    width: timeWidth,
    height: airHeight,
    margin: 6,
    scale: 130,
    place: { labelX: 52, ghosts: 5, labelSize: 15 },
  });
  return (
    <div class="tablet" ref={root} style={{ '--thumb': `${THUMB}px` }}>
      <TouchBar title />
      <section class="line" ref={said} style={{ 'min-height': rest() }} aria-label={texts.sentence.label}>
        <Show
          when={findTool(shell.tool())?.fillsAir}
          fallback={
            <>
              <TouchSentence />
              <TouchAnswer />
              <CautionLine oneLine />
            </>
          }
        >
          <FilledPlace name="headline" />
        </Show>
      </section>
      <main>
        <Show when={size().width > 0 && lineSize().height > 0}>
          <section class="air" style={{ height: `${airHeight()}px` }}>
            <Show when={airHeight() > 0 && hasPictures()}>
              <FilledPlace name="pictures" />
            </Show>
            <Show when={airHeight() > 0 && !hasPictures()}>
              <Show
                when={shell.large.isOpen()}
                fallback={
                  <>
                    <Stage width={timeWidth()} height={airHeight()} views={views()} timeAt={(x) => tOf(axis(), x)} />
                    <EnlargeButton right={column()} />
                    <div class="athlete" style={{ width: `${column()}px` }}>
                      <Show when={shell.tool() !== 'pose'}>
                        <FigureHandle
                          width={column()}
                          height={airHeight()}
                          touch
                          behind={two()?.beside}
                          onLarger={() => shell.openTool('pose')}
                        />
                        <Show when={two()}>
                          {(both) => <Dynamic component={both().BesideKey} beside={both().beside} />}
                        </Show>
                      </Show>
                    </div>
                  </>
                }
              >
                <LargeStageArea width={width()} height={airHeight()} />
              </Show>
            </Show>
          </section>
          <FloorBand axis={axis()} height={FLOOR} grip={108}>
            <p class="floor-sides">
              <SideSign side="left" /> {texts.stage.left} <SideSign side="right" /> {texts.stage.right}
            </p>
          </FloorBand>
          <div class="touch-row" style={{ height: `${ground()}px` }}>
            <TouchGround
              axis={axis()}
              height={ground()}
              tile={TILE}
              nameHeight={NAMES}
              lineWidth={3.2}
              plots={shell.large.isOpen() ? [] : rows.plots()}
            />
            <Show when={!shell.large.isOpen()}>
              <div class="touch-numbers" style={{ width: `${column()}px` }}>
                <FirstNumbers story={story} />
                <StandingLine>
                  <button
                    type="button"
                    class="link more-rows"
                    aria-expanded={shell.rows.open().size > 0}
                    onClick={() => shell.rows.toggleAll()}
                  >
                    {t.moreRows(MORE_ROWS)}
                  </button>
                </StandingLine>
              </div>
            </Show>
          </div>
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
            cut={cut()}
            explanation={explanation()}
            height={Math.max(ground() - SHAPES - UNDER_SHAPES, 170)}
            kept={rows.kept()}
            keep={rows.keep}
          />
          <LaneSheet lanes={props.lanes} axis={axis()} plotHeight={Math.max(120, ground() - 13)} />
          <ToolSheet axis={axis()} width={width()} height={ground()} pictures={airHeight()} device="tablet" />
          <SpokenCut cut={cut()} explanation={explanation()} />
        </Show>
      </main>
      <ThumbBar cut={cut()} filled={findTool(shell.tool())?.fillsAir} />
    </div>
  );
}
