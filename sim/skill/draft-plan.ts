/**
 * The plan of a drafted skill as blocks: arms overhead as the feet leave, the throw and the wrap of a twist, bend and kick-out, the wrap opened, arms up for the landing.
 * Times in s from take-off, angles in rad. Shapes and how long they take: common practice, from memory.
 */
import { RAD } from '../math/angles.ts';
import type { ArmPath } from '../schedule/schedule.ts';
import { bentLegs, CLOSES, type Grip, gripFor } from './draft-bend.ts';
import type { DraftForm } from './draft-form.ts';
import { siteOf } from './draft-limits.ts';
import type { DraftSpec } from './draft-spec.ts';
import type { DraftStyle, Move, Pace } from './draft-style.ts';
import type { DraftValues } from './draft-unknowns.ts';
import { type PlacedMove, PlanWriter, poseIn, round } from './draft-writer.ts';
import type { BlockSpec, NamedPose, SkillSpec } from './skill-spec.ts';

export interface DraftPlan {
  readonly blocks: readonly BlockSpec[];
  readonly keys: SkillSpec['keys'];
  /** when each move goes on */
  readonly moves: readonly PlacedMove[];
  /** of the kick-out, and of the bend */
  readonly kick?: number;
  readonly bentFrom?: number;
  /** the last shape is reached */
  readonly ready: number;
}

/** Before the feet leave the arms begin to come down: at take-off they are still overhead. */
const LEAVE = -0.08;
/** Elbows in, where the twist is fastest. */
const CLOSE_WRAP: NamedPose = { shoulderElevation: 15 * RAD };
const PUCK: NamedPose = { hipFlexion: 30 * RAD, kneeFlexion: 60 * RAD };
const FRONT = 90 * RAD;
const ARMS_FORWARD: NamedPose = { shoulderElevation: 110 * RAD, shoulderPlane: 80 * RAD };
/** The other arm begins to come down by so much later, s. */
const LAG = 0.34;

/** Share of the air time at which a skill without twist kicks out, by somersaults: common practice, from memory. */
const kickShare = (somersaults: number): number => (somersaults < 1.6 ? 0.62 : somersaults < 2.6 ? 0.74 : 0.8);
/** Straight for at least so long before landing, s */
const STRAIGHT_BEFORE = 0.09;

