/** Which shapes are closed, so that an athlete opens them: tuck, pike, wrap. Angles by name, rad. */

import { RAD } from './angles.ts';
import { own } from './own.ts';
import { withoutSide } from './side.ts';

/** Hips bent so far, or elbows (judgement). */
const CLOSED: Readonly<Record<string, number>> = { hipFlexion: 45 * RAD, elbowFlexion: 60 * RAD };

export const isClosedAngle = (name: string, angle: number): boolean =>
  angle >= (own(CLOSED, withoutSide(name)) ?? Number.POSITIVE_INFINITY);

/** What a move leaves: a closed shape that is opened, or one is gone into, or neither. */
export type Leaves = 'closed' | 'forClosed' | 'open';

export const leavesOf = (isFromClosed: boolean, isIntoClosed: boolean): Leaves =>
  isIntoClosed ? 'forClosed' : isFromClosed ? 'closed' : 'open';
