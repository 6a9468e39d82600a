/**
 * What would fix a landing: the smallest single change of each sort (fix-change.ts) with which the skill comes down as its target wants, or where no single
 * one does, two at once. Every answer was flown and judged as its headline will judge it and reaches its last shape. One that asks a joint or the take-off
 * for more than is known, where the skill did not, is offered only with no other single one, and says so. SI, radians.
 */
import type { FlightOptions } from '../flight/fly.ts';
import { fitSteps } from '../math/least-squares.ts';
import { buildSkill } from '../skill/build-skill.ts';
import { calcContactReport } from '../skill/contact-report.ts';
import type { Contact } from '../skill/contact-room.ts';
import { isOfFlight } from '../skill/flight-faults.ts';
import { makeFlyer } from '../skill/flyer.ts';
import { launchChained } from '../skill/launch-chained.ts';
import { FIXED } from '../skill/needs-fix.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { MISS_WIDTHS, type SkillVerdict } from '../skill/skill-verdict.ts';
import { isHeld, isInSteps } from '../skill/verdict-held.ts';
import { calcOutcome, Evaluator, type Sense } from './evaluate.ts';
import { FIX_KINDS, type FixChange, type FixCue, listEdgeChanges, listFixChanges } from './fix-change.ts';
import { calcLateMiss, calcMisses, MET } from './residuals.ts';
import { describeSolution, type Solution } from './solution.ts';
import { type Aim, ownAim, type Wish } from './target.ts';

/** Of the flights of the search; what is found is flown again to the usual tolerance. */
const SEARCH: FlightOptions = { tolerance: 1e-6 };
/** A joint that was asked for less than its limit is not asked for more; one beyond it, not for a fiftieth more. */
const MORE = 1.02;
/** So many steps in a row on which the misses do not fall are enough. */
const GROWN = 4;
/** Pairs that are tried, best first by how the misses begin to change. */
const PAIRS = 4;
const PAIR_ROUNDS = 4;

interface FixStep {
  readonly cue: FixCue;
  /** s, rad, m/s of the push, or a share of the rotation: + later, more */
  readonly by: number;
  readonly id: string;
}

export interface LandingFix {
  readonly steps: readonly FixStep[];
  readonly spec: SkillSpec;
  /** held, or where nothing holds it, with steps */
  readonly verdict: SkillVerdict;
  /** of a joint than is known of it, or of a take-off than is usual, where the skill did not: only with no other way */
  readonly asksMore?: true;
  /** s, with it and without */
  readonly airTime: readonly [number, number];
}

export interface FixAnswer {
  /** one of each sort, in the order in which they are asked of an athlete; or, with no single one, one pair */
  readonly fixes: readonly LandingFix[];
  /** with none: of the single changes the one that comes nearest, where it is nearer than the skill as it is */
  readonly closest?: LandingFix;
  readonly tried: number;
}

export interface FixProgress {
  readonly tried: number;
  readonly changes: number;
  readonly of: number;
}

