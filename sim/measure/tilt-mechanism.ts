/**
 * How a tilt comes about: which part of the body takes angular momentum about which axis, and how far the whole turns the other way for it.
 * With hrel_g the angular momentum of group g as seen from F, I the tensor of the whole body, e the axis that the tilt is about,
 *     I w_WF = h - sum of hrel_g,   tilt' = e . w_WF = e . I^-1 h - sum over g and axes k of (e . I^-1)_k (hrel_g)_k,
 * integrated along the flight. The first term is what the shape does by itself, no joint moving: with the products of I^-1 with the long
 * axis the body goes round its leaning principal axis, with the rest it breathes (A < B: least tilt at whole and half twists). So
 *     tilt(t) = tilt(0) + sum of turned + byLean + byBreathing.
 * e = Y_F x n / cos(tilt), n the axis that tilt is measured from (h, or the world's Z). Axes k are those of F. NaN from the first time that
 * the tilt is beyond 80 deg. SI, radians.
 */
import { applyTInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { cross, scale, type Triple } from '../math/vec3.ts';
import { groupsOf, momentumByGroup } from '../motion/momentum.ts';
import { makeState, readState, type StateSource } from '../motion/state.ts';
import { calcAttitude, TILT_LIMIT } from './attitude.ts';
import { turnSign } from './words.ts';

/** Lateral, front-back, long: Z, X, Y of F. */
type BodyAxis = 'lateral' | 'frontBack' | 'long';
const AXES: readonly (readonly [BodyAxis, number])[] = [
  ['lateral', 2],
  ['frontBack', 0],
  ['long', 1],
];

interface PartTaking {
  readonly group: string;
  readonly axis: BodyAxis;
  /** how far the whole body turned in tilt for it, + head to world right */
  readonly turned: number;
  /** the largest that it took, kg m^2/s, + about the axis; and when */
  readonly momentum: number;
  readonly t: number;
}

export interface TiltMechanism {
  /** up to this time */
  readonly t: number;
  /** at take-off */
  readonly start: number;
  /** groups and axes, the largest turn first */
  readonly parts: readonly PartTaking[];
  readonly byLean: number;
  readonly byBreathing: number;
  readonly tilt: number;
}

interface TiltSource extends StateSource {
  readonly duration: number;
  readonly schedule: StateSource['schedule'] & { readonly breaks: ArrayLike<number> };
}

/** Steps a second of the integration; the sum then meets the tilt to 1e-8 rad over all presets. */
const RATE = 240;

/** At ascending times. `fromH`: tilt from the plane normal to the angular momentum, else from the world's X-Y plane. */
export function calcTiltMechanism(
  source: TiltSource,
  times: readonly number[],
  fromH: boolean,
  rate = RATE,
): TiltMechanism[] {
  const state = makeState(source.body);
  const groups = groupsOf(source.body);
  const count = 3 * groups.length;
  const at = makeReader(source, state, groups.length, fromH);
  const sums = new Float64Array(count + 2);
  const peaks = new Float64Array(count);
  const peakTimes = new Float64Array(count);
  const look = (t: number): Moment => {
    const m = at(t);
    m.taken.forEach((h, k) => {
      if (Math.abs(h) > Math.abs(peaks[k])) {
        peaks[k] = h;
        peakTimes[k] = t;
      }
    });
    return m;
  };
  let now = 0;
  let before = look(0);
  const start = before.tilt;
  const cuts = Array.from(source.schedule.breaks).filter((b) => b > 0);
  const out: TiltMechanism[] = [];
  for (const until of times) {
    // Simpson's rule between breaks of the schedule, so that each step is smooth
    for (const end of [...cuts.filter((b) => b > now && b < until), until]) {
      const steps = Math.max(1, Math.ceil((end - now) * rate));
      const dt = (end - now) / steps;
      for (let i = 0; i < steps && dt > 0; i++) {
        const middle = look(now + (i + 0.5) * dt);
        const after = look(i === steps - 1 ? end : now + (i + 1) * dt);
        for (let k = 0; k < sums.length; k++)
          sums[k] += (dt / 6) * (before.rates[k] + 4 * middle.rates[k] + after.rates[k]);
        before = after;
      }
      now = Math.max(now, end);
    }
    const parts = groups.flatMap((group, g) =>
      AXES.map(
        ([axis, k]): PartTaking => ({
          group,
          axis,
          turned: sums[3 * g + k],
          momentum: peaks[3 * g + k],
          t: peakTimes[3 * g + k],
        }),
      ),
    );
    parts.sort((a, b) => Math.abs(b.turned) - Math.abs(a.turned));
    out.push({ t: until, start, parts, byLean: sums[count], byBreathing: sums[count + 1], tilt: before.tilt });
  }
  return out;
}

interface Moment {
  readonly tilt: number;
  /** hrel of each group, in F */
  readonly taken: Float64Array;
  /** of tilt: for each group and axis of F, by the lean of the shape, by its breathing */
  readonly rates: Float64Array;
}

function makeReader(source: TiltSource, state: ReturnType<typeof makeState>, groups: number, fromH: boolean) {
  const h = Math.hypot(...source.h_Scm_W) * turnSign(source.h_Scm_W[2], 0);
  const n_W: Triple = fromH && h !== 0 ? scale(source.h_Scm_W, 1 / h) : [0, 0, 1];
  const inverse = new Float64Array(6);
  const n = [0, 0, 0];
  const u_B = [0, 0, 0];
  const u = [0, 0, 0];
  const h_F = [0, 0, 0];
  const e_B = [0, 0, 0];
  const w = new Float64Array(3);
  const still = { ...state, w_WB_B: w };
  const byGroup_B = new Float64Array(3 * groups);
  let phi: Triple | undefined;
  return (t: number): Moment => {
    readState(source, t, state);
    const a = calcAttitude(state, phi);
    phi = a.frame.phi;
    const { R_BF, w_BF_B } = a.frame;
    applyTInto(a.R_WF, 0, n_W, 0, n, 0);
    const sine = Math.max(-1, Math.min(1, n[1]));
    const e = scale(cross([0, 1, 0], [n[0], n[1], n[2]]), 1 / Math.sqrt(1 - sine * sine));
    for (let k = 0; k < 3; k++) e_B[k] = R_BF[3 * k] * e[0] + R_BF[3 * k + 1] * e[1] + R_BF[3 * k + 2] * e[2];
    symInvertInto(state.sm.I_Scm_B, 0, inverse, 0);
    symApplyInto(inverse, 0, e_B, 0, u_B, 0);
    applyTInto(R_BF, 0, u_B, 0, u, 0);
    // a root that turns with F at rest: what is left is the movement seen from F
    for (let k = 0; k < 3; k++) w[k] = -w_BF_B[k];
    momentumByGroup(still, byGroup_B);
    const taken = new Float64Array(3 * groups);
    const rates = new Float64Array(3 * groups + 2);
    for (let g = 0; g < groups; g++) {
      applyTInto(R_BF, 0, byGroup_B, 3 * g, taken, 3 * g);
      for (let k = 0; k < 3; k++) rates[3 * g + k] = -u[k] * taken[3 * g + k];
    }
    applyTInto(R_BF, 0, state.h_Scm_B, 0, h_F, 0);
    // e has no part along Y, so u_y has the products with the long axis and nothing else, u_x and u_z have all but them
    rates[3 * groups] = u[1] * h_F[1];
    rates[3 * groups + 1] = u[0] * h_F[0] + u[2] * h_F[2];
    if (Math.abs(sine) > Math.sin(TILT_LIMIT)) rates.fill(Number.NaN);
    return { tilt: Math.asin(sine), taken, rates };
  };
}
