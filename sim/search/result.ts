/**
 * A result: a named number that a flight comes to. Counts are signed in the sense of the search (the target's or the
 * skill's own direction is +), so that maps and differences stay smooth through zero. SI, radians, revolutions.
 */
import { REV } from '../math/angles.ts';
import { unknownName } from '../math/field-error.ts';
import type { Outcome } from './evaluate.ts';

export type ResultUnit = 'rev' | 'rad' | 's' | 'm' | 'mPerS' | 'kgM2PerS';

export interface Result {
  readonly id: string;
  readonly label: string;
  readonly unit: ResultUnit;
  /** NaN where it is not defined */
  get(outcome: Outcome): number;
}

const catchOf =
  (name: keyof NonNullable<Outcome['catch']>): Result['get'] =>
  (outcome) =>
    outcome.catch?.[name] ?? Number.NaN;

export const RESULTS: readonly Result[] = [
  {
    id: 'somersaults',
    label: 'somersaults',
    unit: 'rev',
    get: ({ end, sense }) => (sense.somersault * (end.somersault - end.somersault0)) / REV,
  },
  {
    id: 'twists',
    label: 'twists',
    unit: 'rev',
    get: ({ end, sense }) => (sense.twist * (end.twist - end.twist0)) / REV,
  },
  ...[1, 2, 3].map(
    (n): Result => ({
      id: `twistsAfter.${n}`,
      label: `twists when somersault ${n} is done`,
      unit: 'rev',
      get: ({ end, sense }) =>
        end.isUndefined ? Number.NaN : (sense.twist * (end.twistAtTurns[n - 1] ?? Number.NaN)) / REV,
    }),
  ),
  { id: 'tilt', label: 'tilt at the end, head to the right +', unit: 'rad', get: ({ end }) => end.tilt },
  {
    id: 'short',
    label: 'short of the wanted landing +, past -',
    unit: 'rad',
    get: ({ end, sense, wanted }) => sense.somersault * (wanted - end.somersault),
  },
  {
    id: 'lean',
    label: 'lean from upright at the end, backward as the athlete faces +',
    unit: 'rad',
    get: ({ end }) =>
      (Math.cos(end.twist) < 0 ? -1 : 1) * Math.atan2(Math.sin(end.somersault), Math.cos(end.somersault)),
  },
  {
    id: 'reach',
    label: 'where the forces of the landing would have to pass, ahead of the middle of the soles +',
    unit: 'm',
    get: ({ reach }) => reach() ?? Number.NaN,
  },
  {
    id: 'greatestTilt',
    label: 'greatest tilt to either side',
    unit: 'rad',
    get: ({ end }) => (end.isUndefined ? Number.NaN : end.greatestTilt),
  },
  { id: 'catch.gap', label: 'farther hand from the rail at its nearest', unit: 'm', get: catchOf('gap') },
  {
    id: 'catch.closing',
    label: 'speed of the hands along the arms there, towards the rail +',
    unit: 'mPerS',
    get: catchOf('closing'),
  },
  { id: 'catch.time', label: 'time of the catch, or of the nearest', unit: 's', get: catchOf('time') },
  { id: 'airTime', label: 'time in the air', unit: 's', get: ({ end }) => end.duration },
  { id: 'height', label: 'highest place of the mass centre', unit: 'm', get: ({ height }) => height },
  {
    id: 'momentum',
    label: 'angular momentum',
    unit: 'kgM2PerS',
    get: ({ h_Scm_W: h }) => Math.hypot(h[0], h[1], h[2]),
  },
  ...['x', 'y', 'z'].map(
    (axis, k): Result => ({
      id: `h.${axis}`,
      label: ['momentum about the front-back axis', 'momentum about the vertical', 'somersault momentum'][k],
      unit: 'kgM2PerS',
      get: ({ h_Scm_W }) => h_Scm_W[k],
    }),
  ),
];

/** A result by its id. Throws a FieldError that lists those there are. */
export function findResult(id: string): Result {
  const found = RESULTS.find((r) => r.id === id);
  if (found) return found;
  throw unknownName(
    'result',
    id,
    RESULTS.map((r) => r.id),
    'a result of a flight',
  );
}
