// A flight as a camera would film it, as shapes: blurred while the shutter is open, read line by line, over a floor with a mat. Before its take-off and
// after its end the body stays as it was then.
import { projectInto, type Sightline } from '../../sim/filming/camera.ts';
import type { Flight } from '../../sim/index.ts';
import type { Triple } from '../../sim/math/vec3.ts';
import { calcPose } from '../../sim/motion/pose.ts';
import { makeState, readState } from '../../sim/motion/state.ts';
import type { ClipBand, ClipShape } from './clip-order.ts';

export interface FilmedMat {
  /** m in W: middle of it, along X and Z */
  readonly middle: readonly [number, number];
  readonly lengthM: number; // along X
  readonly depthM: number; // along Z
}

export interface FilmingOrder {
  readonly sightline: Sightline;
  /** s of the flight in the middle of the time in which each picture's first line is open */
  readonly times: readonly number[];
  /** s */
  readonly shutter?: number;
  /** s from the first line to the last */
  readonly lines?: number;
  readonly mat?: FilmedMat;
  /** instants that blur is made of; bands that lines are read in */
  readonly instants?: number;
  readonly bands?: number;
}

/** To spread into a ClipOrder. */
export interface FilmedShapes {
  readonly width: number;
  readonly height: number;
  readonly background: string;
  readonly still: ClipShape[];
  readonly draw: ClipBand[][];
}

const WALL = '#c9cec9';
const FLOOR = '#8f8a80';
const MAT = '#5f7d74';
const MAT_EDGE = '#e9ece6';
/** m behind what is looked at */
const WALL_AT = 6;

export function filmShapes(flight: Flight, order: FilmingOrder): FilmedShapes {
  const { sightline: s, times, shutter = 0, lines = 0 } = order;
  const instants = shutter > 0 ? (order.instants ?? 5) : 1;
  const bands = lines > 0 ? (order.bands ?? 12) : 1;
  const bodyAt = makeBody(flight, s);
  const draw = times.map((t) =>
    Array.from({ length: bands }, (_, b): ClipBand => {
      const rows = [Math.round((s.height * b) / bands), Math.round((s.height * (b + 1)) / bands)] as const;
      const at = t + (lines * (b + 0.5)) / bands;
      return {
        rows,
        instants: Array.from({ length: instants }, (_, i) => bodyAt(at + shutter * ((i + 0.5) / instants - 0.5))),
      };
    }),
  );
  return { width: s.width, height: s.height, background: WALL, still: floorShapes(flight, order), draw };
}

/** px of a point of W, and px a metre there. */
function seen(s: Sightline, p: Triple): readonly [number, number, number] {
  const at = new Float64Array(2);
  const depth = projectInto(s, p, 0, at, 0);
  return [at[0], at[1], s.focal / depth];
}

function floorShapes(flight: Flight, { sightline: s, mat }: FilmingOrder): ClipShape[] {
  const y = flight.surfaceY;
  const level = Math.hypot(s.forward[0], s.forward[2]);
  const away = (s.distance + WALL_AT) / level;
  const corner = (side: number): readonly [number, number, number] =>
    seen(s, [
      s.p_WC_W[0] + away * s.forward[0] + side * s.right[0],
      y,
      s.p_WC_W[2] + away * s.forward[2] + side * s.right[2],
    ]);
  const [l, r] = [corner(-60), corner(60)];
  const shapes: ClipShape[] = [
    { kind: 'polygon', points: [l[0], l[1], r[0], r[1], r[0], 9 * s.height, l[0], 9 * s.height], fill: FLOOR },
  ];
  if (mat) {
    const points = matCorners(mat).flatMap(([x, z]) => seen(s, [x, y, z]).slice(0, 2));
    const stroke = { stroke: MAT_EDGE, width: Math.max(1.5, s.height / 240) };
    shapes.push({ kind: 'polygon', points, fill: MAT });
    shapes.push({ kind: 'line', points: [...points, points[0], points[1]], ...stroke });
  }
  return shapes;
}

