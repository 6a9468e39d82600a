// How landings end: turning counts, stands means still standing with nothing but the feet down, steps as long as XcoM runs.
import { describe, expect, test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { SETTLE } from '../../sim/contact/balance-action.ts';
import { runLanding } from '../../sim/contact/landing.ts';
import { DEFAULT_ACTION } from '../../sim/contact/landing-joints.ts';
import {
  LANDING_RANGES,
  LANDING_SAMPLES,
  landSample,
  rangeValues,
  tenthsOf,
} from '../../sim/contact/landing-ranges.ts';
import { land } from '../../sim/contact/landing-report.ts';
import { STEP_TIME } from '../../sim/contact/landing-watch.ts';
import { MATS } from '../../sim/contact/mat.ts';
import { makeBody, readAthlete } from '../../sim/index.ts';
import { casesOf } from '../corpus.ts';
import { arrive, findIslands, landAt, letterOf, rankOf } from './landing-sweep.ts';

const G = 9.81;
const bodyOf = (id: string) => makeBody(readAthlete(athletes[id]));
const ilse = bodyOf('ilse-marrow');
const mat = MATS.competitionMat;

/** x'' = (g / l) (x - u), u the foot: Runge-Kutta of order 4 over t. */
function fall(x0: number, v0: number, u: number, l: number, t: number): [number, number] {
  let [x, v] = [x0, v0];
  const n = 4000;
  const h = t / n;
  const a = (y: number): number => (G / l) * (y - u);
  for (let i = 0; i < n; i++) {
    const [k1, j1] = [v, a(x)];
    const [k2, j2] = [v + (h / 2) * j1, a(x + (h / 2) * k1)];
    const [k3, j3] = [v + (h / 2) * j2, a(x + (h / 2) * k2)];
    const [k4, j4] = [v + h * j3, a(x + h * k3)];
    x += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    v += (h / 6) * (j1 + 2 * j2 + 2 * j3 + j4);
  }
  return [x, v];
}

describe('the screen: the extrapolated mass centre with what turning makes of it', () => {
  const xcomAt = (h: number) => {
    const result = land(arrive(ilse, { speed: 3, turning: h }, 0), { mat, action: DEFAULT_ACTION });
    if (result.kind !== 'landed') throw new Error('asymmetric');
    return result;
  };

  test('stopped at once, turning backward moves it back by h / (m l w0); taken out over tau by 1 / (1 + w0 tau) of that', () => {
    for (const turning of [-0.05, 0.05]) {
      const { run, report } = xcomAt(turning);
      const { plain, stopped, decaying } = report.screen;
      let end = 0;
      while (run.t[end] < (report.brakeTime ?? 0)) end++;
      const l = run.y[end] - mat.surfaceY + run.sink[end];
      const w0 = Math.sqrt(G / l);
      const moved = -run.h[end] / (ilse.mass * l * w0);
      expect(stopped - plain).toBeCloseTo(moved, 9);
      expect(decaying - plain).toBeCloseTo(moved / (1 + w0 * SETTLE), 9);
      expect(Math.sign(moved)).toBe(-Math.sign(run.h[end]));
    }
  });

  test('an inverted pendulum whose foot is exactly under it comes to rest there; from the edge it runs as exp(w0 t)', () => {
    const [x, v, l] = [-0.1, 0.5, 0.8];
    const w0 = Math.sqrt(G / l);
    const xcom = x + v / w0;
    const [rest, still] = fall(x, v, xcom, l, 1.5);
    expect(Math.abs(rest - xcom)).toBeLessThan(3e-3);
    expect(Math.abs(still)).toBeLessThan(0.02);
    // what is out by e at the edge is out by the length of the step when it is taken
    const e = 0.05;
    const [after, speed] = fall(0, e * w0, 0, l, STEP_TIME);
    expect(after + speed / w0).toBeCloseTo(e * Math.exp(w0 * STEP_TIME), 6);
  });
});

describe('what the word says is what the run does', () => {
  test('stands: still, upright, XcoM over the soles, nothing but feet down, and the run ends there', () => {
    const run = landAt(ilse, mat, { speed: 4 }, 0);
    expect(run.ending.kind).toBe('stands');
    const last = run.n - 1;
    expect(run.t[last]).toBe(run.ending.t);
    expect(Math.hypot(run.vx[last], run.vy[last])).toBeLessThan(0.06);
    const q = (name: string): number => run.q[run.entry.chain.joints.findIndex((j) => j.name === name)][last];
    expect(q('knee')).toBeLessThan(0.45);
    expect(q('knee')).toBeGreaterThan(-0.1);
    expect(q('hip')).toBeLessThan(0.7);
    expect(run.xcom[last]).toBeGreaterThan(run.heel[last]);
    expect(run.xcom[last]).toBeLessThan(run.toe[last]);
  });

  test('turning that is left at touchdown decides: the same arrival, but for 20.8 kg m2/s, does not stand', () => {
    const turning = 20.8 / (ilse.mass * 1.62 ** 2);
    expect(rankOf(landAt(ilse, mat, { speed: 4 }, 0).ending.kind)).toBe(0);
    const turned = landAt(ilse, mat, { speed: 4, turning }, 0).ending;
    expect(rankOf(turned.kind)).toBeGreaterThan(0);
    expect(turned.direction).toBe('back');
  });

  test('feet ahead and friction: 3 m/s forward can stand, with less friction it does not', () => {
    const arrival = { speed: 4.5, forward: 3, turning: -0.2 };
    const angles = Array.from({ length: 17 }, (_, i) => 20 + i);
    const stands = angles.filter((a) => rankOf(landAt(ilse, mat, arrival, a).ending.kind) === 0);
    expect(stands.length).toBeGreaterThan(0);
    for (const a of stands)
      expect(rankOf(landAt(ilse, { ...mat, friction: 0.2 }, arrival, a).ending.kind)).toBeGreaterThan(0);
  });

  test('a step is as long as the excess has grown when it is taken', () => {
    const { ending } = landAt(ilse, mat, { speed: 4 }, -5);
    const reason = ending.reasons[0];
    if (reason.kind !== 'beyondToes') throw new Error(reason.kind);
    expect(ending.direction).toBe('forward');
    expect(reason.step / reason.by).toBeGreaterThan(Math.exp(Math.sqrt(G / 1.1) * STEP_TIME));
    expect(reason.step / reason.by).toBeLessThan(Math.exp(Math.sqrt(G / 0.5) * STEP_TIME));
  });

  test('what touches before the sinking has ended is a fall, step or not; who steps has been braked', () => {
    let [foreseenFalls, steps] = [0, 0];
    for (const turning of [-0.2, 0, 0.2])
      for (let angle = -20; angle <= 20; angle += 4) {
        const { ending, braked } = landAt(ilse, mat, { speed: 4.5, turning }, angle);
        const foreseen = ending.reasons.find((r) => 'isForeseen' in r);
        if (rankOf(ending.kind) === 3) {
          expect(ending.reasons[0].kind).toBe('part');
          if (foreseen) foreseenFalls++;
          continue;
        }
        if (rankOf(ending.kind) === 0) continue;
        steps++;
        expect(braked).toBeGreaterThan(0);
        expect(ending.reasons.some((r) => r.kind === 'part')).toBe(false);
      }
    expect(foreseenFalls).toBeGreaterThan(3);
    expect(steps).toBeGreaterThan(3);
  });

  test('so many steps of the longest as the excess takes, none beyond three', () => {
    for (let angle = -20; angle <= 20; angle += 2) {
      const { ending } = landAt(ilse, mat, { speed: 4.5 }, angle);
      for (const r of ending.reasons) {
        if (r.kind !== 'beyondToes' && r.kind !== 'behindHeels') continue;
        // caught one after the other: what is left of the excess has grown when the next foot is down
        const grows = r.step / r.by;
        let [left, count] = [r.by, 0];
        while (left > 0 && count < 4) {
          left = left * grows - r.longest;
          count++;
        }
        expect(r.count).toBe(count <= 3 ? count : undefined);
      }
    }
  });

  test('far forward the hands come down, far back the seat does, each after the feet', () => {
    for (const [angle, part] of [
      [-30, 'hands'],
      [30, 'seat'],
    ] as const) {
      const { ending, t, n } = landAt(ilse, mat, { speed: 4 }, angle);
      expect(ending.kind).toBe(part);
      expect(ending.t).toBe(t[n - 1]);
      expect(ending.t).toBeGreaterThan(0.05);
    }
  });

  test('who has no time to end has not ended', () => {
    const run = runLanding(arrive(ilse, { speed: 4 }, 0), { mat, action: DEFAULT_ACTION, duration: 0.3 });
    expect(run.ending.kind).toBe('unsettled');
    expect(run.ending.reasons.at(-1)?.kind).toBe('timeIsUp');
  });
});

describe('over the angle of the body: stands, a step, steps, down, in this order on both sides', () => {
  test('islands are found where it gets better again', () => {
    expect(findIslands([3, 2, 1, 0, 0, 1, 3])).toEqual([]);
    expect(findIslands([3, 1, 2, 0, 0, 1, 3, 2])).toEqual([
      [7, 8],
      [1, 2],
    ]);
  });

  const athletesOf = ['ilse-marrow', 'tobias-fenn', 'runa-holt', 'jory-quill', 'nell-oakum'].slice(0, casesOf(5, 2));
  const surfaces = (['competitionMat', 'withSoftLayer', 'floor'] as const).slice(0, casesOf(3, 1));
  const speeds = [4, 2.5, 5].slice(0, casesOf(3, 1));
  const turnings = [-0.1, 0, 0.1];
  const stepDeg = casesOf(1.5, 5);
  for (const id of athletesOf)
    for (const name of surfaces)
      test(`${id}, ${name}`, () => {
        const body = bodyOf(id);
        let islands = 0;
        let unsure = 0;
        for (const speed of speeds)
          for (const turning of turnings) {
            const angles: number[] = [];
            for (let a = -45; a <= 45; a += stepDeg) angles.push(a);
            const kinds = angles.map((a) => landAt(body, MATS[name], { speed, turning }, a).ending.kind);
            const ranks = kinds.map(rankOf);
            const found = findIslands(ranks);
            islands += found.length;
            for (const [from, to] of found) {
              const i = (from + to - 1) >> 1;
              const halved = landAt(body, MATS[name], { speed, turning }, angles[i], { step: 0.000125 });
              if (rankOf(halved.ending.kind) !== ranks[i]) unsure++;
            }
            if (process.env.SHAPEFLIGHT_FIT === '1')
              console.log(`${id} ${name} ${speed} ${turning} ${kinds.map(letterOf).join('')} ${JSON.stringify(found)}`);
            // both ends are down, whatever lies between
            expect(ranks[0]).toBe(3);
            expect(ranks.at(-1)).toBe(3);
          }
        if (process.env.SHAPEFLIGHT_FIT === '1') console.log('islands', id, name, islands, unsure);
        /** of 3 rows (sample) or 9 */
        expect(islands).toBeLessThanOrEqual(casesOf(2, 0));
        // those that there are come of the motion and not of the step
        expect(unsure).toBe(0);
      }, 120_000);
});

describe('batches land by Runge-Kutta, what is shown by the engine', () => {
  test('the same forces and the same word', () => {
    /** share of the peak; measured 0.017 at the most over 126 landings (docs/numerics.md) */
    const PEAK = 0.03;
    let apart = 0;
    const cases = [2.5, 4].flatMap((speed) => [-8, -4, 0, 4, 8].map((angle) => ({ speed, angle })));
    for (const { speed, angle } of cases) {
      const [shown, batch] = [false, true].map((isBatch) => landAt(ilse, mat, { speed }, angle, { isBatch }));
      const top = (fy: Float64Array): number => fy.reduce((a, b) => Math.max(a, b), 0);
      expect(Math.abs(top(shown.fy) / top(batch.fy) - 1)).toBeLessThan(PEAK);
      if (rankOf(shown.ending.kind) !== rankOf(batch.ending.kind)) apart++;
    }
    /** measured 3 of 126 */
    expect(apart).toBeLessThanOrEqual(1);
  });
});

describe('likelihood under stated ranges', () => {
  test('samples fill every range evenly, and are the same each time', () => {
    const n = 2 * LANDING_SAMPLES;
    LANDING_RANGES.forEach(({ low, high }, d) => {
      const xs = Array.from({ length: n }, (_, i) => (rangeValues(i)[d] - low) / (high - low)).sort((a, b) => a - b);
      // no gap of more than four times the even one
      xs.push(1);
      xs.reduce((before, x) => {
        expect(x - before).toBeLessThan(4 / n);
        return x;
      }, 0);
    });
    expect(rangeValues(7)).toEqual(rangeValues(7));
  });

  test('counts of any samples come to ten tenths, each within one of its share, the more frequent first', () => {
    const of = (...counts: number[]): number[] =>
      tenthsOf(counts.flatMap((n, i) => Array.from({ length: n }, () => KINDS[i]))).map((one) => one.tenths);
    const KINDS = ['stands', 'smallStep', 'steps', 'hands'] as const;
    expect(of(13, 7)).toEqual([7, 3]);
    expect(of(7, 13)).toEqual([7, 3]);
    expect(of(5, 5, 5, 5)).toEqual([3, 3, 2, 2]);
    for (let a = 1; a <= 18; a++)
      for (let b = 1; a + b < 20; b++) {
        const tenths = of(a, b, 20 - a - b);
        expect(tenths.reduce((sum, n) => sum + n, 0)).toBe(10);
        const sorted = [a, b, 20 - a - b].sort((x, y) => y - x);
        expect(Math.max(...tenths.map((n, i) => Math.abs(n - sorted[i] / 2)))).toBeLessThan(1);
      }
  });

  test('a landing in the middle of what stands does so in most of the ranges, one at its edge in fewer', () => {
    const spec = { mat, action: DEFAULT_ACTION };
    const count = (angle: number): number => {
      const kinds = Array.from({ length: 10 }, (_, i) => landSample(arrive(ilse, { speed: 3 }, angle), spec, i));
      const tenths = tenthsOf(kinds);
      expect(tenths.reduce((sum, k) => sum + k.tenths, 0)).toBe(10);
      return kinds.filter((k) => rankOf(k) === 0).length;
    };
    const [middle, edge] = [count(0), count(4)];
    expect(middle).toBeGreaterThan(edge);
  });
});
