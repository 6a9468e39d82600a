/**
 * A skill that is to be held straight, with the hips' reflex at three delays, felt with noise, beside the open loop. None of
 * the shares is what an athlete lands: they are the range that the model's ignorance of the reflex leaves.
 */
import { RAD } from '../math/angles.ts';
import { type BalanceSpec, DEFAULT_BALANCE, type SensingNoise } from '../skill/balance.ts';
import { isHeldStraight } from '../skill/balance-growth.ts';
import { ownId } from './leg-id.ts';
import type { ShareAfter } from './margin-study.ts';
import type { StudyRequest } from './span.ts';

/** s; from memory: corrections in the air come 0.10 to 0.20 s late (Yeadon, chapter of 2018). */
export const REFLEX_DELAYS = [0.1, 0.15, 0.2] as const;
/** rad, rad/s; our judgement, not measured. Twice of both changes no share beyond the noise of counting (docs/balance.md). */
const NOISE: Omit<SensingNoise, 'seed'> = { twist: 2 * RAD, rate: 5 * RAD };
/** Tries behind each share. */
export const REFLEX_TRIES = 200;

/** The reflex at a delay (s) with its noise, as the range of it is flown with. */
export const rangeBalance = (delay: number, seed: number): BalanceSpec => ({
  ...DEFAULT_BALANCE,
  delay,
  noise: { ...NOISE, seed },
});

export interface ReflexShare {
  /** s */
  readonly delay: number;
  readonly share: ShareAfter;
}
export interface ReflexRange {
  readonly openLoop: ShareAfter;
  readonly reflex: readonly ReflexShare[];
  /** what is to be thought of them */
  readonly note: string;
}

/** Inputs whose errors set a straight body twisting. */
const TURNS = /^takeoff\.(tilt|twist|h\.[xy])$|^swing\.lateHand$/;

/** Whether an open loop says little of the skill: it is to be held straight, falls into a twist by itself, and is off to a side. */
export const needsReflexRange = (
  flight: Parameters<typeof isHeldStraight>[0],
  { spec, vary }: Pick<StudyRequest, 'spec' | 'vary'>,
): boolean => vary.some(({ input }) => TURNS.test(ownId(input))) && isHeldStraight(flight, spec.target);

const NOTE =
  'None of these is what an athlete lands: the body falls into a twist by itself, and how an athlete holds it is not known to the model. ' +
  `Delays from memory (0.10 to 0.20 s), felt with noise of ${Math.round(NOISE.twist / RAD)} deg of twist and ${Math.round(NOISE.rate / RAD)} deg/s of its rate (our judgement).`;

/** The shares with and without the reflex, with the note on what they are worth. */
export const makeReflexRange = (openLoop: ShareAfter, reflex: readonly ReflexShare[]): ReflexRange => ({
  openLoop,
  reflex,
  note: NOTE,
});
