/**
 * What arms, hips and knees do in a flight, read from the named angles of its frames: moves and the holds between them, each with the
 * posture at its two ends. Arms are described in the athlete's own directions: up is past the head, whichever way the body turns.
 */
import type { Body } from '../body/body.ts';
import { DEG } from '../math/angles.ts';
import type { Frames } from './frames.ts';

export type ArmPlace = 'up' | 'high' | 'level' | 'front' | 'low' | 'down' | 'in';
export type LegShape = 'tuck' | 'openTuck' | 'pike' | 'straddle' | 'split' | 'straight' | 'bent';

interface ArmPosture {
  readonly place: ArmPlace;
  /** deg: 0 hanging, 180 past the head; in front of the body; elbow */
  readonly elevation: number;
  readonly plane: number;
  readonly elbow: number;
}

export interface Posture {
  readonly left: ArmPosture;
  readonly right: ArmPosture;
  readonly legs: LegShape;
  /** deg, of both sides */
  readonly hip: number;
  readonly knee: number;
}

export interface LimbSpan {
  readonly kind: 'move' | 'hold';
  /** s from take-off */
  readonly from: number;
  readonly to: number;
  readonly start: Posture;
  readonly end: Posture;
  /** deg, of all that moves together: the largest are the skill */
  readonly size: number;
  /** the arm that is half way clearly before the other */
  readonly leads?: 'left' | 'right';
}

/** Faster than this, deg/s, a limb moves (our judgement: a hold drifts by less). */
const MOVES = 45;
/** Less than this in all is none, deg; a turn back by more than this parts a move in two. */
const LEAST = 20;
const BACK = 30;
/** What is shorter is no hold, s; an arm that is ahead by less does not lead. */
const SHORTEST = 0.05;
const AHEAD = 0.04;
/** Legs that swing to one side, deg of the left beyond the right: a circle of them, which no word here names. */
const ROUND = 30;

interface Channels {
  readonly t: Float64Array;
  /** deg; of them those that part a move in two where they turn back */
  readonly values: readonly Float64Array[];
  readonly parting: readonly Float64Array[];
  /** elevation, left and right */
  readonly arms: readonly Float64Array[];
  readonly at: (row: number) => Posture;
}

/** When each limb moves in a flight, s, read from its frames. */
export function calcLimbSpans(body: Body, frames: Frames): LimbSpan[] {
  const channels = readChannels(body, frames);
  if (!channels) return [];
  const { t, values, parting, at } = channels;
  const last = frames.n - 1;
  const isMoving = Array.from({ length: frames.n }, (_, i) => {
    const [a, b] = [Math.max(0, i - 1), Math.min(last, i + 1)];
    return values.some((v) => Math.abs(v[b] - v[a]) / (t[b] - t[a]) > MOVES);
  });
  const sizeOf = (a: number, b: number): number => values.reduce((sum, v) => sum + Math.abs(v[b] - v[a]), 0);
  const moves = runsOf(isMoving)
    .flatMap(([a, b]) => partAt(parting, a, b))
    .filter(([a, b]) => sizeOf(a, b) >= LEAST);
  const spans: LimbSpan[] = [];
  const put = (kind: LimbSpan['kind'], a: number, b: number): void => {
    const leads = kind === 'move' ? findLead(channels, a, b) : undefined;
    const own = { kind, from: t[a], to: t[b], start: at(a), end: at(b), size: sizeOf(a, b) };
    spans.push(leads ? { ...own, leads } : own);
  };
  let from = 0;
  for (const [a, b] of moves) {
    if (t[a] - t[from] >= SHORTEST) put('hold', from, a);
    put('move', a, b);
    from = b;
  }
  if (t[last] - t[from] >= SHORTEST) put('hold', from, last);
  return spans;
}

