/**
 * The balance reflex: a small sideways action of arms or hips, by delayed feedback on twist and its rate, that keeps a
 * straight body from falling into a twist it was not to make. Off unless asked for; whatever is computed with it says so.
 *
 * The rule (docs/balance.md). With e = twist - planned twist, felt `delay` earlier, the action x moves at the speed
 *     x' = -(k1 e + k2 e') G / (G^2 + G0^2),
 * G the twist acceleration that one unit of x' makes in the shape of that moment, held within the limits below. SI, rad.
 */
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';

type BalanceBy = 'arms' | 'hips';

export interface BalanceSpec {
  /** arms: one is raised as the other is lowered; hips: legs and trunk bend to one side */
  readonly by: BalanceBy;
  /** from what is felt to what is done, s */
  readonly delay: number;
  /** largest action, rad, either way */
  readonly limit: number;
  /** fastest action, rad/s */
  readonly speedLimit: number;
  /** 'fitted': the best that the delay allows in the shape of the moment; or k1 (1/s2) and k2 (1/s) */
  readonly gains: 'fitted' | { readonly k1: number; readonly k2: number };
  /** what is felt is off by chance, each reading by another; left out: felt as it is */
  readonly noise?: SensingNoise;
}

/** One standard deviation each, rad and rad/s. */
export interface SensingNoise {
  readonly twist: number;
  readonly rate: number;
  readonly seed: number;
}

/** 0.08 s from turning to muscle, 20 deg, 300 deg/s: our judgement, not measured. */
export const DEFAULT_BALANCE: BalanceSpec = {
  by: 'hips',
  delay: 0.08,
  limit: (20 * Math.PI) / 180,
  speedLimit: (300 * Math.PI) / 180,
  gains: 'fitted',
};

/** What is felt is read at equal times, at most this far apart, and at least twice a delay, s. */
const LONGEST_BEAT = 0.0125;
const SHORTEST_DELAY = 0.01;
const LONGEST_DELAY = 2;

export function checkBalance(spec: BalanceSpec): void {
  const inside = (field: string, value: number, least: number, most: number, unit: string): void => {
    if (!(value >= least && value <= most))
      throw new FieldError(`balance.${field}`, value, `a number from ${least} to ${most} ${unit}`);
  };
  inside('delay', spec.delay, SHORTEST_DELAY, LONGEST_DELAY, 's');
  inside('limit', spec.limit, 0, Math.PI / 2, 'rad');
  inside('speedLimit', spec.speedLimit, 0, 100, 'rad/s');
  if (spec.noise) {
    inside('noise.twist', spec.noise.twist, 0, Math.PI / 2, 'rad');
    inside('noise.rate', spec.noise.rate, 0, 100, 'rad/s');
  }
  if (spec.gains === 'fitted') return;
  inside('gains.k1', spec.gains.k1, 0, 1e6, '1/s2');
  inside('gains.k2', spec.gains.k2, 0, 1e4, '1/s');
}

/** How many readings a delay is long, and the time between two. */
export function calcBeat(delay: number): { perDelay: number; beat: number } {
  const perDelay = Math.max(2, Math.ceil(delay / LONGEST_BEAT - 1e-9));
  return { perDelay, beat: delay / perDelay };
}

const ACTIONS: Readonly<Record<BalanceBy, readonly (readonly [string, number])[]>> = {
  arms: [
    ['shoulderElevationR', 1],
    ['shoulderElevationL', -1],
  ],
  hips: [
    ['hipAbductionR', 1],
    ['hipAbductionL', -1],
    ['lumbarSideBend', 0.5],
    ['thoracicSideBend', 0.5],
  ],
};

/** What one radian of action adds to each named angle of the body. */
export function actionAngles(body: Body, by: BalanceBy): Float64Array {
  const out = new Float64Array(body.angles.length);
  for (const [name, share] of ACTIONS[by]) {
    const angle = body.angles.findIndex((a) => a.name === name);
    if (angle < 0) throw new FieldError('balance.by', by, `a body with the angle ${name}; this one has none`);
    out[angle] = share;
  }
  return out;
}

/** The same for the hinges, segment by segment. */
export function actionHinges(body: Body, angles: ArrayLike<number>): Float64Array {
  return Float64Array.from(
    body.segments.flatMap((s) => s.hinges),
    (h) => h.terms.reduce((sum, t) => sum + t.coef * angles[t.angle], 0),
  );
}

const deg = (x: number): string => String(Math.round((x * 180) / Math.PI));

const wordNoise = ({ twist, rate }: SensingNoise): string =>
  `${deg(twist)} deg of twist and ${deg(rate)} deg/s of its rate`;

/** The reflex in words, for whatever was computed with it; undefined: without it. */
export function wordBalance(spec: BalanceSpec | undefined): string {
  if (!spec) return 'without balance reflex: the schedule runs as written';
  const gains =
    spec.gains === 'fitted'
      ? 'gains fitted to the delay'
      : `gains ${spec.gains.k1} per s2 on twist and ${spec.gains.k2} per s on its rate`;
  const noise = spec.noise ? `, sensing noise ${wordNoise(spec.noise)}` : '';
  return `with balance reflex: ${spec.by}, ${gains}, delay ${spec.delay} s${noise}, at most ${deg(spec.limit)} deg and ${deg(spec.speedLimit)} deg/s`;
}
