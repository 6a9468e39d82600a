/** A caution in one or two sentences: what is asked for, then what it was compared with. */
import { contactCautionDetail, contactCautionTitle } from '../../../sim/words/contact-words.ts';
import type { FlightCaution } from '../../engine/result.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { texts } from '../words.ts';
import { wordFirstPart, wordPart } from './body-words.ts';

export const wordCaution = (one: FlightCaution): string => [titleOf(one), detailOf(one)].filter(Boolean).join(' ');

export function titleOf(one: FlightCaution): string {
  if (one.kind === 'takeoff') return contactCautionTitle(one.caution);
  if (one.kind !== 'overlap') return one.title;
  return texts.caution.overlap(
    wordFirstPart(one.limb),
    wordPart(one.through),
    formatNumber(one.t, 2),
    formatNumber(one.deepMm, 0),
  );
}

export function detailOf(one: FlightCaution): string {
  if (one.kind === 'takeoff') return contactCautionDetail(one.caution);
  return one.kind === 'overlap' ? '' : one.detail;
}
