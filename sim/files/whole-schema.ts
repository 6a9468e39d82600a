/** The parts of a skill file before and after the flight as valibot schemas. */
import * as v from 'valibot';
import { key, listOf, one, triple, within } from './schema-parts.ts';

const jointName = one('shoulder', 'hip', 'knee', 'ankle');
const velocity = v.strictObject({
  along: within(-15, 15, 'm/s'),
  up: within(-20, 20, 'm/s'),
  across: v.optional(within(-15, 15, 'm/s')),
});
const swingKeys = listOf(
  v.strictObject({
    joint: jointName,
    atS: v.optional(within(0, 60, 's')),
    atDeg: v.optional(within(-3600, 3600, 'deg')),
    deg: key,
    kind: v.optional(one('stop', 'pass')),
  }),
  200,
);
export const swingSchema = v.strictObject({
  kind: v.literal('swing', '"swing"'),
  rail: one('highBar', 'unevenHigh', 'unevenLow'),
  sense: one('backward', 'forward'),
  start: v.union(
    [
      v.strictObject({ handstandNudgeDegPerS: within(0.1, 280, 'deg/s') }),
      v.strictObject({ castDeg: within(-720, 720, 'deg') }),
      v.strictObject({ angleDeg: within(-720, 720, 'deg'), rateDegPerS: within(-1000, 1000, 'deg/s') }),
    ],
    'exactly one of handstandNudgeDegPerS (0.1 to 280), castDeg (-720 to 720), angleDeg with rateDegPerS',
  ),
  moves: v.strictObject({
    over: one('time', 'angle'),
    rounds: v.optional(within(1, 20, 'rounds')),
    periodS: v.optional(within(0.1, 60, 's')),
    keys: swingKeys,
    last: v.optional(swingKeys),
  }),
  release: v.union(
    [v.strictObject({ atDeg: within(-3600, 3600, 'deg') }), v.strictObject({ atS: within(0.001, 20, 's') })],
    'atDeg (swing angle, -3600 to 3600) or atS (0.001 to 20)',
  ),
  releaseLateS: v.optional(within(-0.5, 0.5, 's')),
  lateHand: v.optional(v.strictObject({ hand: one('left', 'right'), lateS: within(0, 0.1, 's') })),
  durationS: within(0.01, 20, 's'),
  strength: v.optional(within(0.1, 10, '')),
});
export const takeoffContactSchema = v.strictObject({
  kind: v.literal('contact', '"contact"'),
  place: one('floor', 'springboard', 'vaultTable', 'trampoline', 'divingBoard'),
  timeS: v.optional(within(0.005, 2, 's')),
  frictionCoefficient: v.optional(within(0, 3, '')),
  massCentreOverSurfaceM: v.optional(within(0, 3, 'm')),
  velocityMPerS: velocity,
  momentumKgM2PerS: v.optional(triple(-1000, 1000, 'kg m2/s')),
  given: v.optional(
    v.strictObject({
      meanBodyWeights: within(0, 50, 'body weights'),
      leanDeg: within(-90, 90, 'deg'),
      acrossBodyWeights: v.optional(within(-10, 10, 'body weights')),
      placeM: v.strictObject({ along: within(-2, 2, 'm'), across: v.optional(within(-2, 2, 'm')) }),
      freeTurnKgM2PerS: v.optional(within(-100, 100, 'kg m2/s')),
    }),
  ),
});
export const arrivalSchema = v.strictObject({
  mat: v.union(
    [
      one('competitionMat', 'withSoftLayer', 'floor', 'pit'),
      v.strictObject({
        thicknessM: within(0.01, 5, 'm'),
        stiffnessKNPerM: within(1, 1000, 'kN/m'),
        dampingSPerM: within(0, 5, 's/m'),
        friction: within(0, 3, ''),
      }),
    ],
    'competitionMat, withSoftLayer, floor, pit, or a mat of its own (thicknessM, stiffnessKNPerM, dampingSPerM, friction)',
  ),
  legStiffness: v.optional(within(0.1, 5, '')),
  effort: v.optional(within(0.2, 1, '')),
  eccentricFactor: v.optional(within(1, 2, '')),
  reflexDelayS: v.optional(within(0, 0.5, 's')),
  kneeDeg: v.optional(within(0, 143, 'deg')),
  keys: v.optional(listOf(v.strictObject({ s: within(0, 10, 's'), joint: jointName, deg: key }), 200)),
  durationS: v.optional(within(0.05, 3, 's')),
});
