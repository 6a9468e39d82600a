// How sensitive a result is: against closed forms, against flights of files written so, at both steps, and in words.
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { EXPLAIN_WORDS, flightOf, flySkill, type SkillFile } from '../../sim/index.ts';
import { calcFlightEnd } from '../../sim/measure/flight-end.ts';
import { calcConditioning, type SensitiveTo, type Sensitivity } from '../../sim/skill/conditioning.ts';
import { wordConditioning } from '../../sim/words/conditioning-words.ts';
import { isWhole } from '../corpus.ts';
import { flightIn, mirrorShapes, swingIn } from '../files/parts.ts';
import { builtOf, fileOf, presetIds, skillOf } from './load.ts';

const DEG = Math.PI / 180;
const REV = 2 * Math.PI;

const conditioningOf = (file: SkillFile): Sensitivity[] => calcConditioning(builtOf(file), contact);
const find = (list: readonly Sensitivity[], to: SensitiveTo): Sensitivity => {
  const one = list.find((s) => s.to === to);
  if (!one) throw new Error(`nothing of ${to}`);
  return one;
};
const endOf = (file: SkillFile) => {
  const flight = flySkill(skillOf(file));
  return { ...calcFlightEnd(flight), turn: flight.h_Scm_W[2] < 0 ? -1 : 1 };
};
/** By files: the result at +- a change, per unit of the change. */
function byFiles(
  id: string,
  change: number,
  put: (file: SkillFile, by: number) => void,
  of: Sensitivity['of'],
): number {
  const [more, less] = [change, -change].map((by) => {
    const file = fileOf(id);
    put(file, by);
    const end = endOf(file);
    return of === 'twist' ? end.twist - end.twist0 : end.turn * (end.somersault - end.somersault0);
  });
  return (more - less) / (2 * change);
}

/** A quick flight's derivative against full flights of files, as a share: measured 5e-4, where a file's momentum is stated as straight somersaults; 4e-6 else. */
const SAME = 1e-3;
/** Left and right by quick flights, as a share: measured 1.2e-10. */
const MIRRORED = 1e-6;

describe('how sensitive a result is', () => {
  it('held in one shape for a stated time, the landing goes with the momentum: the whole somersault', () => {
    const file = fileOf('back-straight');
    flightIn(file).schedule.blocks = [];
    flightIn(file).end = { durationS: 0.9, surface: { kind: 'floor', heightM: 0 } };
    const end = endOf(file);
    const one = find(conditioningOf(file), 'momentum');
    expect(Math.abs(one.value / Math.abs(end.somersault - end.somersault0) - 1)).toBeLessThan(1e-5);
    expect(Math.abs(one.bend)).toBeLessThan(1e-5);
  });

  it('tilt at take-off: as flown from files of that tilt', () => {
    const put = (file: SkillFile, by: number): void => {
      const { takeoff } = flightIn(file);
      takeoff.attitudeDeg = { ...takeoff.attitudeDeg, tilt: by / DEG };
    };
    for (const id of ['back-tuck', 'former/back-straight-full']) {
      const one = find(conditioningOf(fileOf(id)), 'takeoffTilt');
      expect(one.step).toBe(0.25 * DEG);
      const wanted = byFiles(id, one.step, put, 'twist');
      expect(Math.abs(one.value / wanted - 1), id).toBeLessThan(SAME);
    }
  });

  it('the move that matters most: as flown from a file whose kick-out is later, and none matters more', () => {
    const put =
      (i: number) =>
      (file: SkillFile, by: number): void => {
        const blocks = flightOf(file).schedule.blocks ?? [];
        blocks[i - 1].to.s += by;
        blocks[i].from.s += by;
      };
    const file = fileOf('back-tuck');
    const one = find(conditioningOf(file), 'move');
    const blocks = flightOf(file).schedule.blocks ?? [];
    const most = blocks.findIndex((_, i) => i > 0 && Math.abs(blocks[i - 1].to.s - (one.move?.t ?? 0)) < 1e-9);
    expect(one.move?.words[0]).toBe('open');
    blocks.forEach((_, i) => {
      if (i === 0 || blocks[i - 1].to.anchor !== 'takeoff' || blocks[i].from.anchor !== 'takeoff') return;
      const wanted = byFiles('back-tuck', one.step, put(i), 'landing');
      if (i === most) expect(Math.abs(one.value / wanted - 1)).toBeLessThan(SAME);
      else expect(Math.abs(wanted)).toBeLessThan(Math.abs(one.value));
    });
  });

  it('letting go and the late hand: as flown from files of those times', () => {
    const list = conditioningOf(fileOf('giant-late-hand-full'));
    const letGo = find(list, 'letGo');
    const wanted = byFiles(
      'giant-late-hand-full',
      letGo.step,
      (file, by) => {
        swingIn(file).releaseLateS = by;
      },
      'landing',
    );
    expect(Math.abs(letGo.value / wanted - 1)).toBeLessThan(SAME);
    const late = find(list, 'lateHand');
    const hand = byFiles(
      'giant-late-hand-full',
      late.step,
      (file, by) => {
        swingIn(file).lateHand = { hand: 'left', lateS: 0.015 + by };
      },
      'twist',
    );
    expect(Math.abs(late.value / hand - 1)).toBeLessThan(SAME);
  });

  it('every preset has its line; a straight body bends within the step, a tuck does not', () => {
    for (const id of presetIds.filter((_, i) => isWhole || i % 12 === 0)) {
      const list = conditioningOf(fileOf(id));
      expect(list.map((s) => s.to)).toEqual(expect.arrayContaining(['takeoffTilt', 'momentum']));
      for (const s of list) expect(Number.isFinite(s.value) && Number.isFinite(s.bend), `${id} ${s.to}`).toBe(true);
    }
    const bend = (id: string): number => Math.abs(find(conditioningOf(fileOf(id)), 'takeoffTilt').bend);
    expect(bend('double-back-straight')).toBeGreaterThan(0.2);
    expect(bend('double-back-tuck')).toBeLessThan(0.02);
  });

  it('a mirrored skill is as sensitive', () => {
    const [a, b] = [fileOf('former/back-straight-full'), mirrorShapes(fileOf('former/back-straight-full'))].map(
      conditioningOf,
    );
    for (const [i, one] of a.entries()) expect(Math.abs(b[i].value / one.value - 1), one.to).toBeLessThan(MIRRORED);
  });
});

