/**
 * The head: neck, skull with hair, chin, nose, a knot behind, and the face as a cap of the skull. The pale face in front
 * and the dark hair behind make twist readable when the figure is small. Head frame: X anterior, Y up, Z right.
 */
import type { Vec3 } from '../../sim/index.ts';
import { type Projected, STRIDE } from './blobs.ts';
import type { EyeLook, HeadLook, LookBuilder } from './look.ts';
import type { PoseFrames } from './pose-frames.ts';
import type { Points } from './scene.ts';
import { cross, type FigurePlacement } from './view.ts';

interface HeadPlace {
  readonly head: number;
  readonly trunk: number;
  /** root of the neck in the trunk's frame */
  readonly neck: Vec3;
  /** height of the vertex above the neck joint, m */
  readonly top: number;
  readonly k: number;
}

export function addHead(build: LookBuilder, place: HeadPlace): HeadLook {
  const { head, trunk, k } = place;
  const radii: Vec3 = [0.092 * k, 0.112 * k, 0.075 * k];
  const x = 0.018 * k;
  const y = place.top - radii[1];
  const neckLow = build.add(trunk, place.neck, 0.05 * k);
  const neckHigh = build.add(head, [x - 0.006 * k, y - 0.06 * k, 0], 0.047 * k);
  const skull = build.add(head, [x, y, 0], radii);
  const chin = build.add(head, [x + 0.044 * k, y - 0.077 * k, 0], [0.036 * k, 0.036 * k, 0.04 * k]);
  const nose = build.add(head, [x + 0.096 * k, y - 0.024 * k, 0], [0.016 * k, 0.015 * k, 0.013 * k]);
  const knot = build.add(head, [x - 0.106 * k, y + 0.047 * k, 0], [0.037 * k, 0.039 * k, 0.041 * k]);
  const eyes = [-1, 1].map((side): EyeLook => {
    const normal: Vec3 = [0.86, -0.04, side * 0.45];
    const at = normal.map((n, i) => n * radii[i]);
    return { blob: build.add(head, [x + at[0], y + at[1], at[2]], [0.007 * k, 0.0125 * k, 0.0105 * k]), normal };
  });
  build.parts.push({
    name: 'head',
    chain: 'head',
    tone: 'head',
    segment: head,
    hulls: [[neckLow, neckHigh], [skull, chin], [chin, nose], [knot]],
    probes: [
      build.add(head, [x, y, 0], 0.085 * k),
      build.add(head, [x, y - 0.05 * k, 0], 0.06 * k),
      build.add(head, [x, y + 0.05 * k, 0], 0.06 * k),
    ],
  });
  return {
    segment: head,
    neck: [neckLow, neckHigh],
    skull,
    chin: [skull, chin],
    jaw: [chin, nose],
    knot: [knot],
    eyes,
    radii,
  };
}

/** The plane that divides face from hair, in the head frame: p . m > d x size of the skull. */
const M: Vec3 = [0.838, -0.545, 0];
const D = 0.012 / 0.092;

/**
 * The visible part of the face on the skull, as one closed contour; undefined when none of it is seen. On the skull
 * scaled to a unit sphere the face is a cap about n, the visible half one about v; their common part is bounded by an
 * arc of the cap's rim and an arc of the silhouette. `grow`: px that the head is drawn broader all round.
 */
export function faceContour(
  look: HeadLook,
  projected: Projected,
  frames: PoseFrames,
  { view, scale }: Pick<FigurePlacement, 'view' | 'scale'>,
  grow: number,
  steps: number,
): Points | undefined {
  const [a, b, c] = look.radii;
  const m = 9 * look.segment;
  const R = frames.R_WS;
  const along = (w: Vec3, i: number): number => w[0] * R[m + i] + w[1] * R[m + 3 + i] + w[2] * R[m + 6 + i];
  const unit = (x: number, y: number, z: number): Vec3 => {
    const l = Math.hypot(x, y, z) || 1;
    return [x / l, y / l, z / l];
  };
  // visible: the normal s / radii points to the eye; face: s . (radii m) > d
  const v = unit(along(view.toward, 0) / a, along(view.toward, 1) / b, along(view.toward, 2) / c);
  const size = Math.hypot(a * M[0], b * M[1], c * M[2]);
  const n: Vec3 = [(a * M[0]) / size, (b * M[1]) / size, (c * M[2]) / size];
  const d = (D * a) / size;
  const rho = Math.sqrt(1 - d * d);
  const nv = n[0] * v[0] + n[1] * v[1] + n[2] * v[2];
  const e1 = unit(v[0] - nv * n[0], v[1] - nv * n[1], v[2] - nv * n[2]);
  const e2 = cross(n, e1);
  const e1v = e1[0] * v[0] + e1[1] * v[1] + e1[2] * v[2];
  const k = e1v > 1e-9 ? (-d * nv) / (rho * e1v) : nv > 0 ? -1 : 1;
  if (k >= 1) return undefined;
  const phi = k <= -1 ? Math.PI : Math.acos(k);
  const j = STRIDE * look.skull;
  const drawn = scale + grow / b;
  const right: Vec3 = [a * along(view.right, 0), b * along(view.right, 1), c * along(view.right, 2)];
  const up: Vec3 = [a * along(view.up, 0), b * along(view.up, 1), c * along(view.up, 2)];
  const points: number[] = [];
  const put = (s: Vec3): void => {
    points.push(
      projected[j] + drawn * (s[0] * right[0] + s[1] * right[1] + s[2] * right[2]),
      projected[j + 1] - drawn * (s[0] * up[0] + s[1] * up[1] + s[2] * up[2]),
    );
  };
  for (let i = 0; i <= steps; i++) {
    const g = -phi + (2 * phi * i) / steps;
    const x = rho * Math.cos(g);
    const y = rho * Math.sin(g);
    put([d * n[0] + x * e1[0] + y * e2[0], d * n[1] + x * e1[1] + y * e2[1], d * n[2] + x * e1[2] + y * e2[2]]);
  }
  if (k > -1) {
    const f1 = unit(n[0] - nv * v[0], n[1] - nv * v[1], n[2] - nv * v[2]);
    const f2 = cross(v, f1);
    const f1n = f1[0] * n[0] + f1[1] * n[1] + f1[2] * n[2];
    const psi = Math.acos(Math.min(1, d / f1n));
    for (let i = 1; i < steps; i++) {
      const g = -psi + (2 * psi * i) / steps;
      const x = Math.cos(g);
      const y = Math.sin(g);
      put([x * f1[0] + y * f2[0], x * f1[1] + y * f2[1], x * f1[2] + y * f2[2]]);
    }
  }
  return clockwise(points);
}

/** Like every hull, so that contours filled together do not cancel each other. */
function clockwise(points: readonly number[]): Points {
  const n = points.length / 2;
  let area = 0;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    area += points[2 * i] * points[2 * j + 1] - points[2 * j] * points[2 * i + 1];
  }
  if (area >= 0) return Float32Array.from(points);
  const out = new Float32Array(2 * n);
  for (let i = 0; i < n; i++) {
    out[2 * i] = points[2 * (n - 1 - i)];
    out[2 * i + 1] = points[2 * (n - 1 - i) + 1];
  }
  return out;
}
