/** The oracles on their own: each against the stated number and against a second route that shares no formula with it. */
import { describe, expect, it } from 'vitest';
import { throwParts, throwShape } from './arm-throw.ts';
import { carry, type Shape } from './euler-parameters.ts';
import { turningOver } from './falling-cat.ts';
import {
  angularVelocity,
  criticalTilt,
  growthOverRate,
  type Moments,
  phaseOfTwist,
  symmetricTop,
  tiltFor,
  twistTimeByPanels,
  twoShapeDive,
  wholeTwist,
  wobble,
} from './free-body.ts';
import { turnOfFirst } from './hinged-pair.ts';
import { ellipticK, jacobi } from './jacobi.ts';
import { cosine, type Jet, plus, scaled, sine, variable } from './jet.ts';
import { corners, loop } from './pentagon.ts';
import { type Part, turnAtRest } from './planar.ts';
import { fall, levelFlight } from './projectile.ts';
import * as R from './reference.ts';

const rad = Math.PI / 180;
const turn = 2 * Math.PI;
const near = (value: number, wanted: number, tolerance: number): void =>
  expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(tolerance);
const rigid = (m: Moments): (() => Shape) => {
  const shape: Shape = { I: [m.B, m.C, m.A], Iyz: 0, hrel: [0, 0, 0] };
  return () => shape;
};

describe('elliptic functions', () => {
  it('match tabulated values: K(0.5), and sn, cn, dn at half the quarter period by their closed form', () => {
    near(ellipticK(0.5), 1.8540746773013719, 1e-15); // A&S table 17.1
    const m = 0.7;
    const k1 = Math.sqrt(1 - m);
    const { sn, cn, dn } = jacobi(ellipticK(m) / 2, m); // A&S 16.5.2
    near(sn, 1 / Math.sqrt(1 + k1), 1e-14);
    near(cn, Math.sqrt(k1 / (1 + k1)), 1e-14);
    near(dn, Math.sqrt(k1), 1e-14);
  });
});

describe('the free body, closed form against Euler parameters', () => {
  it('R1, R2: symmetric top', () => {
    const { It, Il, H, T, rows } = R.SYMMETRIC;
    for (const row of rows) {
      const top = symmetricTop(It, Il, row.tiltDeg * rad, H, T);
      near(top.perSomersault, row.perSomersault, 1e-8);
      near(top.somersaults, row.somersaults, 1e-8);
      near(top.twists, row.twists, 1e-8);
      const end = carry(rigid({ A: It, B: It, C: Il }), [0, row.tiltDeg * rad, 0], [0, 0, H], T, 8000);
      near(end[0] / turn, row.somersaults, 1e-9);
      near(end[2] / turn, row.twists, 1e-9);
    }
  });

  it('R3, R4: twists per somersault and the tilt they need', () => {
    for (const row of R.TWISTS_PER_SOMERSAULT) {
      const one = wholeTwist(R.S1_DOWN, row.tiltDeg * rad);
      near(1 / one.somersaults, row.twists, 1e-6);
      const end = carry(rigid(R.S1_DOWN), [0, row.tiltDeg * rad, 0], [0, 0, 1], one.timeTimesH, 8000);
      near(end[2], turn, 1e-8);
      near(end[0] / turn, one.somersaults, 1e-8);
    }
    for (const row of R.TILT_NEEDED) near(tiltFor(R.S1_DOWN, row.twists) / rad, row.tiltDeg, 1e-4);
  });

  it('R5: the critical tilt divides wobbling from twisting', () => {
    for (const row of R.CRITICAL_TILT) {
      const tilt = criticalTilt(row.moments);
      near(tilt / rad, row.tiltDeg, 1e-4);
      for (const [d, twisting] of [
        [0.05, true],
        [-0.05, false],
      ] as const) {
        const end = carry(rigid(row.moments), [0, tilt + d * rad, turn / 4], [0, 0, 50], 12, 6000);
        expect(Math.abs(end[2] - turn / 4) > turn).toBe(twisting);
      }
    }
  });

  it('R6: width and length of the wobble', () => {
    const w = wobble(R.S1_OVERHEAD, R.WOBBLE.tiltDeg * rad);
    near(w.halfWidth / rad, R.WOBBLE.halfWidthDeg, 1e-4);
    near(w.somersaults, R.WOBBLE.somersaults, 1e-6);
  });

  it('R7: growth of a disturbed layout', () => {
    for (const row of R.GROWTH) near(growthOverRate(row.moments), row.ratio, 5e-6);
  });

  it('R8: period and angular velocity by elliptic functions', () => {
    const free = angularVelocity(R.TUMBLER.I, R.TUMBLER.w0);
    near(free.period, R.TUMBLER.period, 1e-9);
    free.at(1).forEach((w, i) => {
      near(w, R.TUMBLER.w[i], 1e-8);
    });
    free.at(free.period).forEach((w, i) => {
      near(w, R.TUMBLER.w0[i], 1e-12);
    });
  });

  it('R9: the phase of a whole twist equals the somersault by quadrature', () => {
    const tilt = R.PHASE.tiltDeg * rad;
    const phase = phaseOfTwist(R.S1_DOWN, tilt, R.PHASE.H);
    near(phase.T, R.PHASE.T, 1e-9);
    near(phase.dynamic, R.PHASE.dynamic, 1e-9);
    near(phase.solidAngle, R.PHASE.solidAngle, 1e-9);
    near(phase.dynamic - phase.solidAngle, R.PHASE.somersault, 1e-9);
    near(wholeTwist(R.S1_DOWN, tilt).somersaults * turn, R.PHASE.somersault, 1e-9);
    near(twistTimeByPanels(R.S1_DOWN, tilt) / R.PHASE.H, R.PHASE.T, 1e-9);
  });

  it('R10: the times of the two-shape dive', () => {
    const d = twoShapeDive(R.S1_OVERHEAD, R.S1_DOWN, R.DIVE.tiltDeg * rad, R.DIVE.H, R.DIVE.twists, R.DIVE.somersaults);
    near(d.straightTime, R.DIVE.straightTime, 1e-6);
    near(d.twistingTime, R.DIVE.twistingTime, 1e-6);
    const end = carry(rigid(R.S1_DOWN), [0, R.DIVE.tiltDeg * rad, 0], [0, 0, R.DIVE.H], d.twistingTime, 8000);
    near(end[2], 2 * turn, 1e-8);
    near(end[0] / turn + (d.straightTime * R.DIVE.H) / R.S1_OVERHEAD.A / turn, R.DIVE.somersaults, 1e-8);
  });
});

