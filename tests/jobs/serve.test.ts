// The worker's side, with kinds of jobs made for the test.
import { describe, expect, test } from 'vitest';
import { loadForJob } from '../../src/jobs/job.ts';
import type { FromWorker, ToWorker } from '../../src/jobs/message.ts';
import { type JobKinds, serveJobs } from '../../src/jobs/serve.ts';

function made(kinds: JobKinds) {
  const shown: FromWorker[] = [];
  const waiting: (() => void)[] = [];
  let now = 0;
  const receive = serveJobs({
    kinds,
    post: (message) => void shown.push(structuredClone(message)),
    clock: () => now,
    yieldToEventLoop: () => new Promise((resolve) => waiting.push(resolve)),
  });
  return {
    shown,
    receive,
    passMs: (ms: number) => {
      now += ms;
    },
    /** the event loop comes round: what waits goes on */
    turn: async () => {
      await new Promise((resolve) => setImmediate(resolve));
      for (const resolve of waiting.splice(0)) resolve();
      await new Promise((resolve) => setImmediate(resolve));
    },
  };
}
const piece = (index: number, job?: string, call = 0): ToWorker => ({
  kind: 'piece',
  call,
  index,
  piece: index,
  ...(job ? { opens: { job: job as never, subject: 10 } } : {}),
});

const counting = (opened: number[]): JobKinds => ({
  count: {
    open: (subject: number) => {
      opened.push(subject);
      return function* (n: number) {
        for (let i = 0; i < 3; i++) yield i;
        return subject + n;
      };
    },
  },
});

describe('a worker', () => {
  test('opens the subject of a call once, and answers its pieces in their order', async () => {
    const opened: number[] = [];
    const { shown, receive, turn } = made(counting(opened));
    receive(piece(0, 'count'));
    receive(piece(1));
    for (let i = 0; i < 12; i++) await turn();
    expect(opened).toEqual([10]);
    expect(shown.flatMap((m) => (m.kind === 'result' ? [m.result] : []))).toEqual([10, 11]);
    expect(shown.filter((m) => m.kind === 'progress')).toHaveLength(6);
  });

  test('stops between two steps of a cancelled piece, and drops those that wait', async () => {
    const { shown, receive, turn } = made(counting([]));
    receive(piece(0, 'count'));
    receive(piece(1));
    receive({ kind: 'cancel', call: 0 });
    for (let i = 0; i < 6; i++) await turn();
    expect(shown.map((m) => `${m.kind} ${m.index}`)).toEqual(['progress 0', 'dropped 0', 'dropped 1']);
    // and goes on with the next call
    receive(piece(0, 'count', 1));
    for (let i = 0; i < 6; i++) await turn();
    expect(shown.at(-1)).toMatchObject({ kind: 'result', call: 1 });
  });

  test('reports only as often as the kind says, and a job that is to finish ends with what it has', async () => {
    const kinds: JobKinds = {
      search: {
        latestEveryMs: 30,
        open: () =>
          function* () {
            for (let found = 0; ; found++) {
              pass(10);
              if (yield found) return found;
            }
          },
      },
    };
    const { shown, receive, turn, passMs: pass } = made(kinds);
    receive(piece(0, 'search'));
    await turn();
    await turn();
    expect(shown.length).toBeGreaterThan(1);
    for (const m of shown) expect(m.kind === 'progress' && (Number(m.progress) + 1) % 3).toBe(0);
    receive({ kind: 'finish', call: 0 });
    await turn();
    expect(shown.at(-1)?.kind).toBe('result');
  });

  test('tells an error by name and fields, and one of loading by a name of its own', async () => {
    const kinds: JobKinds = {
      bad: {
        open: () =>
          function* () {
            yield 0;
            throw Object.assign(new RangeError('too far'), { field: 'x', call: () => {} });
          },
      },
      far: {
        open: () =>
          async function* () {
            yield 0;
            return await loadForJob(() => Promise.reject(new TypeError('Failed to fetch planck.js')));
          },
      },
    };
    const { shown, receive, turn } = made(kinds);
    receive(piece(0, 'bad'));
    receive(piece(0, 'far', 1));
    for (let i = 0; i < 8; i++) await turn();
    const faults = shown.flatMap((m) => (m.kind === 'failed' ? [m.error] : []));
    expect(faults[0]).toMatchObject({ name: 'RangeError', message: 'too far' });
    expect(faults[1].name).toBe('PartNotLoadedError');
    expect(faults[1].message).toContain('Failed to fetch planck.js');
  });
});
