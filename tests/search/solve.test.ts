/** Solve against closed forms, on presets whose take-off is forgotten, and on what cannot be done. */
import { describe, expect, it } from 'vitest';
import {
  aimAt,
  calcFrames,
  draftOfCode,
  Evaluator,
  fieldsOfDraft,
  findInput,
  findResult,
  flySkill,
  frameTimes,
  MOST_MOMENTUM,
  makeUnknown,
  ownAim,
  parseSkill,
  putInputs,
  type SearchProblem,
  type SkillSpec,
  solve,
  solveSteps,
  summarize,
  updateSkill,
  type Wish,
} from '../../sim/index.ts';
import { fitSteps } from '../../sim/math/least-squares.ts';
import { byCost } from '../../sim/search/solve.ts';
import { casesOf, isWhole } from '../corpus.ts';
import * as R from '../oracles/reference.ts';
import { fileOf, launchedOf, shelf, takeoffOf } from '../skill/load.ts';
import { rigidSkill, takeoffWith } from './problems.ts';

const RAD = Math.PI / 180;
const REV = 2 * Math.PI;
/** Flights of checks, at the usual tolerance. */
const EXACT = { exact: 1e-6, options: {} } as const;
const specOf = (id: string): SkillSpec => parseSkill(fileOf(id), shelf);
const wish = (result: string, value: number, tolerance = 1e-3): Wish => ({ result, value, tolerance });

describe('answers with a closed form', () => {
  // TWISTS: measured 2.0e-5 deg, the rounding of the printed tilts
  const TILT = 1e-3; // deg
  for (const { twists, tiltDeg } of R.TILT_NEEDED)
    it(`R4: S1 arms down finds the tilt for ${twists} twists in a somersault`, () => {
      const spec = rigidSkill(R.S1_DOWN, {
        takeoff: takeoffWith({ tilt: 8 * RAD, momentum: { kind: 'vector', h_Scm_W: [0, 0, 50] } }),
        end: { kind: 'duration', duration: 1.6 },
      });
      const { solutions } = solve({
        spec,
        wishes: [wish('somersaults', 1), wish('twists', twists)],
        unknowns: [makeUnknown(spec, 'takeoff.tilt', [1 * RAD, 25 * RAD]), makeUnknown(spec, 'end.duration', [1, 3])],
        answers: 1,
        ...EXACT,
      });
      expect(solutions).toHaveLength(1);
      expect(Math.abs(solutions[0].values[0] / RAD - tiltDeg)).toBeLessThan(TILT);
    });

  const PRINTED = 1e-6; // s, R10: the last digit printed
  it('R10: the two-shape dive finds its times: straight before and after, twisting between', () => {
    const { S1_OVERHEAD, S1_DOWN, DIVE } = R;
    const h = { kind: 'vector' as const, h_Scm_W: [0, 0, DIVE.H] as const };
    // S1 overhead as measured is a set of moments that no mass has: a straight somersault reads A alone
    const open = rigidSkill(
      { ...S1_OVERHEAD, B: S1_OVERHEAD.A, C: S1_OVERHEAD.C },
      { takeoff: takeoffWith({ momentum: h }) },
    );
    const twisting = rigidSkill(S1_DOWN, { takeoff: takeoffWith({ momentum: h, tilt: DIVE.tiltDeg * RAD }) });
    const [first, second] = [open, twisting].map((s) => new Evaluator(s, [findInput(s, 'end.duration')]));
    const read = (e: Evaluator, T: number, id: string): number => findResult(id).get(e.outcomeAt([T]));
    // in [0, 1]: seconds / 4
    const residuals = ([a, b]: readonly number[]): number[] => [
      1e3 * (read(first, 4 * a, 'somersaults') + read(second, 4 * b, 'somersaults') - 1.5),
      1e3 * (read(second, 4 * b, 'twists') - 2),
    ];
    const fit = fitSteps([0.1, 0.3], residuals, { steps: [1e-5, 1e-5], exact: 1e-6 });
    let last = fit.next();
    while (!last.done) last = fit.next();
    const [straight, between] = (last.value?.x ?? []).map((x) => 4 * x);
    expect(Math.abs(straight - DIVE.straightTime)).toBeLessThan(PRINTED);
    expect(Math.abs(between - DIVE.twistingTime)).toBeLessThan(PRINTED);
  });

  it('the momentum of a straight somersault in a given time is 2 pi A / T', () => {
    for (const T of [0.6, 1, 1.7]) {
      const spec = rigidSkill(R.S1_DOWN, { end: { kind: 'duration', duration: T } });
      const { solutions } = solve({
        spec,
        wishes: [wish('somersaults', 1)],
        unknowns: [makeUnknown(spec, 'takeoff.h.z', [0, 300])],
        answers: 1,
        ...EXACT,
      });
      expect(solutions[0].values[0]).toBeCloseTo((REV * R.S1_DOWN.A) / T, 5);
    }
  });

  const ball = { contacts: [{ name: 'sole', part: 'feet', point: [0, -1, 0] as const, radius: 0.01 }] };
  for (const { T, speed, rise } of R.LEVEL)
    it(`F1: a level flight of ${T} s asks for ${speed} m/s up and rises ${rise} m`, () => {
      const spec = rigidSkill(R.S1_DOWN, {
        segment: ball,
        takeoff: takeoffWith({ height: { of: 'lowestPoint', y: 0 }, v_WScm_W: [0, 3, 0] }),
        end: { kind: 'touchdown', surface: { kind: 'floor', y: 0 } },
      });
      const { solutions } = solve({
        spec,
        wishes: [wish('airTime', T)],
        unknowns: [makeUnknown(spec, 'takeoff.speedUp', [1, 12])],
        answers: 1,
        ...EXACT,
      });
      expect(solutions[0].values[0]).toBeCloseTo((9.81 * T) / 2, 6);
      expect(solutions[0].values[0]).toBeCloseTo(speed, 3);
      const start = new Evaluator(spec, []).flightAt([]).p_WScm_W0[1];
      expect(findResult('height').get(new Evaluator(solutions[0].spec, []).outcomeAt([])) - start).toBeCloseTo(rise, 3);
    });

  it('F2: released at 3.7 m, the speed for that time and that height is the 4.5 m/s it was made with', () => {
    const { RELEASE } = R;
    const spec = rigidSkill(R.S1_DOWN, {
      // the mass centre is 1.0 m up when the lowest point is down
      segment: { contacts: [{ name: 'sole', part: 'feet', point: [0, -RELEASE.y1 + 0.01, 0], radius: 0.01 }] },
      takeoff: takeoffWith({ height: { of: 'massCentre', y: RELEASE.y0 }, v_WScm_W: [0, 2, 0] }),
      end: { kind: 'touchdown', surface: { kind: 'floor', y: 0 } },
    });
    const unknowns = [makeUnknown(spec, 'takeoff.speedUp', [0, 9])];
    for (const w of [wish('airTime', RELEASE.time), wish('height', RELEASE.apex)])
      expect(solve({ spec, wishes: [w], unknowns, answers: 1, ...EXACT }).solutions[0].values[0]).toBeCloseTo(
        RELEASE.v,
        3,
      );
  });
});

