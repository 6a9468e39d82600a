// Apparatus in the pictures: there from the first instant to the last, to scale, the same from both sides.
import { describe, expect, it } from 'vitest';
import { apparatusOf, calcFrames, flySkill, frameTimes, type Piece } from '../../sim/index.ts';
import { makePoser } from '../../src/engine/poses.ts';
import { makeStageFlight } from '../../src/pictures/staged-flight.ts';
import { apparatusItems } from '../../src/scene/apparatus-items.ts';
import type { ApparatusPlace } from '../../src/scene/apparatus-place.ts';
import { apparatusAlongTime } from '../../src/scene/apparatus-time.ts';
import { flightScene } from '../../src/scene/flight-scene.ts';
import { forceArrowItems } from '../../src/scene/force-arrows.ts';
import { frontScene } from '../../src/scene/front-scene.ts';
import { largeScene } from '../../src/scene/large-scene.ts';
import { nearMarkItems } from '../../src/scene/near-mark.ts';
import { ghostTimes, type StagePose } from '../../src/scene/pose-frames.ts';
import type { DrawItem, Scene } from '../../src/scene/scene.ts';
import { sideScene } from '../../src/scene/side-scene.ts';
import { topScene } from '../../src/scene/top-scene.ts';
import { frontView, sideView, topView, type View } from '../../src/scene/view.ts';
import { preset } from '../skill/load.ts';

function stage(id: string) {
  const skill = preset(id);
  const flight = flySkill(skill);
  const frames = calcFrames(flight, frameTimes(flight.duration, 60));
  const pose = makePoser(flight, frames);
  const apparatus = apparatusOf({ skill, flight });
  return { flight: makeStageFlight(id, { flight, frames, apparatus }, ghostTimes(flight.duration).map(pose)), pose };
}

const PX = 60;
const scaled = { width: 500, height: 300, pxPerM: PX, floorY: 300, x0: 250 };
const along = { width: 800, height: 300, x0: 60, pxPerS: 500, pxPerM: PX, floorY: 300, labelX: 30 };

const flat = (items: readonly DrawItem[]): DrawItem[] =>
  items.flatMap((item) => (item.kind === 'group' ? flat(item.items) : [item]));
const piecesIn = (scene: Scene, kind: string): DrawItem[] =>
  scene.layers.flatMap((l) => flat(l.items)).filter((item) => item.data?.apparatus === kind);
const xyOf = (item: DrawItem): number[] =>
  item.kind === 'fill'
    ? item.contours.flatMap((c) => [...c])
    : 'points' in item
      ? [...item.points]
      : 'x' in item
        ? [item.x ?? 0, item.y ?? 0]
        : [];
const boxOf = (item: DrawItem) => {
  const p = xyOf(item);
  const xs = p.filter((_, i) => i % 2 === 0);
  const ys = p.filter((_, i) => i % 2 === 1);
  return { x: [Math.min(...xs), Math.max(...xs)], y: [Math.min(...ys), Math.max(...ys)] };
};

const SKILLS = [
  ['trampoline-double-tuck', 'bed'],
  ['vault-handspring-half', 'table'],
  ['giant-double-straight', 'rail'],
  ['dive-forward-one-and-half-pike', 'divingBoard'],
] as const;

const look = {
  view: 'side' as const,
  follow: false,
  pxPerM: PX,
  across: 0,
  up: 1.5,
  show: { path: true, before: false, everyStep: false, paths: false, arrows: false, sizes: false },
  steps: 9,
};
const words = {
  length: String,
  apex: String,
  rise: String,
  travel: String,
  surface: String,
  momentum: '',
  axis: '',
  measured: '',
};

