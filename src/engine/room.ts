/** How much room for error a skill has, for its card: of its times, of its push, of its lean the one input of each that forgives least. SI, radians. */
import {
  type Flight,
  findInput,
  type LaunchedSkill,
  outcomeOf,
  type SkillSpec,
  type StudyRequest,
  USUAL_ERRORS,
  usualSpread,
  usualWindow,
} from '../../sim/index.ts';
import type { Batch, BatchCall, Progress } from './batch.ts';

type RoomKind = 'time' | 'push' | 'lean';

export interface RoomBar {
  readonly kind: RoomKind;
  readonly input: string;
  /** the smaller of both sides; 0: the landing is outside of its window as it is */
  readonly by: number;
  /** of a time: of which block or of which angle's key */
  readonly block?: number;
  readonly angle?: string;
}

const KINDS: readonly (readonly [RoomKind, RegExp])[] = [
  ['time', /^(block:\d+\.move(Start|Time)|key:\d+\.time)$/],
  ['push', /^takeoff\.speedUp$/],
  ['lean', /^(takeoff\.(tilt|lean)|contact\.lean)$/],
];
const kindOf = (id: string): RoomKind | undefined => KINDS.find(([, name]) => name.test(id))?.[0];

/** Of the skill that is asked about. */
interface RoomSkill {
  readonly spec: SkillSpec;
  readonly launched: LaunchedSkill;
  readonly flight: Flight;
}

export function findRoom(
  batch: Batch,
  { spec, launched, flight }: RoomSkill,
  onProgress: (progress: Progress) => void,
): BatchCall<readonly RoomBar[]> {
  const { parts, correlations } = usualSpread(spec, USUAL_ERRORS);
  const request: StudyRequest = {
    spec,
    vary: parts.map(({ input, by, kind }) => ({ input: input.id, by, kind })),
    correlations,
    window: usualWindow(spec, outcomeOf(launched, flight)).map(({ result, low, high }) => ({
      result: result.id,
      low,
      high,
    })),
    seed: 1,
  };
  const indices = parts.flatMap(({ input }, i) => (kindOf(input.id) ? [i] : []));
  const { done, cancel } = batch.bars(request, indices, onProgress);
  const narrowest = done.then((bars): RoomBar[] =>
    KINDS.flatMap(([kind]) => {
      const own = bars
        .filter(({ input }) => kindOf(input) === kind)
        .map(({ input, low, high }) => ({ input, by: Math.min(Math.abs(low.by), Math.abs(high.by)) }))
        .sort((a, b) => a.by - b.by);
      return own.slice(0, 1).map(({ input, by }) => ({ kind, input, by, ...placeOf(input) }));
    }),
  );
  narrowest.catch(() => {});
  return { done: narrowest, cancel };

  function placeOf(id: string): Pick<RoomBar, 'block' | 'angle'> {
    const [, block] = /^block:(\d+)/.exec(id) ?? [];
    if (block) return { block: Number(block) - 1 };
    const [, key] = /^key:(\d+)/.exec(findInput(spec, id).id) ?? [];
    return key ? { angle: spec.keys[Number(key) - 1]?.angle } : {};
  }
}
