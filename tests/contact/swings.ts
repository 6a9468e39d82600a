/** Swings that several tests run. */

import { makeHuman } from '../../sim/body/human.ts';
import { getRail } from '../../sim/contact/rail.ts';
import type { SwingKey, SwingMoves } from '../../sim/contact/swing-keys.ts';
import type { SwingSpec } from '../../sim/contact/swing-spec.ts';

export const DEG = Math.PI / 180;
export const G = 9.81;

export const gymnast = makeHuman({ name: 'Tomas Lindqvist', sex: 'male', mass: 60, stature: 1.66 });
export const held = gymnast.angles.map((a) => (a.name.startsWith('anklePlantar') ? 60 * DEG : 0));

const keys = (scale: number, list: readonly (readonly [number, number])[]): SwingKey[] =>
  list.map(([at, deg]) => ({ at: at * scale, value: deg * DEG, kind: 'stop' }));

/** Shoulder and hip keyed over time: a kick through the bottom of one giant. */
export const TIMED: SwingMoves = {
  over: 'time',
  keys: {
    shoulder: keys(1, [[1.0, 180], [1.35, 186], [1.75, 160], [2.2, 180]]),
    hip: keys(1, [[0.6, 0], [1.2, -18], [1.6, 30], [2.2, 0]]),
    knee: keys(1, [[1.0, 0], [1.3, 12], [1.7, 0]]),
    ankle: keys(1, [[0, 60]]),
  },
}; // biome-ignore format: a table of keys

/** The same idea keyed over swing angle, gentle enough for the strength of most. */
export const ANGLED: SwingMoves = {
  over: 'angle',
  keys: {
    shoulder: keys(DEG, [[-180, 180], [-60, 180], [30, 165], [110, 178], [180, 180]]),
    hip: keys(DEG, [[-180, 0], [-60, 0], [-15, -15], [45, 25], [100, 0], [180, 0]]),
    ankle: keys(DEG, [[-180, 60]]),
  },
}; // biome-ignore format: a table of keys

export const STILL: SwingMoves = {
  over: 'time',
  keys: { shoulder: keys(1, [[0, 180]]), ankle: keys(1, [[0, 60]]) },
};

export const timedGiant: SwingSpec = {
  body: gymnast,
  gravity: G,
  rail: getRail('highBar'),
  sense: 'backward',
  start: { kind: 'handstand', nudge: 0.5 },
  moves: TIMED,
  duration: 2.6,
  held,
  strength: Number.POSITIVE_INFINITY,
};

export const twoGiants: SwingSpec = {
  ...timedGiant,
  start: { kind: 'handstand', nudge: 0.3 },
  moves: { ...ANGLED, rounds: 2 },
  duration: 6,
  release: { at: 'angle', angle: 435 * DEG },
};
