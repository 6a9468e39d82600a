/**
 * Whether a flight is the skill of its code: counted, ended by the one verdict, within what joints and muscles are known to do, and done as the trade does it. Ranges of technique:
 * common practice, from memory, with what a motion between keys cannot do finer added (judgement).
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import { calcFrames, frameTimes } from '../measure/calc-frames.ts';
import { wordCaution } from '../measure/caution-words.ts';
import { type Caution, calcCautions } from '../measure/cautions.ts';
import type { Frames } from '../measure/frames.ts';
import { TORQUE_WARNED } from '../measure/known-strength.ts';
import { summarize } from '../measure/summary.ts';
import { readTechnique, type Technique } from '../measure/technique.ts';
import { upOutOf } from './contact-ranges.ts';
import type { DraftForm } from './draft-form.ts';
import { airTimes, type DraftLimit, type Lifted, siteOf } from './draft-limits.ts';
import type { DraftPlan } from './draft-plan.ts';
import { kickFrom } from './draft-residuals.ts';
import type { DraftSpec } from './draft-spec.ts';
import type { LaunchedSkill } from './launch.ts';
import { type SkillVerdict, verdictInFlight } from './skill-verdict.ts';

/** Half twists in each somersault and the shape, as the flight's own code has them; undefined where it has no code. */
interface FlownCode {
  readonly quarters: number;
  readonly halfTwists: readonly number[];
  readonly shape: string;
}
export type ReadCode = (body: Body, frames: Frames) => FlownCode | undefined;

interface DraftFault {
  /** 'code': another skill, or no landing; the others can be lifted */
  readonly limit: DraftLimit | 'code';
  readonly text: string;
  /** of a joint: when, and which angle */
  readonly t?: number;
  readonly angle?: string;
  /** of a joint: how many times its limit */
  readonly over?: number;
  /** further than the joint goes, which no strength makes good */
  readonly isRange?: true;
}

export interface Judged {
  readonly faults: readonly DraftFault[];
  readonly verdict: SkillVerdict;
  readonly technique: Technique;
  readonly reached: {
    readonly somersaults: number;
    readonly twists: number;
    readonly tilt: number;
    readonly duration: number;
  };
  readonly code: FlownCode | undefined;
  /** torques beyond what is known that count as carried by the hands on the legs */
  readonly carried: number;
}

/** rev: a draft's twists are so near to those of its code */
export const TWIST_WITHIN = 0.06;
/** rev: a flight whose ending no verdict measures against its feet */
const SOMERSAULT_WITHIN = 0.03;
/** On a bed and into water: short or past by no more, rad (judgement). */
const UPRIGHT_WITHIN = 12 * RAD;
const RATE = 240;

export function judgeDraft(
  draft: DraftSpec,
  form: DraftForm,
  plan: DraftPlan,
  skill: LaunchedSkill,
  flight: Flight,
  readCode: ReadCode,
  lifted?: Lifted,
): Judged {
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE));
  const summary = summarize(flight, frames, skill.target);
  const verdict = verdictInFlight(skill, summary);
  const technique = readTechnique(flight, frames);
  const code = readCode(flight.body, frames);
  const faults: DraftFault[] = [];
  const say = (limit: DraftFault['limit'], text: string, at: Omit<DraftFault, 'limit' | 'text'> = {}): void => {
    if (limit !== lifted) faults.push({ limit, text, ...at });
  };
  const { somersaults = Number.NaN, twists = Number.NaN, tilt = Number.NaN } = summary;

  // counted
  if (!(Math.abs(twists - form.twists) <= TWIST_WITHIN)) say('code', `${twists.toFixed(2)} twists`);
  if (form.kind !== 'jump' && summary.somersaultWord !== draft.direction) say('code', 'turns the other way');
  const room = draft.landing === 'feet' && form.kind !== 'jump' ? 0.1 : SOMERSAULT_WITHIN;
  if (!(Math.abs(somersaults - draft.somersaults) <= room)) say('code', `${somersaults.toFixed(2)} somersaults`);
  if (draft.surface === 'water' ? !isDive(draft, form, code) : !isCode(draft, code))
    say('code', code ? `counted as ${code.quarters} ${code.halfTwists.join('')} ${code.shape}` : 'no code');
  // ended
  for (const m of verdict.missed) say('code', `missed: ${m.kind}`);
  if (!isEnded(draft, verdict)) say('code', `ends as ${verdict.ending.kind}`);
  // joints and muscles
  const cautions = calcCautions(flight.body, frames);
  const carried = cautions.filter((c) => isCarriedByHands(flight.body, c, plan));
  for (const c of cautions) if (!carried.includes(c)) sayJoint(flight.body, c, say);
  // air time, and the push it takes
  const [low, high] = airTimes(draft, lifted);
  if (flight.duration < low - 0.005 || flight.duration > high + 0.005)
    say('airTime', `${flight.duration.toFixed(2)} s in the air`);
  const up = flight.v_WScm_W0[1];
  if (up > upOutOf(siteOf(draft).ranges, flight.body.sex).high + 0.005) say('airTime', `${up.toFixed(1)} m/s up`);
  for (const text of listTechnique(draft, form, plan, technique, frames)) say('technique', text);
  return {
    faults,
    verdict,
    technique,
    reached: { somersaults, twists, tilt, duration: flight.duration },
    code,
    carried: carried.length,
  };
}

