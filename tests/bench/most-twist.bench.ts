/**
 * The searches behind docs/solve.md, "The most twist": plans of blocks whose times, angles and momentum move until the
 * wanted twist is met or the nearest miss is found. Minutes, not a test: npm run bench -- most-twist
 */
import { bench, describe } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import type { FileBlock, LimitsAsked, SkillFile, SkillSpec, Unknown } from '../../sim/index.ts';
import { flightIn } from '../files/parts.ts';
import { former } from '../former/index.ts';
import { loadBuiltSim } from './built-sim.ts';

const sim = await loadBuiltSim();
const DEG = Math.PI / 180;
const shelf = { athletes, shapes };
/** from and to, in seconds, degrees or kg m^2/s */
type Spans = Readonly<Record<string, readonly [number, number]>>;
type Block = FileBlock;

const at = (s: number) => ({ anchor: 'takeoff' as const, s });
const arms = (R: number, L: number) => ({ shoulderElevationR: R, shoulderElevationL: L });
const hold = (shape: string, from: number, to: number, path: Block['arms'], adjustDeg: Block['adjustDeg']): Block => ({
  shape,
  from: at(from),
  to: at(to),
  arms: path,
  adjustDeg,
});

/** A straight skill off a trampoline bed: speed up, m/s; momentum about the lateral axis, kg m^2/s. */
const straight = (up: number, h: number, blocks: Block[]): SkillFile => ({
  ...former['back-straight-triple'],
  phases: [
    {
      ...flightIn(former['back-straight-triple']),
      takeoff: {
        lowestPointHeightM: 1.15,
        velocityMPerS: { along: -0.3, up },
        momentum: { vectorKgM2PerS: [0, 0, h] },
      },
      schedule: { base: 'straight', blocks },
    },
  ],
});
const landing = (from: number, adjustDeg: Block['adjustDeg'] = {}): Block => ({
  ...hold('landing', from, 0, 'side', {
    ...adjustDeg,
    shoulderElevation: 80,
    shoulderPlane: 0,
    hipFlexion: 20,
    kneeFlexion: 20,
    anklePlantarFlexion: 0,
    lumbarFlexion: 0,
  }),
  to: { anchor: 'touchdown', s: 0 },
});

/** Arms apart, over, wrapped (or down at the sides: planar), open, level; T is 2.09 s. `apart`: how far they are at take-off, deg. */
function straightPlan(apart: number, isPlanar: boolean): SkillFile {
  const [T, d] = [2.1, 0.2 + (apart / 90) * 0.14];
  return straight(10.2, 33, [
    hold('tShape', -0.2, 0, 'side', arms(90 - apart, 90 + apart)),
    hold('tShape', d, d + 0.02, 'side', arms(177, 3)),
    isPlanar
      ? hold('tShape', d + 0.42, T - 0.62, 'side', arms(3, 3))
      : hold('wrapped', d + 0.42, T - 0.62, 'direct', {}),
    hold('tShape', T - 0.24, T - 0.23, isPlanar ? 'side' : 'direct', arms(177, 3)),
    landing(T - 0.02),
  ]);
}

const straightSpans: Spans = {
  'takeoff.h.z': [25, 60],
  'block:2.start': [0.17, 0.5],
  'block:2.end': [0.2, 0.6],
  'block:3.start': [0.54, 1],
  'block:3.end': [1.05, 1.6],
  'block:4.start': [1.45, 1.9],
  'block:4.end': [1.6, 1.93],
  'block:5.start': [1.98, 2.095],
  'block:1.angle:shoulderElevationR': [10, 100],
  'block:1.angle:shoulderElevationL': [80, 177],
  'block:4.angle:shoulderElevationR': [90, 179],
  'block:4.angle:shoulderElevationL': [1, 90],
  'block:5.angle:shoulderElevationR': [30, 110],
  'block:5.angle:shoulderElevationL': [60, 160],
};
const freeSpans: Spans = {
  ...straightSpans,
  'block:2.angle:shoulderPlaneR': [-10, 60],
  'block:2.angle:shoulderPlaneL': [-10, 60],
  'block:4.angle:shoulderPlaneR': [-10, 60],
  'block:4.angle:shoulderPlaneL': [-10, 60],
  'block:2.angle:lumbarSideBend': [-15, 15],
  'block:4.angle:lumbarSideBend': [-15, 15],
};
const doubleSpans: Spans = {
  'takeoff.h.z': [35, 90],
  'block:2.start': [0.24, 0.45],
  'block:2.end': [0.4, 0.75],
  'block:2.angle:hipFlexion': [70, 140],
  'block:3.start': [0.6, 1.05],
  'block:3.end': [0.7, 1.155],
  'block:4.start': [0.85, 1.365],
  'block:4.end': [0.9, 1.4175],
  'block:5.start': [1.1, 1.68],
  'block:5.end': [1.25, 1.785],
  'block:6.start': [1.5, 1.995],
  'block:6.end': [1.55, 1.995],
  'block:7.start': [1.8, 2.0895],
  'block:3.angle:shoulderElevationR': [3, 100],
  'block:3.angle:shoulderElevationL': [80, 177],
  'block:4.angle:shoulderElevationR': [90, 179],
  'block:4.angle:shoulderElevationL': [1, 90],
  'block:6.angle:shoulderElevationR': [90, 179],
  'block:6.angle:shoulderElevationL': [1, 90],
  'block:7.angle:shoulderElevationR': [30, 110],
  'block:7.angle:shoulderElevationL': [60, 160],
};

