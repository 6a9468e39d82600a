// What is said of a clip, and the lines that an estimate sheet reads.
import { describe, expect, it } from 'vitest';
import { computeSheet } from '../../sim/estimate/compute-sheet.ts';
import { type ClipMark, type ClipSight, calcClipTimes } from '../../sim/index.ts';
import {
  clipRows,
  clipSheetLine,
  wordClip,
  wordClipCaveats,
  wordMarkFault,
  wordMeasured,
  wordSightFaults,
} from '../../sim/words/clip-words.ts';
import { takeFrames } from './filmed.ts';

const frames = takeFrames(120, 2, 0, 0);
const marks: readonly ClipMark[] = [
  { kind: 'takeoff', frame: 13 },
  { kind: 'turn', quarters: 1, frame: 42 },
  { kind: 'turn', quarters: 2, frame: 70 },
  { kind: 'turn', quarters: 4, frame: 128 },
  { kind: 'landing', frame: 136 },
  { kind: 'rest', frame: 151 },
  { kind: 'handOff', frame: 20 },
];
const given = { gravity: 9.81, drop: { value: 0, plusMinus: 0.03 } };
const times = calcClipTimes(frames, marks, given);
const flown = { airTime: 1.039, up: 5, rise: 1.27, turns: [6.2, 5.6, Number.NaN], whole: 6 };
const plain = (runs: readonly { readonly text: string }[]): string => runs.map(({ text }) => text).join('');

describe('the sentence', () => {
  it('says air time, rise, and by how much A differs', () => {
    expect(plain(wordClip(times, flown))).toBe(
      'In the clip 1.02 s in the air, rises 1.29 m. A flies 1.04 s, 14 ± 7 ms longer.',
    );
    expect(plain(wordClip(times, { ...flown, airTime: 1.023 }))).toContain('A flies 1.02 s, as long within the error.');
    expect(plain(wordClip(times, { ...flown, airTime: 0.7011 }))).toContain('0.32 ± 0.01 s shorter.');
    expect(plain(wordClip(times))).toBe('In the clip 1.02 s in the air, rises 1.29 m.');
    expect(wordClip(calcClipTimes(frames, [], given))).toEqual([]);
  });
});

describe('the rows', () => {
  it('are named, with ± in their unit, and A where it has the same', () => {
    const rows = clipRows(times, flown);
    expect(rows.map(({ label }) => label)).toEqual([
      'Air time',
      'Speed up',
      'Rise',
      '1st quarter',
      '2nd quarter',
      '3rd to 4th quarter',
      'Whole turn',
      'Hand off',
      'Braking',
      'Mean force in it',
    ]);
    expect(wordMeasured(rows[0])).toEqual(['1.025', '± 0.007 s']);
    expect(wordMeasured(rows[6])).toEqual(['1.04', '± 0.01 rev/s']);
    expect(rows[5].flown).toBeUndefined();
    expect(rows[6].flown).toBeCloseTo(6 / (2 * Math.PI), 12);
    expect(rows[8].flown).toBeUndefined();
    expect(wordMeasured({ ...rows[8], clip: { value: 0.1, plusMinus: Number.NaN } })).toEqual([
      '0.100',
      's, ± not known',
    ]);
  });

  it('as lines of an estimate sheet are read back with value, unit and ±', () => {
    const rows = clipRows(times);
    const lines = rows.map((row) => clipSheetLine(row, 120));
    expect(lines[0]).toBe('T = 1.0250 s +- 0.0068 s  # clip, frames 14 to 137 at 120 a second');
    computeSheet(lines).lines.forEach((line, k) => {
      const { clip, quantity } = rows[k];
      if (line.kind !== 'quantity') throw new Error(`${lines[k]}: ${line.kind}`);
      // a sheet computes in SI: a turn is 2 pi
      const factor = quantity === 'rate' ? 2 * Math.PI : 1;
      expect(Math.abs(line.value - factor * clip.value)).toBeLessThan(0.06 * factor * clip.plusMinus);
      expect(Math.abs((line.ownSpread ?? 0) / (factor * clip.plusMinus) - 1)).toBeLessThan(0.06);
    });
    expect(clipSheetLine(rows[0], 120, new Set(['T', 'T_clip']))).toMatch(/^T_clip2 = /);
    expect(clipSheetLine({ ...rows[0], clip: { value: 1, plusMinus: Number.NaN } }, 120)).toMatch(/^T = 1.0000 s {2}#/);
  });
});

describe('what is wrong, and what is not seen', () => {
  it('names the marks and their frames', () => {
    const twice: readonly ClipMark[] = [
      ...marks,
      { kind: 'takeoff', frame: 30 },
      { kind: 'turn', quarters: 3, frame: 60 },
      { kind: 'highest', frame: 150 },
      { kind: 'highest', frame: 999 },
    ];
    const { faults } = calcClipTimes(frames, twice, given);
    expect(faults.map((fault) => wordMarkFault(fault, twice))).toEqual([
      'There are two marks of take-off; that of frame 14 counts.',
      'The highest point is not used: the clip has no frame 1000.',
      'Highest point, frame 151, is not used: it has to be before landing, frame 137.',
      'Turn of 3 quarters, frame 61, is not used: it has to be after turn of 2 quarters, frame 71.',
    ]);
    const slow = takeFrames(30, 8, 0, 0);
    const long = calcClipTimes(slow, [marks[0], { kind: 'landing', frame: 136 }], given);
    expect(wordMarkFault(long.faults[0], marks)).toBe(
      '4.10 s in the air is a rise of 20.6 m, as high up as down. Is the true rate right?',
    );
    expect(wordMarkFault({ kind: 'began', mark: 0 }, marks)).toContain('first frame');
    expect(wordMarkFault({ kind: 'row', mark: 0 }, marks)).toContain('0 to 1');
    expect(wordMarkFault({ kind: 'quarters', mark: 1 }, marks)).toContain('1 to 160');
  });
  it('says what is left at the corners, and what one camera cannot see', () => {
    const sight = { leftPx: 14.2, view: { how: 'given' } } as ClipSight;
    expect(wordSightFaults(sight)[0]).toBe(
      'Marks are 14 pixels from where a camera would see them. Are the sizes and the field of view right?',
    );
    expect(wordSightFaults({ ...sight, leftPx: 2 })).toEqual([]);
    expect(wordSightFaults({ ...sight, leftPx: Number.NaN })).toEqual([]);
    expect(wordClipCaveats({ how: 'solved', lines: 0.008 })).toHaveLength(2);
    expect(wordClipCaveats({ how: 'parallel' })).toHaveLength(4);
  });
});
