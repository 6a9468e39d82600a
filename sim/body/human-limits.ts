/**
 * What a schedule of a human is warned by: range of motion, speed and torque of each angle, with where they come from.
 * A limit passed means "beyond the general population", never an error: gymnasts exceed many of them.
 */
export interface Limit {
  /** deg */
  readonly range: readonly [number, number];
  /** rad/s */
  readonly speed: number;
  /** N m per kg of body mass, towards + and - */
  readonly torque: readonly [number, number];
  readonly source: string;
}

const HIP =
  'speed and torque: judgement above Anderson 2007 (J Biomech 40:3105) and Jackson 2010 (PhD, Loughborough; one elite male gymnast)';
const SHOULDER = 'speed and torque: judgement above Jackson 2010 (PhD, Loughborough) and Kentel 2011 in it';
const ARM = 'speed and torque: Kentel 2011 in Jackson 2010 (PhD, Loughborough), scaled from one tennis player';
const TRUNK_TORQUE = 'torque: Stobbe 1982, men at 75 kg, from memory; speed: judgement';

export const SPINE_LIMITS: readonly (readonly [string, Limit])[] = [
  [
    'neckFlexion',
    {
      range: [-45, 45],
      speed: 10,
      torque: [0.6, 0.6],
      source: 'range: AAOS, from memory; speed and torque: judgement',
    },
  ],
  [
    'neckSideBend',
    {
      range: [-45, 45],
      speed: 10,
      torque: [0.6, 0.6],
      source: 'range: AAOS, from memory; speed and torque: judgement',
    },
  ],
  [
    'neckTurn',
    {
      range: [-60, 60],
      speed: 10,
      torque: [0.4, 0.4],
      source: 'range: AAOS, from memory; speed and torque: judgement',
    },
  ],
  // thoraco-lumbar flexion 80, extension 25, side bend 35, turn 45 in all; how they are shared is a judgement
  [
    'thoracicFlexion',
    {
      range: [-10, 30],
      speed: 10,
      torque: [1.9, 3.1],
      source: `range: share of AAOS thoraco-lumbar, from memory; ${TRUNK_TORQUE}`,
    },
  ],
  [
    'thoracicSideBend',
    {
      range: [-15, 15],
      speed: 10,
      torque: [1.9, 1.9],
      source: 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement',
    },
  ],
  [
    'thoracicTurn',
    {
      range: [-35, 35],
      speed: 10,
      torque: [1.2, 1.2],
      source: 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement',
    },
  ],
  [
    'lumbarFlexion',
    {
      range: [-15, 50],
      speed: 10,
      torque: [1.9, 3.1],
      source: `range: share of AAOS thoraco-lumbar, from memory; ${TRUNK_TORQUE}`,
    },
  ],
  [
    'lumbarSideBend',
    {
      range: [-20, 20],
      speed: 10,
      torque: [1.9, 1.9],
      source: 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement',
    },
  ],
  [
    'lumbarTurn',
    {
      range: [-10, 10],
      speed: 10,
      torque: [1.2, 1.2],
      source: 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement',
    },
  ],
];

export const LIMB_LIMITS: readonly (readonly [string, Limit])[] = [
  [
    'shoulderPlane',
    {
      range: [-90, 130],
      speed: 17,
      torque: [1.8, 1.8],
      source: `range: judgement (90 behind to 40 across the front); ${SHOULDER}`,
    },
  ],
  [
    'shoulderElevation',
    {
      range: [-60, 184],
      speed: 17,
      torque: [1.8, 1.8],
      source: `range: AAOS (extension 60), Boone & Azen 1979 (abduction 184); ${SHOULDER}`,
    },
  ],
  ['shoulderTurn', { range: [-90, 70], speed: 17, torque: [0.73, 0.63], source: `range: AAOS; ${ARM}` }],
  ['elbowFlexion', { range: [-5, 150], speed: 18, torque: [1.45, 1.0], source: `range: AAOS; ${ARM}` }],
  [
    'forearmPronation',
    {
      range: [-10, 170],
      speed: 18,
      torque: [0.2, 0.2],
      source: 'range: AAOS 80 each way about the thumb-up middle, neutral counted in; speed and torque: judgement',
    },
  ],
  [
    'wristFlexion',
    {
      range: [-70, 80],
      speed: 18,
      torque: [0.56, 0.23],
      source: 'range: AAOS; torque: Jackson 2010 (PhD, Loughborough); speed: judgement',
    },
  ],
  [
    'hipFlexion',
    {
      range: [-30, 135],
      speed: 10,
      torque: [3, 3],
      source: `range: AAOS and Soucie 2011 (9-19 y), from memory; ${HIP}`,
    },
  ],
  ['hipAbduction', { range: [-30, 45], speed: 10, torque: [3, 3], source: `range: AAOS, from memory; ${HIP}` }],
  [
    'hipTurn',
    { range: [-45, 45], speed: 10, torque: [1, 1], source: 'range: AAOS, from memory; speed and torque: judgement' },
  ],
  [
    'kneeFlexion',
    {
      range: [-10, 143],
      speed: 17,
      torque: [4, 4],
      source:
        'range: AAOS, Boone & Azen 1979, from memory; speed and torque: judgement above Jackson 2010 (PhD, Loughborough)',
    },
  ],
  [
    'anklePlantarFlexion',
    {
      range: [-20, 62],
      speed: 17,
      torque: [1.66, 0.57],
      source:
        'range: AAOS, Soucie 2011 (women 20-44 y), from memory; torque: Anderson 2007 (J Biomech 40:3105); speed: judgement',
    },
  ],
];