/** Straight, T is 2.0 s; arms, side bend and hips throw and open. The numbers are those of an answer, found from draws. */
const straightDouble = straight(9.78, 67.785, [
  hold('tShape', -0.2, 0.3, 'side', { ...arms(87.1, 104.8), hipFlexion: -10, lumbarSideBend: -13.1 }),
  hold('tShape', 0.6134, 1.0162, 'side', {
    ...arms(118.4, 102.2),
    shoulderPlaneR: 49.9,
    shoulderPlaneL: -10,
    lumbarSideBend: -6.4,
    thoracicSideBend: -7.5,
    hipFlexion: 23.2,
  }),
  hold('wrapped', 1.2858, 1.3504, 'direct', {}),
  hold('tShape', 1.7096, 1.7249, 'direct', {
    ...arms(175.4, 1),
    shoulderPlaneR: 26.5,
    shoulderPlaneL: 7,
    lumbarSideBend: -16.7,
    thoracicSideBend: -13,
    hipFlexion: -0.8,
  }),
  landing(1.995, arms(65, 128.1)),
]);
const side = (block: number): Spans => ({
  [`block:${block}.angle:shoulderElevationR`]: [60, 179],
  [`block:${block}.angle:shoulderElevationL`]: [1, 120],
  [`block:${block}.angle:shoulderPlaneR`]: [-10, 80],
  [`block:${block}.angle:shoulderPlaneL`]: [-10, 80],
  [`block:${block}.angle:lumbarSideBend`]: [-18, 18],
  [`block:${block}.angle:thoracicSideBend`]: [-13, 13],
  [`block:${block}.angle:hipFlexion`]: [-12, 40],
});
const straightDoubleSpans: Spans = {
  'takeoff.h.z': [50, 105],
  'block:1.end': [0.3, 0.95],
  'block:2.start': [0.6, 1.15],
  'block:2.end': [0.62, 1.2],
  'block:3.start': [0.9, 1.4],
  'block:3.end': [1.3, 1.75],
  'block:4.start': [1.5, 1.9],
  'block:4.end': [1.55, 1.92],
  'block:5.start': [1.8, 1.995],
  'block:1.angle:shoulderElevationR': [3, 177],
  'block:1.angle:shoulderElevationL': [3, 177],
  'block:1.angle:hipFlexion': [-10, 60],
  'block:1.angle:lumbarSideBend': [-15, 15],
  'block:5.angle:shoulderElevationR': [20, 120],
  'block:5.angle:shoulderElevationL': [40, 170],
  ...side(2),
  ...side(4),
};

