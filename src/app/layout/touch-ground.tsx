/** Shapes and a few curves under the floor, for fingers and for a hall. */

import { createMemo, For, type JSX, Show } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { ShapeRow } from '../../features/ruler/shape-row.tsx';
import { type TimeAxis, tOf } from '../../ui/plot/axis.ts';
import { startScrub } from '../../ui/scrub.ts';
import { besideTexts } from '../beside-words.ts';
import { useCursor } from '../page.ts';
import { PlotCanvas, type PlotPiece } from '../plot/plot-canvas.tsx';
import type { RowDrawer } from '../plot/rows.ts';
import { texts } from '../words.ts';
import { useBesideParts } from './late-beside.ts';
import { findDrawer, type PlotName } from './touch-plots.ts';

export interface TouchPlot {
  readonly kind: PlotName;
  readonly share: number;
  readonly title: string;
  readonly unit?: string;
}

interface TwoTiles {
  readonly own: number;
  readonly tile: number;
  readonly gap: number;
}
/** Of two ways: one's own tiles, which a finger takes, those of the other, and px between the two. */
export const TWO: TwoTiles = { own: 44, tile: 26, gap: 4 };
/** The curves that both ways are drawn in, with what is between them. */
const RATES = { twist: 'twistRate', somersault: 'somersaultRate' } as const;
const MOMENTS = { twist: 'longMoment', somersault: 'lateralMoment' } as const;
/** px of a letter of a shape's name */
const LETTER = 7;
/** px between two curves, and from the shapes to the first; numbers at their left need more */
const GAP = { ticked: 20, unticked: 10 } as const;

export function TouchGround(props: {
  axis: TimeAxis;
  height: number;
  tile: number;
  nameHeight: number;
  lineWidth: number;
  plots: readonly TouchPlot[];
  /** no numbers at the left of the curves, where they have no room */
  unticked?: boolean;
  shapesTitle?: string;
  /** of the rows of two ways, where it is not `TWO` */
  two?: TwoTiles;
  /** px of a letter of a shape's name */
  letter?: number;
  children?: JSX.Element;
}) {
  const cursor = useCursor();
  const gap = (): number => (props.unticked ? GAP.unticked : GAP.ticked);
  const two = useBesideParts();
  const tiles = (): TwoTiles => props.two ?? TWO;
  const tile = (): number => (two() ? tiles().own : props.tile);
  const shapesHeight = (): number => props.nameHeight + tile() + (two() ? tiles().gap + tiles().tile : 0);
  const boxes = createMemo(() => {
    const room = props.height - shapesHeight() - gap() * props.plots.length - (props.unticked ? 4 : 12);
    const shares = props.plots.reduce((sum, one) => sum + one.share, 0) || 1;
    let y = shapesHeight() + gap();
    return props.plots.map((one) => {
      const box = { y: Math.round(y), height: Math.max(16, Math.round((room * one.share) / shares)) };
      y += box.height + gap();
      return box;
    });
  });
  const drawerOf = (kind: PlotName): RowDrawer => {
    const both = two();
    const turn = both?.beside.turn;
    if (both && turn && kind === RATES[turn]) return both.drawBesideRate(turn);
    if (both && turn && kind === MOMENTS[turn]) return both.drawBesideMoment(turn);
    return findDrawer(kind);
  };
  const pieces = createMemo<PlotPiece[]>(() =>
    props.plots.map((one, i) => ({ box: boxes()[i], draw: drawerOf(one.kind) })),
  );
  const press = (e: PointerEvent): void => startScrub(e, cursor, (x) => tOf(props.axis, x));
  return (
    <section
      class="touch-ground"
      style={{ height: `${props.height}px`, width: `${props.axis.width}px`, '--take-off': `${props.axis.x0}px` }}
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
          unticked={props.unticked}
        />
        <div class="shape-place" style={{ top: '0', height: `${props.nameHeight + tile()}px` }}>
          <ShapeRow axis={props.axis} tile={tile()} names="all" touch letter={props.letter ?? LETTER} />
        </div>
        <Show when={two()}>
          {(both) => (
            <div class="shape-place" style={{ top: `${props.nameHeight + tile() + tiles().gap}px` }}>
              <Dynamic
                component={both().OtherShapes}
                axis={props.axis}
                tile={tiles().tile}
                result={both().beside.result}
                label={besideTexts.shapes(both().beside.letter, both().beside.other)}
              />
            </div>
          )}
        </Show>
      </div>
      <Show when={two()}>
        {(both) => (
          <Dynamic
            component={both().BesideRowNames}
            beside={both().beside}
            top={props.nameHeight}
            tile={tile()}
            gap={tiles().gap}
            otherTile={tiles().tile}
          />
        )}
      </Show>
      <Show when={two() ? undefined : props.shapesTitle}>
        {(title) => (
          <p class="plot-title" style={{ top: `${props.nameHeight}px`, height: `${props.tile}px` }}>
            <b>{title()}</b>
          </p>
        )}
      </Show>
      <For each={props.plots}>
        {(plot, i) => (
          <p class="plot-title" style={{ top: `${boxes()[i()]?.y ?? 0}px`, height: `${boxes()[i()]?.height ?? 0}px` }}>
            <b>{plot.title}</b>
            <Show when={plot.unit}>
              <span class="unit">{plot.unit}</span>
            </Show>
          </p>
        )}
      </For>
      {props.children}
    </section>
  );
}
