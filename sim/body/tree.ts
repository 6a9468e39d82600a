/**
 * Any tree of rigid segments as a Body: one segment included, names and groups its own. Frames as in body.ts. A segment
 * may be a rod or a point; a body that is singular as a whole is the flight's error, since it depends on the pose.
 */
import { calcEigen3 } from '../math/eigen3.ts';
import { FieldError, unknownName } from '../math/field-error.ts';
import type {
  Body,
  ContactPoint,
  DrawShape,
  FramePoints,
  GroupName,
  Hinge,
  NamedAngle,
  Segment,
  Sym3,
  Vec3,
} from './body.ts';

interface TreeHingeSpec {
  readonly name: string;
  readonly axis: Vec3;
  readonly range?: readonly [number, number]; // rad
  /** hinge of the other side */
  readonly mirror?: string;
  readonly mirrorSign?: 1 | -1;
}

export interface TreeSegmentSpec {
  readonly name: string;
  readonly parent?: string;
  readonly joint: Vec3;
  readonly hinges: readonly TreeHingeSpec[];
  readonly mass: number;
  readonly centre: Vec3;
  readonly inertia: Sym3;
  readonly group?: GroupName;
  readonly side?: 'left' | 'right' | 'centre';
  readonly contacts: readonly {
    readonly name: string;
    readonly part: string;
    readonly point: Vec3;
    readonly radius: number;
  }[];
  readonly shapes: readonly DrawShape[];
}

export interface TreeSpec {
  readonly name: string;
  /** the root first, every parent before its children */
  readonly segments: readonly TreeSegmentSpec[];
  readonly framePoints?: Readonly<Record<keyof FramePoints, { readonly segment: string; readonly point: Vec3 }>>;
}

/** What a file can key at most: a hinge without a stated range never warns. */
const NO_RANGE: readonly [number, number] = [-4 * Math.PI, 4 * Math.PI];
/** How far a typed axis may be from unit length before it is taken for a mistake; it is made unit then. */
const UNIT = 1e-3;
/** Rounding allowed in typed moments, share of the largest. */
const INERTIA_TOLERANCE = 1e-9;
/** Names that an MJCF file needs for itself: the root's free joint and what it floats in. */
const TAKEN = 'root';
const TAKEN_SEGMENT = 'world';

export function makeTree(spec: TreeSpec): Body {
  if (spec.segments.length === 0) throw new FieldError('athlete.segments', [], 'at least one segment');
  const names = spec.segments.map((s) => s.name);
  checkUnique(names, (i) => `athlete.segments[${i}].name`, 'segment');
  if (names.includes(TAKEN_SEGMENT))
    throw new FieldError(
      `athlete.segments[${names.indexOf(TAKEN_SEGMENT)}].name`,
      TAKEN_SEGMENT,
      `any name but "${TAKEN_SEGMENT}", which is the space that the body moves in`,
    );
  const hinges = spec.segments.flatMap((s, i) =>
    s.hinges.map((h, j) => ({ ...h, field: `athlete.segments[${i}].hinges[${j}]` })),
  );
  checkUnique(
    hinges.map((h) => h.name),
    (i) => `${hinges[i].field}.name`,
    'hinge',
  );
  const contacts = spec.segments.flatMap((s, segment) =>
    s.contacts.map((c, j): ContactPoint => {
      const field = `athlete.segments[${segment}].contacts[${j}]`;
      checkVec(c.point, `${field}.pointM`);
      if (!(c.radius >= 0 && Number.isFinite(c.radius)))
        throw new FieldError(`${field}.radiusM`, c.radius, 'a number of 0 or more');
      return { name: c.name, part: c.part, segment, p_BoC_B: c.point, radius: c.radius };
    }),
  );
  checkUnique(
    contacts.map((c) => c.name),
    () => 'athlete.segments contacts',
    'contact point',
  );
  const angles = makeAngles(hinges);
  const segments = spec.segments.map((s, i) => makeSegment(s, i, names, angles));
  const framePoints = spec.framePoints ? makeFramePoints(spec.framePoints, names, segments) : undefined;
  return {
    name: spec.name,
    mass: segments.reduce((sum, s) => sum + s.mass, 0),
    segments,
    angles,
    contacts,
    ...(framePoints ? { framePoints } : {}),
    shoulders: [],
    neutralHuman: false,
  };
}

function makeSegment(s: TreeSegmentSpec, i: number, names: readonly string[], angles: readonly NamedAngle[]): Segment {
  const field = `athlete.segments[${i}]`;
  const earlier = names.slice(0, i);
  if (i === 0 && s.parent !== undefined)
    throw new FieldError(`${field}.parent`, s.parent, 'no parent: the first segment is the root');
  if (i === 0 && s.hinges.length > 0)
    throw new FieldError(`${field}.hinges`, s.hinges, 'no hinges: the root moves freely');
  if (i > 0 && s.parent === undefined)
    throw new FieldError(`${field}.parent`, s.parent, `the name of an earlier segment: ${earlier.join(', ')}`);
  if (s.parent !== undefined && !earlier.includes(s.parent))
    throw unknownName(`${field}.parent`, s.parent, earlier, 'the name of an earlier segment');
  checkVec(s.joint, `${field}.jointM`);
  checkVec(s.centre, `${field}.centreM`);
  if (!(s.mass > 0 && Number.isFinite(s.mass))) throw new FieldError(`${field}.massKg`, s.mass, 'a number above 0');
  checkInertia(s.inertia, `${field}.inertiaKgM2`);
  return {
    name: s.name,
    parent: s.parent === undefined ? -1 : names.indexOf(s.parent),
    p_PoBo_P: i === 0 ? [0, 0, 0] : s.joint,
    hinges: s.hinges.map(
      (h, j): Hinge => ({
        name: h.name,
        axis: unitAxis(h.axis, `${field}.hinges[${j}].axis`),
        terms: [{ angle: angles.findIndex((a) => a.name === h.name), coef: 1 }],
      }),
    ),
    mass: s.mass,
    p_BoBcm_B: s.centre,
    I_BBcm_B: s.inertia,
    group: s.group ?? 'whole',
    side: s.side ?? 'centre',
    shapes: s.shapes,
  };
}

