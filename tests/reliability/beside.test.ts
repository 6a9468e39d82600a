// A flight that costs much is flown beside the page: where, by counts; to the same bits; pending, cancelled, limited, passed over; read and opened when it has come.
import { createRoot } from 'solid-js';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { athletes, catalogue, chains, shapes, skills } from '../../presets/index.ts';
import { type FlownData, type SkillFile, unpackFlown } from '../../sim/index.ts';
import { createPage, type Page } from '../../src/app/page.ts';
import type { Services } from '../../src/app/services.ts';
import { makeStartMark } from '../../src/app/start-mark.ts';
import { makeHistory, open as openIn } from '../../src/document/history.ts';
import { type Engine, makeEngine } from '../../src/engine/engine.ts';
import type { FarFlights } from '../../src/engine/far-flight.ts';
import { MOST_HERE, weighFlight } from '../../src/engine/weight.ts';
import { flightJob } from '../../src/jobs/kinds/flight-job.ts';
import { readJob } from '../../src/jobs/kinds/read-job.ts';
import { JobCancelledError, JobTimeoutError, WorkerLostError } from '../../src/jobs/pool.ts';
import { someOf } from '../corpus.ts';
import { BESIDE_ENDS, HEAVY_FILES } from './heavy-files.ts';
import { keysOf, NECK, withSchedule } from './heavy-parts.ts';

const shelf = { athletes, shapes };
const light = skills['back-straight'] as SkillFile;
/** Just beyond the count, so that a test of the ways round it takes no time. */
const heavy = (title: string): SkillFile =>
  withSchedule(light, title, ({ base }) => ({ ...(base ? { base } : {}), keys: keysOf(NECK, MOST_HERE + 50, 0.8) }));

const ERRORS = { JobCancelledError, JobTimeoutError, WorkerLostError };

const ends: (() => void)[] = [];
beforeAll(() => {
  vi.stubGlobal('document', { documentElement: { dataset: {} } });
  vi.stubGlobal('cancelAnimationFrame', () => {});
});
afterEach(() => {
  for (const end of ends.splice(0)) end();
});
afterAll(() => vi.unstubAllGlobals());

const tasks = async (count = 4): Promise<void> => {
  for (let i = 0; i < count; i++) await new Promise((resolve) => setTimeout(resolve));
};

/** As a thread would: asked and answered by copies. */
async function runJob<R>(steps: AsyncGenerator<unknown, R, boolean> | Generator<unknown, R, boolean>): Promise<R> {
  for (;;) {
    const step = await steps.next(false);
    if (step.done) return structuredClone(step.value);
  }
}
type Opened<R> = (piece: never, report: () => void) => AsyncGenerator<unknown, R, boolean>;
const flyFar = (file: SkillFile, engine: Engine): Promise<FlownData> =>
  runJob(
    (flightJob.open(structuredClone({ file, athlete: engine.findAthlete(file), shapes })) as Opened<FlownData>)(
      undefined as never,
      () => {},
    ),
  );

interface Asked {
  readonly file: SkillFile;
  answer(): Promise<void>;
  fail(error: Error): Promise<void>;
  isCancelled: boolean;
}

