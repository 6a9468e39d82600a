/** Flies the many variants of a study, with the balance reflex or without, and says what each comes to. */
import type { BalanceSpec } from '../skill/balance.ts';
import { planTwist } from '../skill/balance-plan.ts';
import type { TwistPlan } from '../skill/balance-schedule.ts';
import { buildSkill } from '../skill/build-skill.ts';
import { calcClearance } from '../skill/clearance.ts';
import type { Contact } from '../skill/contact-room.ts';
import { type Flown, type Flyer, makeFlyer } from '../skill/flyer.ts';
import { judgeWith } from '../skill/held-landing.ts';
import type { LaunchedSkill } from '../skill/launch.ts';
import { launchChained } from '../skill/launch-chained.ts';
import { freeKeys } from '../skill/near-flight.ts';
import { restart } from '../skill/restart.ts';
import type { Skill } from '../skill/skill.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { calcOutcome, type Outcome, type Sense, senseOf } from './evaluate.ts';
import { type Input, putInputs } from './input.ts';

/**
 * Coarser than a single flight, whose tolerances are 1e-10 and 1e-12: against far finer flights the angles at the end of
 * the presets, off by the usual errors, are within 2.2e-7 revolutions and touchdowns within 1.3e-8 s (docs/margin.md).
 */
export const STUDY_TOLERANCE = 3e-10;
const STUDY = { tolerance: STUDY_TOLERANCE, shapeTolerance: 1e-8 };

interface SampleOptions {
  readonly balance?: BalanceSpec | undefined;
  /** where the skill has a swing or a known contact */
  readonly contact?: Contact | undefined;
  /** so many built skills are kept, for studies that come back to the same keys */
  readonly keeps?: number;
}

/** A skill built for some values of its keys and body, with the flyer that keeps what is tabulated of it. */
interface Built {
  readonly skill: Skill;
  readonly flyer: Flyer;
}

export class SampleFlyer {
  readonly spec: SkillSpec;
  readonly inputs: readonly Input[];
  readonly sense: Sense;
  readonly balance: BalanceSpec | undefined;
  /** flight of the skill as written */
  readonly now: Flown;
  private readonly plan: TwistPlan | undefined;
  /** inputs that need new keys or a new body */
  private readonly heavy: readonly number[];
  private readonly built = new Map<string, Built>();
  private readonly keeps: number;
  private readonly contact: Contact | undefined;

  constructor(spec: SkillSpec, inputs: readonly Input[], { balance, contact, keeps = 1 }: SampleOptions = {}) {
    this.spec = spec;
    this.contact = contact;
    this.inputs = inputs;
    this.balance = balance;
    this.keeps = keeps;
    this.heavy = inputs.flatMap((input, i) => (input.level === 'takeoff' ? [] : [i]));
    // as it is written: keys out of order are refused here as everywhere
    const base = launchChained(buildSkill(spec), contact);
    this.plan = balance ? planTwist(base) : undefined;
    // agreed upon in full once, nearby from then on
    this.now = makeFlyer().fly(base);
    this.sense = senseOf(base, () => this.now);
  }

  /** `draw`: number of the sample, for what the reflex feels by chance */
  flightAt(values: ArrayLike<number>, spec = putInputs(this.spec, this.inputs, values), draw?: number): Flown {
    return this.fly(values, spec, draw).flight;
  }

  private fly(values: ArrayLike<number>, spec: SkillSpec, draw?: number): { skill: LaunchedSkill; flight: Flown } {
    const { skill: built, flyer } = this.build(spec, values);
    const skill = launchChained(restart(built, spec), this.contact);
    return { skill, flight: flyer.fly(skill, draw) };
  }

  /** Throws what the flight throws: no touchdown, keys out of order, a body that cannot be made. */
  outcomeAt(values: ArrayLike<number>, draw?: number): Outcome {
    const spec = putInputs(this.spec, this.inputs, values);
    const { skill, flight } = this.fly(values, spec, draw);
    const judge = judgeWith(spec.after, this.contact, () => calcClearance({ skill, flight }));
    return calcOutcome(flight, this.sense, spec.target, spec.blocks, judge);
  }

  private build(spec: SkillSpec, values: ArrayLike<number>): Built {
    const key = this.heavy.map((i) => values[i]).join(' ');
    const known = this.built.get(key);
    if (known) return known;
    const made = {
      skill: buildSkill(freeKeys(spec)),
      flyer: makeFlyer({
        ...STUDY,
        near: { touchdown: this.now.duration, isStudy: true },
        ...(this.balance ? { balance: { spec: this.balance, plan: this.plan } } : {}),
      }),
    };
    if (this.built.size >= this.keeps) this.built.clear();
    this.built.set(key, made);
    return made;
  }
}
