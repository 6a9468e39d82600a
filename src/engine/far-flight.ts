/** Asks a worker of its own for a flight that is too heavy for the page, and for a file that is too long to be read in it. */
import type { ShapeData } from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { ReadLong } from '../jobs/kinds/read-data.ts';
import type { JobCall, Pool } from '../jobs/pool.ts';
import type { AskFlight } from './beside.ts';

/** The heaviest of tests/reliability/heavy-files.ts takes a few seconds; one that takes longer than this, ms, is given up and can be tried again. */
const LONGEST_FLIGHT_MS = 120_000;

export interface FarFlights {
  readonly ask: AskFlight;
  read(text: string): JobCall<ReadLong>;
}

export function makeFarFlights(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): FarFlights {
  // a flight stops between no two steps: its worker is ended at once
  const options = { limitMs: LONGEST_FLIGHT_MS, patienceMs: 0 };
  return {
    ask: (file, athlete) => pool.run('flight', { file, athlete, shapes }, options),
    read: (text) => pool.run('read', { text, shapes }, options),
  };
}
