/** Masses, mass centres and radii of a human's segments: the table's, or measured ones, checked. */
import { FieldError, unknownName } from '../math/field-error.ts';
import { PAIRED, SEGMENT_KINDS, type SegmentKind } from './deleva.ts';

/** Measured values of one segment that replace the table's. */
export interface SegmentValues {
  readonly mass?: number; // kg
  readonly length?: number; // m
  /** mass centre from the end nearer to the vertex (a hanging limb: proximal; the foot: heel), share of the length */
  readonly centreShare?: number;
  /** radii of gyration about the front-back, lateral and long axis, shares of the length; the foot: vertical, lateral, heel-toe */
  readonly radiiShare?: readonly [number, number, number];
}

export type Side = 'L' | 'R' | '';

/** Measured values of a segment, one side before both sides; undefined where nothing was measured. */
interface Measured {
  readonly get: <F extends keyof SegmentValues>(kind: SegmentKind, side: Side, field: F) => SegmentValues[F];
}

const sidesOf = (kind: SegmentKind): readonly Side[] => (PAIRED.includes(kind) ? ['L', 'R'] : ['']);
const NAMES: readonly string[] = SEGMENT_KINDS.flatMap((kind) =>
  PAIRED.includes(kind) ? [kind, `${kind}L`, `${kind}R`] : [kind],
);
/** name of the field in the athlete file; the unit is the same */
const FILE_FIELD: Readonly<Record<keyof SegmentValues, string>> = {
  mass: 'massKg',
  length: 'lengthM',
  centreShare: 'centreShare',
  radiiShare: 'radiiShare',
};

export function readMeasured(
  overrides: Readonly<Record<string, SegmentValues>>,
  mass: number,
  stature: number,
): Measured {
  const known = new Map<string, SegmentValues>();
  for (const [typed, values] of Object.entries(overrides)) {
    const name = typed === 'pelvis' ? 'lowerTrunk' : typed;
    if (!NAMES.includes(name)) throw unknownName(`athlete.segments.${typed}`, typed, NAMES, 'a segment of the human');
    const at = (field: keyof SegmentValues): string => `athlete.segments.${typed}.${FILE_FIELD[field]}`;
    if (values.mass !== undefined && !(values.mass > 0 && values.mass < mass))
      throw new FieldError(at('mass'), values.mass, `above 0 and below the body's mass, ${mass} kg`);
    if (values.length !== undefined && !(values.length > 0.01 * stature && values.length < 0.6 * stature))
      throw new FieldError(
        at('length'),
        values.length,
        `${(0.01 * stature).toFixed(3)} to ${(0.6 * stature).toFixed(3)} m (0.01 to 0.6 of the stature)`,
      );
    if (values.centreShare !== undefined && !(values.centreShare > 0 && values.centreShare < 1))
      throw new FieldError(at('centreShare'), values.centreShare, 'above 0 and below 1');
    if (values.radiiShare !== undefined) checkRadii(values.radiiShare, at('radiiShare'));
    known.set(name, values);
  }
  return { get: (kind, side, field) => known.get(`${kind}${side}`)?.[field] ?? known.get(kind)?.[field] };
}

/** A real body's moment about one axis is at most the sum of the other two. */
function checkRadii(radii: readonly [number, number, number], field: string): void {
  for (const [i, axis] of ['front-back', 'lateral', 'long'].entries()) {
    const r = radii[i];
    if (!(r > 0 && r < 1.5))
      throw new FieldError(`${field}[${i}]`, r, `above 0 and below 1.5 (share of the length, ${axis} axis)`);
    const most = Math.hypot(radii[(i + 1) % 3], radii[(i + 2) % 3]);
    if (r > most)
      throw new FieldError(
        `${field}[${i}]`,
        r,
        `at most ${most.toFixed(4)}: the moment about the ${axis} axis cannot exceed the sum of the other two`,
      );
  }
}

/** Masses in kg, by kind and side: measured ones as they are; the others share what is left in their usual proportions. */
export function shareMasses(
  shares: Readonly<Record<SegmentKind, number>>,
  mass: number,
  measured: Measured,
): {
  readonly of: (kind: SegmentKind, side: Side) => number;
  /** every segment's mass was measured: the shares decide nothing */
  readonly isMeasured: boolean;
  readonly notes: readonly string[];
} {
  const free: string[] = [];
  let taken = 0;
  let freeShare = 0;
  for (const kind of SEGMENT_KINDS)
    for (const side of sidesOf(kind)) {
      const own = measured.get(kind, side, 'mass');
      if (own === undefined) {
        freeShare += shares[kind];
        free.push(`${kind}${side}`);
      } else taken += own;
    }
  const left = mass - taken;
  if (free.length === 0) {
    if (Math.abs(left) > MASS_TOLERANCE * mass) throw sumFault(taken, wordSumOff(mass, taken));
    return { of: (kind, side) => measured.get(kind, side, 'mass') ?? shares[kind] * mass, isMeasured: true, notes: [] };
  }
  const stretch = left / (freeShare * mass);
  if (!(stretch >= POSSIBLE_STRETCH[0] && stretch <= POSSIBLE_STRETCH[1]))
    throw sumFault(taken, wordRest(mass, taken, stretch, free));
  // nothing measured: the table's values to the last bit
  const perShare = taken === 0 ? mass : left / freeShare;
  return {
    of: (kind, side) => measured.get(kind, side, 'mass') ?? shares[kind] * perShare,
    isMeasured: false,
    notes:
      stretch < USUAL_STRETCH[0] || stretch > USUAL_STRETCH[1]
        ? [`Measured masses leave the other segments ${stretch.toFixed(2)} times their usual share of the mass.`]
        : [],
  };
}

const MASS_TOLERANCE = 1e-3;
/** What measured masses may leave the others, times their usual share, before it is refused, and before it is said (our judgement). */
const POSSIBLE_STRETCH: readonly [number, number] = [0.5, 2];
const USUAL_STRETCH: readonly [number, number] = [0.8, 1.25];

const sumFault = (sum: number, allowed: string): FieldError =>
  new FieldError('athlete.segments', Number(sum.toFixed(4)), allowed);

function wordSumOff(mass: number, sum: number): string {
  const off = Math.abs(sum - mass);
  const way = sum > mass ? 'above' : 'below';
  return (
    `segment masses that add up to massKg = ${mass} kg within 0.1 %; they are ${off.toFixed(3)} kg (${((100 * off) / mass).toFixed(2)} %) ${way} it: ` +
    'leave one segment out, and it takes what is left of the mass'
  );
}

function wordRest(mass: number, taken: number, stretch: number, free: readonly string[]): string {
  const left = mass - taken;
  const rest = free.length > 4 ? `the ${free.length} segments not measured` : free.join(', ');
  if (left <= 0)
    return `measured masses below massKg = ${mass} kg; they add up to ${taken.toFixed(3)} kg, which leaves nothing for ${rest}`;
  return (
    `measured masses that leave the others ${POSSIBLE_STRETCH[0]} to ${POSSIBLE_STRETCH[1]} times their usual share; of massKg = ${mass} kg ` +
    `they leave ${left.toFixed(3)} kg for ${rest}, ${stretch.toFixed(2)} times it`
  );
}
