/** What a long text turned out to be. */
import type { SkillFile } from '../../../sim/index.ts';

export type ReadLong =
  | { readonly kind: 'skill'; readonly file: SkillFile; readonly isVersion1: boolean }
  /** no skill: the page reads it */
  | { readonly kind: 'other' };
