/**
 * The search of a draft: bounded least squares from a list of starts, the same each time. What flies to its code is judged in full; a joint that is asked for too much gets more time
 * for that move, and the fit goes on from there.
 */
import { fitSteps } from '../math/least-squares.ts';
import { type Grip, LOOSEST } from './draft-bend.ts';
import { type DraftBase, flyCoarse, launchDraft, specOf } from './draft-flight.ts';
import { type Judged, judgeDraft, type ReadCode } from './draft-judge.ts';
import { airTimes, type Lifted } from './draft-limits.ts';
import { type DraftPlan, writePlan } from './draft-plan.ts';
import { residualsOf } from './draft-residuals.ts';
import { type DraftStyle, type Move, usualPace } from './draft-style.ts';
import { type DraftUnknown, type DraftValues, listUnknowns } from './draft-unknowns.ts';
import { flySkill } from './flyer.ts';
import type { NamedPose, SkillSpec } from './skill-spec.ts';

export interface DraftTools {
  readonly shapes: Readonly<Record<string, NamedPose>>;
  /** by how loose the bend is */
  readonly grips: readonly Grip[];
  readonly readCode: ReadCode;
  /** called before every flight */
  readonly onFlight: () => void;
}

/** All that a draft is made from again. */
export interface DraftRecipe {
  /** s that the moves are placed by */
  readonly airTime: number;
  readonly style: DraftStyle;
  readonly values: DraftValues;
}

export interface Found {
  readonly spec: SkillSpec;
  readonly judged: Judged;
  readonly recipe: DraftRecipe;
}

/** Flown and judged in full. */
export function flyRecipe(
  base: DraftBase,
  tools: DraftTools,
  recipe: DraftRecipe,
  lifted?: Lifted,
): Found & { readonly plan: DraftPlan } {
  const { airTime, style, values } = recipe;
  const plan = planOf(base, tools, airTime, values, style);
  const spec = specOf(base, plan, values);
  const skill = launchDraft(spec);
  tools.onFlight();
  const judged = judgeDraft(base.draft, base.form, plan, skill, flySkill(skill), tools.readCode, lifted);
  return { spec, judged, recipe, plan };
}

/** Sum of squares, in widths, that is close enough; the judge decides. */
const CLOSE = 1;
const FAR = 14;
const ROUNDS = 22;
/** A start that is still so far after these rounds is left. */
const HOPELESS = { rounds: 6, cost: 1200 };
/** Starts of one air time and style. */
const STARTS = 6;
/** Longer moves, a time. */
const SLOWER = 1.15;
/** A bend that takes longer is not tight in time. */
const SLOWEST: Readonly<Partial<Record<Move, number>>> = { bend: 0.43 };
const REPAIRS = 6;
const STEP = 0.004;
/** Of two and more twists the body leaves a little bent to the side, rad (judgement). */
const SIDE_BEND = 0.14;

/** The best that was found: without faults, or with the fewest. Undefined: nothing flew. */
export function searchDraft(base: DraftBase, tools: DraftTools, lifted?: Lifted): Found | undefined {
  let best: Found | undefined;
  const [low, high] = airTimes(base.draft, lifted);
  for (const T of [low + 0.65 * (high - low), high - 0.01, low + 0.3 * (high - low)])
    for (const style of listStyles(base)) {
      const unknowns = listUnknowns(base.draft, base.form, T, lifted);
      for (const start of listStarts(unknowns)) {
        const found = fitFrom(base, tools, unknowns, start, T, style, lifted);
        if (found && (!best || found.judged.faults.length < best.judged.faults.length)) best = found;
        if (best?.judged.faults.length === 0) return best;
      }
    }
  return best;
}

function listStyles({ draft, form }: DraftBase): DraftStyle[] {
  const { kind, early, bend } = form;
  const one: DraftStyle = { pace: usualPace(bend) };
  const isThrown = early >= 2 || (early > 0 && kind !== 'throughout');
  if (kind === 'jump' || !isThrown) return [one];
  const bentAside = (inTwo: 'front' | 'side'): DraftStyle => ({
    ...one,
    inTwo,
    sideBend: SIDE_BEND * (early >= 5 ? 1.5 : 1),
    ...(early >= 5 ? { pace: { ...one.pace, open: 0.22, level: 0.12 } } : {}),
  });
  if (kind === 'throughout' && early >= 5 && draft.halfTwists.length === 1)
    return [bentAside('side'), bentAside('front')];
  if (kind === 'throughout' && early === 4 && draft.halfTwists.length === 1)
    return [{ ...one, inTwo: 'front' }, bentAside('front'), bentAside('side')];
  if (kind === 'throughout' && draft.halfTwists.length > 1 && draft.halfTwists[0] < early - draft.halfTwists[0])
    return [{ ...one, isHalfFirst: true }, one, { ...one, inTwo: 'front' }];
  const ways: DraftStyle[] = [
    one,
    { ...one, inTwo: 'front' },
    ...(early >= 3 ? [{ ...one, inTwo: 'side' as const }] : []),
  ];
  return bend === 'tuck' && early >= 2 ? [...ways.map((way) => ({ ...way, puck: true as const })), ...ways] : ways;
}

