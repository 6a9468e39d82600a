/**
 * What poses and motions must look like, worked out by hand from docs/conventions.md and not from a run: X is the way the
 * athlete faces, Y up, Z to the athlete's right; Rz(+) takes Y to -X (the head goes back), Rx(+) takes Y to Z (the head
 * goes right), Ry(+) takes X to -Z (the nose goes left). hand-table.test.ts poses and flies every row.
 */
import type { Vec3 } from '../../sim/index.ts';

export type Way = 'forward' | 'back' | 'up' | 'down' | 'left' | 'right';

/** A vector of a posed body, seen from the segment `from`: between two joints, or a fixed axis of a segment. */
export type Probe =
  | { readonly from: string; readonly joints: readonly [string, string]; readonly goes: Way }
  | { readonly from: string; readonly axis: Vec3; readonly of: string; readonly goes: Way };

export interface PoseRow {
  readonly say: string;
  readonly why: string;
  readonly deg: Readonly<Record<string, number>>;
  readonly probes: readonly Probe[];
}

const arm = (side: 'L' | 'R', goes: Way): Probe => ({
  from: 'upperTrunk',
  joints: [`upperArm${side}`, `hand${side}`],
  goes,
});
const forearm = (side: 'L' | 'R', goes: Way): Probe => ({
  from: 'upperTrunk',
  joints: [`forearm${side}`, `hand${side}`],
  goes,
});
const thigh = (side: 'L' | 'R', goes: Way): Probe => ({
  from: 'pelvis',
  joints: [`thigh${side}`, `shank${side}`],
  goes,
});
const shank = (side: 'L' | 'R', goes: Way): Probe => ({
  from: 'pelvis',
  joints: [`shank${side}`, `foot${side}`],
  goes,
});
const axis = (from: string, of: string, which: Vec3, goes: Way): Probe => ({ from, of, axis: which, goes });
const FRONT: Vec3 = [1, 0, 0];
const TOP: Vec3 = [0, 1, 0];

