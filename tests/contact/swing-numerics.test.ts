/** The table "Swing" of docs/numerics.md, measured again. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { SWING_ERRORS } from '../../sim/contact/make-swing.ts';
import { STEP } from '../../sim/contact/swing-stepper.ts';
import { type Errors, measureErrors } from './swing-table.ts';
import { DEG } from './swings.ts';

const text = readFileSync(path.resolve(import.meta.dirname, '../../docs/numerics.md'), 'utf8');
const rows = text
  .split('\n')
  .map((line) => line.split('|').map((cell) => cell.trim().replaceAll('*', '')))
  .filter((cells) => / ms$/.test(cells[2] ?? '') && /^(driven|limited)$/.test(cells[1]))
  .map(([, of, step, ...errors]) => ({ of, step: Number.parseFloat(step) / 1000, errors: errors.map(Number) }));
const NAMES: readonly (keyof Errors)[] = [
  'grip', 'head', 'bend', 'time', 'speed', 'rate', 'momentum', 'joints', 'energy', 'account', 'torque',
]; // biome-ignore format: one row of the table

/** a written error may be this much less than the measured one; those near rounding are not compared */
const OVER = 1.5;
const ROUNDING = 1e-9;

const measured = measureErrors();

it('has a row for each kind and step', () => {
  expect(rows.map((r) => `${r.of} ${r.step}`).sort()).toEqual(measured.map((m) => `${m.of} ${m.step}`).sort());
});

it.each(measured)('$of at $step s: no error larger than written', ({ of, step, errors }) => {
  const row = rows.find((r) => r.of === of && r.step === step);
  NAMES.forEach((name, i) => {
    expect(errors[name], name).toBeLessThanOrEqual(OVER * (row?.errors[i] ?? 0) + ROUNDING);
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
