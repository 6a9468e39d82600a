/** One canvas for everything that hangs from the floor: it is drawn whole, once a frame, from the result and the cursor. */

import { createSignal, onCleanup, onMount } from 'solid-js';
import { drawOnFrame } from '../../ui/frame.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { fitCanvas } from '../../ui/plot/fit-canvas.ts';
import { type PlotPalette, readPalette } from '../../ui/plot/palette.ts';
import { clearStamps } from '../../ui/plot/stamp.ts';
import { watchTheme } from '../../ui/theme.ts';
import { unitSystem } from '../../ui/units.ts';
import { useCursor, useFlight, useShell } from '../page.ts';
import { drawBackdrop, drawPin } from './backdrop.ts';
import { type Box, type Pen, penOf } from './pen.ts';
import { calcPlace } from './readout.ts';

export interface PlotPiece {
  readonly box: Box;
  draw(pen: Pen, box: Box): void;
}

export function usePalette() {
  const [palette, setPalette] = createSignal<PlotPalette>(readPalette());
  onMount(() => {
    const again = (): void => {
      clearStamps();
      setPalette(readPalette());
    };
    onCleanup(watchTheme(again));
    void document.fonts.ready.then(again);
  });
  return palette;
}

export function PlotCanvas(props: {
  axis: TimeAxis;
  height: number;
  /** where the grey columns begin: the top of the shape tiles */
  shadeFrom: number;
  pieces: readonly PlotPiece[];
  lineWidth: number;
  /** no numbers at the left of the curves */
  unticked?: boolean;
}) {
  const flight = useFlight();
  const cursor = useCursor();
  const shell = useShell();
  let canvas!: HTMLCanvasElement;
  const palette = usePalette();
  const paint = (): void => {
    const axis = props.axis;
    const height = props.height;
    const pieces = props.pieces;
    const sheet = fitCanvas(canvas, axis.width, height);
    if (!sheet) return;
    const { g, ratio } = sheet;
    const result = flight.result();
    const cursorS = cursor.at();
    const own: Pen = {
      g,
      ratio,
      axis,
      result,
      palette: palette(),
      units: unitSystem(),
      cursor: cursorS,
      place: calcPlace(result.frames, cursorS),
      lineWidth: props.lineWidth,
      unticked: props.unticked,
    };
    const other = shell.beside.shown();
    const earlier = flight.earlier();
    const pen: Pen = {
      ...own,
      ...(other ? { beside: { ...other, pen: penOf(own, other.result) } } : {}),
      ...(earlier ? { earlier: penOf(own, earlier) } : {}),
    };
    drawBackdrop(pen, { y: props.shadeFrom, height: height - props.shadeFrom });
    const pin = cursor.pin();
    if (pin !== undefined) drawPin(pen, { y: 0, height }, pin);
    for (const piece of pieces) piece.draw(pen, piece.box);
  };
  drawOnFrame(flight.result, paint);
  return <canvas ref={canvas} class="plots" style={{ width: `${props.axis.width}px`, height: `${props.height}px` }} />;
}