function readChannels(body: Body, frames: Frames): Channels | undefined {
  const width = body.angles.length;
  const column = (name: string): Float64Array | undefined => {
    const k = body.angles.findIndex((angle) => angle.name === name);
    return k < 0 ? undefined : Float64Array.from({ length: frames.n }, (_, i) => frames.angles[i * width + k] * DEG);
  };
  const names = ['shoulderElevation', 'shoulderPlane', 'elbowFlexion', 'hipFlexion', 'kneeFlexion', 'hipAbduction'];
  const columns = names.flatMap((name) => [column(`${name}L`), column(`${name}R`)]);
  if (columns.some((c) => c === undefined)) return undefined;
  const [eL, eR, pL, pR, fL, fR, hL, hR, kL, kR, aL, aR] = columns as Float64Array[];
  const mean = (a: Float64Array, b: Float64Array): Float64Array => a.map((v, i) => (v + b[i]) / 2);
  // near hanging and near the head a turn of the plane moves nothing
  const across = (p: Float64Array, e: Float64Array): Float64Array =>
    p.map((v, i) => v * Math.abs(Math.sin(e[i] / DEG)));
  const hip = mean(hL, hR);
  const knee = mean(kL, kR);
  const apart = mean(aL, aR);
  return {
    t: frames.t,
    values: [eL, eR, across(pL, eL), across(pR, eR), fL, fR, hip, knee, apart],
    arms: [eL, eR],
    parting: [eL, eR, fL, fR, hip, knee],
    at: (i) => ({
      left: armAt(eL[i], pL[i], fL[i]),
      right: armAt(eR[i], pR[i], fR[i]),
      legs: Math.abs(aL[i] - aR[i]) > ROUND ? 'bent' : legsAt(hip[i], knee[i], apart[i], hL[i] - hR[i]),
      hip: hip[i],
      knee: knee[i],
    }),
  };
}

function armAt(elevation: number, plane: number, elbow: number): ArmPosture {
  const place = ((): ArmPlace => {
    if (elbow > 60 && plane > 25 && elevation < 100) return 'in';
    if (elevation >= 150) return 'up';
    if (elevation >= 115) return 'high';
    if (elevation < 22) return 'down';
    if (elevation < 55) return 'low';
    return plane > 50 ? 'front' : 'level';
  })();
  return { place, elevation, plane, elbow };
}

function legsAt(hip: number, knee: number, apart: number, between: number): LegShape {
  if (Math.abs(between) > 50) return 'split';
  if (hip >= 65 && knee >= 55) return hip >= 100 && knee >= 95 ? 'tuck' : 'openTuck';
  if (hip >= 60 && knee < 40) return apart > 22 ? 'straddle' : 'pike';
  return hip < 38 && knee < 38 ? 'straight' : 'bent';
}

function findLead({ t, arms }: Channels, a: number, b: number): 'left' | 'right' | undefined {
  const [left, right] = arms.map((v) => {
    const by = v[b] - v[a];
    if (Math.abs(by) < LEAST) return Number.NaN;
    for (let i = a; i <= b; i++) if ((v[i] - v[a]) / by >= 0.5) return t[i];
    return Number.NaN;
  });
  return left < right - AHEAD ? 'left' : right < left - AHEAD ? 'right' : undefined;
}

/** Runs of rows that are true, both ends included. */
function runsOf(rows: readonly boolean[]): [number, number][] {
  const runs: [number, number][] = [];
  rows.forEach((is, i) => {
    if (!is) return;
    const run = runs[runs.length - 1];
    if (run && run[1] === i - 1) run[1] = i;
    else runs.push([i, i]);
  });
  return runs;
}

/** In two where the limb that moves most turns back. */
function partAt(values: readonly Float64Array[], a: number, b: number): [number, number][] {
  let at = -1;
  let most = BACK;
  for (const v of values)
    for (let i = a + 1; i < b; i++) {
      const [up, down] = [v[i] - v[a], v[i] - v[b]];
      const turn = up * down > 0 ? Math.min(Math.abs(up), Math.abs(down)) : 0;
      if (turn > most) {
        most = turn;
        at = i;
      }
    }
  return at < 0 ? [[a, b]] : [...partAt(values, a, at), ...partAt(values, at, b)];
}
