/** What page and worker say to each other about a draft. */
import type { Athlete, ShapeData, SkillFile } from '../../sim/index.ts';

export interface DraftRequest {
  readonly code: string;
  readonly direction?: 'backward' | 'forward';
  readonly athlete: Athlete;
  /** what stands in the drafted skill for its athlete */
  readonly ref: SkillFile['athlete'];
  readonly shapes: Readonly<Record<string, ShapeData>>;
}

export type DraftReply =
  | { readonly kind: 'flights'; readonly n: number }
  | { readonly kind: 'done'; readonly file: SkillFile; readonly falls: readonly string[] }
  | { readonly kind: 'failed'; readonly name: string; readonly reason: string };