function sayJoint(
  body: Body,
  c: Caution,
  say: (limit: DraftLimit, text: string, at: Omit<DraftFault, 'limit' | 'text'>) => void,
): void {
  if (c.kind === 'range' && Math.abs(c.value - c.limit) < 0.5 * RAD) return;
  const { title } = wordCaution(body, c);
  const text = `${title[0].toLowerCase()}${title.slice(1, -1)} at ${c.t.toFixed(2)} s`;
  say('strength', text, {
    t: c.t,
    angle: body.angles[c.angle].name,
    over: Math.abs(c.value / c.limit),
    ...(c.kind === 'range' ? { isRange: true } : {}),
  });
}

/**
 * In a held bend the hands pull on the legs, which the model's hands do not: some 150 N a hand, 0.3 m from the knee and as far from hip and back, is not asked of the muscles that bend
 * them (judgement). N m.
 */
const CARRIED: Readonly<Record<string, number>> = { knee: 45, hip: 60, lumbar: 60, thoracic: 40 };

function isCarriedByHands(body: Body, c: Caution, { bentFrom, kick }: DraftPlan): boolean {
  if (c.kind !== 'torque' || c.value < 0 || bentFrom === undefined || kick === undefined) return false;
  const [joint = ''] = /^[a-z]+(?=Flexion)/.exec(body.angles[c.angle].name) ?? [];
  const carried = CARRIED[joint];
  if (carried === undefined) return false;
  return c.t > bentFrom - 0.2 && c.t < kick + 0.02 && c.value - carried <= TORQUE_WARNED * c.limit;
}

function isCode({ somersaults, halfTwists, shape }: DraftSpec, code: FlownCode | undefined): boolean {
  return (
    code !== undefined &&
    code.quarters === Math.round(4 * somersaults) &&
    code.halfTwists.join() === halfTwists.join() &&
    code.shape === shape
  );
}

/** The number of a dive says neither where it twists nor, of a free one, the shape. */
function isDive(
  { somersaults, shape, halfTwists }: DraftSpec,
  { twists }: DraftForm,
  code: FlownCode | undefined,
): boolean {
  if (!code || code.quarters !== Math.round(4 * somersaults)) return false;
  if (code.halfTwists.reduce((a, b) => a + b, 0) !== Math.round(2 * twists)) return false;
  return code.shape === shape || (halfTwists.length > 1 && twists > 0 && code.shape !== 'straight');
}

function isEnded({ landing, surface }: DraftSpec, { ending, short = 0 }: SkillVerdict): boolean {
  if (ending.kind === 'enters')
    return ending.first === (landing === 'headFirst' ? 'head' : 'feet') && Math.abs(short) <= UPRIGHT_WITHIN;
  if (surface === 'trampoline')
    return landing === 'feet' ? ending.kind === 'bounces' && Math.abs(short) <= UPRIGHT_WITHIN : true;
  if (ending.kind === 'touches') return ending.place !== 'falls';
  return ending.kind === 'notComputed' && ending.why.kind === 'fast';
}