/** Combinations of the starts, in a fixed order that mixes them. */
function listStarts(unknowns: readonly DraftUnknown[]): number[][] {
  let all: number[][] = [[]];
  for (const { starts } of unknowns) all = all.flatMap((begun) => starts.map((s) => [...begun, s]));
  // stride coprime with the count: neighbours differ in several values
  const stride = [7, 11, 13, 17, 19].find((n) => all.length % n !== 0) ?? 1;
  return Array.from({ length: Math.min(STARTS, all.length) }, (_, i) => all[(i * stride) % all.length]);
}

function fitFrom(
  base: DraftBase,
  tools: DraftTools,
  unknowns: readonly DraftUnknown[],
  start: readonly number[],
  T: number,
  first: DraftStyle,
  lifted?: Lifted,
): Found | undefined {
  let style = first;
  let x: readonly number[] = unknowns.map(({ low, high }, j) => (start[j] - low) / (high - low));
  let best: Found | undefined;
  for (let repair = 0; repair <= REPAIRS; repair++) {
    const fit = fitOnce(base, tools, unknowns, x, T, style);
    if (!fit || fit.cost > FAR) return best;
    x = fit.x;
    const found = flyRecipe(base, tools, { airTime: T, style, values: valuesAt(unknowns, x) }, lifted);
    if (!best || found.judged.faults.length < best.judged.faults.length) best = found;
    const slow = slower(style, found.plan, found.judged);
    if (found.judged.faults.length === 0 || !slow) return best;
    style = slow;
  }
  return best;
}

/** Moves in which a joint is asked for too much take longer; a bend that muscles do not hold is looser. */
function slower(style: DraftStyle, plan: DraftPlan, { faults }: Judged): DraftStyle | undefined {
  const moves = new Set<Move>();
  const { loose = 0 } = style;
  let isHeldTooTight = false;
  for (const { t, angle = '' } of faults) {
    if (t === undefined) continue;
    const isInBend = t > (plan.bentFrom ?? 9) - 0.2 && t < (plan.kick ?? 0) + 0.06;
    const isLeg = /^(hip|knee|lumbar|thoracic)/.test(angle);
    if (isInBend && isLeg) isHeldTooTight = true;
    // more time does not help knees that are held bent against the turning
    if (isInBend && angle.startsWith('knee')) continue;
    const near = plan.moves.find(({ from, to }) => t >= from - 0.01 && t <= to + 0.01);
    if (near) moves.add(near.move);
  }
  if (moves.size === 0 && !isHeldTooTight) return undefined;
  const pace = { ...style.pace };
  for (const move of moves) pace[move] = Math.min(SLOWEST[move] ?? 1, SLOWER * pace[move]);
  return { ...style, pace, loose: Math.min(LOOSEST, loose + (isHeldTooTight ? 1 : 0)) };
}

const valuesAt = (unknowns: readonly DraftUnknown[], x: readonly number[]): DraftValues =>
  Object.fromEntries(unknowns.map(({ name, low, high }, j) => [name, low + x[j] * (high - low)]));

const planOf = (base: DraftBase, tools: DraftTools, T: number, values: DraftValues, style: DraftStyle): DraftPlan =>
  writePlan(base.draft, base.form, T, values, style, tools.shapes, tools.grips);

function fitOnce(
  base: DraftBase,
  tools: DraftTools,
  unknowns: readonly DraftUnknown[],
  start: readonly number[],
  T: number,
  style: DraftStyle,
): { readonly x: readonly number[]; readonly cost: number } | undefined {
  const residuals = (x: readonly number[]): number[] | undefined => {
    const values = valuesAt(unknowns, x);
    const plan = planOf(base, tools, T, values, style);
    tools.onFlight();
    try {
      return residualsOf(base, T, plan, flyCoarse(specOf(base, plan, values)));
    } catch {
      // no touchdown, or a tilt at which nothing is counted: the fit looks elsewhere
      return undefined;
    }
  };
  let best: { x: readonly number[]; cost: number } | undefined;
  for (const fit of fitSteps(start, residuals, { rounds: ROUNDS, exact: 0.3, steps: unknowns.map(() => STEP) })) {
    best = fit;
    if (fit.cost < CLOSE || (fit.rounds >= HOPELESS.rounds && fit.cost > HOPELESS.cost)) break;
  }
  if (best) return best;
  const r = residuals(start);
  return r && { x: start, cost: r.reduce((sum, v) => sum + v * v, 0) };
}
