/** A parsed skill in SI units and radians, angles still by name; buildSkill makes the Body and resolves the names. */
import type { HumanSpec } from '../body/human.ts';
import type { TreeSpec } from '../body/tree.ts';
import type { EndSpec } from '../flight/flight.ts';
import type { AnchoredTime, ArmPath, KeyKind } from '../schedule/schedule.ts';
import type { SmoothingCriterion } from '../schedule/smoothing.ts';
import type { CatchAsk } from './catch-ask.ts';
import type { HandContact } from './hand-contact.ts';
import type { LandingSpec } from './landing-spec.ts';
import type { SkillTarget } from './skill.ts';
import type { StartSpec } from './start-spec.ts';

export type AthleteSpec =
  | { readonly kind: 'human'; readonly human: HumanSpec }
  | { readonly kind: 'tree'; readonly tree: TreeSpec };

/** Angle values by name, rad; a name without L or R means both sides. */
export type NamedPose = Readonly<Record<string, number>>;

export interface BlockSpec {
  readonly shape: string;
  /** of the shape, as people read it */
  readonly title?: string;
  readonly pose: NamedPose;
  /** what differs from the shape here */
  readonly adjust: NamedPose;
  readonly from: AnchoredTime;
  readonly to: AnchoredTime;
  readonly arms: ArmPath;
}

interface KeySpec {
  readonly angle: string;
  readonly at: AnchoredTime;
  readonly value: number;
  readonly kind: KeyKind;
  readonly next?: number;
}

export interface SkillSpec {
  readonly title: string;
  readonly athlete: AthleteSpec;
  readonly gravity: number;
  readonly start: StartSpec;
  readonly end: EndSpec;
  readonly base: NamedPose;
  /** shapes of the file's own, by name: these may only name angles that the body has */
  readonly ownShapes: Readonly<Record<string, NamedPose>>;
  readonly blocks: readonly BlockSpec[];
  readonly keys: readonly KeySpec[];
  readonly samples: readonly {
    readonly angle: string;
    readonly start: number;
    readonly rate: number;
    readonly values: ArrayLike<number>;
    readonly smoothing?: SmoothingCriterion;
  }[];
  readonly smoothing: SmoothingCriterion;
  readonly contacts?: readonly HandContact[];
  readonly after?: LandingSpec;
  readonly catch?: CatchAsk;
  /** the file names the entry that ends the flight */
  readonly isEntry?: true;
  readonly target?: SkillTarget;
  /** the legs before this one, in order, where it is a leg of a chain: what begins it is theirs to give (launch-chained.ts) */
  readonly earlier?: readonly SkillSpec[];
}
