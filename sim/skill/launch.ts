/**
 * The launch: from how a skill begins (a stated take-off, a swing, a known contact) to the take-off that is flown. Only what comes
 * from here is a LaunchedSkill, and only a LaunchedSkill can be flown, so that all who fly one skill fly one flight.
 *
 * A swing hands over mass centre, velocity, angular momentum, joint angles and rates; the flight begins with exactly those
 * (whole-carry.ts) and, as every flight, with the mass centre over X = 0: a swing's own X (bar at 0) is `barX` less.
 */

import type { TakeoffPlace } from '../contact/impulse-presets.ts';
import type { LateRelease } from '../contact/late-hand.ts';
import type { Swing, SwingState } from '../contact/swing.ts';
import type { TakeoffSpec } from '../flight/flight.ts';
import type { RailSway } from '../measure/rail-sway.ts';
import type { Contact } from './contact-room.ts';
import { takeoffAfter } from './contact-takeoff.ts';
import { lateTakeoff, releaseTakeoff } from './release-takeoff.ts';
import type { Skill } from './skill.ts';
import type { StartSpec, SwingApproach } from './start-spec.ts';
import type { CarriedMotion } from './whole-carry.ts';

/** Height and radius, m; and how it moves on, where it gives. */
interface ReleasedRail {
  readonly height: number;
  readonly radius: number;
  readonly sway?: RailSway;
}

export function releasedRail({ rail }: Swing, state: SwingState['rail']): ReleasedRail {
  const { height, radius, mass, stiffness, damping } = rail;
  const gives = stiffness.every(Number.isFinite);
  return { height, radius, ...(gives ? { sway: { state, mass, stiffness, damping } } : {}) };
}

/** What a flight begins with: plain data but for `swing`, which stays where it was computed. */
export interface Release {
  readonly takeoff: TakeoffSpec;
  /** joint angles and rates that the flight begins with, whatever is keyed there */
  readonly carried?: CarriedMotion;
  /** the bar's place in the flight's X, m */
  readonly barX: number;
  readonly swing?: Swing;
  /** one hand held on: t = 0 is when it let go, the other let go `late.held` before */
  readonly late?: LateRelease;
  /** the rail that was let go */
  readonly rail?: ReleasedRail;
}

/** What the take-off came from. */
type Launch = { readonly kind: StartSpec['kind'] } & Pick<Release, 'barX' | 'swing' | 'late' | 'rail'> & {
    /** what was pushed off from, where a contact says so */
    readonly place?: TakeoffPlace;
  };

// a protected member is lost when an object is spread, so a changed copy is no launched skill
declare class Brand {
  protected readonly isLaunched: true;
}

export type LaunchedSkill = Omit<Skill, 'start'> &
  Pick<Release, 'takeoff' | 'carried'> & { readonly launch: Launch } & Brand;

/** s within which the joints of a release go over into the flight's schedule */
export const CARRIED_WITHIN = 0.15;

/** `contact`: the room that swings and pushes; a stated take-off needs none. */
export function launch(skill: Skill, contact?: Contact): LaunchedSkill {
  return launchFrom(skill, calcRelease(skill, contact));
}

/** From a release of the same start and body, wherever it was computed. */
export function launchFrom({ start, ...rest }: Skill, { takeoff, carried, ...came }: Release): LaunchedSkill {
  const place = start.kind === 'swing' ? undefined : start.contact?.place;
  const origin = { kind: start.kind, ...came, ...(place ? { place } : {}) };
  return brand({ ...rest, takeoff, ...(carried ? { carried } : {}), launch: origin });
}

/** The same launch with other motion, another end, or a take-off stated in its place. */
export function relaunch(
  skill: LaunchedSkill,
  change: Partial<Pick<LaunchedSkill, 'title' | 'takeoff' | 'schedule' | 'contacts' | 'end'>> & {
    readonly carried?: CarriedMotion | undefined;
  },
): LaunchedSkill {
  const { launch: came, ...rest } = { ...skill, ...change };
  return brand({ ...rest, launch: change.takeoff ? withoutSwing(came) : came });
}

/** Of a take-off stated in its place: what is left is still there. */
const withoutSwing = ({ barX, rail, place }: Launch): Launch => ({
  kind: 'stated',
  barX,
  ...(rail ? { rail } : {}),
  ...(place ? { place } : {}),
});

const brand = (parts: Omit<LaunchedSkill, never>): LaunchedSkill => parts as LaunchedSkill;

/** Whether the start needs the contact room. */
export const needsContact = ({ start }: Pick<Skill, 'start'>): boolean => start.kind !== 'stated';

interface Kept extends Pick<Skill, 'body' | 'gravity'> {
  readonly release: Release;
}
const kept = new WeakMap<StartSpec, Kept>();

/** Kept for as long as start, body and gravity are the same, so that a search through schedules launches once. */
export function calcRelease(skill: Skill, contact?: Contact): Release {
  const { start, body, gravity } = skill;
  if (start.kind === 'stated') return { takeoff: start.takeoff, barX: 0 };
  const known = kept.get(start);
  if (known && known.body === body && known.gravity === gravity) return known.release;
  if (!contact) throw new RangeError(`a ${start.kind} is launched with the contact room`);
  const release: Release =
    start.kind === 'contact'
      ? { takeoff: takeoffAfter(skill, start, contact), barX: 0 }
      : releaseOf(skill, start.swing, contact);
  kept.set(start, { body, gravity, release });
  return release;
}

function releaseOf(skill: Skill, approach: SwingApproach, contact: Contact): Release {
  const swing = swingTo(skill, approach, contact);
  const { lateHand } = approach;
  const late = lateHand && lateHand.s > 0 ? contact.holdLate(swing, lateHand.hand, lateHand.s) : undefined;
  const end = late ?? swing.stateAt(0);
  return {
    takeoff: late ? lateTakeoff(late) : releaseTakeoff(skill.body, swing.stateAt(0)),
    carried: { angles: end.angles, rates: end.rates, within: CARRIED_WITHIN },
    barX: -end.p_WScm_W[0],
    rail: releasedRail(swing, end.rail),
    swing,
    ...(late ? { late } : {}),
  };
}

function swingTo({ body, gravity }: Skill, a: SwingApproach, contact: Contact): Swing {
  return contact.makeSwing({
    body,
    gravity,
    rail: contact.getRail(a.rail),
    sense: a.sense,
    start: a.start,
    moves: a.moves,
    release: a.release,
    late: a.late,
    duration: a.duration,
    strength: a.strength ?? Number.POSITIVE_INFINITY,
  });
}
