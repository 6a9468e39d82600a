/** What a search has found, and of which document. */
import type { ShareAfter, Solution } from '../../../sim/index.ts';
import type { AnswerResult, ObstacleResult } from '../../engine/ask.ts';
import type { Chosen } from './ask-start.ts';

export type SearchKind = 'meet' | 'forgiving' | 'twist';

export interface SearchFound {
  /** of the document */
  readonly id: number;
  readonly kind: SearchKind;
  readonly key: string;
  readonly wantedKey: string;
  readonly answer: AnswerResult;
  readonly chosen: readonly Chosen[];
  /** answers, or the nearest alone */
  readonly list: readonly Solution[];
  readonly obstacles: readonly ObstacleResult[];
  /** of the most forgiving: moves, those that met the target again, those kept, and the share before and after in other tries */
  readonly moves?: {
    readonly rounds: number;
    readonly met: number;
    readonly kept: number;
    readonly again?: { readonly before: ShareAfter; readonly after: ShareAfter };
  };
  /** of the most twist: how much was met, and the first number that was not */
  readonly most?: { readonly twists: number; readonly beyond?: number };
}
