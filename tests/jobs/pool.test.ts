// The pool of workers, with workers in the hands of the test.
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  JobCancelledError,
  JobTimeoutError,
  makePool,
  type Pool,
  PoolClosedError,
  WorkerLostError,
} from '../../src/jobs/pool.ts';
import { type FakePort, makeFakePort } from './fake-port.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function made(workers: number): { pool: Pool; ports: FakePort[]; lost: number[] } {
  const ports: FakePort[] = [];
  const lost: number[] = [];
  const pool = makePool(
    (n) => {
      lost.push(n);
      ports.push(makeFakePort());
      return ports[ports.length - 1];
    },
    { workers, idleMs: 30_000 },
  );
  return { pool, ports, lost };
}
const map = {} as never;
const rows = (n: number): number[] => Array.from({ length: n }, (_, i) => i);
const answered = new WeakMap<FakePort, number>();
/** Answers the oldest pieces that have not been answered. */
function answer(port: FakePort, n = 1): void {
  const from = answered.get(port) ?? 0;
  answered.set(port, from + n);
  for (let i = from; i < from + n; i++) {
    const { call, index } = port.pieces()[i];
    port.tell({ kind: 'result', call, index, result: `row ${index}` });
  }
}

describe('pieces', () => {
  test('come back in their order, whichever worker computed them, and the subject is sent once to each', async () => {
    const { pool, ports } = made(2);
    const { done } = pool.runPieces('map', map, rows(5));
    expect(ports).toHaveLength(2);
    answer(ports[1]);
    answer(ports[0]);
    answer(ports[1]);
    answer(ports[0]);
    answer(ports[1]);
    expect(await done).toEqual(['row 0', 'row 1', 'row 2', 'row 3', 'row 4']);
    for (const port of ports) expect(port.pieces().map((p) => p.opens !== undefined)[0]).toBe(true);
    for (const port of ports) expect(port.pieces().filter((p) => p.opens)).toHaveLength(1);
  });

  test('a worker has the next piece before it has answered the last, and never more', () => {
    const { pool, ports } = made(2);
    pool.runPieces('map', map, rows(9));
    expect(ports.map((p) => p.pieces().map((m) => m.index))).toEqual([
      [0, 2],
      [1, 3],
    ]);
    answer(ports[1]);
    expect(ports[1].pieces().map((m) => m.index)).toEqual([1, 3, 4]);
  });

  test('no more workers start than there are pieces', () => {
    const { pool, ports } = made(4);
    pool.runPieces('map', map, rows(2));
    expect(ports).toHaveLength(2);
  });

  test('the newest call goes first', () => {
    const { pool, ports } = made(1);
    pool.runPieces('map', map, rows(6));
    const second = pool.runPieces('map', map, rows(2));
    answer(ports[0], 2);
    expect(
      ports[0]
        .pieces()
        .slice(2)
        .map((p) => p.call),
    ).toEqual([1, 1]);
    answer(ports[0], 2);
    expect(
      ports[0]
        .pieces()
        .slice(4)
        .map((p) => [p.call, p.index]),
    ).toEqual([
      [0, 2],
      [0, 3],
    ]);
    // the subject of the first call is sent again: a worker keeps one open
    expect(ports[0].pieces()[4].opens).toBeDefined();
    return expect(second.done).resolves.toHaveLength(2);
  });

  test('an error of one piece refuses the call by its name and fields', async () => {
    const { pool, ports } = made(1);
    const { done } = pool.runPieces('map', map, rows(3));
    ports[0].tell({
      kind: 'failed',
      call: 0,
      index: 0,
      error: { name: 'FieldError', message: 'x must be above 0', details: { field: 'x', allowed: 'above 0' } },
    });
    await expect(done).rejects.toMatchObject({ name: 'FieldError', message: 'x must be above 0', field: 'x' });
    expect(ports[0].sent.at(-1)).toEqual({ kind: 'cancel', call: 0 });
  });
});