describe('moving limbs at zero angular momentum', () => {
  it('L1: the arm throw by planar quadrature and by Euler parameters', () => {
    near(turnAtRest(throwParts, 0, 1) / rad, R.THROW_TILT_DEG, 1e-6);
    const end = carry(throwShape(0.3), [0, 0, 0], [0, 0, 0], 0.3, 2000);
    near(end[1] / rad, R.THROW_TILT_DEG, 1e-6);
  });

  it('L2: the throw in a somersault, by Euler parameters', () => {
    for (const row of R.THROW_FLIGHT) {
      const end = carry(throwShape(0.3), [0, 0, 0], [0, 0, 50], row.t, 20_000);
      near(end[0] / turn, row.somersaults, 1e-6);
      near(end[1] / rad, row.tiltDeg, 1e-4);
      near(end[2] / turn, row.twists, 1e-6);
    }
  });

  it('L3: two hinged bodies, closed form and planar quadrature', () => {
    for (const { one, two, phiDeg, turnDeg } of R.HINGED) {
      near(turnOfFirst(one, two, phiDeg * rad) / rad, turnDeg, 1e-6);
      const zero: Jet = [0, 0, 0];
      const parts = (phi: number): Part[] => {
        const p = variable(phi);
        return [
          { m: one.m, J: one.J, x: zero, y: [one.d, 0, 0], angle: zero },
          { m: two.m, J: two.J, x: scaled(sine(p), two.d), y: scaled(cosine(p), -two.d), angle: p },
        ];
      };
      near(turnAtRest(parts, 0, phiDeg * rad) / rad, turnDeg, 1e-6);
    }
  });

  it('L4: three rods round a loop of their joints; the mirrored loop turns nothing', () => {
    near(rodLoop(R.THREE_RODS.loopDeg), R.THREE_RODS.turnDeg, 1e-6);
    near(rodLoop(R.THREE_RODS.mirroredDeg), 0, 1e-12);
  });

  it('L5: the pentagon round the edge of its convex shapes', () => {
    let sum = 0;
    for (let k = 0; k < 5; k++) {
      const parts = (s: number): Part[] =>
        corners(loop(k, s)).map(({ x, y }) => ({ m: 1, J: 0, x, y, angle: [0, 0, 0] as const }));
      sum += turnAtRest(parts, 0, 1);
      // closed and equilateral at every s, pieces adjoining
      for (const s of [0, 0.3, 1]) {
        const c = corners(loop(k, s));
        near(Math.hypot(c[4].x[0], c[4].y[0]), 1, 1e-12);
      }
      loop(k, 1).forEach((e, i) => {
        near(e[0], loop((k + 1) % 5, 0)[i][0], 1e-12);
      });
    }
    near(Math.abs(sum) / rad, R.PENTAGON_TURN_DEG, 5e-4);
  });

  it('L6: the falling cat', () => {
    for (const row of R.CAT.rows) near(turningOver(R.CAT.ratio, row.alphaDeg * rad) / rad, row.betaDeg, 1e-4);
  });
});

describe('falling', () => {
  it('F1, F2: level flight and a release', () => {
    for (const row of R.LEVEL) {
      near(levelFlight(row.T, 9.81).speed, row.speed, 5e-4);
      near(levelFlight(row.T, 9.81).rise, row.rise, 5e-4);
    }
    const f = fall(R.RELEASE.y0, R.RELEASE.v, R.RELEASE.y1, 9.81);
    near(f.time, R.RELEASE.time, 1e-6);
    near(f.apex, R.RELEASE.apex, 5e-4);
    near(f.arrival, R.RELEASE.arrival, 5e-4);
  });
});

/** Turn of the middle of three rods (1 kg, 1 m) along straight paths between joint angles, deg. */
function rodLoop(path: readonly (readonly [number, number])[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < path.length; i++) {
    const parts = (s: number): Part[] => {
      const u = variable(s);
      const [a, b] = [0, 1].map((k) => plus([path[i][k] * rad, 0, 0], scaled(u, (path[i + 1][k] - path[i][k]) * rad)));
      const J = 1 / 12;
      return [
        { m: 1, J, x: [0, 0, 0], y: [0, 0, 0], angle: [0, 0, 0] },
        { m: 1, J, x: plus([0.5, 0, 0], scaled(cosine(a), 0.5)), y: scaled(sine(a), 0.5), angle: a },
        { m: 1, J, x: plus([-0.5, 0, 0], scaled(cosine(b), -0.5)), y: scaled(sine(b), -0.5), angle: b },
      ];
    };
    sum += turnAtRest(parts, 0, 1);
  }
  return sum / rad;
}
