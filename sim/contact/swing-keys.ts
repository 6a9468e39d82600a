/**
 * What the joints of a swing are asked to do: keys over time or over swing angle, joined as in a flight's schedule
 * (schedule/track.ts: minimum jerk between stops, no overshoot through passes).
 *
 * The swing angle is the direction from the hands to the mass centre: 0 hanging under the bar, counted on in the sense of
 * the swing; a swing from the handstand starts at -180 deg and is there again at 180. A round of keys may be repeated;
 * the last round may have keys of its own.
 */
import { REV } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { makeHermiteTrack } from '../schedule/hermite-track.ts';
import { COEFS, type Knot, makeTrack, type Track } from '../schedule/track.ts';
import type { PlanarJointName } from './chain.ts';
import { SwingMovesError } from './swing-moves-error.ts';

export interface SwingKey {
  /** s after the start, or swing angle in rad */
  readonly at: number;
  readonly value: number;
  readonly kind: 'stop' | 'pass';
}
type SwingKeys = Readonly<Partial<Record<PlanarJointName, readonly SwingKey[]>>>;

export interface SwingMoves {
  readonly over: 'time' | 'angle';
  readonly keys: SwingKeys;
  /** how many rounds in all; each is a turn (or `period` seconds) after the one before; default 1 */
  readonly rounds?: number;
  /** s; only over time with more than one round */
  readonly period?: number;
  /** keys of the last round in place of `keys`, by joint */
  readonly last?: SwingKeys;
}

/** Value, first and second derivative along time or angle of every chain joint. */
export interface MoveTable {
  readonly over: 'time' | 'angle';
  readonly tracks: readonly Track[];
  /** where the curves are only C2, ascending */
  readonly breaks: readonly number[];
  at(x: number, q: Float64Array, d: Float64Array, dd: Float64Array): void;
}

const MOST_ROUNDS = 20;

/** Angles and rates (along time or angle) that the joints have at `at`, led over to the moves within `over`. */
export interface CarriedJoints {
  readonly at: number;
  readonly over: number;
  readonly q: ArrayLike<number>;
  readonly d: ArrayLike<number>;
}

/** The moves with what is left of a former motion on top: the quintic by which a flight takes over its joints (skill/whole-carry.ts). */
export function carryMoves(moves: MoveTable, { at, over, q, d }: CarriedJoints): MoveTable {
  const n = moves.tracks.length;
  const f = (): Float64Array => new Float64Array(n);
  const [q0, d0, dd0] = [f(), f(), f()];
  moves.at(at, q0, d0, dd0);
  const left = moves.tracks.map((_, j) =>
    makeHermiteTrack([
      { t: at, y: q[j] - q0[j], d: d[j] - d0[j], dd: 0 },
      { t: at + over, y: 0, d: 0, dd: 0 },
    ]),
  );
  const own = [f(), f(), f()] as const;
  return {
    ...moves,
    breaks: [...new Set([...moves.breaks, at + over])].sort((a, b) => a - b),
    at(x, out, outD, outDD) {
      if (x < at - NEAREST)
        throw new SwingMovesError(
          'keys over swing angle need a swing that turns on from where the rail was caught (or key over time)',
        );
      moves.at(x, out, outD, outDD);
      readTracks(left, Math.max(x, at), ...own);
      for (let j = 0; j < n; j++) {
        out[j] += own[0][j];
        outD[j] += own[1][j];
        outDD[j] += own[2][j];
      }
    },
  };
}

export function compileMoves(joints: readonly PlanarJointName[], moves: SwingMoves): MoveTable {
  const rounds = moves.rounds ?? 1;
  if (!(Number.isInteger(rounds) && rounds >= 1 && rounds <= MOST_ROUNDS))
    throw new FieldError('swing.moves.rounds', rounds, `a whole number from 1 to ${MOST_ROUNDS}`);
  for (const [field, keys] of [
    ['keys', moves.keys],
    ['last', moves.last ?? {}],
  ] as const)
    for (const name of Object.keys(keys))
      if (!joints.some((j) => j === name))
        throw new FieldError(`swing.moves.${field}`, name, `a joint of this chain: ${joints.join(', ')}`);
  let turn = REV;
  if (moves.over === 'time' && rounds > 1) {
    if (!(moves.period && moves.period > 0 && moves.period <= 60))
      throw new FieldError('swing.moves.periodS', moves.period, 'a number above 0 and at most 60 s');
    turn = moves.period;
  }
  const tracks = joints.map((name) => makeTrack(knotsOf(name, moves, rounds, turn)));
  const breaks = [...new Set(tracks.flatMap((t) => t.breaks))].sort((a, b) => a - b);
  const cells = tracks.map(() => 0);
  return {
    over: moves.over,
    tracks,
    breaks,
    at(x, q, d, dd) {
      readTracks(tracks, x, q, d, dd, cells);
    },
  };
}

/** Value, first and second derivative of every track at x; `cells`: where each was read last. */
function readTracks(
  tracks: readonly Track[],
  x: number,
  q: Float64Array,
  d: Float64Array,
  dd: Float64Array,
  cells: number[] = tracks.map(() => 0),
): void {
  for (let j = 0; j < tracks.length; j++) {
    const { times, coefs, before, after } = tracks[j];
    const n = times.length;
    d[j] = dd[j] = 0;
    if (x < times[0]) q[j] = before;
    else if (x >= times[n - 1]) q[j] = after;
    else {
      let i = cells[j];
      if (!(x >= times[i] && x < times[i + 1])) {
        i = 0;
        while (times[i + 1] <= x) i++;
        cells[j] = i;
      }
      const s = x - times[i];
      let [v, v1, v2] = [0, 0, 0];
      for (let k = COEFS - 1; k >= 0; k--) {
        v2 = v2 * s + 2 * v1;
        v1 = v1 * s + v;
        v = v * s + coefs[i * COEFS + k];
      }
      q[j] = v;
      d[j] = v1;
      dd[j] = v2;
    }
  }
}

function knotsOf(name: PlanarJointName, moves: SwingMoves, rounds: number, turn: number): Knot[] {
  const knots: Knot[] = [];
  for (let r = 0; r < rounds; r++) {
    const own = (r === rounds - 1 ? moves.last?.[name] : undefined) ?? moves.keys[name] ?? [];
    own.forEach((k, i) => {
      const t = k.at + r * turn;
      const field = `swing.moves.keys.${name}[${i}]`;
      if (!Number.isFinite(k.value)) throw new FieldError(`${field}.value`, k.value, 'a finite number');
      if (!Number.isFinite(t)) throw new FieldError(`${field}.at`, k.at, 'a finite number');
      const former = knots[knots.length - 1];
      if (former && t <= former.t + NEAREST) {
        if (former.arrive === k.value) return;
        throw new SwingMovesError(
          `key ${i + 1} of the ${name} in round ${r + 1} does not come after the one before it; keys of one joint follow each other, and a round ends before the next begins`,
          { joint: name, key: i + 1, round: r + 1 },
        );
      }
      knots.push({ t, arrive: k.value, depart: k.value, stop: k.kind === 'stop' });
    });
  }
  return knots.length > 0 ? knots : [{ t: 0, arrive: 0, depart: 0, stop: true }];
}
/** Keys nearer than this (s or rad) are one. */
const NEAREST = 1e-9;
