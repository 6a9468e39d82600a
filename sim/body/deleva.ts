/**
 * Segment parameters of de Leva P (1996), Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, J Biomech
 * 29(9):1223-1230, Table 4. Only the rows that build the skeleton. Mass is that of one limb, as a share of the body;
 * the mass centre is measured from the row's first end point; radii of gyration are shares of the row's length, about
 * the sagittal (front-back), transverse (lateral) and longitudinal axis through the mass centre.
 *
 * Two traps. The foot's longitudinal axis runs from heel to toe, so for a flat foot "longitudinal" is front-back and
 * "sagittal" is vertical. The head includes the neck.
 */
export type Sex = 'female' | 'male';

export type SegmentKind =
  | 'head'
  | 'upperTrunk'
  | 'middleTrunk'
  | 'lowerTrunk'
  | 'upperArm'
  | 'forearm'
  | 'hand'
  | 'thigh'
  | 'shank'
  | 'foot';

interface DelevaRow {
  /** share of the body's mass */
  readonly mass: number;
  /** m, in the reference subject */
  readonly length: number;
  /** mass centre from the first end point, share of the length */
  readonly centre: number;
  /** radii of gyration, shares of the length: sagittal, transverse, longitudinal */
  readonly radii: readonly [number, number, number];
}

interface DelevaTable {
  /** m; mean of the sample (15 women, 100 men) */
  readonly stature: number;
  /** m; mid-shoulder joint centres to mid-hip joint centres */
  readonly shoulderHeight: number;
  readonly rows: Readonly<Record<SegmentKind, DelevaRow>>;
}

type Printed = readonly [
  mass: number,
  length: number,
  centre: number,
  sagittal: number,
  transverse: number,
  longitudinal: number,
];

/** As printed: per cent of body mass, mm, per cent of length. */
const PRINTED: Readonly<Record<Sex, Readonly<Record<SegmentKind, Printed>>>> = {
  female: {
    head: [6.68, 243.7, 48.41, 27.1, 29.5, 26.1], // vertex to cervicale
    upperTrunk: [15.45, 228.0, 50.5, 46.6, 31.4, 44.9], // cervicale to xiphion
    middleTrunk: [14.65, 205.3, 45.12, 43.3, 35.4, 41.5], // xiphion to omphalion
    lowerTrunk: [12.47, 181.5, 49.2, 43.3, 40.2, 44.4], // omphalion to mid-hip
    upperArm: [2.55, 275.1, 57.54, 27.8, 26.0, 14.8], // shoulder to elbow joint centre
    forearm: [1.38, 264.3, 45.59, 26.1, 25.7, 9.4], // elbow to wrist joint centre
    hand: [0.56, 170.1, 34.27, 24.4, 20.8, 15.4], // wrist joint centre to tip of the third finger
    thigh: [14.78, 368.5, 36.12, 36.9, 36.4, 16.2], // hip to knee joint centre
    shank: [4.81, 438.6, 43.52, 26.7, 26.3, 9.2], // knee to ankle joint centre
    foot: [1.29, 228.3, 40.14, 29.9, 27.9, 13.9], // heel to tip of the toes
  },
  male: {
    head: [6.94, 242.9, 50.02, 30.3, 31.5, 26.1],
    upperTrunk: [15.96, 242.1, 50.66, 50.5, 32.0, 46.5],
    middleTrunk: [16.33, 215.5, 45.02, 48.2, 38.3, 46.8],
    lowerTrunk: [11.17, 145.7, 61.15, 61.5, 55.1, 58.7],
    upperArm: [2.71, 281.7, 57.72, 28.5, 26.9, 15.8],
    forearm: [1.62, 268.9, 45.74, 27.6, 26.5, 12.1],
    hand: [0.61, 187.9, 36.24, 28.8, 23.5, 18.4],
    thigh: [14.16, 422.2, 40.95, 32.9, 32.9, 14.9],
    shank: [4.33, 440.3, 43.95, 25.1, 24.6, 10.2],
    foot: [1.37, 258.1, 44.15, 25.7, 24.5, 12.4],
  },
};

function rowsOf(sex: Sex): Readonly<Record<SegmentKind, DelevaRow>> {
  const read = ([mass, length, centre, s, t, l]: Printed): DelevaRow => ({
    mass: mass / 100,
    length: length / 1000,
    centre: centre / 100,
    radii: [s / 100, t / 100, l / 100],
  });
  return Object.fromEntries(Object.entries(PRINTED[sex]).map(([kind, row]) => [kind, read(row)])) as Record<
    SegmentKind,
    DelevaRow
  >;
}

export const DELEVA: Readonly<Record<Sex, DelevaTable>> = {
  female: { stature: 1.735, shoulderHeight: 0.4979, rows: rowsOf('female') },
  male: { stature: 1.741, shoulderHeight: 0.5155, rows: rowsOf('male') },
};

/** Limbs occur twice. */
export const PAIRED: readonly SegmentKind[] = ['upperArm', 'forearm', 'hand', 'thigh', 'shank', 'foot'];
export const SEGMENT_KINDS = Object.keys(PRINTED.male) as readonly SegmentKind[];