describe('round trips', () => {
  // share of the true value, measured 1e-7 and below
  const FOUND = 1e-5;
  const trips: Readonly<Record<string, readonly string[]>> = {
    'back-tuck': ['takeoff.straightSomersaults', 'takeoff.speedUp'],
    'back-straight-full': ['takeoff.h.z', 'takeoff.speedUp'],
    'dive-forward-one-and-half-pike': ['takeoff.h.z', 'takeoff.speedUp'],
    'back-straight-double': ['takeoff.h.z', 'takeoff.speedUp', 'block:4.start'],
  };
  for (const [id, ids] of Object.entries(trips).filter(([id]) => isWhole || /tuck|pike|double/.test(id)))
    it(`${id}: flown, its ${ids.join(' and ')} forgotten, they are found again`, () => {
      const spec = specOf(id);
      const truth = ids.map((i) => findInput(spec, i).value);
      const seen = new Evaluator(spec, []).outcomeAt([]);
      const of = (result: string): number => findResult(result).get(seen);
      const lost = putInputs(
        spec,
        ids.map((i) => findInput(spec, i)),
        truth.map((v, j) => v * [1.02, 1.01, 0.99][j]),
      );
      const { solutions } = solve({
        spec: lost,
        wishes: [
          wish('somersaults', of('somersaults')),
          wish('airTime', of('airTime')),
          ...(ids.length > 2 ? [wish('twists', of('twists'), 1e-2)] : []),
        ],
        unknowns: ids.map((i, j) => {
          const ends = [0.8 * truth[j], 1.2 * truth[j]].sort((a, b) => a - b);
          return makeUnknown(lost, i, [ends[0], ends[1]]);
        }),
        answers: 1,
        ...EXACT,
      });
      expect(solutions).toHaveLength(1);
      truth.forEach((v, j) => {
        expect(Math.abs(solutions[0].values[j] / v - 1), ids[j]).toBeLessThan(FOUND);
      });
    });

  it('an answer written to a file and read again flies to the answer', () => {
    const file = fileOf('back-straight-double');
    const spec = specOf('back-straight-double');
    const aim = ownAim(spec);
    const unknowns = ['takeoff.h.z', 'block:2.start', 'block:4.angle:shoulderElevationR'].map((i) =>
      makeUnknown(aim.spec, i),
    );
    const { solutions } = solve({ ...aim, unknowns, answers: 1 });
    const again = parseSkill(JSON.parse(JSON.stringify(updateSkill(file, spec, solutions[0].spec))), shelf);
    const skill = launchedOf(again);
    const flight = flySkill(skill);
    const summary = summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)), skill.target);
    const [short, twists, tilt] = solutions[0].terms.map((t) => t.value);
    // rounded to 1e-6 in the file, grown along the flight
    expect(summary.landing?.short).toBeCloseTo(short, 4);
    expect(summary.twists).toBeCloseTo(twists, 4);
    expect(summary.tilt).toBeCloseTo(tilt, 4);
  });
});