/** An engine with a far side that answers when the test says so. */
function made(): { engine: Engine; asked: Asked[] } {
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

const nameOf = (fly: () => unknown): string => {
  try {
    fly();
    return 'flown';
  } catch (error) {
    return (error as Error).name;
  }
};
const bitsOf = (result: ReturnType<Engine['fly']>): unknown => {
  const { frames, flight, outline, cautions, jump, names, apparatus, takeoffCautions } = result;
  const quat = new Float64Array(4);
  const q = [0, 1, 2].map(() => new Float64Array(flight.schedule.hinges));
  const looks = Array.from({ length: 40 }, (_, i) => {
    const t = (flight.duration * i) / 39;
    flight.quatInto(t, quat);
    flight.schedule.evalInto(t, q[0], q[1], q[2]);
    return [...quat, ...q.flatMap((x) => [...x])];
  });
  const { stepTimes, stats, touchdown, schedule } = flight;
  return {
    frames,
    looks,
    stepTimes,
    stats,
    touchdown,
    moving: schedule.moving,
    outline,
    cautions,
    jump,
    names,
    apparatus,
    takeoffCautions,
  };
};

describe('what is flown beside the page', () => {
  test('every heavy file, and no ready skill, by counts alone', async () => {
    const { engine, asked } = made();
    for (const { id } of catalogue) {
      const whole = (skills[id] ?? chains[id]) as SkillFile;
      expect(weighFlight(whole, engine.findAthlete(whole)), id).toBeLessThan(MOST_HERE / 3);
    }
    for (const { id } of someOf(catalogue, 6)) {
      const file = engine.legs.fileOf((skills[id] ?? chains[id]) as SkillFile, 0);
      await engine.ready(file);
      expect(
        nameOf(() => engine.fly(file)),
        id,
      ).toBe('flown');
    }
    expect(asked).toEqual([]);
    for (const { name, make } of HEAVY_FILES) {
      const file = make();
      expect(
        nameOf(() => engine.fly(engine.legs.fileOf(file, 0))),
        name,
      ).toBe('FlightPendingError');
    }
    // one at a time
    expect(asked.length).toBe(1);
  });

  test('comes to the same bits as in the page: stated, with a swing, with a push, with a catch', async () => {
    const { engine } = made();
    const here = makeEngine(shelf);
    for (const id of [
      'back-straight-full',
      'giant-late-hand-full',
      'vault-side-entry-arms-in',
      'low-rail-half-turn-high-rail',
    ]) {
      const whole = (skills[id] ?? chains[id]) as SkillFile;
      const file = here.legs.fileOf(whole, 0);
      await here.ready(whole);
      const shown = here.fly(file);
      const data = await flyFar(file, engine);
      const back = unpackFlown(shown.flight.body, data);
      expect(bitsOf({ ...shown, ...back } as never), id).toEqual(bitsOf(shown));
      expect(data.frames, id).toEqual(shown.frames);
    }
  });

  test('is pending until it has come, once for each file, and its listener hears of it', async () => {
    const { engine, asked } = made();
    const heard: string[] = [];
    engine.onRelease((file) => heard.push(file.title));
    const file = heavy('A');
    expect(nameOf(() => engine.fly(file))).toBe('FlightPendingError');
    expect(nameOf(() => engine.fly(file))).toBe('FlightPendingError');
    expect(asked.length).toBe(1);
    await asked[0].answer();
    expect(heard).toEqual(['A']);
    const result = engine.fly(file);
    expect(result.file).toBe(file);
    expect(engine.fly(file)).toBe(result);
    expect(bitsOf(result)).toEqual(bitsOf(makeEngine(shelf).fly(file)));
  });

  test('one at a time, the newest next: those between are passed over', async () => {
    const { engine, asked } = made();
    const [a, b, c] = ['A', 'B', 'C'].map(heavy);
    for (const file of [a, b, c]) nameOf(() => engine.fly(file));
    await asked[0].answer();
    expect(asked.map(({ file }) => file.title)).toEqual(['A', 'C']);
  });

  for (const { name, error, says, after } of BESIDE_ENDS)
    test(`${name}: it says so, stays as it is, and comes when it is asked for again`, async () => {
      const { engine, asked } = made();
      const file = heavy('A');
      nameOf(() => engine.fly(file));
      await asked[0].fail(new ERRORS[error]('x'));
      expect(() => engine.fly(file)).toThrow(says);
      expect(asked.length).toBe(1);
      engine.retryReleases();
      expect(nameOf(() => engine.fly(file))).toBe('FlightPendingError');
      await asked[1].answer();
      expect(nameOf(() => engine.fly(file))).toBe(after);
    });

  test('a fault of the skill is said as it is in the page', async () => {
    const { engine, asked } = made();
    const bad = withSchedule(heavy('A'), 'A', (schedule) => ({
      ...schedule,
      keys: [...(schedule.keys ?? []), { angle: 'neckTurn', at: { anchor: 'takeoff', s: 0 }, deg: 3 }],
    }));
    nameOf(() => engine.fly(bad));
    await asked[0].answer().catch(async (error: Error) => asked[0].fail(error));
    expect(nameOf(() => engine.fly(bad))).toBe('ScheduleOrderError');
  });
});

/** A page with a fake keeper. */
function pageOf(engine: Services['flying'], more: Partial<Services> = {}, kept?: Services['keeper']['kept']): Page {
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

describe('a heavy file is opened', () => {
  // as long as what is read beside the page, and soon flown
  const text = JSON.stringify(
    withSchedule(light, 'Dense', ({ base }) => ({ ...(base ? { base } : {}), keys: keysOf(NECK, 2000, 0.8) })),
  );

  test('when it has been read and flown: what is open stays until then and can be worked on', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text);
    expect(page.doc.opening.now()?.name).toBe('dense.json');
    await tasks(8);
    expect(page.doc.file().title).toBe(light.title);
    expect(page.flight.outcome().isWaiting).toBeUndefined();
    page.doc.edit({ ...page.doc.file(), title: 'Worked on meanwhile' }, 'x');
    expect(page.flight.result().file.title).toBe('Worked on meanwhile');
    expect(asked.length).toBe(1);
    await asked[0].answer();
    expect(page.doc.opening.now()).toBeUndefined();
    expect(page.doc.file().title).toBe('Dense');
    expect(page.flight.result().file).toBe(page.doc.file());
    expect(page.flight.lanes().reduce((n, { keys }) => n + keys.length, 0)).toBeGreaterThan(1900);
    page.doc.undo();
    expect(page.doc.file().title).toBe('Worked on meanwhile');
  });

  test('a cancel leaves everything as it was, and nothing comes after it', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    const before = page.doc.history();
    page.doc.readText('dense.json', text);
    await tasks(8);
    expect(page.doc.opening.cancel()).toBe(true);
    await tasks();
    expect(asked[0].isCancelled).toBe(true);
    expect(page.doc.opening.now()).toBeUndefined();
    expect(page.doc.fileFault()).toBeUndefined();
    expect(page.doc.history()).toEqual(before);
    // again, to its end
    page.flight.retry();
    page.doc.readText('dense.json', text);
    await tasks(8);
    await asked[1].answer();
    expect(page.doc.file().title).toBe('Dense');
  });

  test('at the limit it is refused in one line, and nothing was changed', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text);
    await tasks(8);
    await asked[0].fail(new JobTimeoutError('x'));
    expect(page.doc.fileFault()?.reason).toMatch(/took too long.*fewer keys or samples/);
    expect(page.doc.file()).toBe(page.flight.result().file);
    expect(page.doc.undoTitle()).toBeUndefined();
  });

  test('another that is opened meanwhile is the one that comes', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text);
    await tasks(8);
    page.doc.readText('light.json', JSON.stringify(skills['back-tuck']));
    expect(page.doc.opening.now()).toBeUndefined();
    await tasks();
    expect(asked[0].isCancelled).toBe(true);
    expect(page.doc.file().title).toBe((skills['back-tuck'] as SkillFile).title);
  });

  test('a long text with a fault names field and what is allowed, as a short one', async () => {
    const { engine } = made();
    const page = pageOf(engine);
    page.doc.readText('dense.json', text.replace('"deg":', '"deg":9999,"degree":'));
    await tasks(8);
    expect(page.doc.fileFault()?.reason).toMatch(/Key 1/);
    page.doc.readText('dense.json', text.slice(0, -200));
    await tasks(8);
    expect(page.doc.fileFault()?.name).toBe('dense.json');
    expect(page.doc.opening.now()).toBeUndefined();
  });

  test('an edit of it is flown beside the page; a cancel says so, with ways on', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.openSoon(heavy('A'), 'Open A');
    await tasks();
    await asked[0].answer();
    expect(page.doc.file().title).toBe('A');
    page.doc.edit(heavy('B'), 'Edit');
    expect(page.flight.outcome()).toMatchObject({ isWaiting: true, isBeside: true });
    expect(page.flight.result().file.title).toBe('A');
    page.flight.cancel();
    await tasks();
    expect(page.flight.outcome().fault).toMatchObject({ canRetry: true });
    page.flight.retry();
    await asked[2].answer();
    expect(page.flight.result().file.title).toBe('B');
  });
});