/** Throws what the skill as it is throws. */
export function* fixLandingSteps(
  spec: SkillSpec,
  contact?: Contact,
): Generator<FixProgress, FixAnswer, boolean | undefined> {
  const aim = ownAim(spec, FIXED);
  const moves = listFixChanges(aim.spec);
  let changes = moves;
  const search = new FixSearch(aim, contact);
  const found: LandingFix[] = [];
  let seen = 0;
  let isStopped = false;
  const progress = (): FixProgress => ({ tried: search.tried, changes: seen, of: changes.length });
  const singles = function* (): Generator<FixProgress, void, boolean | undefined> {
    seen = 0;
    for (const kind of FIX_KINDS) {
      let best: { readonly fix: LandingFix; readonly size: number } | undefined;
      for (const change of changes.filter((c) => c.kind === kind)) {
        if (isStopped) return;
        seen++;
        const fix = search.smallest(change, best?.size);
        const size = fix ? Math.abs(fix.steps[0].by) / change.step : 0;
        if (fix && (!best || size < best.size)) best = { fix, size };
        isStopped = (yield progress()) === true;
      }
      if (best) found.push(best.fix);
    }
  };
  yield* singles();
  // one end of a move alone, and every step of the span: nothing is called impossible that was not tried
  if (found.length === 0 && !isStopped) {
    changes = [...moves, ...listEdgeChanges(aim.spec)];
    search.isWhole = true;
    yield* singles();
  }
  if (found.length === 0 && search.beyond) found.push(search.beyond);
  if (found.length === 0)
    for (const pair of search.pairs(moves)) {
      if (isStopped || found.length > 0) break;
      const fix = search.fitPair(pair);
      if (fix) found.push(fix);
      isStopped = (yield progress()) === true;
    }
  const closest = found.length === 0 && !isStopped ? search.closest() : undefined;
  // what nothing lets stand may still be turned and twisted as wanted, and step
  if (found.length === 0 && !isStopped && aim.ending === 'held' && search.allowSteps()) yield* singles();
  return { fixes: found, tried: search.tried, ...(closest && found.length === 0 ? { closest } : {}) };
}

interface Part {
  readonly change: FixChange;
  readonly by: number;
}

class FixSearch {
  tried = 0;
  /** no side of a change is left before the end of its span */
  isWhole = false;
  private readonly aim: Aim;
  private readonly contact: Contact | undefined;
  private readonly flyer = makeFlyer(SEARCH);
  private readonly sense: Sense;
  private readonly own: Solution;
  private wishes: readonly Wish[];
  private started: { readonly misses: number[] | undefined } | undefined;
  /** lands it, and asks for more than is known where the skill did not: offered where nothing else lands it */
  beyond: LandingFix | undefined;
  /** of single changes, by change and size: flown once */
  private readonly known = new Map<string, number[] | undefined>();
  private nearest: { readonly change: FixChange; readonly by: number; readonly cost: number } | undefined;

  constructor(aim: Aim, contact: Contact | undefined) {
    this.aim = aim;
    this.contact = contact;
    ({ sense: this.sense } = new Evaluator(aim.spec, [], { ...SEARCH, contact }));
    this.wishes = aim.wishes;
    this.own = this.describe(aim.spec);
  }

  /** From here on a landing may step; false where the skill as it is does no worse. */
  allowSteps(): boolean {
    this.wishes = this.aim.wishes.map((w) =>
      w.result === 'short' ? { result: w.result, value: w.value, tolerance: MISS_WIDTHS.somersault, isLoose: true } : w,
    );
    this.wishes = this.wishes.filter(({ result }) => result !== 'reach');
    this.started = undefined;
    this.known.clear();
    return !(this.own.verdict.missed.length === 0 && isInSteps(this.own.verdict));
  }

  /** In tolerances; undefined where the skill cannot be flown so. */
  private missesOf(spec: SkillSpec): number[] | undefined {
    this.tried++;
    try {
      const flown = this.flyer.fly(launchChained(buildSkill(spec), this.contact));
      const outcome = calcOutcome(flown, this.sense, spec.target, spec.blocks);
      const misses = calcMisses(outcome, this.wishes);
      return misses && [...misses, calcLateMiss(outcome)];
    } catch (error) {
      if (isOfFlight(error)) return undefined;
      throw error;
    }
  }

  private describe(spec: SkillSpec): Solution {
    const { ending } = this.aim;
    return describeSolution(
      { spec, wishes: this.wishes, unknowns: [], contact: this.contact, ...(ending ? { ending } : {}) },
      this.sense,
      [],
    );
  }

