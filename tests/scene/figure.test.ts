import { describe, expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { getLook } from '../../src/scene/athlete-look.ts';
import { figureItems } from '../../src/scene/figure.ts';
import { outlineItems } from '../../src/scene/figure-outline.ts';
import { svgPicture } from '../../src/scene/figure-svg.ts';
import type { DrawItem, FillItem, Points } from '../../src/scene/scene.ts';
import { boundsOf, shapeTile } from '../../src/scene/shape-tile.ts';
import { frontView, heldView, sideView, topView, type View } from '../../src/scene/view.ts';
import { attitude, sheetBody as body, moreShapes, poseOf, shapeAngles } from '../figure-sheet/poses.ts';
import { turnedView } from '../figure-sheet/turned-view.ts';

const place = (view: View, scale = 83) => ({ view, scale, anchor: [0, 0, 0] as const, x: 0, y: 0 });
const fills = (items: readonly DrawItem[]): FillItem[] =>
  items.filter((item): item is FillItem => item.kind === 'fill');
const partsOf = (items: readonly DrawItem[]): FillItem[] => fills(items).filter((item) => item.data !== undefined);
const indexOf = (items: readonly DrawItem[], part: string): number =>
  partsOf(items).findIndex((item) => item.data?.part === part);
const views: readonly View[] = [
  sideView(1),
  sideView(-1),
  frontView,
  topView(1),
  turnedView(0.7, 0.4),
  turnedView(-2.4, -0.9),
];

function numbersOf(items: readonly DrawItem[]): number[] {
  return items.flatMap((item) => {
    if (item.kind === 'fill') return item.contours.flatMap((contour) => [...contour]);
    if (item.kind === 'line' || item.kind === 'segments') return [...item.points];
    if (item.kind === 'group') return numbersOf(item.items);
    return [item.x, item.y];
  });
}

/** Signed area, + clockwise on the screen. */
function areaOf(contour: Points): number {
  let area = 0;
  for (let i = 0; i < contour.length; i += 2) {
    const j = (i + 2) % contour.length;
    area += (contour[i] * contour[j + 1] - contour[j] * contour[i + 1]) / 2;
  }
  return area;
}

describe('the figure as a list', () => {
  it('has no number that is not finite, in any ready-made shape and view', () => {
    for (const { angles } of moreShapes) {
      for (const view of views) {
        const frames = poseOf(body, angles, attitude(40, 10, 70));
        const items = [...figureItems(body, frames, place(view)), ...outlineItems(body, frames, place(view))];
        expect(items.length).toBeGreaterThan(8);
        expect(numbersOf(items).every(Number.isFinite)).toBe(true);
      }
    }
  });

  it('fills left limbs dark without an edge and right limbs pale with one', () => {
    const items = fills(figureItems(body, poseOf(body, shapeAngles('star')), place(frontView)));
    for (const item of items) {
      if (item.data?.tone === 'left') expect(item.fill).toBe('limb-l');
      if (item.data?.tone === 'right') {
        expect(item.fill).toBe('limb-r');
        expect(items[items.indexOf(item) - 1].fill).toBe('limb-line');
      }
    }
    expect(partsOf(items).filter((item) => item.data?.tone === 'left')).toHaveLength(2);
    expect(partsOf(items).filter((item) => item.data?.tone === 'right')).toHaveLength(2);
  });

  it('tapes the left limbs only', () => {
    const segments = figureItems(body, poseOf(body, shapeAngles('star')), place(frontView)).filter(
      (item) => item.kind === 'segments',
    );
    expect(segments).toHaveLength(2);
    // screen right is the athlete's left in the front view
    for (const item of segments) {
      if (item.kind === 'segments') expect(item.points.every((v, i) => i % 2 === 1 || v > 0)).toBe(true);
    }
  });

  it('draws the nearer arm after the trunk and the farther one before it', () => {
    for (const [vx, near, far] of [
      [-1, 'upperArmL', 'upperArmR'],
      [1, 'upperArmR', 'upperArmL'],
    ] as const) {
      const items = figureItems(body, poseOf(body, shapeAngles('straight')), place(sideView(vx)));
      expect(indexOf(items, near)).toBeGreaterThan(indexOf(items, 'trunk'));
      expect(indexOf(items, far)).toBeLessThan(indexOf(items, 'trunk'));
    }
  });

  it('draws arms crossed before the chest over it from the front and under it from behind', () => {
    const frames = poseOf(body, shapeAngles('wrapped'));
    const front = figureItems(body, frames, place(frontView));
    const back = figureItems(body, frames, place(turnedView(Math.PI, 0)));
    const names = (items: DrawItem[]): string[] => partsOf(items).map((item) => String(item.data?.part));
    const armsOver = (list: string[]): boolean[] =>
      list.filter((n) => /arm/i.test(n)).map((n) => list.indexOf(n) > list.indexOf('trunk'));
    expect(armsOver(names(front)).every(Boolean)).toBe(true);
    expect(names(back).indexOf('trunk')).toBeGreaterThan(names(back).indexOf('forearmL'));
  });

  it('covers the tops of the thighs with the leotard from the front, not from the side', () => {
    const frames = poseOf(body, shapeAngles('straight'));
    const front = figureItems(body, frames, place(frontView));
    expect(indexOf(front, 'trunk')).toBeGreaterThan(indexOf(front, 'thighL'));
    expect(indexOf(front, 'trunk')).toBeGreaterThan(indexOf(front, 'thighR'));
    const side = figureItems(body, frames, place(sideView(-1)));
    expect(indexOf(side, 'thighL')).toBeGreaterThan(indexOf(side, 'trunk'));
  });

  it('draws a straight limb as one shape and a folded one with an inner contour', () => {
    const straight = figureItems(body, poseOf(body, shapeAngles('straight')), place(sideView(-1)));
    expect(indexOf(straight, 'shankL')).toBe(-1);
    const leg = partsOf(straight).find((item) => item.data?.part === 'thighL');
    expect(leg?.contours.length).toBeGreaterThan(3);
    expect(straight.some((item) => item.kind === 'line')).toBe(false);
    const tucked = figureItems(body, poseOf(body, shapeAngles('tuck')), place(sideView(-1)));
    const folded = tucked.some((item) => item.kind === 'line') || indexOf(tucked, 'shankL') >= 0;
    expect(folded).toBe(true);
  });

  it('gives the mirrored picture for the mirrored pose in the front view', () => {
    const mirrored = (angles: Readonly<Record<string, number>>): Record<string, number> =>
      Object.fromEntries(
        Object.entries(angles).map(([n, v]) => [n.replace(/([LR])$/, (s) => (s === 'L' ? 'R' : 'L')), v]),
      );
    const angles = { ...shapeAngles('oneUpOneDown'), elbowFlexionL: 70, kneeFlexionR: 60, hipFlexionR: 40 };
    const one = fills(figureItems(body, poseOf(body, angles), place(frontView)));
    const two = fills(figureItems(body, poseOf(body, mirrored(angles)), place(frontView)));
    /** as it is seen: a pale limb with its edge, which is drawn under it */
    const seen = (list: readonly FillItem[], item: FillItem): FillItem =>
      item.fill === 'limb-r' ? list[list.indexOf(item) - 1] : item;
    const swap = (n: string): string => n.replace(/([LR])$/, (s) => (s === 'L' ? 'R' : 'L'));
    for (const item of one.filter(({ data }) => data !== undefined)) {
      const same = one.filter((other) => other.data?.part === item.data?.part).indexOf(item);
      const twin = two.filter((other) => other.data?.part === swap(String(item.data?.part)))[same];
      expect(twin, String(item.data?.part)).toBeDefined();
      if (!twin) continue;
      const [ax0, ay0, ax1, ay1] = boundsOf([seen(one, item)]);
      const [bx0, by0, bx1, by1] = boundsOf([seen(two, twin)]);
      // poses are centred on the mass centre, which mirrors too; 1e-3 px is Float32
      for (const [a, b] of [
        [ax0, -bx1],
        [ax1, -bx0],
        [ay0, by0],
        [ay1, by1],
      ]) {
        expect(Math.abs(a - b)).toBeLessThan(1e-3);
      }
    }
  });

  it('shows the face from the front, the knot and the spine from behind', () => {
    const frames = poseOf(body, shapeAngles('straight'));
    const back = figureItems(body, frames, place(turnedView(Math.PI, 0)));
    const front = figureItems(body, frames, place(frontView));
    /** largest contour of skin drawn over the skull, px^2 */
    const face = (items: DrawItem[]): number => {
      const list = fills(items);
      const skull = list.findLastIndex((item) => item.fill === 'hair' && item.contours[0].length > 40);
      const over = list.slice(skull + 1).filter((item) => item.fill === 'skin' && item.data === undefined);
      return Math.max(0, ...over.flatMap((item) => item.contours.map(areaOf)));
    };
    expect(face(front)).toBeGreaterThan(100);
    // the nape below the hair is all that is left
    expect(face(back)).toBeLessThan(0.2 * face(front));
    expect(back.some((item) => item.kind === 'line' && item.stroke === 'hair')).toBe(true);
    const dark = fills(back).filter((item) => item.fill === 'hair');
    expect(back.indexOf(dark[dark.length - 1])).toBeGreaterThan(back.indexOf(dark[0]));
  });

  it('keeps every contour clockwise, so that contours filled together never cancel', () => {
    for (const { angles } of moreShapes.slice(0, 8)) {
      for (const view of views) {
        for (const item of partsOf(figureItems(body, poseOf(body, angles), place(view)))) {
          for (const contour of item.contours) expect(areaOf(contour)).toBeGreaterThanOrEqual(-1e-3);
        }
      }
    }
  });

  it('is as tall on the screen as the athlete', () => {
    const frames = poseOf(body, {});
    const [, y0, , y1] = boundsOf(figureItems(body, frames, place(sideView(1), 100)));
    // gaps of 1.2 px round it
    expect((y1 - y0) / 100).toBeGreaterThan(1.62);
    expect((y1 - y0) / 100).toBeLessThan(1.66);
  });

  it('draws any other tree from its own shapes', () => {
    const bare = { joint: [0, 0, 0], hinges: [], mass: 1, centre: [0, 0.5, 0], contacts: [] } as const;
    const rod = makeTree({
      name: 'a rod and a ball',
      segments: [
        {
          ...bare,
          name: 'rod',
          inertia: [0.1, 0.01, 0.1, 0, 0, 0],
          shapes: [{ kind: 'capsule', a_B: [0, 0, 0], b_B: [0, 1, 0], radiusA: 0.05, radiusB: 0.05 }],
        },
        {
          ...bare,
          name: 'ball',
          parent: 'rod',
          side: 'right',
          joint: [0, 1, 0.2],
          inertia: [0.1, 0.1, 0.1, 0, 0, 0],
          shapes: [{ kind: 'ellipsoid', centre_B: [0, 0, 0], radii: [0.1, 0.1, 0.1] }],
        },
      ],
    });
    expect(getLook(rod).human).toBe(false);
    const parts = partsOf(figureItems(rod, poseOf(rod, {}), place(sideView(1))));
    // the ball is nearer to an eye on world right
    expect(parts.map((item) => [item.data?.part, item.fill])).toEqual([
      ['rod', 'trunk'],
      ['ball', 'limb-r'],
    ]);
    const [x0, y0, x1, y1] = boundsOf([parts[0]]);
    expect(x1 - x0).toBeCloseTo(0.1 * 83, 3);
    expect(y1 - y0).toBeCloseTo(1.1 * 83, 3);
  });

  it('turns a tile into SVG text with colours that follow the theme', () => {
    const size = { width: 62, height: 60 };
    const items = shapeTile(body, poseOf(body, shapeAngles('tShape')), size);
    const [x0, y0, x1, y1] = boundsOf(items);
    expect(x0).toBeGreaterThan(-1);
    expect(y0).toBeGreaterThan(-1);
    expect(x1).toBeLessThan(63);
    expect(y1).toBeLessThan(61);
    const svg = svgPicture(items, size.width, size.height, 'T');
    expect(svg).toContain('var(--limb-l)');
    expect(svg).not.toMatch(/#[0-9a-f]{6}|NaN/i);
  });
});

describe('views', () => {
  it('run with the travel: +X seen from world right, -X from world left', () => {
    expect(sideView(1.9)).toEqual({ right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] });
    expect(sideView(-1.9)).toEqual({ right: [-1, 0, 0], up: [0, 1, 0], toward: [0, 0, -1] });
    expect(sideView(-0.1).right).toEqual([1, 0, 0]);
  });

  it('are right-handed, each of them', () => {
    const held = heldView(attitude(50, 20, 130), 0.8);
    for (const { right: r, up: u, toward: t } of [...views, held]) {
      const cross = [r[1] * u[2] - r[2] * u[1], r[2] * u[0] - r[0] * u[2], r[0] * u[1] - r[1] * u[0]];
      cross.forEach((value, i) => {
        expect(value).toBeCloseTo(t[i], 12);
      });
    }
  });

  it('hold the athlete upright whatever the attitude', () => {
    const shape = shapeAngles('oneUpOneDown');
    const plain = figureItems(body, poseOf(body, shape), place(frontView));
    const R = attitude(200, 15, 75);
    const held = figureItems(body, poseOf(body, shape, R), place(heldView(R)));
    boundsOf(held).forEach((value, i) => {
      expect(Math.abs(value - boundsOf(plain)[i])).toBeLessThan(1e-3);
    });
  });
});
