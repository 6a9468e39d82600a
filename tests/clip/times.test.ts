// What marks give, against flights that are known: closed forms, and draws of frames at any phase.
import { describe, expect, it } from 'vitest';
import { type ClipFrames, type ClipMark, calcClipTimes, FieldError, trueTimes } from '../../sim/index.ts';
import { drawOf, type Event, markOf, normal, takeFrames } from './filmed.ts';

const G = 9.81;
const level = { gravity: G, drop: { value: 0, plusMinus: 0 } };
const even = (hz: number, n: number, lines = 0): ClipFrames => ({
  t: Float64Array.from({ length: n }, (_, k) => k / hz),
  hz,
  width: 1920,
  height: 1080,
  lines,
});

describe('times of a clip', () => {
  it('in common practice: 1.125 s in the air on the level rises 1.55 m; an eighth of a second brakes 6.8 m/s at 5.5 times g', () => {
    // 135 frames of 120 a second, and 15 to rest (common practice, no source)
    const got = calcClipTimes(
      even(120, 200),
      [
        { kind: 'takeoff', frame: 10 },
        { kind: 'landing', frame: 145 },
        { kind: 'rest', frame: 160 },
      ],
      level,
    );
    expect(got.airTime?.value).toBeCloseTo(1.125, 12);
    expect(got.rise?.value).toBeCloseTo((G * 1.125 ** 2) / 8, 12);
    expect(got.rise?.value).toBeCloseTo(1.55, 2);
    // two ends of half a frame each
    expect(got.airTime?.plusMinus).toBeCloseTo((2 / 240) * Math.sqrt(2 / 3), 12);
    expect(got.up?.value).toBeCloseTo((G * 1.125) / 2, 12);
    const lower = calcClipTimes(
      even(120, 200),
      [
        { kind: 'takeoff', frame: 10 },
        { kind: 'landing', frame: 145 },
        { kind: 'rest', frame: 160 },
      ],
      { gravity: G, drop: { value: 1.44, plusMinus: 0.03 } },
    );
    expect(lower.braking?.time.value).toBeCloseTo(0.125, 12);
    expect(lower.braking?.from.value).toBeCloseTo(6.8, 2);
    expect(lower.braking?.mean.value).toBeCloseTo(54.4, 1);
    expect(lower.braking?.weights.value).toBeCloseTo(6.54, 2);
    // down less up at the ends of a parabola is g T
    expect((lower.braking?.from.value ?? 0) + (lower.up?.value ?? 0)).toBeCloseTo(G * 1.125, 12);
  });

  it('a turn of 1.7 s is 0.588 turns a second; quarters that were not marked are left out of nothing', () => {
    const got = calcClipTimes(
      even(120, 300),
      [
        { kind: 'turn', quarters: 4, frame: 214 },
        { kind: 'takeoff', frame: 11 },
        { kind: 'turn', quarters: 1, frame: 60 },
      ],
      level,
    );
    expect(got.turns.map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [1, 4],
    ]);
    // take-off is half a frame before the frame that shows it
    expect(got.whole?.time.value).toBeCloseTo(203.5 / 120, 12);
    expect((got.whole?.rate.value ?? 0) / (2 * Math.PI)).toBeCloseTo(120 / 203.5, 9);
    expect(got.airTime).toBeUndefined();
    expect(got.zero).toBeCloseTo(10.5 / 120, 12);
    expect(got.marks.map(({ at }) => at.value)).toEqual([0, expect.closeTo(49.5 / 120), expect.closeTo(203.5 / 120)]);
  });

  it('read line by line, what is low in the picture is later than its frame says; nothing is corrected where that is not known', () => {
    const marks = (row?: number): ClipMark[] => [
      { kind: 'takeoff', frame: 20, row },
      { kind: 'highest', frame: 90, row: row && 0.1 },
      { kind: 'landing', frame: 161, row },
    ];
    const plain = calcClipTimes(even(120, 200, 0), marks(), level);
    const known = calcClipTimes(even(120, 200, 0.008), marks(0.9), level);
    expect(known.zero - plain.zero).toBeCloseTo(0.4 * 0.008, 12);
    // take-off and landing are on one line: their difference is not touched
    expect(known.airTime).toEqual({
      value: expect.closeTo(plain.airTime?.value ?? 0),
      plusMinus: expect.closeTo(plain.airTime?.plusMinus ?? 0),
    });
    expect(known.marks[1].at.value - plain.marks[1].at.value).toBeCloseTo(-0.8 * 0.008, 12);
    const blank = calcClipTimes(even(120, 200, Number.NaN), marks(), level);
    expect(blank.zero).toBe(plain.zero);
    expect(blank.airTime?.plusMinus).toBeGreaterThan((plain.airTime?.plusMinus ?? 0) * 1.1);
    expect(blank.airTime?.plusMinus).toBeLessThan((plain.airTime?.plusMinus ?? 0) * 2);
    // the highest point is flat
    expect(plain.marks[1].at.plusMinus).toBeGreaterThanOrEqual(0.03);
    expect(plain.marks[1].at.plusMinus).toBeLessThan(0.032);
  });

  it('a ± that reaches nothing is not known: a turn, or braking, from one frame to the next', () => {
    const got = calcClipTimes(
      even(30, 60),
      [
        { kind: 'takeoff', frame: 3 },
        { kind: 'turn', quarters: 1, frame: 10 },
        { kind: 'turn', quarters: 2, frame: 11 },
        { kind: 'landing', frame: 30 },
        { kind: 'rest', frame: 31 },
      ],
      level,
    );
    expect(got.turns[0].rate.plusMinus).toBeGreaterThan(0);
    expect(got.turns[1].rate.plusMinus / got.turns[1].rate.value).toBeGreaterThan(2);
    expect(got.braking?.mean.plusMinus).toBeGreaterThan(got.braking?.mean.value ?? 0);
  });
});

