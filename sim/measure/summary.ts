/**
 * What a flight came to: somersaults and twists done with their words, the landing against the wanted one, peaks, and
 * where it goes beyond its joints' limits. Meanings: docs/conventions.md ("Done", "Short or past"). SI and radians, counts in
 * revolutions; undefined is "not defined".
 */

import { strengthAt } from '../body/action-strength.ts';
import type { Body, Vec3 } from '../body/body.ts';
import { REV, turnedTo } from '../math/angles.ts';
import { type Said, wordCaution, wordNotCompared } from './caution-words.ts';
import { actionSource, type Caution, calcCautions, forEachJoint, speedSource } from './cautions.ts';
import type { Frames } from './frames.ts';
import { isCompared, knownSpeed, rateOf, strengthOfHinges } from './known-strength.ts';
import type { SkillTarget } from './target.ts';
import { calcTouchdownReach, type TouchdownReach, type TouchdownSource } from './touchdown-reach.ts';
import { type SideWord, type SomersaultWord, turnSign, wordSomersault, wordTilt, wordTwist } from './words.ts';

/** What a summary needs of a flight besides its frames; a Flight is one. */
interface FlownSource extends TouchdownSource {
  readonly surfaceY: number;
  readonly p_WScm_W0: Vec3;
  readonly v_WScm_W0: Vec3;
  readonly touchdown?: { readonly contact: number; readonly part: string };
  readonly end?: { readonly surface?: unknown };
  /** as it would have gone on, had the hands not met a rail */
  readonly uncut?: unknown;
}

export interface Peak {
  readonly value: number;
  readonly t: number;
}
export interface JointPeak extends Peak {
  /** index into Body.angles */
  readonly angle: number;
  /** what is known of it at its angle and speed; infinite where nothing is, or where nobody is compared */
  readonly limit: number;
  readonly source: string;
}

interface Landing {
  /** somersault angle of F at the end, wanted and reached, counted as in the frames */
  readonly wanted: number;
  readonly reached: number;
  /** wanted minus reached in the direction of rotation: + short, - past */
  readonly short: number;
  readonly word: 'short' | 'past' | '';
  /** how far the body leans from upright as the athlete faces at the end, rad: + backward, - forward */
  readonly lean: number;
  /** the wanted landing is head first */
  readonly inverted: boolean;
}

export interface Summary {
  readonly body: Body;
  readonly gravity: number;
  readonly duration: number;
  /** time of the highest point; undefined without gravity */
  readonly apex?: number;
  /** word of the part that touched down; undefined for a flight of stated duration */
  readonly touchedBy?: string;
  /** ends as the hands are at the rail */
  readonly isToRail?: true;
  /** there is a surface to land on: the flight touched down, or one is stated with the duration */
  readonly lands: boolean;
  readonly surfaceY: number;
  readonly h_Scm_W: Vec3;
  /** revolutions done, unsigned */
  readonly somersaults?: number;
  readonly somersaultWord: SomersaultWord;
  readonly twists?: number;
  readonly twistWord: SideWord;
  /** tilt at the end, + head to world right */
  readonly tilt?: number;
  readonly tiltWord: SideWord;
  readonly undefinedFrom?: number;
  readonly landing?: Landing;
  /** way of the mass centre over the floor, m: + as the athlete faced at take-off */
  readonly travel: number;
  /** at the end: the larger of what hips with trunk, and knees, are bent by, rad */
  readonly endBend: number;
  /** of what touches down on its feet: where the forces of its landing would have to pass, m (touchdown-reach.ts) */
  readonly touchdownReach?: TouchdownReach;
  /** how far it is turned at the end from facing along or against X, rad; how far its legs are apart there, rad; how fast it moves across, m/s */
  readonly facingOff?: number;
  readonly legsApart: number;
  readonly across: number;
  readonly target?: SkillTarget;
  /** mass centre above Y = 0 */
  readonly height: Peak;
  readonly somersaultRate?: Peak;
  readonly twistRate?: Peak;
  readonly greatestTilt?: Peak;
  /** energy the joints put in (+) or took out since take-off, J */
  readonly jointWork: number;
  /** the joint that turns fastest, and the hinge with the largest torque, against their limits */
  readonly fastest?: JointPeak;
  readonly strongest?: JointPeak;
  readonly cautions: readonly Caution[];
  /** each caution in words, in the same order */
  readonly said: readonly Said[];
  /** of an age that no strength is known of */
  readonly notCompared?: Said;
}