/** s and rad: from memory, with room for what is read at rows of frames. */
const TECHNIQUE = {
  armsUp: 150 * RAD,
  tightBy: 0.33,
  /** 0.08, and a centimetre for what moves between rows */
  hands: 0.09,
  wrappedBy: 0.3,
  /** of two and more twists off the bed one arm comes down after the other: mechanics asks for it */
  wrappedByInTwo: 0.42,
  wrappedForTriple: 0.46,
  straightBefore: 0.06,
  knee: 35 * RAD,
  hip: 45 * RAD,
  armsUpAtEnd: 80 * RAD,
  uneven: 30 * RAD,
  apart: 12 * RAD,
  undone: 0.05 * REV,
  held: 0.12,
};

function listTechnique(draft: DraftSpec, form: DraftForm, plan: DraftPlan, t: Technique, frames: Frames): string[] {
  const out: string[] = [];
  const { surface, landing, takeoff } = draft;
  const deg = (x: number): string => `${Math.round(x / RAD)} deg`;
  const need = (is: boolean, text: string): void => {
    if (!is) out.push(text);
  };
  if (takeoff === 'feet')
    need((t.armsUpAtTakeoff ?? 0) >= TECHNIQUE.armsUp, `arms at ${deg(t.armsUpAtTakeoff ?? 0)} at take-off`);
  need((t.legsApart ?? 0) <= TECHNIQUE.apart, 'legs apart');
  need((t.twistBack ?? 0) * REV <= TECHNIQUE.undone, `${(t.twistBack ?? 0).toFixed(2)} twists undone on the way`);
  if (form.bend) {
    if (form.kind === 'plain' || form.kind === 'late')
      need((t.tightFrom ?? 9) <= TECHNIQUE.tightBy, `tight from ${(t.tightFrom ?? 9).toFixed(2)} s only`);
    need((t.handsToLegs ?? 9) <= TECHNIQUE.hands, `hands ${(t.handsToLegs ?? 9).toFixed(2)} m from the legs`);
    need((t.tightTo ?? 0) - (t.tightFrom ?? 0) >= TECHNIQUE.held, 'bent for a moment only');
  }
  if (form.early >= 2 && form.kind !== 'jump') {
    const { wrappedBy, wrappedByInTwo, wrappedForTriple } = TECHNIQUE;
    const by = form.early >= 5 ? wrappedForTriple : form.early >= 3 ? wrappedByInTwo : wrappedBy;
    need(
      (t.wrappedFrom ?? 9) <= by || draft.halfTwists.length > 1 || draft.direction === 'forward',
      `wrapped from ${(t.wrappedFrom ?? 9).toFixed(2)} s`,
    );
  }
  if (form.late > 0 && form.bend && plan.kick !== undefined) {
    const row = Math.min(frames.n - 1, Math.round(plan.kick * RATE));
    const done = Math.abs(frames.somersault[row] - frames.somersault[0]) / REV;
    need(done >= kickFrom(draft, form) - 0.05, `kicks out at ${done.toFixed(2)} somersaults`);
  }
  if (landing === 'feet' && surface !== 'water') {
    need((t.straightBy ?? 9) <= t.airTime - TECHNIQUE.straightBefore, 'not straight before the landing');
    need((t.kneeAtTouchdown ?? 9) <= TECHNIQUE.knee, `knees ${deg(t.kneeAtTouchdown ?? 9)} at touchdown`);
    need((t.hipAtTouchdown ?? 9) <= TECHNIQUE.hip, `hips ${deg(t.hipAtTouchdown ?? 9)} at touchdown`);
    need((t.armsUpAtTouchdown ?? 0) >= TECHNIQUE.armsUpAtEnd, `arms at ${deg(t.armsUpAtTouchdown ?? 0)} at touchdown`);
    need(
      (t.armsUnevenAtTouchdown ?? 9) <= TECHNIQUE.uneven,
      `arms ${deg(t.armsUnevenAtTouchdown ?? 9)} uneven at touchdown`,
    );
  }
  return out;
}
