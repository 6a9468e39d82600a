/** Why the legs after one are not flown, as a sentence. */
import type { ChainStop } from '../../../sim/index.ts';
import { airTexts } from './air-texts.ts';

const t = airTexts.stops;

export const wordStop = (stop: ChainStop): string =>
  stop.kind === 'otherPart' ? t.otherPart(stop.part, stop.wanted) : t[stop.kind];
