import { describe, expect, it } from 'vitest';
import { dashed } from '../../src/render/dash.ts';
import { flightScene } from '../../src/scene/flight-scene.ts';
import { frontScene, tiltIsSeen } from '../../src/scene/front-scene.ts';
import { fitHeights, HEIGHT_NOTE, heightPx } from '../../src/scene/heights.ts';
import { ghostTimes } from '../../src/scene/pose-frames.ts';
import type { DrawItem, Layer, Scene } from '../../src/scene/scene.ts';
import { sideScene } from '../../src/scene/side-scene.ts';
import { topScene } from '../../src/scene/top-scene.ts';
import { uprightScene } from '../../src/scene/upright-scene.ts';
import { mockFlight } from '../figure-sheet/mock-flight.ts';
import { sheetBody as body, shapeAngles, stagePose } from '../figure-sheet/poses.ts';

const one = mockFlight(body);
const window = { width: 800, height: 274, x0: 62, pxPerS: 720, pxPerM: 83, floorY: 274, labelX: 20 };
const scaled = { width: 294, height: 274, pxPerM: 83, floorY: 274 };
const layer = (scene: Scene, name: string): Layer => {
  const found = scene.layers.find((one) => one.name === name);
  if (!found) throw new Error(`no layer ${name}`);
  return found;
};
const flat = (items: readonly DrawItem[]): DrawItem[] =>
  items.flatMap((item) => (item.kind === 'group' ? [item, ...flat(item.items)] : [item]));
const arrows = (scene: Scene, name: string): DrawItem[] =>
  scene.layers.flatMap((l) => flat(l.items)).filter((item) => item.data?.arrow === name);

