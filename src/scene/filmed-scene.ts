/**
 * A flight as a camera sees it: in perspective, by the place that the figure is drawn at. Its own picture with the floor and the room for body and
 * hands, and poses along time; from above and from the side of the camera, to scale.
 */
import type { Body, FilmingPlan, Sightline, Vec3 } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import type { StagePose } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { DrawItem, GroupItem } from './scene.ts';
import { cross, dot, type View } from './view.ts';

/** How the camera's own picture is drawn `width` px wide. */
export function ownPlace(s: Sightline, width: number): FigurePlace {
  const k = width / s.width;
  return {
    view: { right: s.right, up: s.up, toward: [-s.forward[0], -s.forward[1], -s.forward[2]] },
    scale: (s.focal * k) / s.distance,
    anchor: s.p_WA_W,
    x: width / 2,
    y: (s.height * k) / 2,
    eye: s.distance,
  };
}

/** Nearer to the camera than this nothing is drawn, m. */
const NEAR = 0.3;

function pointOf(s: Sightline, width: number, p: Vec3): readonly [number, number] | undefined {
  const d: Vec3 = [p[0] - s.p_WC_W[0], p[1] - s.p_WC_W[1], p[2] - s.p_WC_W[2]];
  const depth = dot(s.forward, d);
  if (depth < NEAR) return undefined;
  const k = width / s.width;
  return [
    k * (s.width / 2 + (s.focal * dot(s.right, d)) / depth),
    k * (s.height / 2 - (s.focal * dot(s.up, d)) / depth),
  ];
}

interface FilmedPoses {
  readonly body: Body;
  readonly ghosts: readonly StagePose[];
}

/** What stays while time goes on: floor, where the body has been, the room. */
export function ownStill(plan: FilmingPlan, { body, ghosts }: FilmedPoses, width: number): DrawItem[] {
  const { sightline: s } = plan;
  const place = ownPlace(s, width);
  return [
    ...(plan.isOverWater ? [] : [floorLines(plan, width)]),
    ...ghosts.map(({ frames }): GroupItem => ({ kind: 'group', ghost: true, items: figureItems(body, frames, place) })),
  ];
}

export const ownNow = (plan: FilmingPlan, body: Body, pose: StagePose, width: number): DrawItem[] =>
  figureItems(body, pose.frames, ownPlace(plan.sightline, width));

/** Dashed, over everything. */
export function ownRoom({ picture: p, sightline: s }: FilmingPlan, width: number): DrawItem {
  const k = width / s.width;
  const [l, t, r, b] = [p.left, p.top, p.right, p.bottom].map((px) => px * k);
  return {
    kind: 'line',
    points: Float32Array.from([l, t, r, t, r, b, l, b]),
    closed: true,
    stroke: 'ink',
    width: 1.2,
    dash: [3, 3],
  };
}

/** Squares of a metre about all of the room. */
function floorLines({ room, stand, sightline: s }: FilmingPlan, width: number): DrawItem {
  const points: number[] = [];
  const ends = (k: number): readonly [number, number] => [Math.floor(room.low[k] - 0.5), Math.ceil(room.high[k] + 0.5)];
  const [x0, x1] = ends(0);
  const [z0, z1] = ends(2);
  const put = (a: Vec3, b: Vec3): void => {
    const [p, q] = [pointOf(s, width, a), pointOf(s, width, b)];
    if (p && q) points.push(...p, ...q);
  };
  for (let x = x0; x <= x1; x++) put([x, stand.floorY, z0], [x, stand.floorY, z1]);
  for (let z = z0; z <= z1; z++) put([x0, stand.floorY, z], [x1, stand.floorY, z]);
  return { kind: 'segments', points: Float32Array.from(points), stroke: 'rule-2', width: 0.8 };
}

/** From the eye to the body's middle, which is drawn at x, y. */
export function seenAt(s: Sightline, { p_WScm_W: at }: StagePose, pxPerM: number, x: number, y: number): FigurePlace {
  const d: Vec3 = [s.p_WC_W[0] - at[0], s.p_WC_W[1] - at[1], s.p_WC_W[2] - at[2]];
  const eye = Math.hypot(...d);
  const toward: Vec3 = [d[0] / eye, d[1] / eye, d[2] / eye];
  const side = cross([0, 1, 0], toward);
  const level = Math.hypot(...side);
  const right: Vec3 = [side[0] / level, side[1] / level, side[2] / level];
  return { view: { right, up: cross(toward, right), toward }, scale: pxPerM, anchor: at, x, y, eye };
}

/** From above, the flight to the right and the camera below; from its side, the camera at the left. */
export function planView({ stand: { way }, sightline: s }: FilmingPlan, from: 'above' | 'side'): View {
  if (from === 'above') return { right: [way, 0, 0], up: [0, 0, -way], toward: [0, 1, 0] };
  const level = Math.hypot(s.forward[0], s.forward[2]);
  const right: Vec3 = [s.forward[0] / level, 0, s.forward[2] / level];
  return { right, up: [0, 1, 0], toward: cross(right, [0, 1, 0]) };
}