  /** The nearest step that fixes it, fewer than `under`; a side is left where the misses have grown for some steps. */
  smallest(change: FixChange, under = Number.POSITIVE_INFINITY): LandingFix | undefined {
    const { step, least, span } = change;
    const start = squares(this.start());
    const sides = [1, -1].map((sign) => ({ sign, best: start, worse: 0 }));
    const most = Math.min(Math.max(span[1], -span[0]) / step, under - 1);
    for (let i = 1; i <= most + 1e-9; i++)
      for (const side of sides) {
        const by = side.sign * i * step;
        if (by > span[1] + 1e-9 || by < span[0] - 1e-9 || (side.worse >= GROWN && !this.isWhole)) continue;
        const misses = this.tryMisses(change, by);
        const cost = squares(misses);
        side.worse = cost < side.best ? 0 : side.worse + 1;
        side.best = Math.min(side.best, cost);
        if (Math.abs(by) < least - 1e-9) continue;
        if (cost < (this.nearest?.cost ?? start)) this.nearest = { change, by, cost };
        if (!isMet(misses)) continue;
        const fix = this.fixOf([{ change, by }]);
        if (fix) return fix;
      }
    return undefined;
  }

  private start(): number[] | undefined {
    this.started ??= { misses: this.missesOf(this.aim.spec) };
    return this.started.misses;
  }

  private fixOf(parts: readonly Part[]): LandingFix | undefined {
    const judged = this.judge(parts, true);
    if (!judged || !this.isFixed(judged.solution)) return undefined;
    if (!this.asksMore(judged.solution)) return judged.fix;
    if (parts.length === 1) this.beyond ??= { ...judged.fix, asksMore: true };
    return undefined;
  }

  /** Where no change lands it. It asks for no more than one that does. */
  closest(): LandingFix | undefined {
    if (!this.nearest) return undefined;
    const judged = this.judge([this.nearest], false);
    return judged && !this.asksMore(judged.solution) ? judged.fix : undefined;
  }

  private judge(
    parts: readonly Part[],
    isToMeet: boolean,
  ): { readonly solution: Solution; readonly fix: LandingFix } | undefined {
    try {
      const spec = parts.reduce((s, { change, by }) => change.put(s, by), this.aim.spec);
      if (isToMeet && !isMet(this.missesOf(spec))) return undefined;
      const solution = this.describe(spec);
      const { verdict } = solution;
      const steps = parts.map(({ change: { cue, id }, by }) => ({ cue, id, by }));
      return {
        solution,
        fix: { steps, spec, verdict, airTime: [verdict.flown.duration, this.own.verdict.flown.duration] },
      };
    } catch (error) {
      if (isOfFlight(error)) return undefined;
      throw error;
    }
  }

  private isFixed({ verdict, held, off }: Solution): boolean {
    if (verdict.missed.length > 0) return false;
    if (held === undefined) return off <= MET && !isDown(verdict);
    return isHeld(verdict) || (this.wishes !== this.aim.wishes && isInSteps(verdict));
  }

  /** Of a joint beyond what is known of it, or of a take-off beyond what is usual, where the skill as it is was within. */
  private asksMore({ cost, spec }: Solution): boolean {
    const { cost: own } = this.own;
    const more = (['speed', 'torque'] as const).some((which) => {
      const share = cost[which]?.share ?? 0;
      return share > Math.max(1, MORE * (own[which]?.share ?? 0));
    });
    const had = new Set(own.cautions.map(({ kind, angle }) => `${kind} ${angle}`));
    return (
      more ||
      cost.cautions.some(({ kind, angle }) => !had.has(`${kind} ${angle}`)) ||
      this.takeoffCautions(spec) > this.takeoffCautions(this.aim.spec)
    );
  }

  private takeoffCautions(spec: SkillSpec): number {
    const skill = launchChained(buildSkill(spec), this.contact);
    return calcContactReport({ skill, flight: this.flyer.fly(skill) })?.cautions.length ?? 0;
  }

