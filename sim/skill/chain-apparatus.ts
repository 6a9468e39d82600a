/** The apparatus of a flown chain in its own frame: what each leg leaves and meets, the rails that are to be caught among it. */
import { apparatusOf, barMats, type SkillApparatus } from './apparatus.ts';
import { wayOf } from './apparatus-ends.ts';
import { railPiece } from './apparatus-piece.ts';
import { placeCatch } from './catch.ts';
import type { CatchAsk } from './catch-ask.ts';
import type { Contact } from './contact-room.ts';
import type { FlownChain, FlownLeg } from './fly-chain.ts';
import { type ChainApparatus, joinApparatus } from './join-apparatus.ts';

export function apparatusOfChain({ legs }: Pick<FlownChain, 'legs'>, contact: Contact): ChainApparatus {
  return joinApparatus(
    legs.map(({ skill, whole, offset_W: [x, , z] }) => ({
      apparatus: skill.catch ? withRail(apparatusOf(whole), whole, skill.catch, contact) : apparatusOf(whole),
      offset: { x, z },
    })),
  );
}

function withRail(
  { pieces, leaves }: SkillApparatus,
  { skill, flight }: FlownLeg['whole'],
  asked: CatchAsk,
  contact: Contact,
): SkillApparatus {
  const { launch } = skill;
  const { spec, left } = placeCatch({ launch }, asked);
  if (left && leaves !== undefined) return { pieces, leaves, lands: leaves };
  const caught = railPiece(contact.getRail(spec.rail), spec.alongX, wayOf(flight));
  const mats = launch.rail ? [] : [barMats(caught, 0)];
  return {
    pieces: [...pieces, ...mats, caught],
    ...(leaves === undefined ? {} : { leaves }),
    lands: pieces.length + mats.length,
  };
}
