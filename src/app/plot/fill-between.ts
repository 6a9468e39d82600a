/** The area between two curves, of one flight or of two on the same ruler. */
import { xOf } from '../../ui/plot/axis.ts';
import type { Curve, Pen, Scale } from './pen.ts';
import { calcPlace } from './readout.ts';

const STEP_PX = 2;

export function fillBetween(one: Pen, oneCurve: Curve, two: Pen, twoCurve: Curve, scale: Scale, colour: string): void {
  const { g, axis } = one;
  const from = Math.max(one.axis.x0, two.axis.x0);
  const to = Math.min(xOf(one.axis, one.axis.duration), xOf(two.axis, two.axis.duration));
  const at = (pen: Pen, curve: Curve, x: number): number => {
    const place = calcPlace(pen.result.frames, (x - pen.axis.x0) / axis.pxPerS);
    return curve(place.i) * (1 - place.share) + curve(place.i + 1) * place.share;
  };
  const upper: [number, number][] = [];
  const lower: [number, number][] = [];
  for (let x = from; x <= to; x += STEP_PX) {
    const [a, b] = [at(one, oneCurve, x), at(two, twoCurve, x)];
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    upper.push([x, scale(a)]);
    lower.push([x, scale(b)]);
  }
  if (upper.length < 2) return;
  g.beginPath();
  for (const [x, y] of upper) g.lineTo(x, y);
  for (const [x, y] of lower.reverse()) g.lineTo(x, y);
  g.closePath();
  g.fillStyle = colour;
  g.fill();
}
