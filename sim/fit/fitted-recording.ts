/**
 * One recording in a fit: what its flight leaves over, for a momentum, a turn of its measured start, and shares of mass. Rows as they were
 * recorded, not smoothed, over their measured noise. Place and speed of the mass centre need no search: for given shares they
 * are the parabola through it.
 */
import type { Body } from '../body/body.ts';
import { attitudeOfMat, matOfAttitude, matOfVectorInto, mulInto } from '../math/rot.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';
import { massCentreOf } from '../recording/mass-centre.ts';
import { fitParabola, inflation, type MassPath } from '../recording/parabola.ts';
import { type Flyer, makeFlyer } from '../skill/flyer.ts';
import { type LaunchedSkill, relaunch } from '../skill/launch.ts';
import { type BodyShares, withShares } from './body-shares.ts';
import { GRAVITY, launchRecorded, takeoffOf } from './recorded-flight.ts';
import type { RecordedStart } from './recording-study.ts';

/** Momentum, kg m2/s, and the turn of the measured start in W, rad. */
export interface StartGuess {
  readonly h: readonly [number, number, number];
  readonly turn: readonly [number, number, number];
}

/** Noise that is not measured is not taken for none: rad, m. */
const LEAST_NOISE = 2e-4;
/** Times the noise over which what is left is the model's doing (judgement). */
const MISFIT = 1.3;
/** A flight in a fit is integrated this well, and its shape tabulated: rad or so, far below any noise, and several times quicker than usual. */
const TOLERANCE = 1e-7;

export class FittedRecording {
  readonly motion: ConditionedMotion;
  readonly start: RecordedStart;
  /** rad and m, of one row and one axis */
  readonly attitudeNoise: number;
  readonly placeNoise: number;
  /** (n x 4) as recorded; NaN where it was not */
  readonly quat: Float64Array;
  private readonly flyer: Flyer = makeFlyer({ tolerance: TOLERANCE, shapeTolerance: TOLERANCE });
  private launched:
    | {
        readonly key: string;
        readonly skill: LaunchedSkill;
        readonly place: readonly number[];
        readonly path: MassPath;
      }
    | undefined;
  private readonly known: { readonly key: string; readonly rest: readonly number[] }[] = [];

  constructor(motion: ConditionedMotion, start: RecordedStart, quat = rawQuat(motion)) {
    this.motion = motion;
    this.start = start;
    this.quat = quat;
    this.attitudeNoise = Math.max(LEAST_NOISE, motion.attitudeReport.noise);
    const path = this.bodyOf(undefined).path;
    this.placeNoise = Math.max(LEAST_NOISE, path.off / Math.sqrt(3));
  }

  /**
   * What is left over, in standard deviations: three of the attitude for each row, then three of the mass centre. `part`: only the first so
   * much of the rows counts, the others are 0.
   */
  rest(guess: StartGuess, shares: BodyShares | undefined, part = 1): readonly number[] {
    const key = JSON.stringify([guess, shares, part]);
    const found = this.known.find((one) => one.key === key);
    if (found) return found.rest;
    const { skill, place } = this.bodyOf(shares);
    const flight = this.flyer.fly(relaunch(skill, { takeoff: takeoffOf(this.startAt(guess)) }));
    const rest: number[] = [];
    const { n, posed } = this.motion;
    const q = new Float64Array(4);
    const until = Math.ceil(part * n);
    for (let i = 0; i < until; i++) {
      flight.quatInto(Math.min(flight.duration, i / posed.rateHz), q);
      pushTurn(this.quat, 4 * i, q, this.attitudeNoise, rest);
    }
    while (rest.length < 3 * n) rest.push(0);
    if (shares) for (const v of place) rest.push(v / this.placeNoise);
    this.known.unshift({ key, rest });
    this.known.length = Math.min(this.known.length, 3);
    return rest;
  }

  /** Root mean square of what is left over: of the attitude about all three axes, rad, and of the mass centre, m. */
  left(guess: StartGuess, shares: BodyShares | undefined): { leftAttitude: number; leftPlace: number } {
    const { n } = this.motion;
    const turns = this.rest(guess, shares).slice(0, 3 * n);
    const squares = turns.reduce((sum, v) => sum + v * v, 0);
    return { leftAttitude: this.attitudeNoise * Math.sqrt(squares / n), leftPlace: this.bodyOf(shares).path.off };
  }

