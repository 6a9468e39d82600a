// What a swing gives the flights of the page: the newest is computed next, the flight follows a drag, what was lost comes again.
import { createRoot, createSignal } from 'solid-js';
import { describe, expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import type { Release, SkillFile } from '../../sim/index.ts';
import { buildSkill, calcRelease, contactFor, parseSkill } from '../../sim/index.ts';
import { createFlight, type FlightState, makeChecked } from '../../src/app/flight.ts';
import { changeSwing } from '../../src/document/contact-edits.ts';
import { makeHistory } from '../../src/document/history.ts';
import { type Engine, makeEngine } from '../../src/engine/engine.ts';
import { WorkerLostError } from '../../src/jobs/pool.ts';

const shelf = { athletes, shapes };
const giant = skills['giant-double-straight'] as SkillFile;
const to = (atDeg: number): SkillFile => changeSwing(giant, { release: { atDeg } });
const angleOf = (file: SkillFile): number => {
  const [swing] = file.phases;
  return swing.kind === 'swing' && 'atDeg' in swing.release ? swing.release.atDeg : Number.NaN;
};

async function releaseOf(file: SkillFile): Promise<Release> {
  const skill = buildSkill(parseSkill(file, shelf));
  return calcRelease(skill, await contactFor(skill));
}

interface Asked {
  readonly file: SkillFile;
  answer(): Promise<void>;
  fail(error: Error): Promise<void>;
}

/** An engine whose releases come when the test says so. */
function made(): { engine: Engine; asked: Asked[] } {
  const asked: Asked[] = [];
  const settled = () => new Promise<void>((resolve) => setTimeout(resolve));
  const engine = makeEngine(
    shelf,
    (file) =>
      new Promise((resolve, reject) => {
        asked.push({
          file,
          answer: async () => {
            resolve(await releaseOf(file));
            await settled();
          },
          fail: async (error) => {
            reject(error);
            await settled();
          },
        });
      }),
  );
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

describe('releases', () => {
  test('one is computed at a time, then the newest; those asked for in between are passed over', async () => {
    const { engine, asked } = made();
    for (const deg of [437, 436, 435, 434]) expect(nameOf(() => engine.fly(to(deg)))).toBe('ReleasePendingError');
    expect(asked.map(({ file }) => angleOf(file))).toEqual([437]);
    await asked[0].answer();
    expect(asked.map(({ file }) => angleOf(file))).toEqual([437, 434]);
    await asked[1].answer();
    expect(asked).toHaveLength(2);
    expect([437, 434].map((deg) => nameOf(() => engine.fly(to(deg))))).toEqual(['flown', 'flown']);
  });

  test('one that is waited for is never passed over', async () => {
    const { engine, asked } = made();
    nameOf(() => engine.fly(to(437)));
    const ready = engine.ready(to(436));
    nameOf(() => engine.fly(to(435)));
    expect(asked.map(({ file }) => angleOf(file))).toEqual([437, 436]);
    await asked[1].answer();
    await ready;
    expect(nameOf(() => engine.fly(to(436)))).toBe('flown');
  });

  test.each(['WorkerLostError', 'PartNotLoadedError'])(
    'a %s is asked for again, once it is tried again',
    async (name) => {
      const { engine, asked } = made();
      nameOf(() => engine.fly(giant));
      const lost =
        name === 'WorkerLostError' ? new WorkerLostError('gone') : Object.assign(new Error('gone'), { name });
      await asked[0].fail(lost);
      expect(nameOf(() => engine.fly(giant))).toBe('ReleaseLostError');
      // not by itself: a worker that never loads would be asked for without end
      expect(asked).toHaveLength(1);
      engine.retryReleases();
      expect(nameOf(() => engine.fly(giant))).toBe('ReleasePendingError');
      await asked[1].answer();
      expect(nameOf(() => engine.fly(giant))).toBe('flown');
    },
  );

  test('what cannot be computed stays so', async () => {
    const { engine, asked } = made();
    nameOf(() => engine.fly(giant));
    await asked[0].fail(new RangeError('never released'));
    engine.retryReleases();
    expect(nameOf(() => engine.fly(giant))).toBe('RangeError');
    expect(asked).toHaveLength(1);
  });
});

describe('the flight of the page', () => {
  const wired = (engine: Engine) => {
    const [file, setFile] = createSignal(giant);
    const [isHeld, setHeld] = createSignal(false);
    let flight = undefined as unknown as FlightState;
    const dispose = createRoot((end) => {
      flight = createFlight({
        flying: engine,
        shapes,
        document: { file, id: () => 1, isHeld, history: () => makeHistory(giant) },
        checked: makeChecked(engine.fly),
      });
      return end;
    });
    return { flight, setFile, setHeld, dispose };
  };
  const open = async () => {
    const { engine, asked } = made();
    const ready = engine.ready(giant);
    await asked[0].answer();
    await ready;
    return { asked, ...wired(engine) };
  };

  test('follows a dragged swing as its releases come: picture and numbers are of one document', async () => {
    const { asked, flight, setFile, setHeld, dispose } = await open();
    setHeld(true);
    flight.begin();
    for (const deg of [435.5, 435, 434]) setFile(to(deg));
    expect([angleOf(flight.result().file), flight.outcome().isWaiting]).toEqual([436, true]);
    await asked[1].answer();
    expect([angleOf(flight.result().file), flight.outcome().isWaiting]).toEqual([435.5, true]);
    setHeld(false);
    await asked[2].answer();
    expect([angleOf(flight.result().file), flight.outcome().isWaiting, flight.result().draft]).toEqual([
      434,
      undefined,
      false,
    ]);
    expect(asked).toHaveLength(3);
    dispose();
  });

  test('says that it can be tried again, and is', async () => {
    const { asked, flight, setFile, dispose } = await open();
    setFile(to(430));
    expect(flight.outcome().isWaiting).toBe(true);
    await asked[1].fail(new WorkerLostError('a worker could not be loaded'));
    expect(flight.outcome().fault).toEqual({ message: 'a worker could not be loaded', canRetry: true });
    flight.retry();
    expect(flight.outcome().isWaiting).toBe(true);
    await asked[2].answer();
    expect([angleOf(flight.result().file), flight.outcome().fault]).toEqual([430, undefined]);
    dispose();
  });
});