interface Case {
  readonly hz: number;
  readonly lines: number;
  /** what who marks knows of it */
  readonly said: number;
  readonly rows: boolean;
  readonly uneven: number;
}
const CASES: Readonly<Record<string, Case>> = {
  '120 a second, all at once': { hz: 120, lines: 0, said: 0, rows: false, uneven: 0 },
  '240 a second, line by line, rows known': { hz: 240, lines: 0.004, said: 0.004, rows: true, uneven: 0 },
  '60 a second, line by line, rows not known': { hz: 60, lines: 0.012, said: 0.012, rows: false, uneven: 0 },
  '60 a second, uneven, lines not known': { hz: 60, lines: 0.01, said: Number.NaN, rows: false, uneven: 0.3 },
  '30 a second, uneven': { hz: 30, lines: 0, said: 0, rows: false, uneven: 0.5 },
};
const DRAWS = 2000;

describe('the ± of a clip holds about nineteen of twenty', () => {
  for (const [name, { hz, lines, said, rows, uneven }] of Object.entries(CASES))
    it(name, () => {
      const held = { airTime: 0, up: 0, rise: 0, first: 0, second: 0, whole: 0, down: 0, braking: 0 };
      for (let i = 0; i < DRAWS; i++) {
        const next = drawOf(71, i);
        const up = 3.5 + 2 * next();
        const drop = 0.4 * next() - 0.1;
        const T = (up + Math.sqrt(up ** 2 + 2 * G * drop)) / G;
        const start = 0.2 + 0.1 * next();
        const quarters = [0.27, 0.52, 0.78].map((share) => (share + 0.03 * next()) * T);
        const stop = 0.12 + 0.08 * next();
        const low = (): number => 0.5 + 0.5 * next();
        const events: Event[] = [
          { kind: 'takeoff', t: 0, row: low() },
          ...quarters.map((t, k): Event => ({ kind: 'turn', quarters: k + 1, t, row: next() })),
          { kind: 'landing', t: T, row: low() },
          { kind: 'rest', t: T + stop, row: low() },
        ];
        const phase = next();
        const given = { value: drop + 0.015 * normal(next), plusMinus: 0.03 };
        const gaps = drawOf(72, i);
        const frames = takeFrames(hz, start + T + 0.6, lines, phase, (k) => (k < 60 ? uneven * (gaps() - 0.5) : 0));
        const marks = events.map((event) => markOf(frames, { ...event, t: event.t + start, isRowKnown: rows }, lines));
        const got = calcClipTimes({ ...frames, lines: said }, marks, { gravity: G, drop: given });
        const holds = (m: { value: number; plusMinus: number } | undefined, truth: number): number =>
          m && Math.abs(m.value - truth) <= m.plusMinus * (1 + 1e-9) ? 1 : 0;
        held.airTime += holds(got.airTime, T);
        held.up += holds(got.up, up);
        held.rise += holds(got.rise, up ** 2 / (2 * G));
        held.first += holds(got.turns[0]?.rate, Math.PI / 2 / quarters[0]);
        held.second += holds(got.turns[1]?.rate, Math.PI / 2 / (quarters[1] - quarters[0]));
        held.whole += holds(got.whole?.rate, (1.5 * Math.PI) / quarters[2]);
        held.down += holds(got.braking?.from, G * T - up);
        held.braking += holds(got.braking?.mean, (G * T - up) / stop);
      }
      const shares = Object.fromEntries(Object.entries(held).map(([key, n]) => [key, n / DRAWS]));
      for (const share of Object.values(shares)) {
        expect(share).toBeGreaterThan(0.93);
        expect(share).toBeLessThan(0.995);
      }
    });
});