/** One named angle for each hinge. */
function makeAngles(hinges: readonly (TreeHingeSpec & { readonly field: string })[]): readonly NamedAngle[] {
  const names = hinges.map((h) => h.name);
  return hinges.map((h, i) => {
    if (h.name === TAKEN)
      throw new FieldError(`${h.field}.name`, h.name, `any name but "${TAKEN}", which is the root's free joint`);
    const back = hinges.findIndex((other) => other.mirror === h.name);
    const mirror = h.mirror === undefined ? (back >= 0 ? back : i) : names.indexOf(h.mirror);
    if (mirror < 0) throw unknownName(`${h.field}.mirror`, h.mirror ?? '', names, 'a hinge of this tree');
    const answer = hinges[mirror].mirror;
    if (answer !== undefined && answer !== h.name)
      throw new FieldError(
        `${h.field}.mirror`,
        h.mirror ?? h.name,
        `a pair: ${names[mirror]} names ${answer} as its mirror`,
      );
    const [low, high] = h.range ?? NO_RANGE;
    if (!(low <= high)) throw new FieldError(`${h.field}.rangeDeg`, [low, high], 'a lower and a higher value');
    return {
      name: h.name,
      mirror,
      mirrorSign: h.mirrorSign ?? hinges[mirror].mirrorSign ?? 1,
      range: [low, high],
      limitSource: h.range ? 'the athlete file' : 'none',
    };
  });
}

function makeFramePoints(
  points: NonNullable<TreeSpec['framePoints']>,
  names: readonly string[],
  segments: readonly Segment[],
): FramePoints {
  const has = (group: GroupName, side?: Segment['side']): boolean =>
    segments.some((s) => s.group === group && (!side || s.side === side));
  if (!has('upper') || !has('legs', 'left') || !has('legs', 'right'))
    throw new FieldError(
      'athlete.framePoints',
      points,
      'only with segments of group "upper" and of group "legs" on the left and on the right',
    );
  const read = (key: keyof FramePoints): readonly [number, Vec3] => {
    const { segment, point } = points[key];
    const k = names.indexOf(segment);
    if (k < 0) throw unknownName(`athlete.framePoints.${key}.segment`, segment, names, 'a segment of this tree');
    checkVec(point, `athlete.framePoints.${key}.pointM`);
    return [k, point];
  };
  const [hipL, hipR, shoulderL, shoulderR] = [read('hipL'), read('hipR'), read('shoulderL'), read('shoulderR')];
  const same = (a: readonly [number, Vec3], b: readonly [number, Vec3]): boolean =>
    a[0] === b[0] && a[1].every((x, i) => x === b[1][i]);
  if (same(hipL, hipR)) throw new FieldError('athlete.framePoints.hipR', points.hipR, 'a point apart from hipL');
  if (same(shoulderL, shoulderR))
    throw new FieldError('athlete.framePoints.shoulderR', points.shoulderR, 'a point apart from shoulderL');
  return { hipL, hipR, shoulderL, shoulderR };
}

/** A real segment: no negative principal moment, none above the sum of the other two. */
function checkInertia(I: Sym3, field: string): void {
  if (I.length !== 6 || !I.every(Number.isFinite))
    throw new FieldError(field, I, 'six finite numbers: xx, yy, zz, xy, xz, yz');
  const [a, b, c] = [...calcEigen3(I).values].sort((x, y) => x - y);
  const room = INERTIA_TOLERANCE * Math.max(Math.abs(a), Math.abs(c));
  const said = `principal moments ${[a, b, c].map((x) => Number(x.toPrecision(6))).join(', ')}`;
  if (a < -room) throw new FieldError(field, I, `a tensor without negative principal moments (${said})`);
  if (c > a + b + room)
    throw new FieldError(
      field,
      I,
      `a tensor whose largest principal moment is at most the sum of the other two (${said})`,
    );
}

function unitAxis(axis: Vec3, field: string): Vec3 {
  checkVec(axis, field);
  const n = Math.hypot(...axis);
  if (Math.abs(n - 1) > UNIT)
    throw new FieldError(field, axis, `a vector of length 1 (it has ${Number(n.toPrecision(6))})`);
  return n === 1 ? axis : [axis[0] / n, axis[1] / n, axis[2] / n];
}

function checkVec(v: Vec3, field: string): void {
  if (v.length !== 3 || !v.every(Number.isFinite)) throw new FieldError(field, v, 'three finite numbers');
}

function checkUnique(names: readonly string[], field: (i: number) => string, what: string): void {
  names.forEach((name, i) => {
    if (name === '') throw new FieldError(field(i), name, `a name for the ${what}`);
    if (names.indexOf(name) !== i) throw new FieldError(field(i), name, `a name that no other ${what} has`);
  });
}