/** Landing within this of the wanted angle is neither short nor past, rad. */
const LANDED = (0.5 * Math.PI) / 180;

/** A flight in numbers: revolutions done, landing, peaks, cautions; SI and radians. */
export function summarize(flight: FlownSource, frames: Frames, target?: SkillTarget): Summary {
  const { body, h_Scm_W } = flight;
  const last = frames.n - 1;
  const known = frames.undefinedFrom === undefined && last >= 0;
  const somersault = frames.somersault[last] - frames.somersault[0];
  const twist = frames.twist[last] - frames.twist[0];
  const somersaultRate = peak(frames, frames.somersaultRate);
  const twistRate = peak(frames, frames.twistRate);
  const greatestTilt = peak(frames, frames.tilt);
  const fastest = findFastest(body, frames);
  const strongest = findStrongest(body, frames);
  const cautions = calcCautions(body, frames);
  const onFeet = known && flight.touchdown?.part === 'feet';
  const touchdownReach = onFeet ? calcTouchdownReach(flight, frames.twist[last]) : undefined;
  const notCompared = wordNotCompared(body);
  return {
    body,
    gravity: flight.gravity,
    duration: flight.duration,
    ...(flight.gravity > 0 ? { apex: flight.v_WScm_W0[1] / flight.gravity } : {}),
    ...(flight.touchdown ? { touchedBy: flight.touchdown.part } : {}),
    ...(flight.uncut ? { isToRail: true } : {}),
    lands: flight.touchdown !== undefined || flight.end?.surface !== undefined,
    surfaceY: flight.surfaceY,
    h_Scm_W,
    somersaultWord: known ? wordSomersault(h_Scm_W[2], frames.twist[0], somersault) : '',
    twistWord: known ? wordTwist(twist) : '',
    tiltWord: known ? wordTilt(frames.tilt[last]) : '',
    ...(known
      ? {
          somersaults: Math.abs(somersault) / REV,
          twists: Math.abs(twist) / REV,
          tilt: frames.tilt[last],
          landing: calcLanding(h_Scm_W[2], frames, target),
        }
      : { undefinedFrom: frames.undefinedFrom ?? 0 }),
    travel: (Math.cos(frames.twist[0]) < 0 ? -1 : 1) * flight.v_WScm_W0[0] * flight.duration,
    endBend: calcBend(body, frames, last),
    legsApart: calcApart(body, frames, last),
    across: Math.abs(flight.v_WScm_W0[2]),
    ...(known ? { facingOff: Math.atan(Math.tan(frames.twist[last])) } : {}),
    ...(touchdownReach ? { touchdownReach } : {}),
    ...(target ? { target } : {}),
    height: highest(flight),
    ...(somersaultRate ? { somersaultRate } : {}),
    ...(twistRate ? { twistRate } : {}),
    ...(greatestTilt ? { greatestTilt } : {}),
    jointWork: frames.jointWork[last] ?? 0,
    ...(fastest ? { fastest } : {}),
    ...(strongest ? { strongest } : {}),
    cautions,
    said: cautions.map((c) => wordCaution(body, c)),
    ...(notCompared ? { notCompared } : {}),
  };
}

/**
 * The wanted angle at the end is the stated landing angle plus whole turns: those nearest to the stated number of
 * somersaults, in the stated direction; without a target, nearest to where the flight ended.
 */
