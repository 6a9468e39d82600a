/** Maps: contours of a known field, rows that stand alone, and the page's batches over several workers. */
import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import { parseSkill } from '../../sim/index.ts';
import { findContour, roundLevels } from '../../sim/search/map-contour.ts';
import { joinTables } from '../../sim/search/sample.ts';
import { type MapRequest, MapRunner, type StudyRequest, StudyRunner, usualStudy } from '../../sim/search/span.ts';
import { type BatchPort, makeBatch } from '../../src/engine/batch.ts';
import type { BatchAsk, BatchReply } from '../../src/engine/batch-messages.ts';
import { serveBatch } from '../../src/engine/batch-serve.ts';
import { RAD, shelf, stillSpec } from './still.ts';

describe('contours', () => {
  it('of a cone are circles, closed, at their radius', () => {
    const n = 41;
    const field = Float64Array.from({ length: n * n }, (_, k) => Math.hypot((k % n) - 20, Math.floor(k / n) - 20));
    for (const level of [5.3, 11.7]) {
      const { lines } = findContour(field, n, n, level);
      expect(lines).toHaveLength(1);
      const [line] = lines;
      expect([line[0], line[1]]).toEqual(line.slice(-2));
      for (let i = 0; i < line.length; i += 2)
        expect(Math.abs(Math.hypot(line[i] - 20, line[i + 1] - 20) - level)).toBeLessThan(0.03);
    }
  });

  it('of a plane are straight, from edge to edge, and stop where a value is missing', () => {
    const field = Float64Array.from({ length: 30 }, (_, k) => (k % 6) + 0.5 * Math.floor(k / 6));
    const [line, ...more] = findContour(field, 6, 5, 2.2).lines;
    expect(more).toEqual([]);
    for (let i = 0; i < line.length; i += 2) expect(line[i] + 0.5 * line[i + 1]).toBeCloseTo(2.2, 12);
    const ys = line.filter((_, i) => i % 2 === 1);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([0, 4]);
    field[14] = Number.NaN;
    const cut = findContour(field, 6, 5, 2.2).lines.flat();
    expect(cut.length).toBeLessThan(line.length);
    expect(cut.every(Number.isFinite)).toBe(true);
  });

  it('at a saddle keep the two sides apart, by the middle', () => {
    const lines = (a: number): number => findContour([a, 0, 0, a], 2, 2, 1).lines.length;
    expect([lines(1.5), lines(3)]).toEqual([2, 2]);
    // corners a and c high: the middle of 1.5 is below the level, of 3 above
    const ends = (a: number): string =>
      JSON.stringify(findContour([a, 0, 0, a], 2, 2, 1).lines.map((l) => l.map((x) => x > 0 && x < 1)));
    expect(ends(1.5)).not.toBe(ends(3));
  });

  it('stand at round levels', () => {
    expect(roundLevels([0.31, 4.4], 10)).toEqual([0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4]);
    expect(roundLevels([Number.NaN, 3, 3])).toEqual([]);
  });
});

const twist = parseSkill(skills['back-straight-full'], shelf);
const mapRequest: MapRequest = {
  spec: twist,
  x: { input: 'block:2.moveStart', from: -0.02, to: 0.03, count: 4 },
  y: { input: 'takeoff.tilt', from: -0.5 * RAD, to: 0.5 * RAD, count: 5 },
  results: ['twists', 'short'],
  window: [{ result: 'twists', low: 0.9, high: 1.1 }],
};

describe('rows', () => {
  it('are the same alone and among others, and hold the skill itself where it stands', () => {
    const all = new MapRunner(mapRequest);
    const rows = [0, 1, 2, 3, 4].map((i) => all.row(i));
    expect(new MapRunner(mapRequest).row(3)).toEqual(rows[3]);
    const { input } = all.map.x;
    const here = new MapRunner({
      ...mapRequest,
      x: { ...mapRequest.x, from: input.value, to: input.value + 0.01, count: 2 },
    });
    const request = usualStudy(twist);
    const now = new StudyRunner({ ...request, window: [{ result: 'twists', low: 0, high: 2 }] }).now();
    expect(here.row(2).values[0]).toBeCloseTo(now[0], 9);
  });
});

/** A worker in this thread: messages wait their turn, as between threads, and are cloned. */
function makePort(): BatchPort & { readonly asked: BatchAsk[] } {
  const asked: BatchAsk[] = [];
  let tell: (reply: BatchReply) => void = () => {};
  const serve = serveBatch({
    post: (reply) => void setTimeout(() => tell(structuredClone(reply))),
    clock: () => performance.now(),
    breathe: () => new Promise((resolve) => setTimeout(resolve)),
  });
  return {
    asked,
    post: (ask) => {
      asked.push(ask);
      setTimeout(() => void serve(structuredClone(ask)));
    },
    listen: (onReply) => {
      tell = onReply;
    },
    close: () => {},
  };
}

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

  it('tell progress and samples as they come, and end with the whole, whoever computed it', async () => {
    const batch = makeBatch(makePort, 3);
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

  it('stop at a cancel, and nothing of a stopped call is told', async () => {
    const ports: ReturnType<typeof makePort>[] = [];
    const batch = makeBatch(() => {
      const port = makePort();
      ports.push(port);
      return port;
    }, 2);
    let told = 0;
    const first = batch.map(mapRequest, { row: () => told++ });
    first.cancel();
    first.done.then(() => expect.unreachable());
    const rows = await batch.map({ ...mapRequest, y: { ...mapRequest.y, count: 2 } }).done;
    expect(rows.map((r) => r.row)).toEqual([0, 1]);
    expect(told).toBe(0);
    const piecesOfFirst = ports.flatMap((p) => p.asked).filter((a) => a.kind === 'piece' && a.call === 0);
    expect(piecesOfFirst.length).toBeLessThanOrEqual(2);
  });

  it('say what is wrong by name', async () => {
    const batch = makeBatch(makePort, 1);
    await expect(batch.map({ ...mapRequest, results: ['luck'] }).done).rejects.toThrow(/luck/);
    // and go on
    const rows = await batch.map({ ...mapRequest, y: { ...mapRequest.y, count: 2 } }).done;
    expect(rows).toHaveLength(2);
  });

  it('solve, and a solve that is stopped ends with what it has', async () => {
    const batch = makeBatch(makePort, 1);
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
