// Pictures for page and slide: their figures are those of the stage, all to one scale, at the instants that are written under them.
import { expect, test } from 'vitest';
import { PER_MM } from '../../src/paper/page-svg.ts';
import { makePicture } from '../../src/paper/picture.ts';
import type { PictureLayout } from '../../src/paper/picture-places.ts';
import { equalTimes } from '../../src/paper/picture-times.ts';
import { figureItems } from '../../src/scene/figure.ts';
import { sideScene } from '../../src/scene/side-scene.ts';
import { sideView } from '../../src/scene/view.ts';
import { papersOf } from './flown-paper.ts';
import { figuresIn, textsIn } from './svg-figures.ts';

/** Units: numbers are written to a hundredth. */
const WRITTEN = 0.011;
const STANDING = 'A model, not coaching advice.';

const paperOf = (id: string) => papersOf(id)[papersOf(id).length - 1].paper;
const full = paperOf('back-straight-full');
const made = (layout: PictureLayout, times: readonly number[], flight = full) =>
  makePicture({
    versions: [{ letter: 'A', flight }],
    layout,
    times,
    widthMm: 160,
    head: {
      name: 'Back somersault',
      result: [
        { text: '1.00 somersault backward, 1.00 twist to the left, 0.94 s in the air, lands on the feet, upright' },
      ],
    },
    standing: STANDING,
    foot: 'Filled limbs are the left side.',
  });
const scaleOf = (svg: string): number => Number(/data-px-per-m="([\d.]+)"/.exec(svg)?.[1]);

test.each(['row', 'path', 'time'] as const)('as a %s each figure is the one of the stage at that instant', (layout) => {
  for (const id of ['back-straight-full', 'dive-two-and-a-half-pike']) {
    const flight = paperOf(id);
    const { svg } = made(layout, equalTimes(flight, 5, 'somersault') ?? [], flight);
    const pxPerM = scaleOf(svg);
    const figures = figuresIn(svg);
    expect(figures).toHaveLength(5);
    for (const { t, at, contours } of figures) {
      const pose = flight.pose(t);
      const window = { width: 900, height: 600, pxPerM, floorY: 600 };
      const { layers } = sideScene({ flight: flight.staged, cursor: pose, window, guides: false });
      const { items, sight } = layers.find(({ name }) => name === 'figure') ?? { items: [] };
      const stage = items.flatMap((item) => (item.kind === 'fill' ? item.contours : []));
      expect(contours).toHaveLength(stage.length);
      stage.forEach((contour, k) => {
        contour.forEach((v, i) => {
          const shift = i % 2 === 0 ? at[0] - (sight?.x ?? 0) : at[1] - (sight?.y ?? 0);
          expect(Math.abs(contours[k][i] - v - shift)).toBeLessThan(2 * WRITTEN);
        });
      });
    }
  }
});

test('another instant would be found', () => {
  const { svg } = made('row', [0.2]);
  const [{ at, contours }] = figuresIn(svg);
  const place = { view: sideView(-1), scale: scaleOf(svg), x: at[0], y: at[1] };
  const later = full.pose(0.21);
  const other = figureItems(full.staged.body, later.frames, { ...place, anchor: later.p_WScm_W });
  const points = other.flatMap((item) => (item.kind === 'fill' ? item.contours : []));
  expect(points.some((contour, k) => contour.some((v, i) => Math.abs(contours[k][i] - v) > 1))).toBe(true);
});

test('the bar is a metre of the figures, and the scale in words is that of the page', () => {
  const { svg, widthMm } = made('path', [0, 0.4]);
  const [, bar, metres] = /data-metre="([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  expect(Number(bar) / Number(metres)).toBeCloseTo(scaleOf(svg), 1);
  expect(svg).toContain(`width="${widthMm}mm"`);
  const scale = Number(/1 to (\d+) in print/.exec(svg)?.[1]);
  expect(Math.abs((1000 * PER_MM) / scale / scaleOf(svg) - 1)).toBeLessThan(0.02);
});

