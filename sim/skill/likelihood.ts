/** How often the landing of a whole skill ends which way over the stated ranges of what is not known of it (contact/landing-ranges.ts). */
import type { EndingKind } from '../contact/ending.ts';
import type { LandingRange } from '../contact/landing-ranges.ts';
import type { WholeContact } from './contact-room.ts';
import type { Whole } from './whole.ts';

export interface Likelihood {
  readonly samples: number;
  readonly tenths: readonly { readonly kind: EndingKind; readonly tenths: number }[];
  readonly ranges: readonly LandingRange[];
}

/** A landing at a step; undefined where none is judged: nothing was landed on, it is not computed, or there is a bed, which throws the athlete up again or is taken not to give. */
export function* likelihoodSteps(
  { skill, landing }: Pick<Whole, 'skill' | 'landing'>,
  { landSample, tenthsOf, LANDING_RANGES: ranges, LANDING_SAMPLES: samples }: WholeContact,
): Generator<undefined, Likelihood | undefined> {
  if (landing?.kind !== 'landed' || skill.end.surface?.kind === 'trampoline') return undefined;
  const { entry, spec, ending } = landing.run;
  if (ending.kind === 'tooFast') return undefined;
  const kinds: EndingKind[] = [];
  for (let i = 0; i < samples; i++) {
    kinds.push(landSample(entry, spec, i));
    yield;
  }
  return { samples, tenths: tenthsOf(kinds), ranges };
}

/** In how many of ten of the stated ranges a landing that was run ends so; nothing where none was run. */
export function calcLikelihood(whole: Pick<Whole, 'skill' | 'landing'>, contact: WholeContact): Likelihood | undefined {
  const steps = likelihoodSteps(whole, contact);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
