/** A small body for schedule tests: a trunk with two arms, each a shoulder and an elbow. Angles have the human's signs. */
import type { Body, Hinge, NamedAngle, Segment, Vec3 } from '../../sim/body/body.ts';

export const DEG = Math.PI / 180;

const ANGLES = ['shoulderPlane', 'shoulderElevation', 'shoulderTurn', 'elbowFlexion'];
/** index of a named angle, e.g. angleOf('shoulderPlaneR') */
export function angleOf(name: string): number {
  const i = NAMES.indexOf(name);
  if (i < 0) throw new Error(`no angle ${name}`);
  return i;
}
const NAMES = [...ANGLES.map((n) => `${n}L`), ...ANGLES.map((n) => `${n}R`)];

const named = (name: string, mirror: number): NamedAngle => ({
  name,
  mirror,
  mirrorSign: 1,
  range: [-4, 4],
  limitSource: 'test',
});

function hinge(name: string, axis: Vec3, ...terms: [number, number][]): Hinge {
  return { name, axis, terms: terms.map(([angle, coef]) => ({ angle, coef })) };
}

function segment(name: string, parent: number, side: Segment['side'], hinges: Hinge[]): Segment {
  return {
    name,
    parent,
    p_PoBo_P: [0, 0, 0],
    hinges,
    mass: 1,
    p_BoBcm_B: [0, 0, 0],
    I_BBcm_B: [1, 1, 1, 0, 0, 0],
    group: 'arms',
    side,
    shapes: [],
  };
}

function arm(side: 'left' | 'right', first: number): Segment[] {
  const x = side === 'left' ? 'L' : 'R';
  const k = side === 'left' ? -1 : 1;
  return [
    segment(`upperArm${x}`, 0, side, [
      hinge(`shoulderPlane${x}`, [0, k, 0], [first, 1]),
      hinge(`shoulderElevation${x}`, [-k, 0, 0], [first + 1, 1]),
      hinge(`shoulderSpin${x}`, [0, k, 0], [first + 2, 1], [first, -1]),
    ]),
    segment(`forearm${x}`, side === 'left' ? 1 : 3, side, [hinge(`elbowFlexion${x}`, [0, 0, 1], [first + 3, 1])]),
  ];
}

export const shoulderBody: Body = {
  name: 'two arms',
  mass: 5,
  segments: [segment('trunk', -1, 'centre', []), ...arm('left', 0), ...arm('right', 4)],
  angles: NAMES.map((n, i) => named(n, (i + 4) % 8)),
  contacts: [],
  shoulders: [
    { plane: 0, elevation: 1, turn: 2 },
    { plane: 4, elevation: 5, turn: 6 },
  ],
  neutralHuman: false,
};

/** Pose with both arms alike, degrees. */
export function armsPose(plane: number, elevation: number, turn = 0, elbow = 0): number[] {
  const one = [plane * DEG, elevation * DEG, turn * DEG, elbow * DEG];
  return [...one, ...one];
}

/** Hinge indices of an arm: plane, elevation, spin, elbow. */
export const HINGES_L = [0, 1, 2, 3] as const;
export const HINGES_R = [4, 5, 6, 7] as const;
