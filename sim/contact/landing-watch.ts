/**
 * Sees how a landing ends, row by row: the athlete stands still, has to step, is down on another part, or none of it in time.
 *
 * Once braking has ended, the extrapolated mass centre (XcoM, with what turning is left: balance-action.ts) is held against heel
 * and toe. Outside by more than LOST nothing that the model does brings it back (docs/landing.md), and a step is taken. Who can react foresees it while braking: where
 * XcoM would lie outside by more than FORESEEN as braking ends, however the force is placed, the step begins then.
 * Meanwhile XcoM runs away as exp(w0 t) (Hof 2008, Hum Mov Sci 27:112), so that the step has to be excess x exp(w0 STEP_TIME)
 * long. Three steps of the longest catch an excess of L (1/k + 1/k^2 + 1/k^3), k = exp(w0 STEP_TIME); beyond that no step
 * helps, and the run goes on until something touches. What touches before the sinking has ended is a fall, step or not.
 */
import type { BalanceAction } from './balance-action.ts';
import type { EndingKind, EndingReason, LandingEnding } from './ending.ts';
import type { LandingEntry } from './landing-entry.ts';
import type { LandingEquations } from './landing-equations.ts';
import { LandingParts } from './landing-parts.ts';
import type { SoledMat } from './soles.ts';

/** m: measured, docs/landing.md */
const LOST = 0.04;
/** While braking what is foreseen has to be so much, m: hips and arms give 2.5 N m for each kg and bring back some 0.1 in what is left of braking (judgement). */
const FORESEEN = 0.1;
/** A step after a landing: 0.25 s; at most 0.45 of the stature; small up to 0.30 m, about a foot: judgement. */
export const STEP_TIME = 0.25;
const STEP_SHARE = 0.45;
const SMALL_STEP = 0.3;
/** Braking is over where the mass centre sinks slower than this, m/s: judgement. */
const SINKING = 0.15;
/** and at the latest after this time, s: the longest stop of contacts from memory (McNitt-Gray 1991-94). */
const LONGEST_BRAKING = 0.35;
/** Still: m/s, rad/s, kg m^2/s for each kg, held for so long, s. */
const STILL = { speed: 0.06, turning: 0.6, h: 0.03, hold: 0.15 };
/** A hop: both feet this far off the surface, m; it has a direction from this way on, m. */
const HOP = { height: 0.01, way: 0.03 };
/** How far XcoM is beyond the toes and behind the heels, m: negative inside. */
interface Excess {
  readonly ahead: number;
  readonly behind: number;
}

/** Excess that n steps of the longest catch, m: XcoM grows so many times in each. */
const caughtBy = (n: number, longest: number, grows: number): number =>
  longest * Array.from({ length: n }, (_, i) => 1 / grows ** (i + 1)).reduce((a, b) => a + b);

const DOWN: readonly string[] = ['hands', 'knees', 'seat', 'back', 'head'] satisfies EndingKind[];

export class LandingWatch {
  private readonly e: LandingEquations;
  private readonly balance: BalanceAction | undefined;
  private readonly entry: LandingEntry;
  private readonly reaction: number;
  private readonly mat: SoledMat;
  private readonly parts: LandingParts;
  private readonly knee: number;
  private readonly hip: number;
  braked = Number.NaN;
  /** from here on balance is judged, s */
  private settling = Number.NaN;
  private fallen = 0; // m/s: vy of the row before
  private before = 0; // s
  private stillSince = Number.NaN;
  private margin = Number.POSITIVE_INFINITY;
  private deepest = 0;
  private air: { from: number; height: number } | undefined;
  private hop: (EndingReason & { kind: 'leftSurface' }) | undefined;
  /** what a step was or would be for */
  private lost: (EndingReason & { kind: 'beyondToes' | 'behindHeels' }) | undefined;
  private found: LandingEnding | undefined;

