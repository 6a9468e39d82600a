/** What was changed between two flights of one document, as causes to be worded: read from what was flown, so that shapes and keys count as the body took them. */
import type { Athlete } from '../../sim/index.ts';
import { isClosedAngle, leavesOf } from '../../sim/math/closed-shape.ts';
import { beforeOf, flightOf } from '../../sim/math/phases.ts';
import { otherSide, sideOf, withoutSide } from '../../sim/math/side.ts';
import type { Cause } from '../../sim/words/cause-words.ts';
import { isSameMomentum } from '../../sim/words/change-words.ts';
import { getSchedule } from '../document/phases.ts';
import type { FlightResult } from '../engine/result.ts';

interface CauseWords {
  /** the word of a shape, and what the rotation is pushed off */
  shape(file: FlightResult['file'], id: string): string;
  readonly pushedOff: string;
  length(m: number): string;
  mass(kg: number): string;
  gravity(mPerS2: number): string;
  readonly sexes: Readonly<Record<'female' | 'male', string>>;
}

type Flown = FlightResult;
type Block = Flown['skill']['schedule']['blocks'][number];
type Key = Flown['skill']['schedule']['keys'][number];

/** Share of the momentum that lies beside the axis it turned about before. */
const SAME_AXIS = 0.01;

/** s and rad under which a time or an angle is the same. */
const SAME_S = 5e-4;
const SAME_RAD = 1e-4;

export function findCauses(before: Flown, after: Flown, words: CauseWords): Cause[] {
  const person = athleteCause(before.athlete, after.athlete, words);
  const all = [
    ...(person ? [person] : []),
    ...startCauses(before, after, words, person !== undefined),
    ...(isSameBody(before, after) ? motionCauses(before, after, words) : []),
  ];
  // so little follows from what else was changed, and nobody did it
  const done = all.filter((cause) => cause.kind !== 'rotation' || Math.abs(cause.by) > FOLLOWS);
  return done.length > 0 ? done : all;
}
/** Share of an angular momentum that is under what is written of it. */
const FOLLOWS = 5e-4;

const isSameBody = ({ skill: { body: a } }: Flown, { skill: { body: b } }: Flown): boolean =>
  a.angles.length === b.angles.length && a.angles.every(({ name }, i) => name === b.angles[i].name);

function athleteCause(a: Athlete, b: Athlete, words: CauseWords): Cause | undefined {
  if (JSON.stringify({ ...a, name: '', club: '' }) === JSON.stringify({ ...b, name: '', club: '' })) return undefined;
  if (a.name !== b.name || a.kind !== 'human' || b.kind !== 'human')
    return { kind: 'athlete', of: 'other', is: b.name };
  const one: (Cause & { kind: 'athlete' })[] = [];
  if (a.statureM !== b.statureM) one.push({ kind: 'athlete', of: 'stature', is: words.length(b.statureM) });
  if (a.massKg !== b.massKg) one.push({ kind: 'athlete', of: 'mass', is: words.mass(b.massKg) });
  if (a.ageYears !== b.ageYears) one.push({ kind: 'athlete', of: 'age', is: String(b.ageYears ?? '') });
  if (a.sex !== b.sex) one.push({ kind: 'athlete', of: 'sex', is: words.sexes[b.sex] });
  return one.length === 1 ? one[0] : { kind: 'athlete', of: 'several', is: b.name, parts: one.flatMap(asPart) };
}

const asPart = ({ of, is }: Cause & { kind: 'athlete' }) => (of === 'other' || of === 'several' ? [] : [{ of, is }]);

