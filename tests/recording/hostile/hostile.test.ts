// Every recording of the list is read as it should be or refused with what and where; none runs on without end, none throws anything else.
import { describe, expect, test } from 'vitest';
import { FieldError } from '../../../sim/math/field-error.ts';
import { readRecording, readRecordingSteps } from '../../../sim/recording/read-recording.ts';
import type { Recording } from '../../../sim/recording/recording.ts';
import { RECORDING_LIMITS } from '../../../sim/recording/recording-limits.ts';
import { HOSTILE } from './list.ts';
import { SOUND } from './samples.ts';

/** Pauses: one a piece of bytes, one a column, and some for what comes after. */
const mostSteps = (bytes: number): number => 200 + RECORDING_LIMITS.columns + bytes / 1000;

/** The recording or its refusal, in a bounded number of steps. */
function openFile(file: string, bytes: Uint8Array): Recording | string {
  try {
    const steps = readRecordingSteps(file, bytes);
    for (let k = 0; k < mostSteps(bytes.length); k++) {
      const step = steps.next();
      if (step.done) return step.value;
      expect(step.value.done).toBeGreaterThanOrEqual(0);
      expect(step.value.done).toBeLessThanOrEqual(1);
    }
    return 'no end';
  } catch (error) {
    expect(error).toBeInstanceOf(FieldError);
    return (error as FieldError).message;
  }
}

/** What has to hold of whatever is read. */
function checkSound(r: Recording): void {
  expect(r.frames).toBeGreaterThanOrEqual(2);
  expect(r.times.length).toBe(r.frames);
  expect(r.times.every((t, i) => i === 0 || t > r.times[i - 1])).toBe(true);
  expect(r.rateHz).toBeGreaterThan(0);
  for (const list of [r.points, r.joints, r.columns])
    expect(new Set(list.map(({ name }) => name)).size).toBe(list.length);
  for (const { p } of r.points) expect(p.length).toBe(3 * r.frames);
  r.joints.forEach(({ R, parent }, k) => {
    expect([R.length, parent < k]).toEqual([9 * r.frames, true]);
  });
  for (const { values } of r.columns) expect(values.length).toBe(r.frames);
}

test('the list is long, and names each once', () => {
  expect(HOSTILE.length).toBeGreaterThan(100);
  const names = HOSTILE.map(({ name, file }) => `${name} ${file}`);
  expect(names.filter((name, k) => names.indexOf(name) !== k)).toEqual([]);
});

describe.each(['a.bvh', 'a.trc', 'a.csv', 'a.c3d', ''])('%s', (ending) => {
  const list = HOSTILE.filter(({ file }) => (ending === '' ? !/^a\.(bvh|trc|csv|c3d)$/.test(file) : file === ending));
  test.each(list.map((one) => [one.name, one] as const))('%s', (_, { file, bytes, becomes, note }) => {
    const found = openFile(file, bytes());
    if (typeof found === 'string') {
      expect(found).toContain(becomes);
      expect(found).toMatch(/is not possible; allowed: |needed: /);
      expect(found.length).toBeLessThan(600);
      expect(found).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
      return;
    }
    expect(found.frames, found.notes.join(' ')).toBe(becomes);
    checkSound(found);
    if (note !== undefined) expect(found.notes.join(' ')).toContain(note);
  });
});

/** All numbers of the rows from `from` to `to`. */
const numbersOf = (r: Recording, to: number): number[] => [
  ...r.times.subarray(0, to),
  ...r.points.flatMap(({ p }) => [...p.subarray(0, 3 * to)]),
  ...r.joints.flatMap(({ R, p }) => [...R.subarray(0, 9 * to), ...(p ?? []).slice(0, 3 * to)]),
  ...r.columns.flatMap(({ values }) => [...values.subarray(0, to)]),
];

describe.each([...SOUND])('%s', (file, bytes) => {
  const whole = readRecording(file, bytes);

  test('cut off at any byte it is refused, or what is read of it is the beginning', () => {
    let read = 0;
    for (let length = 0; length < bytes.length; length++) {
      const found = openFile(file, bytes.slice(0, length));
      if (typeof found === 'string') {
        expect(found).toMatch(/is not possible; allowed: |needed: /);
        continue;
      }
      read++;
      checkSound(found);
      expect(found.frames).toBeLessThanOrEqual(whole.frames);
      // in the last row the last number may be cut: nothing says so in a table, which states no count, and in the last row of all
      const to = file.endsWith('.csv') || found.frames === whole.frames ? found.frames - 1 : found.frames;
      expect(numbersOf(found, to), `${length} bytes`).toEqual(numbersOf(whole, to));
    }
    expect(read).toBeGreaterThan(0);
  });

  test('with any one byte turned into another it is read soundly or refused', () => {
    const step = Math.max(1, Math.floor(bytes.length / 120));
    for (let at = 0; at < bytes.length; at += step)
      for (const put of [0, 9, 45, 255]) {
        const changed = bytes.slice();
        changed[at] = put;
        const found = openFile(file, changed);
        if (typeof found !== 'string') checkSound(found);
      }
  });
});