describe.each(SKILLS)('%s', (id, kind) => {
  const { flight, pose } = stage(id);
  const scenes = (cursor: StagePose): Readonly<Record<string, Scene>> => ({
    side: sideScene({ flight, cursor, window: scaled }),
    front: frontScene({ flight, cursor, window: { ...scaled, x0: 250 } }),
    top: topScene({ flight, cursor, window: { ...scaled, height: 200, floorY: 100 } }),
    unrolled: flightScene({ flight, cursor, window: along }),
    large: largeScene({ flight, cursor, look, width: 600, height: 400, words }),
  });

  it(`has its ${kind} in every view at the first instant and at the last, at the same place`, () => {
    const first = scenes(pose(0));
    const last = scenes(pose(flight.duration));
    for (const view of Object.keys(first)) {
      const [a, b] = [first, last].map((all) => piecesIn(all[view], kind).map(xyOf));
      expect(a.length, view).toBeGreaterThan(0);
      expect(b, view).toEqual(a);
    }
  });

  it('has no number in its pictures that is not finite, and few items', () => {
    for (const scene of Object.values(scenes(pose(0.3)))) {
      const ground = scene.layers.find((l) => l.name === 'ground');
      expect(flat(ground?.items ?? []).length).toBeLessThan(80);
      for (const item of scene.layers.flatMap((l) => flat(l.items)))
        expect(xyOf(item).every(Number.isFinite)).toBe(true);
    }
  });
});

describe('to scale', () => {
  it('a bed is 4.28 m from the side, 2.14 m from the front, both from above, at its height', () => {
    const { flight, pose } = stage('trampoline-double-tuck');
    const window = { ...scaled, width: 800, x0: 400 };
    const bed = (scene: Scene) => boxOf(piecesIn(scene, 'bed')[0]);
    const side = bed(sideScene({ flight, cursor: pose(0), window }));
    expect(side.x[1] - side.x[0]).toBeCloseTo(4.28 * PX, 3);
    expect(side.y[0]).toBeCloseTo(300 - 1.15 * PX, 3);
    const front = bed(frontScene({ flight, cursor: pose(0), window }));
    expect(front.x[1] - front.x[0]).toBeCloseTo(2.14 * PX, 3);
    const top = bed(topScene({ flight, cursor: pose(0), window: { ...window, floorY: 150 } }));
    expect([top.x[1] - top.x[0], top.y[1] - top.y[0]].map((v) => v.toFixed(1))).toEqual(['256.8', '128.4']);
  });

  it('a table top is 1.20 m long and 1.25 m high, also along time, under the hands at take-off', () => {
    const { flight, pose } = stage('vault-handspring-half');
    const table = (scene: Scene) => boxOf(piecesIn(scene, 'table')[0]);
    const side = table(sideScene({ flight, cursor: pose(0), window: scaled }));
    expect(side.x[1] - side.x[0]).toBeCloseTo(1.2 * PX, 3);
    expect(side.y[0]).toBeCloseTo(300 - 1.25 * PX, 3);
    const wide = { ...along, x0: 200, labelX: 20 };
    const unrolled = table(flightScene({ flight, cursor: pose(0.4), window: wide }));
    expect(unrolled.x[1] - unrolled.x[0]).toBeCloseTo(1.2 * PX, 3);
    // the same metres from the mass centre at take-off as in the side view
    expect(unrolled.x[0] - 200).toBeCloseTo(side.x[0] - 250, 3);
  });

  /** m that drawn soles may be off the bed: at take-off, on the toes, measured 0.0038; flat on it as they come down, 0.0005 */
  const OFF = [0.008, 0.004] as const;

  it('the drawn feet are in the line of the bed by no more than 8 mm at take-off, 4 mm as they come down', () => {
    for (const id of ['trampoline-double-tuck', 'trampoline-barani']) {
      const { flight, pose } = stage(id);
      for (const [i, t] of [0, flight.duration].entries()) {
        const scene = sideScene({ flight, cursor: pose(t), window: scaled });
        const bed = boxOf(piecesIn(scene, 'bed')[0]).y[0];
        const figure = scene.layers.find((l) => l.name === 'figure');
        // the gap round a part is no part of it
        const parts = flat(figure?.items ?? []).filter((item) => item.kind === 'fill' && item.fill !== 'air');
        const low = Math.max(...parts.map((item) => boxOf(item).y[1]));
        expect(Math.abs(low - bed) / PX).toBeLessThan(OFF[i]);
      }
    }
  });

  it('a piece that goes far beyond the picture is cut at its edges', () => {
    const { flight, pose } = stage('dive-forward-one-and-half-pike');
    const scene = sideScene({ flight, cursor: pose(0), window: { ...scaled, width: 200, x0: 60 } });
    const { x } = boxOf(piecesIn(scene, 'divingBoard')[0]);
    expect(x[0]).toBeGreaterThanOrEqual(-8);
    expect(x[1]).toBeLessThan(200);
  });
});

