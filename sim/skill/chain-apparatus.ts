/** The apparatus of a flown chain in its own frame: what each leg leaves and meets. */
import { apparatusOf } from './apparatus.ts';
import type { FlownChain } from './fly-chain.ts';
import { type ChainApparatus, joinApparatus } from './join-apparatus.ts';

/** The apparatus of a chain in the frame of its first flight, m. */
export const apparatusOfChain = ({ legs }: Pick<FlownChain, 'legs'>): ChainApparatus =>
  joinApparatus(
    legs.map(({ whole, offset_W: [x, , z], facing }) => ({ apparatus: apparatusOf(whole), offset: { x, z }, facing })),
  );
