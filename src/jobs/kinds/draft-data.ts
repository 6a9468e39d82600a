/** What a draft is asked, and what comes of it. */
import type { Athlete, ShapeData, SkillFile } from '../../../sim/index.ts';

export interface DraftRequest {
  readonly code: string;
  readonly direction?: 'backward' | 'forward';
  readonly athlete: Athlete;
  /** the drafted skill's reference to its athlete */
  readonly ref: SkillFile['athlete'];
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

export interface Drafted {
  readonly file: SkillFile;
  /** what the draft does not reach, in words */
  readonly falls: readonly string[];
}