describe('seen from the other side', () => {
  const base = { floorY: 0, z: [-0.5, 0.5] as const };
  const pieces = (way: 1 | -1): Piece[] => [
    { ...base, kind: 'table', x: way > 0 ? [-0.8, 0.4] : [-0.4, 0.8], y: [1.05, 1.25], way },
    { ...base, kind: 'springboard', x: way > 0 ? [-3, -1.8] : [1.8, 3], y: [0.15, 0.2], way },
    { ...base, kind: 'mat', x: way > 0 ? [1, 4] : [-4, -1], y: [0, 0.2], way },
    { ...base, kind: 'divingBoard', x: way > 0 ? [-4.8, 0.1] : [-0.1, 4.8], y: [2.95, 3], way },
    { ...base, kind: 'platform', x: way > 0 ? [-5, 0] : [0, 5], y: [4.8, 5], way },
    { ...base, kind: 'rail', x: [-0.014, 0.014], y: [2.786, 2.814], way },
    { ...base, kind: 'bed', x: [-2.14, 2.14], y: [1.155, 1.155], way, frame: { x: [-2.5, 2.5], z: [-1, 1] } },
  ];
  const place = (view: View): ApparatusPlace => ({
    view,
    pxPerM: PX,
    width: 2000,
    height: 1000,
    at: (u, v) => [1000 + u * PX, 900 - v * PX],
  });
  const all = (list: readonly Piece[], view: View): DrawItem[] => {
    const { behind, front } = apparatusItems(list, place(view));
    return [...behind, ...front];
  };

  it('a skill that travels along -X is the same picture as its mirror image along +X', () => {
    const there = all(pieces(1), sideView(2));
    const back = all(pieces(-1), sideView(-2));
    expect(back.map(xyOf)).toEqual(there.map(xyOf));
  });

  it('turned round, every piece is at the mirrored place', () => {
    const [one, two] = [sideView(2), sideView(-2)].map((view) => all(pieces(1), view));
    for (const kind of ['table', 'springboard', 'divingBoard', 'platform', 'rail', 'bed'] as const) {
      const find = (items: readonly DrawItem[]) =>
        boxOf(items.filter((i) => i.data?.apparatus === kind).at(-1) ?? items[0]);
      const [a, b] = [find(one), find(two)];
      expect(b.x[0], kind).toBeCloseTo(2000 - a.x[1], 3);
      expect(b.y, kind).toEqual(a.y);
    }
  });

  it('each piece is as high from the front as from the side', () => {
    const [side, front] = [sideView(2), frontView].map((view) => all(pieces(1), view));
    for (const kind of ['table', 'divingBoard', 'platform'] as const) {
      const top = (items: readonly DrawItem[]) =>
        boxOf(items.filter((i) => i.data?.apparatus === kind).at(-1) ?? items[0]).y[0];
      expect(top(front), kind).toBeCloseTo(top(side), 3);
    }
  });

  it('a rail bends where it is: a disc where it is now beside the ring of its rest, a line that sags from the front', () => {
    const rail = pieces(1)[5];
    const state = [{ bent: [0.05, -0.09] as const }];
    const side = apparatusItems([rail], place(sideView(2)), state).front;
    const rest = side.find((i) => i.data?.at === 'rest');
    const now = side.find((i) => i.data?.at === 'now');
    if (rest?.kind !== 'circle' || now?.kind !== 'circle') throw new Error('no rail');
    expect([now.x - rest.x, now.y - rest.y].map((v) => v.toFixed(2))).toEqual([
      (0.05 * PX).toFixed(2),
      (0.09 * PX).toFixed(2),
    ]);
    const mirrored = apparatusItems([rail], place(sideView(-2)), state).front.find((i) => i.data?.at === 'now');
    expect(mirrored?.kind === 'circle' && mirrored.x).toBeCloseTo(2000 - now.x, 6);
    const line = apparatusItems([rail], place(frontView), state).front[0];
    expect(boxOf(line).y[1] - boxOf(line).y[0]).toBeCloseTo(0.09 * PX, 3);
    const above = apparatusItems([rail], place(topView(2)), state).behind;
    expect(above).toEqual([]);
  });

  it('a bed is pressed where the feet are, to its depth', () => {
    const bed = pieces(1)[6];
    const [line] = apparatusItems([bed], place(sideView(2)), [{ pressed: { x: 0.4, z: 0, depth: 0.7 } }]).behind.filter(
      (i) => i.data?.apparatus === 'bed',
    );
    const { y } = boxOf(line);
    expect(y[1] - y[0]).toBeCloseTo(0.7 * PX, 3);
    const p = xyOf(line);
    const lowX = p.filter((_, i) => i % 2 === 0 && p[i + 1] > y[1] - 0.01);
    expect((lowX[0] + lowX[lowX.length - 1]) / 2).toBeCloseTo(1000 + 0.4 * PX, 3);
  });
});

