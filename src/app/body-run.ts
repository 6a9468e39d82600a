/** Age, stature and mass are typed one after another and are one change of the body: what they do is said from the body before the first of them. */
import type { Athlete } from '../../sim/index.ts';
import type { FlightResult } from '../engine/result.ts';

type Flown = Pick<FlightResult, 'athlete'>;
export interface BodyRun<T extends Flown> {
  /** before the first change of the run */
  readonly from: T;
  /** after the last */
  readonly to: T;
}

const bodyOf = (athlete: Athlete): string => JSON.stringify({ ...athlete, name: '', club: '' });

/** Undefined where the change was no other measure of the same person. */
export function continueRun<T extends Flown>(run: BodyRun<T> | undefined, before: T, after: T): BodyRun<T> | undefined {
  const [a, b] = [before.athlete, after.athlete];
  if (a.name !== b.name || bodyOf(a) === bodyOf(b)) return undefined;
  return { from: run?.to === before ? run.from : before, to: after };
}
