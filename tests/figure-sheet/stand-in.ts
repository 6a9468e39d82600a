/** Stand-in for the human body until the generated one can be used: 16 segments, hinges in the planned order. */
import type { Body, Hinge, Segment, Vec3 } from '../../sim/body/body.ts';

const names = [
  ['neckFlexion', 'neckSideBend', 'neckTurn'],
  ['thoracicFlexion', 'thoracicSideBend', 'thoracicTurn'],
  ['lumbarFlexion', 'lumbarSideBend', 'lumbarTurn'],
].flat();
const limb = (s: string): string[] =>
  [
    'shoulderPlane',
    'shoulderElevation',
    'shoulderTurn',
    'elbowFlexion',
    'forearmPronation',
    'wristFlexion',
    'hipFlexion',
    'hipAbduction',
    'hipTurn',
    'kneeFlexion',
    'anklePlantarFlexion',
  ].map((n) => n + s);
export const angleNames = [...names, ...limb('L'), ...limb('R')];
const angle = (name: string): number => angleNames.indexOf(name);
const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];
const neg = (v: Vec3): Vec3 => [-v[0], -v[1], -v[2]];
const hinge = (name: string, axis: Vec3): Hinge => ({ name, axis, terms: [{ angle: angle(name), coef: 1 }] });

function spine(name: string, parent: number, p: Vec3, joint: string): Segment {
  return seg(name, parent, p, [hinge(`${joint}Flexion`, neg(Z)), hinge(`${joint}SideBend`, X), hinge(`${joint}Turn`, Y)]);
}
function seg(name: string, parent: number, p: Vec3, hinges: readonly Hinge[]): Segment {
  const side = name.endsWith('L') ? 'left' : name.endsWith('R') ? 'right' : 'centre';
  return {
    name,
    parent,
    p_PoBo_P: p,
    hinges,
    mass: 3,
    p_BoBcm_B: [0, name.match(/Trunk|head|pelvis/) ? 0.08 : -0.15, 0],
    I_BBcm_B: [0.02, 0.02, 0.02, 0, 0, 0],
    group: 'whole',
    side,
    shapes: [],
  };
}

function arm(s: 'L' | 'R', first: number): Segment[] {
  const r = s === 'R';
  const m = (v: Vec3): Vec3 => (r ? v : neg(v));
  const spin: Hinge = {
    name: `shoulderSpin${s}`,
    axis: m(Y),
    terms: [
      { angle: angle(`shoulderTurn${s}`), coef: 1 },
      { angle: angle(`shoulderPlane${s}`), coef: -1 },
    ],
  };
  return [
    seg(`upperArm${s}`, 2, [0, 0.15, r ? 0.165 : -0.165], [
      hinge(`shoulderPlane${s}`, m(Y)),
      hinge(`shoulderElevation${s}`, m(neg(X))),
      spin,
    ]),
    seg(`forearm${s}`, first, [0, -0.265, 0], [hinge(`elbowFlexion${s}`, Z), hinge(`forearmPronation${s}`, m(Y))]),
    seg(`hand${s}`, first + 1, [0, -0.24, 0], [hinge(`wristFlexion${s}`, Z)]),
  ];
}
function leg(s: 'L' | 'R', first: number): Segment[] {
  const r = s === 'R';
  const m = (v: Vec3): Vec3 => (r ? v : neg(v));
  return [
    seg(`thigh${s}`, 0, [0, 0, r ? 0.082 : -0.082], [
      hinge(`hipFlexion${s}`, Z),
      hinge(`hipAbduction${s}`, m(neg(X))),
      hinge(`hipTurn${s}`, m(Y)),
    ]),
    seg(`shank${s}`, first, [0, -0.37, 0], [hinge(`kneeFlexion${s}`, neg(Z))]),
    seg(`foot${s}`, first + 1, [0, -0.39, 0], [hinge(`anklePlantarFlexion${s}`, neg(Z))]),
  ];
}

export const standIn: Body = {
  name: 'stand-in',
  mass: 48,
  stature: 1.62,
  segments: [
    seg('pelvis', -1, [0, 0, 0], []),
    spine('middleTrunk', 0, [0, 0.15, 0], 'lumbar'),
    spine('upperTrunk', 1, [0, 0.17, 0], 'thoracic'),
    spine('head', 2, [0, 0.225, 0], 'neck'),
    ...arm('L', 4),
    ...arm('R', 7),
    ...leg('L', 10),
    ...leg('R', 13),
  ],
  angles: angleNames.map((name, i) => ({
    name,
    mirror: i,
    mirrorSign: 1 as const,
    range: [-Math.PI, Math.PI] as const,
    speedLimit: 30,
    torqueLimit: [100, 100] as const,
    limitSource: 'none',
  })),
  contacts: [],
  shoulders: [],
  neutralHuman: true,
  standingRootHeight: 0.828,
};