export function writePlan(
  spec: DraftSpec,
  form: DraftForm,
  T: number,
  v: DraftValues,
  style: DraftStyle,
  shapes: Readonly<Record<string, NamedPose>>,
  grips: readonly Grip[],
): DraftPlan {
  const w = new PlanWriter(shapes);
  const { pace } = style;
  const grip = gripFor(grips, style);
  const { kind, early, late, bend, twists } = form;
  const val = (name: keyof DraftValues): number => v[name] ?? 0;
  const apart = (a: number): NamedPose => ({ shoulderElevationR: FRONT + a, shoulderElevationL: FRONT - a });
  const holds = (): NamedPose => (bend ? { ...bentLegs(shapes, bend, style.loose), ...grip.closed } : {});
  const marks: { kick?: number; bentFrom?: number } = {};

  /** arms overhead, each in the plane in which it comes down */
  const leave = (left: number, right: number, isKeptToSide = false): void => {
    w.add('armsOverhead', -0.3, LEAVE, 'front', {
      shoulderPlaneL: left,
      shoulderPlaneR: right,
      ...(style.sideBend ? { lumbarSideBend: style.sideBend } : {}),
    });
    w.key('shoulderPlaneL', -0.3, left, 'stop');
    w.key('shoulderPlaneL', LEAVE, left, 'stop');
    // by the side all the way down, across the body only at the end
    if (isKeptToSide)
      w.key('shoulderPlaneL', round(LEAVE + 0.68 * (pace.throw - LEAVE), 1000), Math.max(left, 8 * RAD), 'pass');
    w.key('shoulderPlaneR', -0.3, right, 'stop');
    w.key('shoulderPlaneR', LEAVE, right, 'stop');
  };
  /** the left arm by the side first, the right one after it */
  const throwInTwo = (until: number, wrapped: number): void => {
    const right = style.inTwo === 'side' ? 40 * RAD : FRONT;
    leave(0, right, true);
    const begins = round(LEAVE + LAG * Math.max(0, val('throw')), 1000);
    const pose = { ...poseIn(shapes, 'wrapped'), ...(early >= 5 ? CLOSE_WRAP : {}) };
    const by = Math.max(wrapped, begins + pace.wrap + 0.07, pace.throw + 0.06);
    w.key('shoulderPlaneR', begins, right, 'stop');
    for (const [name, value] of Object.entries({ shoulderElevationR: Math.PI, shoulderTurnR: 0, elbowFlexionR: 0 }))
      w.key(name, begins, value, 'stop');
    for (const name of ['shoulderPlane', 'shoulderElevation', 'shoulderTurn', 'elbowFlexion'])
      w.key(`${name}L`, pace.throw, pose[`${name}L`] ?? pose[name] ?? 0, 'stop');
    w.add(
      'wrapped',
      by,
      until,
      'front',
      { ...(early >= 5 ? CLOSE_WRAP : {}), ...(bend && style.puck ? PUCK : {}) },
      'throw',
    );
  };
  const throwIn = (until: number, wrapped: number): void => {
    if (style.inTwo) {
      throwInTwo(until, wrapped);
      return;
    }
    const alike = 1 - Math.max(0, val('throw'));
    leave(FRONT * alike, FRONT, alike < 1);
    w.add('wrapped', Math.max(wrapped, pace.throw), until, 'front', bend && style.puck ? PUCK : {}, 'throw');
  };
  const oneUp = (): NamedPose => ({
    shoulderElevationR: (20 + 145 * Math.max(0, val('throw'))) * RAD,
    shoulderElevationL: 20 * RAD,
    shoulderPlane: 10 * RAD,
  });
  const openTo = (from: number, arms: ArmPath): void =>
    w.add('tShape', from + pace.open, from + pace.open + 0.01, arms, apart(val('level')), 'open');
  const bendIn = (from: number, until: number, move: Move): void => {
    const begun = w.end;
    w.add(bend ?? 'tuck', from, until, 'front', holds(), move);
    // the hands are there before the last of the bend, and stay for the first of the opening
    const { from: closed, to: opened } = w.blocks[w.blocks.length - 1];
    const before = CLOSES * (closed.s - begun);
    const after = CLOSES * pace.kick;
    for (const [name, value] of Object.entries(grip.closed)) {
      if (name === 'shoulderPlane') continue;
      const closing = grip.closing[name] ?? value;
      for (const side of ['L', 'R']) {
        w.key(`${name}${side}`, round(closed.s - before, 1000), closing, 'pass');
        w.key(`${name}${side}`, closed.s, value, 'stop');
        w.key(`${name}${side}`, opened.s, value, 'stop');
        w.key(`${name}${side}`, round(opened.s + after, 1000), closing, 'stop');
      }
    }
    const plane = grip.closed.shoulderPlane ?? 0;
    for (const side of ['L', 'R'])
      for (const s of [opened.s, round(opened.s + after, 1000)]) w.key(`shoulderPlane${side}`, s, plane, 'stop');
    marks.bentFrom = w.blocks[w.blocks.length - 1].from.s;
    marks.kick = w.end;
  };
  const twistOut = (): void => {
    const from = kind === 'late' && !bend ? val('kick') : w.end;
    marks.kick ??= from;
    const thrown = Math.max(from + pace.kick, w.end + pace.kick);
    w.add('tShape', thrown, thrown + 0.005, bend ? 'direct' : 'side', apart(val('apart')), 'kick');
    if (late >= 2) {
      w.add('wrapped', thrown + pace.wrap, val('open'), 'direct', {}, 'wrap');
      openTo(w.end, 'direct');
    } else openTo(Math.max(val('open'), thrown + 0.02), 'side');
  };

  if (kind === 'jump') {
    leave(FRONT, FRONT);
    const middle = T / 2;
    if (bend) {
      bendIn(Math.min(middle - 0.13, pace.bend + 0.04), middle + 0.05, 'bend');
      w.add('straight', w.end + pace.kick, w.end + pace.kick + 0.01, 'front', ARMS_FORWARD, 'kick');
    } else w.add('straight', pace.throw + 0.06, T - 0.36, 'front', {}, 'throw');
  } else if (kind === 'plain') {
    leave(FRONT, FRONT);
    if (bend) {
      const latest = T - pace.kick - STRAIGHT_BEFORE;
      bendIn(pace.bend, Math.min(kickShare(spec.somersaults) * T, latest), 'bend');
      const arms = spec.landing === 'headFirst' ? 150 : 110;
      w.add(
        'straight',
        w.end + pace.kick,
        w.end + pace.kick + 0.01,
        'front',
        { shoulderElevation: arms * RAD, shoulderPlane: 80 * RAD },
        'kick',
      );
    } else w.add('straight', pace.throw + 0.06, Math.max(pace.throw + 0.08, T - 0.42), 'front', {}, 'throw');
  } else if (kind === 'throughout') {
    if (style.isHalfFirst) {
      // slow at first with one arm long overhead; wrapped at the half twist the body tilts more
      leave(0, 60 * RAD);
      w.add('oneUpOneDown', pace.throw, Math.max(pace.throw + 0.02, val('wrap') - pace.wrap), 'side', oneUp(), 'throw');
      w.add('wrapped', w.end + pace.wrap, val('open'), 'direct', {}, 'wrap');
      openTo(w.end, 'direct');
    } else if (early === 1) {
      // a half: one arm stays long overhead
      leave(0, 60 * RAD);
      w.add('oneUpOneDown', pace.throw, val('open'), 'side', oneUp(), 'throw');
      openTo(w.end, 'side');
    } else {
      throwIn(val('open'), val('wrap'));
      openTo(w.end, 'direct');
    }
  } else if (kind === 'late') {
    leave(FRONT, FRONT);
    if (bend) bendIn(pace.bend, val('kick'), 'bend');
    else w.add('straight', pace.throw + 0.08, val('kick'), 'front', {}, 'throw');
    twistOut();
  } else {
    throwIn(val('shut'), 0);
    if (bend) {
      const bent = w.end + pace.shut;
      const latest = T - pace.kick - pace.level - 0.03;
      const until = kind === 'both' ? val('kick') : Math.min(kickShare(spec.somersaults) * T, latest);
      bendIn(bent, Math.max(bent + 0.1, until), 'shut');
      if (kind === 'both') twistOut();
      else {
        w.add('tShape', w.end + pace.kick, w.end + pace.kick + 0.005, 'direct', apart(val('level')), 'kick');
      }
    } else {
      openTo(w.end, 'direct');
      w.add('armsForward', w.end + 0.25, T - 0.3, 'direct', {}, 'level');
    }
  }
  // arms that are held forward stay in front
  finish(w, spec, T, twists > 0 && !(kind === 'early' && !bend) ? 'side' : 'front', pace);
  return { blocks: w.blocks, keys: w.keys, moves: w.moves, ...marks, ready: w.blocks[w.blocks.length - 1].from.s };
}

function finish(w: PlanWriter, spec: DraftSpec, T: number, arms: ArmPath, pace: Pace): void {
  const at = Math.max(T - 0.02, w.end + pace.level);
  if (spec.landing === 'headFirst') w.add('diveEntry', at, T + 0.03, arms, {}, 'level');
  else if (spec.landing === 'body' || siteOf(spec).surface === 'water')
    w.add('straight', at, T + 0.03, arms, {}, 'level');
  else {
    const isBed = siteOf(spec).surface === 'trampoline';
    const bent = isBed ? [10, 8, 10] : [25, 20, 0];
    w.add(
      'landing',
      at,
      T + 0.03,
      arms,
      {
        hipFlexion: bent[0] * RAD,
        kneeFlexion: bent[1] * RAD,
        anklePlantarFlexion: bent[2] * RAD,
        lumbarFlexion: 0,
        shoulderElevation: (arms === 'side' ? 105 : 140) * RAD,
        shoulderPlane: (arms === 'side' ? 10 : 80) * RAD,
      },
      'level',
    );
  }
}