/** Where a fit comes near three twists, at any joint speed; units as in the spans. */
const nearThree: Readonly<Record<string, number>> = {
  'takeoff.h.z': 65.9131,
  'block:1.end': 0.5256,
  'block:2.start': 1.1153,
  'block:2.end': 1.1238,
  'block:3.start': 1.1239,
  'block:3.end': 1.75,
  'block:4.start': 1.8989,
  'block:4.end': 1.92,
  'block:5.start': 1.995,
  'block:1.angle:shoulderElevationR': 85.57,
  'block:1.angle:shoulderElevationL': 102.45,
  'block:1.angle:hipFlexion': -10,
  'block:1.angle:lumbarSideBend': -15,
  'block:5.angle:shoulderElevationR': 30.93,
  'block:5.angle:shoulderElevationL': 170,
  'block:2.angle:shoulderElevationR': 117.35,
  'block:2.angle:shoulderElevationL': 75.82,
  'block:2.angle:shoulderPlaneR': 33.84,
  'block:2.angle:shoulderPlaneL': -5.99,
  'block:2.angle:lumbarSideBend': -17.92,
  'block:2.angle:thoracicSideBend': -13,
  'block:2.angle:hipFlexion': -4.12,
  'block:4.angle:shoulderElevationR': 97.63,
  'block:4.angle:shoulderElevationL': 1,
  'block:4.angle:shoulderPlaneR': 75.37,
  'block:4.angle:shoulderPlaneL': -3.23,
  'block:4.angle:lumbarSideBend': -14.07,
  'block:4.angle:thoracicSideBend': -13,
  'block:4.angle:hipFlexion': 5.14,
};

const unitOf = (id: string): number => (id.includes('angle:') ? DEG : 1);
const unknownsOf = (spec: SkillSpec, spans: Spans): Unknown[] =>
  Object.entries(spans).map(([id, [a, b]]) => {
    const by = unitOf(id);
    return sim.makeUnknown(spec, id, [a * by, b * by]);
  });

function tell(
  name: string,
  file: SkillFile,
  somersaults: number,
  twists: number,
  spans: Spans,
  limits: LimitsAsked,
  after?: number,
  start: Readonly<Record<string, number>> = {},
): void {
  const written = sim.parseSkill(file, shelf);
  const from = Object.entries(start);
  const spec = sim.putInputs(
    written,
    from.map(([id]) => sim.findInput(written, id)),
    from.map(([id, x]) => x * unitOf(id)),
  );
  const aim = sim.aimAt(spec, {
    somersaults,
    twists,
    direction: 'backward',
    twistTo: 'left',
    within: { landing: 4 * DEG, tilt: 2 * DEG, ...(after === undefined ? {} : { twistsAfter: after }) },
    ...(somersaults > 1 ? { twistsAfter: [0] } : {}),
  });
  const answer = sim.solve({ ...aim, unknowns: unknownsOf(aim.spec, spans), limits, answers: 1, fits: 1 });
  const best = answer.solutions[0] ?? answer.nearest;
  const of = (id: string): number => best?.terms.find((t) => t.wish.result === id)?.value ?? Number.NaN;
  console.log(
    `${name}, ${twists} wanted: ${answer.solutions.length > 0 ? 'met' : 'nearest'}; twists ${of('twists').toFixed(3)}, tilt ${(of('tilt') / DEG).toFixed(1)} deg, short ${(of('short') / DEG).toFixed(1)} deg, speed ${Math.round(100 * (best?.cost.speed?.share ?? 0))} %, torque ${Math.round(100 * (best?.cost.torque?.share ?? 0))} %, ${answer.flights} flights`,
  );
}

const SPEEDS = { range: true, speed: true, torque: false };
const RANGES = { range: true, speed: false, torque: false };
const double = former['double-back-pike-full-out'];

describe('the most twist', () => {
  bench(
    'searched once',
    () => {
      for (const twists of [1, 2]) tell('planar arms', straightPlan(10, true), 1, twists, straightSpans, SPEEDS);
      tell('wrapped', straightPlan(30, false), 1, 3, straightSpans, SPEEDS);
      tell('wrapped, side bend, planes', straightPlan(30, false), 1, 3, freeSpans, SPEEDS);
      tell('wrapped', straightPlan(60, false), 1, 4, straightSpans, SPEEDS);
      tell('wrapped, side bend, planes', straightPlan(60, false), 1, 4, freeSpans, SPEEDS);
      tell('second somersault, straight', straightDouble, 2, 2, straightDoubleSpans, SPEEDS, 0.1);
      tell('second somersault, straight', straightDouble, 2, 3, straightDoubleSpans, SPEEDS, 0.2);
      tell('second somersault, straight, any speed', straightDouble, 2, 3, straightDoubleSpans, RANGES, 0.2, nearThree);
      tell('second somersault', double, 2, 2, doubleSpans, SPEEDS);
      tell('second somersault, any speed', double, 2, 2, doubleSpans, RANGES);
      tell('second somersault, any speed', double, 2, 3, doubleSpans, RANGES);
    },
    { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 },
  );
});