export const POSES: readonly PoseRow[] = [
  {
    say: 'neutral: arms hang, palms and toes forward',
    why: 'zero is standing, arms hanging, palms forward, feet flat; all frames parallel',
    deg: {},
    probes: [arm('R', 'down'), arm('L', 'down'), axis('upperTrunk', 'handR', FRONT, 'forward'), thigh('L', 'down')],
  },
  {
    say: 'arms raised by the side to the horizontal',
    why: 'plane 0 is at the side; right Rx(-90): -Y to +Z; left mirrored to -Z',
    deg: { shoulderElevation: 90 },
    probes: [arm('R', 'right'), arm('L', 'left')],
  },
  {
    say: 'arms raised by the front to the horizontal',
    why: 'plane 90 is in front; right Ry(90) takes the raised arm from +Z to +X, left from -Z to +X',
    deg: { shoulderElevation: 90, shoulderPlane: 90 },
    probes: [arm('R', 'forward'), arm('L', 'forward')],
  },
  {
    say: 'arms overhead by the side',
    why: 'elevation 180 is overhead; swung, not spun: Rx(-180) keeps X, the palms stay in front',
    deg: { shoulderElevation: 180 },
    probes: [arm('R', 'up'), arm('L', 'up'), axis('upperTrunk', 'handR', FRONT, 'forward')],
  },
  {
    say: 'arms overhead by the front: the palms end the other way',
    why: 'Ry(90) Rx(-180) Ry(-90): X to +Z (spin), to -Z (elevation), to -X (plane): the palm faces back',
    deg: { shoulderElevation: 180, shoulderPlane: 90 },
    probes: [arm('R', 'up'), arm('L', 'up'), axis('upperTrunk', 'handR', FRONT, 'back')],
  },
  {
    say: 'one arm only: the left by the side',
    why: 'left and right are independent',
    deg: { shoulderElevationL: 90 },
    probes: [arm('L', 'left'), arm('R', 'down')],
  },
  {
    say: 'elbows bent: the forearms point forward',
    why: 'Rz(90): -Y to +X',
    deg: { elbowFlexion: 90 },
    probes: [forearm('R', 'forward'), forearm('L', 'forward')],
  },
  {
    say: 'elbows bent and arms turned in: the forearms cross the belly',
    why: 'at elevation 0 only turn counts; right Ry(90): X to -Z (inward), left to +Z (inward)',
    deg: { elbowFlexion: 90, shoulderTurn: 90 },
    probes: [forearm('R', 'left'), forearm('L', 'right')],
  },
  {
    say: 'forearms pronated 90: the palms face the thighs',
    why: 'pronation 0 is palm forward; right Ry(90): X to -Z, left to +Z: both inward',
    deg: { forearmPronation: 90 },
    probes: [axis('upperTrunk', 'handR', FRONT, 'left'), axis('upperTrunk', 'handL', FRONT, 'right')],
  },
  {
    say: 'wrists bent: the fingers point forward',
    why: 'Rz(90): the hand along -Y goes to +X',
    deg: { wristFlexion: 90 },
    probes: [axis('upperTrunk', 'handR', [0, -1, 0], 'forward'), axis('upperTrunk', 'handL', [0, -1, 0], 'forward')],
  },
  {
    say: 'hips flexed: the thighs point forward',
    why: 'Rz(90): -Y to +X',
    deg: { hipFlexion: 90 },
    probes: [thigh('R', 'forward'), thigh('L', 'forward')],
  },
  {
    say: 'hips abducted: a side split',
    why: 'right Rx(-90): -Y to +Z; left mirrored',
    deg: { hipAbduction: 90 },
    probes: [thigh('R', 'right'), thigh('L', 'left')],
  },
  {
    say: 'hips turned in: the toes point at each other',
    why: 'right Ry(90): X to -Z, left to +Z',
    deg: { hipTurn: 90 },
    probes: [axis('pelvis', 'footR', FRONT, 'left'), axis('pelvis', 'footL', FRONT, 'right')],
  },
  {
    say: 'knees flexed: the shanks point back',
    why: 'Rz(-90): -Y to -X',
    deg: { kneeFlexion: 90 },
    probes: [shank('R', 'back'), shank('L', 'back')],
  },
  {
    say: 'hips and knees flexed, a tuck: thighs forward, shanks down again',
    why: 'Rz(90) then Rz(-90) is nothing',
    deg: { hipFlexion: 90, kneeFlexion: 90 },
    probes: [thigh('R', 'forward'), shank('R', 'down'), shank('L', 'down')],
  },
  {
    say: 'ankles pointed: the toes go down',
    why: 'Rz(-90): X to -Y',
    deg: { anklePlantarFlexion: 90 },
    probes: [axis('pelvis', 'footR', FRONT, 'down'), axis('pelvis', 'footL', FRONT, 'down')],
  },
  {
    say: 'neck flexed: the crown goes forward, the nose down',
    why: 'Rz(-90): Y to +X, X to -Y',
    deg: { neckFlexion: 90 },
    probes: [axis('upperTrunk', 'head', TOP, 'forward'), axis('upperTrunk', 'head', FRONT, 'down')],
  },
  {
    say: 'neck bent to the right',
    why: 'Rx(90): Y to +Z',
    deg: { neckSideBend: 90 },
    probes: [axis('upperTrunk', 'head', TOP, 'right')],
  },
  {
    say: 'neck turned to the left',
    why: 'Ry(90): X to -Z',
    deg: { neckTurn: 90 },
    probes: [axis('upperTrunk', 'head', FRONT, 'left')],
  },
  {
    say: 'thoracic and lumbar share a bend forward, to the right, a turn to the left',
    why: 'both joints have the neck signs; 45 and 45 about one axis make 90',
    deg: { thoracicFlexion: 45, lumbarFlexion: 45 },
    probes: [axis('pelvis', 'upperTrunk', TOP, 'forward'), axis('pelvis', 'upperTrunk', FRONT, 'down')],
  },
  {
    say: 'the same to the right',
    why: 'Rx(45) twice: Y to +Z',
    deg: { thoracicSideBend: 45, lumbarSideBend: 45 },
    probes: [axis('pelvis', 'upperTrunk', TOP, 'right')],
  },
  {
    say: 'the same turned to the left',
    why: 'Ry(45) twice: X to -Z',
    deg: { thoracicTurn: 45, lumbarTurn: 45 },
    probes: [axis('pelvis', 'upperTrunk', FRONT, 'left')],
  },
];

