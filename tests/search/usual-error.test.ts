/** Usual errors: how large, of whom, from where, and how times go together. */
import { describe, expect, it } from 'vitest';
import {
  type ErrorSetting,
  errorSources,
  findInput,
  parseSkill,
  type StudyRequest,
  shareOfTries,
  USUAL_ERRORS,
  usualBy,
  usualSpread,
  usualStudy,
  wordTogether,
} from '../../sim/index.ts';
import { RAD } from '../../sim/math/angles.ts';
import { shareOf } from '../../sim/search/margin-study.ts';
import { distances } from '../../sim/search/sample.ts';
import { Draw } from '../../sim/search/sample-spread.ts';
import { StudyRunner } from '../../sim/search/span.ts';
import { casesOf } from '../corpus.ts';
import { fileOf, presetIds, shelf } from '../skill/load.ts';

const specOf = (id: string) => parseSkill(fileOf(id), shelf);
const twist = specOf('back-straight-full');
const giant = specOf('giant-double-straight');
const keyed = specOf('cat-turn');
const by = (spec: typeof twist, id: string, errors?: ErrorSetting): number => usualBy(findInput(spec, id), errors);

describe('how large', () => {
  it('times 12 ms of a national athlete and 8 ms of an elite one; angles 2.3 deg; speed up 2 %; momentum 3 %', () => {
    for (const [spec, id] of [
      [twist, 'block:2.moveStart'],
      [twist, 'block:2.moveTime'],
      [giant, 'swing.late'],
      [keyed, 'key:3.time'],
    ] as const) {
      expect(by(spec, id), id).toBe(0.012);
      expect(by(spec, id, { level: 'elite', factor: 1 }), id).toBe(0.008);
    }
    for (const [spec, id] of [
      [twist, 'block:3.angle:hipFlexion'],
      [giant, 'swing.key:3.angle'],
      [keyed, 'key:3.angle'],
    ] as const)
      expect(by(spec, id), id).toBeCloseTo(2.3 * RAD, 12);
    expect(by(twist, 'takeoff.speedUp')).toBeCloseTo(0.02 * findInput(twist, 'takeoff.speedUp').value, 12);
    expect(by(twist, 'takeoff.h.z')).toBeCloseTo(0.03 * findInput(twist, 'takeoff.h.z').value, 12);
  });

  it('half to twice of them, no further', () => {
    const { parts } = usualSpread(twist);
    for (const factor of [0.5, 2])
      usualSpread(twist, { level: 'national', factor }).parts.forEach((p, i) => {
        expect(p.by).toBeCloseTo(factor * parts[i].by, 12);
      });
    for (const factor of [0.4, 2.1, Number.NaN])
      expect(() => usualSpread(twist, { level: 'national', factor })).toThrow(/0\.5 to 2/);
  });

  it('nothing of the body varies unasked, in any preset', () => {
    for (const id of presetIds)
      for (const { input } of usualSpread(specOf(id)).parts) expect(input.level, `${id} ${input.id}`).not.toBe('body');
  });

  it('less error, more tries in the window', () => {
    const TRIES = casesOf(100, 30);
    const usual = (factor: number): StudyRequest => usualStudy(twist, 4, undefined, { level: 'national', factor });
    // as the window was before landings were judged by their model
    const window = [
      { result: 'short', low: -10 * RAD, high: 10 * RAD },
      { result: 'tilt', low: -10 * RAD, high: 10 * RAD },
      { result: 'twists', low: 1 - 1 / 12, high: 1 + 1 / 12 },
    ];
    const share = (factor: number, asked: StudyRequest = { ...usual(factor), window }): number => {
      const runner = new StudyRunner(asked);
      return shareOf(distances(runner.study.window, runner.samples(0, TRIES)), TRIES).share;
    };
    // measured 0.83, 0.45, 0.21
    const once = share(1);
    expect(share(0.5)).toBeGreaterThan(once + 0.1);
    expect(once).toBeGreaterThan(share(2) + 0.1);
    expect(shareOfTries(twist, TRIES, { seed: 4 }).share).toBe(share(1, usual(1)));
  });
});

