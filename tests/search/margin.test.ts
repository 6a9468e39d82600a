/** Margins against closed forms: a stretched body that only turns, and a window whose share is an integral. */
import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import { parseSkill } from '../../sim/index.ts';
import { normalCdf } from '../../sim/math/normal.ts';
import { calcBar } from '../../sim/search/margin-bars.ts';
import { studyMargin } from '../../sim/search/margin-study.ts';
import { distanceIn, usualWindow, type Window } from '../../sim/search/margin-window.ts';
import { Sampler } from '../../sim/search/sample.ts';
import { SampleFlyer } from '../../sim/search/sample-fly.ts';
import { makeSpread, type SpreadPart, usualSpread } from '../../sim/search/sample-spread.ts';
import { StudyRunner, usualStudy } from '../../sim/search/span.ts';
import { casesOf } from '../corpus.ts';
import { bound, RAD, shelf, stillSpec, vary } from './still.ts';

const flyerOf = (spec: ReturnType<typeof stillSpec>, parts: readonly SpreadPart[]): SampleFlyer =>
  new SampleFlyer(
    spec,
    parts.map((p) => p.input),
  );

/** Somersaults of the still body: N = h T / (2 pi A). */
function still(): { spec: ReturnType<typeof stillSpec>; N: number } {
  const spec = stillSpec(60, 1.1);
  const parts = [vary(spec, 'takeoff.h.z', 1)];
  const outcome = flyerOf(spec, parts).outcomeAt([60]);
  return { spec, N: bound('somersaults', 0, 1).result.get(outcome) };
}

describe('bars', () => {
  it('end where the closed form says, to both sides', () => {
    const { spec, N } = still();
    const half = 20 / 360;
    const window: Window = [bound('somersaults', N + 5 / 360, half)];
    const parts = [vary(spec, 'takeoff.h.z', 1), vary(spec, 'end.duration', 0.02)];
    const flyer = flyerOf(spec, parts);
    parts.forEach(({ input, by }, i) => {
      const bar = calcBar(flyer, parts, window, i);
      const perUnit = N / input.value;
      const [low, high] = [-(half - 5 / 360) / perUnit, (half + 5 / 360) / perUnit];
      expect(Math.abs(bar.low.by - low) / by, input.id).toBeLessThan(EDGE);
      expect(Math.abs(bar.high.by - high) / by, input.id).toBeLessThan(EDGE);
      expect(bar.low.ends).toBe('window');
      expect(bar.low.result).toBe('somersaults');
      expect(bar.forgives).toBeCloseTo(-low / by, 3);
    });
  });

  it('say when an input does not matter, when its range ends, and when nothing can be flown', () => {
    const { spec, N } = still();
    const window: Window = [bound('somersaults', N, 0.1)];
    const parts = [vary(spec, 'takeoff.speedAlong', 0.01), vary(spec, 'takeoff.speedUp', 1)];
    const flyer = flyerOf(spec, parts);
    expect(calcBar(flyer, parts, window, 0).high.ends).toBe('never');
    expect(calcBar(flyer, parts, window, 1).high.ends).toBe('range');
    const fall = parseSkill(skills['back-straight'], shelf);
    const down = [vary(fall, 'takeoff.speedUp', 0.5)];
    const wide: Window = [bound('somersaults', 1, 50)];
    const bar = calcBar(new SampleFlyer(fall, [down[0].input]), down, wide, 0);
    expect(bar.low.ends).toBe('flight');
    expect(bar.low.fault).toMatch(/touch/);
  });

  it('stand at nothing for a skill that is outside its window', () => {
    const { spec, N } = still();
    const parts = [vary(spec, 'takeoff.h.z', 1)];
    const bar = calcBar(flyerOf(spec, parts), parts, [bound('somersaults', N + 1, 0.1)], 0);
    expect([bar.low.by, bar.high.by, bar.forgives]).toEqual([0, 0, 0]);
  });
});
const EDGE = 2e-4; // of the spread; edges are looked for to 1e-4

