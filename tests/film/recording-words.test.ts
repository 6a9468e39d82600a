// What the page says of a recording: verdict, sentence's numbers, faults; what a press changes of its options.
import { describe, expect, it } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { FieldError, type HumanAthlete, type StudyOptions } from '../../sim/index.ts';
import { makeSkeletonMap } from '../../sim/recording/make-map.ts';
import { readRecordingSteps } from '../../sim/recording/read-recording.ts';
import { bodyOfAthlete } from '../../sim/recording/recorded-athlete.ts';
import { makeRecordingAxis } from '../../src/features/film/recording-axis.ts';
import { wordRecordingFault } from '../../src/features/film/recording-fault.ts';
import {
  checkFirst,
  firstOptions,
  mapRows,
  smoothingOf,
  withFoundSpan,
  withMapped,
  withSmoothing,
  withSmoothingOfAll,
  withSpan,
} from '../../src/features/film/recording-options.ts';
import { planRows } from '../../src/features/film/recording-plan.ts';
import {
  apartOf,
  apartScale,
  BEST,
  sayApart,
  sayAxis,
  sayPlusMinus,
  tickBest,
} from '../../src/features/film/recording-values.ts';
import { curvePath, dotPath } from '../../src/features/film/thin.ts';
import { xOf } from '../../src/ui/plot/axis.ts';
import { setUnits } from '../../src/ui/units.ts';
import { drain } from '../recording/filmed.ts';
import { makeStudy } from './made-study.ts';
import { writeOwnBvh } from './own-recording.ts';

const study = makeStudy();

describe('the numbers', () => {
  it('turns go in revolutions or degrees as is set, tilt in degrees always', () => {
    expect(sayApart('somersault', 0.018 * 2 * Math.PI)).toBe('0.018');
    expect(sayApart('tilt', 0.4 * (Math.PI / 180))).toBe('0.4°');
    expect(sayAxis('twist', 0.5 * 2 * Math.PI)).toBe('0.500 rev');
    setUnits({ turning: 'degrees' });
    expect(sayApart('somersault', 0.25 * 2 * Math.PI)).toBe('90°');
    expect(tickBest('twist')).toBe('43');
    setUnits({ turning: 'revolutions' });
    expect([tickBest('somersault'), tickBest('tilt'), tickBest('twist')]).toEqual(['0.04', '7', '0.12']);
  });

  it('errors are computed minus measured, and one scale holds the worst of the three', () => {
    const { test } = study;
    if (!test) throw new Error('no test');
    expect(apartOf(test, 'twist').at(-1)).toBe(test.atEnd[2]);
    expect(apartScale(test)).toBe(1.25);
    expect(apartScale({ ...test, worst: [0, 3 * BEST.tilt, 0] })).toBeCloseTo(3.75, 12);
  });
});

describe('what a number is known to', () => {
  it('is never nothing, and not known is said', () => {
    expect([0.123, 0.004, 0, Number.NaN].map((v) => sayPlusMinus(v, 2))).toEqual([
      '± 0.12',
      '± under 0.01',
      '± under 0.01',
      'not known',
    ]);
  });
});

describe('a fault', () => {
  it('says where in the file, what is there and what is wanted', () => {
    expect(wordRecordingFault(new FieldError('heron.bvh line 12', 'abc', 'a number'), 'heron.bvh')).toBe(
      'Damaged at heron.bvh line 12: “abc”; wanted is a number. Nothing was changed.',
    );
  });
  it('of a file that is no recording says what it is', () => {
    expect(wordRecordingFault(new FieldError('cat.png', 'a picture', 'a recording: BVH'), 'cat.png')).toBe(
      'cat.png is “a picture”; wanted is a recording: BVH. Nothing was changed.',
    );
  });
});

