/**
 * Something to try with a skill: one change that a coach could ask of an athlete, which is seen in the count of what the skill is about. Of the single
 * changes of fix-change.ts, by sizes that can be felt and asked for; it is flown and judged as the headline will judge it, brings no new caution, and
 * does not make a fall of a landing. Which one is offered first is judgement. SI, radians, revolutions.
 */
import type { FlightOptions } from '../flight/fly.ts';
import { RAD, REV } from '../math/angles.ts';
import { calcFrames, frameTimes } from '../measure/calc-frames.ts';
import { calcFlightEnd } from '../measure/flight-end.ts';
import { calcJointPeaks } from '../measure/joint-peaks.ts';
import { calcOverlaps } from '../measure/overlap.ts';
import { buildSkill } from '../skill/build-skill.ts';
import { calcContactReport } from '../skill/contact-report.ts';
import type { Contact } from '../skill/contact-room.ts';
import { isOfFlight } from '../skill/flight-faults.ts';
import { type Flown, makeFlyer } from '../skill/flyer.ts';
import { judgeFlight } from '../skill/judge-flight.ts';
import { launchChained } from '../skill/launch-chained.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { SkillVerdict } from '../skill/skill-verdict.ts';
import { isHeld, isInSteps } from '../skill/verdict-held.ts';
import { type FixChange, listFixChanges } from './fix-change.ts';
import type { LandingFix } from './landing-fix.ts';

/** Enough to see which changes are worth a judgement. */
const ROUGH: FlightOptions = { tolerance: 1e-6 };
/** What the skill is about is its twist where it has as much, else its somersault, rev. */
const LEAST_TURN = 0.2;
/** A change of the count that is seen at two decimals, and the most that is still the same skill, rev. */
const SEEN = 0.012;
const MOST = 0.15;
/**
 * s and rad that are asked for, the first that fits of each change, and only where none of these is fair what is just felt: less than 0.02 s or 5 deg is not
 * (our judgement, set while looking at the ready skills).
 */
const SIZES = [
  { times: [0.1, 0.05, -0.05, -0.1], angles: [10 * RAD, -10 * RAD] },
  { times: [0.03, 0.02, -0.02, -0.03], angles: [5 * RAD, -5 * RAD] },
];
/** Of those that change the count so many are judged, best first: what none of them is, is not worth the time. */
const MOST_JUDGED = 10;
/** What is shown sooner: a closed shape held longer says most, then when it is gone into, then other moves; the hips last. */
const ORDER = (change: FixChange, by: number): number => {
  if (change.kind === 'hold') return by > 0 ? 0 : 1;
  if (change.kind === 'shape') return 4;
  return change.cue.kind === 'time' && change.cue.leaves === 'forClosed' ? 2 : 3;
};

export interface TryChange {
  readonly step: LandingFix['steps'][number];
  readonly spec: SkillSpec;
  /** which count of the verdicts it is about */
  readonly of: 'twists' | 'somersaults';
  readonly before: SkillVerdict;
  readonly after: SkillVerdict;
}

/** Undefined where nothing is worth trying. Throws what the skill as it is throws. */
export function* tryChangeSteps(
  spec: SkillSpec,
  contact?: Contact,
): Generator<undefined, TryChange | undefined, boolean | undefined> {
  const own = lookAt(spec, contact);
  const of = aboutOf(own.verdict);
  if (!of) return undefined;
  const now = countOf(flyRough(spec, contact), of);
  const changes = listFixChanges(spec).filter(({ kind }) => kind !== 'airTime' && kind !== 'rotation');
  for (const { times, angles } of SIZES) {
    const seen: { readonly change: FixChange; readonly by: number; readonly spec: SkillSpec }[] = [];
    for (const change of changes) {
      for (const by of change.kind === 'shape' ? angles : times) {
        const [least, most] = change.span;
        if (by < least - 1e-9 || by > most + 1e-9) continue;
        const tried = ifFlown(() => {
          const changed = change.put(spec, by);
          return { changed, difference: Math.abs(countOf(flyRough(changed, contact), of) - now) };
        });
        if (tried && tried.difference >= SEEN && tried.difference <= MOST)
          seen.push({ change, by, spec: tried.changed });
      }
      if ((yield undefined) === true) return undefined;
    }
    // sizes keep their order within a change
    seen.sort((a, b) => ORDER(a.change, a.by) - ORDER(b.change, b.by));
    for (const one of seen.slice(0, MOST_JUDGED)) {
      const found = ifFlown(() => lookAt(one.spec, contact));
      if (found && isFair(own, found) && Math.abs(turnOf(found.verdict, of) - turnOf(own.verdict, of)) >= SEEN) {
        const { cue, id } = one.change;
        return { step: { cue, id, by: one.by }, spec: one.spec, of, before: own.verdict, after: found.verdict };
      }
      if ((yield undefined) === true) return undefined;
    }
  }
  return undefined;
}

