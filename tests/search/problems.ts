/** Problems whose answers have closed forms: one rigid segment, in a flight of stated time or down to a surface. */
import type { TreeSegmentSpec } from '../../sim/body/tree.ts';
import type { SkillSpec, TakeoffSpec } from '../../sim/index.ts';
import { part, REST } from '../checks/flown.ts';
import type { Moments } from '../oracles/free-body.ts';

/** A lateral (Z), B front-back (X), C long (Y). */
export function rigidSkill(
  { A, B, C }: Moments,
  more: Partial<SkillSpec> & { readonly takeoff?: TakeoffSpec; readonly segment?: Partial<TreeSegmentSpec> },
): SkillSpec {
  const { segment, takeoff = REST, ...rest } = more;
  return {
    title: 'rigid',
    athlete: { kind: 'tree', tree: { name: 'rigid', segments: [part('body', 70, [B, C, A, 0, 0, 0], segment)] } },
    gravity: 9.81,
    start: { kind: 'stated', takeoff },
    end: { kind: 'duration', duration: 1 },
    base: {},
    ownShapes: {},
    blocks: [],
    keys: [],
    samples: [],
    smoothing: { kind: 'gcv' },
    ...rest,
  };
}

export const takeoffWith = (more: Partial<TakeoffSpec>): TakeoffSpec => ({ ...REST, ...more });
