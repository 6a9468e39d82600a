/**
 * The release window: of all times at which a swing could be let go, the span around the planned one whose flights meet
 * the target, with the flight of each time looked at. The swing is followed a little past its release as if the hands had
 * held on (Swing.until), so later releases are known without swinging again. The joints' plan is that of the skill,
 * counted from the release, whenever it comes.
 */

import type { Swing } from '../contact/swing.ts';
import type { Flight } from '../flight/flight.ts';
import { RAD, REV, turnedTo } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { ASKED_CLEARANCE, type Clearance } from '../measure/clearance.ts';
import { calcFlightEnd, type FlightEnd } from '../measure/flight-end.ts';
import { bandOf, heldWithin } from '../measure/landing-band.ts';
import { calcClearance } from './clearance.ts';
import type { WholeContact } from './contact-room.ts';
import { calcHeldReach, judgeWith } from './held-landing.ts';
import { type LaunchedSkill, releasedRail } from './launch.ts';
import { flyReleased } from './release-flight.ts';
import { MISS_WIDTHS } from './skill-verdict.ts';
import { spanAround } from './span-around.ts';

/** Where no landing on the feet is judged, F may be short or past by this at the end, rad: our judgement. */
const UNJUDGED_LANDING = 10 * RAD;
/** What was met before landings were judged by their model, rad: short or past, twist off. */
const FORMERLY = { landing: 20 * RAD, twist: 45 * RAD } as const;

interface ReleaseTry {
  /** s after the planned release (before: negative) */
  readonly late: number;
  /** undefined: no flight from there (no touchdown on the surface) */
  readonly flight?: Flight;
  readonly end?: FlightEnd;
  /** F at touchdown beyond (+) or short of (-) the wanted angle in the direction of rotation, rad */
  readonly over: number;
  /** twist done less twist wanted, in the direction wanted, rad */
  readonly twistOff: number;
  /** of the mass centre at touchdown from the bar, along X, m */
  readonly away: number;
  /** of the rail, through that flight */
  readonly nearest?: Clearance;
  readonly meets: boolean;
}

interface ReleaseWindow {
  readonly tries: readonly ReleaseTry[];
  /** s after the planned release: the span of times that meet the target around it (or around the nearest that does) */
  readonly from: number;
  readonly to: number;
  readonly width: number;
  /** an edge that is the end of what was looked at: the window may be wider */
  readonly isOpen: readonly [boolean, boolean];
  readonly tolerance: number;
}

interface ReleaseWindowOptions {
  readonly from?: number;
  readonly to?: number;
  readonly count?: number;
  /** the room in which landings near an edge are run, where the skill states one */
  readonly contact?: WholeContact;
  /** in place of the verdict */
  readonly meets?: (attempt: Omit<ReleaseTry, 'meets'>) => boolean;
  /** error asked of a step of the flight: coarser than a flight on its own (1e-10), ends within 1e-6 rev of it */
  readonly tolerance?: number;
}

/** s each side */
const REACH = 0.08;
const COUNT = 41;
const WINDOW_TOLERANCE = 1e-7;

/** How far the release may be off (s) before the target is missed, with the flights looked at. */
export function calcReleaseWindow(
  skill: LaunchedSkill,
  swing: Swing,
  options: ReleaseWindowOptions = {},
): ReleaseWindow {
  const { from = -REACH, to = REACH, count = COUNT, tolerance = WINDOW_TOLERANCE } = options;
  if (!(from <= 0 && from >= -swing.duration))
    throw new FieldError('window.fromS', from, 'a time on the bar, 0 or less');
  if (!(to >= 0 && to <= swing.until))
    throw new FieldError('window.toS', to, `a number from 0 to ${swing.until.toFixed(3)} s`);
  if (!(Number.isInteger(count) && count >= 3 && count <= 401))
    throw new FieldError('window.count', count, 'a whole number from 3 to 401');
  if (!skill.target && !options.meets)
    throw new FieldError('target', undefined, 'a target, to know which flights meet it');
  const attempt = (late: number): ReleaseTry => tryRelease(skill, swing, late, tolerance, options);
  const tries = Array.from({ length: count }, (_, i) => attempt(from + ((to - from) * i) / (count - 1)));

  const span = spanAround(tries, (late) => attempt(late).meets);
  if (!span) return { tries, from: Number.NaN, to: Number.NaN, width: 0, isOpen: [false, false], tolerance };
  return { tries, ...span, width: span.to - span.from, tolerance };
}

