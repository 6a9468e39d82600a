/** A chain in words: each flight in its order with what lies before it, why the rest is not flown, and the account. For the command line; ready for translation. */
import { DEG } from '../math/angles.ts';
import type { ChainError, ChainSensitivity } from '../skill/chain-sensitivity.ts';
import type { Bounce } from '../skill/contact-bounces.ts';
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

const ERROR_WORDS: Readonly<Record<ChainError, string>> = {
  late: 'Last move of flight 1 10 ms later',
  lean: 'Flight 1 leaning back 1 deg more as it leaves',
};

/** Turned farther than this it is another skill, rad. */
const ANOTHER = Math.PI / 2;

/** How far places and attitudes move, from the second flight on. */
export function wordSensitivity(found: ChainSensitivity): string[] {
  return found.map(({ error, moved }) => {
    const parts = moved.slice(1).map(({ place, somersault }, i) => {
      const where = `flight ${i + 2} ends ${(100 * place).toFixed(0)} cm off`;
      return somersault > ANOTHER
        ? `flight ${i + 2} is another skill`
        : `${where}, turned ${(somersault * DEG).toFixed(0)} deg more or less`;
    });
    const rest = parts.length > 0 ? parts.join('; ') : 'the feet do not meet the bed again';
    return `${ERROR_WORDS[error]}, every push unchanged: ${rest}. Athletes correct this in the bed; it is no forecast.`;
  });
}

/** "up by 2.42 m, 0.41 more than before; legs +4.7 J/kg; comes down 0.50 m back" */
export function wordBounce({ rise, won, legs, travel }: Bounce): string {
  const more = `${Math.abs(won).toFixed(2)} ${won < 0 ? 'less' : 'more'} than before`;
  const way =
    Math.abs(travel.x) < 0.005
      ? 'on the spot'
      : `${Math.abs(travel.x).toFixed(2)} m ${travel.x < 0 ? 'back' : 'forward'}`;
  return `up by ${rise.toFixed(2)} m, ${more}; legs ${legs < 0 ? '-' : '+'}${Math.abs(legs).toFixed(1)} J/kg; the feet come down ${way}`;
}
