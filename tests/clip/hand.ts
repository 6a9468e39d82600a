/** A hand that poses frames of a known flight, through a camera: exactly, or as well as hands do. */

import type { Body } from '../../sim/body/body.ts';
import type { ClipSight } from '../../sim/clip/clip.ts';
import type { PosedFrame } from '../../sim/clip/clip-pose.ts';
import { attitudesAt, firstPose, poseOfFlight } from '../../sim/clip/first-pose.ts';
import { leadPosed, movePosed, turnPosed, twistPosed } from '../../sim/clip/pose-hand.ts';
import { bodyOfPosed } from '../../sim/clip/posed-body.ts';
import { seePlace } from '../../sim/clip/see.ts';
import { type FilmCamera, standCamera, USUAL_CAMERA } from '../../sim/filming/camera.ts';
import type { Flight } from '../../sim/index.ts';
import { normalQuantile } from '../../sim/math/normal.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import { applyInto } from '../../sim/math/rot.ts';
import type { Triple } from '../../sim/math/vec3.ts';
import { getLimb, placeLimb } from '../../sim/motion/limb.ts';

const UNKNOWN = { value: Number.NaN, plusMinus: Number.NaN };

/** The usual camera of the filming plan, before the middle of a flight that goes to the right, or with `isBehind` to the left. */
export function sightOf(flight: Flight, camera: Partial<FilmCamera> = {}, isBehind = false): ClipSight {
  const p = new Float64Array(3);
  const middle: Triple = [0, 0, 0];
  for (const f of [0, 0.5, 1]) {
    flight.massCentreInto(f * flight.duration, p, new Float64Array(3));
    for (let k = 0; k < 3; k++) middle[k] += p[k] / 3;
  }
  const way = flight.v_WScm_W0[0] < -0.2 === isBehind ? 1 : -1;
  const sightline = standCamera({ ...USUAL_CAMERA, ...camera }, { middle, floorY: flight.surfaceY, way });
  return {
    sight: { kind: 'perspective', sightline },
    view: { how: 'given', rad: UNKNOWN },
    tilt: UNKNOWN,
    roll: UNKNOWN,
    offSquare: UNKNOWN,
    away: UNKNOWN,
    pxPerM: { value: sightline.focal / sightline.distance, plusMinus: Number.NaN },
    leftPx: 0,
  };
}

/** The same in parallel, from the same side. */
export function inParallel(of: ClipSight): ClipSight {
  if (of.sight.kind === 'parallel') return of;
  const { right, up, forward, p_WA_W, focal, distance, width, height } = of.sight.sightline;
  return {
    ...of,
    sight: {
      kind: 'parallel',
      parallel: {
        right,
        up,
        toward: [-forward[0], -forward[1], -forward[2]],
        pxPerM: focal / distance,
        anchor: p_WA_W,
        at: [width / 2, height / 2],
      },
    },
  };
}

/** A flight, and the take-off that its turns are counted from. */
export interface TrueFlight {
  readonly flight: Flight;
  readonly start: { readonly somersault: number; readonly tilt: number; readonly twist: number };
}

/** Without error: what the flight does. */
export const poseTruth = ({ flight, start }: TrueFlight, times: readonly number[]): PosedFrame[] =>
  times.map((t, i) => poseOfFlight(flight, start, i, t));

/** Joints that are followed, from the trunk outwards. */
const LED = ['head', 'kneeL', 'kneeR', 'footL', 'footR', 'elbowL', 'elbowR', 'handL', 'handR'] as const;
/** m, standard deviation of a mark; rad of a twist that is inferred from which side is seen */
const MARK = 0.01;
const TWIST = (6 * Math.PI) / 180;

/**
 * What a hand makes of pictures of `truth`, beginning with the flight A: each frame taken up to half of it early or late, all alike; trunk put and turned,
 * twist guessed, ends of limbs led to their marks.
 */
