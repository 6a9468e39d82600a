/**
 * Plain bodies over the athlete, at true size: outlines about an axis of the body frame F, through the mass centre. A disc
 * and a point mass lie across their axis, a rod across it along the body (about the long axis: across the body).
 */
import type { Vec3 } from '../../sim/index.ts';
import type { DrawItem, Layer, Scene } from './scene.ts';
import { cross, type FigurePlacement } from './view.ts';

export interface PlainShape {
  readonly kind: 'rod' | 'disc' | 'ball' | 'cylinder' | 'point mass';
  readonly about: 'lateral' | 'front-back' | 'long';
  /** length of a rod, radius of the others, m */
  readonly size: number;
}

const AROUND = 48;
/** What moment does not tell: how long a cylinder is, m; about the long axis it is as long as the athlete. */
const CYLINDER = 0.4;
const STROKE = { stroke: 'ink', width: 2.4 } as const;

/** Column k of R_WF, a unit axis of F in W: front-back, long, lateral. */
const axisOf = (R_WF: ArrayLike<number>, k: 0 | 1 | 2): Vec3 => [R_WF[k], R_WF[3 + k], R_WF[6 + k]];
const AXES = { 'front-back': 0, long: 1, lateral: 2 } as const;

interface BodyPlace extends Pick<FigurePlacement, 'view' | 'scale'> {
  /** px of the mass centre */
  readonly x: number;
  readonly y: number;
  readonly R_WF: ArrayLike<number>;
  readonly stature?: number;
}

/** The same scene with the bodies over the athlete at the cursor, wherever he is seen. */
export function withPlainBodies(
  scene: Scene,
  shapes: readonly PlainShape[],
  R_WF: ArrayLike<number>,
  stature?: number,
): Scene {
  if (shapes.length === 0) return scene;
  const layers = scene.layers.flatMap((layer): Layer[] => {
    const { sight, x, y, clip } = layer;
    if (!sight) return [layer];
    const items = plainBodyItems(shapes, { ...sight, R_WF, ...(stature === undefined ? {} : { stature }) });
    return [
      layer,
      {
        name: 'marks',
        items,
        ...(x === undefined ? {} : { x }),
        ...(y === undefined ? {} : { y }),
        ...(clip === undefined ? {} : { clip }),
      },
    ];
  });
  return { ...scene, layers };
}

export function plainBodyItems(shapes: readonly PlainShape[], place: BodyPlace): DrawItem[] {
  return shapes.flatMap((shape) => outline(shape, place));
}

function outline(shape: PlainShape, { view, scale, x, y, R_WF, stature = 1.6 }: BodyPlace): DrawItem[] {
  const k = AXES[shape.about];
  const axis = axisOf(R_WF, k);
  // two directions across the axis: the first along the body where there is one
  const first = axisOf(R_WF, k === 1 ? 2 : 1);
  const second = axisOf(R_WF, k === 0 ? 2 : 0);
  const dot = (a: Vec3, b: readonly number[]): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const at = (p: Vec3): [number, number] => [x + scale * dot(p, view.right), y - scale * dot(p, view.up)];
  const mix = (a: Vec3, u: number, b: Vec3, v: number): Vec3 => [
    a[0] * u + b[0] * v,
    a[1] * u + b[1] * v,
    a[2] * u + b[2] * v,
  ];
  const data = { body: shape.kind, about: shape.about, sizeM: shape.size };
  const line = (points: readonly Vec3[], closed: boolean, dash?: readonly number[]): DrawItem => ({
    kind: 'line',
    points: Float32Array.from(points.flatMap(at)),
    ...STROKE,
    ...(closed ? { closed } : {}),
    ...(dash ? { dash } : {}),
    data,
  });
  const r = shape.size;
  const circle = (shift: number, dash?: readonly number[]): DrawItem =>
    line(
      Array.from({ length: AROUND }, (_, i) => {
        const a = (2 * Math.PI * i) / AROUND;
        const p = mix(first, r * Math.cos(a), second, r * Math.sin(a));
        return mix(p, 1, axis, shift);
      }),
      true,
      dash,
    );
  switch (shape.kind) {
    case 'rod':
      return [line([mix(first, -r / 2, axis, 0), mix(first, r / 2, axis, 0)], false), ...ends(first, r, at, scale)];
    case 'ball':
      return [{ kind: 'circle', x, y, r: r * scale, ...STROKE, data }];
    case 'disc':
      return [circle(0)];
    case 'point mass': {
      const [px, py] = at(mix(first, r, axis, 0));
      return [circle(0, [2, 4]), { kind: 'circle', x: px, y: py, r: 5, fill: 'ink', data }];
    }
    case 'cylinder': {
      const half = (shape.about === 'long' ? stature : CYLINDER) / 2;
      // the edges that the eye sees lie across axis and sight
      const across = cross(axis, view.toward);
      const size = Math.hypot(...across);
      const items = [circle(-half), circle(half)];
      if (size > 1e-6)
        for (const side of [-r / size, r / size])
          items.push(line([mix(across, side, axis, -half), mix(across, side, axis, half)], false));
      return items;
    }
  }
}

/** Short strokes across the ends of a rod, as a measure has them. */
function ends(along: Vec3, length: number, at: (p: Vec3) => [number, number], scale: number): DrawItem[] {
  const tip = (s: number): [number, number] => at([along[0] * s, along[1] * s, along[2] * s]);
  const [x0, y0] = tip(-length / 2);
  const [x1, y1] = tip(length / 2);
  const long = Math.hypot(x1 - x0, y1 - y0);
  if (long < 1) return [];
  const [nx, ny] = [-(y1 - y0) / long, (x1 - x0) / long];
  const half = Math.min(8, 0.07 * scale);
  const points = [
    [x0, y0],
    [x1, y1],
  ].flatMap(([px, py]) => [px - nx * half, py - ny * half, px + nx * half, py + ny * half]);
  return [{ kind: 'segments', points: Float32Array.from(points), ...STROKE }];
}
