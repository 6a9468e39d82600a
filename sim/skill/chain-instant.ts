/** The same readouts at any time of a chain, whichever leg and phase it is in: those of a whole skill (whole-instant.ts), in the frame of the chain. */
import type { Vec3 } from '../body/body.ts';
import type { WholeContact } from './contact-room.ts';
import type { FlownChain, FlownLeg } from './fly-chain.ts';
import { makeInstantReader, type WholeInstant } from './whole-instant.ts';

export interface ChainInstant extends WholeInstant {
  readonly leg: number;
}

/** A reader of one chain; t is chain time, held within the chain. A contact belongs to the leg that it begins. */
export function makeChainReader(chain: FlownChain, contact: WholeContact): (t: number) => ChainInstant {
  const readers = chain.legs.map(({ whole, course }) => makeInstantReader(whole, contact, course));
  return (asked) => {
    const t = Math.min(Math.max(asked, chain.from), chain.to);
    const leg = legAt(chain.legs, t);
    const { from, offset_W: o } = chain.legs[leg];
    const now = readers[leg](t - from);
    const [x, y, z] = now.p_WScm_W;
    const p_WScm_W: Vec3 = [x + o[0], y + o[1], z + o[2]];
    return { ...now, t: asked, leg, p_WScm_W };
  };
}

/** The leg that chain time t is in. */
export function legAt(legs: readonly Pick<FlownLeg, 'to'>[], t: number): number {
  let leg = 0;
  while (leg < legs.length - 1 && t > legs[leg].to) leg++;
  return leg;
}