  /**
   * How much wider an interval is than that of the noise alone, where the flight leaves more over than the noise explains: by so many times
   * more, and by how much of it is alike from row to row.
   */
  misfit(guess: StartGuess, shares: BodyShares | undefined): number {
    const { n } = this.motion;
    const turns = this.rest(guess, shares).slice(0, 3 * n);
    const times = Math.sqrt(turns.reduce((sum, v) => sum + v * v, 0) / (3 * n));
    if (times < MISFIT) return Math.max(1, times);
    const axis = (k: number): Float64Array => Float64Array.from({ length: n }, (_, i) => turns[3 * i + k]);
    return times * Math.max(...[0, 1, 2].map((k) => inflation(axis(k))));
  }

  startAt({ h, turn }: StartGuess, shares?: BodyShares): RecordedStart {
    const { path } = this.bodyOf(shares);
    const R = new Float64Array(9);
    matOfVectorInto(turn, R, 0);
    const R_WF = new Float64Array(9);
    mulInto(R, 0, matOfAttitude(...this.start.attitude), 0, R_WF, 0);
    return { attitude: attitudeOfMat(R_WF), h_Scm_W: h, v_WScm_W: path.v, height: path.p[1] };
  }

  /** Skill and parabola of a body with these shares; kept while they are the same. */
  private bodyOf(shares: BodyShares | undefined) {
    const key = shares ? `${shares.arms} ${shares.legs}` : '';
    if (this.launched?.key === key) return this.launched;
    const { posed } = this.motion;
    const body: Body = shares ? withShares(posed.body, shares) : posed.body;
    const motion = shares ? { ...this.motion, posed: { ...posed, body } } : this.motion;
    const centre = shares ? this.centreOf(body) : this.motion.p_WScm_W;
    const path = fitParabola(this.motion.t, centre, 0, this.motion.n - 1, GRAVITY);
    if (!path) throw new RangeError('a span without a parabola is not fitted');
    const place: number[] = [];
    for (let i = 0; i < this.motion.n; i++) {
      const s = this.motion.t[i] - path.t0;
      const at = [0, 1, 2].map((k) => path.p[k] + path.v[k] * s - (k === 1 ? (GRAVITY * s * s) / 2 : 0));
      for (let k = 0; k < 3; k++) {
        const off = centre[3 * i + k] - at[k];
        place.push(Number.isNaN(off) ? 0 : off);
      }
    }
    this.launched = { key, skill: launchRecorded(motion, this.start), place, path };
    return this.launched;
  }

  private centreOf(body: Body): Float64Array {
    const { posed, span, n, series, before } = this.motion;
    const na = body.angles.length;
    const part = (all: Float64Array, width: number): Float64Array =>
      all.slice(width * span.first, width * (span.first + n));
    return massCentreOf(
      { ...posed, body, n, p_WBo_W: part(posed.p_WBo_W, 3), quat_WB: part(posed.quat_WB, 4) },
      series.slice(na * before, na * (before + n)),
    );
  }
}

const rawQuat = ({ posed, span, n }: ConditionedMotion): Float64Array =>
  posed.quat_WB.slice(4 * span.first, 4 * (span.first + n));

/** Rotation vector from the recorded attitude at o to the computed one, over the noise; three zeros where none was recorded. */
function pushTurn(quat: Float64Array, o: number, q: Float64Array, noise: number, out: number[]): void {
  const [a, b, c, d] = [quat[o], quat[o + 1], quat[o + 2], quat[o + 3]];
  const [w, x, y, z] = q;
  const r = [
    a * w + b * x + c * y + d * z,
    a * x - b * w - c * z + d * y,
    a * y + b * z - c * w - d * x,
    a * z - b * y + c * x - d * w,
  ];
  const side = r[0] < 0 ? -1 : 1;
  const size = Math.hypot(r[1], r[2], r[3]);
  const k = size < 1e-9 ? 2 : (2 * Math.atan2(size, Math.abs(r[0]))) / size;
  for (let i = 1; i < 4; i++) {
    const v = (side * k * r[i]) / noise;
    out.push(Number.isNaN(v) ? 0 : v);
  }
}