describe('a call that is not wanted any more', () => {
  test('a cancelled call is refused at once, and gets no further piece', async () => {
    const { pool, ports } = made(1);
    const shown: unknown[] = [];
    const { done, cancel } = pool.runPieces('map', map, rows(9), { onResult: (row) => void shown.push(row) });
    cancel();
    await expect(done).rejects.toThrow(JobCancelledError);
    answer(ports[0], 2);
    expect(shown).toEqual([]);
    expect(ports[0].pieces()).toHaveLength(2);
    expect(ports[0].isClosed).toBe(false);
  });

  test('a worker that does not come back from a cancelled call within its patience is ended', () => {
    const { pool, ports } = made(1);
    pool.run('draft', map, { patienceMs: 400 }).cancel();
    vi.advanceTimersByTime(399);
    expect(ports[0].isClosed).toBe(false);
    vi.advanceTimersByTime(2);
    expect(ports[0].isClosed).toBe(true);
    pool.run('draft', map);
    expect(ports).toHaveLength(2);
  });

  test('without patience it is ended at once', () => {
    const { pool, ports } = made(1);
    pool.run('draft', map, { patienceMs: 0 }).cancel();
    expect(ports[0].isClosed).toBe(true);
  });

  test('a call that takes longer than its limit is refused, its worker ended, and the next call starts another', async () => {
    const { pool, ports } = made(1);
    const { done } = pool.run('sheet', map, { limitMs: 8000 });
    const refused = expect(done).rejects.toThrow(JobTimeoutError);
    await vi.advanceTimersByTimeAsync(7999);
    expect(ports[0].isClosed).toBe(false);
    await vi.advanceTimersByTimeAsync(2);
    await refused;
    expect(ports[0].isClosed).toBe(true);
    const next = pool.run('sheet', map, { limitMs: 8000 });
    answer(ports[1]);
    expect(await next.done).toBe('row 0');
    await vi.advanceTimersByTimeAsync(9000);
  });

  test('a call that is to finish hears of it, though it has not begun, and its result still comes', async () => {
    const { pool, ports } = made(1);
    pool.run('map', map);
    const solve = pool.run('solve', map);
    solve.finish();
    answer(ports[0]);
    expect(ports[0].sent.slice(-2).map((m) => m.kind)).toEqual(['piece', 'finish']);
    answer(ports[0]);
    expect(await solve.done).toBe('row 0');
  });
});

describe('workers', () => {
  test('close when nothing has needed them for 30 s, and another starts for the next call', () => {
    const { pool, ports } = made(2);
    pool.runPieces('map', map, rows(2));
    answer(ports[0]);
    vi.advanceTimersByTime(20_000);
    pool.run('map', map);
    answer(ports[0]);
    vi.advanceTimersByTime(29_999);
    expect(ports[0].isClosed).toBe(false);
    vi.advanceTimersByTime(2);
    // the other is at work
    expect(ports.map((p) => p.isClosed)).toEqual([true, false]);
    answer(ports[1]);
    vi.advanceTimersByTime(30_001);
    expect(ports[1].isClosed).toBe(true);
    pool.run('map', map);
    expect(ports).toHaveLength(3);
  });

  test('one that dies refuses its own calls alone; the next call starts another, which is informed of the loss', async () => {
    const { pool, ports, lost } = made(2);
    const first = pool.run('map', map);
    const second = pool.run('map', map);
    ports[0].fail('the script was not found');
    await expect(first.done).rejects.toThrow(WorkerLostError);
    await expect(first.done).rejects.toThrow('the script was not found');
    answer(ports[1]);
    expect(await second.done).toBe('row 0');
    pool.run('map', map);
    const again = pool.run('map', map);
    expect(lost).toEqual([0, 0, 1]);
    answer(ports[2]);
    expect(await again.done).toBe('row 0');
  });

  test('one that could not load a part for a job is ended with it', async () => {
    const { pool, ports } = made(1);
    const { done } = pool.run('sheet', map);
    const error = { name: 'PartNotLoadedError', message: 'no mathjs', details: {} };
    ports[0].tell({ kind: 'failed', call: 0, index: 0, error });
    await expect(done).rejects.toThrow('no mathjs');
    expect(ports[0].isClosed).toBe(true);
    const again = pool.run('sheet', map);
    answer(ports[1]);
    expect(await again.done).toBe('row 0');
  });

  test('what waits beside a job whose part did not load goes to another worker, and is answered', async () => {
    const { pool, ports } = made(1);
    const loading = pool.run('sheet', map);
    const next = pool.run('map', map);
    const error = { name: 'PartNotLoadedError', message: 'no mathjs', details: {} };
    ports[0].tell({ kind: 'failed', call: 0, index: 0, error });
    await expect(loading.done).rejects.toThrow('no mathjs');
    expect(ports[0].isClosed).toBe(true);
    answer(ports[1]);
    expect(await next.done).toBe('row 0');
  });

  test('that cannot be started refuse what waits', async () => {
    const pool = makePool(
      () => {
        throw new Error('no workers here');
      },
      { workers: 2 },
    );
    await expect(pool.run('map', map).done).rejects.toThrow('no workers here');
  });
});

describe('a pool that is closed', () => {
  test('refuses what waits and what comes, and ends its workers', async () => {
    const { pool, ports } = made(1);
    const before = pool.runPieces('map', map, rows(4));
    pool.close();
    await expect(before.done).rejects.toThrow(PoolClosedError);
    await expect(pool.run('map', map).done).rejects.toThrow(PoolClosedError);
    expect(ports.map((p) => p.isClosed)).toEqual([true]);
  });
});
