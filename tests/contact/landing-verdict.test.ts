// The verdict against an inverted pendulum that is let fall, and its words in order.
import { describe, expect, test } from 'vitest';
import { elasticEnergy, elasticForce, MATS, matForce } from '../../sim/contact/mat.ts';
import { calcVerdict, calcXcom, correctableExcess, STEP_SHARE, STEP_TIME } from '../../sim/contact/verdict.ts';

const G = 9.81;

/** x'' = (g / l) (x - u), u the foot: Runge-Kutta of order 4 over t. */
function fall(x0: number, v0: number, u: number, l: number, t: number): [number, number] {
  let [x, v] = [x0, v0];
  const n = 4000;
  const h = t / n;
  const a = (y: number): number => (G / l) * (y - u);
  for (let i = 0; i < n; i++) {
    const [k1, j1] = [v, a(x)];
    const [k2, j2] = [v + (h / 2) * j1, a(x + (h / 2) * k1)];
    const [k3, j3] = [v + (h / 2) * j2, a(x + (h / 2) * k2)];
    const [k4, j4] = [v + h * j3, a(x + h * k3)];
    x += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    v += (h / 6) * (j1 + 2 * j2 + 2 * j3 + j4);
  }
  return [x, v];
}

describe('the extrapolated mass centre (Hof, Gazendam & Sinke 2005, J Biomech 38:1)', () => {
  test('a pendulum whose foot is exactly under it comes to rest over the foot; nearer it turns back, further it falls', () => {
    const [x, v, l] = [-0.1, 0.5, 0.8];
    const xcom = calcXcom(x, v, l, G);
    const [rest, still] = fall(x, v, xcom, l, 1.5);
    expect(Math.abs(rest - xcom)).toBeLessThan(3e-3);
    expect(Math.abs(still)).toBeLessThan(0.02);
    expect(fall(x, v, xcom + 0.02, l, 1.5)[1]).toBeLessThan(0);
    expect(fall(x, v, xcom - 0.02, l, 1.5)[0]).toBeGreaterThan(xcom);
  });

  test('it runs from the edge of the base as exp(w t): what a step of stated length and time just corrects', () => {
    const [l, stature] = [0.8, 1.65];
    const excess = correctableExcess(l, G, stature);
    const edge = 0.1;
    const [x, v] = fall(edge, excess * Math.sqrt(G / l), edge, l, STEP_TIME);
    expect(calcXcom(x, v, l, G) - edge).toBeCloseTo(STEP_SHARE * stature, 6);
  });
});

describe('verdicts', () => {
  const state = { x: 0, height: 0.8, vx: 0, heel: -0.1, toe: 0.12, gravity: G, stature: 1.65 };
  test.each([
    ['stuck', {}, 'overBase'],
    ['stuck', { vx: 0.38 }, 'overBase'],
    ['stepForward', { vx: 0.5 }, 'beyondToes'],
    ['stepBack', { x: -0.2 }, 'behindHeels'],
    ['fall', { vx: 2.5 }, 'beyondToes'],
    ['fall', { vx: -2.5 }, 'behindHeels'],
    ['fall', { height: 0.3 }, 'low'],
  ] as const)('%s: %j because %s', (kind, change, reason) => {
    const v = calcVerdict({ ...state, ...change });
    expect(v.kind).toBe(kind);
    expect(v.reasons.map((r) => r.kind)).toContain(reason);
  });

  test('hands on the mat are a fall, wherever the mass centre is', () => {
    const v = calcVerdict(state, { part: 'hands', t: 0.2 });
    expect(v.kind).toBe('fall');
    expect(v.reasons[0]).toEqual({ kind: 'part', part: 'hands', t: 0.2 });
  });

  test('who still sinks when it ends has not landed', () => {
    const v = calcVerdict(state, undefined, false);
    expect(v.kind).toBe('fall');
    expect(v.reasons[0]).toEqual({ kind: 'notBraked' });
  });

  test('backward is forward mirrored', () => {
    const ahead = calcVerdict({ ...state, x: 0.05, vx: 0.6 });
    const back = calcVerdict({ ...state, x: -0.05, vx: -0.6, heel: -state.toe, toe: -state.heel });
    expect(back.xcom).toBeCloseTo(-ahead.xcom, 12);
    expect(back.margin).toBeCloseTo(ahead.margin, 12);
    expect([ahead.kind, back.kind]).toEqual(['stepForward', 'stepBack']);
  });
});

describe('mats', () => {
  test('the stored energy is the work of the elastic force, past the bend too', () => {
    for (const mat of Object.values(MATS)) {
      const d = 0.95 * mat.thickness;
      const n = 20000;
      let work = 0;
      for (let i = 0; i < n; i++) work += (elasticForce(mat, 0.7, ((i + 0.5) * d) / n) * d) / n;
      expect(Math.abs(elasticEnergy(mat, 0.7, d) / work - 1)).toBeLessThan(1e-6);
    }
  });

  test('no force above the surface, more when sinking, less when rising, never a pull', () => {
    const mat = MATS.competitionMat;
    expect(matForce(mat, 1, -0.01, 3)).toBe(0);
    const still = matForce(mat, 1, 0.05, 0);
    expect(still).toBeCloseTo(60_000 * 0.05, 9);
    expect(matForce(mat, 1, 0.05, 3)).toBeGreaterThan(still);
    expect(matForce(mat, 1, 0.05, -1)).toBeLessThan(still);
    expect(matForce(mat, 1, 0.05, -10)).toBe(0);
  });

  test('20 kg dropped from 0.8 m on half of the competition mat does what its source says: 0.08 m down, 0.16 m back', () => {
    const mat = MATS.competitionMat;
    let [y, v] = [0, -Math.sqrt(2 * G * 0.8)];
    let deepest = 0;
    const dt = 1e-5;
    do {
      v += (matForce(mat, 0.5, -y, -v) / 20 - G) * dt;
      y += v * dt;
      deepest = Math.max(deepest, -y);
    } while (y < 0);
    expect(deepest).toBeCloseTo(0.078, 3);
    expect((v * v) / (2 * G)).toBeCloseTo(0.159, 3);
    expect(mat.damping).toBeGreaterThan(0);
  });
});
