/**
 * A first draft of a skill from its code: blocks and a take-off that really fly to the wanted somersaults, as near as a
 * short, bounded and repeatable search comes. It is a start for editing; `reached` and `falls` say what it came to.
 */

import type { Flight } from '../flight/flight.ts';
import { type FlightOptions, flySchedule } from '../flight/fly.ts';
import { RAD, REV } from '../math/angles.ts';
import { compileSchedule } from '../schedule/compile.ts';
import { buildSkill } from './build-skill.ts';
import {
  listStretches,
  type PlanTimes,
  type PlanValues,
  round,
  type Stretch,
  turnPhases,
  writeBlocks,
} from './draft-plan.ts';
import type { DraftSpec } from './draft-spec.ts';
import { type DraftTrack, readTrack, timeAt, valueAt } from './draft-track.ts';
import { tune } from './draft-tune.ts';
import { launch } from './launch.ts';
import type { AthleteSpec, NamedPose, SkillSpec } from './skill-spec.ts';

export interface Draft {
  readonly spec: SkillSpec;
  /** done, in revolutions, unsigned; tilt at the end in rad */
  readonly reached: {
    readonly somersaults: number;
    readonly twists: number;
    readonly tilt: number;
    readonly duration: number;
  };
  /** what the draft does not reach or keep, in words; empty when it does all the code asks */
  readonly falls: readonly string[];
  readonly flights: number;
}

interface DraftInput {
  readonly athlete: AthleteSpec;
  /** shapes by id, rad: those of SHAPES_NEEDED */
  readonly shapes: Readonly<Record<string, NamedPose>>;
  readonly gravity?: number;
  /** called after every flight of the search */
  readonly onFlight?: (flights: number) => void;
}

const DRAFT_CLOSE = { somersault: 5 * RAD, twist: 15 * RAD };
/** A bend held for less than this share of the flight is said (judgement). */
const BRIEF = 0.03;
/** A draft's tilt at landing beyond this is said. */
const TILTED = 10 * RAD;
const TUNING: FlightOptions = { tolerance: 1e-5 };
/** Rounds in which the plan's times follow the flight, before the values are tuned at fixed times. */
const FOLLOWS = 6;
/** Angular momentum in straight somersaults that a somersault needs, by shape; a start for the search (judgement). */
const NEED = { tuck: 0.55, pike: 0.75, straight: 1.1 };

export function draftSkill(draft: DraftSpec, input: DraftInput): Draft {
  const direction = draft.direction === 'backward' ? 1 : -1;
  const stretches = listStretches(draft);
  const runs = stretches.filter((s) => s.kind === 'twist');
  const start = takeoffOf(draft);
  const gravity = input.gravity ?? 9.81;
  const jump = draft.somersaults === 0;
  const spun = jump && draft.halfTwists[0] > 0;
  const turns = runs.reduce((sum, s) => sum + s.halfTwists, 0) / 2;
  let flights = 0;

  const specAt = (values: PlanValues, times: PlanTimes): SkillSpec => ({
    title: draft.title,
    athlete: input.athlete,
    gravity,
    start: {
      kind: 'stated',
      takeoff: {
        height: { of: 'lowestPoint', y: start.height },
        v_WScm_W: [start.along, start.up, 0],
        somersault: draft.takeoff === 'hands' ? Math.PI : 0,
        tilt: 0,
        twist: 0,
        momentum: spun
          ? { kind: 'rates', somersault: 0, tilt: 0, twist: round(values.momentum, 1e4) * REV }
          : { kind: 'straight', somersaults: direction * round(values.momentum, 1e4) },
      },
    },
    end: { kind: 'touchdown', surface: { kind: draft.surface, y: start.surface } },
    base: input.shapes.straight ?? {},
    ownShapes: {},
    blocks: writeBlocks(draft, jump ? jumpStretch(draft) : stretches, values, times, input.shapes),
    keys: [],
    samples: [],
    smoothing: { kind: 'gcv' },
    target: {
      somersaults: draft.somersaults,
      somersaultWord: jump ? '' : draft.direction,
      twists: turns,
      twistWord: turns === 0 ? '' : direction > 0 ? 'left' : 'right',
      landingAngle: withinHalf((draft.somersaults % 1) * direction + (draft.takeoff === 'hands' ? 0.5 : 0)) * REV,
    },
  });
  const fly = (values: PlanValues, times: PlanTimes, options: FlightOptions): Flight => {
    const skill = launch(buildSkill(specAt(values, times)));
    flights++;
    input.onFlight?.(flights);
    const schedule = compileSchedule(skill.body, skill.schedule, { apex: 0, touchdown: 0 });
    return flySchedule(skill.body, schedule, skill.takeoff, skill.end, skill.gravity, options);
  };
  const look = (values: PlanValues, times: PlanTimes): DraftTrack => readTrack(fly(values, times, TUNING), direction);

  // a start: everything even in time
  const T0 = start.duration;
  const values: PlanValues = {
    momentum: spun ? turns / T0 : jump ? 0 : needOf(draft, stretches),
    throws: runs.map((s) => Math.min(85, 30 + (20 * s.halfTwists) / Math.max(0.5, s.to - s.from)) * RAD),
    levels: runs.map((s) => Math.min(85, 30 + (20 * s.halfTwists) / Math.max(0.5, s.to - s.from)) * RAD),
  };
  const times = evenTimes(draft, stretches, T0);

  if (!jump)
    for (let i = 0; i < FOLLOWS; i++) {
      const track = look(values, times);
      const off = follow(draft, stretches, values, times, track);
      if (off < 0.01) break;
    }
  tune(values, (v) => residuals(draft, jump ? [] : stretches, look(v, times), spun ? turns : 0), jump);
  return report(draft, specAt(values, times), fly(values, times, {}), direction, turns, flights);
}

