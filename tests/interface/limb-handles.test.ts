// The limbs of the figure as handles: what a press means at every size, how a limb follows the hand, and where the plate goes.

import { describe, expect, it } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import { distanceTo, limbsUnder, REACH } from '../../src/app/limb-under.ts';
import { posing } from '../../src/engine/pose.ts';
import { leadEnd, type ScreenPlace, turnEnd, wayOf } from '../../src/features/pose/limb-turn.ts';
import { placePlate, toBox } from '../../src/features/pose/plate-place.ts';
import { rangeEnd } from '../../src/features/pose/range-end.ts';
import { drawHeld } from '../../src/pictures/pose-picture.ts';
import type { HeldLimb, LimbName } from '../../src/pictures/stage-input.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const result = engine.fly(skills['arms-in-spin']);
const { body } = result.flight;

/** px per m: the phone's athlete, the bench's, the large stage at 1440 x 900 */
const SIZES = [70, 142, 260];

function draw(shape: string, pxPerM: number, azimuth = 0): readonly HeldLimb[] {
  const angles = posing.poseOf(body, shapes[shape]);
  const room = { width: 3 * pxPerM, height: 3 * pxPerM, centreY: 1.5 * pxPerM };
  return drawHeld({ result, angles, azimuth, pxPerM, ...room }).limbs;
}
const limb = (limbs: readonly HeldLimb[], id: LimbName): HeldLimb => {
  const found = limbs.find((one) => one.id === id);
  if (!found) throw new Error(id);
  return found;
};
const names = (limbs: readonly HeldLimb[], x: number, y: number, touch: boolean): string[] =>
  limbsUnder(limbs, x, y, touch).map(({ id }) => id);
/** the middle of a piece of a limb's line, and the direction across it */
const across = ({ line }: HeldLimb, piece: number): { at: ScreenPlace; side: ScreenPlace } => {
  const [[ax, ay], [bx, by]] = [line[piece], line[piece + 1]];
  const long = Math.hypot(bx - ax, by - ay);
  return { at: [(ax + bx) / 2, (ay + by) / 2], side: [(by - ay) / long, (ax - bx) / long] };
};

describe('the whole limb is its handle', () => {
  it('at least 44 px wide to a finger at every size', () => {
    for (const pxPerM of SIZES) {
      const limbs = draw('tShape', pxPerM);
      for (const id of ['armL', 'armR', 'legL', 'legR', 'head'] as const)
        for (const piece of id === 'head' ? [0] : [0, 1]) {
          const { at, side } = across(limb(limbs, id), piece);
          // to the rounding of the places on the screen
          for (const off of [-21.99, -11, 0, 11, 21.99])
            expect(
              names(limbs, at[0] + off * side[0], at[1] + off * side[1], true),
              `${id} ${pxPerM} ${off}`,
            ).toContain(id);
        }
    }
  });

  it('to a mouse what is drawn and some px round it, and no more', () => {
    const limbs = draw('tShape', 142);
    const arm = limb(limbs, 'armL');
    const { at, side } = across(arm, 1);
    expect(names(limbs, ...at, false)).toEqual(['armL']);
    let edge = 0;
    while (distanceTo(arm, at[0] + edge * side[0], at[1] + edge * side[1]) === 0) edge += 0.5;
    const out = (px: number): ScreenPlace => [at[0] + (edge + px) * side[0], at[1] + (edge + px) * side[1]];
    expect(names(limbs, ...out(REACH.mouse - 1), false)).toEqual(['armL']);
    expect(names(limbs, ...out(REACH.mouse + 2), false)).toEqual([]);
  });

  it('the trunk and the air are none', () => {
    const limbs = draw('tShape', 142);
    const [l, r] = [limb(limbs, 'legL').line[0], limb(limbs, 'legR').line[0]];
    const middle: ScreenPlace = [(l[0] + r[0]) / 2, l[1] - 45];
    expect(names(limbs, ...middle, false)).toEqual([]);
    expect(names(limbs, 4, 4, true)).toEqual([]);
  });

  it('the left arm is on the right of a picture from the front', () => {
    const limbs = draw('tShape', 142);
    expect(limb(limbs, 'armL').line[3][0]).toBeGreaterThan(limb(limbs, 'armR').line[3][0] + 150);
  });
});

