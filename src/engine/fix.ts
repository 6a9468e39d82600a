/** "Fix the landing": asked of one flown document, answered by a worker, each answer as a document that can be flown. */
import {
  type Athlete,
  type FixAnswer,
  type FixProgress,
  type LandingFix,
  parseSkill,
  type ShapeData,
  type SkillFile,
  updateSkill,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { JobCall, Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

export interface FixedSkill extends Pick<LandingFix, 'steps' | 'verdict' | 'airTime' | 'asksMore'> {
  readonly file: SkillFile;
}

interface FixesFound {
  readonly fixes: readonly FixedSkill[];
  /** with none: what comes nearest, where something does */
  readonly closest: FixedSkill | undefined;
}

export interface Fixing {
  /** `done` rejects with the reason, and after a cancel */
  fix(
    result: FlightResult,
    onProgress: (progress: FixProgress) => void,
  ): { readonly done: Promise<FixesFound>; cancel(): void };
}

export function makeFixing(
  shelf: { readonly athletes: Readonly<Record<string, Athlete>>; readonly shapes: Readonly<Record<string, ShapeData>> },
  pool: Pool = makePagePool(),
): Fixing {
  return {
    fix: ({ file }, onProgress) => {
      const spec = parseSkill(file, shelf);
      const { done, cancel }: JobCall<FixAnswer> = pool.run('fix', { spec }, { onProgress, patienceMs: 0 });
      const filed = ({ spec: after, ...rest }: LandingFix): FixedSkill => ({
        ...rest,
        file: updateSkill(file, spec, after),
      });
      const found = done.then(({ fixes, closest }) => ({
        fixes: fixes.map(filed),
        closest: closest && filed(closest),
      }));
      return { done: found, cancel };
    },
  };
}
