/**
 * The launch of a leg with the legs before it: they are flown first, each by the one launch and the plain flyer, and hand over as in fly-chain.ts. A leg
 * before that stays the same object, as those before it do, is flown once.
 */

import { placeCatch, takeRail } from './catch.ts';
import { type Handover, handOver } from './chain.ts';
import type { Contact } from './contact-room.ts';
import { limbOf } from './fly-chain.ts';
import { type Flown, flySkill } from './flyer.ts';
import { handToContact, MOST_BOUNCES } from './hand-to-contact.ts';
import { type LaunchedSkill, launch } from './launch.ts';
import type { Skill } from './skill.ts';

/** A leg before does not end as the chain has it. */
class LegEndError extends Error {
  override readonly name = 'LegEndError';
}

/** A leg launched with the legs before it; any other skill as launch does. */
export const launchChained = (skill: Skill, contact?: Contact): LaunchedSkill =>
  launch(arrive(skill, skill.earlier ?? [], contact), contact);

interface Begun {
  readonly handed: Handover;
  readonly start: Skill['start'];
}
// the same start after the same arrival is the same object, so that its release is found again
const begun = new WeakMap<Skill['start'], Begun>();

function arrive(skill: Skill, before: readonly Skill[], contact?: Contact): Skill {
  if (before.length === 0) return skill;
  if (!contact) throw new RangeError('a leg of a chain is launched with the contact room');
  const handed = leave(before, skill, contact);
  const known = begun.get(skill.start);
  if (known?.handed === handed) return { ...skill, start: known.start };
  const complete = handOver(skill, handed);
  begun.set(skill.start, { handed, start: complete.start });
  return complete;
}

interface Left {
  readonly before: readonly Skill[];
  readonly flight: Flown;
  readonly handed: Handover;
}
const left = new WeakMap<Skill, Left>();

/** What the last of these legs hands over to the next. */
function leave(before: readonly Skill[], next: Skill, contact: Contact): Handover {
  const last = before[before.length - 1];
  const known = left.get(last);
  const isKnown = known?.before.length === before.length && known.before.every((leg, i) => leg === before[i]);
  const found = isKnown ? known : { before, ...flyLeg(last, before, contact) };
  if (!isKnown) left.set(last, found);
  const { touchdown } = found.flight;
  const wanted = last.catch ? undefined : limbOf(next, contact);
  if (wanted && touchdown && touchdown.part !== wanted)
    throw new LegEndError(`leg ${before.length} comes down on its ${touchdown.part}; its ${wanted} are to push`);
  return found.handed;
}

function flyLeg(leg: Skill, legs: readonly Skill[], contact: Contact): Omit<Left, 'before'> {
  const number = legs.length;
  const isBed = ({ end }: Skill): boolean => end.surface?.kind === 'trampoline';
  if (isBed(leg) && legs.filter(isBed).length >= MOST_BOUNCES)
    throw new LegEndError(`after ${MOST_BOUNCES} flights to a bed nothing is flown: leg ${number} is the last`);
  const launched = launch(arrive(leg, legs.slice(0, -1), contact), contact);
  const flight = flySkill(launched);
  const { catch: ask } = launched;
  if (!ask) return { flight, handed: handToContact(flight) };
  if (flight.met?.kind !== 'caught') throw new LegEndError(`leg ${number} does not catch its rail`);
  const { spec, left: sameRail } = placeCatch(launched, ask);
  const { joined } = takeRail(flight.uncut ?? flight, flight.met.moment.t, spec, contact, sameRail);
  if (!joined || ask.hands !== 'both')
    throw new LegEndError(`what follows the catch of leg ${number} is not computed (one hand, tilted, turned or wide)`);
  return { flight, handed: { kind: 'catch', start: joined.start } };
}