describe('one that waits for the flight before it', () => {
  test('is cancelled at once, and not begun with when that has come', async () => {
    const { engine, asked } = made();
    const page = pageOf(engine);
    page.doc.edit(heavy('A'), 'Edit');
    page.doc.edit(heavy('B'), 'Edit');
    expect(page.flight.outcome()).toMatchObject({ isWaiting: true, isBeside: true });
    page.flight.cancel();
    expect(page.flight.outcome().fault).toMatchObject({ canRetry: true });
    await asked[0].answer();
    expect(asked.length).toBe(1);
    expect(page.flight.outcome().fault).toMatchObject({ canRetry: true });
    page.flight.retry();
    await asked[1].answer();
    expect(page.flight.result().file.title).toBe('B');
  });
});

describe('the next start', () => {
  const makeMark = (value: { now: string | null }) =>
    makeStartMark({
      read: () => value.now,
      write: (v) => {
        value.now = v;
      },
    });
  const kept = (doc: SkillFile) => ({ history: openIn(makeHistory(light), doc, 'Open'), cursorS: 0 }) as never;

  test('a kept heavy document is shown by the stand-in until it has been flown, and marked until then', async () => {
    const { engine, asked } = made();
    const value: { now: string | null } = { now: null };
    const page = pageOf(engine, { startMark: makeMark(value) }, kept(heavy('A')));
    expect(page.flight.outcome()).toMatchObject({ isWaiting: true, isBeside: true });
    expect(page.flight.result().file.title).toBe((skills['arms-in-spin'] as SkillFile).title);
    expect(page.doc.file().title).toBe('A');
    expect(value.now).toContain('A');
    await asked[0].answer();
    expect(page.flight.result().file.title).toBe('A');
    expect(value.now).toBe('');
  });

  test('one whose flight did not come to its end is not begun with again: the one before is open, the other offered and kept', async () => {
    const { engine, asked } = made();
    const value: { now: string | null } = { now: null };
    const a = heavy('A');
    pageOf(engine, { startMark: makeMark(value) }, kept(a));
    // the page went away in the middle
    const page = pageOf(engine, { startMark: makeMark(value) }, kept(a));
    expect(page.doc.file().title).toBe(light.title);
    expect(page.flight.outcome().isWaiting).toBeUndefined();
    const notice = page.shell.notice();
    expect(notice?.text).toMatch(/^A was not opened: last time the page closed before its flight was computed/);
    expect(notice?.action?.title).toBe('Open it');
    expect(notice?.dismiss).toBe('Leave it');
    expect(value.now).toBe('');
    // nothing of it is removed
    page.doc.undo();
    expect(page.doc.file()).toEqual(a);
    page.doc.redo();
    notice?.action?.run();
    await tasks();
    await asked.at(-1)?.answer();
    expect(page.doc.file().title).toBe('A');
  });

  test('one that is read late is not begun with again either', async () => {
    const { engine } = made();
    const value: { now: string | null } = { now: null };
    const a = heavy('A');
    pageOf(engine, { startMark: makeMark(value) }, kept(a));
    const mark = makeMark(value);
    // the flight that is shown until it comes takes the mark away
    mark.clear();
    expect(mark.wasCutShort(a)).toBe(true);
    expect(makeMark(value).wasCutShort(a)).toBe(false);
  });

  test('a page that goes away in good order, and another document, are begun with', () => {
    const { engine } = made();
    const value: { now: string | null } = { now: null };
    const page = pageOf(engine, { startMark: makeMark(value) }, kept(heavy('A')));
    page.keeping.leave();
    expect(value.now).toBe('');
    pageOf(engine, { startMark: makeMark(value) }, kept(heavy('A')));
    expect(pageOf(engine, { startMark: makeMark(value) }, kept(heavy('B'))).doc.file().title).toBe('B');
  });
});