describe('the flight unrolled', () => {
  it('puts every ghost at its instant and its true height', () => {
    const scene = flightScene({ flight: one.flight, cursor: one.pose(0.44), window });
    for (const item of layer(scene, 'ghosts').items) {
      if (item.kind !== 'group') throw new Error('a ghost is a group');
      const t = Number(item.data?.t);
      expect(item.x).toBeCloseTo(62 + 720 * t, 6);
      expect(item.y).toBeCloseTo(274 - 83 * one.pose(t).p_WScm_W[1], 6);
    }
  });

  it('changes the ghosts key only when another ghost is shown', () => {
    const key = (t: number): string | undefined =>
      layer(flightScene({ flight: one.flight, cursor: one.pose(t), window }), 'ghosts').key;
    expect(key(0.44)).toBe(key(0.445));
    expect(key(0.44)).not.toBe(key(0.54));
  });

  it('marks a dot on the path every 0.1 s', () => {
    const dots = layer(flightScene({ flight: one.flight, cursor: one.pose(0.44), window }), 'path').items.filter(
      (item) => item.kind === 'circle',
    );
    expect(dots).toHaveLength(Math.floor(one.flight.duration / 0.1 + 1e-9) + 1);
  });

  it('draws the landing solid as it is and dashed as wanted, the angle between them true', () => {
    const scene = flightScene({ flight: one.flight, cursor: one.pose(0.44), window });
    const lines = layer(scene, 'marks').items.filter((item) => item.data?.wedge === 'landing');
    const angle = (name: string): number => {
      const item = lines.find((line) => line.data?.line === name);
      if (item?.kind !== 'line') throw new Error(name);
      expect(item.dash !== undefined).toBe(name === 'wanted');
      return Math.atan2(item.points[3] - item.points[1], item.points[2] - item.points[0]);
    };
    const last = one.flight.ghosts[one.flight.ghosts.length - 1];
    const difference = last.somersault - (one.flight.wantedSomersault ?? 0);
    // travel -X: backward turns clockwise, which is + on a screen with y down
    expect(angle('is') - angle('wanted')).toBeCloseTo(difference, 5);
  });

  it('draws another version dashed, hatched and behind', () => {
    const two = mockFlight(body, { up: 4.4 });
    const others = [{ letter: 'B', flight: two.flight, cursor: two.pose(0.44), shiftS: 0 }] as const;
    const figure = layer(flightScene({ flight: one.flight, cursor: one.pose(0.44), window, others }), 'figure').items;
    const dashes = figure.findIndex((item) => item.kind === 'line' && item.dash !== undefined);
    const trunk = figure.findIndex((item) => item.data?.part === 'trunk');
    expect(dashes).toBeGreaterThanOrEqual(0);
    expect(dashes).toBeLessThan(trunk);
  });

  it('three versions differ in dashes and hatch, the first in front, each with its letter', () => {
    const two = mockFlight(body, { up: 4.4 });
    const cursor = two.pose(0.44);
    const others = (['B', 'C', 'D'] as const).map((letter) => ({ letter, flight: two.flight, cursor, shiftS: 0 }));
    const figure = layer(flightScene({ flight: one.flight, cursor: one.pose(0.44), window, others }), 'figure').items;
    const letters = figure.filter((item) => item.kind === 'text').map((item) => item.data?.version);
    expect(letters).toEqual(['D', 'C', 'B']);
    const dashes = new Set(figure.flatMap((item) => (item.kind === 'line' && item.dash ? [item.dash.join()] : [])));
    expect(dashes.size).toBe(3);
  });

  it('a version that runs ahead of the clock is drawn where the clock is, and its path ends where it lands', () => {
    const two = mockFlight(body, { up: 4.4 });
    const shiftS = two.flight.duration - one.flight.duration;
    const t = 0.3;
    const others = [{ letter: 'B', flight: two.flight, cursor: two.pose(t + shiftS), shiftS }] as const;
    const scene = flightScene({ flight: one.flight, cursor: one.pose(t), window, others });
    const letter = layer(scene, 'figure').items.find((item) => item.kind === 'text');
    const x = (s: number): number => window.x0 + s * window.pxPerS;
    if (letter?.kind !== 'text') throw new Error('no letter');
    expect(letter.x).toBeCloseTo(x(t), 9);
    const path = layer(scene, 'path').items.find((item) => item.kind === 'line' && item.dash !== undefined);
    if (path?.kind !== 'line') throw new Error('no path');
    expect(path.points[path.points.length - 2]).toBeCloseTo(x(one.flight.duration), 4);
  });

  it('compresses tall flights above a break, says so, and keeps bodies their size', () => {
    const tall = mockFlight(body, { up: 8.4, from: 1.1, turns: 3 });
    const scene = flightScene({ flight: tall.flight, cursor: tall.pose(0.8), window });
    expect(scene.notes).toEqual([HEIGHT_NOTE]);
    expect(layer(scene, 'heights').items.filter((item) => item.data?.mark === 'break')).toHaveLength(2);
    const h = fitHeights(274, 83, 4.6, 1.1);
    expect(heightPx(h, 4.6)).toBeGreaterThan(0.9 * 83);
    expect(heightPx(h, 0.5)).toBeCloseTo(274 - 41.5, 9);
    let before = Number.POSITIVE_INFINITY;
    for (let y = 0; y < 5; y += 0.1) {
      expect(heightPx(h, y)).toBeLessThan(before);
      before = heightPx(h, y);
    }
    expect(flightScene({ flight: one.flight, cursor: one.pose(0.4), window }).notes).toEqual([]);
  });

  it('offers ghost times from take-off to landing', () => {
    const times = ghostTimes(0.96);
    expect(times[0]).toBe(0);
    expect(times[times.length - 1]).toBe(0.96);
    expect(ghostTimes(9).length).toBe(14);
  });
});

