// A flight that costs much is flown beside the page: where, by counts; to the same bits; pending, cancelled, limited, passed over.
import { describe, expect, test } from 'vitest';
import { catalogue, chains, skills } from '../../presets/index.ts';
import { type SkillFile, unpackFlown } from '../../sim/index.ts';
import { type Engine, makeEngine } from '../../src/engine/engine.ts';
import { MOST_HERE, weighFlight } from '../../src/engine/weight.ts';
import { JobCancelledError, JobTimeoutError, WorkerLostError } from '../../src/jobs/pool.ts';
import { someOf } from '../corpus.ts';
import { flyFar, heavy, made, shelf } from './far-side.ts';
import { BESIDE_ENDS, HEAVY_FILES } from './heavy-files.ts';
import { withSchedule } from './heavy-parts.ts';

const ERRORS = { JobCancelledError, JobTimeoutError, WorkerLostError };

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
