/**
 * A posed motion as BVH: a joint for each segment, by its name, at the joint centre to its parent; no rotation is the neutral pose. Lengths in
 * centimetres, the unit that most programs take a file without a unit for; Y up. The root has six channels, the others Z, X, Y. An angle
 * that is not known keeps its last known value (0 before the first): the form has no gaps.
 */
import type { Body } from '../body/body.ts';
import { DEG, turnedTo } from '../math/angles.ts';
import { mulTInto } from '../math/rot.ts';
import type { PosedMotion } from './posed.ts';
import { makePosedReader } from './posed-reader.ts';

const CM = 100;
const DIGITS = 8;

/** In pieces of a frame each, the skeleton first. Lines end in "\n". */
export function* formatBvh(posed: PosedMotion): Generator<string> {
  const filled = holdAngles(posed);
  const { body, n, rateHz } = filled;
  const order: number[] = [];
  yield skeletonOf(body, order);
  yield `MOTION\nFrames: ${n}\nFrame Time: ${1 / rateHz}\n`;
  const reader = makePosedReader(filled);
  const last = new Float64Array(3 * body.segments.length);
  const R = new Float64Array(9);
  for (let i = 0; i < n; i++) {
    reader.read(i);
    const cells: string[] = [];
    for (const s of order) {
      const { parent } = body.segments[s];
      if (parent < 0) {
        for (let k = 0; k < 3; k++) cells.push(number(CM * filled.p_WBo_W[3 * i + k]));
        R.set(reader.R_WS.subarray(9 * s, 9 * s + 9));
      } else mulTInto(reader.sm.R_BS, 9 * parent, reader.sm.R_BS, 9 * s, R, 0);
      cells.push(...turnsOf(R, last, 3 * s).map((angle) => number(angle * DEG)));
    }
    yield `${cells.join(' ')}\n`;
  }
}

/** Depth first, as the form has it; fills in the order in which channels follow. */
function skeletonOf(body: Body, order: number[]): string {
  const lines = ['HIERARCHY'];
  const visit = (s: number, depth: number): void => {
    const { name, parent, p_PoBo_P } = body.segments[s];
    const pad = '  '.repeat(depth);
    order.push(s);
    lines.push(`${pad}${parent < 0 ? 'ROOT' : 'JOINT'} ${name}`, `${pad}{`);
    lines.push(`${pad}  OFFSET ${p_PoBo_P.map((x) => number(CM * x)).join(' ')}`);
    const turns = 'Zrotation Xrotation Yrotation';
    lines.push(`${pad}  CHANNELS ${parent < 0 ? `6 Xposition Yposition Zposition ${turns}` : `3 ${turns}`}`);
    const children = body.segments.flatMap((child, c) => (child.parent === s ? [c] : []));
    for (const child of children) visit(child, depth + 1);
    if (children.length === 0)
      lines.push(`${pad}  End Site`, `${pad}  {`, `${pad}    OFFSET ${endOf(body, s)}`, `${pad}  }`);
    lines.push(`${pad}}`);
  };
  visit(0, 0);
  return `${lines.join('\n')}\n`;
}

/** The contact point farthest from the joint; without one twice the way to the mass centre. */
function endOf(body: Body, s: number): string {
  const far = (p: readonly number[]): number => Math.hypot(...p);
  const [tip] = body.contacts
    .filter(({ segment }) => segment === s)
    .map(({ p_BoC_B }) => p_BoC_B)
    .sort((a, b) => far(b) - far(a));
  return (tip ?? body.segments[s].p_BoBcm_B.map((x) => 2 * x)).map((x) => number(CM * x)).join(' ');
}

/** R = Rz(a) Rx(b) Ry(c), each counted on from the instant before. With b at a right angle a and c still multiply to R. */
function turnsOf(R: Float64Array, last: Float64Array, o: number): number[] {
  const a = Math.atan2(-R[1], R[4]);
  const [ca, sa] = [Math.cos(a), Math.sin(a)];
  const b = Math.atan2(R[7], ca * R[4] - sa * R[1]);
  const c = Math.atan2(ca * R[2] + sa * R[5], ca * R[0] + sa * R[3]);
  [a, b, c].forEach((angle, k) => {
    last[o + k] = turnedTo(angle, last[o + k]);
  });
  return [...last.subarray(o, o + 3)];
}

function holdAngles(posed: PosedMotion): PosedMotion {
  const na = posed.body.angles.length;
  const angles = posed.angles.slice();
  for (let k = 0; k < angles.length; k++) if (Number.isNaN(angles[k])) angles[k] = k < na ? 0 : angles[k - na];
  return { ...posed, angles };
}

const number = (x: number): string => String(Number(x.toFixed(DIGITS)) + 0);