describe('what cannot be done', () => {
  it('a triple straight in 0.6 s is not found, and the momentum that holds it is named with its source', () => {
    const spec = specOf('back-straight');
    const aim = aimAt(spec, { somersaults: 3, direction: 'backward', twists: 0, airTime: 0.6 });
    const unknowns = ['takeoff.h.z', 'takeoff.speedUp'].map((i) => makeUnknown(aim.spec, i));
    const { solutions, nearest } = solve({ ...aim, unknowns, fits: 2, draws: 6 });
    expect(solutions).toEqual([]);
    const bound = nearest?.obstacles.find((o) => o.kind === 'bound' && o.unknown.input.id === 'takeoff.h.z');
    expect(bound).toMatchObject({ side: 'high', value: MOST_MOMENTUM, unknown: { input: { id: 'takeoff.h.z' } } });
    expect(bound?.kind === 'bound' && bound.source).toMatch(/Hiley & Yeadon 2003/);
    const open = nearest?.obstacles.flatMap((o) => (o.kind === 'wish' ? [o.term.wish.result] : []));
    expect(open).toContain('short');
    expect(open).toContain('airTime');
  });

  it('of answers that forgive alike the one that misses least by its verdict is first', () => {
    const aim = ownAim(specOf('back-straight'));
    const [one] = solve({ ...aim, unknowns: [makeUnknown(aim.spec, 'takeoff.h.z')], answers: 1, fits: 1 }).solutions;
    const near = { kind: 'near', solid: 'rail', part: 'toes', distance: -0.01, t: 0.3 } as const;
    const touching = { ...one, verdict: { ...one.verdict, missed: [near] } };
    const forgiving = { ...touching, cost: { ...one.cost, margin: 0.2 } };
    expect([touching, one].sort(byCost)).toEqual([one, touching]);
    expect([touching, one, forgiving].sort(byCost)[0]).toBe(forgiving);
  });

  it('joint speeds that must hold are obeyed, or named as what is in the way', () => {
    const aim = ownAim(specOf('back-straight-double'));
    const base = {
      ...aim,
      unknowns: [makeUnknown(aim.spec, 'block:2.start', [0.05, 0.22]), makeUnknown(aim.spec, 'takeoff.h.z')],
    };
    const speed = { range: false, speed: true, torque: false };
    for (const { broken, cost, off } of solve({ ...base, limits: speed, answers: 2, fits: 3 }).solutions) {
      expect(broken).toEqual([]);
      expect(off).toBeLessThanOrEqual(1 + 1e-6);
      expect(cost.speed?.share).toBeLessThanOrEqual(1 + 1e-6);
      expect(cost.cautions.filter((c) => c.kind === 'speed')).toEqual([]);
    }
    // a throw in 0.05 s has no slower one within its span
    const hasty = { ...base, unknowns: [makeUnknown(aim.spec, 'block:2.start', [0.04, 0.06])] };
    const miss = solve({ ...hasty, limits: speed, fits: 1 });
    expect(miss.solutions).toEqual([]);
    expect(miss.nearest?.obstacles).toContainEqual({ kind: 'limit', limit: 'speed' });
  });
});

