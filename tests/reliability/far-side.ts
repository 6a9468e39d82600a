// A far side that answers when the test says so, and a page over it.
import { createRoot } from 'solid-js';
import { athletes, shapes, skills } from '../../presets/index.ts';
import type { FlownData, SkillFile } from '../../sim/index.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import { type Engine, makeEngine } from '../../src/engine/engine.ts';
import type { FarFlights } from '../../src/engine/far-flight.ts';
import { MOST_HERE } from '../../src/engine/weight.ts';
import { flightJob } from '../../src/jobs/kinds/flight-job.ts';
import { readJob } from '../../src/jobs/kinds/read-job.ts';
import { JobCancelledError } from '../../src/jobs/pool.ts';
import { keysOf, NECK, withSchedule } from './heavy-parts.ts';

export const shelf = { athletes, shapes };
export const light = skills['back-straight'] as SkillFile;
/** Just beyond the count, so that a test of the ways round it takes no time. */
export const heavy = (title: string): SkillFile =>
  withSchedule(light, title, ({ base }) => ({ ...(base ? { base } : {}), keys: keysOf(NECK, MOST_HERE + 50, 0.8) }));

export const tasks = async (count = 4): Promise<void> => {
  for (let i = 0; i < count; i++) await new Promise((resolve) => setTimeout(resolve));
};

/** As a thread would: asked and answered by copies. */
export async function runJob<R>(
  steps: AsyncGenerator<unknown, R, boolean> | Generator<unknown, R, boolean>,
): Promise<R> {
  for (;;) {
    const step = await steps.next(false);
    if (step.done) return structuredClone(step.value);
  }
}
type Opened<R> = (piece: never, report: () => void) => AsyncGenerator<unknown, R, boolean>;
export const flyFar = (file: SkillFile, engine: Engine): Promise<FlownData> =>
  runJob(
    (flightJob.open(structuredClone({ file, athlete: engine.findAthlete(file), shapes })) as Opened<FlownData>)(
      undefined as never,
      () => {},
    ),
  );

export interface Asked {
  readonly file: SkillFile;
  answer(): Promise<void>;
  fail(error: Error): Promise<void>;
  isCancelled: boolean;
}

/** An engine with a far side that answers when the test says so. */
export function made(): { engine: Engine; asked: Asked[] } {
  const asked: Asked[] = [];
  const far: FarFlights = {
    ask: (file) => {
      let resolve: (data: FlownData) => void;
      let reject: (error: Error) => void;
      const done = new Promise<FlownData>((yes, no) => {
        resolve = yes;
        reject = no;
      });
      const one: Asked = {
        file,
        isCancelled: false,
        answer: async () => {
          resolve(await flyFar(file, engine));
          await tasks();
        },
        fail: async (error) => {
          reject(error);
          await tasks();
        },
      };
      asked.push(one);
      return {
        done,
        cancel: () => {
          one.isCancelled = true;
          reject(new JobCancelledError('cancelled'));
        },
      };
    },
    read: (text) => ({
      done: runJob(
        (readJob.open({ text, shapes }) as Opened<Awaited<ReturnType<FarFlights['read']>['done']>>)(
          undefined as never,
          () => {},
        ),
      ),
      cancel: () => {},
      finish: () => {},
    }),
  };
  const engine: Engine = makeEngine(shelf, undefined, far);
  return { engine, asked };
}

const ends: (() => void)[] = [];

/** A page with a fake keeper. */
export function pageOf(
  engine: Services['flying'],
  more: Partial<Services> = {},
  kept?: Services['keeper']['kept'],
): Page {
  const services = {
    flying: engine,
    presets: { first: light, standIn: skills['arms-in-spin'], shapes, skills: [], athletes: [] },
    keeper: { kept, write: async () => true, watch: () => {}, check: async () => {}, leave: () => {} },
    tools: [],
    ...more,
  } as unknown as Services;
  return createRoot((end) => {
    ends.push(end);
    return createPage(services);
  });
}

/** After each test. */
export function endPages(): void {
  for (const end of ends.splice(0)) end();
}