  /** `reaction`: no step is taken before, s. */
  constructor(e: LandingEquations, entry: LandingEntry, mat: SoledMat, reaction: number) {
    this.reaction = reaction;
    this.e = e;
    this.balance = e.balance;
    this.entry = entry;
    this.mat = mat;
    const { chain } = entry;
    this.parts = new LandingParts(e, chain, mat);
    const joint = (name: string): number => chain.joints.findIndex((j) => j.name === name);
    this.hip = chain.joints[joint('hip')]?.parent ?? -1;
    this.knee = chain.joints[joint('knee')]?.parent ?? -1;
  }

  /** Looks at the state derived last, at t; true: the landing has ended. */
  see(t: number): boolean {
    const { e, balance } = this;
    if (!balance) return false;
    const { planar } = e;
    e.read();
    const vy = balance.vy;
    if (Number.isNaN(this.braked) && vy >= 0 && t > 0)
      this.braked = this.before + ((t - this.before) * this.fallen) / (this.fallen - vy);
    if (Number.isNaN(this.settling) && t > 0 && (vy > -SINKING || t >= LONGEST_BRAKING)) {
      this.settling = t;
      balance.turnUp(t);
    }
    this.fallen = vy;
    this.before = t;
    if (this.hip >= 0) this.deepest = Math.max(this.deepest, planar.ey[this.knee] - planar.ey[this.hip]);
    const touched = this.parts.touching(balance.heel, balance.toe);
    if (touched) {
      this.found = this.down(touched, t);
      return true;
    }
    // who steps is followed on both feet until the sinking has ended: what comes down before is not caught by a step
    if (this.found && Number.isNaN(this.braked)) return false;
    if (this.found) {
      if (this.isCaught(t)) return true;
      this.found = undefined;
      balance.isStepping = false;
    }
    if (this.lost) return false;
    if (Number.isNaN(this.settling)) {
      if (t >= this.reaction) this.stepFor(this.excessAfterBraking(), t, true);
      return false;
    }
    this.seeHop();
    if (this.air) return false;
    return this.seeStep(t) ? !Number.isNaN(this.braked) : this.seeStill(t);
  }

  ending(t: number): LandingEnding {
    return (
      this.found ?? { kind: 'unsettled', t, reasons: [...(this.lost ? [this.lost] : []), { kind: 'timeIsUp', t }] }
    );
  }

  private seeStep(t: number): boolean {
    const { balance } = this;
    if (!balance) return false;
    const { xcom, heel, toe } = balance;
    const ahead = xcom - toe;
    const behind = heel - xcom;
    this.margin = Math.min(this.margin, -Math.max(ahead, behind));
    return this.stepFor({ ahead, behind }, t);
  }

  /**
   * How far XcoM would lie beyond toes and heels as braking ends, with the force placed as well as can be until then: at the edge it goes to. What is left
   * of the sinking, m v, put through the soles at that edge turns the body by its distance from the mass centre (mechanics; the force along the
   * surface changes turning and speed so that XcoM stays).
   */
  private excessAfterBraking(): Excess {
    const { balance, entry } = this;
    if (!balance) return { ahead: 0, behind: 0 };
    const { x, xcom, heel, toe, height, vy } = balance;
    const k = Math.max(0, -vy) / (height * Math.sqrt(entry.gravity / height));
    return { ahead: xcom + k * (x - toe) - toe, behind: heel - xcom - k * (x - heel) };
  }

