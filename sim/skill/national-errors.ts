/**
 * What an athlete of national level is usually off by, one standard deviation: read by studies (search/usual-error.ts, where each has its source)
 * and by what is said of how sensitive a result is. SI, radians; momentum as a share.
 */
import { RAD } from '../math/angles.ts';

export const NATIONAL_ERRORS = { takeoffTilt: 0.25 * RAD, momentum: 0.03, timing: 0.012, lateHand: 0.005 } as const;