  /** By how the misses begin to change: which two would take most of them off. */
  pairs(changes: readonly FixChange[]): (readonly [FixChange, FixChange])[] {
    const start = this.start();
    if (!start) return [];
    const slopes = changes.map((change) => {
      const there = this.tryMisses(change, change.step);
      return there?.map((m, i) => m - start[i]);
    });
    const out: { readonly pair: readonly [FixChange, FixChange]; readonly left: number }[] = [];
    for (let i = 0; i < changes.length; i++)
      for (let k = i + 1; k < changes.length; k++) {
        const [a, b] = [slopes[i], slopes[k]];
        if (!a || !b) continue;
        out.push({ pair: [changes[i], changes[k]], left: leftAfter(start, a, b) * orderOf(changes[i], changes[k]) });
      }
    return out
      .sort((x, y) => x.left - y.left)
      .slice(0, PAIRS)
      .map(({ pair }) => pair);
  }

  private tryMisses(change: FixChange, by: number): number[] | undefined {
    const key = `${change.id} ${Math.round(by / change.step)}`;
    if (!this.known.has(key)) this.known.set(key, this.flyWith(change, by));
    return this.known.get(key);
  }

  private flyWith(change: FixChange, by: number): number[] | undefined {
    try {
      return this.missesOf(change.put(this.aim.spec, by));
    } catch (error) {
      if (isOfFlight(error)) return undefined;
      throw error;
    }
  }

  fitPair(pair: readonly [FixChange, FixChange]): LandingFix | undefined {
    const byOf = (x: readonly number[]): number[] => pair.map(({ span: [low, high] }, i) => low + x[i] * (high - low));
    const residuals = (x: readonly number[]): number[] | undefined => {
      try {
        return this.missesOf(pair.reduce((s, change, i) => change.put(s, byOf(x)[i]), this.aim.spec));
      } catch (error) {
        if (isOfFlight(error)) return undefined;
        throw error;
      }
    };
    const steps = pair.map(({ step, span: [low, high] }) => step / (2 * (high - low)));
    const middle = pair.map(({ span: [low, high] }) => -low / (high - low));
    let x: readonly number[] | undefined;
    for (const fitted of fitSteps(middle, residuals, { rounds: PAIR_ROUNDS, exact: 0.3, steps })) x = fitted.x;
    if (!x) return undefined;
    // as a cue says it, then to the half of it
    for (const per of [1, 2]) {
      const parts = byOf(x).map((by, i) => {
        const { step } = pair[i];
        return { change: pair[i], by: (Math.round((by / step) * per) / per) * step };
      });
      const asked = parts.filter(({ by, change }) => Math.abs(by) >= change.least / 2);
      const fix = asked.length === 2 && this.fixOf(asked);
      if (fix) return fix;
    }
    return undefined;
  }
}

const isMet = (misses: readonly number[] | undefined): boolean => !!misses?.every((m) => Math.abs(m) <= MET);
const squares = (misses: readonly number[] | undefined): number =>
  misses ? misses.reduce((sum, m) => sum + m * m, 0) : Number.POSITIVE_INFINITY;

const isDown = ({ ending }: SkillVerdict): boolean => ending.kind === 'down';

/** Sum of squares that the best mix of two slopes leaves. */
function leftAfter(m: readonly number[], a: readonly number[], b: readonly number[]): number {
  const dot = (u: readonly number[], v: readonly number[]): number => u.reduce((sum, x, i) => sum + x * v[i], 0);
  const [aa, ab, bb, am, bm] = [dot(a, a), dot(a, b), dot(b, b), dot(a, m), dot(b, m)];
  const det = aa * bb - ab * ab;
  if (!(det > 1e-9 * aa * bb)) return Number.POSITIVE_INFINITY;
  const [s, t] = [(-am * bb + bm * ab) / det, (-bm * aa + am * ab) / det];
  return m.reduce((sum, x, i) => sum + (x + s * a[i] + t * b[i]) ** 2, 0);
}

/** What is asked of the take-off comes last. */
const orderOf = (...changes: readonly FixChange[]): number =>
  changes.reduce((k, { kind }) => k * (1 + FIX_KINDS.indexOf(kind)), 1);
