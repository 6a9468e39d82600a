/**
 * Lengths of a human, closed to the stature: vertex, cervicale, mid-hip, knee, ankle and the height of the ankle sum up
 * to it. The printed male lengths alone are longer than the men were (de Leva 1996 measures along the segments), by 5 %
 * of their moments; the factor is found from the closure, not typed.
 */
import { FieldError } from '../math/field-error.ts';
import { DELEVA, type SegmentKind, type Sex } from './deleva.ts';

/** Height of the ankle joint above the sole / stature: lateral malleolus, 2012 US Army survey (public data). */
const ANKLE_HEIGHT: Readonly<Record<Sex, number>> = { female: 0.0385, male: 0.0415 };
/** Stretch of the printed chain that measured lengths may ask for. */
const STRETCH: readonly [number, number] = [0.7, 1.4];
const CHAIN: readonly SegmentKind[] = ['head', 'upperTrunk', 'middleTrunk', 'lowerTrunk', 'thigh', 'shank'];

interface HumanLengths {
  /** length of a segment, by its kind with its side ('thighL') or its kind alone */
  readonly of: (kind: SegmentKind, side: 'L' | 'R' | '') => number;
  readonly ankleHeight: number;
  /** shoulder joint centres above mid-hip, trunk upright */
  readonly shoulderHeight: number;
  /** factor on the printed lengths / (stature / printed stature) that closes an unmeasured body */
  readonly closure: number;
}

/** `measured` gives the measured length of a segment, if there is one. */
export function closeLengths(
  sex: Sex,
  stature: number,
  measured: (kind: SegmentKind, side: 'L' | 'R' | '') => number | undefined,
): HumanLengths {
  const table = DELEVA[sex];
  const scale = stature / table.stature;
  const ankleHeight = ANKLE_HEIGHT[sex] * stature;
  const room = stature - ankleHeight;
  const printed = (kinds: readonly SegmentKind[]): number =>
    kinds.reduce((sum, kind) => sum + scale * table.rows[kind].length, 0);
  const closure = room / printed(CHAIN);

  // measured lengths of the chain stand (mean of two legs); the others share what is left of the stature
  let taken = 0;
  let free = 0;
  for (const kind of CHAIN) {
    const sides = kind === 'thigh' || kind === 'shank' ? (['L', 'R'] as const) : ([''] as const);
    for (const side of sides) {
      const value = measured(kind, side);
      if (value === undefined) free += (scale * table.rows[kind].length) / sides.length;
      else taken += value / sides.length;
    }
  }
  if (free === 0 && Math.abs(taken - room) > 1e-3 * stature)
    throw new FieldError(
      'athlete.segments',
      Number(taken.toFixed(4)),
      `measured lengths from head to ankle that add up to the stature less the ankle's height, ${room.toFixed(4)} m, within 0.1 %`,
    );
  const inChain = free === 0 ? closure : (room - taken) / free;
  if (inChain < STRETCH[0] * closure || inChain > STRETCH[1] * closure)
    throw new FieldError(
      'athlete.segments',
      Number(taken.toFixed(4)),
      `measured lengths from head to ankle that, in a stature of ${stature} m, leave the other segments ${STRETCH[0]} to ${STRETCH[1]} times their usual length (they leave ${(inChain / closure).toFixed(2)})`,
    );
  const of = (kind: SegmentKind, side: 'L' | 'R' | ''): number =>
    measured(kind, side) ?? (CHAIN.includes(kind) ? inChain : closure) * scale * table.rows[kind].length;
  // the shoulders keep their place in the upper trunk: the printed drop below cervicale, as a share of that segment
  const trunk = table.rows.upperTrunk.length + table.rows.middleTrunk.length + table.rows.lowerTrunk.length;
  const drop = (trunk - table.shoulderHeight) / table.rows.upperTrunk.length;
  const shoulderHeight = of('lowerTrunk', '') + of('middleTrunk', '') + (1 - drop) * of('upperTrunk', '');
  return { of, ankleHeight, shoulderHeight, closure };
}
