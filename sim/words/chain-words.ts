/** A chain in words: each flight in its order with what lies before it, why the rest is not flown, and the account. For the command line; ready for translation. */
import type { ChainStop } from '../skill/fly-chain.ts';

/** Why the rest is not flown; empty where all of it is. */
export function wordStop(stop: ChainStop | undefined, titles: readonly string[]): string {
  if (!stop) return '';
  const title = titles[stop.leg];
  switch (stop.kind) {
    case 'otherPart':
      return `${title} comes down on the ${stop.part}, where the ${stop.wanted} were to push: what follows is not flown.`;
    case 'notCaught':
      return `${title} ends without a catch: what follows is not flown.`;
    case 'notComputed':
      return `The swing after ${title} is not computed: what follows is not flown.`;
    case 'bounces':
      return `After ${stop.flights} bounces small errors have grown so much that the next is not flown.`;
  }
}