describe('along time', () => {
  const w = {
    view: sideView(1),
    width: 900,
    height: 400,
    pxPerM: PX,
    left: 40,
    from: -1,
    to: 1,
    x: (t: number) => 450 + 400 * t,
    y: (h: number) => 400 - h * PX,
  };
  const pose = { t: 0, p_WScm_W: [0, 1, 0] as const };

  it('a rail is a line at its height that bends to scale while it is held, dotted at rest through the flight', () => {
    const rail: Piece = { kind: 'rail', x: [-0.014, 0.014], y: [2.786, 2.814], z: [-1.2, 1.2], floorY: 0, way: 1 };
    const course = { t: [-1, -0.5, 0], up: [0, -0.09, 0] };
    const { front } = apparatusAlongTime([rail], [{ piece: 0, from: -1, to: 0, pose, course }], w);
    const rest = front.find((i) => i.data?.at === 'rest');
    const now = front.find((i) => i.data?.at === 'now');
    if (rest?.kind !== 'line' || now?.kind !== 'line') throw new Error('no rail');
    expect(rest.dash).toBeDefined();
    expect([rest.points[1], rest.points[3]]).toEqual([w.y(2.8), w.y(2.8)].map(Math.fround));
    expect(rest.points[2]).toBeGreaterThanOrEqual(w.x(1));
    expect(now.width).toBe(3);
    expect(now.points[3] - rest.points[1]).toBeCloseTo(0.09 * PX, 3);
    expect([now.points[0], now.points[4]]).toEqual([50, 450]);
  });

  it('a mat begins where it does to scale, is pressed in along time and ends with what was followed', () => {
    const mat: Piece = { kind: 'mat', x: [-0.6, 6], y: [0, 0.2], z: [-1, 1], floorY: 0, way: 1 };
    const course = { t: [0, 0.1, 0.3], up: [0, -0.12, -0.02] };
    const { behind } = apparatusAlongTime([mat], [{ piece: 0, from: 0, to: 0.3, pose, course }], w);
    const box = boxOf(behind.find((i) => i.data?.apparatus === 'mat') ?? behind[0]);
    expect(box.x).toEqual([w.x(0) - 0.6 * PX, w.x(0.3)].map(Math.fround));
    const edge = behind.find((i) => i.data?.edge === 'top');
    const y = xyOf(edge ?? behind[0]).filter((_, i) => i % 2 === 1);
    expect(Math.max(...y) - Math.min(...y)).toBeCloseTo(0.12 * PX, 3);
    expect(Math.min(...y)).toBeCloseTo(w.y(0.2), 3);
  });

  it('a bed is one line that dips where feet press', () => {
    const bed: Piece = { kind: 'bed', x: [-2.14, 2.14], y: [1.155, 1.155], z: [-1, 1], floorY: 0, way: 1 };
    const touches = [-0.8, 0.6].map((t) => ({
      piece: 0,
      from: t - 0.15,
      to: t + 0.15,
      pose: { ...pose, t },
      course: { t: [t - 0.15, t, t + 0.15], up: [0, -0.7, -0.03] },
    }));
    const lines = apparatusAlongTime([bed], touches, w).behind.filter((i) => i.kind === 'line');
    expect(lines).toHaveLength(1);
    const p = xyOf(lines[0]);
    const dips = p.filter((_, i) => i % 2 === 1 && p[i] > w.y(1.155) + 1);
    expect(dips).toHaveLength(4);
    for (const i of [0, 2]) expect(dips[i]).toBeCloseTo(w.y(1.155 - 0.7), 3);
    // level between the two, and to both ends
    const level = (x: number): number => p[p.findIndex((v, i) => i % 2 === 0 && v > x) + 1];
    for (const x of [w.x(-0.6), w.x(0.9)]) expect(level(x)).toBeCloseTo(w.y(1.155), 3);
  });
});

