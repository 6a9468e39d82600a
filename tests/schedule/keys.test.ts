/** Laws of keys and blocks: what is held, what is smooth, what a key may alter, and what is refused. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import { ScheduleOrderError, ScheduleValueError } from '../../sim/schedule/errors.ts';
import type { AngleKey, KeyKind } from '../../sim/schedule/schedule.ts';
import { armsPose, DEG, shoulderBody } from './shoulder-body.ts';
import { angleAt, at, block, compile, key, makeSpec, sampleAt } from './specs.ts';

const ELBOW = 7; // hinge of elbowFlexionR

/** Random tracks of one elbow: at least two keys, at least 20 ms apart. */
const elbowKeys = fc
  .array(
    fc.record({
      gap: fc.double({ min: 0.02, max: 0.5, noNaN: true }),
      deg: fc.oneof(fc.double({ min: -150, max: 150, noNaN: true }), fc.integer({ min: -1, max: 1 })),
      kind: fc.constantFrom<KeyKind>('stop', 'pass', 'pass'),
    }),
    { minLength: 2, maxLength: 9 },
  )
  .map((list) => {
    let t = -0.3;
    return list.map((k): AngleKey => {
      t += k.gap;
      return key('elbowFlexionR', t, k.deg, k.kind);
    });
  });
const RUNS = { numRuns: 1000, seed: 20261 };