/** `isCarried`: somebody else flies, and speed and momentum are what went over. */
function startCauses(before: Flown, after: Flown, words: CauseWords, isCarried: boolean): Cause[] {
  const [f, g] = [before.file, after.file];
  const [beforeFlight, afterFlight] = [beforeOf(f), beforeOf(g)];
  const out: Cause[] = [];
  if (before.skill.gravity !== after.skill.gravity)
    out.push({ kind: 'gravity', is: words.gravity(after.skill.gravity) });
  if (JSON.stringify(beforeFlight ?? null) !== JSON.stringify(afterFlight ?? null)) {
    const given = (phase: typeof beforeFlight): boolean => phase?.kind === 'swing' || phase?.given !== undefined;
    // how a stated take-off is come to changes nothing that is flown
    if (given(beforeFlight) || given(afterFlight))
      out.push({ kind: 'before', is: (afterFlight ?? beforeFlight)?.kind === 'swing' ? 'swing' : 'contact' });
  }
  if (out.some(({ kind }) => kind === 'before')) return out;
  const [a, b] = [before.skill.takeoff, after.skill.takeoff];
  const isOther = (x: number, y: number, least: number): boolean => Math.abs(y - x) > least;
  const same = isSameMomentum(before.flight.h_Scm_W, after.flight.h_Scm_W);
  if (!isCarried) {
    const rotation = rotationCause(before, after, words);
    const isAsGood = same || (rotation.kind === 'rotation' && Math.abs(rotation.by) <= FOLLOWS);
    if (isOther(a.v_WScm_W[1], b.v_WScm_W[1], 1e-6))
      out.push({ kind: 'height', by: b.v_WScm_W[1] - a.v_WScm_W[1], isSameSpin: isAsGood && isSpinning(after) });
    const isStated = JSON.stringify(a.momentum) !== JSON.stringify(b.momentum);
    if (!same && isStated) out.push(rotation);
  }
  const start = (of: (Cause & { kind: 'start' })['of'], x: number, y: number, least: number): void => {
    if (isOther(x, y, least)) out.push({ kind: 'start', of, by: y - x });
  };
  if (a.height.of === b.height.of) start('place', a.height.y, b.height.y, 5e-4);
  // as the athlete faces
  const faces = Math.cos(a.twist) < 0 ? -1 : 1;
  start('lean', faces * a.somersault, faces * b.somersault, SAME_RAD);
  start('tilt', faces * a.tilt, faces * b.tilt, SAME_RAD);
  start('turn', a.twist, b.twist, SAME_RAD);
  start('along', faces * a.v_WScm_W[0], faces * b.v_WScm_W[0], 1e-6);
  start('across', faces * a.v_WScm_W[2], faces * b.v_WScm_W[2], 1e-6);
  const [x, y] = [flightOf(f).end, flightOf(g).end];
  if (x.surface && y.surface && isOther(x.surface.heightM, y.surface.heightM, 5e-4))
    out.push({ kind: 'surface', by: y.surface.heightM - x.surface.heightM });
  if ('durationS' in x && 'durationS' in y && x.durationS !== undefined && y.durationS !== undefined)
    if (isOther(x.durationS, y.durationS, SAME_S)) out.push({ kind: 'airTime', by: y.durationS - x.durationS });
  return out;
}

const isSpinning = ({ flight: { h_Scm_W: h } }: Flown): boolean => Math.hypot(...h) > 1e-6;

