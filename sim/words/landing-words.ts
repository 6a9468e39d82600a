/** Why a landing ends as it does, and what its forces are worth: the same texts for shell and page, in one place, ready for translation. */
import type { EndingReason } from '../contact/ending.ts';
import type { BoundCause } from '../contact/landing-report.ts';
import { type NumberWords, PLAIN_NUMBERS } from './verdict-words.ts';

/** What makes a peak an upper bound. */
export const BOUND_WORDS: Readonly<Record<BoundCause, string>> = {
  bottomedMat: 'an upper bound: the mat is pressed in to its bottom',
  hardSurface: 'an upper bound: rigid feet on a hard surface',
  jointStop: 'an upper bound: a joint is against its stop',
};

/** A landing that is run on a bed. */
export const BED_WORDS = [
  'bounces',
  'the bed throws the athlete up again, so no step follows: computed is what taking it in asks for, not how it goes on',
] as const;

const CENTRE = 'the mass centre, with its speed and turning,';

/** What catches what is beyond the soles. */
function stepWords(r: Extract<EndingReason, { kind: 'beyondToes' | 'behindHeels' }>, n: NumberWords): string {
  if (r.count === undefined) return 'no step reaches that far';
  if (r.count > 1) return `that would take ${r.count === 2 ? 'two' : 'three'} steps`;
  return `that would take a step of ${r.isForeseen ? 'at least ' : ''}${n.centimetres(r.step)}`;
}

export function wordReason(r: EndingReason, n: NumberWords = PLAIN_NUMBERS): string {
  switch (r.kind) {
    case 'overBase':
      return `${CENTRE} stays over the soles, ${n.centimetres(r.margin)} inside`;
    case 'beyondToes':
    case 'behindHeels': {
      const over = `the soles over the ${r.kind === 'beyondToes' ? 'toes' : 'heels'}`;
      const leaves = r.isForeseen ? `would leave ${over}, foreseen` : `leaves ${over}`;
      return `${CENTRE} ${leaves} after ${n.seconds(r.t)}: ${stepWords(r, n)}`;
    }
    case 'part':
      return `${r.part} on the mat after ${n.seconds(r.t)}`;
    case 'hipsBelowKnees':
      return `hips ${n.centimetres(r.by)} below the knees on the way`;
    case 'leftSurface':
      return `both feet ${n.centimetres(r.height)} off the surface, down again ${n.centimetres(Math.abs(r.moved))} ${r.moved < 0 ? 'further back' : 'further forward'}`;
    case 'turnsFast':
      return `it turns with ${n.momentum(r.turning)} at touchdown; endings are judged up to ${n.momentum(r.limit)} for this body, the impact alone is run`;
    case 'timeIsUp':
      return `neither still nor stepping after ${n.seconds(r.t)}`;
  }
}