describe('the share in the window', () => {
  const { spec, N } = still();
  // 0.8 deviations short of one edge, 1.3 of the other
  const by = 2;
  const one = (N * by) / 60;
  const window: Window = [{ ...bound('somersaults', N, 1), low: N - 0.8 * one, high: N + 1.3 * one }];
  const spread = makeSpread([vary(spec, 'takeoff.h.z', by), vary(spec, 'takeoff.speedUp', 0.1)], []);
  const table = new Sampler({ spec, spread, window, seed: 1 }).run(0, 3000);
  const study = studyMargin(table, spread, window);

  it('is the integral over the window, within its interval, and settles', () => {
    const wanted = normalCdf(1.3) - normalCdf(-0.8);
    const { share, interval, n } = study.now;
    expect(n).toBe(3000);
    expect(interval[0]).toBeLessThan(wanted);
    expect(interval[1]).toBeGreaterThan(wanted);
    expect(share).toBeGreaterThan(interval[0]);
    expect(study.settled.map((s) => s.n)).toEqual([100, 200, 500, 1000, 2000, 3000]);
    const widths = study.settled.map((s) => s.interval[1] - s.interval[0]);
    expect(widths[5]).toBeLessThan(widths[0] / 4);
  });

  it('goes with the input that matters and not with the other', () => {
    const [first, second] = study.influences;
    expect(first.part).toBe(0);
    expect(first.effects[0]).toBeCloseTo(1, 3);
    expect(first.ranks[0]).toBeCloseTo(1, 3);
    expect(first.share).toBeGreaterThan(0.8);
    expect(second.share).toBeLessThan(0.01);
    expect(study.linear[0]).toBeCloseTo(1, 6);
  });

  it('reads no influence from rounding: a result that only rounding varies is said not to vary', () => {
    const both: Window = [...window, bound('twists', 0, 1 / 12)];
    // as every sample of a planar skill: zero but for rounding, here in step with the momentum
    const results = Float64Array.from({ length: 2 * table.n }, (_, i) =>
      i % 2 === 0 ? table.results[i / 2] : 1e-14 * table.values[i - 1],
    );
    const planar = studyMargin({ ...table, results }, spread, both);
    expect(planar.linear[1]).toBeNaN();
    for (const { effects, ranks } of planar.influences) {
      expect(effects[1]).toBe(0);
      expect(ranks[1]).toBe(0);
    }
    expect(planar.influences.map((i) => i.effects[0])).toEqual(study.influences.map((i) => i.effects[0]));
  });

  it('counts what could not be flown as not landed', () => {
    const results = table.results.slice();
    results[0] = Number.NaN;
    const without = studyMargin({ ...table, results, faults: { 0: 'no touchdown' } }, spread, window);
    expect(without.faults).toBe(1);
    expect(without.now.n).toBe(3000);
  });
});

describe('the usual window', () => {
  it('of a landing on the feet is held as the landing model has it; a bed and water keep the angle', () => {
    const idsOf = (id: string): string[] => {
      const spec = parseSkill(skills[id], shelf);
      const { parts } = usualSpread(spec);
      return usualWindow(spec, flyerOf(spec, parts).outcomeAt(parts.map((p) => p.input.value))).map((b) => b.result.id);
    };
    for (const id of ['back-straight-full', 'double-back-straight', 'back-tuck'])
      expect(idsOf(id), id).toEqual(['reach', 'short', 'tilt', 'twists']);
    for (const id of ['trampoline-barani', 'dive-forward-one-and-half-pike'])
      expect(idsOf(id), id).toEqual(['short', 'tilt', 'twists']);
  });

  it('lies about the target; the presets of the bed are inside', () => {
    for (const id of [
      'trampoline-double-full',
      'trampoline-triple-full',
      'trampoline-barani',
      'trampoline-double-tuck',
    ]) {
      const spec = parseSkill(skills[id], shelf);
      const { parts } = usualSpread(spec);
      const flyer = flyerOf(spec, parts);
      const outcome = flyer.outcomeAt(parts.map((p) => p.input.value));
      const window = usualWindow(spec, outcome);
      expect(window.map((b) => b.result.id)).toEqual(['short', 'tilt', 'twists']);
      const { distance } = distanceIn(
        window,
        window.map((b) => b.result.get(outcome)),
      );
      expect(distance, id).toBeLessThan(1);
    }
  });

  it('lies about what the skill does where it has no target', () => {
    const spec = stillSpec();
    const outcome = flyerOf(spec, [vary(spec, 'takeoff.h.z', 1)]).outcomeAt([60]);
    const window = usualWindow(spec, outcome);
    expect(window[0].result.id).toBe('lean');
    expect(
      distanceIn(
        window,
        window.map((b) => b.result.get(outcome)),
      ).distance,
    ).toBeLessThan(1e-9);
    expect((window[0].high - window[0].low) / 2 / RAD).toBeCloseTo(10, 9);
  });
});

describe('beside the former window', () => {
  it('the share by 10 degrees short or past is given with that by the landing, from the same tries', () => {
    const spec = parseSkill(skills['back-tuck'], shelf);
    const request = usualStudy(spec, 3);
    const runner = new StudyRunner(request);
    const table = runner.samples(0, casesOf(60, 20));
    const { study } = runner;
    const { now, formerly } = studyMargin(table, study.spread, study.window);
    const k = study.window.findIndex((b) => b.result.id === 'short');
    const m = study.window.length;
    let hits = 0;
    for (let i = 0; i < table.n; i++) {
      const [short, tilt, twists] = Array.from(table.results.subarray(m * i + k, m * i + k + 3));
      if (Math.abs(short) <= 10 * RAD && Math.abs(tilt) <= 10 * RAD && Math.abs(twists) <= 1 / 12) hits++;
    }
    expect(formerly?.hits).toBe(hits);
    expect(now.hits).not.toBe(hits);
  });

  it('a window that was asked for has no other beside it', () => {
    const spec = parseSkill(skills['trampoline-barani'], shelf);
    const { study, samples } = {
      study: new StudyRunner(usualStudy(spec)).study,
      samples: new StudyRunner(usualStudy(spec)).samples(0, 5),
    };
    expect(studyMargin(samples, study.spread, study.window).formerly).toBeUndefined();
  });
});
