/**
 * A human of 16 segments from mass, stature, sex and age: de Leva 1996 (J Biomech 29:1223), a child's masses after Jensen,
 * lengths closed to the stature, single values replaced by measured ones. All joints lie in one frontal plane; the root is the pelvis (lower trunk),
 * its origin mid-hip. Frames as in body.ts. Every choice is argued in docs/body.md.
 */
import { FieldError } from '../math/field-error.ts';
import type { Body, GroupName, Segment, Sym3, Vec3 } from './body.ts';
import { checkBuild, listBuildNotes, wordOutside, wordSeam } from './body-build.ts';
import { DELEVA, type SegmentKind, type Sex } from './deleva.ts';
import { HUMAN_SHOULDERS, humanHinges, makeHumanAngles } from './human-joints.ts';
import { closeLengths } from './human-lengths.ts';
import { ANKLE_ALONG_FOOT, type HumanSize, humanContacts, humanShapes } from './human-surface.ts';
import { readMeasured, type SegmentValues, type Side, shareMasses } from './human-values.ts';
import { massShares } from './mass-shares.ts';

export interface HumanSpec {
  readonly name: string;
  readonly sex: Sex;
  readonly mass: number; // kg
  readonly stature: number; // m
  /** years; left out: an adult. It decides the shares of the segments in the mass (mass-shares.ts), and nothing else */
  readonly age?: number;
  /** distance of each joint centre from the midline, m; left out: a ratio times stature */
  readonly shoulderHalfWidth?: number;
  readonly hipHalfWidth?: number;
  /** measured values by segment: head, upperTrunk, middleTrunk, lowerTrunk, upperArm (both), upperArmL (one) and so on */
  readonly overrides?: Readonly<Record<string, SegmentValues>>;
}

/** Half distance of the shoulder centres / stature: a few per cent inside half the biacromial breadth (.118, .112; 2012 US Army survey). */
const SHOULDER_HALF_WIDTH: Readonly<Record<Sex, number>> = { male: 0.113, female: 0.107 };
/** Half distance of the hip centres / stature: 0.36 of the inter-spinal breadth, Bell et al. 1989 (Hum Mov Sci 8:3). */
const HIP_HALF_WIDTH = 0.05;

/** name, kind, side, parent; in the order of Body.segments */
const TREE: readonly (readonly [string, SegmentKind, Side, string])[] = [
  ['pelvis', 'lowerTrunk', '', ''],
  ['middleTrunk', 'middleTrunk', '', 'pelvis'],
  ['upperTrunk', 'upperTrunk', '', 'middleTrunk'],
  ['head', 'head', '', 'upperTrunk'],
  ...(['L', 'R'] as const).flatMap((s) => [
    [`upperArm${s}`, 'upperArm', s, 'upperTrunk'] as const,
    [`forearm${s}`, 'forearm', s, `upperArm${s}`] as const,
    [`hand${s}`, 'hand', s, `forearm${s}`] as const,
  ]),
  ...(['L', 'R'] as const).flatMap((s) => [
    [`thigh${s}`, 'thigh', s, 'pelvis'] as const,
    [`shank${s}`, 'shank', s, `thigh${s}`] as const,
    [`foot${s}`, 'foot', s, `shank${s}`] as const,
  ]),
];

const UPWARD: readonly SegmentKind[] = ['lowerTrunk', 'middleTrunk', 'upperTrunk', 'head'];
const LEGS: readonly SegmentKind[] = ['thigh', 'shank', 'foot'];

