// Margins, maps and solves over several workers: the whole, bit for bit, whichever worker computed its pieces.
import { describe, expect, it } from 'vitest';
import { joinTables } from '../../sim/search/sample.ts';
import { type MapRequest, MapRunner, type StudyRequest, StudyRunner } from '../../sim/search/span.ts';
import { makeBatch } from '../../src/engine/batch.ts';
import { JobCancelledError, makePool } from '../../src/jobs/pool.ts';
import { RAD, stillSpec } from '../search/still.ts';
import { startClonedPort } from './cloned-port.ts';

const mapRequest: MapRequest = {
  spec: stillSpec(),
  x: { input: 'takeoff.h.z', from: 50, to: 70, count: 4 },
  y: { input: 'takeoff.tilt', from: -0.5 * RAD, to: 0.5 * RAD, count: 5 },
  results: ['twists', 'short'],
  window: [{ result: 'twists', low: -0.1, high: 0.1 }],
};
const batchOf = (workers: number) => makeBatch(makePool(startClonedPort, { workers }));

describe('batches of the page', () => {
  const study: StudyRequest = {
    spec: stillSpec(),
    vary: [
      { input: 'takeoff.h.z', by: 1, kind: 'normal' },
      { input: 'takeoff.speedUp', by: 0.1, kind: 'normal' },
    ],
    correlations: [],
    window: [{ result: 'somersaults', low: 1, high: 1.15 }],
    seed: 6,
  };

  it('tell progress and samples as they come, and end with the whole, whichever worker computed it', async () => {
    const batch = batchOf(3);
    const shares: number[] = [];
    let last = { done: 0, all: 0 };
    const { done } = batch.study(
      study,
      { from: 0, to: 180, bars: true },
      {
        progress: (p) => {
          last = p;
        },
        samples: ({ n }) => shares.push(n),
      },
    );
    const { table, bars, result, now } = await done;
    expect(last.done).toBe(last.all);
    expect(shares.at(-1)).toBe(180);
    expect(shares.length).toBeGreaterThan(3);
    expect(bars.map((b) => b.input)).toEqual(['takeoff.h.z', 'takeoff.speedUp']);
    const alone = new StudyRunner(study);
    expect(table).toEqual(joinTables([alone.samples(0, 180)]));
    expect(now).toEqual(alone.now());
    expect(result.now.n).toBe(180);
  });

  it('put a map together bit for bit on one worker, two or three', async () => {
    const alone = new MapRunner(mapRequest);
    const whole = Array.from({ length: mapRequest.y.count }, (_, row) => alone.row(row));
    for (const workers of [1, 2, 3]) expect(await batchOf(workers).map(mapRequest).done).toEqual(whole);
  });

  it('stop at a cancel, and nothing of a cancelled call is reported', async () => {
    const ports: ReturnType<typeof startClonedPort>[] = [];
    const start = () => {
      ports.push(startClonedPort());
      return ports[ports.length - 1];
    };
    const batch = makeBatch(makePool(start, { workers: 2 }));
    let shown = 0;
    const first = batch.map(mapRequest, { row: () => shown++ });
    first.cancel();
    await expect(first.done).rejects.toThrow(JobCancelledError);
    const rows = await batch.map({ ...mapRequest, y: { ...mapRequest.y, count: 2 } }).done;
    expect(rows.map((r) => r.row)).toEqual([0, 1]);
    expect(shown).toBe(0);
    const piecesOfFirst = ports.flatMap((p) => p.sent).filter((m) => m.kind === 'piece' && m.call === 0);
    expect(piecesOfFirst.length).toBeLessThanOrEqual(4);
  });

  it('say what is wrong by name', async () => {
    const batch = batchOf(1);
    await expect(batch.map({ ...mapRequest, results: ['luck'] }).done).rejects.toThrow(/luck/);
    // and go on
    const rows = await batch.map({ ...mapRequest, y: { ...mapRequest.y, count: 2 } }).done;
    expect(rows).toHaveLength(2);
  });

  it('the most forgiving is tried again with another seed; of the most twist the first number beyond it is said', async () => {
    const batch = batchOf(1);
    const request = {
      spec: stillSpec(),
      wishes: [{ result: 'somersaults', value: 1.08, tolerance: 0.05 }],
      unknowns: [{ input: 'takeoff.h.z' }, { input: 'takeoff.speedUp' }],
      answers: 1,
      fits: 2,
      tries: 10,
    };
    const { answer, kept, again, rounds } = await batch.forgiving({ ...request, rounds: 6 }).done;
    expect(rounds).toBe(6);
    expect(answer.ownMargin).toBeGreaterThanOrEqual(0);
    expect(answer.solutions[0].cost.margin).toBeGreaterThanOrEqual(answer.ownMargin ?? 1);
    expect(again === undefined).toBe(kept === 0);
    if (again) expect(again.after.n).toBe(50);
    // a body that does not tilt has no twist to be found
    const twist = await batch.twist({ ...request, tries: 0 }).done;
    expect(twist.twists).toBeCloseTo(0, 6);
    const beyond = twist.beyond?.nearest ?? twist.answer.nearest;
    expect(beyond?.obstacles.some((o) => o.kind === 'wish' && o.term.wish.result === 'twists')).toBe(true);
  });

  it('solve, and a solve that is stopped ends with what it has', async () => {
    const batch = batchOf(1);
    const request = {
      spec: stillSpec(),
      wishes: [{ result: 'somersaults', value: 1, tolerance: 0.01 }],
      unknowns: [{ input: 'takeoff.h.z', span: [40, 80] as const }],
      answers: 1,
      fits: 2,
    };
    const answer = await batch.solve(request).done;
    expect(answer.solutions.length).toBeGreaterThan(0);
    expect(answer.solutions[0].terms[0].value).toBeCloseTo(1, 2);
    const stopped = batch.solve({
      ...request,
      wishes: [{ result: 'somersaults', value: 3, tolerance: 1e-9 }],
      fits: 500,
    });
    setTimeout(stopped.cancel, 60);
    expect((await stopped.done).isComplete).toBe(false);
  });
});
