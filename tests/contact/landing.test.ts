// Landings against closed forms, accounts and the flight they come from.
import { beforeAll, describe, expect, test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { strengthCurve } from '../../sim/body/strength.ts';
import { makeChain } from '../../sim/contact/chain.ts';
import { makeChainTotals, totalsInto } from '../../sim/contact/chain-motion.ts';
import { type LandingRun, runLanding, STEP } from '../../sim/contact/landing.ts';
import {
  ASYMMETRY_LIMITS,
  type LandingEntry,
  makeLandingEntry,
  placeEntry,
  withKnee,
} from '../../sim/contact/landing-entry.ts';
import { DEFAULT_ACTION, JointAction, jointStrength } from '../../sim/contact/landing-joints.ts';
import { landingPoseInto, makeLandingPose } from '../../sim/contact/landing-pose.ts';
import { type LandingReport, land } from '../../sim/contact/landing-report.ts';
import { MATS } from '../../sim/contact/mat.ts';
import { type Flight, flySkill, makeBody, makeHuman, readAthlete } from '../../sim/index.ts';
import { flightIn } from '../files/parts.ts';
import { fileOf, skillOf } from '../skill/load.ts';
import { recordChecks } from '../validation/record.ts';
import { FIRM, makeDropEntry } from './drop-entry.ts';

const near = recordChecks('landing');

const G = 9.81;
const bodyOf = (id: string) => makeBody(readAthlete(athletes[id]));
const landed = (entry: LandingEntry, spec: Parameters<typeof land>[1]): { run: LandingRun; report: LandingReport } => {
  const result = land(entry, spec);
  if (result.kind !== 'landed') throw new Error('asymmetric');
  return result;
};

describe('F8: an undamped spring landing', () => {
  // closed form: F/mg = 1 + sqrt(1 + k v2/(m g2)), sinking of that over k, a quarter period and the part before
  const [m, v, k] = [60, 4.4, 20_000];
  const w = Math.sqrt(k / m);
  const FORCE = 1 + Math.sqrt(1 + (k * v * v) / (m * G * G));
  const SINK = (FORCE * m * G) / k;
  const TIME = (Math.PI / 2 + Math.atan(G / (v * w))) / w;

  test('the closed form has the stated digits', () => {
    expect(FORCE).toBeCloseTo(9.249685, 6);
    expect(SINK).toBeCloseTo(0.272218, 6);
    expect(TIME).toBeCloseTo(0.0926917, 7);
  });

  /** The whole body as one rigid link whose mass centre is over the springs' centre. */
  function rigidLanding(step: number): { force: number; sink: number; time: number } {
    const body = makeHuman({ name: 'Rigid', sex: 'male', mass: m, stature: 1.7 });
    const whole = makeChain(body, { joints: [] });
    const foot = whole.body.contacts.filter((c) => c.name.endsWith('L') && c.part === 'feet');
    const at = (name: string): number => {
      const c = foot.find((f) => f.name === `${name}L`);
      return c ? whole.pointOf(c.segment, c.p_BoC_B).at[0] : Number.NaN;
    };
    const centre = 0.4 * at('heel') + 0.4 * at('ball') + 0.2 * at('toe');
    const chain = { ...whole, links: [{ ...whole.links[0], centre: [centre, whole.links[0].centre[1]] as const }] };
    const entry: LandingEntry = {
      facing: 1, gravity: G, stature: 1.7, chain, q: [], qd: [], x: 0, y: 1, vx: 0, vy: -v, h: 0, theta: 0, tilt: 0,
    unfinished: 0,
    asymmetry: [],
    }; // biome-ignore format: one line of numbers
    const mat = { surfaceY: 0, thickness: 5, stiffness: k, damping: 0, friction: 0.8 };
    const run = runLanding(entry, { mat, action: DEFAULT_ACTION, duration: 0.12, step });
    let top = 1;
    for (let i = 1; i < run.n - 1; i++) if (run.fy[i] > run.fy[top]) top = i;
    // top of the parabola through three rows
    const [a, b, c] = [run.fy[top - 1], run.fy[top], run.fy[top + 1]];
    const dt = run.t[1];
    const shift = (a - c) / (2 * (a - 2 * b + c));
    const force = b - ((a - c) * shift) / 4;
    return { force: force / (m * G), sink: force / k, time: run.t[top] + shift * dt };
  }
  /** measured 1.4e-7 of force and sinkage, 6e-8 of the time */
  const AT_STEP = 1e-6;
  const coarse = rigidLanding(2 * STEP);
  const fine = rigidLanding(STEP);

  test('F8: an undamped spring landing, through the own spring force and the equations, at the chosen step', () => {
    near('peak, body weights', fine.force, FORCE, AT_STEP * FORCE);
    near('sinks in, m', fine.sink, SINK, AT_STEP * SINK);
    near('time of the peak, s', fine.time, TIME, AT_STEP * TIME);
  });

  test('second order, so that two steps together give all printed digits', () => {
    const order = Math.log2((coarse.force - FORCE) / (fine.force - FORCE));
    expect(Math.abs(order - 2)).toBeLessThan(0.2);
    expect((4 * fine.force - coarse.force) / 3).toBeCloseTo(9.249685, 6);
    expect((4 * fine.sink - coarse.sink) / 3).toBeCloseTo(0.272218, 6);
    expect((4 * fine.time - coarse.time) / 3).toBeCloseTo(0.0926917, 7);
  });
});

describe('the entry from a flight', () => {
  let flight: Flight;
  let entry: LandingEntry;
  beforeAll(() => {
    flight = flySkill(skillOf(fileOf('back-tuck')));
    entry = makeLandingEntry(flight, flight.duration);
  });

  test('mass centre, velocity and angular momentum go over exactly', () => {
    const motion = placeEntry(entry);
    const whole = makeChainTotals();
    totalsInto(entry.chain, motion, G, whole);
    const p = new Float64Array(3);
    const v = new Float64Array(3);
    flight.massCentreInto(flight.duration, p, v);
    expect(Math.abs(whole.x - p[0])).toBeLessThan(1e-12);
    expect(Math.abs(whole.y - p[1])).toBeLessThan(1e-12);
    expect(Math.abs(whole.vx - v[0])).toBeLessThan(1e-12);
    expect(Math.abs(whole.vy - v[1])).toBeLessThan(1e-12);
    expect(Math.abs(whole.h - flight.h_Scm_W[2])).toBeLessThan(1e-11);
    const angles = new Float64Array(flight.body.angles.length);
    flight.schedule.anglesInto(flight.duration, angles, new Float64Array(angles.length));
    entry.chain.joints.forEach((j, i) => {
      if (j.name !== 'shoulder') expect(entry.q[i]).toBeCloseTo(angles[j.angles[0]], 12);
    });
  });

  test('an athlete who faces the other way lands the mirror image, turned back to W', () => {
    const file = fileOf('back-tuck');
    const mirrored = structuredClone(file);
    const { takeoff } = flightIn(mirrored);
    takeoff.velocityMPerS.along *= -1;
    takeoff.attitudeDeg = { ...takeoff.attitudeDeg, twist: 180 };
    if (takeoff.attitudeDeg.somersault) takeoff.attitudeDeg.somersault *= -1;
    const m = takeoff.momentum;
    if ('straightSomersaults' in m) m.straightSomersaults *= -1;
    const other = flySkill(skillOf(mirrored));
    const turned = makeLandingEntry(other, other.duration);
    expect([entry.facing, turned.facing]).toEqual([1, -1]);
    const spec = { mat: MATS.competitionMat, action: DEFAULT_ACTION, duration: 0.1 };
    const a = runLanding(entry, spec);
    const b = runLanding(turned, spec);
    for (const k of [0, 40, 200, a.n - 1]) {
      expect(Math.abs(a.fy[k] - b.fy[k])).toBeLessThan(1e-4 * (1 + a.fy[k]));
      expect(Math.abs(a.x[k] - b.x[k])).toBeLessThan(1e-6);
    }
    const [pa, pb] = [makeLandingPose(a), makeLandingPose(b)];
    landingPoseInto(a, 0.05, pa);
    landingPoseInto(b, 0.05, pb);
    expect(pb.p_WScm_W[0]).toBeCloseTo(-pa.p_WScm_W[0], 6);
    // X axis of the root mirrored, Y axis too
    const axis = (q: Float64Array, k: number): number[] => rotate(q, k === 0 ? [1, 0, 0] : [0, 1, 0]);
    for (const k of [0, 1]) {
      const [ax, ay] = axis(pa.quat_WB, k);
      const [bx, by] = axis(pb.quat_WB, k);
      expect(bx).toBeCloseTo(-ax, 6);
      expect(by).toBeCloseTo(ay, 6);
    }
  });

  test('tilt, unfinished twist and travel across beyond the limits are refused and named', () => {
    const file = fileOf('back-straight');
    flightIn(file).takeoff.attitudeDeg = { tilt: 12, twist: 40 };
    flightIn(file).takeoff.velocityMPerS.across = 1.5;
    const asked = flySkill(skillOf(file));
    // at take-off the state is as asked
    const found = land(makeLandingEntry(asked, 0), { mat: MATS.floor, action: DEFAULT_ACTION });
    if (found.kind !== 'asymmetric') throw new Error('it should be asymmetric');
    expect(found.asymmetry.map((a) => a.kind)).toEqual(['tilt', 'twist', 'across']);
    expect(found.asymmetry[0].value).toBeCloseTo((12 * Math.PI) / 180, 9);
    expect(found.asymmetry[1].value).toBeCloseTo((40 * Math.PI) / 180, 9);
    expect(found.asymmetry[0].limit).toBe(ASYMMETRY_LIMITS.tilt);
  });

  test('legs a little apart, pressed together or turned out land; further apart it is said', () => {
    const spread = (deg: object): LandingEntry => {
      const file = fileOf('back-tuck');
      const blocks = flightIn(file).schedule.blocks ?? [];
      const last = blocks[blocks.length - 1];
      last.adjustDeg = { ...last.adjustDeg, ...deg };
      const flown = flySkill(skillOf(file));
      return makeLandingEntry(flown, flown.duration);
    };
    const spec = { mat: MATS.competitionMat, action: DEFAULT_ACTION };
    const peak = landed(entry, spec).report.peak.force;
    for (const deg of [{ hipAbduction: -3 }, { hipAbduction: 3 }, { hipTurn: 5 }]) {
      const there = landed(spread(deg), spec).report.peak.force;
      expect(Math.abs(there / peak - 1)).toBeLessThan(0.05);
    }
    const wide = spread({ hipAbduction: 15 }).asymmetry;
    expect(wide.map((a) => a.kind)).toEqual(['sides']);
    expect(wide[0].value).toBeCloseTo((30 * Math.PI) / 180, 6);
  });
});

function rotate(q: Float64Array, v: readonly number[]): number[] {
  const [w, x, y, z] = q;
  const t = [2 * (y * v[2] - z * v[1]), 2 * (z * v[0] - x * v[2]), 2 * (x * v[1] - y * v[0])];
  return [
    v[0] + w * t[0] + y * t[2] - z * t[1],
    v[1] + w * t[1] + z * t[0] - x * t[2],
    v[2] + w * t[2] + x * t[1] - y * t[0],
  ];
}

describe('accounts of a landing', () => {
  /** J of 1.1 kJ; measured 0.5 (by Runge-Kutta 0.01) */
  const MISSED = 1;
  const body = bodyOf('ilse-marrow');
  const mat = MATS.competitionMat;
  const spec = { mat, action: DEFAULT_ACTION, duration: 0.4 };
  const entry = makeDropEntry(body, { speed: 5, knee: 0.9, vx: -0.6, h: 12, lean: 0.12 });
  const { run, report } = landed(entry, spec);
  const last = run.n - 1;
  const sum = (f: (k: number) => number): number => {
    let s = 0;
    for (let k = 0; k < last; k++) s += ((f(k) + f(k + 1)) / 2) * (run.t[k + 1] - run.t[k]);
    return s;
  };

  test('momentum: what the force gave is what the mass centre took', () => {
    const m = body.mass;
    /** measured 5e-4 of m v: rows show every fourth of the first steps */
    const CLOSES = 1e-3 * m * 5;
    expect(Math.abs(sum((k) => run.fy[k]) - m * G * run.t[last] - m * (run.vy[last] - run.vy[0]))).toBeLessThan(CLOSES);
    expect(Math.abs(sum((k) => run.fx[k]) - m * (run.vx[last] - run.vx[0]))).toBeLessThan(CLOSES);
  });

  test('energy as printed adds up: what arrived is in joints, mat, soles and what still moves', () => {
    const { energy: e } = report;
    const { arrived, missed, ...taken } = e;
    const sum = Object.values(taken).reduce((a, b) => a + b, 0);
    expect(arrived).toBeCloseTo(sum + missed, 9);
    expect(Math.abs(missed)).toBeLessThan(MISSED);
    // by hand: kinetic energy of a body that turns as one, and the height lost
    const spin = run.kinetic[0] - (body.mass * (5 ** 2 + 0.6 ** 2)) / 2;
    expect(spin).toBeGreaterThan(0);
    expect(spin).toBeLessThan(60);
    for (const part of [e.joints, e.matLost, e.matHeld, e.solesLost, e.solesHeld, e.left])
      expect(part).toBeGreaterThan(0);
  });

  test('energy over the run: mat and soles only ever lose', () => {
    const at = (k: number): number =>
      run.kinetic[k] +
      run.potential[k] +
      run.matHeld[k] +
      run.solesHeld[k] +
      run.matLoss[k] +
      run.solesLoss[k] -
      run.jointWork.reduce((sum, w) => sum + w[k], 0);
    expect(Math.abs(at(last) - at(0))).toBeLessThan(MISSED);
    let worst = 0;
    for (let k = 1; k < run.n; k++) worst = Math.min(worst, run.matLoss[k] - run.matLoss[k - 1]);
    expect(worst).toBeGreaterThan(-0.5);
    // measured 0.059
    expect(report.energy.matLost).toBeGreaterThan(0.02 * report.energy.arrived);
    const knee = report.joints.find((j) => j.joint === 'knee');
    expect(knee?.absorbed).toBeGreaterThan(50);
  });

  test('the mean ground force is one body weight more than the mean deceleration in g', () => {
    const tb = report.brakeTime ?? Number.NaN;
    const weight = body.mass * G;
    let impulse = 0;
    for (let k = 0; run.t[k + 1] <= tb; k++) impulse += ((run.fy[k] + run.fy[k + 1]) / 2) * (run.t[k + 1] - run.t[k]);
    expect(Math.abs(impulse / tb / weight - report.meanBodyWeights)).toBeLessThan(0.02 * report.meanBodyWeights);
    expect(report.meanBodyWeights - report.meanG).toBeCloseTo(1, 12);
  });

  test('F9: over its stopping distance d the mean force is 1 + h/d, h the drop that gives the speed', () => {
    let end = 0;
    while (run.vy[end] < 0) end++;
    const d = run.y[0] - run.y[end];
    let work = 0;
    for (let k = 0; k < end; k++) work += ((run.fy[k] + run.fy[k + 1]) / 2) * (run.y[k] - run.y[k + 1]);
    const h = 25 / (2 * G);
    const mean = work / d / (body.mass * G);
    /** measured 3e-5 */
    near('mean force, body weights', mean, 1 + h / d, 5e-4 * (1 + h / d));
    // by hand: 0.9 m, 0.3 m
    expect(1 + 0.9 / 0.3).toBe(4);
  });

  test('the mat never pulls and never holds beyond friction; muscles stay within strength', () => {
    for (let k = 0; k < run.n; k++) {
      expect(run.fy[k]).toBeGreaterThanOrEqual(0);
      expect(Math.abs(run.fx[k])).toBeLessThanOrEqual(mat.friction * run.fy[k] + 1e-9);
    }
    /** N m of a passive stop that is not yet counted as one: 0.02 rad into it */
    const STOP = 0.03 * 20 * body.mass;
    for (const [j, { strength, angles }] of entry.chain.joints.entries())
      for (let k = 0; k < run.n; k++) {
        if (run.stopped[k]) continue;
        const torque = run.torque[j][k];
        const { still, plateau } = strength[torque > 0 ? 0 : 1];
        expect(Math.abs(torque)).toBeLessThanOrEqual(angles.length * still * plateau * (1 + 1e-12) + STOP);
      }
  });

  test('a joint gives what is known of it at its best angle, stretched the stated factor of that', () => {
    /** of the largest on a grid of 0.01 rad */
    const GRID = 1e-4;
    for (const joint of entry.chain.joints)
      for (const qd of [0, 3, -3, 9, -9, 30])
        for (const towards of [1, -1] as const) {
          const known = joint.angles.reduce((sum, angle) => {
            const curve = strengthCurve(body, angle, towards);
            let most = 0;
            for (let q = -1; q < 3.5; q += 0.01) most = Math.max(most, curve?.torque(q, qd) ?? Number.NaN);
            return sum + most;
          }, 0);
          const give = (eccentric: number): number => jointStrength(joint, qd, towards > 0, eccentric);
          expect(give(1)).toBeGreaterThanOrEqual(known * (1 - 1e-12));
          expect(give(1)).toBeLessThanOrEqual(known * (1 + GRID));
          expect(give(1.4)).toBeCloseTo(towards * qd < 0 ? 1.4 * give(1) : give(1), 9);
          const action = new JointAction(joint, { ...DEFAULT_ACTION, effort: 0.5, strength: 1.2 }, body, 0.5);
          expect(action.torque(1, 0.5, qd, 1, 1e5 * towards) * towards).toBeCloseTo(0.6 * give(1), 9);
        }
  });
});

describe('plausible', () => {
  test('common practice, no source: 6.8 m/s in 1/8 s is 54.4 m/s2, about 5.5 g; legs fitted to drops take longer', () => {
    expect(6.8 / 0.125).toBeCloseTo(54.4, 9);
    expect(54.4 / G).toBeCloseTo(5.5, 1);
    const { report } = landed(makeDropEntry(bodyOf('ilse-marrow'), FIRM.drop), FIRM);
    expect(report.meanDeceleration).toBeLessThan(54.4);
    expect(report.filteredPeak.force).toBeLessThan(report.peak.force);
  });

  test('bent knees and a soft layer lower the peak; turning the knob keeps soles and trunk', () => {
    const body = bodyOf('ilse-marrow');
    const start = makeDropEntry(body, { speed: 5.5, knee: 0.7 });
    const spec = { mat: MATS.competitionMat, action: DEFAULT_ACTION, duration: 0.1 };
    const peaks = [0.3, 0.6, 0.9, 1.2].map((knee) => landed(withKnee(start, knee), spec).report.peak.force);
    expect([...peaks].sort((a, b) => b - a)).toEqual(peaks);
    const soft = landed(start, { ...spec, mat: MATS.withSoftLayer }).report.peak.force;
    const hard = landed(start, { ...spec, mat: MATS.floor }).report.peak.force;
    const usual = landed(start, spec).report.peak.force;
    expect(soft).toBeLessThan(usual);
    expect(usual).toBeLessThan(hard);
    const bent = withKnee(start, 1.1);
    const sum = (e: LandingEntry): number => {
      const q = (name: string): number => e.q[e.chain.joints.findIndex((j) => j.name === name)];
      return q('hip') - q('knee') - q('ankle');
    };
    expect(sum(bent)).toBeCloseTo(sum(start), 12);
    expect(bent.theta).toBe(start.theta);
  });
});

describe('the step, by measured convergence', () => {
  /** Error at the chosen step against one of an eighth, as docs/numerics.md says it; measured (firm, sliding) in the comments. */
  const STATED = {
    peak: 0.005, // 0.04 %, 0.03 %
    filteredPeak: 0.005, // 0.01 %, 0.03 %
    brakeTime: 0.005, // 0.18 %, 0.14 %
    meanDeceleration: 0.005, // 0.18 %, 0.14 %
    sinkage: 0.005, // 0.04 %, 0.02 %
    screen: 0.002, // m: 1.2 mm, 0.2 mm
    ending: 0.01, // s: 4 ms, 1 ms
  } as const;
  for (const [name, entry] of [
    ['firm', makeDropEntry(bodyOf('ilse-marrow'), FIRM.drop)],
    [
      'moving back and turning',
      makeDropEntry(bodyOf('tobias-fenn'), { speed: 4, knee: 0.5, vx: -0.3, h: 6, lean: 0.06 }),
    ],
  ] as const)
    test(`${name}: every reported quantity within its stated error`, () => {
      const at = (step: number): LandingReport =>
        landed(entry, { mat: MATS.competitionMat, action: DEFAULT_ACTION, step }).report;
      const [coarse, fine] = [at(STEP), at(STEP / 8)];
      const off = (f: (r: LandingReport) => number): number => Math.abs(f(coarse) / f(fine) - 1);
      expect(off((r) => r.peak.force)).toBeLessThan(STATED.peak);
      expect(off((r) => r.filteredPeak.force)).toBeLessThan(STATED.filteredPeak);
      expect(off((r) => r.brakeTime ?? Number.NaN)).toBeLessThan(STATED.brakeTime);
      expect(off((r) => r.meanDeceleration)).toBeLessThan(STATED.meanDeceleration);
      expect(off((r) => r.sinkage)).toBeLessThan(STATED.sinkage);
      expect(Math.abs(coarse.screen.stopped - fine.screen.stopped)).toBeLessThan(STATED.screen);
      expect(Math.abs(coarse.ending.t - fine.ending.t)).toBeLessThan(STATED.ending);
      expect(coarse.ending.kind).toBe(fine.ending.kind);
    });
});

test('numbers that no landing has are refused by name', () => {
  const entry = makeDropEntry(bodyOf('ilse-marrow'), { speed: 5, knee: 0.7 });
  const spec = { mat: MATS.floor, action: DEFAULT_ACTION };
  expect(() => runLanding(entry, { ...spec, mat: { ...MATS.floor, stiffness: 0 } })).toThrow(
    /arrival\.mat\.stiffnessKNPerM/,
  );
  expect(() => runLanding(entry, { ...spec, action: { ...DEFAULT_ACTION, eccentric: 3 } })).toThrow(
    /arrival\.eccentricFactor/,
  );
  expect(() => makeDropEntry(bodyOf('ilse-marrow'), { speed: -1, knee: 0.7 })).toThrow(/drop\.speedMPerS/);
});
