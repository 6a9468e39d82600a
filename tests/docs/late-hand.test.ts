/** The table of docs/swing.md, "One hand late": what a late hand gives for its time, arms equal and as filed. */
import { expect, test } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { calcLateDose } from '../../sim/index.ts';
import { swingIn } from '../files/parts.ts';
import { builtOf, fileOf } from '../skill/load.ts';

/** As printed: half a unit of the last digit. */
const TWIST = 0.005;
const TILT = 0.5;
const REV = 2 * Math.PI;
const DEG = 180 / Math.PI;

/** ms: twists with arms equal (+ to the right), tilt; as filed. */
const TABLE: readonly (readonly [number, number, number, number, number])[] = [
  [0, 0, 0, -0.21, 16],
  [1, 0.31, 2, 0.44, 1],
  [5, 0.51, 2, 0.79, 12],
  [10, 0.82, 2, 0.87, 2],
  [15, 1.17, 18, 1.0, 2],
  [20, 1.37, 3, 1.53, 4],
  [25, 1.68, 15, 1.94, 24],
];

function doseAt(ms: number) {
  const file = fileOf('giant-late-hand-full');
  swingIn(file).lateHand = { hand: 'left', lateS: ms / 1000 };
  const dose = calcLateDose(builtOf(file), contact);
  const row = dose?.rows.find((r) => Math.abs(1000 * r.held - ms) < 0.01);
  if (!row?.equal) throw new Error(`no row of ${ms} ms`);
  return { filed: row.filed, equal: row.equal, grain: dose?.grain };
}

test('the table of the late hand is what is flown', () => {
  const planned = doseAt(15);
  for (const [ms, equal, equalTilt, filed, filedTilt] of TABLE) {
    const one = ms === 0 ? rowOfNone() : doseAt(ms);
    expect(Math.abs(-one.equal.twist / REV - equal), `${ms} ms`).toBeLessThan(TWIST);
    expect(Math.abs(-one.filed.twist / REV - filed), `${ms} ms`).toBeLessThan(TWIST);
    expect(Math.abs(Math.abs(one.equal.tilt * DEG) - equalTilt), `${ms} ms`).toBeLessThan(TILT);
    expect(Math.abs(Math.abs(one.filed.tilt * DEG) - filedTilt), `${ms} ms`).toBeLessThan(TILT);
  }
  expect(Math.round((planned.grain?.filed ?? 0) * DEG)).toBe(25);
  expect(Math.round((planned.grain?.equal ?? 0) * DEG)).toBe(20);
  // as filed the curve falls between 8 and 12 ms
  expect(Math.abs(-doseAt(8).filed.twist / REV - 0.93)).toBeLessThan(TWIST);
  expect(Math.abs(-doseAt(12).filed.twist / REV - 0.8)).toBeLessThan(TWIST);
});

/** The row of no time, in the dose of the skill as it is. */
function rowOfNone() {
  const row = calcLateDose(builtOf(fileOf('giant-late-hand-full')), contact)?.rows[0];
  if (!row?.equal) throw new Error('no row of 0 ms');
  return { filed: row.filed, equal: row.equal };
}
