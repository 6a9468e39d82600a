/**
 * A chain flown: each leg by the one launch and the one flyer, from what the leg before hands over. The legs are placed on one time axis, 0 at the first
 * take-off, and in one frame, that of the first flight (docs/decisions/0023-chain.md).
 */
import type { Vec3 } from '../body/body.ts';
import type { FlightOptions } from '../flight/fly.ts';
import { type ChainLeg, type Handover, handOver, type SkillChain } from './chain.ts';
import type { ContactCourse } from './contact-course.ts';
import type { Contact, WholeContact } from './contact-room.ts';
import { handToContact, MOST_BOUNCES } from './hand-to-contact.ts';
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
  /** a place in the flight, turned half round about the vertical where `facing` is -1, and moved by this, is one in the chain, m */
  readonly offset_W: Vec3;
  readonly facing: 1 | -1;
  /** of the contact that it begins with */
  readonly course?: ContactCourse;
  /** by the leg before */
  readonly handed?: Handover;
}

/** Why the legs after one are not flown. */
export type ChainStop = { readonly leg: number } & (
  | /** another part than the one that is to push comes down first */
  { readonly kind: 'otherPart'; readonly part: string; readonly wanted: 'hands' | 'feet' }
  /** the hands do not meet the rail, or what follows the catch is not computed */
  | { readonly kind: 'notCaught' | 'notComputed' }
  /** bounces enough: the next is only how far it moves (chain-sensitivity.ts) */
  | { readonly kind: 'bounces'; readonly flights: number }
);

export interface FlownChain {
  readonly chain: SkillChain;
  readonly legs: readonly FlownLeg[];
  readonly stop?: ChainStop;
  /** first and last time, s */
  readonly from: number;
  readonly to: number;
}

interface ChainStudy {
  readonly mostBounces?: number;
  /** a leg as it is flown, changed by what became of those before */
  adjust?(skill: Skill, before: readonly FlownLeg[]): Skill;
}

/** Flies a chain leg by leg, each from what the one before hands over, until it ends or stops early, with the reason. */
export function flyChain(
  chain: SkillChain,
  contact: WholeContact,
  options: FlightOptions = {},
  { mostBounces = MOST_BOUNCES, adjust = (skill) => skill }: ChainStudy = {},
): FlownChain {
  const legs: FlownLeg[] = [];
  let stop: ChainStop | undefined;
  let handed: Handover | undefined;
  for (const leg of chain.legs) {
    const skill = adjust(handed ? handOver(leg.skill, handed) : leg.skill, legs);
    const before = legs[legs.length - 1];
    const placed = placeLeg(
      named(chain, leg, () => flyWhole(skill, contact, options, before?.whole.flight)),
      leg,
      skill,
      before,
    );
    const flown: FlownLeg = handed ? { ...placed, handed } : placed;
    legs.push(flown);
    if (legs.length === chain.legs.length) break;
    stop = stopOf(legs, chain, contact, mostBounces);
    if (stop) break;
    // what follows a catch is the next leg's
    legs[legs.length - 1] = { ...flown, whole: { ...flown.whole, to: flown.whole.flight.duration } };
    handed = leg.next === 'contact' ? handToContact(flown.whole.flight) : handToSwing(flown.whole);
  }
  const last = legs[legs.length - 1];
  return { chain, legs, ...(stop ? { stop } : {}), from: legs[0].whole.from, to: last.from + last.whole.to };
}

/** A fault of a flight says of which. */
function named<T>({ legs }: SkillChain, { title }: ChainLeg, fly: () => T): T {
  try {
    return fly();
  } catch (error) {
    if (error instanceof Error && legs.length > 1) error.message = `${title}: ${error.message}`;
    throw error;
  }
}

function placeLeg(whole: Whole, leg: ChainLeg, skill: Skill, before: FlownLeg | undefined): FlownLeg {
  const { flight, course } = whole;
  const from = before ? before.to - whole.from : 0;
  return {
    leg,
    skill,
    whole,
    from,
    to: from + flight.duration,
    ...(before ? placeAfter(before, whole, course) : { offset_W: [0, 0, 0], facing: 1 }),
    ...(course ? { course } : {}),
  };
}

/** Hands or feet push where those of the leg before came down; a rail stays where it is. */
function placeAfter(
  { offset_W: [x, , z], facing, whole: { catch: caught, flight } }: FlownLeg,
  { barX }: Whole,
  course?: ContactCourse,
): Pick<FlownLeg, 'offset_W' | 'facing'> {
  if (caught) {
    const now = caught.caught?.facing === -1 ? (-facing as 1 | -1) : facing;
    const p = new Float64Array(3);
    flight.massCentreInto(flight.duration, p, new Float64Array(3));
    return { offset_W: [x + facing * caught.spec.alongX - now * barX, 0, z + facing * p[2]], facing: now };
  }
  return {
    offset_W: [x + facing * (course?.facts.offset.x ?? 0), 0, z + facing * (course?.facts.offset.z ?? 0)],
    facing,
  };
}

/** What a catch leaves to the swing after it. */
function handToSwing({ catch: caught }: Whole): Handover | undefined {
  const start = caught?.caught?.start;
  return start && { kind: 'catch', start };
}

/** What is on the ground in the contact that a leg begins with. */
export function limbOf({ start }: Skill, contact: Contact): 'hands' | 'feet' | undefined {
  const approach = start.kind === 'swing' ? undefined : start.contact;
  return approach && (approach.limb ?? contact.TAKEOFF_PRESETS[approach.place].by);
}

function stopOf(
  legs: readonly FlownLeg[],
  { legs: asked }: SkillChain,
  contact: WholeContact,
  mostBounces: number,
): ChainStop | undefined {
  const leg = legs.length - 1;
  const { touchdown, end } = legs[leg].whole.flight;
  const caught = legs[leg].whole.catch;
  if (caught) {
    if (caught.outcome.kind !== 'caught') return { leg, kind: 'notCaught' };
    return caught.caught ? undefined : { leg, kind: 'notComputed' };
  }
  const wanted = limbOf(asked[leg + 1].skill, contact);
  if (wanted && touchdown && touchdown.part !== wanted) return { leg, kind: 'otherPart', part: touchdown.part, wanted };
  const isBed = end.surface?.kind === 'trampoline';
  const bounces = legs.filter(({ whole }) => whole.flight.end.surface?.kind === 'trampoline').length;
  return isBed && bounces >= mostBounces ? { leg, kind: 'bounces', flights: bounces } : undefined;
}
