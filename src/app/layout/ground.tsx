/** Beneath the floor, on the same ruler: shapes, and what they cause, as three large rows, open rows and folded ones; at the right the values at the cursor. */

import { createMemo, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { SpokenCut } from '../../features/instant/cut.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { ShapeRow } from '../../features/ruler/shape-row.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { LEFT } from '../bench-columns.ts';
import { besideTexts } from '../beside-words.ts';
import { type CutValues, useExplanation } from '../cut-values.ts';
import { calcFirstRows, type FirstStory } from '../first-rows.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { getFirstDrawers } from '../plot/first-drawers.ts';
import { drawLane } from '../plot/lane-curve.ts';
import { PlotCanvas, type PlotPiece } from '../plot/plot-canvas.tsx';
import { drawMoments, drawRates, drawTilt, type RowDrawer } from '../plot/rows.ts';
import { drawSmall } from '../plot/small-curves.ts';
import { drawEnergy, drawMomentum } from '../plot/stacks.ts';
import type { StageFit } from '../stage-fit.ts';
import { texts } from '../words.ts';
import { FirstThree } from './first-three.tsx';
import { FoldedRows } from './folded-rows.tsx';
import { BESIDE_GAP, BESIDE_TILE, FOOT, type GroundPlan, NAME } from './ground-plan.ts';
import { useBesideParts } from './late-beside.ts';
import { JointKeys, JointTitles, OpenCut, OpenTitles, ShapeLinks, UnderViews } from './late-rows.ts';
import { StartHere } from './start-here.tsx';
import { findTool } from './tools/tool-list.ts';
import { ToolPlace } from './tools/tool-place.tsx';

const open: Readonly<Record<string, RowDrawer>> = {
  rates: drawRates('both'),
  tilt: drawTilt,
  moments: drawMoments,
  momentum: drawMomentum,
  energy: drawEnergy,
};

export function Ground(props: {
  lanes: LaneList;
  plan: GroundPlan;
  story: FirstStory;
  cut: CutValues;
  axis: TimeAxis;
  width: number;
  /** left edge and width of the values */
  cutX: number;
  cutWidth: number;
  fit: StageFit;
  /** heights in the air are not to scale */
  isCompressed: boolean;
  listRows(): void;
}) {
  const cursor = useCursor();
  const flight = useFlight();
  const shell = useShell();
  const explanation = useExplanation();
  const rows = createMemo(() => calcFirstRows(flight.result().frames, props.cut.place, props.story));
  const two = useBesideParts();
  const boxes = () => props.plan.boxes;
  const pieces = createMemo<PlotPiece[]>(() => {
    const list: PlotPiece[] = [];
    const put = (id: string, draw: RowDrawer): void => {
      const box = boxes().get(id);
      if (box) list.push({ box, draw });
    };
    const openLane = props.lanes.open();
    for (const lane of props.lanes.shown()) put(lane.id, (pen, b) => drawLane(pen, lane, b, lane.id === openLane));
    const both = two();
    const turn = both?.beside.turn;
    const first =
      both && turn
        ? [both.drawBesideRate(turn), both.drawBesideMoment(turn), both.drawBesideMomentum]
        : getFirstDrawers(props.story);
    for (const [i, draw] of first.entries()) put(`first${i}`, draw);
    for (const [id, draw] of Object.entries(open)) put(id, draw);
    for (const row of props.plan.folded) put(`folded:${row}`, drawSmall(row, props.lanes.shown()));
    return list;
  });
  const press = (e: PointerEvent): void => startScrub(e, cursor, (x) => tOf(props.axis, x));
  const shapes = () => boxes().get('shapes') ?? { y: 0, height: 0 };
  const tile = (): number => props.plan.tile;
  const bottom = (): number => Math.max(...[...boxes().values()].map((b) => b.y + b.height));
  const isAnyOpen = (): boolean => props.plan.isBench || props.plan.open.length > 0;
  const aside = () => findTool(shell.tool(), 'aside');
  const hasViews = (): boolean => shell.rows.isOpen('views') && !shell.large.isOpen() && !aside();
  return (
    <section
      class="ground"
      classList={{ narrow: props.cutWidth < 380 }}
      style={{ height: `${props.plan.height}px` }}
      aria-label={texts.plots.label}
    >
      <div class="row-title shapes-title" style={{ top: `${shapes().y}px`, height: `${shapes().height}px` }}>
        <h2 classList={{ spoken: two() !== undefined }}>{texts.shapes.title}</h2>
        <Show when={!two()}>
          <p class="quiet">{texts.shapes.hint}</p>
        </Show>
        <Show when={shell.rows.isOpen('joints')}>
          <ShapeLinks isBench={props.plan.isBench} />
        </Show>
      </div>
      <Show when={shell.rows.isOpen('joints')}>
        <JointTitles lanes={props.lanes} boxes={boxes()} />
      </Show>
      <Show when={!props.plan.isBench && props.isCompressed}>
        <p class="air-note" style={{ left: `${props.cutX}px` }}>
          {texts.stage.compressed}
        </p>
      </Show>
      <Show when={isAnyOpen()}>
        <OpenTitles plan={props.plan} />
      </Show>
      <div
        class="time-column"
        style={{ left: `${LEFT}px`, width: `${props.axis.width}px`, height: `${bottom() + 8}px` }}
        onPointerDown={press}
      >
        <PlotCanvas
          axis={props.axis}
          height={bottom() + 4}
          shadeFrom={shapes().y + NAME}
          pieces={pieces()}
          lineWidth={2.2}
        />
        <div class="shape-place" style={{ top: `${shapes().y}px`, height: `${NAME + tile()}px` }}>
          <ShapeRow axis={props.axis} tile={tile()} names="all" />
        </div>
        <Show when={two()}>
          {(both) => (
            <div class="shape-place" style={{ top: `${shapes().y + NAME + tile() + BESIDE_GAP}px` }}>
              <Dynamic
                component={both().OtherShapes}
                axis={props.axis}
                tile={BESIDE_TILE}
                result={both().beside.result}
                label={besideTexts.shapes(both().beside.letter, both().beside.other)}
              />
            </div>
          )}
        </Show>
        <Show when={shell.rows.isOpen('joints')}>
          <JointKeys lanes={props.lanes} boxes={boxes()} axis={props.axis} />
        </Show>
      </div>
      <Show when={!isAnyOpen() && !two() && aside() === undefined && boxes().has('first0')}>
        {/* the sentence speaks of the whole flight, the large numbers of one moment */}
        <p class="first-at" style={{ left: `${props.cutX}px`, top: `${shapes().y + shapes().height - 18}px` }}>
          {texts.cut.at(formatNumber(props.cut.t, 2))}
        </p>
      </Show>
      <Show
        when={two()}
        fallback={<FirstThree rows={rows()} boxes={boxes()} cutX={props.cutX} hidden={aside() !== undefined} />}
      >
        {(both) => (
          <>
            <Dynamic
              component={both().BesideNames}
              beside={both().beside}
              top={shapes().y + NAME}
              tile={tile()}
              cutX={props.cutX}
              hasEndings={shell.rows.open().size === 0 && !aside()}
            />
            <Dynamic
              component={both().BesideThree}
              beside={both().beside}
              t={props.cut.t}
              boxes={boxes()}
              cutX={props.cutX}
              cutWidth={props.cutWidth}
              hidden={aside() !== undefined}
            />
          </>
        )}
      </Show>
      <FoldedRows
        plan={props.plan}
        lanes={props.lanes.shown()}
        cut={props.cut}
        cutX={props.cutX}
        hidden={aside() !== undefined}
        list={() => props.listRows()}
      />
      <Show
        when={aside()}
        fallback={
          <section
            class="cut"
            style={{ left: `${props.cutX}px`, width: `${props.cutWidth + 20}px` }}
            aria-label={texts.cut.label}
          >
            <Show when={isAnyOpen()}>
              <OpenCut
                plan={props.plan}
                lanes={props.lanes}
                cut={props.cut}
                explanation={explanation()}
                width={props.cutWidth}
              />
            </Show>
            <Show when={hasViews()}>
              <UnderViews plan={props.plan} lanes={props.lanes} width={props.cutWidth + 20} fit={props.fit} />
            </Show>
            <SpokenCut cut={props.cut} explanation={explanation()} />
          </section>
        }
      >
        {(tool) => (
          <div class="tool-aside-place">
            <ToolPlace
              tool={tool()}
              axis={props.axis}
              width={props.cutWidth + 16}
              height={props.plan.height}
              timeLeft={0}
              device="bench"
            />
          </div>
        )}
      </Show>
      <Show when={props.plan.hasFoot && !aside()}>
        <div class="ground-foot" style={{ top: `${props.plan.height - FOOT}px`, height: `${FOOT}px` }}>
          <StartHere />
        </div>
      </Show>
    </section>
  );
}
