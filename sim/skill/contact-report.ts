/**
 * What a take-off asks of the place it leaves, beside what is usual there: speeds, angular momentum and air of any take-off; time, force, work and movement of a
 * contact. Everything that lies outside is a caution.
 */
import type { Vec3 } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { isCompared } from '../measure/known-strength.ts';
import { calcContactPlaces } from '../motion/contact-places.ts';
import type { BedSpring } from './contact-bed.ts';
import type { ContactCourse, CourseFacts } from './contact-course.ts';
import type { CourseFault, CourseFaultKind } from './contact-faults.ts';
import { type ContactRange, PLACE_RANGES, type RangedPlace, rangedPlace, upOutOf } from './contact-ranges.ts';
import type { TakeoffContact } from './contact-takeoff.ts';
import type { LaunchedSkill } from './launch.ts';

/** The first five are of any take-off, the rest of a contact. */
export type ContactCautionKind =
  | 'upOut'
  | 'alongOut'
  | 'momentum'
  | 'time'
  | 'alongIn'
  | 'meanUp'
  | 'peakUp'
  | 'work'
  | 'height'
  | 'place'
  | 'slides'
  | 'slips'
  | 'reach'
  | 'turn';

/** SI; momentum in m2/s per squared metre of stature, force in body weights, work in J/kg. */
export interface ContactCaution {
  readonly kind: ContactCautionKind;
  readonly place: RangedPlace;
  readonly value: number;
  readonly range: ContactRange;
  /** mass times squared stature of the body, kg m2: what a momentum is judged by */
  readonly massStature2: number;
}

export interface ContactReport {
  readonly place: RangedPlace;
  /** m/s: along the way of travel, up */
  readonly out: { readonly along: number; readonly up: number };
  /** rise of the mass centre over take-off, m */
  readonly airRise: number;
  /** |h|, kg m2/s, and over mass and stature squared, 1/s */
  readonly momentum: number;
  readonly momentumShare: number;
  /** kg m2 */
  readonly massStature2: number;
  readonly contact?: ContactDetail;
  /** what was compared, and with what */
  readonly ranges: Readonly<Partial<Record<ContactCautionKind, ContactRange>>>;
  readonly cautions: readonly ContactCaution[];
}

export interface ContactDetail {
  readonly time: number;
  readonly in: { readonly along: number; readonly up: number };
  /** body weights: mean upward and along, and what a peak is like, from and to */
  readonly mean: {
    readonly up: number;
    readonly along: number /** + along the way of travel */;
    readonly forward: number;
  };
  readonly peak: { readonly up: readonly [number, number]; readonly along: readonly [number, number] };
  /** J/kg: brought along (moving and turning), added to it */
  readonly brought: number;
  readonly work: number;
  readonly bed?: BedSpring;
  /** angular momentum that it gave, and that was brought, kg m2/s */
  readonly turnsBy_W: Vec3;
  readonly broughtTurning_W: Vec3;
  readonly course?: CourseFacts;
  /** loads of an age that no strength is known of are compared with nothing (known-strength.ts) */
  readonly loadsCompared: boolean;
}

interface Taken {
  readonly skill: Pick<LaunchedSkill, 'launch' | 'end'>;
  readonly flight: Flight;
  readonly contact?: TakeoffContact;
  /** of the contact */
  readonly course?: ContactCourse | undefined;
}

/** Entry, exit and place may differ by this, m: a real force comes and goes, which moves a mean by up to 3 cm; our judgement. */
const AGREE = 0.1;
/** They sink by more than what is compared here: nothing is said of where the body is over them. */
const GIVES_WAY: readonly RangedPlace[] = ['trampoline', 'divingBoard'];
/** Ranges were met at this gravity, m/s2. */
const EARTH = 9.81;

/** A flight onto the hands is no somersault: what is known of take-offs for those says nothing of it. */
const ONTO_HANDS: Partial<(typeof PLACE_RANGES)['floor']> = {};
const isOntoHands = ({ end }: Flight, place: RangedPlace): boolean => place === 'floor' && end.surface?.by === 'hands';

/** Undefined where the place is not known, or the body is no human on Earth. */
export function calcContactReport(taken: Taken): ContactReport | undefined {
  const { flight, contact } = taken;
  const { body, gravity } = flight;
  const place = placeOf(taken);
  if (!place || !body.neutralHuman || body.stature === undefined || Math.abs(gravity - EARTH) > 0.1) return undefined;
  const isOnto = isOntoHands(flight, place);
  const ranges = isOnto ? ONTO_HANDS : PLACE_RANGES[place];
  const massStature2 = body.mass * body.stature ** 2;
  const cautions: ContactCaution[] = [];
  const compared: Partial<Record<ContactCautionKind, ContactRange>> = {};
  const judge = (kind: ContactCautionKind, value: number, range: ContactRange | undefined, isBoth = false): void => {
    if (!range) return;
    compared[kind] = range;
    if (value > range.high || (isBoth && value < range.low)) cautions.push({ kind, place, value, range, massStature2 });
  };
  const v = flight.v_WScm_W0;
  const way = (v[0] || contact?.v_before_W[0] || 1) < 0 ? -1 : 1;
  const out = { along: way * v[0], up: v[1] };
  const momentum = Math.hypot(...flight.h_Scm_W);
  const momentumShare = momentum / massStature2;
  if (!isOnto) judge('upOut', out.up, upOutOf(place, body.sex));
  judge('alongOut', out.along, ranges.alongOut);
  judge('momentum', momentumShare, ranges.momentum);
  const course = taken.course?.facts;
  const detail = contact ? detailOf(place, contact, flight, way, course) : undefined;
  if (detail) {
    const { loadsCompared, work } = detail;
    judge('time', detail.time, ranges.time, true);
    judge('alongIn', detail.in.along, ranges.alongIn);
    if (loadsCompared) {
      judge('meanUp', detail.mean.up, ranges.meanUp);
      judge('peakUp', detail.peak.up[0], ranges.peakUp);
      judge('work', work, ranges.work);
    }
    if (contact && course)
      cautions.push(...disagreements(place, contact, course, way).map((one) => ({ ...one, massStature2 })));
  }
  return {
    place,
    out,
    airRise: out.up > 0 ? out.up ** 2 / (2 * gravity) : 0,
    momentum,
    momentumShare,
    massStature2,
    ...(detail ? { contact: detail } : {}),
    ranges: compared,
    cautions,
  };
}

