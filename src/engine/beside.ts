/**
 * Flights that cost too much for the page (weight.ts): each is flown by a worker and handed over as plain data. Until it has come there is no
 * flight of its skill; who waits hears of it. One is flown at a time, and the newest next: those asked for in between are passed over.
 */
import type { Athlete, FlownData, SkillFile } from '../../sim/index.ts';

interface AskedFlight {
  readonly done: Promise<FlownData>;
  cancel(): void;
}
export type AskFlight = (file: SkillFile, athlete: Athlete) => AskedFlight;

class FlightPendingError extends Error {
  constructor(title: string) {
    super(`"${title}" is being flown beside the page`);
    this.name = 'FlightPendingError';
  }
}

/** It was cancelled, took longer than the limit, or its worker was lost: asked for again, it may well come. */
class FlightStoppedError extends Error {
  override readonly name = 'FlightStoppedError';
  readonly why: 'cancelled' | 'limit' | 'lost';

  constructor(why: FlightStoppedError['why']) {
    super(SAID[why]);
    this.why = why;
  }
}
const SAID: Readonly<Record<FlightStoppedError['why'], string>> = {
  cancelled: 'its flight beside the page was cancelled',
  limit: 'its flight beside the page took too long and was stopped; with fewer keys or samples it takes less',
  lost: 'the part of the program that flew it was lost',
};
const STOPPED: Readonly<Record<string, FlightStoppedError['why']>> = {
  JobCancelledError: 'cancelled',
  JobTimeoutError: 'limit',
  WorkerLostError: 'lost',
  PartNotLoadedError: 'lost',
};

interface BesideFlights<Result> {
  /** throws a FlightPendingError while it is flown, or what it failed with */
  fly(file: SkillFile): Result;
  /** when it has come, was stopped or has failed; at once where it is not under way */
  flown(file: SkillFile): Promise<void>;
  /** nothing of it is wanted */
  cancel(file: SkillFile): void;
  /** those that were stopped are asked for again by the next flight */
  retry(): void;
}

type Known<Result> =
  | { readonly result: Result }
  | { readonly error: unknown }
  | { readonly asked: AskedFlight; readonly settled: Promise<void> };

interface BesideHost<Result> {
  ask(file: SkillFile): AskedFlight;
  take(file: SkillFile, data: FlownData): Result;
  /** it has come, was stopped or has failed */
  settled(file: SkillFile): void;
}

export function makeBeside<Result>({ ask, take, settled }: BesideHost<Result>): BesideFlights<Result> {
  const known = new WeakMap<SkillFile, Known<Result>>();
  const stopped = new Set<SkillFile>();
  let current: SkillFile | undefined;
  let next: SkillFile | undefined;
  const begin = (file: SkillFile): void => {
    current = file;
    const asked = ask(file);
    const over = asked.done
      .then((data): Known<Result> => ({ result: take(file, data) }))
      .catch((error: unknown): Known<Result> => ({ error: errorOf(error) }))
      .then((outcome) => {
        // one that was called back and asked for again is another
        const one = known.get(file);
        if (one && 'asked' in one && one.asked === asked) known.set(file, outcome);
        if ('error' in outcome && outcome.error instanceof FlightStoppedError) stopped.add(file);
        if (current === file) current = undefined;
        const waiting = next;
        next = undefined;
        if (waiting && !known.has(waiting)) begin(waiting);
        settled(file);
      });
    known.set(file, { asked, settled: over });
  };
  return {
    fly: (file) => {
      const one = known.get(file);
      if (one && 'result' in one) return one.result;
      if (one && 'error' in one) throw one.error;
      if (!one) {
        if (current) next = file;
        else begin(file);
      }
      throw new FlightPendingError(file.title);
    },
    flown: async (file) => {
      for (;;) {
        const one = known.get(file);
        if (one && 'settled' in one) return one.settled;
        if (next !== file || !current) return;
        const before = known.get(current);
        if (!before || !('settled' in before)) return;
        await before.settled;
      }
    },
    cancel: (file) => {
      const one = known.get(file);
      if (one && 'asked' in one) one.asked.cancel();
      if (next !== file) return;
      next = undefined;
      known.set(file, { error: new FlightStoppedError('cancelled') });
      stopped.add(file);
      settled(file);
    },
    retry: () => {
      for (const file of stopped) known.delete(file);
      stopped.clear();
    },
  };
}

const errorOf = (error: unknown): unknown => {
  const why = error instanceof Error ? STOPPED[error.name] : undefined;
  return why && error instanceof Error ? new FlightStoppedError(why) : error;
};