/** X and Z, going round. */
export function matCorners({ middle: [x, z], lengthM, depthM }: FilmedMat): readonly (readonly [number, number])[] {
  const [a, b] = [lengthM / 2, depthM / 2];
  return [
    [x - a, z + b],
    [x + a, z + b],
    [x + a, z - b],
    [x - a, z - b],
  ];
}

interface Part {
  readonly depth: number;
  readonly shape: ClipShape;
}

function fillOf(name: string, side: string): string {
  if (/head/i.test(name)) return '#4a3728';
  if (/trunk|pelvis|chest|torso|abdomen|waist/i.test(name)) return '#27406e';
  if (side === 'left') return '#d9ab86';
  return side === 'right' ? '#b5835c' : '#c79870';
}

function makeBody(flight: Flight, s: Sightline): (t: number) => ClipShape[] {
  const { body } = flight;
  const state = makeState(body);
  return (t) => {
    readState(flight, Math.min(Math.max(t, 0), flight.duration), state);
    const { R_WS, p_WSo_W } = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
    const place = (k: number, p: readonly number[]): Triple => {
      const [o, m] = [3 * k, 9 * k];
      const row = (i: number): number =>
        p_WSo_W[o + i] + R_WS[m + 3 * i] * p[0] + R_WS[m + 3 * i + 1] * p[1] + R_WS[m + 3 * i + 2] * p[2];
      return [row(0), row(1), row(2)];
    };
    const parts: Part[] = body.segments.flatMap(({ name, side, shapes }, k) =>
      shapes.map((shape): Part => {
        const fill = fillOf(name, side);
        if (shape.kind === 'ellipsoid') {
          const centre = place(k, shape.centre_B);
          const axes = shape.radii.map((radius, i): Triple => {
            const tip = place(
              k,
              shape.centre_B.map((c, j) => c + (i === j ? radius : 0)),
            );
            return [tip[0] - centre[0], tip[1] - centre[1], tip[2] - centre[2]];
          });
          return { depth: depthOf(s, centre), shape: { kind: 'oval', ...ovalOf(s, centre, axes), fill } };
        }
        const [a, b] = [place(k, shape.a_B), place(k, shape.b_B)];
        const [pa, pb] = [seen(s, a), seen(s, b)];
        return {
          depth: (depthOf(s, a) + depthOf(s, b)) / 2,
          shape: {
            kind: 'capsule',
            a: [pa[0], pa[1], pa[2] * shape.radiusA],
            b: [pb[0], pb[1], pb[2] * shape.radiusB],
            fill,
          },
        };
      }),
    );
    return parts.sort((a, b) => b.depth - a.depth).map(({ shape }) => shape);
  };
}

const depthOf = (s: Sightline, p: Triple): number =>
  s.forward[0] * (p[0] - s.p_WC_W[0]) + s.forward[1] * (p[1] - s.p_WC_W[1]) + s.forward[2] * (p[2] - s.p_WC_W[2]);

/** Small against its distance: half axes of its outline from the px that each of its own half axes moves. */
function ovalOf(s: Sightline, centre: Triple, axes: readonly Triple[]) {
  const [x, y, pxPerM] = seen(s, centre);
  let [xx, yy, xy] = [0, 0, 0];
  for (const axis of axes) {
    const u = pxPerM * (s.right[0] * axis[0] + s.right[1] * axis[1] + s.right[2] * axis[2]);
    const v = -pxPerM * (s.up[0] * axis[0] + s.up[1] * axis[1] + s.up[2] * axis[2]);
    xx += u * u;
    yy += v * v;
    xy += u * v;
  }
  const [mean, half] = [(xx + yy) / 2, Math.hypot((xx - yy) / 2, xy)];
  return {
    x,
    y,
    rx: Math.sqrt(mean + half),
    ry: Math.sqrt(Math.max(0, mean - half)),
    turn: Math.atan2(2 * xy, xx - yy) / 2,
  };
}
