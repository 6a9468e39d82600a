/** What a recording with known noise gives back of a flight that is known: errors of the model's test, what is found of noise that repeats, and how often the stated intervals hold. */
import { fitTakeoffSteps } from '../../sim/fit/fit-takeoff.ts';
import { testModel } from '../../sim/fit/model-test.ts';
import { DEG, RAD, REV } from '../../sim/math/angles.ts';
import { isNoiseCorrelated } from '../../sim/recording/noise-colour.ts';
import { recorded } from '../fit/recorded.ts';
import { angleIndex, flightOf, normals, poseFlight } from '../recording/posed-flight.ts';

const SKILLS = ['back-straight-full', 'double-back-tuck', 'trampoline-full', 'trampoline-barani'];
const MILLIMETRES = [1, 3, 10];
const RATE = 120;
const SEEDS = 8;
const FITTED_SEEDS = 4;

/** Markers some 0.15 m from the middle of their segment, on either side: their noise of so many mm turns it by so many rad. */
const angleOf = (mm: number): number => (mm / 1000 / 0.15) * Math.SQRT1_2;
const nameOf = (id: string): string => id.replaceAll('-', ' ');
const rms = (all: readonly number[]): number => Math.sqrt(all.reduce((sum, v) => sum + v * v, 0) / all.length);

/** Root mean square over seeds of the test's error at the end, from the measured start. */
export function errorRow(id: string, mm: number): string {
  const tries = Array.from({ length: SEEDS }, (_, seed) => {
    const { flight, motion, start } = recorded(
      id,
      RATE,
      { kind: 'gcv' },
      { seed, angle: angleOf(mm), place: mm / 1000 },
    );
    const size = Math.hypot(...flight.h_Scm_W);
    const off = Math.hypot(...start.h_Scm_W.map((v, k) => v - flight.h_Scm_W[k]));
    return [...testModel(motion, start).test.atEnd, off / size];
  });
  const [s, k, w, h] = [0, 1, 2, 3].map((i) => rms(tries.map((t) => t[i])));
  const cells = [(s / REV).toFixed(3), (k * DEG).toFixed(1), (w / REV).toFixed(3), (100 * h).toFixed(1)];
  return `| ${nameOf(id)} | ${mm} | ${(angleOf(mm) * DEG).toFixed(1)} | ${cells.join(' | ')} |`;
}

/** The same from the fitted start: worst over the flight, root mean square over seeds. */
function fittedRow(id: string, mm: number): string {
  const tries = Array.from({ length: FITTED_SEEDS }, (_, seed) => {
    const noise = { seed, angle: angleOf(mm), place: mm / 1000 };
    const { flight, motion, start } = recorded(id, RATE, { kind: 'gcv' }, noise);
    const [fit] = finish(fitTakeoffSteps([{ motion, start }], { draws: 0 }));
    const off = Math.hypot(...fit.start.h_Scm_W.map((v, k) => v - flight.h_Scm_W[k]));
    return [...fit.test.worst, off / Math.hypot(...flight.h_Scm_W)];
  });
  const [s, k, w, h] = [0, 1, 2, 3].map((i) => rms(tries.map((t) => t[i])));
  const cells = [(s / REV).toFixed(3), (k * DEG).toFixed(1), (w / REV).toFixed(3), (100 * h).toFixed(1)];
  return `| ${nameOf(id)} | ${mm} | ${(angleOf(mm) * DEG).toFixed(1)} | ${cells.join(' | ')} |`;
}

export const fittedTable = (): string =>
  [
    '| skill | noise of a coordinate, mm | of an angle, deg | somersault, rev | tilt, deg | twist, rev | momentum, % |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...SKILLS.flatMap((id) => MILLIMETRES.map((mm) => fittedRow(id, mm))),
  ].join('\n');

function finish<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

export const errorTable = (): string =>
  [
    '| skill | noise of a coordinate, mm | of an angle, deg | somersault, rev | tilt, deg | twist, rev | momentum, % |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...SKILLS.flatMap((id) => MILLIMETRES.map((mm) => errorRow(id, mm))),
  ].join('\n');

/** Share of series that are said to have noise that repeats, where none does and where .9 of it does. */
export function noiseTable(): string {
  const rows = [60, 100, 120, 240, 500].map((rateHz) => {
    const shares = [
      [0.3, 0],
      [1, 0],
      [1, 0.7],
      [1, 0.9],
    ].map(([deg, repeat]) => {
      let said = 0;
      let all = 0;
      for (const id of SKILLS) {
        const posed = poseFlight(flightOf(id), rateHz);
        const na = posed.body.angles.length;
        for (const [k, name] of ['hipFlexionL', 'kneeFlexionL', 'shoulderElevationL', 'elbowFlexionR'].entries()) {
          const a = angleIndex(posed.body, name);
          for (let seed = 0; seed < 10; seed++) {
            const noise = normals(seed, k, posed.n, repeat);
            const y = Float64Array.from(noise, (x, i) => posed.angles[na * i + a] + x * deg * RAD);
            all++;
            if (isNoiseCorrelated(y, rateHz)) said++;
          }
        }
      }
      return `${Math.round((100 * said) / all)} %`;
    });
    return `| ${rateHz} | ${shares.join(' | ')} |`;
  });
  return [
    '| rate, Hz | 0.3° of single samples | 1° of single samples | 1°, .7 of it in the next sample | 1°, .9 of it |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

const ASKED = ['momentumX', 'momentumY', 'momentumZ', 'somersault', 'tilt', 'twist', 'along', 'up'] as const;

/** How many of `seeds` tries have the truth inside the stated 95 % interval. */
function coverageRow(id: string, seeds: number): string {
  const inside = new Map<string, number>(ASKED.map((name) => [name, 0]));
  for (let seed = 0; seed < seeds; seed++) {
    const noise = { seed, angle: RAD, place: 0.003 };
    const { flight, motion, start } = recorded(id, 100, { kind: 'gcv' }, noise);
    const truth = recorded(id, 100, { kind: 'none' }).start;
    const [fit] = finish(fitTakeoffSteps([{ motion, start }]));
    const [h, v, a] = [flight.h_Scm_W, flight.v_WScm_W0, truth.attitude.map((x) => x * DEG)];
    const wanted = [...h, ...a, v[0], v[1]];
    ASKED.forEach((name, i) => {
      const found = fit.values.find((one) => one.name === name);
      if (found && Math.abs(found.to - wanted[i]) <= found.plusMinus) inside.set(name, (inside.get(name) ?? 0) + 1);
    });
  }
  const shares = ASKED.map((name) => `${((100 * (inside.get(name) ?? 0)) / seeds).toFixed(0)} %`);
  return `| ${nameOf(id)} | ${seeds} | ${shares.join(' | ')} |`;
}

export const coverageTable = (): string =>
  [
    '| skill | tries | momentum X | Y | Z | somersault | tilt | twist | speed along | up |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    coverageRow('double-back-tuck', 200),
    coverageRow('back-straight-full', 200),
  ].join('\n');
