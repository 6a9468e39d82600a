/** What a draft is asked, and what comes of it. */
import type { Athlete, DraftSpec, Refusal, ShapeData, SkillFile } from '../../../sim/index.ts';

export interface DraftRequest {
  readonly spec: DraftSpec;
  readonly athlete: Athlete;
  /** the drafted skill's reference to its athlete */
  readonly ref: SkillFile['athlete'];
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

/** A draft that asks more of muscles than is known, and what. */
export interface MarkedDraft {
  readonly file: SkillFile;
  readonly asks: readonly string[];
}
type RefusedDraft = Omit<Refusal, 'beyond'> & { readonly beyond?: MarkedDraft };
export type Drafted = { readonly kind: 'flown'; readonly file: SkillFile } | RefusedDraft;