interface Looked {
  readonly verdict: SkillVerdict;
  /** by what is said of each: a joint and its kind, a limb and what it passes through, a kind of take-off */
  readonly cautions: ReadonlySet<string>;
}

function lookAt(spec: SkillSpec, contact?: Contact): Looked {
  const skill = launchChained(buildSkill(spec), contact);
  const flight = makeFlyer().fly(skill);
  const frames = calcFrames(flight, frameTimes(flight.duration, 120));
  return {
    verdict: judgeFlight(skill, flight, contact),
    cautions: new Set([
      ...calcJointPeaks(flight, true).cautions.map(({ kind, angle }) => `${kind} ${angle}`),
      ...calcOverlaps(flight, frames).map(({ segmentA, segmentB }) => `${segmentA} in ${segmentB}`),
      ...(calcContactReport({ skill, flight })?.cautions ?? []).map(({ kind }) => kind),
    ]),
  };
}

const flyRough = (spec: SkillSpec, contact?: Contact): Flown =>
  makeFlyer(ROUGH).fly(launchChained(buildSkill(spec), contact));

function countOf(flight: Flown, of: TryChange['of']): number {
  const end = calcFlightEnd(flight);
  const turned = of === 'twists' ? end.twist - end.twist0 : end.somersault - end.somersault0;
  return Math.abs(turned) / REV;
}

const turnOf = ({ flown }: SkillVerdict, of: TryChange['of']): number => flown[of] ?? Number.NaN;

function aboutOf({ flown }: SkillVerdict): TryChange['of'] | undefined {
  if ((flown.twists ?? 0) >= LEAST_TURN) return 'twists';
  return (flown.somersaults ?? 0) >= LEAST_TURN ? 'somersaults' : undefined;
}

/** No caution that the skill did not have, nothing nearer than is asked that was not, and an ending that is known and no worse than to stay on the feet. */
function isFair(own: Looked, found: Looked): boolean {
  if ([...found.cautions].some((one) => !own.cautions.has(one))) return false;
  const isNear = ({ verdict }: Looked): boolean => verdict.missed.some(({ kind }) => kind === 'near');
  if (isNear(found) && !isNear(own)) return false;
  if (isFall(found.verdict) && !isFall(own.verdict)) return false;
  return endsWell(found.verdict) || !endsWell(own.verdict);
}

const ON_FEET: ReadonlySet<string> = new Set(['stands', 'hop', 'smallStep', 'steps', 'deepSquat']);
/** On the feet, thrown up again on them, into the water or the hands at the rail as before: nothing that is a fall, and nothing that is not known. */
function endsWell(verdict: SkillVerdict): boolean {
  const { ending } = verdict;
  if (isHeld(verdict) || isInSteps(verdict)) return true;
  if (ending.kind === 'landed') return ON_FEET.has(ending.how);
  if (ending.kind === 'enters') return ending.first !== 'flat';
  return ending.kind === 'bounces' || ending.kind === 'meets' || ending.kind === 'inAir';
}

function isFall({ ending }: SkillVerdict): boolean {
  switch (ending.kind) {
    case 'landed':
      return !ON_FEET.has(ending.how);
    case 'touches':
      return ending.place === 'falls';
    case 'enters':
      return ending.first === 'flat';
    case 'atRail':
      return ending.outcome !== 'caught';
    default:
      return ending.kind === 'down';
  }
}

function ifFlown<T>(run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (isOfFlight(error)) return undefined;
    throw error;
  }
}