/** What can be claimed of a flight; angles in deg, rates in rev/s, counts in revolutions, momentum in kg m2/s. */
export type Quantity =
  | 'somersaults' // unsigned
  | 'twists' // unsigned
  | 'somersaultDeg' // signed change
  | 'twistDeg' // signed change
  | 'tiltDeg'
  | 'tiltFromHDeg'
  | 'headUp' // Y_F . Y_W at the end
  | 'headAlong' // Y_F . X_W at the end
  | 'noseAlong' // X_F . X_W at the end
  | 'noseUp' // X_F . Y_W at the end
  | 'lateralRate' // about the athlete's own right-pointing axis, + backward for the athlete, at the end
  | 'pelvisPitchDeg' // change of the pelvis about Z_W, + backward
  | 'largestTurnDeg' // of F, any axis, over the flight
  | 'pelvisTurnDeg'
  | 'shoulderTurnDeg'
  | 'hz' // summed from the segments at t = 0
  | 'armsHz' // share of the arms at t = 0
  | 'startRate' // somersault rate of F at t = 0
  | 'wholeRate' // rate of the body taken as a whole at t = 0
  | 'shortDeg';
export type Word = 'somersaultWord' | 'twistWord' | 'tiltWord' | 'landingWord';

export type Claim =
  | { readonly of: Word; readonly is: string }
  | { readonly of: Quantity; readonly between: readonly [number, number] }
  | { readonly of: Quantity; readonly below: Quantity }
  | { readonly of: 'defined'; readonly is: boolean };

export interface FlightRow {
  readonly say: string;
  readonly why: string;
  readonly attitudeDeg?: { readonly somersault?: number; readonly tilt?: number; readonly twist?: number };
  readonly momentum:
    | { readonly straight: number }
    | { readonly h: Vec3 }
    | { readonly rates: { readonly somersault: number } };
  /** pose held all the time, deg */
  readonly pose?: Readonly<Record<string, number>>;
  /** stop keys, [s, deg] */
  readonly keys?: Readonly<Record<string, readonly (readonly [number, number])[]>>;
  readonly seconds: number;
  /** end where the twist first reaches this many revolutions */
  readonly untilTwists?: number;
  readonly target?: {
    readonly somersaults: number;
    readonly word: 'backward' | 'forward';
    readonly landingDeg: number;
  };
  readonly claims: readonly Claim[];
}

const is = (of: Word, word: string): Claim => ({ of, is: word });
const about = (of: Quantity, value: number, by: number): Claim => ({ of, between: [value - by, value + by] });
const between = (of: Quantity, low: number, high: number): Claim => ({ of, between: [low, high] });
const EXACT = 1e-6;
const ABDUCT_RIGHT_UP = {
  shoulderElevationR: [
    [0, 0],
    [0.3, 180],
  ],
  shoulderElevationL: [
    [0, 180],
    [0.3, 0],
  ],
} as const;
const ABDUCT_LEFT_UP = {
  shoulderElevationR: [
    [0, 180],
    [0.3, 0],
  ],
  shoulderElevationL: [
    [0, 0],
    [0.3, 180],
  ],
} as const;

