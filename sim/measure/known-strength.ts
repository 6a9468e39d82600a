/**
 * What joints are compared with: for each hinge the strength of its action at its angle and speed, and from where on a flight is
 * warned. Ages without a measured strength are not compared. Reasons: docs/decisions/0021-strength.md.
 */
import type { ActionStrength } from '../body/action-strength.ts';
import type { Body } from '../body/body.ts';
import type { Frames } from './frames.ts';
import { OPEN } from './torque-loads.ts';

/** Times the known strength: the one measured elite gymnast lies at 1.0 (hip) to 1.6 (knee) times active adults. */
export const TORQUE_WARNED = 1.3;
/** Of more than so many times what is known nothing is said but that: where next to no strength is left, the speed says it. */
export const MOST_TIMES = 3;
/** Times the known speed. */
const SPEED_WARNED = 1.2;
/** Years: measured at 18 to 25; held to 40, from memory. */
const KNOWN_AGES = [18, 40] as const;

/** Without a stated age an adult is taken. A tree has no strengths. */
export function isCompared({ age, neutralHuman }: Body): boolean {
  return neutralHuman && (age === undefined || (age >= KNOWN_AGES[0] && age <= KNOWN_AGES[1]));
}

export interface HingeStrength {
  /** index into Body.angles */
  readonly angle: number;
  readonly strength?: readonly [ActionStrength, ActionStrength];
  /** a shoulder's plane and turn share one axis near its poles: the speeds of sweep and spin follow from both */
  readonly shoulder?: { readonly part: 'plane' | 'turn'; readonly elevation: number; readonly planeHinge: number };
}

const known = new WeakMap<Body, readonly HingeStrength[]>();

/** By hinge, in the order of the columns of torques. */
export function strengthOfHinges(body: Body): readonly HingeStrength[] {
  const found = known.get(body);
  if (found) return found;
  const angleOf = body.segments.flatMap((s) => s.hinges.map((h) => h.terms[0].angle));
  const made = angleOf.map((angle): HingeStrength => {
    const { strength } = body.angles[angle];
    const shoulder = body.shoulders.find((s) => s.plane === angle || s.turn === angle);
    return {
      angle,
      ...(strength ? { strength } : {}),
      ...(shoulder
        ? {
            shoulder: {
              part: shoulder.plane === angle ? 'plane' : 'turn',
              elevation: shoulder.elevation,
              planeHinge: angleOf.indexOf(shoulder.plane),
            },
          }
        : {}),
    };
  });
  known.set(body, made);
  return made;
}

/** What the muscles of a hinge feel as its rate: of an arm's sweep and spin, not of one coordinate at a pole. rad/s */
export function rateOf(
  h: HingeStrength,
  k: number,
  { angles, qd }: Pick<Frames, 'angles' | 'qd'>,
  a0: number,
  q0: number,
): number {
  const { shoulder } = h;
  if (!shoulder) return qd[q0 + k];
  const elevation = angles[a0 + shoulder.elevation];
  if (shoulder.part === 'plane') return qd[q0 + k] * Math.abs(Math.sin(elevation));
  return qd[q0 + k] + Math.cos(elevation) * qd[q0 + shoulder.planeHinge];
}

/** rad/s that is known of an angle turning at `rate`; infinite for a tree. */
export function knownSpeed(body: Body, angle: number, rate: number): number {
  return body.angles[angle].strength?.[rate >= 0 ? 0 : 1].knownSpeed ?? Number.POSITIVE_INFINITY;
}

/** rad/s from which on a speed is warned of. */
export const warnedSpeed = (known: number): number => SPEED_WARNED * known;

/** N m from which on a torque is warned of, where `most` is known. */
export const warnedTorque = (s: ActionStrength, most: number): number =>
  Math.max(TORQUE_WARNED * most, most + OPEN * s.still);
