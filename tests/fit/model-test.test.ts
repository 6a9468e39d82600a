// The model against recordings of its own flights: without error nothing is left but rounding; written as a file, every reader flies the same.
import { describe, expect, it } from 'vitest';
import { testModel } from '../../sim/fit/model-test.ts';
import { judgeRecording } from '../../sim/fit/quality.ts';
import { writeRecordedSkill } from '../../sim/fit/recorded-skill.ts';
import { checkSkillFile, flySkill, formatSkill } from '../../sim/index.ts';
import { REV } from '../../sim/math/angles.ts';
import { calcRecordedMomentum } from '../../sim/recording/recorded-momentum.ts';
import { fileOf, skillOf } from '../skill/load.ts';
import { recorded } from './recorded.ts';

const IDS = ['back-straight-full', 'double-back-tuck', 'trampoline-double-full', 'trampoline-barani'];

describe.each(IDS)('%s without noise', (id) => {
  it.each(['none', 'gcv'] as const)('comes back within 1e-4 rev, smoothed by %s', (kind) => {
    const { motion, start } = recorded(id, 240, { kind });
    const { worst } = testModel(motion, start).test;
    for (const v of worst) expect(v / REV).toBeLessThan(1e-4);
  });
});
it('as a file it is the same flight', () => {
  const { motion, start } = recorded(
    'trampoline-double-full',
    120,
    { kind: 'gcv' },
    { seed: 1, angle: 0.01, place: 0.003 },
  );
  const { flight } = testModel(motion, start);
  const file = writeRecordedSkill(motion, start, {
    title: 'Full twist, recorded',
    athlete: fileOf('trampoline-double-full').athlete,
    file: 'full.trc',
  });
  const read = checkSkillFile(JSON.parse(formatSkill(file)));
  const again = flySkill(skillOf(read));
  const [a, b] = [new Float64Array(4), new Float64Array(4)];
  for (const share of [0, 0.3, 0.7, 1]) {
    flight.quatInto(share * flight.duration, a);
    again.quatInto(share * again.duration, b);
    // degrees are written to nine digits
    for (let k = 0; k < 4; k++) expect(Math.abs(a[k] - b[k])).toBeLessThan(1e-7);
  }
  expect(read.recordings).toEqual([
    { title: 'Full twist, recorded', kind: 'capture', file: 'full.trc', startS: 0, rateHz: 120 },
  ]);
});

describe('quality', () => {
  it('of a flight with a little noise is good, and its momentum nearly the one it was flown with', () => {
    const { motion, momentum } = recorded(
      'double-back-tuck',
      240,
      { kind: 'gcv' },
      { seed: 1, angle: 0.01, place: 0.003 },
    );
    const quality = judgeRecording(motion, momentum, 0.1);
    expect(quality.refusals).toEqual([]);
    expect(quality.momentumSpread).toBeLessThan(0.05);
  });
  it('is refused with its reason: a slow clock, a body that is another, a knee lost for long', () => {
    const { motion } = recorded('double-back-tuck', 240, { kind: 'gcv' });
    const reasons = (m: typeof motion): string[] =>
      judgeRecording(m, calcRecordedMomentum(m), 0.1).refusals.map((r) => r.reason);
    expect(reasons({ ...motion, span: { ...motion.span, g: 9.81 * 1.06, gError: 0.05 } })).toEqual(['gravity']);
    expect(reasons({ ...motion, span: { ...motion.span, g: 9.81 * 1.06, gError: 0.3 } })).toEqual([]);
    expect(reasons({ ...motion, angles: motion.angles.map(() => 0), rates: motion.rates.map(() => 0) })).toEqual([
      'momentum',
    ]);
    expect(reasons({ ...motion, gaps: [[{ from: 3, rows: 60, isFilled: false }]] })).toEqual(['gap']);
    expect(reasons({ ...motion, span: { ...motion.span, end: motion.span.start + 0.2, offParabola: 0.04 } })).toEqual([
      'short',
      'parabola',
    ]);
  });
});
