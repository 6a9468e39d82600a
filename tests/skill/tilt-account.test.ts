// The account of the tilt as laws: nothing uneven gives nothing, all taken out leaves nothing, the sum is the whole.
import { describe, expect, it } from 'vitest';
import { calcFrames, flightOf, flySkill, frameTimes, type SkillFile } from '../../sim/index.ts';
import { calcTiltAccount, stepTiltAccount, type TiltAccount, type TiltValues } from '../../sim/skill/tilt-account.ts';
import { someOf } from '../corpus.ts';
import { flightIn, mirrorShapes } from '../files/parts.ts';
import { fileOf, preset, presetIds, skillOf } from './load.ts';

const DEG = Math.PI / 180;
const REV = 2 * Math.PI;
/** What rounding leaves of zero, rad: measured 8e-14. */
const NOTHING = 1e-9;
/** The same movement from another file, rad: measured 0. */
const FLOWN = 1e-12;
/** Rounding of the shares' sums, rad: measured 4e-16. */
const SUMMED = 1e-12;
/** A flight before a movement that differs later, rad: measured 0. */
const LATER = 1e-9;
/** Account against frames, rad: measured 0. */
const SAME = 1e-9;
/** Processor time of one account, its flight known, ms: 6 to 21 over the presets, 25 with all four uneven (16 flights). */

const sizes = (v: TiltValues): number[] => [v.greatest, v.at, v.twist].map(Math.abs);
const gaveBy = (a: TiltAccount, source: string): TiltValues => {
  const part = a.parts.find((p) => p.source === source);
  if (!part) throw new RangeError(source);
  return part.gave;
};

/** A stated duration, s, and momentum about the lateral axis, kg m^2/s. */
function flyFor(file: SkillFile, durationS: number, h: number): void {
  flightIn(file).end = { durationS, surface: { kind: 'floor', heightM: 0 } };
  flightIn(file).takeoff.momentum = { vectorKgM2PerS: [0, 0, h] };
}
function withAndWithoutKeys(file: SkillFile) {
  const plain = structuredClone(file);
  flightIn(plain).schedule.keys = [];
  return [file, plain].map((one) => calcTiltAccount(skillOf(one), { at: 0.5 }));
}

