/** What turns: angular momentum (constant, one arrow) and the axis the body as a whole turns about at this instant. */
import type { Vec3 } from '../../sim/index.ts';
import type { Camera } from './camera.ts';
import { project } from './camera.ts';
import { endOnArrow, straightArrow } from './marks.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

/** Seen within this of end on, an axis is a sign instead of a line. */
const END_ON = 0.97;

interface AxisWords {
  readonly momentum: string;
  readonly axis: string;
}

/** Words are in the upper right corner, off the limbs; an axis seen end on is a ring about the mass centre, its sign by its word. */
export function axisItems(flight: StageFlight, cursor: StagePose, camera: Camera, words: AxisWords): DrawItem[] {
  const [x, y] = project(camera, cursor.p_WScm_W);
  const items: DrawItem[] = [];
  const w = cursor.w_S_W;
  const axis = { camera, x, y, stroke: 'ink', name: 'rotationAxis' } as const;
  if (w && Math.hypot(...w) > 0.2)
    items.push(...arrowAlong(w, { ...axis, half: 1.25, word: words.axis, ring: 11, row: 0 }));
  const h = flight.h_Scm_W;
  if (Math.hypot(...h) < 1e-6) return items;
  const momentum = { camera, x, y, stroke: 'ink-2', name: 'angularMomentum' } as const;
  items.push(...arrowAlong(h, { ...momentum, half: 1.1, word: words.momentum, ring: 16, row: 1 }));
  return items;
}

interface Along {
  readonly camera: Camera;
  readonly x: number;
  readonly y: number;
  readonly stroke: 'ink' | 'ink-2';
  readonly name: 'rotationAxis' | 'angularMomentum';
  /** m */
  readonly half: number;
  readonly word: string;
  /** px */
  readonly ring: number;
  readonly row: number;
}

function arrowAlong(v: Vec3, { camera, x, y, stroke, name, half, word, ring, row }: Along): DrawItem[] {
  const size = Math.hypot(...v);
  const along = dot(v, camera.view.toward) / size;
  const [right, line] = [camera.width - 14, FIRST_ROW + row * ROW];
  const text = label(word, right - 36, line + 4);
  if (Math.abs(along) > END_ON)
    return [
      { kind: 'circle', x, y, r: ring, stroke, width: 1.6 },
      ...endOnArrow(right - 14, line, 6, along > 0, stroke, name),
      text,
    ];
  const isAxis = name === 'rotationAxis';
  const length = half * camera.pxPerM;
  const [dx, dy] = [(dot(v, camera.view.right) / size) * length, (-dot(v, camera.view.up) / size) * length];
  const dashed = (points: number[]): DrawItem => ({
    kind: 'line',
    points: Float32Array.from(points),
    stroke,
    width: 1.6,
    dash: [10, 4],
    data: { arrow: name },
  });
  return [
    ...(isAxis ? [dashed([x - dx, y - dy, x + dx, y + dy])] : []),
    ...(isAxis
      ? straightArrow(x + 0.9 * dx, y + 0.9 * dy, x + dx, y + dy, stroke, name)
      : straightArrow(x, y, x + dx, y + dy, stroke, name)),
    {
      kind: 'line',
      points: Float32Array.from([right - 28, line, right, line]),
      stroke,
      width: 2,
      ...(isAxis ? { dash: [10, 4] as const } : {}),
    },
    text,
  ];
}

/** px: under the bar of the stage */
const FIRST_ROW = 66;
const ROW = 20;

const label = (text: string, x: number, y: number): DrawItem => ({
  kind: 'text',
  x,
  y,
  text,
  size: 12.5,
  weight: 560,
  fill: 'ink-2',
  anchor: 'end',
  halo: 'air',
});