describe('from where', () => {
  const sourceOf = (id: string, setting?: ErrorSetting): string => {
    const { parts } = usualSpread(twist, setting);
    return errorSources(parts, setting).find(({ inputs }) => inputs.includes(id))?.source ?? '';
  };
  it('published is only what was read; the rest is from memory or our judgement', () => {
    expect(sourceOf('block:2.moveStart')).toMatch(/^published: 12 ms .*20 trials .*read in its index record/);
    expect(sourceOf('block:2.moveStart', { level: 'elite', factor: 1 })).toMatch(/^our judgement, 8 ms: /);
    expect(sourceOf('block:3.angle:hipFlexion')).toMatch(/^published: 2\.3 deg of hip and shoulder/);
    for (const id of ['takeoff.h.z', 'takeoff.speedUp']) expect(sourceOf(id)).toMatch(/^from memory, no source: /);
    for (const id of ['takeoff.lean', 'takeoff.tilt', 'takeoff.twist'])
      expect(sourceOf(id)).toBe('our judgement for a trained athlete, not measured');
  });
  it('a factor is said with it', () => {
    expect(sourceOf('takeoff.h.z', { level: 'national', factor: 2 })).toMatch(/^2 times: from memory/);
  });
});

describe('together', () => {
  /** Standard deviations and correlations of draws; noise of 20,000 is 0.007, measured at most 0.012 */
  const DRAWS = 20_000;
  const NOISE = 0.02;
  const spread = usualSpread(twist, USUAL_ERRORS);
  const at = (id: string): number => spread.parts.findIndex((p) => p.input.id === id);
  const rows = (() => {
    const draw = new Draw(spread, 7);
    const row = new Float64Array(draw.n);
    return Array.from({ length: DRAWS }, (_, i) => {
      draw.offsetsInto(i, row);
      return Float64Array.from(row);
    });
  })();
  const column = (of: (row: Float64Array) => number): Float64Array => Float64Array.from(rows, of);
  const correlation = (a: Float64Array, b: Float64Array): number => {
    const mean = (x: Float64Array): number => x.reduce((s, v) => s + v, 0) / x.length;
    const [ma, mb] = [mean(a), mean(b)];
    let [ab, aa, bb] = [0, 0, 0];
    for (let i = 0; i < a.length; i++) {
      ab += (a[i] - ma) * (b[i] - mb);
      aa += (a[i] - ma) ** 2;
      bb += (b[i] - mb) ** 2;
    }
    return ab / Math.sqrt(aa * bb);
  };
  const startOf = (n: number) => column((row) => row[at(`block:${n}.moveStart`)]);
  const endOf = (n: number) => column((row) => row[at(`block:${n}.moveStart`)] + row[at(`block:${n}.moveTime`)]);

  it('any two times, starts or ends of moves, have half of their variance in common', () => {
    const times = [startOf(2), endOf(2), startOf(3), endOf(3)];
    for (let i = 0; i < times.length; i++) {
      const variance = times[i].reduce((s, v) => s + v * v, 0) / DRAWS;
      expect(Math.abs(variance - 1)).toBeLessThan(2 * NOISE);
      for (let j = 0; j < i; j++) expect(Math.abs(correlation(times[i], times[j]) - 0.5)).toBeLessThan(NOISE);
    }
  });

  it('is said in one sentence, whatever the number of times', () => {
    for (const id of presetIds) {
      const words = wordTogether(usualSpread(specOf(id)).correlations);
      expect(words.length, id).toBeLessThan(230);
      if (id === 'cat-turn') expect(words).toMatch(/^times are a shift common to all .*correlation 0\.5/);
    }
    expect(wordTogether([])).toMatch(/for itself/);
    expect(wordTogether([{ a: 'block:2.moveStart', b: 'block:3.moveStart', r: 0.9 }])).toBe(
      'block:2.moveStart with block:3.moveStart 0.9',
    );
  });
});