describe('tilt account', () => {
  it('of a skill whose sides move alike is zero, every part of it', () => {
    for (const id of ['back-tuck', 'back-pike', 'back-straight', 'double-back-tuck', 'double-back-straight']) {
      const a = calcTiltAccount(preset(id));
      expect(a.parts.map((p) => p.uneven)).not.toContain(true);
      for (const p of a.parts) expect(sizes(p.gave)).toEqual([0, 0, 0]);
      expect(Math.max(...sizes(a.total))).toBeLessThan(NOTHING);
    }
  });

  it('with every asymmetry taken out no preset tilts or twists', () => {
    for (const id of someOf(presetIds, 3)) {
      const a = calcTiltAccount(preset(id));
      expect(Math.max(...sizes(a.rest)), id).toBeLessThan(NOTHING);
    }
  });

  it('without a part is the skill whose file never had it', () => {
    const file = fileOf('former/back-straight-full');
    const bend = (deg: number, s: number) => ({ angle: 'lumbarSideBend', at: { anchor: 'takeoff', s }, deg }) as const;
    flightIn(file).schedule.keys = [bend(0, 0.1), bend(8, 0.3)];
    // a stated duration, so that both last as long
    flyFor(file, 1, 40);
    const [a, b] = withAndWithoutKeys(file);
    const chest = a.parts.find((p) => p.source === 'chest');
    expect(Math.abs((chest?.without.at ?? Number.NaN) - b.total.at)).toBeLessThan(FLOWN);
    expect(Math.abs((chest?.without.twist ?? Number.NaN) - b.total.twist)).toBeLessThan(FLOWN);
    expect(Math.abs(a.total.twist - b.total.twist)).toBeGreaterThan(0.01);
  });

  it('a skill from a bar keeps in its reruns what the swing hands over', () => {
    const file = fileOf('giant-double-straight');
    const even = structuredClone(file);
    const arms = (f: SkillFile): Record<string, number> => {
      const block = flightOf(f).schedule.blocks?.[1];
      if (!block) throw new RangeError('no second block');
      block.adjustDeg ??= {};
      return block.adjustDeg;
    };
    const bend = (deg: number, s: number) => ({ angle: 'lumbarSideBend', at: { anchor: 'takeoff', s }, deg }) as const;
    for (const f of [file, even]) {
      // what is left turns and twists, so that it tells by which motion it was flown
      flightOf(f).schedule.keys = [bend(0, 0.05), bend(8, 0.3)];
      // a stated duration, so that both last as long
      flightOf(f).end = { durationS: 1, surface: { kind: 'mat', heightM: 0.3 } };
    }
    Object.assign(arms(file), { shoulderElevationL: 30, shoulderElevationR: 60 });
    Object.assign(arms(even), { shoulderElevationL: 45, shoulderElevationR: 45 });
    const a = calcTiltAccount(skillOf(file));
    const without = a.parts.find((p) => p.source === 'arms')?.without;
    const b = calcTiltAccount(skillOf(even));
    expect(Math.abs((without?.twist ?? Number.NaN) - b.total.twist)).toBeLessThan(FLOWN);
    expect(Math.abs(a.total.twist - b.total.twist)).toBeGreaterThan(0.01);
    // an arm that a late hand leaves uneven belongs to the arms, and without all of it nothing tilts
    const late = calcTiltAccount(preset('giant-late-hand-full'));
    expect(Math.max(...sizes(late.rest))).toBeLessThan(NOTHING);
  });

  it('states the tilt and twist that the frames have', () => {
    const skill = preset('former/back-straight-full');
    const flight = flySkill(skill);
    const frames = calcFrames(flight, frameTimes(flight.duration, 240));
    const i = 60;
    const a = calcTiltAccount(skill, { at: frames.t[i], flight });
    const last = frames.n - 1;
    expect(Math.abs(a.total.at - frames.tilt[i])).toBeLessThan(SAME);
    expect(Math.abs(a.total.twist - (frames.twist[last] - frames.twist[0]))).toBeLessThan(SAME);
    const greatest = frames.tilt.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
    expect(Math.abs(a.total.greatest - greatest)).toBeLessThan(0.05 * DEG);
  });

  it('an arm throw alone is charged to the arms; backward and forward, left and right', () => {
    for (const id of ['former/back-straight-full', 'former/back-straight-double', 'former/trampoline-barani']) {
      const a = calcTiltAccount(preset(id));
      expect(a.parts.filter((p) => p.uneven).map((p) => p.source)).toEqual(['arms']);
      expect(gaveBy(a, 'arms').twist).toBeCloseTo(a.total.twist, 6);
      expect(Math.abs(a.total.twist)).toBeGreaterThan(0.4 * REV);
    }
  });

  it('tilt and turn of h at take-off alone are charged to the take-off, and are the contact', () => {
    const file = fileOf('back-straight');
    flightIn(file).takeoff.attitudeDeg = { tilt: 4 };
    const a = calcTiltAccount(skillOf(file));
    expect(a.parts.filter((p) => p.uneven).map((p) => p.source)).toEqual(['takeoff']);
    expect(Math.abs(gaveBy(a, 'takeoff').twist - a.total.twist)).toBeLessThan(NOTHING);
    expect(a.contact).toEqual(gaveBy(a, 'takeoff'));
    expect(Math.abs(a.total.twist)).toBeGreaterThan(0.1 * REV);
    expect(a.counterTwist).toBe(0);
  });

  const fourCauses = (): SkillFile => {
    const file = fileOf('former/back-straight-full');
    flightIn(file).takeoff.attitudeDeg = { tilt: 2 };
    flightIn(file).schedule.keys = [
      { angle: 'lumbarSideBend', at: { anchor: 'takeoff', s: 0.1 }, deg: 0 },
      { angle: 'lumbarSideBend', at: { anchor: 'takeoff', s: 0.3 }, deg: 8 },
      { angle: 'hipAbductionR', at: { anchor: 'takeoff', s: 0.1 }, deg: 0 },
      { angle: 'hipAbductionR', at: { anchor: 'takeoff', s: 0.3 }, deg: 12 },
    ];
    return file;
  };
  const MEASURES = ['greatest', 'at', 'twist'] as const;

  it('several at once: each is listed, and what all gave with the baseline is the whole', () => {
    const a = calcTiltAccount(skillOf(fourCauses()));
    expect(a.parts.filter((p) => p.uneven).map((p) => p.source)).toEqual(['takeoff', 'arms', 'chest', 'hips']);
    for (const p of a.parts) expect(Math.abs(p.gave.greatest)).toBeGreaterThan(0.1 * DEG);
    expect(Math.max(...sizes(a.rest))).toBeLessThan(NOTHING);
    for (const id of [...someOf(presetIds, 4, 1), fourCauses()]) {
      const one = typeof id === 'string' ? calcTiltAccount(preset(id)) : a;
      for (const k of MEASURES) {
        const sum = one.parts.reduce((s, p) => s + p.gave[k], one.rest[k]);
        expect(Math.abs(sum - one.total[k])).toBeLessThan(SUMMED);
      }
    }
  });

  it('a share lies between the smallest and the largest of all orders; leaving one out last is one of these', () => {
    const a = calcTiltAccount(skillOf(fourCauses()));
    for (const p of a.parts)
      for (const k of MEASURES) {
        expect(p.least[k]).toBeLessThanOrEqual(p.gave[k]);
        expect(p.gave[k]).toBeLessThanOrEqual(p.most[k]);
        const last = a.total[k] - p.without[k];
        expect(last).toBeGreaterThanOrEqual(p.least[k]);
        expect(last).toBeLessThanOrEqual(p.most[k]);
      }
    // they act through each other: some order matters by more than a tenth of a twist
    expect(Math.max(...a.parts.map((p) => p.most.twist - p.least.twist))).toBeGreaterThan(0.1 * REV);
  });

  it('two causes: each gets the mean of what it does alone and what is missing without it', () => {
    const file = fileOf('former/back-straight-full');
    flightIn(file).takeoff.attitudeDeg = { tilt: 3 };
    const a = calcTiltAccount(skillOf(file));
    const [takeoff, arms] = a.parts;
    // without the arms the take-off is left alone, and the other way round
    for (const k of MEASURES) {
      const alone = arms.without[k] - a.rest[k];
      const last = a.total[k] - takeoff.without[k];
      expect(Math.abs(takeoff.gave[k] - (alone + last) / 2)).toBeLessThan(SUMMED);
      expect([takeoff.least[k], takeoff.most[k]]).toEqual([Math.min(alone, last), Math.max(alone, last)]);
    }
    const shares = a.shares.greatest ?? [];
    expect(shares.reduce((s, v) => s + v, 0)).toBeCloseTo(1, 9);
    expect(shares.every((v) => v >= 0)).toBe(true);
  });

  it('what moves after an instant has no part in the tilt there, in any order; in the twist it has', () => {
    const file = fileOf('former/back-straight-full');
    flightIn(file).takeoff.attitudeDeg = { tilt: 2 };
    flightIn(file).schedule.keys = [
      { angle: 'hipAbductionR', at: { anchor: 'takeoff', s: 0.6 }, deg: 0 },
      { angle: 'hipAbductionR', at: { anchor: 'takeoff', s: 0.8 }, deg: 12 },
    ];
    const a = calcTiltAccount(skillOf(file), { at: 0.5 });
    const hips = a.parts.find((p) => p.source === 'hips');
    expect(hips?.uneven).toBe(true);
    expect(Math.max(...[hips?.gave.at, hips?.least.at, hips?.most.at].map((v) => Math.abs(v ?? 1)))).toBeLessThan(
      LATER,
    );
    expect(Math.abs(hips?.gave.twist ?? 0)).toBeGreaterThan(0.005 * REV);
  });

  it('no per cent of causes that work against each other, nor of a whole under 2 deg', () => {
    const against = fileOf('former/back-straight-full');
    flightIn(against).takeoff.attitudeDeg = { tilt: -3 };
    const a = calcTiltAccount(skillOf(against));
    expect(a.parts[0].gave.twist * a.parts[1].gave.twist).toBeLessThan(0);
    expect(a.shares.twist).toBeUndefined();
    expect(a.shares.greatest).toBeDefined();
    const lean = (tilt: number) => {
      const file = fileOf('back-straight');
      // so short that the tilt is still that of the take-off
      flyFor(file, 0.02, 40);
      flightIn(file).schedule.blocks = [];
      flightIn(file).takeoff.attitudeDeg = { tilt };
      return calcTiltAccount(skillOf(file)).shares.greatest;
    };
    expect(lean(1.9)).toBeUndefined();
    expect(lean(2.1)?.[0]).toBeCloseTo(1, 9);
  });

  it('a flight is flown for each set of causes, and no more', () => {
    for (const [file, sets] of [
      [fileOf('back-tuck'), 1],
      [fileOf('former/back-straight-full'), 2],
      [fourCauses(), 16],
    ] as const) {
      const steps = stepTiltAccount(skillOf(file));
      let n = 0;
      while (!steps.next().done) n += 1;
      expect(n).toBe(sets - 1);
    }
  });

  it('a mirrored skill has the mirrored account', () => {
    const file = fileOf('former/back-straight-full');
    const a = calcTiltAccount(skillOf(file));
    const m = calcTiltAccount(skillOf(mirrorShapes(file)));
    for (const k of ['greatest', 'twist'] as const)
      expect(Math.abs(gaveBy(m, 'arms')[k] + gaveBy(a, 'arms')[k])).toBeLessThan(NOTHING);
  });

  it('without momentum the twist is all counter-rotation', () => {
    const a = calcTiltAccount(preset('cat-turn'));
    expect(a.measuredFrom).toBe('world');
    expect(Math.abs(a.counterTwist - a.total.twist)).toBeLessThan(NOTHING);
    expect(Math.abs(gaveBy(a, 'hips').twist - a.total.twist)).toBeLessThan(NOTHING);
  });

  /*
   * H7 (Yeadon & Kerwin, back somersaults with one twist on the floor): counter-rotation gives under a third of the
   * twist, contact about 30 % of the tilt. The preset is thrown wholly in the air, so its contact is none: the athletes
   * they filmed began the throw on the floor. Given a take-off that already leans and carries momentum about the other
   * axes, contact has a share; how much is an input of this model, no finding, so only its sense is asked here.
   */
  it('H7: counter-rotation gives under a third of the twist of the preset full; its contact is none by choice', () => {
    const a = calcTiltAccount(preset('former/back-straight-full'));
    // measured 0.06 % of the twist, and a share of 0.25 below
    expect(Math.abs(a.counterTwist / a.total.twist)).toBeLessThan(1 / 3);
    expect(sizes(a.contact)).toEqual([0, 0, 0]);
    const file = fileOf('former/back-straight-full');
    flightIn(file).takeoff.attitudeDeg = { tilt: 3 };
    const leaning = calcTiltAccount(skillOf(file));
    const share = leaning.contact.greatest / leaning.total.greatest;
    expect(share).toBeGreaterThan(0.1);
    expect(share).toBeLessThan(0.6);
  });

  it('hands that stay on the legs stay there in the reruns', () => {
    const file = fileOf('back-tuck');
    const held = flightIn(file).schedule.blocks?.find((b) => b.shape === 'tuck');
    if (!held) throw new RangeError('no tuck');
    flightIn(file).schedule.contacts = [{ hand: 'both', on: 'shin', from: held.from, to: held.to }];
    flightIn(file).schedule.keys = [
      { angle: 'lumbarSideBend', at: { anchor: 'takeoff', s: 0.1 }, deg: 0 },
      { angle: 'lumbarSideBend', at: { anchor: 'takeoff', s: 0.3 }, deg: 8 },
    ];
    flyFor(file, 0.9, 30);
    // without the side bend it is the even tuck with its hands on the shins: the flight that has no side bend at all
    const [a, b] = withAndWithoutKeys(file);
    expect(a.parts.filter((p) => p.uneven).map((p) => p.source)).toEqual(['chest']);
    const left = a.parts.find((p) => p.source === 'chest')?.without;
    expect(Math.abs((left?.at ?? Number.NaN) - b.total.at)).toBeLessThan(NOTHING);
    expect(Math.abs(left?.twist ?? Number.NaN)).toBeLessThan(NOTHING);
    expect(Math.abs(a.total.at)).toBeGreaterThan(0.5 * DEG);
  });

  it('what one hand does alone belongs to the arms; the same with the other hand too belongs to nobody', () => {
    const file = fileOf('back-tuck');
    const held = flightIn(file).schedule.blocks?.find((b) => b.shape === 'tuck');
    if (!held) throw new RangeError('no tuck');
    // the arms beside the shins: the hand that takes hold has a way to go
    held.adjustDeg = { hipFlexion: 125, kneeFlexion: 138 };
    const on = { on: 'shin', from: held.from, to: held.to } as const;
    flightIn(file).schedule.contacts = [{ hand: 'L', ...on }];
    const one = calcTiltAccount(skillOf(file));
    expect(one.parts.filter((p) => p.uneven).map((p) => p.source)).toEqual(['arms']);
    expect(Math.abs(gaveBy(one, 'arms').greatest)).toBeGreaterThan(0.1 * DEG);
    expect(Math.max(...sizes(one.rest))).toBeLessThan(NOTHING);
    flightIn(file).schedule.contacts = [
      { hand: 'L', ...on },
      { hand: 'R', ...on },
    ];
    const both = calcTiltAccount(skillOf(file));
    expect(both.parts.some((p) => p.uneven)).toBe(false);
  });

  it('step by step it is the same account, and the steps are as many as they say', () => {
    const skill = preset('former/back-straight-full');
    const steps = stepTiltAccount(skill);
    let shown = 0;
    for (;;) {
      const step = steps.next();
      if (step.done) {
        expect(step.value).toEqual(calcTiltAccount(skill));
        break;
      }
      shown += 1;
      expect(step.value.done).toBe(shown);
      expect(shown).toBeLessThan(step.value.of);
    }
  });

  it('the same call gives the same account', () => {
    const skill = preset('former/back-straight-full');
    const flight = flySkill(skill);
    expect(calcTiltAccount(skill, { flight })).toEqual(calcTiltAccount(skill, { flight }));
  });
});
