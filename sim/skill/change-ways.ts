/**
 * How arms and legs are held, in the words of a coach, and what each of the three changes makes of it. Angles in rad, of both sides where they differ.
 * The numbers are our judgement: a shape is called by what it is nearest to.
 */
import type { Body } from '../body/body.ts';
import { RAD } from '../math/angles.ts';

export type ChangeKind = 'arms' | 'tuck' | 'hips';
export type ShapeWay =
  | 'in'
  | 'wide'
  | 'oneUp'
  | 'overhead'
  | 'forward'
  | 'onLegs'
  | 'tight'
  | 'open'
  | 'bent'
  | 'straight';

/** Arms level within this, and no more than so far in front or bent, are wide. */
const WIDE = { from: 45 * RAD, to: 125 * RAD, plane: 45 * RAD, elbow: 45 * RAD };
/** Arms that point so far from each other's mirror are thrown; raised so differently, one is up and one is down. */
const THROWN = 25 * RAD;
const ONE_UP = 40 * RAD;
const BENT = 60 * RAD;
const STRAIGHT = 45 * RAD;

type Values = ReadonlyMap<number, number>;

/** Arms by the body, clear of the thighs; out to the side, level; wrapped, the forearms across the chest. */
const ARMS: Readonly<Record<'in' | 'wide' | 'wrapped', Readonly<Record<string, number>>>> = {
  in: { plane: 0, elevation: 3 * RAD, turn: 0, elbow: 0 },
  wide: { plane: 0, elevation: 90 * RAD, turn: 0, elbow: 0 },
  wrapped: { plane: 95 * RAD, elevation: 24 * RAD, turn: 52 * RAD, elbow: 126 * RAD },
};
/** The hips of a straight body bent to. */
const HIPS_BENT = 90 * RAD;

const indexOf = (body: Body, name: string): number => body.angles.findIndex((a) => a.name === name);
const named = (body: Body, ...names: string[]): number[] =>
  names.map((name) => indexOf(body, name)).filter((i) => i >= 0);
const elbows = (body: Body): number[] => named(body, 'elbowFlexionL', 'elbowFlexionR');
const hips = (body: Body): number[] => named(body, 'hipFlexionL', 'hipFlexionR');
const knees = (body: Body): number[] => named(body, 'kneeFlexionL', 'kneeFlexionR');
const spine = (body: Body): number[] => named(body, 'lumbarFlexion', 'thoracicFlexion', 'neckFlexion');

export const armAngles = (body: Body): Set<number> =>
  new Set([...body.shoulders.flatMap((s) => [s.plane, s.elevation, s.turn]), ...elbows(body)]);
export const legAngles = (body: Body): Set<number> => new Set([...hips(body), ...knees(body), ...spine(body)]);

/** What is bent least of these, 0 where there is none. */
const least = (pose: ArrayLike<number>, of: readonly number[]): number =>
  of.length === 0 ? 0 : Math.min(...of.map((i) => pose[i]));
const greatest = (pose: ArrayLike<number>, of: readonly number[]): number =>
  of.length === 0 ? 0 : Math.max(...of.map((i) => pose[i]));

const unevenBy = (body: Body, pose: ArrayLike<number>): number => {
  const e = body.shoulders.map((s) => pose[s.elevation]);
  return e.length < 2 ? 0 : Math.max(...e) - Math.min(...e);
};
export const isOneUp = (body: Body, pose: ArrayLike<number>): boolean => unevenBy(body, pose) > ONE_UP;

/** Whether the arms go two ways: one by the side and one by the front, or one sooner than the other. */
export function isThrown(body: Body, pose: ArrayLike<number>): boolean {
  // forward, down and outward from the shoulder: the mirror of an arm has the same numbers
  const [a, b] = body.shoulders.map((s) => {
    const [p, e] = [pose[s.plane], pose[s.elevation]];
    return [Math.sin(e) * Math.sin(p), Math.cos(e), Math.sin(e) * Math.cos(p)];
  });
  if (!a || !b) return false;
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2] < Math.cos(THROWN);
}

export function wayOfArms(body: Body, pose: ArrayLike<number>): ShapeWay {
  if (isOneUp(body, pose)) return 'oneUp';
  const e = body.shoulders.map((s) => pose[s.elevation]);
  const mean = e.reduce((a, b) => a + b, 0) / e.length;
  const bend = greatest(pose, elbows(body));
  const front = Math.max(...body.shoulders.map((s) => Math.abs(pose[s.plane])));
  const isLevel = mean >= WIDE.from && mean <= WIDE.to;
  if (isLevel && front <= WIDE.plane && bend <= WIDE.elbow) return 'wide';
  if (greatest(pose, hips(body)) >= BENT) return 'onLegs';
  if (mean > WIDE.to) return 'overhead';
  return isLevel && bend <= WIDE.elbow ? 'forward' : 'in';
}

export function wayOfLegs(body: Body, pose: ArrayLike<number>): 'tight' | 'bent' | 'straight' | undefined {
  if (hips(body).length === 0) return undefined;
  if (least(pose, hips(body)) >= BENT) return least(pose, knees(body)) >= BENT ? 'tight' : 'bent';
  const all = [...hips(body), ...knees(body)];
  return greatest(pose, all) < STRAIGHT && least(pose, all) > -STRAIGHT ? 'straight' : undefined;
}

/** Wide arms go in; one arm up and one down are wrapped, since level arms would take the tilt back out; all others go wide. */
export function otherArms(body: Body, own: ShapeWay): { way: ShapeWay; values: Values } {
  const to = own === 'wide' ? 'in' : own === 'oneUp' ? 'wrapped' : 'wide';
  const { plane, elevation, turn, elbow } = ARMS[to];
  const values = new Map<number, number>(elbows(body).map((i) => [i, elbow]));
  for (const s of body.shoulders) values.set(s.plane, plane).set(s.elevation, elevation).set(s.turn, turn);
  return { way: to === 'wrapped' ? 'in' : to, values };
}

/** The catalogue's open tuck (presets/shapes.json). */
const OPEN_TUCK = { hips: 105 * RAD, knees: 105 * RAD, lumbarFlexion: 10 * RAD, thoracicFlexion: 5 * RAD };
/** Opened by less, at every joint, a tuck is as good as open already. */
const OPENS = 15 * RAD;
/** What is bent further comes out to the catalogue's open tuck; undefined where the tuck is about as open as that. */
export function openTuck(body: Body, pose: ArrayLike<number>): Values | undefined {
  const open = new Map<number, number>(spine(body).map((i) => [i, 0]));
  for (const name of ['lumbarFlexion', 'thoracicFlexion'] as const)
    for (const i of named(body, name)) open.set(i, OPEN_TUCK[name]);
  for (const i of hips(body)) open.set(i, OPEN_TUCK.hips);
  for (const i of knees(body)) open.set(i, OPEN_TUCK.knees);
  const values = [...open].map(([i, to]) => [i, Math.min(pose[i], to)] as const);
  return values.some(([i, to]) => pose[i] - to >= OPENS) ? new Map(values) : undefined;
}
export const straightHips = (body: Body): Values => new Map([...hips(body), ...spine(body)].map((i) => [i, 0]));
export const bentHips = (body: Body): Values => new Map(hips(body).map((i) => [i, HIPS_BENT]));
