/** The large stage, loaded with the first sign of a hand: no page opens with it. */
import { makeLate } from '../../late.tsx';
import { loadPart } from '../../load-part.ts';

export const loadLargeStage = loadPart(
  () => import('./large-stage.tsx'),
  (m) => m.LargeStageArea,
);
export const LargeStageArea = makeLate(loadLargeStage);
