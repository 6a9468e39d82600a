// The page's side of a sheet: one question at a time, a worker that is late is ended, and the next one starts afresh.
import { describe, expect, test, vi } from 'vitest';
import { makeEstimating, SheetTooSlowError, type SheetWorker } from '../../src/engine/estimate.ts';
import type { SheetReply, SheetRequest } from '../../src/engine/estimate-messages.ts';
import type { FlightResult } from '../../src/engine/result.ts';

interface Fake extends SheetWorker {
  readonly asked: SheetRequest[];
  ended: boolean;
  reply(reply: SheetReply): void;
  fail(message: string): void;
}

function makeFake(): Fake {
  const on: Record<string, (event: unknown) => void> = {};
  const fake: Fake = {
    asked: [],
    ended: false,
    postMessage: (request: SheetRequest) => {
      fake.asked.push(request);
    },
    terminate: () => {
      fake.ended = true;
    },
    addEventListener: (type: string, listen: unknown) => {
      on[type] = listen as (event: unknown) => void;
    },
    reply: (reply) => on.message({ data: reply }),
    fail: (message) => on.error({ message }),
  };
  return fake;
}

const made = () => {
  const workers: Fake[] = [];
  const estimating = makeEstimating(
    {},
    () => {
      const one = makeFake();
      workers.push(one);
      return one;
    },
    1000,
  );
  return { estimating, workers };
};
const result = { file: {}, athlete: {}, key: '1', skill: { title: 'x' } } as unknown as FlightResult;
const sheet = (lines: string[]) => ({ format: 'shapeflight-sheet' as const, version: 1 as const, title: 't', lines });

describe('a sheet in its worker', () => {
  test('is answered', async () => {
    const { estimating, workers } = made();
    const answer = estimating.compute(sheet(['a = 1']), result);
    workers[0].reply({ id: workers[0].asked[0].id, kind: 'done', answer: { rows: [] } });
    expect(await answer).toEqual({ rows: [] });
  });

  test('that takes too long is ended, said so, and the next sheet gets a new worker', async () => {
    vi.useFakeTimers();
    try {
      const { estimating, workers } = made();
      const slow = estimating.compute(sheet(['a = 1']), result);
      const told = expect(slow).rejects.toThrow(SheetTooSlowError);
      await vi.advanceTimersByTimeAsync(1001);
      await told;
      expect(workers[0].ended).toBe(true);
      const next = estimating.compute(sheet(['b = 2']), result);
      expect(workers).toHaveLength(2);
      workers[1].reply({ id: workers[1].asked[0].id, kind: 'done', answer: { rows: [], csv: 'x' } });
      expect(await next).toEqual({ rows: [], csv: 'x' });
    } finally {
      vi.useRealTimers();
    }
  });

  test('a worker that hangs while new sheets keep coming is ended all the same', async () => {
    vi.useFakeTimers();
    try {
      const { estimating, workers } = made();
      for (let i = 0; i < 4; i++) {
        estimating.compute(sheet([`a = ${i}`]), result).catch(() => {});
        await vi.advanceTimersByTimeAsync(600);
      }
      expect(workers[0].ended).toBe(true);
      expect(workers.length).toBeGreaterThan(1);
    } finally {
      vi.useRealTimers();
    }
  });

  test('an answer to an older sheet is not taken for that of the newer one', async () => {
    const { estimating, workers } = made();
    void estimating.compute(sheet(['a = 1']), result);
    const second = estimating.compute(sheet(['a = 2']), result);
    const [one, two] = workers[0].asked;
    workers[0].reply({ id: one.id, kind: 'done', answer: { rows: [], csv: 'old' } });
    workers[0].reply({ id: two.id, kind: 'done', answer: { rows: [], csv: 'new' } });
    expect((await second).csv).toBe('new');
  });

  test('a file asked for does not silence the sheet on the page', async () => {
    const { estimating, workers } = made();
    const shown = estimating.compute(sheet(['a = 1']), result);
    void estimating.compute(sheet(['a = 1']), result, 'csv');
    workers[0].reply({ id: workers[0].asked[0].id, kind: 'done', answer: { rows: [] } });
    expect(await shown).toEqual({ rows: [] });
    expect(workers[1].asked[0].csv).toBe(true);
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
    expect(estimating.read(estimating.write(own))).toEqual(own);
    expect(estimating.read('# Title\n\na = 1\n# b\n')).toEqual({ ...own, title: 'Title' });
  });
  test.each([
    ['{"format": "shapeflight-skill"}', 'format'],
    ['{"format": "shapeflight-sheet", "version": 1, "title": "x", "lines": [1]}', 'lines[0]'],
    ['{"format": "shapeflight-sheet", "version": 1, "title": "x", "lines": [], "more": 1}', 'more'],
    [`${'a\n'.repeat(300)}`, 'at most 200 lines'],
    ['{', 'JSON'],
  ])('%s is refused by name', (text, words) => expect(() => estimating.read(text)).toThrow(words));
});
