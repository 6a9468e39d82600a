// The large stage: camera, tape, angle, sizes, trails, apparatus. Everything to scale and where the flight is.

import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { apparatusOf, calcFrames, flySkill, frameTimes, parseSkill } from '../../sim/index.ts';
import { makePoser } from '../../src/engine/poses.ts';
import { makeStageFlight } from '../../src/pictures/staged-flight.ts';
import { project, viewOf } from '../../src/scene/camera.ts';
import type { LargeLook } from '../../src/scene/large-look.ts';
import { largeScene } from '../../src/scene/large-scene.ts';
import { calcMeasure } from '../../src/scene/measure.ts';
import { ghostTimes } from '../../src/scene/pose-frames.ts';
import type { DrawItem, Scene } from '../../src/scene/scene.ts';
import { launchedOf } from '../skill/load.ts';

function stage(id: string) {
  const skill = launchedOf(parseSkill(skills[id], { athletes, shapes }));
  const flight = flySkill(skill);
  const frames = calcFrames(flight, frameTimes(flight.duration, 60));
  const pose = makePoser(flight, frames);
  const made = makeStageFlight(
    id,
    { flight, frames, apparatus: apparatusOf({ skill, flight }) },
    ghostTimes(flight.duration).map(pose),
  );
  return { flight: made, pose, frames };
}

const LOOK: LargeLook = {
  view: 'side',
  follow: false,
  pxPerM: 150,
  across: 0.4,
  up: 1.5,
  show: { path: true, ghosts: true, strobe: false, trails: false, arrows: true, sizes: true },
  strobes: 9,
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
  const { flight, pose } = stage(id);
  return largeScene({ flight, cursor: pose(t), look: { ...LOOK, ...look }, width: 900, height: 500, words });
};

test('a tape reads the length between its ends, an angle the angle at its corner', () => {
  const tape = [
    [0, 0],
    [3, 4],
  ] as const;
  expect(calcMeasure({ kind: 'tape', points: tape })).toBeCloseTo(5, 12);
  expect(calcMeasure({ kind: 'tape', points: tape.slice(1) })).toBeUndefined();
  const angle = [
    [1, 0],
    [0, 0],
    [-1, 1],
  ] as const;
  expect(calcMeasure({ kind: 'angle', points: angle })).toBeCloseTo((3 * Math.PI) / 4, 12);
  expect(calcMeasure({ kind: 'angle', points: angle.slice(1) })).toBeUndefined();
});

test('sizes are those of the flight: apex v^2/2g above the start, travel v T', () => {
  const { flight } = stage('back-straight-full');
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
    const { flight, pose } = stage('back-straight-full');
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

test('a strobe picture replaces the ghosts', () => {
  const { flight, pose } = stage('back-straight-full');
  const look = { ...LOOK, show: { ...LOOK.show, strobe: true, ghosts: false } };
  const strobe = [0, 0.3, 0.6, 0.9].map(pose);
  const scene = largeScene({ flight, cursor: pose(0.4), look, strobe, width: 900, height: 500, words });
  const layer = scene.layers.find((l) => l.name === 'ghosts');
  expect(layer?.items.filter((i) => i.kind === 'fill' && i.data?.tone === 'trunk').length).toBe(4);
});

test('what is not shown is not drawn', () => {
  const show = { path: false, ghosts: false, strobe: false, trails: false, arrows: false, sizes: false };
  const scene = draw('back-straight-full', { show });
  expect(texts(scene).filter((x) => /[a-z]/.test(x))).toEqual([]);
  expect(scene.layers.find((l) => l.name === 'ghosts')?.items).toEqual([]);
});
