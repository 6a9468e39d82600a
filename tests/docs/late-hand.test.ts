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
  [0, 0, 0, -0.1, 8],
  [1, 0.39, 2, 0.56, 1],
  [5, 0.55, 4, 0.73, 9],
  [10, 0.82, 1, 0.86, 3],
  [15, 1.08, 10, 0.99, 2],
  [20, 1.34, 8, 1.41, 6],
  [25, 1.56, 10, 1.74, 16],
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
  expect(Math.round((planned.grain?.filed ?? 0) * DEG)).toBe(13);
  expect(Math.round((planned.grain?.equal ?? 0) * DEG)).toBe(12);
  // as filed the curve falls between 9 and 11 ms
  expect(Math.abs(-doseAt(9).filed.twist / REV - 0.86)).toBeLessThan(TWIST);
  expect(Math.abs(-doseAt(11).filed.twist / REV - 0.85)).toBeLessThan(TWIST);
});

/** The row of no time, in the dose of the skill as it is. */
function rowOfNone() {
  const row = calcLateDose(builtOf(fileOf('giant-late-hand-full')), contact)?.rows[0];
  if (!row?.equal) throw new Error('no row of 0 ms');
  return { filed: row.filed, equal: row.equal };
}