/** A human of 16 segments from sex, mass (kg), stature (m) and what was measured. Throws a FieldError that names what is outside its range. */
export function makeHuman(spec: HumanSpec): Body {
  checkWhole(spec);
  const { sex, mass, stature } = spec;
  const measured = readMeasured(spec.overrides ?? {}, mass, stature);
  const { of: massOf, isMeasured, notes } = shareMasses(massShares(sex, spec.age), mass, measured);
  const lengths = closeLengths(sex, stature, (kind, side) => measured.get(kind, side, 'length'));
  const size: HumanSize = {
    stature,
    ankleHeight: lengths.ankleHeight,
    shoulderHalfWidth: spec.shoulderHalfWidth ?? SHOULDER_HALF_WIDTH[sex] * stature,
    hipHalfWidth: spec.hipHalfWidth ?? HIP_HALF_WIDTH * stature,
    length: lengths.of,
  };
  const shoulderInChest = lengths.shoulderHeight - lengths.of('lowerTrunk', '') - lengths.of('middleTrunk', '');
  const indexOf = (name: string): number => TREE.findIndex(([n]) => n === name);

  const segments = TREE.map(([name, kind, side, parent]): Segment => {
    const row = DELEVA[sex].rows[kind];
    const L = lengths.of(kind, side);
    const m = massOf(kind, side);
    const centre = measured.get(kind, side, 'centreShare') ?? row.centre;
    const radii = measured.get(kind, side, 'radiiShare') ?? row.radii;
    const [sagittal, transverse, longitudinal] = radii.map((r) => m * (r * L) ** 2);
    // the foot's longitudinal axis is its heel-toe line, X of its frame; everywhere else it is Y
    const I_BBcm_B: Sym3 =
      kind === 'foot' ? [longitudinal, sagittal, transverse, 0, 0, 0] : [sagittal, longitudinal, transverse, 0, 0, 0];
    return {
      name,
      parent: indexOf(parent),
      p_PoBo_P: jointOf(kind, side, size, shoulderInChest),
      hinges: humanHinges(name),
      mass: m,
      p_BoBcm_B: centreOf(kind, centre, L, lengths.ankleHeight),
      I_BBcm_B,
      values: { length: L, centreShare: centre, radiiShare: radii },
      group: groupOf(kind),
      side: side === 'L' ? 'left' : side === 'R' ? 'right' : 'centre',
      shapes: humanShapes(kind, side, size),
    };
  });

  const outside = wordOutside(spec);
  const seam = isMeasured ? undefined : wordSeam(spec);
  const total = segments.reduce((sum, s) => sum + s.mass, 0);
  const legs = (['L', 'R'] as const).map((s) => lengths.of('thigh', s) + lengths.of('shank', s));
  const point = (segment: string, p: Vec3): readonly [number, Vec3] => [indexOf(segment), p];
  return {
    name: spec.name,
    mass: total,
    stature,
    ...(spec.age === undefined ? {} : { age: spec.age }),
    notes: [...listBuildNotes(spec, isMeasured), ...notes],
    ...(outside ? { outside } : {}),
    ...(seam ? { seam } : {}),
    sex,
    segments,
    angles: makeHumanAngles({ sex, mass, stature }),
    contacts: humanContacts(size, indexOf),
    framePoints: {
      hipL: point('pelvis', jointOf('thigh', 'L', size, 0)),
      hipR: point('pelvis', jointOf('thigh', 'R', size, 0)),
      shoulderL: point('upperTrunk', jointOf('upperArm', 'L', size, shoulderInChest)),
      shoulderR: point('upperTrunk', jointOf('upperArm', 'R', size, shoulderInChest)),
    },
    shoulders: HUMAN_SHOULDERS,
    neutralHuman: true,
    standingRootHeight: Math.max(...legs) + lengths.ankleHeight,
  };
}

/** Joint to the parent, in the parent's frame. */
function jointOf(kind: SegmentKind, side: Side, size: HumanSize, shoulderInChest: number): Vec3 {
  const outward = side === 'L' ? -1 : 1;
  switch (kind) {
    case 'lowerTrunk':
      return [0, 0, 0];
    case 'middleTrunk':
      return [0, size.length('lowerTrunk', ''), 0];
    case 'upperTrunk':
      return [0, size.length('middleTrunk', ''), 0];
    case 'head':
      return [0, size.length('upperTrunk', ''), 0];
    case 'upperArm':
      return [0, shoulderInChest, outward * size.shoulderHalfWidth];
    case 'thigh':
      return [0, 0, outward * size.hipHalfWidth];
    case 'forearm':
      return [0, -size.length('upperArm', side), 0];
    case 'hand':
      return [0, -size.length('forearm', side), 0];
    case 'shank':
      return [0, -size.length('thigh', side), 0];
    case 'foot':
      return [0, -size.length('shank', side), 0];
  }
}

/** Mass centre in the segment frame. The table counts from the upper end, the foot from the heel, half way up to the ankle. */
function centreOf(kind: SegmentKind, share: number, L: number, ankleHeight: number): Vec3 {
  if (kind === 'foot') return [(share - ANKLE_ALONG_FOOT) * L, -0.5 * ankleHeight, 0];
  return [0, UPWARD.includes(kind) ? (1 - share) * L : -share * L, 0];
}

function groupOf(kind: SegmentKind): GroupName {
  if (UPWARD.includes(kind)) return 'upper';
  return LEGS.includes(kind) ? 'legs' : 'arms';
}

function checkWhole(spec: HumanSpec): void {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`athlete.${field}`, value, `a number from ${low} to ${high} ${unit}`);
  };
  if (spec.sex !== 'female' && spec.sex !== 'male') throw new FieldError('athlete.sex', spec.sex, '"female" or "male"');
  within('massKg', spec.mass, 10, 250, 'kg');
  within('statureM', spec.stature, 0.8, 2.5, 'm');
  if (spec.age !== undefined) within('ageYears', spec.age, 3, 100, 'years');
  checkBuild(spec);
  const round = (x: number): number => Number((x * spec.stature).toFixed(3));
  if (spec.shoulderHalfWidth !== undefined)
    within('shoulderHalfWidthM', spec.shoulderHalfWidth, round(0.05), round(0.2), 'm (0.05 to 0.2 of the stature)');
  if (spec.hipHalfWidth !== undefined)
    within('hipHalfWidthM', spec.hipHalfWidth, round(0.02), round(0.1), 'm (0.02 to 0.1 of the stature)');
}