/** Two quick flights against two full ones, as a share. */
const FLOWN = 1e-3;

it('what a usual error comes to is flown, so that what goes by its square is not missed', () => {
  const put = (file: SkillFile, by: number): void => {
    swingIn(file).releaseLateS = (swingIn(file).releaseLateS ?? 0) + by;
  };
  let squares = 0;
  for (const id of ['giant-late-hand-full', 'giant-double-straight']) {
    const one = find(conditioningOf(fileOf(id)), 'letGo');
    const landingAt = (by: number): number => {
      const file = fileOf(id);
      put(file, by);
      const end = endOf(file);
      return end.turn * (end.somersault - end.somersault0);
    };
    const now = landingAt(0);
    const wanted = Math.max(...[0.012, -0.012].map((by) => Math.abs(landingAt(by) - now)));
    expect(Math.abs((one.atError ?? 0) / wanted - 1), id).toBeLessThan(FLOWN);
    const promised = Math.abs(one.value) * 0.012;
    expect(one.outgrows ?? false, id).toBe(wanted > 2 * promised);
    if (one.outgrows) squares++;
    // the weight is that of the larger
    const worst = Math.max(wanted, promised);
    expect(one.weight, id).toBe(worst < (5 * DEG) / 3 ? 'slight' : worst < 5 * DEG ? 'shows' : 'decides');
  }
  expect(squares).toBeGreaterThan(0);
});

describe('in words', () => {
  const one = (change: Partial<Sensitivity>): string =>
    wordConditioning(
      [{ to: 'momentum', of: 'landing', value: 4.13 * 100 * DEG, step: 0.0025, bend: 0, weight: 'shows', ...change }],
      EXPLAIN_WORDS.moves,
    )[0];

  it('per degree, per cent and millisecond, with what usual errors come to', () => {
    expect(one({})).toBe('4.1 deg at the landing for 1 % of angular momentum (usual errors show)');
    expect(one({ to: 'takeoffTilt', of: 'twist', value: (0.21 * REV) / DEG, weight: 'decides' })).toBe(
      '0.21 twists for 1 deg of tilt at take-off (usual errors decide it)',
    );
    expect(one({ to: 'move', value: 340 * DEG, move: { t: 0.42, words: ['open', 'armsOut'] }, weight: 'slight' })).toBe(
      '0.3 deg at the landing for 1 ms in the move at 0.42 s, open (usual errors hardly show)',
    );
    expect(one({ to: 'lateHand', of: 'twist', value: 50_000 * DEG })).toContain('5.0 deg of twist for 0.1 ms');
  });

  it('what does not go in proportion is said', () => {
    expect(one({ bend: -0.3 })).toMatch(/^at first 4\.1 deg/);
    expect(one({ bend: 0.3 })).toMatch(/, and more beyond/);
    expect(one({ bend: 0.05 })).toMatch(/^4\.1 deg/);
  });

  it('where a usual error comes to more than small changes promise, both are said', () => {
    const near = { to: 'letGo', value: 0, atError: 7.2 * DEG, outgrows: true, weight: 'decides' } as const;
    expect(one(near)).toBe(
      '0.0 deg at the landing for 1 ms in letting go, but 7.2 deg at the landing for a usual error (usual errors decide it)',
    );
    expect(one({ ...near, atError: 0.1 * DEG, weight: 'slight' })).not.toContain('but');
  });
});