function calcLanding(hz: number, frames: Frames, target?: SkillTarget): Landing {
  const start = frames.somersault[0];
  const reached = frames.somersault[frames.n - 1];
  const facing = Math.cos(frames.twist[0]) < 0 ? -1 : 1;
  const stated = target?.somersaultWord === 'backward' ? facing : target?.somersaultWord === 'forward' ? -facing : 0;
  const direction = stated || turnSign(hz, reached - start);
  const near = target ? start + direction * REV * target.somersaults : reached;
  const angle = target?.landingAngle ?? 0;
  const wanted = turnedTo(angle, near);
  const short = direction * (wanted - reached);
  return {
    wanted,
    reached,
    short,
    word: Math.abs(short) < LANDED ? '' : short > 0 ? 'short' : 'past',
    lean: (Math.cos(frames.twist[frames.n - 1]) < 0 ? -1 : 1) * Math.atan2(Math.sin(reached), Math.cos(reached)),
    inverted: Math.cos(angle) < 0,
  };
}

/** Of a body without hips and knees: 0. */
function calcBend(body: Body, frames: Frames, row: number): number {
  const at = (name: string): number => {
    const i = body.angles.findIndex((a) => a.name === name);
    return i < 0 || row < 0 ? 0 : frames.angles[row * body.angles.length + i];
  };
  const both = (name: string): number => (at(`${name}L`) + at(`${name}R`)) / 2;
  const hips = both('hipFlexion') + at('lumbarFlexion') + at('thoracicFlexion');
  return Math.max(Math.abs(hips), Math.abs(both('kneeFlexion')));
}

/** The largest difference between left and right of hips and knees; of a body without them 0. */
function calcApart(body: Body, frames: Frames, row: number): number {
  if (row < 0) return 0;
  const o = row * body.angles.length;
  return body.angles.reduce(
    (most, { name, mirror }, i) =>
      /^(hipFlexion|kneeFlexion|hipAbduction)/.test(name)
        ? Math.max(most, Math.abs(frames.angles[o + i] - frames.angles[o + mirror]))
        : most,
    0,
  );
}

/** Highest place of the mass centre on its parabola. */
function highest({ gravity, duration, p_WScm_W0, v_WScm_W0 }: FlownSource): Peak {
  const at = (t: number): Peak => ({ value: p_WScm_W0[1] + t * (v_WScm_W0[1] - (gravity * t) / 2), t });
  const top = gravity > 0 ? v_WScm_W0[1] / gravity : 0;
  const ends = [at(0), at(duration)].sort((a, b) => b.value - a.value);
  return top > 0 && top < duration ? at(top) : ends[0];
}

/** The value of largest size, where it is defined. */
function peak(frames: Frames, column: Float64Array): Peak | undefined {
  let best = -1;
  for (let i = 0; i < frames.n; i++)
    if (!Number.isNaN(column[i]) && (best < 0 || Math.abs(column[i]) > Math.abs(column[best]))) best = i;
  return best < 0 ? undefined : { value: column[best], t: frames.t[best] };
}

function findFastest(body: Body, frames: Frames): JointPeak | undefined {
  let best = 0;
  let row = -1;
  let angle = -1;
  let rate = 0;
  forEachJoint(body, frames, (i, speed, fastest, own) => {
    if (speed <= best) return;
    best = speed;
    row = i;
    angle = fastest;
    rate = own;
  });
  if (row < 0) return undefined;
  const limit = isCompared(body) ? knownSpeed(body, angle, rate) : Number.POSITIVE_INFINITY;
  return { value: best, t: frames.t[row], angle, limit, source: speedSource(body, angle, rate) };
}

function findStrongest(body: Body, frames: Frames): JointPeak | undefined {
  const hinges = strengthOfHinges(body);
  const [nq, na] = [hinges.length, body.angles.length];
  const { tau } = frames;
  let best = -1;
  for (let k = 0; k < frames.n * nq; k++) if (Math.abs(tau[k]) > (best < 0 ? 0 : Math.abs(tau[best]))) best = k;
  if (best < 0) return undefined;
  const [i, k] = [Math.floor(best / nq), best % nq];
  const h = hinges[k];
  const s = isCompared(body) ? h.strength?.[tau[best] >= 0 ? 0 : 1] : undefined;
  return {
    value: tau[best],
    t: frames.t[i],
    angle: h.angle,
    limit: s
      ? strengthAt(s, frames.angles[na * i + h.angle], rateOf(h, k, frames, na * i, nq * i))
      : Number.POSITIVE_INFINITY,
    source: actionSource(body, h.angle, tau[best]),
  };
}
