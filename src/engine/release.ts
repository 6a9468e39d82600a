/** Asks a worker for the release of a swing or a known contact. */
import type { ShapeData } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { Pool } from '../jobs/pool.ts';
import type { AskRelease } from './releases.ts';

export const makeAskRelease =
  (shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): AskRelease =>
  (file, athlete) =>
    pool.run('release', { file, athlete, shapes }).done;
