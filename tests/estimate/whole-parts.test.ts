// Swing and landing of a whole skill in a sheet, against what these phases say of themselves.
import { beforeAll, describe, expect, test } from 'vitest';
import { sheets } from '../../presets/sheet-shelf.ts';
import {
  calcSkillReadings,
  flyWhole,
  loadContact,
  partsOfWhole,
  readLink,
  readLinks,
  type SkillResult,
  type Whole,
} from '../../sim/index.ts';
import { builtOf, fileOf } from '../skill/load.ts';
import { sheetOf } from './sheet-of.ts';

const wholes: Record<string, { whole: Whole }> = {};
const GIANT = 'giant-double-straight';
const FLOOR = 'floor-double-tuck';
const resultOf = ({ whole }: { whole: Whole }): SkillResult => ({
  ...calcSkillReadings(whole.skill, {}, whole.flight),
  ...partsOfWhole(whole),
});
const value = (text: string, of: SkillResult): number => {
  const link = readLink(text, of);
  if ('missing' in link) throw new Error(`{${text}}: ${link.missing}`);
  return link.value;
};

beforeAll(async () => {
  const contact = await loadContact();
  for (const id of [GIANT, FLOOR]) wholes[id] = { whole: flyWhole(builtOf(fileOf(id)), contact) };
}, 60_000);

/** Of a peak between rows, which the swing takes from a parabola; measured 2e-5. */
const PEAK = 1e-4;

describe('the swing', () => {
  test('greatest grip load and swing speed are its peaks', () => {
    const found = wholes[GIANT];
    const result = resultOf(found);
    const peaks = found.whole.swing?.peaks;
    for (const [text, peak] of [
      ['greatest grip load', peaks?.grip],
      ['greatest swing speed', peaks?.speed],
    ] as const)
      expect(Math.abs(value(text, result) / (peak?.value ?? Number.NaN) - 1)).toBeLessThan(PEAK);
  });
  test('at the bottom the mass centre is under the bar, and the grip holds more than the weight', () => {
    const found = wholes[GIANT];
    const result = resultOf(found);
    const { bottom = Number.NaN, release } = result.swing ?? {};
    const { swing } = found.whole;
    const state = swing?.stateAt(bottom);
    expect(Math.abs(state?.p_WScm_W[0] ?? Number.NaN)).toBeLessThan(0.01);
    expect(state?.p_WScm_W[1]).toBeLessThan(swing?.rail.height ?? 0);
    expect(release).toBeCloseTo(0, 9);
    expect(value('grip load at bottom', result)).toBeGreaterThan(2 * value('mass', result) * value('gravity', result));
  });
  test('the giant at constant speed is set against it without a fault', () => {
    const { lines } = sheets['giant-at-constant-speed'];
    const sheet = sheetOf(lines, readLinks(lines, resultOf(wholes[GIANT])));
    expect(sheet.faults).toEqual([]);
    expect(sheet.of('felt').compared?.ratio).toBeGreaterThan(0);
  });
});

/** Trapezoids over rows of 0.25 ms against the landing's own mean; the worst measured is in the third figure. */
const MEAN = 0.02;

describe('the landing', () => {
  test('mean and greatest load, stopping time and distance', () => {
    const found = wholes[FLOOR];
    const { landing } = found.whole;
    if (landing?.kind !== 'landed') throw new Error('no landing');
    const result = resultOf(found);
    const weight = value('mass', result) * value('gravity', result);
    expect(value('greatest landing load', result)).toBeCloseTo(landing.report.peak.force, 6);
    expect(value('stopping time', result)).toBe(landing.report.brakeTime);
    expect(Math.abs(value('mean landing load', result) / weight / landing.report.meanBodyWeights - 1)).toBeLessThan(
      MEAN,
    );
    const meanSpeed = value('stopping distance', result) / value('stopping time', result);
    expect(meanSpeed).toBeGreaterThan(0);
    expect(meanSpeed).toBeLessThan(value('landing speed', result));
  });
});
