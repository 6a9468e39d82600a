// A ready skill before a camera.

import { type FilmCamera, USUAL_CAMERA } from '../../sim/filming/camera.ts';
import { type FilmedFlight, type FilmingPlan, filmFlight, planFilming } from '../../sim/filming/plan.ts';
import { type Flight, flySkill } from '../../sim/index.ts';
import { flightIn } from '../files/parts.ts';
import { fileOf, preset, skillOf } from '../skill/load.ts';

export const DEG = Math.PI / 180;

export function done<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

export const flightOf = (id: string): Flight => flySkill(preset(id));
export const filmedOf = (flight: Flight): FilmedFlight => done(filmFlight(flight));
export const planOf = (from: FilmedFlight, camera: Partial<FilmCamera> = {}): FilmingPlan =>
  done(planFilming(from, { ...USUAL_CAMERA, ...camera }));

/** Standing upright in the air for 1 s, facing +X, arms hanging, its mass centre 3 m up at first. */
export function standing(along = 0): Flight {
  const file = fileOf('back-straight');
  flightIn(file).takeoff = {
    massCentreHeightM: 3,
    velocityMPerS: { along, up: 4.905 },
    attitudeDeg: {},
    momentum: { vectorKgM2PerS: [0, 0, 0] },
  };
  flightIn(file).end = { durationS: 1, surface: { kind: 'mat', heightM: 0 } };
  flightIn(file).schedule = { base: 'straight', keys: [] };
  return flySkill(skillOf(file));
}
