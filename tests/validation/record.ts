// What the checks against sources get, collected as they run: `npm run validation` keeps it, every other run holds it against what is kept.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect } from 'vitest';

export interface CheckRow {
  /** title of its test: the id of the check, and what it says */
  readonly title: string;
  readonly what: string;
  readonly expected: string;
  readonly got: string;
  readonly tolerance: number;
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

/** `near` of one file of tests: expects a value within its tolerance, and records it. */
export function recordChecks(part: string): (what: string, value: number, wanted: number, tolerance: number) => void {
  const rows: CheckRow[] = [];
  afterAll(() => {
    if (import.meta.env.MODE === 'validation') {
      const kept: KeptChecks = { date: new Date().toISOString().slice(0, 10), rows };
      writeFileSync(fileOf(part), `${JSON.stringify(kept, null, 2)}\n`);
      return;
    }
    const kept = readKept(part).rows;
    for (const row of rows) expect(kept, 'npm run validation writes what the checks get now').toContainEqual(row);
  });
  return (what, value, wanted, tolerance) => {
    expect(Math.abs(value - wanted), `${what}: ${value} against ${wanted}`).toBeLessThanOrEqual(tolerance);
    const title = (expect.getState().currentTestName ?? '').split(' > ').at(-1) ?? '';
    if (rows.filter((row) => row.title === title).length >= SHOWN) return;
    rows.push({ title, what, expected: shown(wanted, tolerance), got: shown(value, tolerance), tolerance });
  };
}