function detailOf(
  place: RangedPlace,
  { impulse, time, v_before_W: v, h_before_W, lateralMoment }: TakeoffContact,
  { body, gravity }: Flight,
  way: 1 | -1,
  course: CourseFacts | undefined,
): ContactDetail {
  const weight = body.mass * gravity;
  const { peakOverMean } = PLACE_RANGES[place];
  const mean = {
    up: impulse.force_W[1] / weight,
    along: Math.hypot(impulse.force_W[0], impulse.force_W[2]) / weight,
    forward: (way * impulse.force_W[0]) / weight,
  };
  const peak = ({ low, high }: ContactRange, of: number): readonly [number, number] => [low * of, high * of];
  const account = course?.account;
  return {
    time,
    in: { along: way * v[0], up: v[1] },
    mean,
    peak: { up: peak(peakOverMean.up, mean.up), along: peak(peakOverMean.along, mean.along) },
    turnsBy_W: impulse.K_Scm_W,
    broughtTurning_W: h_before_W,
    brought:
      account?.brought ??
      (v[0] ** 2 + v[1] ** 2 + v[2] ** 2) / 2 + h_before_W[2] ** 2 / (2 * lateralMoment * body.mass),
    work: account?.work ?? impulse.energy / body.mass,
    ...(course?.bed ? { bed: course.bed } : {}),
    ...(course ? { course } : {}),
    loadsCompared: isCompared(body),
  };
}

function disagreements(
  place: RangedPlace,
  { height, impulse }: TakeoffContact,
  c: CourseFacts,
  way: 1 | -1,
): Omit<ContactCaution, 'massStature2'>[] {
  const found: Omit<ContactCaution, 'massStature2'>[] = [];
  const within = (kind: ContactCautionKind, value: number, low: number, high: number, source: string): void => {
    if (value < low || value > high)
      found.push({ kind, place, value, range: { low, high, basis: 'judgement', source } });
  };
  const fault = (kind: CourseFaultKind): CourseFault | undefined => c.faults.find((one) => one.kind === kind);
  const judge = (kind: ContactCautionKind, one: CourseFault | undefined, source: string): void => {
    if (one) within(kind, one.value, 0, one.limit, source);
  };
  if (!GIVES_WAY.includes(place)) {
    within(
      'height',
      height,
      c.meanHeight - AGREE,
      c.meanHeight + AGREE,
      'by the take-off and the speeds, within 10 cm',
    );
    judge('reach', fault('stretches'), 'arm or leg straight, and 5 cm');
    judge('turn', fault('turns'), 'our judgement');
  }
  if (c.place && fault('placeOff')) {
    const { x, covers, fromCentre } = c.place;
    const [a, b] = [way * (covers[0] + fromCentre), way * (covers[1] + fromCentre)];
    const source = 'by the take-off and the speeds';
    const range = { low: Math.min(a, b), high: Math.max(a, b), basis: 'judgement', source } as const;
    found.push({ kind: 'place', place, value: way * (x + fromCentre), range });
  }
  // where the mean does not slip already
  if (impulse.faults.length === 0) judge('slips', fault('slips'), 'as stated, or usual there (judgement)');
  judge('slides', fault('slides'), 'what is asked of a contact');
  return found;
}

/** A start over water from this height on is from a platform, m: our judgement. */
const PLATFORM = 4;
const OVER_WATER = 0.5;
/** Feet may begin so far under a mat's top or above the floor they leave, m: our judgement. */
const UNDER_MAT = 0.35;
const OVER_FLOOR = 0.05;

/** Where the take-off is: as its contact says, else by what is landed on and the height of the start. */
function placeOf({ skill: { launch, end }, flight, contact }: Taken): RangedPlace | undefined {
  if (launch.rail) return undefined;
  if (launch.place) return rangedPlace(launch.place, contact?.by ?? 'feet');
  const points = calcContactPlaces(flight, 0);
  if (points.length === 0) return undefined;
  const over = Math.min(...points.map((p) => p.low)) - flight.surfaceY;
  switch (end.surface?.kind) {
    case 'water':
      return over > PLATFORM ? 'platform' : over > OVER_WATER ? 'divingBoard' : undefined;
    case 'trampoline':
      return over < OVER_FLOOR ? 'trampoline' : undefined;
    case 'floor':
    case 'mat':
      return over > -UNDER_MAT && over < OVER_FLOOR ? 'floor' : undefined;
    default:
      return undefined;
  }
}
