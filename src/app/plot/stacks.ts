/** The stacks: angular momentum by body part, energy by kind. Names inside, bold top edge: flat when it is conserved. */
import type { Frames } from '../../../sim/index.ts';
import { formatTick } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { ColourName } from '../../ui/plot/palette.ts';
import type { QuantityKind } from '../../ui/units.ts';
import { texts } from '../words.ts';
import {
  type Box,
  type Curve,
  drawCurve,
  drawName,
  drawRule,
  drawTick,
  findTop,
  makeScale,
  niceTop,
  type Pen,
} from './pen.ts';
import type { RowDrawer } from './rows.ts';

export interface Part {
  readonly name: string;
  readonly colour: ColourName;
  readonly on: ColourName;
  readonly curve: Curve;
}

/** Momentum of each group along the whole momentum; with none, about the body's long axis. */
export function getMomentumParts(f: Frames): Part[] {
  const look: Record<string, { name: string; colour: ColourName; on: ColourName; order: number }> = {
    legs: { name: texts.plots.legs, colour: 'legs', on: 'on-legs', order: 0 },
    upper: { name: texts.plots.trunk, colour: 'trunk', on: 'on-trunk', order: 1 },
    arms: { name: texts.plots.arms, colour: 'limb-l', on: 'ground', order: 2 },
    whole: { name: texts.plots.whole, colour: 'trunk', on: 'on-trunk', order: 0 },
  };
  const columns = getAlong(f);
  return f.groups
    .map((group, k) => ({ ...(look[group] ?? look.whole), k }))
    .sort((a, b) => a.order - b.order)
    .map(({ name, colour, on, k }) => {
      const column = columns[k];
      return { name, colour, on, curve: (i: number) => column[i] };
    });
}

/** Of each group, row by row; kept with its frames, since a stack looks at every value several times. */
const along = new WeakMap<Frames, readonly Float64Array[]>();

function getAlong(f: Frames): readonly Float64Array[] {
  const known = along.get(f);
  if (known) return known;
  const ng = f.groups.length;
  const columns = f.groups.map(() => new Float64Array(f.n));
  for (let i = 0; i < f.n; i++) {
    const [x, y, z] = directionAt(f, i);
    for (let k = 0; k < ng; k++) {
      const o = 3 * (i * ng + k);
      columns[k][i] = f.hGroups_W[o] * x + f.hGroups_W[o + 1] * y + f.hGroups_W[o + 2] * z;
    }
  }
  along.set(f, columns);
  return columns;
}

function directionAt(f: Frames, i: number): [number, number, number] {
  const [x, y, z] = [f.h_Scm_W[3 * i], f.h_Scm_W[3 * i + 1], f.h_Scm_W[3 * i + 2]];
  const size = Math.hypot(x, y, z);
  if (size > 1e-6) return [x / size, y / size, z / size];
  // second column of R_WF
  const [a, b, c, d] = [f.quat_WF[4 * i], f.quat_WF[4 * i + 1], f.quat_WF[4 * i + 2], f.quat_WF[4 * i + 3]];
  return [2 * (b * c - a * d), 1 - 2 * (b * b + d * d), 2 * (c * d + a * b)];
}

export function getEnergyParts(f: Frames): Part[] {
  const p = texts.plots;
  return [
    { name: p.along, colour: 'e-along', on: 'ink', curve: (i) => f.eAlong[i] },
    { name: p.turning, colour: 'e-turning', on: 'ground', curve: (i) => f.eRotation[i] },
    { name: p.limbs, colour: 'e-limbs', on: 'ink', curve: (i) => f.eLimbs[i] },
    { name: p.rising, colour: 'e-rising', on: 'on-e-rising', curve: (i) => f.eRising[i] },
    { name: p.height, colour: 'e-height', on: 'ink', curve: (i) => f.ePotential[i] },
  ];
}

export const drawMomentum: RowDrawer = (pen, box) =>
  drawStack(pen, box, getMomentumParts(pen.result.frames), 'momentum');
export const drawEnergy: RowDrawer = (pen, box) => drawStack(pen, box, getEnergyParts(pen.result.frames), 'energy');

function drawStack(pen: Pen, box: Box, own: readonly Part[], quantity: QuantityKind): void {
  const factor = pen.units.toShown(quantity, 1);
  const parts = factor === 1 ? own : own.map((part) => ({ ...part, curve: (i: number) => part.curve(i) * factor }));
  const total: Curve = (i) => parts.reduce((sum, part) => sum + part.curve(i), 0);
  const positive: Curve = (i) => parts.reduce((sum, part) => sum + Math.max(part.curve(i), 0), 0);
  const negative: Curve = (i) => parts.reduce((sum, part) => sum - Math.min(part.curve(i), 0), 0);
  const reach = findTop(pen, positive);
  const dip = findTop(pen, negative);
  const top = niceTop(Math.max(reach, 1e-3));
  const low = dip > 0.04 * top ? -Math.min(niceTop(dip), top) : 0;
  const scale = makeScale(box, low, top);
  drawBands(pen, parts, scale, 0.02 * top);
  drawRule(pen, scale(0), true);
  drawCurve(pen, total, scale, 'ink', pen.lineWidth * 0.8);
  drawTick(pen, scale(top) + 2, formatTick(top));
  if (box.height > 28) drawTick(pen, scale(0), '0');
}

/** Parts that help stand above zero, parts that turn against the whole hang below it. */
function drawBands(pen: Pen, parts: readonly Part[], scale: (v: number) => number, small: number): void {
  const { g, axis, palette, result } = pen;
  const { n, t } = result.frames;
  const up = new Float64Array(n);
  const down = new Float64Array(n);
  for (const part of parts) {
    const low = new Float64Array(n);
    const high = new Float64Array(n);
    let thick = 0;
    let at = 0;
    for (let i = 0; i < n; i++) {
      const v = part.curve(i);
      // a trace of the other sign must not jump across zero
      const base = v >= -small ? up : down;
      low[i] = base[i];
      base[i] += v;
      high[i] = base[i];
      const px = Math.abs(scale(low[i]) - scale(high[i]));
      const inside = i > n * 0.12 && i < n * 0.88 && Math.abs(t[i] - pen.cursor) * axis.pxPerS > 46;
      if (inside && px > thick + 0.5) {
        thick = px;
        at = i;
      }
    }
    g.beginPath();
    for (let i = 0; i < n; i++) g.lineTo(xOf(axis, t[i]), scale(high[i]));
    for (let i = n - 1; i >= 0; i--) g.lineTo(xOf(axis, t[i]), scale(low[i]));
    g.closePath();
    g.fillStyle = palette.colour[part.colour];
    g.fill();
    if (thick > 3) {
      g.beginPath();
      // where a part changes sides a new edge begins
      for (let i = 0; i < n; i++) {
        const turned = i > 0 && part.curve(i) >= -small !== part.curve(i - 1) >= -small;
        if (turned) g.moveTo(xOf(axis, t[i]), scale(high[i]));
        else g.lineTo(xOf(axis, t[i]), scale(high[i]));
      }
      g.strokeStyle = palette.colour.ground;
      g.lineWidth = 0.75;
      g.stroke();
    }
    if (thick > palette.tickPx + 1) {
      drawName(pen, part.name, xOf(axis, t[at]), scale((low[at] + high[at]) / 2), part.on, 'center', null);
    }
  }
}
