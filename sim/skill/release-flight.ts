/** The flight of a skill let go of its swing some time after (or before) it is: the joints' plan counts from the release, whenever it comes. */
import type { Swing, SwingState } from '../contact/swing.ts';
import { NoTouchdownError } from '../flight/fly.ts';
import { NoAgreementError } from './agreed-flight.ts';
import { type Flown, flySkill } from './flyer.ts';
import { CARRIED_WITHIN, type LaunchedSkill, relaunch } from './launch.ts';
import { releaseTakeoff } from './release-takeoff.ts';

interface ReleasedFlight {
  readonly state: SwingState;
  readonly launched: LaunchedSkill;
  readonly flight: Flown;
}

/** undefined: no flight from there (no touchdown on the surface). */
export function flyReleased(
  skill: LaunchedSkill,
  swing: Swing,
  late: number,
  tolerance: number,
): ReleasedFlight | undefined {
  const state = swing.stateAt(late);
  const takeoff = releaseTakeoff(skill.body, state);
  const carried = { angles: state.angles, rates: state.rates, within: CARRIED_WITHIN };
  const launched = relaunch(skill, { takeoff, carried });
  try {
    return { state, launched, flight: flySkill(launched, { tolerance }) };
  } catch (error) {
    if (!(error instanceof NoTouchdownError) && !(error instanceof NoAgreementError)) throw error;
    return undefined;
  }
}