test('along the path a figure is where its mass centre is, from a floor that is one', () => {
  const times = [0, 0.3, 0.9];
  const { svg } = made('path', times);
  const k = scaleOf(svg);
  const [a, b, c] = figuresIn(svg);
  for (const [one, other] of [
    [a, b],
    [b, c],
  ] as const) {
    const [p, q] = [full.pose(one.t).p_WScm_W, full.pose(other.t).p_WScm_W];
    // it travels along -X, which is to the right
    expect(other.at[0] - one.at[0]).toBeCloseTo(-(q[0] - p[0]) * k, 0);
    expect(one.at[1] - other.at[1]).toBeCloseTo((q[1] - p[1]) * k, 0);
  }
});

test('every pose has its time, also where several are over one place', () => {
  const flight = paperOf('giant-double-straight');
  for (const layout of ['row', 'path', 'time'] as const) {
    const times = equalTimes(flight, 7, 'time') ?? [];
    const lines = textsIn(made(layout, times, flight).svg);
    const written = lines.filter(({ text }) => /^\d\.\d\d s$/.test(text));
    expect(written.map(({ text }) => text).sort()).toEqual(times.map((t) => `${t.toFixed(2)} s`).sort());
    for (const [i, a] of written.entries())
      for (const b of written.slice(i + 1))
        expect(a.right <= b.left || b.right <= a.left || Math.abs(a.y - b.y) > 14, `${a.text} ${b.text}`).toBe(true);
  }
});

test('over time a bed is under the feet that leave it', () => {
  const flight = paperOf('trampoline-triple-full');
  const { svg } = made('time', [0, 0.8, flight.duration], flight);
  const floor = made('time', [0, 0.5, 0.9]).svg;
  // the bed and its frame are drawn before the first figure
  expect(svg.split('data-figure')[0].length).toBeGreaterThan(floor.split('data-figure')[0].length + 200);
});

test('equal turns are equal turns', () => {
  for (const by of ['somersault', 'twist'] as const) {
    const times = equalTimes(full, 5, by) ?? [];
    expect(times).toHaveLength(5);
    const turns = times.map((t) => full.pose(t)[by]);
    const steps = turns.slice(1).map((v, i) => v - turns[i]);
    for (const step of steps) expect(step).toBeCloseTo(steps[0], 3);
  }
  expect(equalTimes(paperOf('back-tuck'), 5, 'twist')).toBeUndefined();
});

test('two versions: the second is a contour in dashes, as large, and both have their letters', () => {
  const other = paperOf('back-straight-double');
  const { svg } = makePicture({
    versions: [
      { letter: 'A', flight: full },
      { letter: 'B', flight: other },
    ],
    layout: 'row',
    times: [0, 0.3, 0.6],
    widthMm: 160,
    standing: STANDING,
    foot: '',
  });
  expect(svg.match(/data-figure="A/g)).toHaveLength(3);
  expect(svg.match(/data-figure="B/g)).toHaveLength(3);
  expect(svg.match(/data-figure="A[^>]*>.*?<\/g>/s)?.[0]).not.toContain('stroke-dasharray');
  expect(svg.match(/data-figure="B[^>]*>.*?<\/g>/s)?.[0]).toContain('stroke-dasharray');
  expect(textsIn(svg).map(({ text }) => text)).toEqual(
    expect.arrayContaining(['A', 'B', '0.00 s', '0.30 s', '0.60 s']),
  );
});

test('its colours are plain values, for programs that know no other', () => {
  expect(made('time', [0, 0.5]).svg).not.toMatch(/var\(|color-mix|currentColor/);
});

test('no line leaves the page, and a long headline takes more of them', () => {
  for (const widthMm of [60, 160, 400]) {
    const { svg } = makePicture({
      versions: [{ letter: 'A', flight: full }],
      layout: 'row',
      times: [0, 0.5],
      widthMm,
      head: {
        name: 'A skill with a long name, that was given by hand and goes on',
        result: [
          {
            text: '0.52 somersaults of 1, 1.00 twist to the left, 0.94 s in the air: lands as wanted by none, on the hands, tilted 12 degrees',
          },
        ],
      },
      standing: STANDING,
      foot: '',
    });
    for (const { left, right, text, size } of textsIn(svg)) {
      expect(left, text).toBeGreaterThanOrEqual(0);
      expect(right, text).toBeLessThanOrEqual(widthMm * PER_MM);
      expect(size).toBeGreaterThanOrEqual(14.6);
    }
    expect(svg).toContain(STANDING.split(' ')[0]);
  }
});
