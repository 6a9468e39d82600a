/** A phase by name, from long to short: what fits is shown. */
import type { PhaseSpan } from '../../jobs/kinds/whole-data.ts';
import { airTexts as t } from './air-texts.ts';

export function wordPhase({ kind, on, by }: PhaseSpan): readonly string[] {
  if (kind === 'contact') {
    const where = on ? t.where[on] : t.phases.contact;
    return [by ? `${where}, ${t.limbs[by]}` : where, where];
  }
  if (kind === 'flight') return [t.phases.flight, t.flightShort];
  return kind === 'swing' ? [t.phases.swing, t.limbs.hands] : [t.phases[kind]];
}
