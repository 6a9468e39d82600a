/**
 * What somebody who marks joints in pictures would get of a flight: the middles of twelve joints, tips of hands and feet, neck and top of the head,
 * each a little off. By two cameras a point is known in space. By one it is known across the line of sight only, and its depth follows from the
 * known length of the limb; which end is nearer is seen.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { normalQuantile } from '../math/normal.ts';
import { uniformsInto } from '../math/random.ts';
import { applyInto } from '../math/rot.ts';
import { addScaled, dot, norm, sub, type Triple } from '../math/vec3.ts';
import { calcPose } from '../motion/pose.ts';
import { makeState, readState } from '../motion/state.ts';
import type { MappedPoint } from '../recording/recording-map.ts';

export interface Marked extends MappedPoint {
  readonly at_B: Triple;
  /** the point that its depth follows from, and how far away that is on the body (NaN: as far as it is at the instant); left out: of the hips */
  readonly along?: { readonly from: string; readonly length: number };
}

/** In the order in which depths follow from each other; undefined for a body that is no human. */
export function markedPoints(body: Body): readonly Marked[] | undefined {
  const of = (name: string) => body.segments.find((s) => s.name === name);
  const out: Marked[] = [];
  const put = (
    from: string,
    segment: string,
    at: readonly number[],
    near?: string,
    length = norm(at as Triple),
  ): void => {
    out.push({
      from,
      segment,
      at_B: [at[0], at[1], at[2]],
      isFixed: true,
      basis: 'hand',
      ...(near ? { along: { from: near, length } } : {}),
    });
  };
  const tip = (name: string) => body.contacts.find((c) => c.name === name);
  const [pelvis, chest, head] = [of('pelvis'), of('upperTrunk'), of('head')];
  const vertex = tip('head');
  if (!pelvis || !chest || !head || !vertex) return undefined;
  for (const side of ['L', 'R']) {
    const [thigh, shank, foot] = ['thigh', 'shank', 'foot'].map((name) => of(name + side));
    const toe = tip(`toe${side}`);
    if (!thigh || !shank || !foot || !toe) return undefined;
    put(`hip${side}`, 'pelvis', thigh.p_PoBo_P);
    put(`knee${side}`, `thigh${side}`, shank.p_PoBo_P, `hip${side}`);
    put(`ankle${side}`, `shank${side}`, foot.p_PoBo_P, `knee${side}`);
    put(`toe${side}`, `foot${side}`, toe.p_BoC_B, `ankle${side}`);
  }
  // how far the trunk is rounded is seen: it is as long as it is at the instant
  put('neck', 'upperTrunk', head.p_PoBo_P, 'hips', NaN);
  for (const side of ['L', 'R']) {
    const [upper, fore, hand] = ['upperArm', 'forearm', 'hand'].map((name) => of(name + side));
    const finger = tip(`fingertip${side}`);
    if (!upper || !fore || !hand || !finger) return undefined;
    put(
      `shoulder${side}`,
      'upperTrunk',
      upper.p_PoBo_P,
      'neck',
      norm(sub(upper.p_PoBo_P as Triple, head.p_PoBo_P as Triple)),
    );
    put(`elbow${side}`, `upperArm${side}`, fore.p_PoBo_P, `shoulder${side}`);
    put(`wrist${side}`, `forearm${side}`, hand.p_PoBo_P, `elbow${side}`);
    put(`finger${side}`, `hand${side}`, finger.p_BoC_B, `wrist${side}`);
  }
  put('top', 'head', vertex.p_BoC_B, 'neck');
  return out;
}

interface MarkedRows {
  readonly points: readonly Float64Array[]; // each (n x 3), W, m
  readonly t: Float64Array; // as it is believed to be, from take-off
}

/** `phase`: s by which every picture is later than it is believed to be. `eye`: of the one camera; left out: two cameras. */
export function markPoints(
  flight: Flight,
  marked: readonly Marked[],
  {
    t,
    phase,
    noise,
    seed,
    eye,
  }: {
    readonly t: Float64Array;
    readonly phase: number;
    readonly noise: number;
    readonly seed: number;
    readonly eye?: Triple;
  },
): MarkedRows {
  const { body } = flight;
  const segments = marked.map(({ segment }) => body.segments.findIndex((s) => s.name === segment));
  const points = marked.map(() => new Float64Array(3 * t.length));
  const state = makeState(body);
  const draw = new Float64Array(3 * marked.length);
  const d = [0, 0, 0];
  for (let i = 0; i < t.length; i++) {
    readState(flight, t[i] + phase, state);
    const { R_WS, p_WSo_W } = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
    uniformsInto(seed, i, draw);
    const truth = marked.map(({ at_B }, m): Triple => {
      applyInto(R_WS, 9 * segments[m], at_B, 0, d, 0);
      return [0, 1, 2].map((k) => p_WSo_W[3 * segments[m] + k] + d[k]) as Triple;
    });
    const seen = truth.map((p, m) => p.map((v, k) => v + noise * normalQuantile(draw[3 * m + k])) as Triple);
    const placed = eye ? flatten(marked, truth, seen, eye, noise) : seen;
    for (const [m, p] of placed.entries()) points[m].set(p, 3 * i);
  }
  return { points, t };
}

/** Depths from the lengths of limbs, hips first: both hips are taken as equally far from where the body is. */
function flatten(
  marked: readonly Marked[],
  truth: readonly Triple[],
  seen: readonly Triple[],
  eye: Triple,
  noise: number,
): Triple[] {
  const index = (name: string): number => marked.findIndex(({ from }) => from === name);
  const [hipL, hipR] = [index('hipL'), index('hipR')];
  const mid = (list: readonly Triple[]): Triple => [0, 1, 2].map((k) => (list[hipL][k] + list[hipR][k]) / 2) as Triple;
  const toEye = sub(eye, mid(truth));
  const axis = toEye.map((v) => v / norm(toEye)) as Triple;
  const base = dot(mid(truth), axis);
  /** across the line of sight, at the depth of the hips */
  const across = (p: Triple): Triple => addScaled(p, axis, base - dot(p, axis));
  const depth = (p: Triple): number => dot(p, axis);
  const out: Triple[] = seen.map(across);
  const reach = (from: Triple, truthFrom: Triple, m: number, length: number): Triple => {
    const flat = out[m];
    const level = addScaled(flat, axis, depth(from) - depth(flat));
    const own = Number.isNaN(length) ? norm(sub(truth[m], truthFrom)) : length;
    const by = depthOf(own, norm(sub(level, from)), noise);
    return addScaled(level, axis, depth(truth[m]) >= depth(truthFrom) ? by : -by);
  };
  const width = norm(sub(marked[hipL].at_B, marked[hipR].at_B));
  const half = depthOf(width, norm(sub(out[hipL], out[hipR])), noise) / 2;
  const near = depth(truth[hipL]) >= depth(truth[hipR]) ? 1 : -1;
  out[hipL] = addScaled(out[hipL], axis, near * half);
  out[hipR] = addScaled(out[hipR], axis, -near * half);
  marked.forEach(({ along }, m) => {
    if (!along) return;
    const k = index(along.from);
    out[m] = k < 0 ? reach(mid(out), mid(truth), m, along.length) : reach(out[k], truth[k], m, along.length);
  });
  return out;
}

/** Of a limb that looks `seen` long. What is shorter by less than its two marks may be off is in the plane of the picture. */
const depthOf = (length: number, seen: number, noise: number): number =>
  seen > length - 2 * Math.SQRT2 * noise ? 0 : Math.sqrt(length * length - seen * seen);
