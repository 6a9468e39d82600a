/** What a draft is asked, and what comes of it. */
import type { Athlete, DraftSpec, Refusal, ShapeData, SkillFile } from '../../../sim/index.ts';

export interface DraftRequest {
  readonly spec: DraftSpec;
  readonly athlete: Athlete;
  /** the drafted skill's reference to its athlete */
  readonly ref: SkillFile['athlete'];
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

export type Drafted = { readonly kind: 'flown'; readonly file: SkillFile } | Refusal;
