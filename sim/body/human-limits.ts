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

const limit = (range: Limit['range'], speed: number, torque: Limit['torque'], source: string): Limit => ({
  range,
  speed,
  torque,
  source,
});

export const SPINE_LIMITS: readonly (readonly [string, Limit])[] = [
  ['neckFlexion', limit([-45, 45], 10, [0.6, 0.6], 'range: AAOS, from memory; speed and torque: judgement')],
  ['neckSideBend', limit([-45, 45], 10, [0.6, 0.6], 'range: AAOS, from memory; speed and torque: judgement')],
  ['neckTurn', limit([-60, 60], 10, [0.4, 0.4], 'range: AAOS, from memory; speed and torque: judgement')],
  // thoraco-lumbar flexion 80, extension 25, side bend 35, turn 45 in all; how they are shared is a judgement
  [
    'thoracicFlexion',
    limit([-10, 30], 10, [1.9, 3.1], `range: share of AAOS thoraco-lumbar, from memory; ${TRUNK_TORQUE}`),
  ],
  [
    'thoracicSideBend',
    limit([-15, 15], 10, [1.9, 1.9], 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement'),
  ],
  [
    'thoracicTurn',
    limit([-35, 35], 10, [1.2, 1.2], 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement'),
  ],
  [
    'lumbarFlexion',
    limit([-15, 50], 10, [1.9, 3.1], `range: share of AAOS thoraco-lumbar, from memory; ${TRUNK_TORQUE}`),
  ],
  [
    'lumbarSideBend',
    limit([-20, 20], 10, [1.9, 1.9], 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement'),
  ],
  [
    'lumbarTurn',
    limit([-10, 10], 10, [1.2, 1.2], 'range: share of AAOS thoraco-lumbar, from memory; speed and torque: judgement'),
  ],
];

export const LIMB_LIMITS: readonly (readonly [string, Limit])[] = [
  [
    'shoulderPlane',
    limit([-90, 130], 17, [1.8, 1.8], `range: judgement (90 behind to 40 across the front); ${SHOULDER}`),
  ],
  [
    'shoulderElevation',
    limit([-60, 184], 17, [1.8, 1.8], `range: AAOS (extension 60), Boone & Azen 1979 (abduction 184); ${SHOULDER}`),
  ],
  ['shoulderTurn', limit([-90, 70], 17, [0.73, 0.63], `range: AAOS; ${ARM}`)],
  ['elbowFlexion', limit([-5, 150], 18, [1.45, 1.0], `range: AAOS; ${ARM}`)],
  [
    'forearmPronation',
    limit(
      [-10, 170],
      18,
      [0.2, 0.2],
      'range: AAOS 80 each way about the thumb-up middle, neutral counted in; speed and torque: judgement',
    ),
  ],
  [
    'wristFlexion',
    limit([-70, 80], 18, [0.56, 0.23], 'range: AAOS; torque: Jackson 2010 (PhD, Loughborough); speed: judgement'),
  ],
  ['hipFlexion', limit([-30, 135], 10, [3, 3], `range: AAOS and Soucie 2011 (9-19 y), from memory; ${HIP}`)],
  ['hipAbduction', limit([-30, 45], 10, [3, 3], `range: AAOS, from memory; ${HIP}`)],
  ['hipTurn', limit([-45, 45], 10, [1, 1], 'range: AAOS, from memory; speed and torque: judgement')],
  [
    'kneeFlexion',
    limit(
      [-10, 143],
      17,
      [4, 4],
      'range: AAOS, Boone & Azen 1979, from memory; speed and torque: judgement above Jackson 2010 (PhD, Loughborough)',
    ),
  ],
  [
    'anklePlantarFlexion',
    limit(
      [-20, 62],
      17,
      [1.66, 0.57],
      'range: AAOS, Soucie 2011 (women 20-44 y), from memory; torque: Anderson 2007 (J Biomech 40:3105); speed: judgement',
    ),
  ],
];
