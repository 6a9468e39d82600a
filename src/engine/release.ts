/** Asks a worker for the release of a swing or a known contact. */
import type { ShapeData } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { Pool } from '../jobs/pool.ts';
import type { AskRelease } from './releases.ts';

/** A release of the ready skills takes under a second; one that takes longer than this, ms, is given up and can be tried again. */
export const LONGEST_RELEASE_MS = 30_000;

export const makeAskRelease =
  (shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): AskRelease =>
  (file, athlete) =>
    pool.run('release', { file, athlete, shapes }, { limitMs: LONGEST_RELEASE_MS }).done;
