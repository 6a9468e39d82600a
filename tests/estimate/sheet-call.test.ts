// The page's side of a sheet: the newest question alone is answered, and a worker that is late is ended.
import { describe, expect, test, vi } from 'vitest';
import { makeEstimating, SheetTooSlowError } from '../../src/engine/estimate.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { makePool } from '../../src/jobs/pool.ts';
import { type FakePort, makeFakePort } from '../jobs/fake-port.ts';

const made = () => {
  const workers: FakePort[] = [];
  const start = () => {
    workers.push(makeFakePort());
    return workers[workers.length - 1];
  };
  return { estimating: makeEstimating({}, makePool(start, { workers: 2 }), 1000), workers };
};
const answerTo = (worker: FakePort, nth: number, result: object): void => {
  const { call, index } = worker.pieces()[nth];
  worker.tell({ kind: 'result', call, index, result });
};
/** the request of the nth question of a worker */
const askedOf = (worker: FakePort, nth = 0): Record<string, unknown> =>
  worker.pieces()[nth].opens?.subject as Record<string, unknown>;

const result = { file: {}, athlete: {}, key: '1', skill: { title: 'x' } } as unknown as FlightResult;
const sheet = (lines: string[]) => ({ format: 'shapeflight-sheet' as const, version: 1 as const, title: 't', lines });

describe('a sheet in its worker', () => {
  test('is answered', async () => {
    const { estimating, workers } = made();
    const answer = estimating.compute(sheet(['a = 1']), result);
    answerTo(workers[0], 0, { rows: [] });
    expect(await answer).toEqual({ rows: [] });
  });

  test('that takes too long is refused by name, its worker ended, and the next sheet gets a new worker', async () => {
    vi.useFakeTimers();
    try {
      const { estimating, workers } = made();
      const slow = estimating.compute(sheet(['a = 1']), result);
      const refused = expect(slow).rejects.toThrow(SheetTooSlowError);
      await vi.advanceTimersByTimeAsync(1001);
      await refused;
      expect(workers[0].isClosed).toBe(true);
      const next = estimating.compute(sheet(['b = 2']), result);
      expect(workers).toHaveLength(2);
      answerTo(workers[1], 0, { rows: [], csv: 'x' });
      expect(await next).toEqual({ rows: [], csv: 'x' });
    } finally {
      vi.useRealTimers();
    }
  });

  test('workers that hang while new sheets keep coming are ended all the same', async () => {
    vi.useFakeTimers();
    try {
      const { estimating, workers } = made();
      for (let i = 0; i < 4; i++) {
        estimating.compute(sheet([`a = ${i}`]), result).catch(() => {});
        await vi.advanceTimersByTimeAsync(600);
      }
      expect(workers.slice(0, 2).map((w) => w.isClosed)).toEqual([true, true]);
      expect(workers.length).toBeGreaterThan(2);
    } finally {
      vi.useRealTimers();
    }
  });

  test('an answer to an older sheet is not taken for that of the newer one', async () => {
    const { estimating, workers } = made();
    let older: unknown = 'never answered';
    void estimating.compute(sheet(['a = 1']), result).then((answer) => {
      older = answer;
    });
    const second = estimating.compute(sheet(['a = 2']), result);
    answerTo(workers[0], 0, { rows: [], csv: 'old' });
    answerTo(workers[1], 0, { rows: [], csv: 'new' });
    expect((await second).csv).toBe('new');
    expect(older).toBe('never answered');
  });

  test('a file asked for does not stop the sheet on the page', async () => {
    const { estimating, workers } = made();
    const shown = estimating.compute(sheet(['a = 1']), result);
    // never answered: it ends by its limit
    estimating.compute(sheet(['a = 1']), result, { also: 'csv' }).catch(() => {});
    answerTo(workers[0], 0, { rows: [] });
    expect(await shown).toEqual({ rows: [] });
    expect(askedOf(workers[1]).csv).toBe(true);
  });

  test('a worker that cannot start is an error that can be read', async () => {
    const { estimating, workers } = made();
    const answer = estimating.compute(sheet(['a = 1']), result);
    workers[0].fail('no such file');
    await expect(answer).rejects.toThrow('no such file');
  });
});

describe('a sheet from a file', () => {
  const { estimating } = made();
  test('JSON and plain text, and back', () => {
    const own = sheet(['a = 1', '# b']);
    expect(estimating.read(estimating.write(own), 'a.sheet.json')).toEqual(own);
    expect(estimating.read('# Title\n\na = 1\n# b\n', 'a.txt')).toEqual({ ...own, title: 'Title' });
  });
  test.each([
    ['{"format": "shapeflight-athlete"}', 'format'],
    ['{"format": "shapeflight-skill"}', 'version'],
    ['{"format": "shapeflight-sheet", "version": 1, "title": "x", "lines": [1]}', 'lines[0]'],
    ['{"format": "shapeflight-sheet", "version": 1, "title": "x", "lines": [], "more": 1}', 'more'],
    [JSON.stringify({ ...sheet([]), lines: Array(300).fill('a') }), 'at most 200 lines'],
    ['{', 'JSON'],
  ])('%s is refused by name', (text, words) => expect(() => estimating.read(text, 'a.json')).toThrow(words));
  test('plain text of too many lines is refused', () =>
    expect(() => estimating.read('a\n'.repeat(300), 'a.txt')).toThrow('at most 200 lines'));
});