describe('two limbs under one press', () => {
  it('by finger: legs that lie within 44 px of each other are both named, the nearer first', () => {
    const limbs = draw('straight', 142);
    const { at } = across(limb(limbs, 'legL'), 1);
    const other = across(limb(limbs, 'legR'), 1).at;
    expect(Math.abs(at[0] - other[0])).toBeLessThan(44);
    expect(names(limbs, (3 * at[0] + other[0]) / 4, at[1], true)).toEqual(['legL', 'legR']);
    // beside both one alone is meant
    expect(names(limbs, at[0] + 20, at[1], true)).toEqual(['legL']);
  });

  it('by mouse: where arms cross each other both, the nearer to the eye first; beside the crossing one', () => {
    const limbs = draw('wrapped', 142);
    const [l, r] = [limb(limbs, 'armL'), limb(limbs, 'armR')];
    let both: ScreenPlace | undefined;
    for (let x = 0; x < 426 && !both; x += 2)
      for (let y = 0; y < 426 && !both; y += 2)
        if (distanceTo(l, x, y) === 0 && distanceTo(r, x, y) === 0) both = [x, y];
    if (!both) throw new Error('no crossing');
    const found = limbsUnder(limbs, ...both, false);
    expect(found.map(({ id }) => id).sort()).toEqual(['armL', 'armR']);
    expect(found[0].depth).toBeGreaterThanOrEqual(found[1].depth);
    expect(names(limbs, l.line[1][0], l.line[1][1], false)).toEqual(['armL']);
  });
});

describe('a limb follows the hand about its joint', () => {
  const grab = { pivot: [100, 100], at: [100, 150], end: [100, 180], reach: 100 } as const;

  it('the place taken hold of goes where the pointer goes, and the end with it', () => {
    // a quarter turn of the place held: the end makes the same quarter
    const [dx, dy] = leadEnd(grab, 50, -50);
    expect([100 + dx, 180 + dy]).toEqual([expect.closeTo(180, 6), expect.closeTo(100, 6)]);
  });

  it('stretches as far as it is long, and points at a hand beyond', () => {
    const [dx, dy] = leadEnd(grab, 0, 400);
    expect([dx, 80 + dy]).toEqual([expect.closeTo(0, 9), expect.closeTo(100, 9)]);
  });

  it('half of the way is half of the turn, along the arc', () => {
    const [dx, dy] = leadEnd(grab, 50, -50, 0.5);
    const [x, y] = [dx, 80 + dy];
    expect(Math.hypot(x, y)).toBeCloseTo(80, 6);
    expect(Math.atan2(x, y)).toBeCloseTo(Math.PI / 4, 6);
    expect(leadEnd(grab, 50, -50, 0)).toEqual([0, 0]);
  });

  it('an arrow turns it by the degrees that are asked for, the way it points', () => {
    const [dx, dy] = turnEnd(grab, Math.PI / 180);
    expect(Math.atan2(-dx, 80 + dy)).toBeCloseTo(Math.PI / 180, 9);
    // a hanging limb goes to the right counter-clockwise on the screen
    expect(wayOf(grab, [1, 0], 1)).toBe(-1);
    expect(wayOf(grab, [-1, 0], 1)).toBe(1);
    // along the limb: up raises it
    expect(wayOf(grab, [0, -1], -1)).toBe(-1);
    expect(wayOf(grab, [0, 1], -1)).toBe(1);
  });
});

describe('the plate beside the hand', () => {
  it('is at least 12 px from the hand, 60 from a finger, inside the picture and over no limb', () => {
    for (const shape of ['straight', 'tShape', 'wrapped', 'tuck'])
      for (const apart of [12, 60]) {
        const limbs = draw(shape, 142);
        const clear = limbs.flatMap(({ outline }) => outline);
        const hand = limb(limbs, 'armL').line[3];
        const room = { width: 560, height: 426, clear, hand, apart };
        const [x, y] = placePlate(room, 150, 90);
        expect(toBox(...hand, x, y, 150, 90)).toBeGreaterThanOrEqual(apart);
        expect([x >= 0, y >= 0, x + 150 <= 560, y + 90 <= 426]).toEqual([true, true, true, true]);
        for (const one of limbs)
          for (let px = x; px <= x + 150; px += 10)
            for (let py = y; py <= y + 90; py += 10)
              expect(distanceTo(one, px, py), `${shape} ${one.id}`).toBeGreaterThan(0);
      }
  });
});

describe('the end of a range', () => {
  it('is a line beyond the tip, along the limb, with its hatch on the side of the hand', () => {
    const { stop, hatch } = rangeEnd([0, 0], [0, -100], [-30, -90]);
    expect([stop[0], stop[2]]).toEqual([expect.closeTo(0, 9), expect.closeTo(0, 9)]);
    expect(stop[3]).toBeLessThan(stop[1]);
    expect(hatch.every(([x1, , x2]) => x1 < 0 && x2 < 0)).toBe(true);
  });
});