export function poseByHand(
  truth: TrueFlight,
  a: TrueFlight,
  sight: ClipSight,
  { times, framesHz, seed }: { readonly times: readonly number[]; readonly framesHz: number; readonly seed: number },
): PosedFrame[] {
  const u = new Float64Array(200);
  uniformsInto(seed, 0, u);
  const late = (2 * u[0] - 1) * (0.5 / framesHz);
  const out: PosedFrame[] = [];
  times.forEach((t, i) => {
    uniformsInto(seed, i + 1, u);
    let at = 0;
    const draw = (): number => normalQuantile(u[at++]);
    const real = poseOfFlight(truth.flight, truth.start, i, t + late);
    const { body } = truth.flight;
    const marks = new Map(
      ['hips', 'neck', ...LED].map((name) => {
        const { at: spot, pxPerM } = seePlace(sight, endOf(body, real, name));
        return [name, [spot[0] + MARK * pxPerM * draw(), spot[1] + MARK * pxPerM * draw()] as const];
      }),
    );
    const mark = (name: string): readonly [number, number] => marks.get(name) ?? [Number.NaN, Number.NaN];
    let posed: PosedFrame = { ...firstPose(a.flight, a.start, out, i, t), reaches: [] };
    posed = twistPosed(posed, real.twist + TWIST * draw() - posed.twist);
    posed = { ...posed, tilt: 0, somersault: nearTo(real.somersault, posed.somersault) };
    for (let round = 0; round < 3; round++) {
      const seen = (name: string): readonly [number, number] => seePlace(sight, endOf(body, posed, name)).at;
      const [h, n, H, N] = [seen('hips'), seen('neck'), mark('hips'), mark('neck')];
      const by = Math.atan2(n[1] - h[1], n[0] - h[0]) - Math.atan2(N[1] - H[1], N[0] - H[0]);
      posed = turnPosed(posed, sight, Math.atan2(Math.sin(by), Math.cos(by)));
      const now = seen('hips');
      posed = movePosed(posed, sight, [H[0] - now[0], H[1] - now[1]]);
      for (const end of LED) posed = leadPosed(body, posed, sight, { end, to: mark(end) });
    }
    out.push(posed);
  });
  return out;
}

/** A is a whole turn off where another is meant: a person sees which way up the athlete is. */
const nearTo = (real: number, now: number): number => (Math.abs(real - now) > Math.PI / 2 ? real : now);

/** hips: between them; neck: where the head begins. In W. */
export function endOf(body: Body, posed: PosedFrame, name: string): Triple {
  const { pose, R_WB, p_WBo_W } = bodyOfPosed(body, posed);
  const origin = (segment: string): Triple => {
    const s = body.segments.findIndex((one) => one.name === segment);
    return [pose.p_WSo_W[3 * s], pose.p_WSo_W[3 * s + 1], pose.p_WSo_W[3 * s + 2]];
  };
  if (name === 'hips') return origin('thighL').map((v, k) => (v + origin('thighR')[k]) / 2) as Triple;
  if (name === 'neck') return origin('head');
  const limb = getLimb(body, name);
  placeLimb(limb, posed.angles);
  const d = [0, 0, 0];
  applyInto(R_WB, 0, limb.p_BoE_B, 0, d, 0);
  return [p_WBo_W[0] + d[0], p_WBo_W[1] + d[1], p_WBo_W[2] + d[2]];
}

/** Root mean square over the frames of flown less true somersault and twist, rad. */
export function againstTruth(
  made: TrueFlight,
  truth: TrueFlight,
  times: readonly number[],
): { readonly somersault: number; readonly twist: number; readonly tilt: number } {
  const [a, b] = [made, truth].map((one) => attitudesAt(one.flight, one.start, times));
  const rms = (of: 'somersault' | 'tilt' | 'twist'): number =>
    Math.sqrt(a.reduce((sum, v, i) => sum + (v[of] - b[i][of]) ** 2, 0) / times.length);
  return { somersault: rms('somersault'), twist: rms('twist'), tilt: rms('tilt') };
}