describe('a search', () => {
  const aim = ownAim(specOf('back-straight-full'));
  const problem: SearchProblem = {
    ...aim,
    unknowns: ['takeoff.h.z', 'block:2.start', 'block:3.start', 'takeoff.speedUp'].map((i) => makeUnknown(aim.spec, i)),
    seed: 5,
    fits: casesOf(4, 3),
    draws: casesOf(8, 6),
  };
  let asked: ReturnType<typeof solve> | undefined;
  const found = (): ReturnType<typeof solve> => {
    asked ??= solve(problem);
    return asked;
  };

  it('gives the same answers for the same seed, each distinct and each flown as it says', () => {
    const a = found();
    expect(a.isComplete).toBe(true);
    expect(solve(problem, () => true)).toEqual(a);
    expect(a.solutions.length).toBeGreaterThan(1);
    a.solutions.forEach((s, i) => {
      for (const other of a.solutions.slice(i + 1)) expect(other.values).not.toEqual(s.values);
      const flight = flySkill(launchedOf(s.spec));
      const summary = summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)), s.spec.target);
      expect(summary.twists).toBeCloseTo(s.terms[1].value, 9);
      expect(s.terms.every((t) => t.met)).toBe(true);
      expect(s.cost.momentum).toBeCloseTo(Math.hypot(...flight.h_Scm_W), 9);
    });
  });

  it('goes in steps, and stops where it is asked to with what it has', () => {
    const steps = solveSteps(problem);
    let s = steps.next();
    let n = 0;
    while (!s.done && n < 2) {
      n++;
      s = steps.next(false);
    }
    expect(s.done).toBe(false);
    s = steps.next(true);
    while (!s.done) s = steps.next(true);
    expect(s.value.isComplete).toBe(false);
  });

  it('ranks by the margin it is given', () => {
    const { solutions } = solve({ ...problem, margin: (spec) => -takeoffOf(spec).v_WScm_W[1] });
    const margins = solutions.map((s) => s.cost.margin ?? Number.NaN);
    expect(margins).toEqual([...margins].sort((a, b) => b - a));
  });
});

describe('targets', () => {
  it('a code says counts, landing, surface and where the twists go', () => {
    const spec = specOf('double-back-straight');
    const fields = fieldsOfDraft(draftOfCode('8 13 /', 'backward'));
    const aim = aimAt(spec, fields);
    expect(aim.spec.target).toMatchObject({ somersaults: 2, twists: 2, somersaultWord: 'backward' });
    expect(aim.spec.end.surface).toEqual({ kind: 'trampoline', y: 1.15 });
    expect(aim.wishes.map((w) => [w.result, w.value])).toEqual([
      ['short', 0],
      ['twists', 2],
      ['tilt', 0],
      ['twistsAfter.1', 0.5],
    ]);
    const dive = aimAt(spec, fieldsOfDraft(draftOfCode('107B')));
    expect(dive.spec.target?.landingAngle).toBeCloseTo(Math.PI, 12);
  });

  it('where nothing is said of the landing it is the one of the skill, turned on by what is asked beyond it', () => {
    const giant = specOf('giant-double-straight');
    const own = giant.target?.landingAngle ?? Number.NaN;
    expect(own).not.toBe(0);
    const landing = (spec: typeof giant, somersaults: number): number =>
      aimAt(spec, { somersaults, twists: 0 }, launched).spec.target?.landingAngle ?? Number.NaN;
    const launched = launchedOf(giant);
    expect(landing(giant, 2)).toBeCloseTo(own, 12);
    expect(landing(giant, 3)).toBeCloseTo(own, 12);
    expect(landing(giant, 1.5)).toBeCloseTo(own + Math.PI, 12);
    // let go at 104 deg, nearer to upside down: whole somersaults from a bar end upright all the same
    const { target: _, ...bare } = giant;
    expect(landing(bare, 2)).toBe(0);
  });

  it('an end shape takes the place of the last block', () => {
    const spec = specOf('former/back-straight-double');
    const aim = aimAt(spec, {
      somersaults: 1,
      twists: 2,
      endShape: { id: 'straight', pose: { shoulderElevation: 0.05 } },
    });
    expect(aim.spec.blocks[4]).toMatchObject({ shape: 'straight', adjust: {}, from: spec.blocks[4].from });
  });

  it('tolerances that are none, and spans turned round, are refused by name', () => {
    const spec = specOf('back-straight-double');
    expect(() => ownAim(spec, { tilt: 0 })).toThrow(/target.within.tilt/);
    expect(() => makeUnknown(spec, 'takeoff.h.z', [50, 40])).toThrow(/vary.takeoff.h.z/);
    expect(() => makeUnknown(spec, 'takeoff.tilt', [0, 3])).toThrow(/vary.takeoff.tilt/);
  });
});
