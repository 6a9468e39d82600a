/** What is said where the mass stays: height, sex and shapes travel, so a moment, a momentum, a torque or an energy would give the mass away. */
import { detailOf, titleOf } from '../../app/say/caution-words.ts';
import type { FlightCaution } from '../../engine/result.ts';
import { handTexts as t } from './words.ts';

/** Units in metric and imperial that hold a mass or a force; J/kg and body weights do not. */
const TELLS_MASS = /\d[ \u00a0\u202f]?(?:kg|lb|slug|N\b|kN|J(?!\/)\b|ft·lbf)/;

export const tellsMass = (text: string): boolean => TELLS_MASS.test(text);

/** A caution as it may go; `hasMass`: the mass goes too. */
export function cautionToGo(one: FlightCaution, hasMass: boolean): string {
  const parts = [titleOf(one), detailOf(one)].filter(Boolean);
  const kept = hasMass ? parts : parts.filter((text) => !tellsMass(text));
  return kept.length > 0 ? kept.join(' ') : t.momentumBeyond;
}
