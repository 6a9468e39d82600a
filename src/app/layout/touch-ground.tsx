/** Shapes and a few plots under the floor, for fingers. */

import { createMemo, For, type JSX } from 'solid-js';
import { ShapeRow } from '../../features/ruler/shape-row.tsx';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import type { QuantityKind } from '../../ui/units.ts';
import { useCursor } from '../page.ts';
import { PlotCanvas, type PlotPiece } from '../plot/plot-canvas.tsx';
import { drawLateralMoment, drawLongMoment, drawMoments, drawRates, drawTilt, type RowDrawer } from '../plot/rows.ts';
import { drawEnergy, drawMomentum } from '../plot/stacks.ts';
import { texts } from '../words.ts';

export const PLOTS: Readonly<Record<string, RowDrawer>> = {
  twistRate: drawRates('twist'),
  somersaultRate: drawRates('somersault'),
  rates: drawRates('both'),
  tilt: drawTilt,
  longMoment: drawLongMoment,
  lateralMoment: drawLateralMoment,
  moments: drawMoments,
  momentum: drawMomentum,
  energy: drawEnergy,
};

export const PLOT_QUANTITIES: Readonly<Record<string, QuantityKind>> = {
  twistRate: 'rate',
  somersaultRate: 'rate',
  rates: 'rate',
  tilt: 'angle',
  longMoment: 'moment',
  lateralMoment: 'moment',
  moments: 'moment',
  momentum: 'momentum',
  energy: 'energy',
};

export interface TouchPlot {
  readonly kind: string;
  readonly share: number;
  readonly head: JSX.Element;
  readonly headHeight: number;
}

export function TouchGround(props: {
  axis: TimeAxis;
  height: number;
  tile: number;
  nameHeight: number;
  names: 'all' | 'chosen';
  lineWidth: number;
  between?: JSX.Element;
  betweenHeight?: number;
  plots: readonly TouchPlot[];
}) {
  const cursor = useCursor();
  const shapesHeight = (): number => props.nameHeight + props.tile;
  const start = (): number => shapesHeight() + (props.betweenHeight ?? 0) + 6;
  const boxes = createMemo(() => {
    const heads = props.plots.reduce((sum, one) => sum + one.headHeight, 0);
    const room = props.height - start() - heads - 10;
    const shares = props.plots.reduce((sum, one) => sum + one.share, 0) || 1;
    let y = start();
    return props.plots.map((one) => {
      const tall = (room * one.share) / shares;
      const made = { headY: Math.round(y), y: Math.round(y + one.headHeight), height: Math.round(tall - 8) };
      y += one.headHeight + tall;
      return made;
    });
  });
  const pieces = createMemo<PlotPiece[]>(() =>
    props.plots.map((one, i) => ({ box: boxes()[i], draw: PLOTS[one.kind] })),
  );
  const press = (e: PointerEvent): void => startScrub(e, cursor, (x) => tOf(props.axis, x));
  return (
    <section
      class="touch-ground"
      style={{
        height: `${props.height}px`,
        width: `${props.axis.width}px`,
        '--take-off': `${props.axis.x0}px`,
      }}
      aria-label={texts.plots.label}
    >
      <div
        class="time-column"
        style={{ left: '0', width: `${props.axis.width}px`, height: `${props.height}px` }}
        onPointerDown={press}
      >
        <PlotCanvas
          axis={props.axis}
          height={props.height}
          shadeFrom={props.nameHeight}
          pieces={pieces()}
          lineWidth={props.lineWidth}
        />
        <div class="shape-place" style={{ top: '0', height: `${shapesHeight()}px` }}>
          <ShapeRow axis={props.axis} tile={props.tile} names={props.names} touch />
        </div>
      </div>
      <div class="between" style={{ top: `${shapesHeight() + 4}px` }}>
        {props.between}
      </div>
      <For each={props.plots.map((one) => one.kind)}>
        {(_, i) => (
          <div
            class="plot-head"
            style={{ top: `${boxes()[i()]?.headY ?? 0}px`, height: `${props.plots[i()].headHeight}px` }}
          >
            {props.plots[i()].head}
          </div>
        )}
      </For>
    </section>
  );
}
