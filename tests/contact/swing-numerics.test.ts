/** The errors of a swing at four steps, measured again: none is larger than it was, and they fall with the step as claimed. */
import { expect, it } from 'vitest';
import { SWING_ERRORS } from '../../sim/contact/make-swing.ts';
import { STEP } from '../../sim/contact/swing-stepper.ts';
import { MEASURED, MEASURES, measureErrors } from './swing-table.ts';
import { DEG } from './swings.ts';

/** an error may be this much more than the one in the table; those near rounding are not compared */
const OVER = 1.5;
const ROUNDING = 1e-9;

const measured = measureErrors();

it.each(measured)('$of at $step s: no error larger than in the table', ({ of, step, errors }) => {
  const [, ...row] = MEASURED[of].find(([at]) => at === step) ?? [];
  expect(row).toHaveLength(MEASURES.length);
  MEASURES.forEach((name, i) => {
    expect(errors[name], name).toBeLessThanOrEqual(OVER * row[i] + ROUNDING);
  });
});

/** Halving the step divides an error of order 4 by 16: log2 measured 3.89 to 4.14 */
const OFF_ORDER = 0.2;

it.each(['driven', 'limited'] as const)('%s: of order 4, in its joints and in its energy account', (of) => {
  const at = (step: number) => measured.find((m) => m.of === of && m.step === step)?.errors;
  const [coarse, fine] = [at(STEP), at(STEP / 2)];
  if (!coarse || !fine) throw new Error(of);
  for (const name of ['joints', 'account'] as const)
    expect(Math.abs(Math.log2(coarse[name] / fine[name]) - 4), name).toBeLessThan(OFF_ORDER);
});

it('what a result says of its error holds at the default step', () => {
  for (const of of ['driven', 'limited'] as const) {
    const found = measured.find((m) => m.of === of && m.step === STEP);
    const said = SWING_ERRORS[of];
    if (!found) throw new Error(of);
    const { errors: e } = found;
    expect(e.joints * DEG).toBeLessThan(said.angle);
    expect(Math.max(e.grip, e.head, e.torque)).toBeLessThan(said.force);
    expect(Math.max(e.speed, e.rate, e.momentum)).toBeLessThan(said.speed);
    expect(Math.max(e.energy, e.account)).toBeLessThan(said.energy);
  }
});
