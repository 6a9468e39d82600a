/**
 * The pictures of docs/conventions.md, drawn with the engine's poses and the scene's figure: whatever a picture shows is
 * what the numbers mean. `npm run pictures` writes them again. Frames W and F as in the page.
 */
import { makeState, readState, type Vec3 } from '../../sim/index.ts';

import { figureItems } from '../../src/scene/figure.ts';
import { svgMarkup } from '../../src/scene/figure-svg.ts';
import type { PoseFrames } from '../../src/scene/pose-frames.ts';
import { frontView, sideView, topView, type View } from '../../src/scene/view.ts';
import { flyFor } from '../checks/flown.ts';
import { poseOf } from '../figure-sheet/poses.ts';
import { turnedView } from '../figure-sheet/turned-view.ts';
import { type Degrees, rest, woman } from './adults.ts';
import { n, picture, text } from './svg-parts.ts';

interface Panel {
  readonly view: View;
  /** of the figure's mass centre, px */
  readonly at: readonly [number, number];
  readonly scale: number;
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const spot = ({ view, at, scale }: Panel, p: Vec3): [number, number] => [
  at[0] + scale * dot(p, view.right),
  at[1] - scale * dot(p, view.up),
];
/** A straight arrow from a to b, px. */
function arrow(a: readonly [number, number], b: readonly [number, number], colour: string): string {
  const d = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (d < 6)
    return `<circle cx="${n(a[0])}" cy="${n(a[1])}" r="5" fill="var(--air)" stroke="var(--${colour})" stroke-width="2"/><circle cx="${n(a[0])}" cy="${n(a[1])}" r="1.8" fill="var(--${colour})"/>`;
  const [x, y] = [(b[0] - a[0]) / d, (b[1] - a[1]) / d];
  const head = [b, [b[0] - 9 * x + 4 * y, b[1] - 9 * y - 4 * x], [b[0] - 9 * x - 4 * y, b[1] - 9 * y + 4 * x]];
  return `<path d="M${n(a[0])} ${n(a[1])}L${n(b[0] - 6 * x)} ${n(b[1] - 6 * y)}" stroke="var(--${colour})" stroke-width="2.2" fill="none"/><path d="M${head.map((p) => `${n(p[0])} ${n(p[1])}`).join('L')}Z" fill="var(--${colour})"/>`;
}

/** A turning arrow: part of a circle about c from one angle to another (deg, anticlockwise on the screen from its right). */
function turning(c: readonly [number, number], r: number, from: number, to: number, colour: string): string {
  const at = (deg: number): [number, number] => [
    c[0] + r * Math.cos((deg * Math.PI) / 180),
    c[1] - r * Math.sin((deg * Math.PI) / 180),
  ];
  const [a, b, before] = [at(from), at(to), at(to - Math.sign(to - from) * (500 / r))];
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  return `<path d="M${n(a[0])} ${n(a[1])}A${r} ${r} 0 ${large} ${to > from ? 0 : 1} ${n(before[0])} ${n(before[1])}" fill="none" stroke="var(--${colour})" stroke-width="2.2"/>${arrow(before, b, colour)}`;
}

const figure = (panel: Panel, frames: PoseFrames): string =>
  svgMarkup(
    figureItems(woman, frames, {
      view: panel.view,
      scale: panel.scale,
      anchor: [0, 0, 0],
      x: panel.at[0],
      y: panel.at[1],
      gap: 'air',
    }),
  );

const sides = (deg: Degrees): Degrees =>
  Object.fromEntries(
    woman.angles.flatMap(({ name }) => {
      const value = deg[name] ?? deg[name.replace(/[LR]$/, '')];
      return value === undefined ? [] : [[name, value]];
    }),
  );
/** The figure with F at this attitude, deg. */
function posed(deg: Degrees, [somersault, tilt, twist]: readonly [number, number, number] = [0, 0, 0]): PoseFrames {
  const rad = Math.PI / 180;
  const start = { attitude: [somersault * rad, tilt * rad, twist * rad], h: [0, 0, 0], T: 0.1 } as const;
  const state = makeState(woman);
  readState(flyFor(woman, rest(woman, deg), start), 0, state);
  return poseOf(woman, sides(deg), state.R_WB);
}

/** The axes of a frame (columns of R) from the figure's mass centre. */
function axes(
  panel: Panel,
  R: ArrayLike<number>,
  names: readonly string[],
  length: number,
  colours: readonly string[],
): string {
  return [0, 1, 2]
    .map((k) => {
      const end = spot(panel, [R[k] * length, R[3 + k] * length, R[6 + k] * length]);
      const far = Math.hypot(end[0] - panel.at[0], end[1] - panel.at[1]);
      const [x, y] = far < 6 ? [0, 0] : [(end[0] - panel.at[0]) / far, (end[1] - panel.at[1]) / far];
      // beside the point: above the level ones, to the right of the upright one
      const [dx, dy, anchor] =
        far < 6 ? [-12, 22, 'end'] : Math.abs(x) < 0.2 ? [9, 4, 'start'] : [10 * x, 10 * y + 17, 'middle'];
      return arrow(panel.at, end, colours[k]) + text(end[0] + dx, end[1] + dy, names[k], colours[k], anchor, 640);
    })
    .join('');
}

const XYZ = ['tilt', 'twist', 'som'];
const unit = [1, 0, 0, 0, 1, 0, 0, 0, 1];

function world(): string {
  const panel = { view: turnedView(-0.75, 0.35), at: [200, 190], scale: 150 } as const;
  const inner =
    axes(panel, unit, ['X forward', 'Y up', "Z athlete's right"], 1.05, XYZ) + figure(panel, poseOf(woman, {}));
  return picture(
    420,
    400,
    'World axes about a standing athlete',
    inner + text(210, 390, 'neutral pose: every segment frame is parallel to W'),
  );
}

function bodyFrame(): string {
  const shapes: readonly (readonly [string, Degrees])[] = [
    ['straight', {}],
    ['pike', { hipFlexion: 120 }],
    ['tuck', { hipFlexion: 135, kneeFlexion: 140 }],
  ];
  const inner = shapes.map(([name, deg], i) => {
    const panel = { view: sideView(1), at: [120 + 220 * i, 170], scale: 130 } as const;
    const frames = posed(deg);
    // how far the pelvis has turned back while F is still
    const pelvis = (Math.atan2(frames.R_WS[3], frames.R_WS[0]) * 180) / Math.PI;
    const said =
      Math.abs(pelvis) < 0.5
        ? 'pelvis upright'
        : `pelvis turned ${Math.abs(pelvis).toFixed(0)}° ${pelvis > 0 ? 'backward' : 'forward'}`;
    return (
      figure(panel, frames) +
      axes(panel, unit, ['X_F', 'Y_F', 'Z_F'], 0.55, XYZ) +
      text(panel.at[0], 318, `${name}: ${said}`)
    );
  });
  return picture(680, 330, 'The body frame F at somersault 0 in three shapes, seen from the right', inner.join(''));
}

function signs(): string {
  const som = { view: sideView(1), at: [120, 150], scale: 105 } as const;
  const tilt = { view: frontView, at: [340, 150], scale: 105 } as const;
  const twist = { view: topView(1), at: [560, 150], scale: 150 } as const;
  const arms = { shoulderElevation: 20 };
  const wide = { shoulderElevation: 80 };
  const inner = [
    figure(som, posed(arms, [30, 0, 0])) + turning(som.at, 112, 95, 150, 'som'),
    text(120, 292, 'somersault + : backward', 'som', 'middle', 640) + text(120, 310, '30°, seen from world right'),
    figure(tilt, posed(arms, [0, 20, 0])) + turning(tilt.at, 112, 92, 140, 'tilt'),
    text(340, 292, 'tilt + : head to world right', 'tilt', 'middle', 640) + text(340, 310, '20°, seen from the front'),
    figure(twist, posed(wide, [0, 0, 30])) + turning(twist.at, 112, 0, 55, 'twist'),
    text(560, 292, 'twist + : to the own left', 'twist', 'middle', 640) + text(560, 310, '30°, seen from above'),
  ];
  return picture(680, 324, 'Positive somersault, tilt and twist', inner.join(''));
}

function joints(): string {
  const cells: readonly (readonly [string, string, Degrees, View])[] = [
    ['shoulderElevation 60', 'plane 0: by the side', { shoulderElevation: 60 }, frontView],
    ['shoulderElevation 60', 'plane 90: in front', { shoulderPlane: 90, shoulderElevation: 60 }, sideView(1)],
    ['hipFlexion 90', '', { hipFlexion: 90 }, sideView(1)],
    ['kneeFlexion 90', '', { kneeFlexion: 90 }, sideView(1)],
    ['hipAbduction 40', '', { hipAbduction: 40 }, frontView],
    ['spine flexion 80', 'lumbar 50 + thoracic 30', { lumbarFlexion: 50, thoracicFlexion: 30 }, sideView(1)],
    ['sideBend 40', 'to the right', { lumbarSideBend: 20, thoracicSideBend: 20 }, frontView],
    ['elbowFlexion 90', 'pronation 0', { elbowFlexion: 90 }, sideView(1)],
  ];
  const inner = cells.map(([name, note, deg, view], i) => {
    const [x, y] = [85 + 170 * (i % 4), 100 + 215 * Math.floor(i / 4)];
    const pelvis = poseOf(woman, sides(deg));
    return (
      figure({ view, at: [x, y], scale: 82 }, pelvis) +
      text(x, y + 88, name, 'ink', 'middle', 640) +
      text(x, y + 103, note)
    );
  });
  return picture(680, 430, 'Joint angles and their positive senses', inner.join(''));
}

function travel(): string {
  const cells = [
    { x: 170, v: -1, to: 'travel -X: seen from world left', turn: [130, 40], say: 'backward turns clockwise' },
    { x: 510, v: 1, to: 'travel +X: seen from world right', turn: [50, 140], say: 'backward turns anticlockwise' },
  ] as const;
  const inner = cells.map(({ x, v, to, turn, say }) => {
    const view = sideView(v);
    const shown = [0, 45, 90].map((som, i) =>
      figure(
        { view, at: [x - 110 + 105 * i, 155 - 24 * (i % 2)], scale: 58 },
        posed({ shoulderElevation: 8 }, [som, 0, 0]),
      ),
    );
    return (
      shown.join('') +
      turning([x, 112], 70, turn[0], turn[1], 'som') +
      arrow([x - 120, 235], [x + 120, 235], 'ink') +
      text(x, 258, to, 'ink', 'middle', 640) +
      text(x, 276, say, 'som')
    );
  });
  return picture(
    680,
    290,
    'Screen right is the direction of travel: the same backward somersault from both sides',
    inner.join(''),
  );
}

/** File name in docs/pictures/ and what it holds. */
export const pictures: Readonly<Record<string, () => string>> = {
  'world.svg': world,
  'body-frame.svg': bodyFrame,
  'signs.svg': signs,
  'joints.svg': joints,
  'side-view.svg': travel,
};
