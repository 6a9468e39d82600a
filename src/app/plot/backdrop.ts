/** Behind all rows: grey where a joint moves, lines each 0.1 s, take-off and landing, hatched outside of the flight. */
import { xOf } from '../../ui/plot/axis.ts';
import type { Box, Pen } from './pen.ts';

export function drawBackdrop(pen: Pen, box: Box): void {
  const { g, axis, palette, result } = pen;
  const end = xOf(axis, axis.duration);
  g.fillStyle = palette.colour.moving;
  for (const [from, to] of result.flight.schedule.moving) {
    const a = Math.max(xOf(axis, from), axis.x0);
    const b = Math.min(xOf(axis, to), end);
    if (b > a) g.fillRect(a, box.y, b - a, box.height);
  }
  g.lineWidth = 1;
  g.strokeStyle = palette.colour.rule;
  g.beginPath();
  for (let k = 1; k * 0.1 < axis.duration - 1e-9; k++) {
    const x = Math.round(xOf(axis, k * 0.1)) + 0.5;
    g.moveTo(x, box.y);
    g.lineTo(x, box.y + box.height);
  }
  g.stroke();
  g.strokeStyle = palette.colour['rule-2'];
  g.beginPath();
  for (const x of [axis.x0, end]) {
    g.moveTo(Math.round(x) + 0.5, box.y);
    g.lineTo(Math.round(x) + 0.5, box.y + box.height);
  }
  g.stroke();
}

export function drawHatch(pen: Pen, x: number, y: number, width: number, height: number): void {
  const { g, palette } = pen;
  if (width <= 0) return;
  g.save();
  g.beginPath();
  g.rect(x, y, width, height);
  g.clip();
  g.beginPath();
  for (let d = -height; d < width; d += 8) {
    g.moveTo(x + d, y + height);
    g.lineTo(x + d + height, y);
  }
  g.strokeStyle = palette.colour.rule;
  g.lineWidth = 1;
  g.stroke();
  g.restore();
}

/** A line at an instant other than the cursor: the pin. */
export function drawPin(pen: Pen, box: Box, t: number): void {
  const { g, axis, palette } = pen;
  const x = Math.round(xOf(axis, t)) + 0.5;
  g.setLineDash([2, 3]);
  g.beginPath();
  g.moveTo(x, box.y);
  g.lineTo(x, box.y + box.height);
  g.strokeStyle = palette.colour.ink;
  g.lineWidth = 1.5;
  g.stroke();
  g.setLineDash([]);
}