/** A share of what turned before, about the axis that it turned about. */
function rotationCause(before: Flown, after: Flown, { pushedOff }: CauseWords): Cause {
  const [a, b] = [before.flight.h_Scm_W, after.flight.h_Scm_W];
  const size = Math.hypot(...a);
  const share = size < 1e-6 ? 0 : (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / size ** 2 - 1;
  const isAside = Math.hypot(...a.map((x, k) => b[k] - (1 + share) * x)) > SAME_AXIS * Math.hypot(...b);
  return size < 1e-6 || share < -1 || isAside
    ? { kind: 'otherRotation' }
    : { kind: 'rotation', by: share, off: pushedOff };
}

function motionCauses(before: Flown, after: Flown, words: CauseWords): Cause[] {
  const [a, b] = [before.skill.schedule, after.skill.schedule];
  const blocks = blockCauses(before, after, words);
  const keys = keyCauses(before, after);
  const rest =
    JSON.stringify([a.base, a.sampled, before.skill.contacts ?? []]) !==
    JSON.stringify([b.base, b.sampled, after.skill.contacts ?? []]);
  return [...blocks, ...keys, ...(rest && blocks.length + keys.length === 0 ? [{ kind: 'other' } as const] : [])];
}

function blockCauses(before: Flown, after: Flown, words: CauseWords): Cause[] {
  const [a, b] = [before.skill.schedule.blocks, after.skill.schedule.blocks];
  const wordsOf = ({ file }: Flown): string[] =>
    (getSchedule(file).blocks ?? []).map(({ shape }) => words.shape(file, shape));
  const [was, is] = [wordsOf(before), wordsOf(after)];
  if (a.length !== b.length) return lengthCauses(a, b, was, is);
  const apex = (f: Flown): number => (f.skill.gravity > 0 ? f.jump.up / f.skill.gravity : 0);
  const secondsIn = (f: Flown, at: Block['from']): number =>
    at.s + (at.anchor === 'takeoff' ? 0 : at.anchor === 'apex' ? apex(f) : f.flight.duration);
  /** as it is written: what is anchored to an event that moved is not moved by hand */
  const moved = (x: Block['from'], y: Block['from']): number =>
    x.anchor === y.anchor ? y.s - x.s : secondsIn(after, y) - secondsIn(before, x);
  const from = a.map((block, i) => moved(block.from, b[i].from));
  const to = a.map((block, i) => moved(block.to, b[i].to));
  const shapes = a.flatMap((block, i): Cause[] =>
    block.shape === b[i].shape
      ? poseCauses(before, block.pose, b[i].pose, is[i])
      : [{ kind: 'replaced', shape: is[i], was: was[i] }],
  );
  const move = (i: number, by: number): Cause =>
    i + 1 < b.length
      ? {
          kind: 'move',
          from: is[i],
          into: is[i + 1],
          leaves: leavesOf(isClosed(after, b[i]), isClosed(after, b[i + 1])),
          by,
        }
      : { kind: 'other' };
  return [...shapes, ...timeCauses(from, to, is, move)];
}

/** By how much each shape begins and ends later, s. A change that all later edges go along with is one. */
function timeCauses(
  from: readonly number[],
  to: readonly number[],
  names: readonly string[],
  move: (i: number, by: number) => Cause,
): Cause[] {
  const later = (by: number | undefined): by is number => by !== undefined && Math.abs(by) > SAME_S;
  const isSame = (x: number, y: number): boolean => Math.abs(x - y) <= SAME_S;
  const edges = from.flatMap((by, i) => [
    { i, isFrom: true, by },
    { i, isFrom: false, by: to[i] },
  ]);
  const shifted = edges.filter(({ by }) => later(by));
  const [first] = shifted;
  if (!first) return [];
  const tail = edges.slice(edges.indexOf(first));
  if (shifted.length > 2 && tail.every(({ by }) => isSame(by, first.by)))
    return [first.isFrom ? { kind: 'reach', shape: names[first.i], by: first.by } : move(first.i, first.by)];
  const isWhole = from.map((by, i) => later(by) && isSame(by, to[i]) && !later(to[i - 1]) && !later(from[i + 1]));
  return from.flatMap((by, i): Cause[] => {
    if (isWhole[i]) return [{ kind: 'moved', shape: names[i], by }];
    const left = later(to[i]) ? [move(i, to[i])] : [];
    const before = i > 0 && !isWhole[i - 1] ? to[i - 1] : 0;
    const reached: Cause[] = later(by) && !isSame(by, before) ? [{ kind: 'reach', shape: names[i], by }] : [];
    return [...reached, ...left];
  });
}

function lengthCauses(
  a: readonly Block[],
  b: readonly Block[],
  was: readonly string[],
  is: readonly string[],
): Cause[] {
  const same = (x: Block | undefined, y: Block | undefined): boolean => JSON.stringify(x) === JSON.stringify(y);
  const at = b.findIndex((block, i) => !same(block, a[i]));
  if (b.length === a.length + 1) {
    const isOne = a.slice(at).every((block, i) => block.shape === b[at + 1 + i].shape);
    return [isOne ? { kind: 'added', shape: is[at] } : { kind: 'other' }];
  }
  if (b.length === a.length - 1) {
    const gone = at < 0 ? b.length : at;
    const isOne = b.slice(gone).every((block, i) => block.shape === a[gone + 1 + i].shape);
    return [isOne ? { kind: 'removed', shape: was[gone] } : { kind: 'other' }];
  }
  return [{ kind: 'other' }];
}

function isClosed({ skill }: Flown, { pose }: Block): boolean {
  return skill.body.angles.some(({ name }, i) => isClosedAngle(name, pose[i]));
}

interface Changed {
  readonly angle: string;
  readonly by: number;
}

const LIMBS: readonly (readonly [RegExp, string])[] = [
  [/^(shoulder|elbow|forearm|wrist)/, 'arm'],
  [/^(hip|knee|ankle)/, 'leg'],
  [/^neck/, 'head'],
  [/^(thoracic|lumbar)/, 'trunk'],
];

function limbOf(angle: string): string {
  const limb = LIMBS.find(([pattern]) => pattern.test(angle))?.[1] ?? angle;
  const side = sideOf(angle);
  const both = /^(arm|leg)$/.test(limb) ? `${limb}s` : limb;
  return side === 'L' ? `left ${limb}` : side === 'R' ? `right ${limb}` : both;
}

/** Hips and knees bent so far are a tuck. */
const TUCKED = Math.PI / 3;
/** What opens and closes with a tuck. */
const OF_TUCK = /^(hipFlexion|kneeFlexion|ankle|lumbarFlexion|thoracicFlexion|neckFlexion)/;

/** Hips and knees of both sides that open or close alike: the tuck is looser or tighter, + tighter. */
function tuckChange({ angles }: Flown['skill']['body'], pose: readonly number[], changed: readonly Changed[]): number {
  const bends = angles.flatMap(({ name }, i) => (/^(hip|knee)Flexion/.test(name) ? [pose[i]] : []));
  const of = changed.filter(({ angle }) => /^(hip|knee)Flexion$/.test(angle));
  const isTuck = bends.length > 0 && bends.every((bend) => bend > TUCKED);
  const isOneWay = of.length > 1 && of.every(({ by }) => by > 0 === of[0].by > 0);
  return isTuck && isOneWay ? of[0].by : 0;
}

/** The same change of both sides is one change. */
function inPairs(changed: readonly Changed[]): Changed[] {
  return changed.flatMap((one) => {
    const pair = changed.find(({ angle }) => angle === otherSide(one.angle));
    if (!pair || Math.abs(pair.by - one.by) > SAME_RAD) return [one];
    return sideOf(one.angle) === 'L' ? [{ angle: withoutSide(one.angle), by: one.by }] : [];
  });
}

function poseCauses({ skill: { body } }: Flown, a: readonly number[], b: readonly number[], shape: string): Cause[] {
  const changed = inPairs(
    body.angles.map(({ name }, i) => ({ angle: name, by: b[i] - a[i] })).filter(({ by }) => Math.abs(by) > SAME_RAD),
  );
  const [first] = changed;
  if (changed.length === 1) return [{ kind: 'shapeAngle', shape, angle: first.angle, by: first.by }];
  const tuck = tuckChange(body, a, changed);
  const rest = tuck === 0 ? changed : changed.filter(({ angle }) => !OF_TUCK.test(angle));
  const limbs = [...new Set(rest.map(({ angle }) => limbOf(angle)))];
  return [
    ...(tuck === 0 ? [] : [{ kind: 'tuck', by: tuck } as const]),
    ...limbs.map((limb) => ({ kind: 'limb', limb, shape }) as const),
  ];
}

function keyCauses(before: Flown, after: Flown): Cause[] {
  const [a, b] = [before.skill.schedule.keys, after.skill.schedule.keys];
  const text = (key: Key): string => JSON.stringify(key);
  const [were, are] = [new Set(a.map(text)), new Set(b.map(text))];
  const gone = a.filter((key) => !are.has(text(key)));
  const come = b.filter((key) => !were.has(text(key)));
  if (gone.length + come.length === 0) return [];
  const { angles } = after.skill.body;
  const isSame = (x: Key['at'], y: Key['at']): boolean => x.anchor === y.anchor && Math.abs(x.s - y.s) < 1e-9;
  const changed = come.flatMap((key) => {
    const old = gone.find((k) => k.angle === key.angle && isSame(k.at, key.at));
    return old ? [{ angle: angles[key.angle].name, by: key.value - old.value, at: key.at }] : [];
  });
  const first = [...come, ...gone][0].at;
  const isOneTime = [...come, ...gone].every(({ at }) => isSame(at, first));
  const at = first.s + (first.anchor === 'takeoff' ? 0 : first.anchor === 'touchdown' ? after.flight.duration : 0);
  if (!isOneTime || first.anchor === 'apex') return [{ kind: 'other' }];
  const pairs = inPairs(changed);
  if (changed.length === come.length && gone.length === come.length && pairs.length === 1)
    return [{ kind: 'keyAngle', angle: pairs[0].angle, at, by: pairs[0].by }];
  const limbs = new Set([...come, ...gone].map((key) => limbOf(angles[key.angle].name)));
  return [...limbs].map((limb) => ({ kind: 'limb', limb, at }));
}
