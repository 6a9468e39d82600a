/** What a solve beside the page is asked and what it answers: inputs by their ids, since inputs hold functions. */
import type {
  Answer,
  BalanceSpec,
  InputUnit,
  LimitsAsked,
  Obstacle,
  SkillSpec,
  Solution,
  Wish,
} from '../../../sim/index.ts';

/** SI, radians; unknowns by id. */
export interface SolveRequest {
  readonly spec: SkillSpec;
  readonly wishes: readonly Wish[];
  readonly ending?: 'held';
  readonly unknowns: readonly { readonly input: string; readonly span?: readonly [number, number] }[];
  readonly limits?: LimitsAsked;
  readonly seed?: number;
  readonly answers?: number;
  readonly fits?: number;
  /** share of this many tries with the usual errors that land in the usual window, given with each answer; 0: none */
  readonly tries?: number;
  readonly balance?: BalanceSpec;
}

type Bound = Extract<Obstacle, { kind: 'bound' }>;
/** An obstacle without the functions of its input. */
export type ObstacleResult =
  | Exclude<Obstacle, Bound>
  | (Omit<Bound, 'unknown'> & { readonly input: string; readonly label: string; readonly unit: InputUnit });

/** An answer that can be sent: what the solve found, inputs by their ids. */
export type AnswerResult = Omit<Answer, 'nearest'> & {
  /** the same share of the same tries with the skill as it is; undefined where it was not asked for, or could not be had */
  readonly ownMargin?: number;
  readonly nearest?: Solution & { readonly obstacles: readonly ObstacleResult[] };
};
