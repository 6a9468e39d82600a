// Which other instants of a flight are drawn, and from where a flight that goes nowhere is seen.
import { describe, expect, it } from 'vitest';
import { flightScene } from '../../src/scene/flight-scene.ts';
import { flightView } from '../../src/scene/flight-view.ts';
import { CLEAR_OF_CURSOR, chooseGhosts, OVERLAP, readableGhosts, shareOf } from '../../src/scene/ghost-choice.ts';
import { ghostLayer } from '../../src/scene/ghosts.ts';
import type { StageFlight, StagePose } from '../../src/scene/pose-frames.ts';
import type { Scene } from '../../src/scene/scene.ts';
import { boundsOf } from '../../src/scene/shape-tile.ts';
import { sideScene } from '../../src/scene/side-scene.ts';
import { backView, frontView, heldView, sideView } from '../../src/scene/view.ts';
import { mockFlight } from '../figure-sheet/mock-flight.ts';
import { shapeAngles, sheetBody, stagePose } from '../figure-sheet/poses.ts';
import { stagedOf } from './staged.ts';

const { flight, pose } = mockFlight(sheetBody);
const side = sideView(flight.v_WScm_W0[0]);
/** Unrolled, so far apart that any can be chosen. */
const place = {
  view: side,
  scale: 60,
  at: ({ t, p_WScm_W }: StagePose) => [1800 * t, -60 * p_WScm_W[1]] as const,
};
/** Boxes are reckoned from joints; those of the figures as they are drawn may overlap by a little more. Measured: 0.176 at most. */
const DRAWN = OVERLAP + 0.08;
const PRESETS = [
  'arms-in-spin',
  'back-straight-full',
  'trampoline-double-full',
  'double-back-pike',
  'dive-two-and-a-half-pike',
];

/** About the vertical, + to the left. */
const turned = (rad: number): number[] => [Math.cos(rad), 0, Math.sin(rad), 0, 1, 0, -Math.sin(rad), 0, Math.cos(rad)];
/** A jump on the spot that turns by `turns` to the left. */
function turningJump(turns: number): StageFlight {
  const ghosts = flight.ghosts.map((pose): StagePose => {
    const twist = 2 * Math.PI * turns * (pose.t / flight.duration);
    return { ...pose, R_WF: turned(twist), somersault: 0, tilt: 0, twist };
  });
  return { ...flight, ghosts, v_WScm_W0: [0, 3, 0] };
}

const EMPTY: Scene = { width: 0, height: 0, background: 'air', layers: [], notes: [] };
type Boxes = ReturnType<typeof boundsOf>[];
/** Of the ghosts as they are drawn. */
const boxesOf = (scene: Scene): Boxes =>
  (scene.layers.find(({ name }) => name === 'ghosts')?.items ?? []).map((item) => boundsOf([item]));
const worst = (boxes: Boxes): number =>
  Math.max(0, ...boxes.flatMap((a, i) => boxes.slice(i + 1).map((b) => shareOf(a, b))));

