/** The same readouts at any time of a chain, whichever leg and phase it is in: those of a whole skill (whole-instant.ts), in the frame of the chain. */
import type { Vec3 } from '../body/body.ts';
import type { WholeContact } from './contact-room.ts';
import type { FlownChain, FlownLeg } from './fly-chain.ts';
import { makeInstantReader, type WholeInstant } from './whole-instant.ts';

interface ChainInstant extends WholeInstant {
  readonly leg: number;
}

/** A reader of one chain; t is chain time, held within the chain. A contact belongs to the leg that it begins. */
export function makeChainReader(chain: FlownChain, contact: WholeContact): (t: number) => ChainInstant {
  const readers = chain.legs.map(({ whole }) => makeInstantReader(whole, contact));
  return (asked) => {
    const t = Math.min(Math.max(asked, chain.from), chain.to);
    const leg = legAt(chain.legs, t);
    const { from, offset_W, facing } = chain.legs[leg];
    return { ...placed(readers[leg](t - from), offset_W, facing), t: asked, leg };
  };
}

/** In the frame of the chain. */
function placed(now: WholeInstant, [ox, oy, oz]: Vec3, facing: 1 | -1): WholeInstant {
  const turn = ([x, y, z]: Vec3): Vec3 => [facing * x, y, facing * z];
  const [x, y, z] = turn(now.p_WScm_W);
  return {
    ...now,
    p_WScm_W: [x + ox, y + oy, z + oz],
    v_WScm_W: turn(now.v_WScm_W),
    h_Scm_W: turn(now.h_Scm_W),
    force_W: turn(now.force_W),
    quat_WB: facing === 1 ? now.quat_WB : turnedRound(now.quat_WB),
  };
}

/** Half round about Y first: [0, 0, 1, 0] x q. */
const turnedRound = ([w, x, y, z]: Float64Array): Float64Array => Float64Array.of(-y, z, w, -x);

/** The leg that chain time t is in. */
function legAt(legs: readonly Pick<FlownLeg, 'to'>[], t: number): number {
  let leg = 0;
  while (leg < legs.length - 1 && t > legs[leg].to) leg++;
  return leg;
}
