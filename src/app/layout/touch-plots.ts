/** The curves of tablet, phone and hall by name, and which of them are shown first. */
import type { BesideTurn } from '../beside-numbers.ts';
import type { FirstRows } from '../first-rows.ts';
import { drawLateralMoment, drawLongMoment, drawMoments, drawRates, drawTilt, type RowDrawer } from '../plot/rows.ts';
import { drawEnergy, drawMomentum } from '../plot/stacks.ts';

const DRAWERS = {
  twistRate: drawRates('twist'),
  somersaultRate: drawRates('somersault'),
  rates: drawRates('both'),
  tilt: drawTilt,
  longMoment: drawLongMoment,
  lateralMoment: drawLateralMoment,
  moments: drawMoments,
  momentum: drawMomentum,
  energy: drawEnergy,
} as const satisfies Readonly<Record<string, RowDrawer>>;

export type PlotName = keyof typeof DRAWERS;
export const findDrawer = (name: PlotName): RowDrawer => DRAWERS[name];

/** The rate of the story and, under it, what explains it. */
export function firstPlots(rows: FirstRows): readonly [PlotName, PlotName] {
  if (rows.kind === 'twisting') return ['rates', 'tilt'];
  return rows.axis === 'long' ? ['twistRate', 'longMoment'] : ['somersaultRate', 'lateralMoment'];
}

/** Of two ways: what turns faster, and the moment about that axis. */
export function besidePlots(turn: BesideTurn | undefined): readonly [PlotName, PlotName] | undefined {
  if (turn === undefined) return undefined;
  return turn === 'twist' ? ['twistRate', 'longMoment'] : ['somersaultRate', 'lateralMoment'];
}
