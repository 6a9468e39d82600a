/** How sensitive a result is, in the units people type. Fields: docs/command-line.md. */
import { DEG, REV } from '../math/angles.ts';
import type { Sensitivity } from '../skill/conditioning.ts';

const TO = {
  takeoffTilt: { unit: 'deg', one: 1 / DEG },
  momentum: { unit: '%', one: 0.01 },
  letGo: { unit: 'ms', one: 1e-3 },
  lateHand: { unit: 'ms', one: 1e-3 },
  move: { unit: 'ms', one: 1e-3 },
  moves: { unit: 'ms', one: 1e-3 },
} as const;

export const conditioningJson = (list: readonly Sensitivity[]): object[] =>
  list.map(({ to, of, value, step, bend, atError, weight, move }) => {
    const { unit, one } = TO[to];
    return {
      to,
      of,
      value: of === 'twist' ? (value * one) / REV : value * one * DEG,
      unit: `${of === 'twist' ? 'twists' : 'deg'}/${unit}`,
      halfStep: step / one,
      fullStepGivesMore: bend,
      ...(atError === undefined ? {} : { usualErrorGives: of === 'twist' ? atError / REV : atError * DEG }),
      usualErrors: weight,
      ...(move ? { moveAtS: move.t, moves: move.words } : {}),
    };
  });
