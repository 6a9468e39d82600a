/** Verdicts with their landing and what came near a rail, of skills beside the one that is open: each is run once, by a worker. */
import { isMoreThanFlight, nearOf, type ShapeData, type SkillVerdict } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

export interface Landings {
  /** `known` is called at once, and again when a landing that was waited for is known; what is held equal is no file to run */
  judge(result: FlightResult, isOwn: boolean, known: (verdict: SkillVerdict) => void): void;
}

export function makeLandings(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): Landings {
  const verdicts = new WeakMap<FlightResult, SkillVerdict>();
  return {
    judge: (result, isOwn, known) => {
      const inFlight = result.outline.verdict;
      const { ending } = inFlight;
      const isPending = ending.kind === 'notComputed' && ending.why.kind === 'pending';
      if (!isPending && !(isOwn && isMoreThanFlight(result.file))) return known(inFlight);
      const done = verdicts.get(result);
      if (done) return known(done);
      const notRun = (kind: 'heldEqual' | 'failed'): SkillVerdict => ({
        ...inFlight,
        ...(isPending ? { ending: { kind: 'notComputed', why: { kind } } } : {}),
      });
      if (!isOwn) return known(notRun('heldEqual'));
      known(inFlight);
      const { file, athlete } = result;
      const keep = (verdict: SkillVerdict): void => {
        verdicts.set(result, verdict);
        known(verdict);
      };
      pool
        .run(
          'whole',
          { file, athlete, shapes },
          {
            onProgress: (step) => {
              if (step.kind !== 'whole') return;
              const { legs } = step.result;
              const { judged, nearest } = legs[legs.length - 1];
              const missed = [...nearOf(nearest), ...inFlight.missed];
              keep({ ...inFlight, missed, ...(isPending ? judged : {}) });
            },
          },
        )
        .done.catch(() => known(notRun('failed')));
    },
  };
}
