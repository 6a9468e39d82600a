/**
 * A chain flown: each leg by the one launch and the one flyer, from what the leg before hands over. The legs are placed on one time axis, 0 at the first
 * take-off, and in one frame, that of the first flight (docs/decisions/0023-chain.md).
 */
import type { Vec3 } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import type { FlightOptions } from '../flight/fly.ts';
import { makeState, readState } from '../motion/state.ts';
import { type ChainLeg, type Handover, handOver, type SkillChain } from './chain.ts';
import type { ContactCourse } from './contact-course.ts';
import type { WholeContact } from './contact-room.ts';
import { calcLegCourse } from './leg-course.ts';
import type { Skill } from './skill.ts';
import { flyWhole, type Whole } from './whole.ts';

export interface FlownLeg {
  readonly leg: ChainLeg;
  /** complete: with what was handed over */
  readonly skill: Skill;
  readonly whole: Whole;
  /** chain time of its take-off and of the end of its flight, s */
  readonly from: number;
  readonly to: number;
  /** add to a place in the flight for one in the chain, m */
  readonly offset_W: Vec3;
  /** of the contact that it begins with */
  readonly course?: ContactCourse;
}

/** Why the legs after one are not flown. */
export type ChainStop =
  /** another part than the one that is to push comes down first */
  { readonly kind: 'otherPart'; readonly leg: number; readonly part: string; readonly wanted: 'hands' | 'feet' };

export interface FlownChain {
  readonly chain: SkillChain;
  readonly legs: readonly FlownLeg[];
  readonly stop?: ChainStop;
  /** first and last time, s */
  readonly from: number;
  readonly to: number;
}

export function flyChain(chain: SkillChain, contact: WholeContact, options: FlightOptions = {}): FlownChain {
  const legs: FlownLeg[] = [];
  let stop: ChainStop | undefined;
  let handed: Handover | undefined;
  for (const leg of chain.legs) {
    const skill = handed ? handOver(leg.skill, handed) : leg.skill;
    const whole = flyWhole(skill, contact, options);
    const { flight } = whole;
    const before = legs[legs.length - 1];
    const from = before ? before.to + (whole.contact?.time ?? 0) : 0;
    const course = calcLegCourse(skill, whole, contact, before?.whole.flight);
    const offset_W: Vec3 = before ? placeAfter(before, course) : [0, 0, 0];
    legs.push({ leg, skill, whole, from, to: from + flight.duration, offset_W, ...(course ? { course } : {}) });
    stop = stopOf(legs.length - 1, chain, flight, contact);
    if (stop) break;
    handed = leg.next === 'contact' ? handToContact(flight) : undefined;
  }
  const last = legs[legs.length - 1];
  return {
    chain,
    legs,
    ...(stop ? { stop } : {}),
    from: legs[0].whole.from,
    to: last.from + last.whole.to,
  };
}

/** What a flight leaves to the contact that ends it. */
export function handToContact(flight: Flight): Handover {
  const state = makeState(flight.body);
  readState(flight, flight.duration, state);
  const [x, y, z] = state.v_WScm_W;
  return { kind: 'contact', v_WScm_W: [x, y, z], h_Scm_W: flight.h_Scm_W };
}

/** What is on the ground in the contact that a leg begins with. */
function limbOf({ start }: Skill, contact: WholeContact): 'hands' | 'feet' | undefined {
  const approach = start.kind === 'swing' ? undefined : start.contact;
  return approach && (approach.limb ?? contact.TAKEOFF_PRESETS[approach.place].by);
}

function stopOf(k: number, { legs }: SkillChain, { touchdown }: Flight, contact: WholeContact): ChainStop | undefined {
  const wanted = legs[k].next === 'contact' && legs[k + 1] ? limbOf(legs[k + 1].skill, contact) : undefined;
  if (!wanted || !touchdown || touchdown.part === wanted) return undefined;
  return { kind: 'otherPart', leg: k, part: touchdown.part, wanted };
}

/** The leg is put so that its hands or feet push where those of the leg before came down. */
const placeAfter = ({ offset_W: [x, , z] }: FlownLeg, course?: ContactCourse): Vec3 => [
  x + (course?.offset.x ?? 0),
  0,
  z + (course?.offset.z ?? 0),
];