export const FLIGHTS: readonly FlightRow[] = [
  {
    say: 'back somersault, straight',
    why: 'h along +Z turns the head to the back; h = 2 pi N A / T in the neutral pose makes N whole turns',
    momentum: { straight: 1 },
    seconds: 0.9,
    claims: [
      is('somersaultWord', 'backward'),
      is('twistWord', ''),
      is('tiltWord', ''),
      about('somersaults', 1, EXACT),
      about('somersaultDeg', 360, 1e-4),
      about('headUp', 1, EXACT),
    ],
  },
  {
    say: 'a quarter of a back somersault: lying on the back, looking up, head away from where he faced',
    why: 'Rz(90): Y to -X, X to +Y',
    momentum: { straight: 0.25 },
    seconds: 0.5,
    claims: [is('somersaultWord', 'backward'), about('headAlong', -1, EXACT), about('noseUp', 1, EXACT)],
  },
  {
    say: 'a quarter of a front somersault: face down, head the way he faced',
    why: 'Rz(-90): Y to +X, X to -Y',
    momentum: { straight: -0.25 },
    seconds: 0.5,
    claims: [is('somersaultWord', 'forward'), about('headAlong', 1, EXACT), about('noseUp', -1, EXACT)],
  },
  {
    say: 'too little to have a word',
    why: 'under 0.05 somersault there is no word',
    momentum: { straight: 0.04 },
    seconds: 0.5,
    claims: [is('somersaultWord', ''), about('somersaults', 0.04, EXACT)],
  },
  {
    say: 'back somersault with the head leaning right: twist to the left',
    why: 'with backward rotation positive tilt makes twist to the left; after one whole somersault the tilt is still to the right',
    attitudeDeg: { tilt: 8 },
    momentum: { straight: 1 },
    seconds: 0.9,
    claims: [
      is('somersaultWord', 'backward'),
      is('twistWord', 'left'),
      is('tiltWord', 'right'),
      between('twistDeg', 300, 900),
    ],
  },
  {
    say: 'back somersault with the head leaning left: twist to the right',
    why: 'the mirror of the row above',
    attitudeDeg: { tilt: -8 },
    momentum: { straight: 1 },
    seconds: 0.9,
    claims: [
      is('somersaultWord', 'backward'),
      is('twistWord', 'right'),
      is('tiltWord', 'left'),
      between('twistDeg', -900, -300),
    ],
  },
  {
    say: 'front somersault with the head leaning right: twist to the right',
    why: 'twist rate goes as h sin(tilt), and h is negative',
    attitudeDeg: { tilt: 8 },
    momentum: { straight: -1 },
    seconds: 0.9,
    claims: [is('somersaultWord', 'forward'), is('twistWord', 'right'), between('twistDeg', -900, -300)],
  },
  {
    say: 'barani: front with a half twist to the left; the word stays forward though the body now turns backward',
    why: 'the word is of h and the take-off; after a half twist the athlete looks back and rotates about his own axis the other way',
    attitudeDeg: { tilt: -8 },
    momentum: { straight: -1 },
    seconds: 0.9,
    untilTwists: 0.5,
    claims: [
      is('somersaultWord', 'forward'),
      is('twistWord', 'left'),
      about('twistDeg', 180, 0.01),
      // front: -; after the half twist the same turn is backward for the athlete: +
      between('lateralRate', 0.5, 2),
      between('somersaults', 0.2, 0.9),
    ],
  },
  {
    say: 'arabian: back take-off, half twist, then forward rotation; the word stays backward',
    why: 'the mirror of the barani: after the half twist the body turns forward about its own axis',
    attitudeDeg: { tilt: 8 },
    momentum: { straight: 1.25 },
    seconds: 0.9,
    untilTwists: 0.5,
    claims: [
      is('somersaultWord', 'backward'),
      is('twistWord', 'left'),
      about('twistDeg', 180, 0.01),
      between('lateralRate', -2.5, -0.5),
    ],
  },
  {
    say: 'take-off turned half round (he faces -X): h along +Z is a front somersault',
    why: 'the word is reversed when cos(twist at take-off) < 0; the head goes to -X, the way he now faces',
    attitudeDeg: { twist: 180 },
    momentum: { straight: 0.25 },
    seconds: 0.5,
    claims: [
      is('somersaultWord', 'forward'),
      about('headAlong', -1, EXACT),
      about('noseUp', -1, EXACT),
      about('somersaultDeg', 90, 1e-4),
    ],
  },
  {
    say: 'take-off turned half round, h along -Z: a back somersault',
    why: 'as above, reversed',
    attitudeDeg: { twist: 180 },
    momentum: { straight: -1 },
    seconds: 0.9,
    claims: [is('somersaultWord', 'backward'), about('somersaults', 1, EXACT), about('somersaultDeg', -360, 1e-4)],
  },
  {
    say: 'pike at zero angular momentum: legs come forward, trunk comes forward to meet them, F stays',
    why: 'two hinged bodies: hips flex by +Z on the legs, so the trunk turns by -Z (forward) by its share; F is built to stand still, at most about 8 deg',
    momentum: { h: [0, 0, 0] },
    keys: {
      hipFlexion: [
        [0, 0],
        [0.4, 120],
      ],
    },
    seconds: 0.4,
    claims: [
      between('pelvisPitchDeg', -85, -30),
      between('largestTurnDeg', 0, 8),
      is('somersaultWord', ''),
      about('tiltDeg', 0, 1e-6),
      about('twistDeg', 0, 1e-6),
    ],
  },
  {
    say: 'deep pike to 170 at zero angular momentum: F still within 8 deg',
    why: 'the bound of the conventions',
    momentum: { h: [0, 0, 0] },
    keys: {
      hipFlexion: [
        [0, 0],
        [0.5, 170],
      ],
    },
    seconds: 0.5,
    claims: [between('pelvisPitchDeg', -120, -50), between('largestTurnDeg', 0, 8.5), is('somersaultWord', '')],
  },
  {
    say: 'tuck at zero angular momentum: the trunk turns forward, F stays',
    why: 'as the pike; bent legs are lighter to turn, so the trunk turns less',
    momentum: { h: [0, 0, 0] },
    keys: {
      hipFlexion: [
        [0, 0],
        [0.4, 120],
      ],
      kneeFlexion: [
        [0, 0],
        [0.4, 130],
      ],
    },
    seconds: 0.4,
    claims: [between('pelvisPitchDeg', -70, -10), between('largestTurnDeg', 0, 8), is('somersaultWord', '')],
  },
  {
    say: 'arms swung up by the front at zero angular momentum: the body turns forward',
    why: 'the arms turn by +Z (down, forward, up), so the rest turns by -Z: forward; symmetric, so neither tilt nor twist',
    momentum: { h: [0, 0, 0] },
    pose: { shoulderPlane: 90 },
    keys: {
      shoulderElevation: [
        [0, 0],
        [0.3, 180],
      ],
    },
    seconds: 0.3,
    claims: [between('somersaultDeg', -30, -2), about('tiltDeg', 0, 1e-6), about('twistDeg', 0, 1e-6)],
  },
  {
    say: 'both arms raised by the side at zero angular momentum: nothing turns but by the feet being in front',
    why: 'the two arms turn against each other about X; what is left is that the mass centre lies a little in front of the shoulders',
    momentum: { h: [0, 0, 0] },
    keys: {
      shoulderElevation: [
        [0, 0],
        [0.3, 180],
      ],
    },
    seconds: 0.3,
    claims: [between('somersaultDeg', -2, 2), about('tiltDeg', 0, 1e-6), about('twistDeg', 0, 1e-6)],
  },
  {
    say: 'right arm up and left arm down at zero angular momentum: the head leans to the right',
    why: 'both arms turn by -X (right: -Y to +Z to +Y), so the trunk turns by +X: Y towards +Z',
    momentum: { h: [0, 0, 0] },
    keys: ABDUCT_RIGHT_UP,
    seconds: 0.3,
    claims: [is('tiltWord', 'right'), between('tiltDeg', 4, 20), is('twistWord', '')],
  },
  {
    say: 'the same throw in a back somersault: twist to the left',
    why: 'positive tilt, h along +Z',
    momentum: { straight: 1 },
    keys: ABDUCT_RIGHT_UP,
    seconds: 1,
    claims: [is('somersaultWord', 'backward'), is('twistWord', 'left')],
  },
  {
    say: 'left arm up and right arm down in a back somersault: twist to the right',
    why: 'the mirror',
    momentum: { straight: 1 },
    keys: ABDUCT_LEFT_UP,
    seconds: 1,
    claims: [is('somersaultWord', 'backward'), is('twistWord', 'right')],
  },
  {
    say: 'trunk turned to the left at zero angular momentum: shoulders go left, pelvis right',
    why: 'the spine turns the chest by +Y against the pelvis; both give way in proportion; with the hips the lighter part turns more',
    momentum: { h: [0, 0, 0] },
    keys: {
      thoracicTurn: [
        [0, 0],
        [0.3, 30],
      ],
      lumbarTurn: [
        [0, 0],
        [0.3, 10],
      ],
    },
    seconds: 0.3,
    claims: [between('shoulderTurnDeg', 1, 39), between('pelvisTurnDeg', -39, -1)],
  },
  {
    say: 'arms already moving at take-off: h is the total, so the body turns slower than the whole',
    why: 'arms swinging up by the front carry + momentum of their own; the body has what is left of the stated 40',
    momentum: { h: [0, 0, 40] },
    pose: { shoulderPlane: 90 },
    keys: {
      shoulderElevation: [
        [-0.15, 0],
        [0.15, 180],
      ],
    },
    seconds: 0.5,
    claims: [
      about('hz', 40, 1e-9),
      between('armsHz', 2, 39),
      { of: 'startRate', below: 'wholeRate' },
      is('somersaultWord', 'backward'),
    ],
  },
  {
    say: 'take-off by rates with the arms moving: F has the stated rate, and h follows from the full state',
    why: '1.2 rev/s of F at t = 0',
    momentum: { rates: { somersault: 1.2 } },
    pose: { shoulderPlane: 90 },
    keys: {
      shoulderElevation: [
        [-0.15, 0],
        [0.15, 180],
      ],
    },
    seconds: 0.5,
    claims: [about('startRate', 1.2, 1e-9), { of: 'startRate', below: 'wholeRate' }, between('hz', 60, 250)],
  },
  {
    say: 'front 1.5 head first: inverted as wanted',
    why: 'a wanted landing angle of F of 180 deg: head down; nothing short or over',
    momentum: { straight: -1.5 },
    seconds: 1.2,
    target: { somersaults: 1.5, word: 'forward', landingDeg: 180 },
    claims: [
      is('landingWord', ''),
      about('headUp', -1, EXACT),
      about('shortDeg', 0, 1e-3),
      about('somersaults', 1.5, EXACT),
    ],
  },
  {
    say: 'front 1.45 of a wanted 1.5: 18 deg short, whatever the sign of the rotation',
    why: 'short = wanted minus reached in the direction of rotation',
    momentum: { straight: -1.45 },
    seconds: 1.2,
    target: { somersaults: 1.5, word: 'forward', landingDeg: 180 },
    claims: [is('landingWord', 'short'), about('shortDeg', 18, 1e-3)],
  },
  {
    say: 'back 1.05 of a wanted 1: 18 deg past',
    why: 'over is negative',
    momentum: { straight: 1.05 },
    seconds: 1,
    target: { somersaults: 1, word: 'backward', landingDeg: 0 },
    claims: [is('landingWord', 'past'), about('shortDeg', -18, 1e-3)],
  },
  {
    say: 'a seat drop: a tenth of a back turn wanted, lands as wanted',
    why: 'started 36 deg before upright in a backward turn, ends upright',
    attitudeDeg: { somersault: -36 },
    momentum: { straight: 0.1 },
    seconds: 0.6,
    claims: [is('somersaultWord', 'backward'), is('landingWord', ''), about('headUp', 1, EXACT)],
  },
  {
    say: 'tilt against h: with h along -Z the tilt from h has the other sign',
    why: 'tiltFromH = asin(Y_F . h/|h|); tilt = asin(Y_F . Z)',
    attitudeDeg: { tilt: 5 },
    momentum: { h: [0, 0, -1e-3] },
    seconds: 0.1,
    claims: [about('tiltDeg', 5, 1e-3), about('tiltFromHDeg', -5, 1e-3)],
  },
  {
    say: 'a cartwheel in the air: the body lies along the somersault axis, so counts and words are blank',
    why: 'h along +X turns Y towards +Z: tilt passes 80 deg',
    momentum: { h: [12, 0, 0] },
    seconds: 2.5,
    claims: [{ of: 'defined', is: false }, is('somersaultWord', ''), is('twistWord', ''), is('tiltWord', '')],
  },
];