function tryRelease(
  skill: LaunchedSkill,
  swing: Swing,
  late: number,
  tolerance: number,
  options: ReleaseWindowOptions,
): ReleaseTry {
  const released = flyReleased(skill, swing, late, tolerance);
  if (!released) return { late, over: Number.NaN, twistOff: Number.NaN, away: Number.NaN, meets: false };
  const { state, launched, flight } = released;
  const end = calcFlightEnd(flight);
  const nearest = calcClearance({
    skill: {
      launch: { ...launched.launch, rail: releasedRail(swing, state.rail), barX: -state.p_WScm_W[0] },
      end: launched.end,
    },
    flight,
  });
  const { target } = skill;
  const turn = flight.h_Scm_W[2] < 0 ? -1 : 1;
  const wanted = target ? end.somersault0 + turn * REV * target.somersaults : Number.NaN;
  // the angle wanted at touchdown that lies nearest to so many turns from the release
  const upright = target ? turnedTo(target.landingAngle, wanted) : Number.NaN;
  const twistSign = target?.twistWord === 'right' ? -1 : 1;
  const out = {
    late,
    flight,
    end,
    over: turn * (end.somersault - upright),
    twistOff: target ? twistSign * (end.twist - end.twist0) - REV * target.twists : Number.NaN,
    away: state.p_WScm_W[0] + flight.v_WScm_W0[0] * flight.duration,
    ...(nearest ? { nearest } : {}),
  };
  const meets = options.meets?.(out) ?? isMet(out, skill, options.contact);
  return { ...out, meets };
}

/** As a verdict has it: nothing missed, and the landing held (with a hop or a small step at most) where it is judged. */
function isMet(
  { over, twistOff, flight, end, nearest }: Omit<ReleaseTry, 'meets'>,
  skill: LaunchedSkill,
  contact?: WholeContact,
): boolean {
  if (!flight || !end || !(Math.abs(twistOff) < MISS_WIDTHS.twist) || !(Math.abs(end.tilt) < MISS_WIDTHS.tilt))
    return false;
  const band = bandOf(skill.end.surface?.kind);
  // what is down with another part first is not held, however upright, and what touches the rail does not get there
  if (band && flight.touchdown && flight.touchdown.part !== 'feet') return false;
  if (nearest && nearest.distance <= 0) return false;
  const reach =
    band &&
    calcHeldReach(
      flight,
      end.twist,
      judgeWith(skill.after, contact, () => nearest),
    );
  if (!band || reach === undefined) return Math.abs(over) <= UNJUDGED_LANDING;
  const [low, high] = heldWithin(band);
  return Math.abs(over) < MISS_WIDTHS.somersault && reach >= low && reach <= high;
}

/** s of the window in which what comes nearest to the rail stays `asked` m away too; undefined where nothing was measured. */
export function calcClearTime({ tries, from, to }: ReleaseWindow, asked = ASKED_CLEARANCE): number | undefined {
  if (!tries.some((one) => one.nearest)) return undefined;
  return timeOver(tries, from, to, ({ nearest }) => (nearest?.distance ?? Number.NaN) - asked);
}

/** s, of all times looked at, that would have met the window that was usual before: another question, said beside the new width. */
export const calcFormerTime = ({ tries }: ReleaseWindow): number =>
  timeOver(tries, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, ({ over, twistOff }) =>
    Math.min(FORMERLY.landing - Math.abs(over), FORMERLY.twist - Math.abs(twistOff)),
  );

/** s between `from` and `to` in which a value is 0 or more, by a straight line between tries. */
function timeOver(tries: readonly ReleaseTry[], from: number, to: number, value: (one: ReleaseTry) => number): number {
  let sum = 0;
  for (let i = 1; i < tries.length; i++) {
    const [a, b] = [tries[i - 1], tries[i]];
    const [begin, end] = [Math.max(a.late, from), Math.min(b.late, to)];
    const [va, vb] = [value(a), value(b)];
    if (!(end > begin) || Number.isNaN(va + vb)) continue;
    const [u, v] = [begin, end].map((t) => va + ((vb - va) * (t - a.late)) / (b.late - a.late));
    const share = u >= 0 && v >= 0 ? 1 : u < 0 && v < 0 ? 0 : Math.max(u, v) / Math.abs(u - v);
    sum += share * (end - begin);
  }
  return sum;
}
