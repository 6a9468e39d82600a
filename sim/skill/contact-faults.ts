/** What a course through a contact cannot be, by name and by how much; and what of it is not known, however the numbers come out. */
import type { Vec3 } from '../body/body.ts';
import type { AtTime, CourseRows, CourseSpec } from './contact-rows.ts';

export type CourseFaultKind = 'slides' | 'stretches' | 'turns' | 'comesOff' | 'slips' | 'placeOff';

export interface CourseFault {
  readonly kind: CourseFaultKind;
  /** m; turns: rad; slips: the friction needed; comesOff: the mean upward force, N */
  readonly value: number;
  readonly limit: number;
  /** s after it began */
  readonly t: number;
}

export type CourseUnknown =
  /** hands or feet one after the other, or a twist off them: which of the two made it */
  | 'whichHand'
  | 'whichFoot'
  /** the shape of the force in time is assumed, and peak and way with it */
  | 'pulse'
  /** pose and attitude as it begins are led back from the take-off */
  | 'entry'
  /** how far a board bends is not known */
  | 'boardDepth';

/** m that hands or feet may be off their place, and arm or leg too short for it: what is asked of a course. */
const STAYS = 0.05;
/** rad, shoulders or hips besides: 40 deg, our judgement. */
const LIMBS = (40 * Math.PI) / 180;
/** kg m2/s about the vertical or front-back axis from which a contact made a twist: 1 % of a strong somersault; judgement. */
const TWISTS = 0.5;

interface Found {
  readonly J_W: Vec3;
  readonly slide: number;
  readonly stays: AtTime;
  readonly stretch: AtTime;
  readonly swing: AtTime;
  readonly place?: { readonly off: number };
}

export function findFaults(
  spec: CourseSpec,
  rows: CourseRows,
  { J_W: J, slide, stays, stretch, swing, place }: Found,
): readonly CourseFault[] {
  const faults: CourseFault[] = [];
  const slid = stays.value > slide ? stays : { value: slide, t: spec.time };
  if (slid.value > STAYS) faults.push({ kind: 'slides', ...slid, limit: STAYS });
  if (stretch.value > STAYS) faults.push({ kind: 'stretches', ...stretch, limit: STAYS });
  if (swing.value > LIMBS) faults.push({ kind: 'turns', ...swing, limit: LIMBS });
  if (!(J[1] > 0)) {
    faults.push({ kind: 'comesOff', value: J[1] / spec.time, limit: 0, t: 0 });
    return faults;
  }
  let worst = { value: 0, t: 0 };
  for (let i = 0; i < rows.n; i++) {
    if (Number.isNaN(rows.off[i])) continue;
    const [x, y, z] = [0, 1, 2].map((k) => rows.force_W[3 * i + k]);
    const value = Math.hypot(x, z) / y;
    if (value > worst.value) worst = { value, t: rows.t[i] };
  }
  if (worst.value > spec.friction) faults.push({ kind: 'slips', ...worst, limit: spec.friction });
  if (place && place.off > STAYS) faults.push({ kind: 'placeOff', value: place.off, limit: STAYS, t: 0 });
  return faults;
}

export function findUnknowns(
  spec: CourseSpec,
  entry: 'flight' | 'stated' | 'assumed',
  K: Vec3,
): readonly CourseUnknown[] {
  const unknowns: CourseUnknown[] = [];
  if (Math.hypot(K[0], K[1]) > TWISTS) unknowns.push(spec.by === 'hands' ? 'whichHand' : 'whichFoot');
  unknowns.push('pulse');
  if (entry === 'assumed') unknowns.push('entry');
  if (spec.place === 'springboard') unknowns.push('boardDepth');
  return unknowns;
}