describe('keys', () => {
  it('the angle is at each key when its time comes, and constant before the first and after the last', () => {
    const keys = [key('elbowFlexionR', 0.1, 20), key('elbowFlexionR', 0.3, 80, 'pass'), key('elbowFlexionR', 0.7, 110)];
    const s = compile({ keys });
    for (const k of keys) expect(sampleAt(s, k.at.s).q[ELBOW]).toBeCloseTo(k.value, 14);
    expect(sampleAt(s, -5)).toMatchObject(sampleAt(s, 0.0999));
    expect(sampleAt(s, -5).q[ELBOW]).toBe(20 * DEG);
    expect(sampleAt(s, 0.71).q[ELBOW]).toBe(110 * DEG);
    expect(sampleAt(s, 9).qd[ELBOW]).toBe(0);
    expect(s.breaks).toEqual([0.1, 0.3, 0.7]);
    expect(s.moving).toEqual([[0.1, 0.7]]);
  });

  it('a span between two stop keys is 10 s^3 - 15 s^4 + 6 s^5', () => {
    const s = compile({ keys: [key('elbowFlexionR', 0.2, 10), key('elbowFlexionR', 0.6, 110)] });
    for (const u of [0, 0.1, 0.25, 0.5, 0.8, 0.99]) {
      const want = 10 + 100 * (10 * u ** 3 - 15 * u ** 4 + 6 * u ** 5);
      expect(sampleAt(s, 0.2 + 0.4 * u).q[ELBOW] / DEG).toBeCloseTo(want, 10);
    }
  });

  it("q, q' and q'' are continuous at every key and derivatives of each other everywhere (1,000 random tracks)", () => {
    fc.assert(
      fc.property(elbowKeys, (keys) => {
        const s = compile({ keys });
        const read = (t: number): number[] => {
          const { q, qd, qdd } = sampleAt(s, t);
          return [q[ELBOW], qd[ELBOW], qdd[ELBOW]];
        };
        let worst = 0;
        for (let i = 0; i < keys.length; i++) {
          const t = keys[i].at.s;
          const near = keys.filter((_, j) => Math.abs(j - i) <= 1);
          const h = Math.min(...near.slice(1).map((k, j) => k.at.s - near[j].at.s));
          const rise = Math.max(...near.slice(1).map((k, j) => Math.abs(k.value - near[j].value)), 1e-6);
          const size = [rise, rise / h, rise / h ** 2];
          const e = 1e-10;
          for (let k = 0; k < 3; k++) worst = Math.max(worst, Math.abs(read(t + e)[k] - read(t - e)[k]) / size[k]);
          // second derivative by one-sided differences of q', second order, from both sides
          const d = 1e-5 * h;
          const v = [-2, -1, 0, 1, 2].map((n) => read(t + n * d)[1]);
          const left = (v[0] - 4 * v[1] + 3 * v[2]) / (2 * d);
          const right = (-3 * v[2] + 4 * v[3] - v[4]) / (2 * d);
          // it is zero at every key
          worst = Math.max(worst, Math.abs(left - right) / size[2], Math.abs(left) / size[2]);
        }
        for (let i = 0; i + 1 < keys.length; i++) {
          const [a, b] = [keys[i], keys[i + 1]];
          const h = b.at.s - a.at.s;
          const rise = Math.max(Math.abs(b.value - a.value), 1e-6);
          const e = 0.01 * h;
          for (const u of [0.1, 0.37, 0.5, 0.81]) {
            const t = a.at.s + u * h;
            for (const k of [0, 1]) {
              // sixth-order stencil: exact for quintics but for rounding
              const f = (n: number): number => read(t + n * e)[k];
              const slope = (45 * (f(1) - f(-1)) - 9 * (f(2) - f(-2)) + f(3) - f(-3)) / (60 * e);
              worst = Math.max(worst, (Math.abs(slope - read(t)[k + 1]) * h ** (k + 1)) / rise);
            }
          }
        }
        expect(worst).toBeLessThan(1e-6);
      }),
      RUNS,
    );
  });

  it('no span leaves the range of the two keys at its ends, and none turns back on its way (1,000 random tracks)', () => {
    fc.assert(
      fc.property(elbowKeys, (keys) => {
        const s = compile({ keys });
        let beyond = 0;
        let back = 0;
        for (let i = 0; i + 1 < keys.length; i++) {
          const [a, b] = [keys[i], keys[i + 1]];
          const way = Math.sign(b.value - a.value);
          for (let n = 0; n <= 40; n++) {
            const { q, qd } = sampleAt(s, a.at.s + ((b.at.s - a.at.s) * n) / 40);
            beyond = Math.max(beyond, Math.min(a.value, b.value) - q[ELBOW], q[ELBOW] - Math.max(a.value, b.value));
            if (n < 40) back = Math.max(back, -qd[ELBOW] * way);
          }
        }
        expect(beyond).toBeLessThan(1e-12);
        expect(back).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  it('a changed, added or removed key alters only the two spans on each side of it (1,000 random tracks)', () => {
    fc.assert(
      fc.property(elbowKeys, fc.nat(), fc.integer({ min: -150, max: 150 }), fc.boolean(), (keys, pick, deg, remove) => {
        const i = pick % keys.length;
        if (remove && keys.length < 3) return;
        const changed = remove
          ? keys.filter((_, j) => j !== i)
          : keys.map((k, j) => (j === i ? key('elbowFlexionR', k.at.s, deg, 'pass') : k));
        const [a, b] = [compile({ keys }), compile({ keys: changed })];
        const from = keys[i - 2]?.at.s ?? Number.NEGATIVE_INFINITY;
        const to = keys[i + 2]?.at.s ?? Number.POSITIVE_INFINITY;
        let changes = 0;
        for (let n = -5; n < 100; n++) {
          const t = keys[0].at.s + ((keys[keys.length - 1].at.s - keys[0].at.s) * n) / 94;
          if (t >= from && t <= to) continue;
          changes = Math.max(changes, Math.abs(sampleAt(a, t).q[ELBOW] - sampleAt(b, t).q[ELBOW]));
        }
        expect(changes).toBeLessThan(1e-12);
      }),
      RUNS,
    );
  });

  it('a pass key keeps moving between two others and rests at a local extreme', () => {
    const s = compile({
      keys: [
        key('elbowFlexionR', 0, 0),
        key('elbowFlexionR', 0.2, 40, 'pass'),
        key('elbowFlexionR', 0.4, 80, 'pass'),
        key('elbowFlexionR', 0.6, 20),
      ],
    });
    expect(sampleAt(s, 0.2).qd[ELBOW] / DEG).toBeCloseTo(200, 9); // equal secants: the secant
    expect(sampleAt(s, 0.4).qd[ELBOW]).toBe(0);
  });

  it('keys are anchored to take-off, apex and touchdown', () => {
    const keys: AngleKey[] = [
      { angle: 7, at: at(0.1), value: 0.1, kind: 'stop' },
      { angle: 7, at: at(-0.1, 'apex'), value: 0.5, kind: 'stop' },
      { angle: 7, at: at(-0.2, 'touchdown'), value: 1, kind: 'stop' },
    ];
    expect(compile({ keys }).breaks).toEqual([0.1, 0.5, 1]);
    const later = compileSchedule(shoulderBody, makeSpec({ keys }), { apex: 0.8, touchdown: 1.6 });
    expect(later.breaks[1]).toBeCloseTo(0.7, 15);
    expect(later.breaks[2]).toBeCloseTo(1.4, 15);
  });

  it('keys that change order are refused, and both are named with their times', () => {
    const late: AngleKey[] = [
      { ...key('elbowFlexionR', 0.5, 90) },
      { angle: 7, at: at(-0.8, 'touchdown'), value: 20 * DEG, kind: 'stop' },
    ];
    let error: unknown;
    try {
      compile({ keys: late });
    } catch (e) {
      error = e;
    }
    expect(error).toBeInstanceOf(ScheduleOrderError);
    const e = error as ScheduleOrderError;
    expect(e.message).toMatch(/elbowFlexionR 90 deg.*0\.5000 s.*elbowFlexionR 20 deg.*0\.4000 s/);
    expect(e.first.time).toBe(0.5);
    expect(e.second.time).toBeCloseTo(0.4, 12);
    expect(() => compile({ keys: [key('elbowFlexionL', 0.5, 90), key('elbowFlexionR', 0.4, 90)] })).not.toThrow();
  });

  it('two keys of one angle at one time need equal values', () => {
    const twice = (deg: number): AngleKey[] => [
      key('elbowFlexionR', 0, 0),
      key('elbowFlexionR', 0.5, 90),
      key('elbowFlexionR', 0.5 + 5e-10, deg),
    ];
    expect(() => compile({ keys: twice(91) })).toThrow(/90 deg.*91 deg.*equal values/);
    expect(compile({ keys: twice(90) }).breaks).toEqual([0, 0.5]);
  });

  it('what is not a number is refused by name', () => {
    const refuse = (part: Parameters<typeof compile>[0], said: RegExp): void => {
      expect(() => compile(part)).toThrow(ScheduleValueError);
      expect(() => compile(part)).toThrow(said);
    };
    refuse({ keys: [key('elbowFlexionR', Number.NaN, 0)] }, /time of key 1 \(elbowFlexionR/);
    refuse({ keys: [key('elbowFlexionR', 0, Number.POSITIVE_INFINITY)] }, /value of key 1 \(elbowFlexionR/);
    refuse({ keys: [{ ...key('elbowFlexionR', 0, 0), angle: 8 }] }, /angle of key 1/);
    refuse({ keys: [key('elbowFlexionR', 0, 0, 'stop', 30)] }, /only for the plane/);
    refuse({ blocks: [block('x', 0, 1, [0, 1])] }, /block 1 \(x\).*8 angles/);
    refuse({ blocks: [block('x', 0, 1, armsPose(0, Number.NaN))] }, /shoulderElevationL in block 1 \(x\)/);
    refuse({ base: [1] }, /base pose/);
  });
});

describe('blocks', () => {
  const hang = armsPose(0, 0, 0, 10);
  const bent = armsPose(0, 0, 0, 120);

  it('hold their pose exactly, move by minimum jerk between, and rest before the first and after the last', () => {
    const s = compile({
      base: armsPose(5, 5, 5, 5),
      blocks: [block('hang', 0.1, 0.3, hang), block('bent', 0.5, 0.8, bent)],
    });
    for (const t of [-9, 0, 0.1, 0.2, 0.2999]) expect(sampleAt(s, t).q[ELBOW]).toBe(10 * DEG);
    for (const t of [0.5, 0.61, 0.8, 5]) expect(sampleAt(s, t).q[ELBOW]).toBe(120 * DEG);
    for (const t of [0.2, 0.6]) expect([...sampleAt(s, t).qd, ...sampleAt(s, t).qdd].every((v) => v === 0)).toBe(true);
    expect(sampleAt(s, 0.4).q[ELBOW] / DEG).toBeCloseTo(65, 10);
    expect(s.breaks).toEqual([0.3, 0.5]);
    expect(s.moving).toEqual([[0.3, 0.5]]);
  });

  it('with neither blocks nor keys the body rests in the base pose', () => {
    const s = compile({ base: armsPose(10, 20, 30, 40) });
    expect(s.breaks).toEqual([]);
    expect(s.moving).toEqual([]);
    const { q } = sampleAt(s, 0.3);
    [10, 20, 20, 40].forEach((deg, h) => {
      expect(q[4 + h] / DEG).toBeCloseTo(deg, 12); // spin = turn - plane
    });
    expect(angleAt(s, 'shoulderTurnL', 1)[0]).toBeCloseTo(30 * DEG, 14);
  });

  it('a key inside a hold makes its angle leave and return; one at an edge replaces the value there', () => {
    const blocks = [block('hang', 0, 0.4, hang), block('bent', 0.6, 1, bent)];
    const inside = compile({ blocks, keys: [key('elbowFlexionR', 0.2, 50)] });
    expect(sampleAt(inside, 0.2).q[ELBOW]).toBeCloseTo(50 * DEG, 14);
    expect(sampleAt(inside, 0.1).q[ELBOW] / DEG).toBeCloseTo(30, 10);
    expect(sampleAt(inside, 0.4).q[ELBOW]).toBe(10 * DEG);
    expect(sampleAt(inside, 0.2).q[3]).toBe(10 * DEG);
    const edge = compile({ blocks, keys: [key('elbowFlexionR', 0.4 + 4e-10, 30)] });
    expect(sampleAt(edge, 0.4).q[ELBOW] / DEG).toBeCloseTo(30, 10);
    expect(sampleAt(edge, 0.5).q[ELBOW] / DEG).toBeCloseTo(75, 10);
    expect(edge.breaks).toEqual([0, 0.4, 0.6]);
  });

  it('blocks that change order, overlap or touch in different poses are refused, and both are named', () => {
    const refuse = (a: [number, number], b: [number, number], said: RegExp): void => {
      const make = () => compile({ blocks: [block('hang', ...a, hang), block('bent', ...b, bent)] });
      expect(make).toThrow(ScheduleOrderError);
      expect(make).toThrow(said);
    };
    refuse(
      [0, 0.5],
      [0.4, 0.9],
      /end of block 1 \(hang\) \(at 0\.5000 s\).*start of block 2 \(bent\) \(at 0\.4000 s\)/,
    );
    refuse([0, 0.5], [0.5, 0.9], /need time/);
    refuse([0.3, 0.1], [0.5, 0.9], /start of block 1 \(hang\).*end of block 1 \(hang\)/);
    expect(compile({ blocks: [block('a', 0, 0.5, hang), block('b', 0.5, 1, hang)] }).breaks).toEqual([]);
  });
});
