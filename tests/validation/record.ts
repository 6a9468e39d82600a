// What the checks against sources get, collected as they run: `npm run validation` keeps it, every other run holds it against what is kept.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Suite, Task } from '@vitest/runner';
import { afterAll, expect } from 'vitest';

export interface CheckRow {
  /** title of its test: the id of the check, and what it says */
  readonly title: string;
  readonly what: string;
  readonly expected: string;
  readonly got: string;
  /** none where a range is expected */
  readonly tolerance?: number;
}
export interface KeptChecks {
  /** of the last run that wrote it */
  readonly date: string;
  readonly rows: readonly CheckRow[];
}

/** Of one test the page shows so many values; the others are checked all the same. */
const SHOWN = 3;
const fileOf = (part: string): string => path.resolve(import.meta.dirname, `${part}.json`);
export const readKept = (part: string): KeptChecks => JSON.parse(readFileSync(fileOf(part), 'utf8'));

/** A value to the digit of its tolerance. */
const shown = (x: number, tolerance: number): string => {
  const text = x.toFixed(Math.max(0, Math.min(12, Math.ceil(-Math.log10(tolerance)))));
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
};

/** No test of the file was left out (as by -t), and none failed. */
const haveAllPassed = (tasks: readonly Task[]): boolean =>
  tasks.every((one) => (one.type === 'suite' ? haveAllPassed(one.tasks) : one.result?.state === 'pass'));

interface Recorder {
  (what: string, value: number, wanted: number, tolerance: number): void;
  /** Of a published range: shown to so many decimals. */
  within(what: string, value: number, range: readonly [number, number], decimals: number): void;
}

/** `near` of one file of tests: expects a value within its tolerance, and records it. */
export function recordChecks(part: string): Recorder {
  const rows: CheckRow[] = [];
  const keep = (row: Omit<CheckRow, 'title'>): void => {
    const title = (expect.getState().currentTestName ?? '').split(' > ').at(-1) ?? '';
    if (rows.filter((one) => one.title === title).length < SHOWN) rows.push({ title, ...row });
  };
  // biome-ignore lint/correctness/noEmptyPattern: vitest hands fixtures first
  afterAll(({}: object, file: Readonly<Suite>) => {
    if (import.meta.env.MODE === 'validation') {
      const kept: KeptChecks = { date: new Date().toISOString().slice(0, 10), rows };
      writeFileSync(fileOf(part), `${JSON.stringify(kept, null, 2)}\n`);
      return;
    }
    const kept = readKept(part).rows;
    const say = 'npm run validation writes what the checks get now';
    for (const row of rows) expect(kept, say).toContainEqual(row);
    // and a check that is gone is kept no longer
    if (haveAllPassed(file.tasks)) expect(kept, say).toEqual(rows);
  });
  const near = (what: string, value: number, wanted: number, tolerance: number): void => {
    expect(Math.abs(value - wanted), `${what}: ${value} against ${wanted}`).toBeLessThanOrEqual(tolerance);
    keep({ what, expected: shown(wanted, tolerance), got: shown(value, tolerance), tolerance });
  };
  const within = (what: string, value: number, [low, high]: readonly [number, number], decimals: number): void => {
    expect(value, `${what}: ${value} in ${low} to ${high}`).toBeGreaterThan(low);
    expect(value, `${what}: ${value} in ${low} to ${high}`).toBeLessThan(high);
    keep({ what, expected: `${low} to ${high}`, got: value.toFixed(decimals) });
  };
  return Object.assign(near, { within });
}
