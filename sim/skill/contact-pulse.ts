/**
 * How the force of a contact rises and falls: a shape p(s) over s = 0 to 1 with mean 1, its integral P and the integral Q of that. A force J p / T along one axis then
 * gives the speed J P / m and the way J T Q / m in closed form. Which shape a real contact has is not known from its ends: it is assumed, and the peak and the way
 * depend on it.
 */
import type { PulseName } from './start-spec.ts';

export interface Pulse {
  /** over its mean */
  readonly at: (s: number) => number;
  /** share of the impulse given by s: 0 to 1 */
  readonly given: (s: number) => number;
  readonly moved: (s: number) => number;
  readonly peak: number;
}

const { PI, sin, cos } = Math;

const HALF_SINE: Pulse = {
  at: (s) => (PI / 2) * sin(PI * s),
  given: (s) => (1 - cos(PI * s)) / 2,
  moved: (s) => s / 2 - sin(PI * s) / (2 * PI),
  peak: PI / 2,
};

const FLAT: Pulse = { at: () => 1, given: (s) => s, moved: (s) => (s * s) / 2, peak: 1 };

/** 12 s (1 - s)^2: highest a third of the way. */
const EARLY: Pulse = {
  at: (s) => 12 * s * (1 - s) ** 2,
  given: (s) => s * s * (6 - s * (8 - 3 * s)),
  moved: (s) => s ** 3 * (2 - s * (2 - 0.6 * s)),
  peak: 16 / 9,
};

/** EARLY run backward. */
const LATE: Pulse = {
  at: (s) => 12 * s * s * (1 - s),
  given: (s) => s ** 3 * (4 - 3 * s),
  moved: (s) => s ** 4 * (1 - 0.6 * s),
  peak: 16 / 9,
};

export const PULSES: Readonly<Record<PulseName, Pulse>> = { halfSine: HALF_SINE, early: EARLY, late: LATE, flat: FLAT };

/** 1 + sum a_k cos(2 pi k s), a_1 first: even about the middle, where it is highest. */
function cosinePulse(a: readonly number[]): Pulse {
  const sum = (term: (a: number, k: number) => number): number => a.reduce((all, x, i) => all + term(x, i + 1), 0);
  return {
    at: (s) => 1 + sum((x, k) => x * cos(2 * PI * k * s)),
    given: (s) => s + sum((x, k) => (x * sin(2 * PI * k * s)) / (2 * PI * k)),
    moved: (s) => (s * s) / 2 + sum((x, k) => (x * (1 - cos(2 * PI * k * s))) / (2 * PI * k) ** 2),
    peak: 1 + sum((x, k) => x * (k % 2 ? -1 : 1)),
  };
}

/** Of a springboard: twice the mean upward, 2 sin^2; three times along, 3/8 of sin^4 and 5/8 of sin^6, each of mean 1. Factors: contact-ranges.ts. */
export const BOARD_PULSES = { up: cosinePulse([-1]), along: cosinePulse([-1.4375, 0.5, -0.0625]) } as const;

/** Of a linear spring under a weight (contact-bed.ts) that turns through 2 `half` rad of its own period: half a turn and what the weight adds. */
export function springPulse(half: number): Pulse {
  const c = cos(half);
  const N = sin(half) / half - c;
  return {
    at: (s) => (cos(half * (2 * s - 1)) - c) / N,
    given: (s) => ((sin(half * (2 * s - 1)) + sin(half)) / (2 * half) - s * c) / N,
    moved: (s) =>
      ((c - cos(half * (2 * s - 1))) / (4 * half * half) + (s * sin(half)) / (2 * half) - (s * s * c) / 2) / N,
    peak: (1 - c) / N,
  };
}