describe('marks at fault are said, and the rest is computed', () => {
  const frames = even(120, 300);
  const air: ClipMark[] = [
    { kind: 'takeoff', frame: 20 },
    { kind: 'landing', frame: 150 },
  ];
  const faultsOf = (...more: ClipMark[]) => calcClipTimes(frames, [...air, ...more], level).faults;

  it('frames that are none, what had begun, quarters and rows that are none, twins', () => {
    expect(faultsOf({ kind: 'turn', quarters: 1, frame: 300 })).toEqual([{ kind: 'noFrame', mark: 2 }]);
    expect(faultsOf({ kind: 'highest', frame: 80.5 })).toEqual([{ kind: 'noFrame', mark: 2 }]);
    expect(faultsOf({ kind: 'handOff', frame: 0 })).toEqual([{ kind: 'began', mark: 2 }]);
    expect(faultsOf({ kind: 'turn', quarters: 0, frame: 60 })).toEqual([{ kind: 'quarters', mark: 2 }]);
    expect(faultsOf({ kind: 'turn', frame: 60 })).toEqual([{ kind: 'quarters', mark: 2 }]);
    expect(faultsOf({ kind: 'highest', frame: 80, row: 1.2 })).toEqual([{ kind: 'row', mark: 2 }]);
    expect(faultsOf({ kind: 'takeoff', frame: 30 })).toEqual([{ kind: 'twice', mark: 2, first: 0 }]);
    expect(faultsOf({ kind: 'turn', quarters: 1, frame: 60 }, { kind: 'turn', quarters: 1, frame: 61 })).toEqual([
      { kind: 'twice', mark: 3, first: 2 },
    ]);
  });

  it('a landing before take-off leaves no flight; turns outside the air, rest before the landing', () => {
    const got = calcClipTimes(
      frames,
      [
        { kind: 'takeoff', frame: 100 },
        { kind: 'landing', frame: 90 },
        { kind: 'turn', quarters: 1, frame: 130 },
      ],
      level,
    );
    expect(got.faults).toEqual([{ kind: 'order', mark: 1, other: 0, is: 'early' }]);
    expect(got.airTime).toBeUndefined();
    expect(got.turns).toHaveLength(1);
    expect(faultsOf({ kind: 'turn', quarters: 1, frame: 20 })).toEqual([
      { kind: 'order', mark: 2, other: 0, is: 'early' },
    ]);
    expect(faultsOf({ kind: 'highest', frame: 151 })).toEqual([{ kind: 'order', mark: 2, other: 1, is: 'late' }]);
    expect(faultsOf({ kind: 'rest', frame: 150 })).toEqual([{ kind: 'order', mark: 2, other: 1, is: 'early' }]);
  });

  it('one turn out of place does not put the others out', () => {
    const turns = [140, 60, 90, 120].map((frame, k): ClipMark => ({ kind: 'turn', quarters: k + 1, frame }));
    expect(faultsOf(...turns)).toEqual([{ kind: 'order', mark: 2, other: 3, is: 'late' }]);
    const last = [50, 80, 110, 60].map((frame, k): ClipMark => ({ kind: 'turn', quarters: k + 1, frame }));
    expect(faultsOf(...last)).toEqual([{ kind: 'order', mark: 5, other: 4, is: 'early' }]);
  });

  it('so long, or so short, in the air asks whether the rate is right', () => {
    const long = calcClipTimes(even(30, 300), [air[0], { kind: 'landing', frame: 150 }], level);
    expect(long.faults).toEqual([
      { kind: 'rate', airTime: expect.closeTo(130 / 30), rise: expect.closeTo(23.03), is: 'long' },
    ]);
    expect(long.airTime?.value).toBeCloseTo(130 / 30, 12);
    expect(calcClipTimes(frames, [air[0], { kind: 'landing', frame: 25 }], level).faults).toEqual([
      { kind: 'rate', airTime: expect.closeTo(5 / 120), rise: expect.closeTo(0.0021, 4), is: 'short' },
    ]);
  });

  it('frames and givens that are none are refused by field, value and range', () => {
    const of = (part: Partial<ClipFrames>, given: object = {}) => {
      try {
        calcClipTimes({ ...even(120, 5), ...part }, [], { ...level, ...given });
      } catch (error) {
        return error instanceof FieldError ? error.field : String(error);
      }
      return 'taken';
    };
    expect(of({ t: Float64Array.of(0, 1, 1) })).toBe('t[2]');
    expect(of({ hz: 0 })).toBe('hz');
    expect(of({ lines: 0.2 })).toBe('lines');
    expect(of({}, { gravity: -1 })).toBe('gravity');
    expect(of({}, { drop: { value: Number.NaN, plusMinus: 0 } })).toBe('drop');
    expect(of({})).toBe('taken');
  });

  it('without gravity there is no rise', () => {
    const got = calcClipTimes(frames, air, { ...level, gravity: 0 });
    expect(got.up).toBeUndefined();
    expect(got.airTime?.value).toBeCloseTo(130 / 120, 12);
  });
});

describe('true times', () => {
  it('a clip of 120 a second that plays at 30 lasts a quarter; a variable rate keeps its shape', () => {
    expect([...trueTimes([5, 5.04, 5.06], 30, 120)]).toEqual([0, expect.closeTo(0.01), expect.closeTo(0.015)]);
    expect([...trueTimes([0, 0.5], 60, 60)]).toEqual([0, 0.5]);
  });
  it('rates and stamps that are none are refused', () => {
    expect(() => trueTimes([0, 1], 30, 2001)).toThrow('trueHz: 2001 is not possible; allowed: 1 to 2000');
    expect(() => trueTimes([0, 1], Number.NaN, 30)).toThrow('fileHz');
    expect(() => trueTimes([0, 1, 0.5], 30, 30)).toThrow('stamps[2]');
    expect([
      ...trueTimes(
        [1, 2000].map((s) => s),
        1,
        2000,
      ),
    ]).toEqual([0, expect.closeTo(1999 / 2000)]);
  });
});