describe('the other views', () => {
  it('show the side to scale, running with the travel', () => {
    const scene = sideScene({ flight: one.flight, cursor: one.pose(0.44), window: scaled });
    const ghosts = layer(scene, 'ghosts').items;
    const first = ghosts[0];
    const last = ghosts[ghosts.length - 1];
    if (first.kind !== 'group' || last.kind !== 'group') throw new Error('groups');
    expect((last.x ?? 0) - (first.x ?? 0)).toBeCloseTo(1.95 * one.flight.duration * 83, 3);
  });

  it('turn the somersault arrow the way the body turns', () => {
    for (const [along, clockwise] of [
      [-1.95, 1],
      [1.95, 0],
    ]) {
      const mock = mockFlight(body, { along });
      const scene = sideScene({ flight: mock.flight, cursor: mock.pose(0.44), window: scaled, arrows: true });
      expect(arrows(scene, 'somersault')[0].data?.clockwise).toBe(clockwise);
    }
  });

  it('show angular momentum as an arrow from the front and by its end from the side', () => {
    const cursor = one.pose(0.44);
    const front = frontScene({ flight: one.flight, cursor, window: scaled, arrows: true });
    const side = sideScene({ flight: one.flight, cursor, window: scaled, arrows: true });
    expect(arrows(front, 'angularMomentum')[0].kind).toBe('line');
    // +Z points away from an eye on the left
    expect(arrows(side, 'angularMomentum')[0].data?.towards).toBe(0);
  });

  it('carry the tilt wedge only within 30 deg of upright or upside down', () => {
    const at = (somersault: number) => stagePose(body, 0.5, shapeAngles('straight'), [somersault, 9, 0], [0, 1.5, 0]);
    for (const [somersault, seen] of [
      [0, true],
      [29, true],
      [31, false],
      [90, false],
      [151, true],
      [180, true],
    ] as const) {
      expect(tiltIsSeen(at(somersault))).toBe(seen);
      const scene = frontScene({ flight: one.flight, cursor: at(somersault), window: scaled });
      expect(layer(scene, 'marks').items.length > 0).toBe(seen);
    }
    const label = layer(frontScene({ flight: one.flight, cursor: at(20), window: scaled }), 'text').items.find(
      (item) => item.kind === 'text',
    );
    expect(label?.kind === 'text' && label.text).toBe('9.0°');
  });

  it('leave the wedge out where tilt is not defined', () => {
    const pose = { ...one.pose(0.5), tilt: Number.NaN, somersault: Number.NaN };
    expect(tiltIsSeen(pose)).toBe(false);
  });

  it('contain nothing that is not finite', () => {
    const cursor = one.pose(0.37);
    const scenes = [
      flightScene({ flight: one.flight, cursor, window, landingLabel: '6° short' }),
      sideScene({ flight: one.flight, cursor, window: scaled, arrows: true }),
      frontScene({ flight: one.flight, cursor, window: scaled, arrows: true }),
      topScene({ flight: one.flight, cursor, window: { ...scaled, height: 120, floorY: 60 } }),
      uprightScene({ body, pose: cursor, width: 240, height: 300, pxPerM: 140, arrows: true }),
    ];
    for (const item of scenes.flatMap((scene) => scene.layers.flatMap((l) => flat(l.items)))) {
      const numbers =
        item.kind === 'fill'
          ? item.contours.flatMap((c) => [...c])
          : 'points' in item
            ? [...item.points]
            : [item.x ?? 0, item.y ?? 0];
      expect(numbers.every(Number.isFinite)).toBe(true);
    }
  });
});

describe('a lifted limb', () => {
  const pose = stagePose(body, 0.3, shapeAngles('tShape'), [0, 0, 0], [0, 1, 0]);
  const draw = (lift?: { chains: readonly string[]; touch?: boolean }): readonly DrawItem[] =>
    layer(uprightScene({ body, pose, width: 300, height: 300, pxPerM: 140, ...(lift ? { lift } : {}) }), 'figure')
      .items;
  const chainOf = (item: DrawItem): unknown => item.data?.chain;
  const isBand = (item: DrawItem): boolean => item.kind === 'segments';

  it('is drawn last, in a line of ink; everything else stays as it was, the bands of the left side among it', () => {
    const [rest, lifted] = [draw(), draw({ chains: ['armR'] })];
    const named = lifted.filter((item) => chainOf(item) !== undefined);
    expect(chainOf(named[named.length - 1])).toBe('armR');
    expect(lifted.length).toBe(rest.length + 3);
    expect(lifted.filter(isBand)).toEqual(rest.filter(isBand));
  });
});

describe('dashes', () => {
  it('cover on / (on + off) of the line and bend with it', () => {
    const line = Float32Array.from([0, 0, 60, 0, 60, 30]);
    const pieces = dashed(line, [6, 3], false);
    const length = pieces.reduce((sum, p) => {
      let own = 0;
      for (let i = 2; i < p.length; i += 2) own += Math.hypot(p[i] - p[i - 2], p[i + 1] - p[i - 1]);
      return sum + own;
    }, 0);
    expect(pieces).toHaveLength(10);
    expect(length).toBeCloseTo(60, 4);
    expect(pieces.some((p) => p.length > 4)).toBe(true);
  });
});
