/** F1 and F2 through the engine: the mass centre on its parabola, and touchdown as an event. Sources: reference.ts. */
import { describe, expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { type Body, calcFrames, type Flight, flySchedule } from '../../sim/index.ts';
import { fall, levelFlight } from '../oracles/projectile.ts';
import * as R from '../oracles/reference.ts';
import { part, stopKeys } from './flown.ts';

const PRINTED = 5e-4; // m and m/s: the numbers are printed to the millimetre
const SECONDS = 1e-6; // F2: measured 1e-7, the rounding of the printed number
const EXACT = 1e-9; // against the formula: measured 4e-13
const G = 9.81;

/** A ball: it touches when its centre is `radius` above the surface, however it turns. */
const ball = (radius: number): Body =>
  makeTree({
    name: 'ball',
    segments: [
      part('ball', 60, [1, 1, 1, 0, 0, 0], { contacts: [{ name: 'skin', part: 'skin', point: [0, 0, 0], radius }] }),
    ],
  });

function drop(radius: number, y0: number, up: number, surfaceY: number): Flight {
  const body = ball(radius);
  return flySchedule(
    body,
    stopKeys(body, {}),
    {
      height: { of: 'massCentre', y: y0 },
      v_WScm_W: [1.5, up, -0.2],
      somersault: 0.3,
      tilt: 0.1,
      twist: 0,
      momentum: { kind: 'vector', h_Scm_W: [0.5, 1, 6] },
    },
    { kind: 'touchdown', surface: { kind: 'floor', y: surfaceY } },
    G,
  );
}

const near = (what: string, value: number, wanted: number, tolerance: number): void =>
  expect(Math.abs(value - wanted), `${what}: ${value} against ${wanted}`).toBeLessThanOrEqual(tolerance);

describe('the mass centre in flight', () => {
  it('F1: level flight takes g T / 2 to start and rises g T^2 / 8', () => {
    for (const row of R.LEVEL) {
      const { speed } = levelFlight(row.T, G);
      near('speed', speed, row.speed, PRINTED);
      const flight = drop(1, 1, speed, 0);
      near('time', flight.duration, row.T, EXACT);
      near('apex time', flight.apex, row.T / 2, EXACT);
      const f = calcFrames(flight, [0, flight.apex, flight.duration]);
      near('rise', f.p_WScm_W[4] - 1, row.rise, PRINTED);
      near('speed down', f.v_WScm_W[7], -speed, EXACT);
      near('along', f.p_WScm_W[6], 1.5 * row.T, EXACT);
      near('across', f.p_WScm_W[8], -0.2 * row.T, EXACT);
    }
  });

  it('F2: a release from 3.7 m comes down to 1.0 m', () => {
    const { y0, v, y1, time, apex, arrival } = R.RELEASE;
    const flight = drop(y1 - 0.2, y0, v, 0.2); // on a 0.20 m mat
    near('time', flight.duration, time, SECONDS);
    near('time by the formula', flight.duration, fall(y0, v, y1, G).time, EXACT);
    const f = calcFrames(flight, [0, flight.apex, flight.duration]);
    near('apex', f.p_WScm_W[4], apex, PRINTED);
    near('arrival', Math.abs(f.v_WScm_W[7]), arrival, PRINTED);
    near('energy', f.ePotential[2] + f.eRising[2] - f.ePotential[0] - f.eRising[0], 0, EXACT * f.eTotal[0]);
    expect(flight.touchdown?.part).toBe('skin');
  });

  it('zero gravity: the mass centre keeps its line, and there is no apex', () => {
    const body = ball(0.5);
    const takeoff = {
      height: { of: 'massCentre', y: 3 },
      v_WScm_W: [0, -1, 0],
      somersault: 0,
      tilt: 0,
      twist: 0,
      momentum: { kind: 'vector', h_Scm_W: [0, 0, 1] },
    } as const;
    const flight = flySchedule(
      body,
      stopKeys(body, {}),
      takeoff,
      { kind: 'touchdown', surface: { kind: 'other', y: 0 } },
      0,
    );
    near('time', flight.duration, 2.5, EXACT);
    expect(flight.apex).toBeNaN();
  });
});