  /** Takes a step where XcoM lies beyond the soles by more than can be brought back; what no step reaches is lost. */
  private stepFor({ ahead, behind }: Excess, t: number, isForeseen = false): boolean {
    const { entry, balance } = this;
    const isForward = ahead > behind;
    const by = Math.max(ahead, behind);
    const height = balance?.height ?? 1;
    if (by <= (isForeseen ? FORESEEN : LOST)) return false;
    const grows = Math.exp(Math.sqrt(entry.gravity / height) * STEP_TIME);
    const longest = STEP_SHARE * entry.stature;
    const count = ([1, 2, 3] as const).find((n) => by <= caughtBy(n, longest, grows));
    const lost = {
      ...({ kind: isForward ? 'beyondToes' : 'behindHeels', by, t, step: by * grows, longest } as const),
      ...(count ? { count } : {}),
      ...(isForeseen ? { isForeseen } : {}),
    };
    this.lost = lost;
    if (!count || !balance) return false;
    balance.isStepping = true;
    this.found = {
      // what is foreseen is the least that it can come to, so it is not called small
      kind: !isForeseen && lost.step <= SMALL_STEP ? 'smallStep' : 'steps',
      direction: isForward ? 'forward' : 'back',
      t,
      reasons: [lost, ...this.way()],
    };
    return true;
  }

  /** What was foreseen was the least that it could come to: with the sinking ended, whether three steps, the first on its way, still catch it. */
  private isCaught(t: number): boolean {
    const { lost, balance, entry } = this;
    if (!lost?.isForeseen || !balance) return true;
    const w0 = Math.sqrt(entry.gravity / balance.height);
    const by = Math.max(balance.xcom - balance.toe, balance.heel - balance.xcom);
    let left = by * Math.exp(w0 * Math.max(0, lost.t + STEP_TIME - t)) - lost.longest;
    for (let step = 2; step <= 3; step++) left = left * Math.exp(w0 * STEP_TIME) - lost.longest;
    if (left <= 0) return true;
    const { count: _, ...rest } = lost;
    this.lost = rest;
    return false;
  }

  private seeStill(t: number): boolean {
    const { balance, e, entry } = this;
    if (!balance) return false;
    const isStill =
      balance.hasRisen &&
      Math.hypot(balance.vx, balance.vy) < STILL.speed &&
      Math.abs(balance.h) < STILL.h * entry.chain.mass &&
      e.qd.every((rate) => Math.abs(rate) < STILL.turning) &&
      balance.xcom > balance.heel &&
      balance.xcom < balance.toe;
    if (!isStill) this.stillSince = Number.NaN;
    else if (Number.isNaN(this.stillSince)) this.stillSince = t;
    if (!(t - this.stillSince >= STILL.hold)) return false;
    const reasons: EndingReason[] = [...this.way(), { kind: 'overBase', margin: this.margin }];
    const moved = this.hop?.moved ?? 0;
    this.found = {
      kind: this.hop ? 'hop' : this.deepest > 0 ? 'deepSquat' : 'stands',
      ...(Math.abs(moved) >= HOP.way ? { direction: moved > 0 ? 'forward' : 'back' } : {}),
      t,
      reasons,
    };
    return true;
  }

  private seeHop(): void {
    const { e, balance, mat } = this;
    if (!balance) return;
    const x = e.state[0];
    if (e.fy > 0) {
      if (this.air && this.air.height >= HOP.height)
        this.hop = { kind: 'leftSurface', height: this.air.height, moved: x - this.air.from };
      this.air = undefined;
      return;
    }
    this.air ??= { from: x, height: 0 };
    this.air.height = Math.max(this.air.height, e.state[1] + balance.sole - mat.surfaceY);
  }

  /** What happened on the way. */
  private way(): EndingReason[] {
    return [
      ...(this.hop ? [this.hop] : []),
      ...(this.deepest > 0 ? [{ kind: 'hipsBelowKnees', by: this.deepest } as const] : []),
    ];
  }

  private down(part: string, t: number): LandingEnding {
    const { balance } = this;
    const isForward = balance ? balance.x > (balance.heel + balance.toe) / 2 : true;
    // the neck is stiff here: of who falls back the back is down with the head
    const kind = part === 'head' && !isForward ? 'back' : part;
    return {
      kind: DOWN.includes(kind) ? (kind as EndingKind) : 'unsettled',
      direction: isForward ? 'forward' : 'back',
      t,
      reasons: [{ kind: 'part', part, t }, ...(this.lost ? [this.lost] : []), ...this.way()],
    };
  }
}
