/**
 * A table of joint angles with the attitude and the place of one part of the body, as motion of it. The attitude may be that of the pelvis, of
 * the upper trunk, or of the body frame F; the place that of mid-hip or of the mass centre.
 */

import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import { own } from '../math/own.ts';
import { applyInto, matOfAttitude, matOfQuatInto, mulBtInto, mulInto, mulTInto, quatOfMatInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import { anglesOfJointInto, makeJoints } from './joint-angles.ts';
import { keepRowSign } from './pose-rows.ts';
import type { PosedMotion } from './posed.ts';
import type { RecordedPoint, Recording } from './recording.ts';
import type { ColumnMeaning, MappedColumn, RecordingMap, RootFrame } from './recording-map.ts';
import { turnOf } from './turned-axes.ts';

/** Names of points that are the whole body's mass centre, and mid-hip. */
const MASS_CENTRE = /^(com|cm|cog|bcm|(body|whole.?body)?[ _]?(mass[ _]?cent(re|er)|cent(re|er)[ _]?of[ _]?mass))$/i;
const MID_HIP = /^(p|root|pelvis(\.o)?|hips|mid[ _]?hips?)$/i;
export const isPlace = (name: string): boolean => MASS_CENTRE.test(name) || MID_HIP.test(name);
/** Rows between two turns of a long reading. */
const ROWS = 200;

type Means<K extends ColumnMeaning['kind']> = Extract<ColumnMeaning, { kind: K }>;

interface Read<K extends ColumnMeaning['kind']> {
  readonly means: Means<K>;
  readonly values: Float64Array;
}

/** `points`: of the table, in its axes, m. Yields the share done. */
export function* poseTable(
  body: Body,
  recording: Recording,
  points: readonly RecordedPoint[],
  map: RecordingMap,
): Generator<number, PosedMotion> {
  const { frames: n, times: t, rateHz } = recording;
  const of = <K extends ColumnMeaning['kind']>(kind: K): Read<K>[] => columnsOf(recording, map.columns, kind);
  const na = body.angles.length;
  const angles = new Float64Array(n * na);
  const isSeen = body.angles.map(() => false);
  for (const { means, values } of of('angle')) {
    const a = body.angles.findIndex(({ name }) => name === means.angle);
    if (a < 0) throw new FieldError('map', means.angle, 'the name of an angle of the body');
    isSeen[a] = true;
    const k = means.inRadians ? 1 : Math.PI / 180;
    for (let i = 0; i < n; i++) angles[na * i + a] = k * values[i];
  }
  const attitude = readAttitude(body, of('quaternion'), of('matrix'), of('attitude'));
  const centre = points.find(({ name }) => MASS_CENTRE.test(name));
  const place = points.find(({ name }) => MID_HIP.test(name)) ?? centre;
  if (!place)
    throw new FieldError(
      'columns',
      'no place',
      'columns x, y, z of mid-hip (as "pelvis x") or of the mass centre (as "com x"): without them no flight is found',
    );
  const limbs = readLimbs(body, of('quaternion'), of('matrix'));
  for (const { angles: own } of limbs) for (const a of own) isSeen[a] = true;
  const turn = turnOf(map.up);
  const p_WBo_W = new Float64Array(3 * n);
  const quat_WB = new Float64Array(4 * n);
  const sm = makeShapeMotion(getModel(body));
  const upper = body.segments.findIndex(({ name }) => name === 'upperTrunk');
  const R_part = new Float64Array(9);
  const R_WP = new Float64Array(9);
  const R_WB = new Float64Array(9);
  const d: Triple = [0, 0, 0];
  let phi: Triple | undefined;
  for (let i = 0; i < n; i++) {
    if (i % ROWS === 0) yield i / n;
    for (const limb of limbs) limb.read(i, angles, i > 0);
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    calcShapeMotion(sm);
    attitude.into(i, R_part);
    mulInto(turn, 0, R_part, 0, R_WP, 0);
    if (attitude.of === 'pelvis') R_WB.set(R_WP);
    else if (attitude.of === 'trunk') mulBtInto(R_WP, 0, sm.R_BS.subarray(9 * upper, 9 * upper + 9), 0, R_WB, 0);
    else {
      const frame = calcBodyFrame(sm, phi);
      if (Number.isFinite(frame.phi[0])) phi = [...frame.phi];
      mulBtInto(R_WP, 0, frame.R_BF, 0, R_WB, 0);
    }
    quatOfMatInto(R_WB, 0, quat_WB, 4 * i);
    keepRowSign(quat_WB, i);
    applyInto(turn, 0, [place.p[3 * i], place.p[3 * i + 1], place.p[3 * i + 2]], 0, p_WBo_W, 3 * i);
    if (place !== centre) continue;
    applyInto(R_WB, 0, sm.p_BoScm_B, 0, d, 0);
    for (let k = 0; k < 3; k++) p_WBo_W[3 * i + k] -= d[k];
  }
  return { body, n, t, rateHz, p_WBo_W, quat_WB, angles, isSeen };
}

interface LimbReader {
  readonly angles: readonly number[];
  read(i: number, angles: Float64Array, isLater: boolean): void;
}

/** Joints between two segments whose attitudes the table has. */
function readLimbs(
  body: Body,
  quaternions: readonly Read<'quaternion'>[],
  matrices: readonly Read<'matrix'>[],
): LimbReader[] {
  const joints = makeJoints(body);
  if (!joints) return [];
  const na = body.angles.length;
  const all = body.segments.map(({ name }) => partReader(own(SEGMENT_NAMES, name) ?? [name], quaternions, matrices));
  const A = new Float64Array(9);
  const B = new Float64Array(9);
  const C = new Float64Array(9);
  return body.segments.flatMap(({ parent }, s): LimbReader[] => {
    const own = all[s];
    const upper = parent < 0 ? undefined : all[parent];
    if (!own || !upper) return [];
    return [
      {
        angles: joints[s].angles,
        read: (i, angles, isLater) => {
          upper(i, A);
          own(i, B);
          mulTInto(A, 0, B, 0, C, 0);
          const before = isLater ? { angles, at: na * (i - 1) } : undefined;
          anglesOfJointInto(joints[s], C, 0, angles, na * i, before);
        },
      },
    ];
  });
}

/** What a table may call a segment whose attitude also is one of the body's. */
const SEGMENT_NAMES: Readonly<Record<string, readonly string[]>> = {
  pelvis: ['pelvis'],
  upperTrunk: ['upperTrunk', 'trunk'],
};

type PartReader = (i: number, R: Float64Array) => void;

/** Quaternion or matrix of a part, whole, under the first of its names. */
function partReader(
  names: readonly string[],
  quaternions: readonly Read<'quaternion'>[],
  matrices: readonly Read<'matrix'>[],
): PartReader | undefined {
  for (const name of names) {
    const q = [0, 1, 2, 3].map((part) => quaternions.find(({ means }) => means.of === name && means.part === part));
    if (q.every((c) => c !== undefined))
      return (i, R) => matOfQuatInto(unit(q.map((c) => c?.values[i] ?? Number.NaN)), 0, R, 0);
    const m = Array.from({ length: 9 }, (_, part) =>
      matrices.find(({ means }) => means.of === name && means.part === part),
    );
    if (m.every((c) => c !== undefined)) return (i, R) => R.set(m.map((c) => c?.values[i] ?? Number.NaN));
  }
  return undefined;
}

function columnsOf<K extends ColumnMeaning['kind']>(
  { columns }: Recording,
  mapped: readonly MappedColumn[],
  kind: K,
): Read<K>[] {
  return mapped.flatMap(({ from, means }) => {
    const column = columns.find(({ name }) => name === from);
    return column && means.kind === kind ? [{ means: means as Means<K>, values: column.values }] : [];
  });
}

interface Attitude {
  readonly of: RootFrame;
  into(i: number, R: Float64Array): void;
}

/** The first of quaternion, matrix, angles that is there whole. */
function readAttitude(
  body: Body,
  quaternions: readonly Read<'quaternion'>[],
  matrices: readonly Read<'matrix'>[],
  attitudes: readonly Read<'attitude'>[],
): Attitude {
  for (const frame of ['F', 'pelvis', 'trunk'] as const) {
    const into = partReader([frame], quaternions, matrices);
    if (into) return { of: frame, into };
    const a = (['somersault', 'tilt', 'twist'] as const).map((part) =>
      attitudes.find(({ means }) => means.of === frame && means.part === part),
    );
    if (a.every((c) => c !== undefined))
      return {
        of: frame,
        into: (i, R) => {
          const [s, k, w] = a.map((c) => (c ? c.values[i] * (c.means.inRadians ? 1 : Math.PI / 180) : Number.NaN));
          R.set(matOfAttitude(s, k, w));
        },
      };
  }
  throw new FieldError(
    'columns',
    'no attitude',
    `the attitude of the pelvis, the upper trunk or the body frame of ${body.name}: a quaternion, a matrix, or somersault, tilt and twist`,
  );
}

function unit(q: readonly number[]): number[] {
  const size = Math.hypot(...q);
  return q.map((v) => v / size);
}
