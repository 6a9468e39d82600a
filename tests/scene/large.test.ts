// The large stage: camera, ends, angle, sizes, trails, apparatus. Everything to scale and where the flight is.

import { expect, test } from 'vitest';
import { project, viewOf } from '../../src/scene/camera.ts';
import type { LargeLook } from '../../src/scene/large-look.ts';
import { largeScene } from '../../src/scene/large-scene.ts';
import { calcMeasure } from '../../src/scene/measure.ts';
import type { DrawItem, Scene } from '../../src/scene/scene.ts';
import { stagedOf } from './staged.ts';

const LOOK: LargeLook = {
  view: 'side',
  follow: false,
  pxPerM: 150,
  across: 0.4,
  up: 1.5,
  show: { path: true, before: true, everyStep: false, paths: false, arrows: true, sizes: true },
  steps: 9,
};
const words = {
  length: (m: number) => m.toFixed(3),
  apex: (s: string) => `highest ${s}`,
  rise: (s: string) => `rises ${s}`,
  travel: (s: string) => `travels ${s}`,
  surface: (s: string) => `lands ${s}`,
  momentum: 'h',
  axis: 'w',
  measured: '',
};

const all = (scene: Scene): DrawItem[] => {
  const flat = (items: readonly DrawItem[]): DrawItem[] =>
    items.flatMap((i) => (i.kind === 'group' ? flat(i.items) : [i]));
  return scene.layers.flatMap((l) => flat(l.items));
};
const texts = (scene: Scene): string[] => all(scene).flatMap((i) => (i.kind === 'text' ? [i.text] : []));
const draw = (id: string, look: Partial<LargeLook> = {}, t = 0.4) => {
  const { flight, pose } = stagedOf(id);
  return largeScene({ flight, cursor: pose(t), look: { ...LOOK, ...look }, width: 900, height: 500, words });
};

test('a length is read between its ends, an angle the angle at its corner', () => {
  const ends = [
    [0, 0],
    [3, 4],
  ] as const;
  expect(calcMeasure({ kind: 'length', points: ends })).toBeCloseTo(5, 12);
  expect(calcMeasure({ kind: 'length', points: ends.slice(1) })).toBeUndefined();
  const angle = [
    [1, 0],
    [0, 0],
    [-1, 1],
  ] as const;
  expect(calcMeasure({ kind: 'angle', points: angle })).toBeCloseTo((3 * Math.PI) / 4, 12);
  expect(calcMeasure({ kind: 'angle', points: angle.slice(1) })).toBeUndefined();
});

test('sizes are those of the flight: apex v^2/2g above the start, travel v T', () => {
  const { flight } = stagedOf('back-straight-full');
  const [, start] = [flight.path[1], flight.path[2]];
  const rise = flight.v_WScm_W0[1] ** 2 / (2 * 9.81);
  const found = texts(draw('back-straight-full'));
  const read = (word: string): number => Number(found.find((x) => x.startsWith(word))?.split(' ')[1]);
  // the path is sampled: the highest sample lies at most g dt^2 / 8 under the apex
  expect(read('rises')).toBeGreaterThan(rise - 9.81 / 60 ** 2 / 8 - 0.001);
  expect(read('rises')).toBeLessThan(rise + 0.001);
  expect(read('highest')).toBeCloseTo(start + read('rises'), 2);
  expect(read('travels')).toBeCloseTo(Math.abs(flight.v_WScm_W0[0]) * flight.duration, 3);
});

test('every view draws the mass centre of the cursor where the camera says', () => {
  for (const view of ['side', 'front', 'top'] as const) {
    const { flight, pose } = stagedOf('back-straight-full');
    const cursor = pose(0.4);
    const scene = draw('back-straight-full', { view });
    const camera = { ...LOOK, view: viewOf(view, flight.v_WScm_W0[0]), width: 900, height: 500 };
    const [x, y] = project(camera, cursor.p_WScm_W);
    const mark = all(scene).find((i) => i.kind === 'circle' && i.data?.mark === 'massCentre');
    expect(mark).toMatchObject({ x, y });
    expect(scene.layers.find((l) => l.name === 'figure')?.items.length).toBeGreaterThan(8);
  }
});

test('momentum keeps its direction on the screen through the flight', () => {
  const at = (t: number): unknown => {
    const arrow = all(draw('back-straight-full', { view: 'front' }, t)).find(
      (i) => i.kind === 'line' && i.data?.arrow === 'angularMomentum',
    );
    if (arrow?.kind !== 'line') throw new Error('no arrow');
    const p = arrow.points;
    return Math.atan2(p[3] - p[1], p[2] - p[0]).toFixed(6);
  };
  expect(at(0.1)).toBe(at(0.7));
});

test('every step replaces the figures behind', () => {
  const { flight, pose } = stagedOf('back-straight-full');
  const look = { ...LOOK, show: { ...LOOK.show, everyStep: true, before: false } };
  const everyStep = [0, 0.3, 0.6, 0.9].map(pose);
  const scene = largeScene({ flight, cursor: pose(0.4), look, everyStep, width: 900, height: 500, words });
  const layer = scene.layers.find((l) => l.name === 'ghosts');
  expect(layer?.items.filter((i) => i.kind === 'fill' && i.data?.tone === 'trunk').length).toBe(4);
});

test('what is not shown is not drawn', () => {
  // metres at the floor and heights are the scale of the picture: always there
  const show = { path: false, before: false, everyStep: false, paths: false, arrows: false, sizes: false };
  const scene = draw('back-straight-full', { show });
  expect(texts(scene).filter((x) => /[a-z]/.test(x) && !/^[\d.]+ m$/.test(x))).toEqual([]);
  expect(scene.layers.find((l) => l.name === 'ghosts')?.items).toEqual([]);
});

test('at most four figures are behind besides take-off and landing, and squared paper is drawn only while measuring', () => {
  for (const t of [0.05, 0.3, 0.55]) {
    const scene = draw('back-straight-full', {}, t);
    expect(scene.layers.find((l) => l.name === 'ghosts')?.items.length).toBeLessThanOrEqual(6);
  }
  const long = (scene: Scene): number =>
    all(scene).filter(
      (i) => i.kind === 'line' && i.points.length === 4 && i.points[0] === i.points[2] && i.points[3] === 500,
    ).length;
  expect(long(draw('back-straight-full'))).toBe(0);
  expect(long(draw('back-straight-full', { measure: { kind: 'length', points: [] } }))).toBeGreaterThan(3);
});

test('an axis seen end on is a ring about the mass centre, and no word is within reach of the limbs', () => {
  const scene = draw('back-tuck', {}, 0.3);
  const items = all(scene);
  const mark = items.find((i) => i.kind === 'circle' && i.data?.mark === 'massCentre');
  if (mark?.kind !== 'circle') throw new Error('no mass centre');
  expect(items.filter((i) => i.kind === 'circle' && i.x === mark.x && i.y === mark.y && i.r > 10).length).toBe(2);
  for (const i of items)
    if (i.kind === 'text' && /^(h$|w$|highest|rises)/.test(i.text))
      expect(Math.hypot(i.x - mark.x, i.y - mark.y)).toBeGreaterThan(0.6 * LOOK.pxPerM);
});
