// Which instant a frame shows, what a flight has of the same, and how far the one is from the other.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { BENT } from '../../sim/clip/clip-flown.ts';
import { readFlownTurns } from '../../sim/clip/flown-turns.ts';
import {
  type ClipMark,
  calcClipApart,
  calcClipPlace,
  calcClipTimes,
  calcFlownTimes,
  calcFrames,
  type Flight,
  type Frames,
  flySkill,
  frameTimes,
  instantOf,
} from '../../sim/index.ts';
import { preset } from '../skill/load.ts';
import { takeFrames } from './filmed.ts';

const HZ = 1000;
const QUARTER = Math.PI / 2;
const level = { gravity: 9.81, drop: { value: 0, plusMinus: 0 } };

interface Own {
  readonly flight: Flight;
  readonly frames: Frames;
}
function own(id: string): Own {
  const flight = flySkill(preset(id));
  return { flight, frames: calcFrames(flight, frameTimes(flight.duration, 240)) };
}

/** The flight filmed at 1000 a second from 0.1 s before it, its turns marked where it has them. */
function filmed({ flight, frames }: Own, quarters: readonly number[]) {
  const clip = takeFrames(HZ, flight.duration + 0.3, 0, 0);
  const turns = readFlownTurns(frames);
  const after = (t: number): number => Math.ceil((t + 0.1) * HZ - 1e-9);
  const marks: ClipMark[] = [
    { kind: 'takeoff', frame: after(0) },
    { kind: 'landing', frame: after(flight.duration) },
    ...quarters.map(
      (q): ClipMark => ({
        kind: 'turn',
        quarters: q,
        frame: Math.round((turns.timeOf(q) + 0.1) * HZ),
      }),
    ),
  ];
  return { clip, times: calcClipTimes(clip, marks, level), turns };
}

describe('an instant of a frame', () => {
  it('is the time since take-off; before it and after touchdown the pose stays', () => {
    const { clip, times } = filmed(own('back-tuck'), []);
    expect(instantOf(clip, times, 20, 1)).toEqual({ t: 0, is: 'before' });
    expect(instantOf(clip, times, 350, 1)).toEqual({ t: expect.closeTo(0.25, 2), is: 'in' });
    expect(instantOf(clip, times, 350, 0.2)).toEqual({ t: 0.2, is: 'after' });
    expect(instantOf(clip, calcClipTimes(clip, [], level), 350, 1)).toBeUndefined();
  });
});

describe('where a flight stands', () => {
  for (const id of ['back-tuck', 'trampoline-double-tuck', 'dive-back-one-and-half-tuck', 'giant-double-straight'])
    it(`${id}: filmed finely and with its own fall, it leaves as fast as it does; feet are lowest at take-off`, () => {
      const skill = preset(id);
      const flight = flySkill(skill);
      const { drop, p_WFeet_W, floorY, way } = calcClipPlace({ skill, flight });
      const clip = takeFrames(1000, flight.duration + 0.3, 0, 0);
      const at = (t: number): number => Math.ceil((t + 0.1) * 1000 - 1e-9);
      const marks: ClipMark[] = [
        { kind: 'takeoff', frame: at(0) },
        { kind: 'landing', frame: at(flight.duration) },
      ];
      const { up } = calcClipTimes(clip, marks, { gravity: flight.gravity, drop });
      expect(Math.abs((up?.value ?? Number.NaN) - flight.v_WScm_W0[1])).toBeLessThan(0.02);
      expect(p_WFeet_W[1]).toBeLessThan(flight.p_WScm_W0[1] + 1.3);
      expect([floorY, way]).toEqual([flight.surfaceY, flight.v_WScm_W0[0] <= -0.2 ? -1 : 1]);
      if (id === 'back-tuck') expect(Math.abs(p_WFeet_W[1])).toBeLessThan(0.02);
    });
});

describe('A and the clip of A', () => {
  for (const id of ['back-tuck', 'front-tuck'])
    it(`${id}: the same times, rates and turns`, () => {
      const one = own(id);
      const { times, turns } = filmed(one, [1, 2, 3]);
      const flown = calcFlownTimes(one.flight, one.frames, times);
      expect(times.airTime?.value).toBeCloseTo(flown.airTime, 2);
      expect(times.turns.map(({ from, to }) => [from, to])).toEqual([
        [0, 1],
        [1, 2],
        [2, 3],
      ]);
      flown.turns.forEach((rate, k) => {
        expect(Math.abs(times.turns[k].rate.value - rate)).toBeLessThan(times.turns[k].rate.plusMinus);
      });
      expect(flown.whole).toBeCloseTo((3 * QUARTER) / turns.timeOf(3), 9);
      for (const q of [1, 2, 3]) {
        const at = times.marks.find(({ mark }) => mark.quarters === q)?.at.value ?? Number.NaN;
        const apart = calcClipApart(times, one.flight, one.frames, at);
        expect(Math.abs(apart.somersault?.value ?? Number.NaN)).toBeLessThan((2 * Math.PI) / 180);
      }
      const middle = calcClipApart(times, one.flight, one.frames, (turns.timeOf(1) + turns.timeOf(2)) / 2);
      expect(middle.somersault?.plusMinus).toBeGreaterThanOrEqual(BENT.quarter * 0.99);
      // before the first mark and after the last the turn was not seen
      expect(calcClipApart(times, one.flight, one.frames, turns.timeOf(1) / 2).somersault).toBeUndefined();
      expect(calcClipApart(times, one.flight, one.frames, turns.timeOf(3) + 0.01).somersault).toBeUndefined();
    });

  it('a clip that is in the air longer is higher, by the difference of the speeds up', () => {
    const one = own('back-tuck');
    const { clip, times } = filmed(one, []);
    const later = times.marks.map(({ mark }) =>
      mark.kind === 'landing' ? { ...mark, frame: mark.frame + 100 } : mark,
    );
    const longer = calcClipTimes(clip, later, level);
    const apart = calcClipApart(longer, one.flight, one.frames, 0.4);
    const faster = one.flight.v_WScm_W0[1] - (longer.up?.value ?? 0);
    expect(apart.height?.value).toBeCloseTo(0.4 * faster, 12);
    expect(faster).toBeLessThan(0);
  });
});

it('between marks of a quarter, or two, a straight line is as far off as is said in nineteen of twenty', () => {
  const names = readdirSync(path.join(import.meta.dirname, '../../presets/skills')).filter((_, k) => k % 4 === 2);
  const off = { quarter: [0, 0], half: [0, 0] };
  for (const name of names) {
    let one: Own;
    try {
      one = own(name.replace('.json', ''));
    } catch {
      // chains are flown otherwise
      continue;
    }
    const turns = readFlownTurns(one.frames);
    for (let q = 1; q < 20; q++)
      for (const [span, kind] of [
        [1, 'quarter'],
        [2, 'half'],
      ] as const) {
        const [a, b] = [turns.timeOf(q), turns.timeOf(q + span)];
        if (Number.isNaN(b)) continue;
        for (const share of [0.25, 0.5, 0.75]) {
          const straight = (q + share * span) * QUARTER;
          const bent = Math.abs(turns.at(a + share * (b - a)) - straight);
          off[kind][0] += bent > 4 * share * (1 - share) * BENT[kind] ? 1 : 0;
          off[kind][1]++;
        }
      }
  }
  for (const [n, of] of Object.values(off)) {
    expect(of).toBeGreaterThan(60);
    expect(n / of).toBeLessThan(0.06);
  }
});