/** The same angle in revolutions, from -0.5 (left out) to 0.5. */
const withinHalf = (x: number): number => x - Math.ceil(x - 0.5);

const jumpStretch = (draft: DraftSpec): Stretch[] => [
  { from: 0, to: 0, kind: draft.shape === 'straight' ? 'straight' : 'bent', halfTwists: 0 },
];

function needOf(draft: DraftSpec, stretches: readonly Stretch[]): number {
  const need = stretches.reduce(
    (sum, s) => sum + (s.to - s.from) * (s.kind === 'bent' ? NEED[draft.shape] : NEED.straight),
    0,
  );
  return Math.max(0.05, need);
}

/** Take-off and height by surface and by how much there is to do (judgement): m, m/s, s. */
function takeoffOf(draft: DraftSpec): { height: number; surface: number; up: number; along: number; duration: number } {
  const { somersaults: n, surface } = draft;
  const sign = draft.travel === 'forward' ? 1 : -1;
  if (surface === 'trampoline') {
    const up = n < 1.5 ? 7.6 : n < 2.5 ? 8.6 : n < 3.5 ? 9.4 : 10.2;
    return { height: 1.15, surface: 1.15, up, along: 0.3 * sign, duration: (2 * up) / 9.81 };
  }
  const high = draft.takeoff === 'hands' || n > 2.5 || (n > 1.5 && draft.halfTwists[0] > 1);
  const height = high ? 10 : 3;
  const up = draft.takeoff === 'hands' ? 1.5 : high ? 4 : n > 1.5 || draft.halfTwists[0] > 0 ? 5.4 : 4.4;
  return { height, surface: 0, up, along: sign, duration: (up + Math.sqrt(up * up + 19.62 * height)) / 9.81 };
}

function evenTimes(draft: DraftSpec, stretches: readonly Stretch[], T: number): PlanTimes {
  const S = Math.max(draft.somersaults, 1e-6);
  const spans = stretches.map((s, i) => spanOf((s.from / S) * T, (s.to / S) * T, i, stretches, T));
  if (spans.length && draft.somersaults === 0) spans[0] = { from: 0, to: T };
  const turns = stretches.flatMap((s, i) =>
    s.kind === 'twist'
      ? [
          turnPhases(s.halfTwists).map(
            (p) => spans[i].from + 0.1 + (spans[i].to - spans[i].from - 0.2) * (p / (s.halfTwists / 2)),
          ),
        ]
      : [],
  );
  return { duration: T, spans, turns };
}

/** A twist is over some time before the body lands, and before it bends again. */
function spanOf(
  from: number,
  to: number,
  i: number,
  stretches: readonly Stretch[],
  T: number,
): { from: number; to: number } {
  const isLast = i === stretches.length - 1;
  const twist = stretches[i].kind === 'twist';
  const start = twist && i === 0 ? 0 : from;
  return { from: start, to: twist ? Math.min(isLast ? T - 0.28 : to - 0.06, T - 0.28) : isLast ? T : to };
}