describe('ghosts that are chosen', () => {
  it('are take-off, landing, and in order as many as asked for where there is room', () => {
    for (const most of [3, 4, 5, 6]) {
      const chosen = chooseGhosts(flight.ghosts, place, most);
      expect(chosen).toHaveLength(most);
      expect(chosen[0]).toBe(flight.ghosts[0]);
      expect(chosen[most - 1]).toBe(flight.ghosts[flight.ghosts.length - 1]);
      expect(chosen.map(({ t }) => t)).toEqual(chosen.map(({ t }) => t).sort((a, b) => a - b));
    }
  });

  it('at every cursor are no more than asked for, and none within 0.1 s of it', () => {
    for (let t = 0; t <= flight.duration; t += 0.013) {
      const clear = readableGhosts(flight.ghosts, pose(t), { ...place, most: 4 });
      expect(clear.length).toBeLessThanOrEqual(4);
      for (const ghost of clear) expect(Math.abs(ghost.t - t)).toBeGreaterThanOrEqual(CLEAR_OF_CURSOR - 1e-9);
    }
  });

  it('show a face where one is to be seen', () => {
    const jump = turningJump(1);
    const faces = (poses: readonly StagePose[]): number =>
      poses.slice(1, -1).reduce((sum, { R_WF: R }) => sum + R[0] * side.toward[0] + R[6] * side.toward[2], 0) /
      (poses.length - 2);
    expect(faces(chooseGhosts(jump.ghosts, place, 4))).toBeGreaterThan(faces(jump.ghosts));
  });

  it('show the shape that differs, whenever it is', () => {
    for (const odd of [1, 2, 5, 8]) {
      const ghosts = Array.from({ length: 11 }, (_, i) =>
        stagePose(sheetBody, i / 10, shapeAngles(i === odd ? 'star' : 'straight'), [0, 0, 0], [0, 1, 0]),
      );
      expect(chooseGhosts(ghosts, place, 3)[1].t).toBe(odd / 10);
    }
  });

  for (const id of PRESETS) {
    it(`of ${id} do not lie on one another, at most four in the side view and five over the ruler`, () => {
      const staged = stagedOf(id);
      const window = { width: 900, height: 264, pxPerM: 66, floorY: 264 };
      for (let t = 0; t < staged.flight.duration; t += 0.06) {
        const input = { flight: staged.flight, cursor: staged.pose(t) };
        const scaled = boxesOf(sideScene({ ...input, window }));
        const unrolled = { ...window, x0: 60, pxPerS: 640, labelX: 30, ghosts: 5 };
        const over = boxesOf(flightScene({ ...input, window: unrolled }));
        expect(scaled.length).toBeLessThanOrEqual(4);
        expect(over.length).toBeLessThanOrEqual(5);
        expect(worst(scaled)).toBeLessThan(DRAWN);
        expect(worst(over)).toBeLessThan(DRAWN);
      }
    });
  }

  it('of a long chain are chosen while a hand is at work', () => {
    // where every set was tried this took 8 s; 10 to 60 ms measured
    const many = Array.from({ length: 40 }, (_, i) => pose((i * flight.duration) / 39));
    const wide = { ...place, scale: 20, at: ({ t }: StagePose) => [(2400 * t) / flight.duration, 0] as const };
    expect(chooseGhosts(many, wide, 8)).toHaveLength(8);
  });

  it('do not lie under the words at the landing', () => {
    const at = (pose: StagePose) => [300 + 500 * pose.t, 150] as const;
    const wide = { view: side, scale: 40, at };
    const words = [[500, 130, 640, 150]] as const;
    const across = (set: readonly StagePose[]): number =>
      set.filter((one) => at(one)[0] > 500 && at(one)[0] < 640).length;
    expect(across(chooseGhosts(flight.ghosts, wide, 5))).toBeGreaterThan(0);
    expect(across(chooseGhosts(flight.ghosts, { ...wide, words }, 5))).toBe(0);
  });

  it('would lie on one another if any share were allowed', () => {
    const { flight: up } = stagedOf('trampoline-double-full');
    const at = ({ p_WScm_W: [x, y] }: StagePose) => [66 * x, -66 * y] as const;
    const narrow = { view: side, scale: 66, at };
    const drawn = (set: readonly StagePose[]): Boxes =>
      boxesOf({ ...EMPTY, layers: [ghostLayer(up, set, { ...narrow, name: 'side' })] });
    expect(worst(drawn(chooseGhosts(up.ghosts, { ...narrow, share: 1 }, 5)))).toBeGreaterThan(0.5);
    expect(worst(drawn(chooseGhosts(up.ghosts, narrow, 5)))).toBeLessThan(DRAWN);
  });
});

describe('from where the flight is seen', () => {
  it('from the side where it travels or somersaults', () => {
    expect(flightView(flight)).toEqual(side);
    expect(flightView({ ...turningJump(1), v_WScm_W0: [-1, 3, 0] })).toEqual(sideView(-1));
  });

  it('of a jump on the spot, from where the face is in the middle of the air', () => {
    expect(flightView(turningJump(1))).toEqual(backView);
    expect(flightView(turningJump(2))).toEqual(frontView);
  });
});

it('a picture that is rolled turns counterclockwise: up of the body leans to the left of the screen', () => {
  const upright = [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const { right, up } = heldView(upright, 0, 0.2);
  expect(right[1]).toBeCloseTo(-Math.sin(0.2), 12);
  expect(up[1]).toBeCloseTo(Math.cos(0.2), 12);
});
