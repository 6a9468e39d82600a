// One picture of a moving picture: the whole flight is in it, the caution too, and nothing is written over another.
import { describe, expect, test } from 'vitest';
import { layMoving, type MovingSetting, movingScene } from '../../src/scene/moving-scene.ts';
import { wrapWords } from '../../src/scene/moving-words.ts';
import type { DrawItem, Scene, TextItem } from '../../src/scene/scene.ts';
import { stagedOf } from './staged.ts';

const CAUTION =
  'A model, not coaching advice. New skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.';
/** Of a letter, as a share of its size. */
const LETTER = 0.55;
const widthOf = (text: string, size: number): number => text.length * size * LETTER;

const SIZES = [
  [1280, 720],
  [640, 360],
  [1080, 1080],
  [1080, 1920],
] as const;
const words = {
  title: 'Back somersault, straight, full twist',
  headline: '0.97 somersault backward, 0.99 twist to the left, 1.04 s in the air, lands on the feet, upright',
  speed: '¼ speed',
  caution: CAUTION,
  seconds: (s: number) => `${s.toFixed(2)} s`,
};
const numbers = (t: number) =>
  ['twist', 'somersault', 'angular momentum', 'energy'].map((name, i) => ({
    name,
    value: `${(100 * t * i).toFixed(1)} kg·m²/s`.slice(0, 9),
  }));
const one = stagedOf('back-straight-full');
const T = one.flight.duration;
const poses = Array.from({ length: 40 }, (_, i) => one.pose((T * i) / 39));

function picture(view: MovingSetting['view'], [width, height]: readonly [number, number], t: number) {
  const setting: MovingSetting = {
    view,
    size: { width, height },
    span: [0, T],
    words,
    marks: { unit: 'm', perUnitM: 1 },
  };
  const layout = layMoving(setting, one.flight, poses, numbers, widthOf);
  return { layout, scene: movingScene(setting, layout, one.flight, one.pose(t), numbers(t)) };
}
const flat = (items: readonly DrawItem[]): DrawItem[] =>
  items.flatMap((item) => (item.kind === 'group' ? flat(item.items) : [item]));
const textsOf = (scene: Scene): TextItem[] =>
  flat(scene.layers.flatMap(({ items }) => items)).filter((item) => item.kind === 'text');

describe.each(SIZES)('%i × %i', (...size) => {
  test('is drawn in whole px of that size', () => {
    const { layout, scene } = picture('side', size, 0.3);
    expect([scene.width * layout.ratio, scene.height * layout.ratio]).toEqual([
      expect.closeTo(size[0], 6),
      expect.closeTo(size[1], 6),
    ]);
  });

  test.each(['side', 'front', 'top', 'close'] as const)(
    '%s: caution and time in every picture, no text over another',
    (view) => {
      for (const t of [0, 0.3 * T, T]) {
        const { layout, scene } = picture(view, size, t);
        const { unit, written } = layout;
        const texts = textsOf({ ...scene, layers: scene.layers.slice(-1) });
        const all = texts.map(({ text }) => text).join(' ');
        expect(all).toContain(CAUTION);
        expect(all).toContain(words.seconds(t));
        const boxes = texts.map((text) => ({
          ...text,
          right: text.x + widthOf(text.text, text.size),
          top: text.y - 0.8 * text.size,
        }));
        for (const [i, a] of boxes.entries()) {
          expect(a.right).toBeLessThanOrEqual(scene.width);
          expect(a.y).toBeLessThanOrEqual(scene.height);
          for (const b of boxes.slice(i + 1))
            expect(a.x < b.right && b.x < a.right && a.top < b.y && b.top < a.y, `${a.text} over ${b.text}`).toBe(
              false,
            );
        }
        // letters of at least 3 % of the shorter side: 11 px of 360
        const least = Math.min(...texts.map((text) => text.size));
        expect(least / Math.min(scene.width, scene.height)).toBeGreaterThanOrEqual(0.03);
        expect(written.air * unit).toBeGreaterThan(0.3 * scene.height);
      }
    },
  );

  test.each(['side', 'front', 'top'] as const)('%s: the body is in the picture from take-off to landing', (view) => {
    for (let i = 0; i <= 12; i++) {
      const { layout, scene } = picture(view, size, (T * i) / 12);
      const figure = scene.layers.find(({ name }) => name === 'figure');
      const xy = flat(figure?.items ?? []).flatMap((item) =>
        item.kind === 'fill' ? item.contours.map((contour) => [...contour]) : [],
      );
      expect(xy.length).toBeGreaterThan(5);
      const [xs, ys] = [0, 1].map((k) => xy.flatMap((contour) => contour.filter((_, j) => j % 2 === k)));
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...xs)).toBeLessThanOrEqual(scene.width);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(layout.written.head * layout.unit);
      // the soles are on the floor
      expect(Math.max(...ys)).toBeLessThanOrEqual(
        layout.written.air * layout.unit + 0.05 * (layout.window?.pxPerM ?? 0),
      );
    }
  });
});

test('from close the mass centre stays where it is, and the athlete is larger', () => {
  const places = [0, 0.4, T].map((t) => {
    const { scene } = picture('close', [1280, 720], t);
    const sight = scene.layers.find(({ name }) => name === 'figure')?.sight;
    return [sight?.x, sight?.y, sight?.scale];
  });
  for (const [x, y] of places) {
    expect(x).toBeCloseTo(places[0][0] ?? 0, 6);
    expect(y).toBeCloseTo(places[0][1] ?? 0, 6);
  }
  const side = picture('side', [1280, 720], 0.4).layout.window?.pxPerM ?? Infinity;
  expect(places[0][2]).toBeGreaterThan(1.2 * side);
});

test('the mark on the ruler is where the time is in the span', () => {
  const markOf = (t: number): number => {
    const { scene } = picture('side', [1280, 720], t);
    const fills = scene.layers.at(-2)?.items.filter((item) => item.kind === 'fill') ?? [];
    const [mark] = fills.at(-1)?.contours ?? [];
    return (mark[0] + mark[2]) / 2;
  };
  const [start, middle, end] = [markOf(0), markOf(T / 2), markOf(T)];
  expect(middle).toBeCloseTo((start + end) / 2, 3);
  expect(end).toBeGreaterThan(start + 100);
});

test('lines are no wider than there is room, and even', () => {
  const lines = wrapWords(CAUTION, 560, (text) => widthOf(text, 11.5));
  expect(lines.join(' ')).toBe(CAUTION);
  const widths = lines.map((line) => widthOf(line, 11.5));
  expect(Math.max(...widths)).toBeLessThanOrEqual(560);
  expect(Math.min(...widths)).toBeGreaterThan(0.8 * Math.max(...widths));
  expect(wrapWords('', 100, () => 0)).toEqual([]);
  expect(wrapWords('unbreakable', 5, (text) => text.length)).toEqual(['unbreakable']);
});
