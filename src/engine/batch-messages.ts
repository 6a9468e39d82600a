/** What the page and its batch workers say to each other. A call has a number; what comes for another one is stale. */
import type {
  Answer,
  BalanceSpec,
  Bar,
  InputUnit,
  LimitsAsked,
  MapRequest,
  MapRow,
  Obstacle,
  SampleTable,
  SkillSpec,
  Solution,
  SolveProgress,
  StudyRequest,
  Wish,
} from '../../sim/index.ts';

/** SI, radians; unknowns by id. */
export interface SolveRequest {
  readonly spec: SkillSpec;
  readonly wishes: readonly Wish[];
  readonly unknowns: readonly { readonly input: string; readonly span?: readonly [number, number] }[];
  readonly limits?: LimitsAsked;
  readonly seed?: number;
  readonly answers?: number;
  readonly fits?: number;
  /** share of this many tries with the usual errors that land in the usual window, told with each answer; 0: none */
  readonly tries?: number;
  readonly balance?: BalanceSpec;
}

type Bound = Extract<Obstacle, { kind: 'bound' }>;
/** An obstacle without the functions of its input. */
export type ToldObstacle =
  | Exclude<Obstacle, Bound>
  | (Omit<Bound, 'unknown'> & { readonly input: string; readonly label: string; readonly unit: InputUnit });

/** An answer that can be sent: what the solve found, inputs by their ids. */
export type ToldAnswer = Omit<Answer, 'nearest'> & {
  readonly nearest?: Solution & { readonly obstacles: readonly ToldObstacle[] };
};

export type BatchJob =
  | { readonly kind: 'study'; readonly study: StudyRequest }
  | { readonly kind: 'map'; readonly map: MapRequest }
  | { readonly kind: 'solve'; readonly solve: SolveRequest };

export type BatchPiece =
  | { readonly kind: 'now' }
  | { readonly kind: 'samples'; readonly from: number; readonly to: number }
  | { readonly kind: 'bar'; readonly index: number }
  | { readonly kind: 'row'; readonly index: number }
  | { readonly kind: 'solve' };

export type BatchResult =
  | { readonly kind: 'now'; readonly now: readonly number[] }
  | { readonly kind: 'samples'; readonly table: SampleTable }
  | { readonly kind: 'bar'; readonly bar: Bar }
  | { readonly kind: 'row'; readonly row: MapRow }
  | { readonly kind: 'solve'; readonly answer: ToldAnswer };

/** `job` is sent with the first piece that a worker gets of a call. */
export type BatchAsk =
  | {
      readonly kind: 'piece';
      readonly call: number;
      readonly index: number;
      readonly job?: BatchJob;
      readonly piece: BatchPiece;
    }
  | { readonly kind: 'cancel'; readonly call: number };

export type BatchReply =
  | { readonly kind: 'result'; readonly call: number; readonly index: number; readonly result: BatchResult }
  | { readonly kind: 'progress'; readonly call: number; readonly progress: SolveProgress }
  | {
      readonly kind: 'failed';
      readonly call: number;
      readonly index: number;
      readonly name: string;
      readonly reason: string;
    };