describe('options', () => {
  it('a smoothing is of one angle, until it is of all', () => {
    const one = withSmoothing(firstOptions, 'kneeFlexionL', { kind: 'cutoff', hz: 12 });
    expect(smoothingOf(one, 'kneeFlexionL')).toEqual({ kind: 'cutoff', hz: 12 });
    expect(smoothingOf(one, 'kneeFlexionR')).toEqual({ kind: 'gcv' });
    expect(smoothingOf(withSmoothingOfAll(one, { kind: 'none' }), 'kneeFlexionL')).toEqual({ kind: 'none' });
  });
  it('a span that was set goes back to what was found', () => {
    expect(withFoundSpan(withSpan(firstOptions, 0.1, 0.9))).toEqual(firstOptions);
  });
  it('a name is put elsewhere by hand, or nowhere, and the others stay', () => {
    const rows = mapRows(study.map, study.unused);
    expect(checkFirst(rows)[0].basis).toBe('place');
    expect(checkFirst(rows).at(-1)).toEqual({ kind: 'joint', from: 'Toe', to: '', basis: 'none' });
    const moved = withMapped(firstOptions, study.map, rows[0], 'head');
    expect(moved.map?.joints).toEqual([{ from: rows[0].from, segment: 'head', basis: 'hand' }]);
    const none = withMapped(moved, study.map, rows[1], '').map?.joints;
    expect(none).toEqual([...(moved.map?.joints ?? []), { from: rows[1].from, segment: '', basis: 'hand' }]);
    // the last that was put on a segment has it
    expect(withMapped(moved, study.map, rows[1], 'head').map?.joints).toEqual([
      { from: rows[1].from, segment: 'head', basis: 'hand' },
    ]);
  });
  it('what is not used is not guessed again, whatever is changed next', () => {
    const bytes = new TextEncoder().encode(writeOwnBvh('back-tuck', 50));
    const body = bodyOfAthlete(athletes['ilse-marrow'] as HumanAthlete);
    const recording = drain(readRecordingSteps('heron.bvh', bytes));
    const mapOf = (options: StudyOptions) => makeSkeletonMap(body, recording, options.map ?? {}).map;
    const rowOf = (options: StudyOptions, name: string) => {
      const row = mapRows(mapOf(options), []).find(({ from }) => from === name);
      if (!row) throw new Error(`no ${name}`);
      return row;
    };
    const without = withMapped(firstOptions, mapOf(firstOptions), rowOf(firstOptions, 'handL'), '');
    const next = withMapped(without, mapOf(without), rowOf(without, 'head'), 'head');
    const names = mapOf(next).joints.map(({ from }) => from);
    expect(names).not.toContain('handL');
    expect(names).toContain('handR');
    expect(names).toHaveLength(mapOf(firstOptions).joints.length - 1);
  });
  it('a column keeps its unit when it is another angle', () => {
    const means = { kind: 'angle', angle: 'kneeFlexionL', inRadians: true } as const;
    const map = { ...study.map, joints: [], columns: [{ from: 'knee', means, basis: 'name' as const }] };
    const [row] = mapRows(map, []);
    expect(withMapped(firstOptions, map, row, 'kneeFlexionR').map?.columns).toEqual([
      { from: 'knee', means: { ...means, angle: 'kneeFlexionR' }, basis: 'hand' },
    ]);
  });
});

describe('rows and curves', () => {
  it('rows fill the height that there is, and no more where it suffices', () => {
    for (const height of [390, 500, 560]) {
      const plan = planRows(height, true);
      expect(plan.height).toBeLessThanOrEqual(height + 8);
      const boxes = [...plan.boxes.values()];
      for (let i = 1; i < boxes.length; i++) expect(boxes[i].y).toBe(boxes[i - 1].y + boxes[i - 1].height);
    }
    expect(planRows(500, false).boxes.has('twist')).toBe(false);
  });
  it('the ruler has room beside both ends of the air', () => {
    const axis = makeRecordingAxis(784, 1.02, false);
    expect(xOf(axis, 0)).toBeGreaterThan(axis.left + 20);
    expect(xOf(axis, 1.02)).toBeLessThan(784 - 40);
  });
  it('ten thousand values are a few points a px, and a spike of one row stays', () => {
    const t = Float64Array.from({ length: 10_000 }, (_, i) => i / 10_000);
    const values = t.map((_, i) => (i === 5003 ? 9 : Math.sin(i)));
    const d = curvePath(t, values, { x: (s) => 500 * s, y: (v) => v });
    expect(d.match(/[ML]/g)?.length).toBeLessThan(2100);
    expect(d).toContain(' 9.0');
  });
  it('what is not known breaks the curve', () => {
    const d = curvePath([0, 1, 2, 3], [0, Number.NaN, 2, 3], { x: (s) => 10 * s, y: (v) => v });
    expect(d).toBe('M0.0 0.0M20.0 2.0L30.0 3.0');
    expect(dotPath([0, 0.001, 1], [1, 1, Number.NaN], { x: (s) => s, y: (v) => v })).toBe('M0 1h0');
  });
});