describe('forces and what comes near', () => {
  const arrow = {
    x: 200,
    y: 100,
    force: [1, 4, 0] as const,
    size: '4.1',
    words: 'body weights on the hands',
    name: 'contact' as const,
  };
  const side = { view: sideView(1), pxPerBodyWeight: 26, width: 600 };

  it('an arrow has 26 px a body weight, from where the force acts, mirrored with the view', () => {
    for (const [view, way] of [
      [sideView(1), 1],
      [sideView(-1), -1],
    ] as const) {
      const items = forceArrowItems(arrow, { ...side, view });
      const head = items.find((i) => i.kind === 'fill');
      if (head?.kind !== 'fill') throw new Error('no head');
      expect([head.contours[0][0], head.contours[0][1]]).toEqual([200 + way * 26, 100 - 4 * 26]);
      const line = items.find((i) => i.data?.arrow === 'contact');
      expect(xyOf(line ?? items[0]).slice(0, 2)).toEqual([200, 100]);
      expect(items.flatMap((i) => (i.kind === 'text' ? [i.text] : [])).sort()).toEqual([
        '4.1',
        'body weights on the hands',
      ]);
    }
  });

  it('words stay inside the picture', () => {
    for (const x of [20, 300, 580]) {
      for (const item of forceArrowItems({ ...arrow, x }, side)) {
        if (item.kind !== 'text') continue;
        const room = item.text.length * 0.56 * item.size;
        expect(item.anchor === 'end' ? item.x - room : item.x).toBeGreaterThanOrEqual(0);
        expect(item.anchor === 'end' ? item.x : item.x + room).toBeLessThanOrEqual(600);
      }
    }
  });

  it('no force, no arrow', () => {
    expect(forceArrowItems({ ...arrow, force: [0, 0.01, 0] }, side)).toEqual([]);
  });

  it('a near miss is a ring of 9 to 11 px round the rail, a leader from the ring to its words, all in one colour', () => {
    const items = nearMarkItems({
      x: 300,
      y: 200,
      lines: ['2 cm', 'toes to the rail'],
      words: { x: 260, y: 120, anchor: 'end' },
    });
    const ring = items.find((i) => i.data?.near === 'ring');
    const leader = items.find((i) => i.data?.near === 'leader');
    if (ring?.kind !== 'circle' || leader?.kind !== 'line') throw new Error('no mark');
    expect(ring.r >= 9 && ring.r <= 11).toBe(true);
    expect(Math.hypot(leader.points[0] - 300, leader.points[1] - 200)).toBeCloseTo(ring.r, 4);
    const colours = items.map((i) => (i.kind === 'text' ? i.fill : 'stroke' in i ? i.stroke : ''));
    expect(new Set(colours)).toEqual(new Set(['stop']));
  });
});