/** Moves times and values towards what the flight shows; the largest relative change made. */
function follow(
  draft: DraftSpec,
  stretches: readonly Stretch[],
  values: PlanValues,
  times: PlanTimes,
  track: DraftTrack,
): number {
  const last = track.t.length - 1;
  const T = track.t[last];
  const done = Math.max(0.05, track.somersault[last] / REV);
  // somersaults as wanted, on the scale of those done
  const at = (s: number): number => timeAt(track, track.somersault, ((s * done) / draft.somersaults) * REV) ?? T;
  let off = Math.abs(done / draft.somersaults - 1);
  times.duration = T;
  let run = 0;
  stretches.forEach((s, i) => {
    const before = times.spans[i];
    const span = spanOf(s.from === 0 ? 0 : at(s.from), i === stretches.length - 1 ? T : at(s.to), i, stretches, T);
    off = Math.max(off, Math.abs(span.from - before.from), Math.abs(span.to - before.to));
    times.spans[i] = { from: (before.from + span.from) / 2, to: (before.to + span.to) / 2 };
    if (s.kind !== 'twist') return;
    const from = valueAt(track, track.twist, times.spans[i].from);
    const turned = (valueAt(track, track.twist, Math.min(T, times.spans[i].to + 0.1)) - from) / REV;
    const wanted = s.halfTwists / 2;
    const scale = Math.max(0.1, turned) / wanted;
    const { from: lo, to: hi } = times.spans[i];
    times.turns[run] = turnPhases(s.halfTwists).map((phase, k) => {
      const t = timeAt(track, track.twist, from + phase * scale * REV) ?? times.turns[run][k];
      const kept = Math.min(hi - 0.25 - 0.1 * (turnPhases(s.halfTwists).length - 1 - k), Math.max(lo + 0.3, t));
      off = Math.max(off, Math.abs(kept - times.turns[run][k]));
      return (times.turns[run][k] + kept) / 2;
    });
    const grow = Math.min(1.3, Math.max(0.75, (wanted / Math.max(0.1, turned)) ** 0.7));
    off = Math.max(off, Math.abs(grow - 1));
    values.throws[run] = clampArms(values.throws[run] * grow);
    values.levels[run] = clampArms(values.levels[run] * grow);
    run++;
  });
  values.momentum *= Math.min(1.5, Math.max(0.6, draft.somersaults / done));
  return off;
}

const clampArms = (a: number): number => Math.min(88 * RAD, Math.max(3 * RAD, a));

/**
 * Somersault, then for each twisting stretch the twist after it and the tilt left by it; rad, weighted. A straight body
 * that is left a little tilted goes on to twist, so the end of the flight counts as well. A spun jump has its turns alone.
 */
function residuals(draft: DraftSpec, stretches: readonly Stretch[], track: DraftTrack, spunTurns: number): number[] {
  const last = track.t.length - 1;
  if (spunTurns > 0) return [track.twist[last] - spunTurns * REV];
  const out = [track.somersault[last] - draft.somersaults * REV];
  let total = 0;
  stretches.forEach((s, i) => {
    if (s.kind !== 'twist') return;
    total += s.halfTwists * Math.PI;
    const end = i === stretches.length - 1;
    const t = end ? track.t[last] : (timeAt(track, track.somersault, s.to * REV) ?? track.t[last]);
    out.push((end ? 0.5 : 0.25) * (valueAt(track, track.twist, t) - total), 0.7 * valueAt(track, track.tilt, t));
  });
  if (total > 0 && stretches[stretches.length - 1].kind !== 'twist')
    out.push(0.5 * (track.twist[last] - total), 0.5 * track.tilt[last]);
  return out;
}

function report(
  draft: DraftSpec,
  spec: SkillSpec,
  flight: Flight,
  direction: 1 | -1,
  turns: number,
  flights: number,
): Draft {
  const track = readTrack(flight, direction);
  const last = track.t.length - 1;
  const deg = (x: number): string => `${Math.round(Math.abs(x) / RAD)} deg`;
  const falls: string[] = [];
  const som = track.somersault[last] - draft.somersaults * REV;
  const twist = track.twist[last] - turns * REV;
  if (Math.abs(som) > DRAFT_CLOSE.somersault)
    falls.push(`the somersault ends ${deg(som)} ${som < 0 ? 'short' : 'over'}`);
  if (Math.abs(twist) > DRAFT_CLOSE.twist) falls.push(`the twist ends ${deg(twist)} ${twist < 0 ? 'short' : 'over'}`);
  if (Math.abs(track.tilt[last]) > TILTED) falls.push(`the body lands tilted by ${deg(track.tilt[last])}`);
  let total = 0;
  const places = draft.surface === 'water' ? [] : draft.halfTwists.slice(0, -1);
  places.forEach((n, i) => {
    total += n;
    const t = timeAt(track, track.somersault, (i + 1) * REV);
    const there = t === undefined ? 0 : Math.floor(valueAt(track, track.twist, t) / Math.PI + 0.5);
    if (there !== total) falls.push(`after somersault ${i + 1} the twist is nearer ${there} half twists than ${total}`);
  });
  if (draft.shape !== 'straight' && draft.somersaults > 0 && !listStretches(draft).some((s) => s.kind === 'bent'))
    falls.push(`every somersault twists, and twists are drafted straight, not in a ${draft.shape}`);
  const held = spec.blocks.filter((b) => b.shape === draft.shape).reduce((sum, b) => sum + b.to.s - b.from.s, 0);
  const isBent = draft.shape !== 'straight' && spec.blocks.some((b) => b.shape === draft.shape);
  if (isBent && held < BRIEF * flight.duration) falls.push(`the ${draft.shape} is held for ${held.toFixed(2)} s only`);
  return {
    spec,
    reached: {
      somersaults: track.somersault[last] / REV,
      twists: track.twist[last] / REV,
      tilt: track.tilt[last],
      duration: flight.duration,
    },
    falls,
    flights,
  };
}
