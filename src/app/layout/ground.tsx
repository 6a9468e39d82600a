/** Beneath the floor, on the same ruler: shapes, joints, and everything they cause; at the right the cut through it. */

import { createMemo, For, type JSX, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { withoutSide } from '../../../sim/math/side.ts';
import { Bounds } from '../../features/instant/bounds.tsx';
import { CutHead, CutRates, Explanation, MomentBars, SoFar, SpokenCut, Value } from '../../features/instant/cut.tsx';
import { LaneEditor } from '../../features/joints/lane-editor.tsx';
import { LaneKeys } from '../../features/joints/lane-keys.tsx';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { laneTexts } from '../../features/joints/words.ts';
import { ShapeRow } from '../../features/ruler/shape-row.tsx';
import type { ViewPlace } from '../../pictures/stage-input.ts';
import { Icon, SideSign } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { say, unitOf } from '../../ui/units.ts';
import { LEFT, RIGHT } from '../bench-columns.ts';
import { Composition } from '../composition.tsx';
import { useCut, useExplanation } from '../cut-values.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { drawLane } from '../plot/lane-curve.ts';
import type { Box } from '../plot/pen.ts';
import { PlotCanvas, type PlotPiece } from '../plot/plot-canvas.tsx';
import { calcPlace, readAt } from '../plot/readout.ts';
import { planRows, type RowWish } from '../plot/row-plan.ts';
import { drawMoments, drawRates, drawTilt } from '../plot/rows.ts';
import { drawEnergy, drawMomentum } from '../plot/stacks.ts';
import { wordJoint } from '../say/body-words.ts';
import { texts } from '../words.ts';
import { Stage } from './stage/stage.tsx';
import { StageNames } from './stage/stage-names.tsx';
import { findTool } from './tools/tool-list.ts';
import { ToolPlace } from './tools/tool-place.tsx';

const p = texts.plots;
const LANE = 24;
const OPEN_LANE = 182;
const TILE = 46;
const NAME = 18;

const drawers = {
  rate: drawRates('both'),
  tilt: drawTilt,
  moments: drawMoments,
  momentum: drawMomentum,
  energy: drawEnergy,
};
type PlotId = keyof typeof drawers;
const plots = Object.keys(drawers) as PlotId[];

export function Ground(props: {
  lanes: LaneList;
  axis: TimeAxis;
  width: number;
  height: number;
  pxPerM: number;
  sideX0: number;
}) {
  const cursor = useCursor();
  const flight = useFlight();
  const shell = useShell();
  const cut = useCut();
  const explanation = useExplanation();
  const plan = createMemo(() => {
    const wishes: RowWish[] = [{ id: 'shapes', least: TILE + NAME, grow: 0, gap: 4, yields: 0 }];
    props.lanes.shown().forEach((lane, i) => {
      const tall = lane.id === props.lanes.open() ? OPEN_LANE : LANE;
      wishes.push({ id: lane.id, least: tall, grow: 0, gap: i === 0 ? 7 : 0, yields: 0 });
    });
    wishes.push(
      { id: 'others', least: 22, grow: 0, gap: 0, yields: 0 },
      { id: 'rate', least: 60, grow: 5, gap: 6, yields: 1 },
      { id: 'tilt', least: 32, grow: 2, gap: 12, yields: 2 },
      { id: 'moments', least: 54, grow: 3, gap: 12, yields: 3 },
      { id: 'momentum', least: 36, grow: 1.5, gap: 14, yields: 4 },
      { id: 'energy', least: 36, grow: 1.5, gap: 13, yields: 5 },
    );
    return planRows(wishes, props.height - 12);
  });
  const box = (id: string): Box => plan().get(id) ?? { y: 0, height: 0 };
  const pieces = createMemo<PlotPiece[]>(() => [
    ...props.lanes.shown().map(
      (lane) =>
        ({
          box: box(lane.id),
          draw: (pen, b) => drawLane(pen, lane, b, lane.id === props.lanes.open()),
        }) satisfies PlotPiece,
    ),
    ...plots.filter((id) => plan().has(id)).map((id) => ({ box: box(id), draw: drawers[id] })),
  ]);
  const laneIds = createMemo(() => props.lanes.shown().map((l) => l.id), [], {
    equals: (a, b) => a.join() === b.join(),
  });
  const lane = (id: string) => props.lanes.shown().find((l) => l.id === id);
  const press = (e: PointerEvent): void => startScrub(e, cursor, (x) => tOf(props.axis, x));
  const laneValue = (column: number): string => {
    const { frames, skill } = flight.result();
    const v = readAt(frames.angles, calcPlace(frames, cursor.at()), skill.body.angles.length, column) * DEG;
    return `${formatNumber(v, 0)}°`;
  };
  // one sign a lane: the rest is in the list
  const laneCautions = createMemo(() => {
    const seen = new Set<string>();
    return flight.result().cautions.filter((one) => {
      const id = lane(one.angle)?.id ?? withoutSide(one.angle);
      return !seen.has(id) && seen.add(id);
    });
  });
  const at = (id: string): JSX.CSSProperties => ({ top: `${box(id).y}px`, height: `${box(id).height}px` });
  const topHeight = (): number => {
    const ids = laneIds();
    const last = box(ids.at(-1) ?? 'shapes');
    return Math.min(last.y + last.height + 4, 176);
  };
  const topView = createMemo<ViewPlace[]>(() => [
    {
      kind: 'top',
      x: 0,
      y: 0,
      width: RIGHT - 146,
      height: topHeight(),
      floorY: topHeight() / 2 + 6,
      pxPerM: props.pxPerM,
      pxPerS: 0,
      x0: props.sideX0,
      ghosts: 2,
    },
  ]);
  const cutColumn = () => (
    <section class="cut" style={{ width: `${RIGHT - 24}px` }} aria-label={texts.cut.label}>
      <div class="cut-cell" style={at('shapes')}>
        <CutHead cut={cut()} />
      </div>
      <For each={laneIds()}>
        {(id) => (
          <Show when={lane(id)}>
            {(l) => (
              <p class="cut-cell lane-value" style={{ top: `${box(id).y}px`, height: `${LANE}px` }}>
                {laneValue(l().column)}
              </p>
            )}
          </Show>
        )}
      </For>
      <div class="top-view" style={{ height: `${topHeight()}px` }}>
        <Stage width={RIGHT - 146} height={topHeight()} views={topView()}>
          <StageNames views={topView()} />
        </Stage>
        <Bounds />
      </div>
      <CutRow
        id="rate"
        plan={plan()}
        value={<CutRates cut={cut()} />}
        made={
          <>
            <SoFar cut={cut()} />
            <Explanation words={explanation()} />
          </>
        }
      />
      <CutRow
        id="tilt"
        plan={plan()}
        value={
          <Value value={Math.abs(cut().tilt)} decimals={1} unit="°" word={texts.cut.tiltWord(cut().tilt)} hue="tilt" />
        }
      />
      <CutRow
        id="moments"
        plan={plan()}
        value={
          <Value
            value={cut().long}
            decimals={2}
            quantity="moment"
            unit=""
            hue="twist"
            word={texts.cut.times(formatNumber(cut().lateral / cut().long, cut().lateral / cut().long < 4 ? 1 : 0))}
          />
        }
        made={<MomentBars cut={cut()} />}
      />
      <CutRow
        id="momentum"
        plan={plan()}
        value={<Value value={cut().momentum} decimals={1} quantity="momentum" unit="" word={texts.cut.constant} />}
        made={<Composition cut={cut()} kind="momentum" />}
      />
      <CutRow
        id="energy"
        plan={plan()}
        value={
          <Value
            value={cut().energy}
            decimals={0}
            quantity="energy"
            unit=""
            word={texts.cut.muscle(say('energy', cut().work))}
          />
        }
        made={<Composition cut={cut()} kind="energy" />}
      />
      <SpokenCut cut={cut()} explanation={explanation()} />
    </section>
  );
  return (
    <section class="ground" style={{ height: `${props.height}px` }} aria-label={texts.plots.label}>
      <div class="row-title" style={at('shapes')}>
        <h2>{texts.shapes.title}</h2>
        <p class="quiet">{texts.shapes.hint}</p>
        <button type="button" class="plain small other-joints" onClick={() => shell.openPanel('shapes')}>
          {texts.shapes.list}
        </button>
      </div>
      <For each={laneIds()}>
        {(id) => (
          <Show when={lane(id)}>
            {(l) => (
              <div class="row-title lane-title" style={at(id)}>
                <button
                  type="button"
                  class="lane-name"
                  aria-expanded={props.lanes.open() === id}
                  title={props.lanes.open() === id ? laneTexts.close : laneTexts.open}
                  onClick={() => props.lanes.setOpen(props.lanes.open() === id ? undefined : id)}
                >
                  <SideSign side={l().sign} />
                  {wordJoint(id)}
                </button>
                <Show when={props.lanes.open() === id}>
                  <LaneEditor
                    lane={l()}
                    chosen={props.lanes.key()}
                    choose={props.lanes.setKey}
                    close={() => props.lanes.setOpen(undefined)}
                  />
                </Show>
              </div>
            )}
          </Show>
        )}
      </For>
      <div class="row-title" style={at('others')}>
        <button type="button" class="plain small other-joints" onClick={() => shell.openPanel('joints')}>
          {laneTexts.others}
        </button>
      </div>
      <RowTitle id="rate" plan={plan()} title={p.rate} unit={unitOf('rate')}>
        <p class="twist">
          <Icon name="twist" size={16} /> {p.Twist}
        </p>
        <p class="som">
          <Icon name="somersault" size={16} /> {p.Somersault}
        </p>
      </RowTitle>
      <RowTitle id="tilt" plan={plan()} title={p.tilt} unit="">
        <p class="quiet">
          <Icon name="tilt" size={16} class="tilt" /> {p.fromPlane}
        </p>
      </RowTitle>
      <RowTitle id="moments" plan={plan()} title={p.moments} unit={unitOf('moment')} hint={p.momentsHint} />
      <RowTitle id="momentum" plan={plan()} title={p.momentum} unit="" hint={p.momentumHint(unitOf('momentum'))} />
      <RowTitle id="energy" plan={plan()} title={p.energy} unit={unitOf('energy')} hint={p.energyHint} />

      <div
        class="time-column"
        style={{ left: `${LEFT}px`, width: `${props.axis.width}px`, height: `${props.height}px` }}
        onPointerDown={press}
      >
        <PlotCanvas
          axis={props.axis}
          height={props.height - 8}
          shadeFrom={box('shapes').y + NAME}
          hatch={{ y: 0, height: box('shapes').y + box('shapes').height }}
          pieces={pieces()}
          lineWidth={2.2}
        />
        <div class="shape-place" style={at('shapes')}>
          <ShapeRow axis={props.axis} tile={TILE} names="all" />
        </div>
        <For each={laneIds()}>
          {(id) => (
            <Show when={lane(id)}>
              {(l) => (
                <LaneKeys
                  axis={props.axis}
                  lane={l()}
                  box={box(id)}
                  open={props.lanes.open() === id}
                  chosen={props.lanes.key()}
                  choose={(i) => {
                    props.lanes.setOpen(id);
                    props.lanes.setKey(i);
                  }}
                />
              )}
            </Show>
          )}
        </For>
        <For each={laneCautions()}>
          {(one) => (
            <Show when={lane(one.angle) ?? lane(withoutSide(one.angle))}>
              {(l) => (
                <span
                  class="lane-caution"
                  style={{ left: `${xOf(props.axis, one.t)}px`, top: `${box(l().id).y + 2}px` }}
                  aria-hidden="true"
                >
                  <Icon name="caution" size={16} />
                </span>
              )}
            </Show>
          )}
        </For>
      </div>

      <Show when={findTool(shell.tool(), 'aside')} fallback={cutColumn()}>
        {(tool) => (
          <div class="tool-aside-place">
            <ToolPlace
              tool={tool()}
              axis={props.axis}
              width={RIGHT - 8}
              height={props.height}
              timeLeft={0}
              device="bench"
            />
          </div>
        )}
      </Show>
    </section>
  );
}

function RowTitle(props: {
  id: PlotId;
  plan: ReadonlyMap<string, Box>;
  title: string;
  unit: string;
  hint?: string;
  children?: JSX.Element;
}) {
  return (
    <Show when={props.plan.get(props.id)}>
      {(b) => (
        <div class="row-title" style={{ top: `${b().y - 5}px`, height: `${b().height + 8}px` }}>
          <h2>
            {props.title}
            <span class="unit">{props.unit}</span>
          </h2>
          <Show when={props.hint}>
            <p class="quiet">{props.hint}</p>
          </Show>
          {props.children}
        </div>
      )}
    </Show>
  );
}

function CutRow(props: { id: PlotId; plan: ReadonlyMap<string, Box>; value: JSX.Element; made?: JSX.Element }) {
  return (
    <Show when={props.plan.get(props.id)}>
      {(b) => (
        <div class="cut-row" style={{ top: `${b().y - 6}px`, height: `${b().height + 12}px` }}>
          <div class="cut-number">{props.value}</div>
          <div class="cut-made">{props.made}</div>
        </div>
      )}
    </Show>
  );
}
