/** A joint lane's line: closed (22 px, own scale) or open (range, kinds, speed). */
import { DEG } from '../../../sim/math/angles.ts';
import type { Lane } from '../../document/lanes.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import { drawHatch } from './backdrop.ts';
import {
  type Box,
  type Curve,
  curveAt,
  drawCurve,
  drawRing,
  drawRule,
  drawTick,
  makeScale,
  type Pen,
  type Scale,
} from './pen.ts';

/** Closed lanes show at least this many degrees, so that a still joint does not look busy. */
const LEAST_SPAN = 60;

export function laneScale(lane: Lane, box: Box, open: boolean): Scale {
  if (open) {
    const low = Math.min(lane.rangeDeg[0], lane.lowDeg);
    const high = Math.max(lane.rangeDeg[1], lane.highDeg);
    return makeScale({ y: box.y + 12, height: box.height - 24 }, low, high);
  }
  const spare = Math.max(0, LEAST_SPAN - (lane.highDeg - lane.lowDeg)) / 2;
  return makeScale({ y: box.y + 5, height: box.height - 10 }, lane.lowDeg - spare, lane.highDeg + spare);
}

const laneCurve = (pen: Pen, lane: Lane): Curve => {
  const { frames, flight } = pen.result;
  const width = flight.body.angles.length;
  return (i) => frames.angles[i * width + lane.column] * DEG;
};

export function drawLane(pen: Pen, lane: Lane, box: Box, open: boolean): void {
  const scale = laneScale(lane, box, open);
  const curve = laneCurve(pen, lane);
  if (open) drawRange(pen, lane, box, scale);
  else drawRule(pen, box.y + box.height, false);
  drawCurve(pen, curve, scale, 'ink', open ? pen.lineWidth : pen.lineWidth * 0.8);
  drawRing(pen, curveAt(pen, curve), scale, 'ink');
}

function drawRange(pen: Pen, lane: Lane, box: Box, scale: Scale): void {
  const { axis } = pen;
  const x = axis.x0;
  const width = xOf(axis, axis.duration) - x;
  const [low, high] = lane.rangeDeg;
  drawHatch(pen, x, box.y, width, Math.max(0, scale(high) - box.y));
  drawHatch(pen, x, scale(low), width, Math.max(0, box.y + box.height - scale(low)));
  for (const v of [low, high]) {
    drawRule(pen, scale(v), true);
    drawTick(pen, scale(v), `${formatNumber(v, 0)}°`);
  }
  if (low < 0 && high > 0) {
    drawRule(pen, scale(0), false);
    drawTick(pen, scale(0), '0°');
  }
}
