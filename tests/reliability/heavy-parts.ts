/** What heavy files are made of. */
import type { Athlete, SkillFile } from '../../sim/index.ts';

export type Flight = Extract<SkillFile['phases'][number], { kind: 'flight' }>;
type Schedule = Flight['schedule'];

const copy = (file: SkillFile): SkillFile => structuredClone(file);

/** The skill with its flights changed. */
export function withFlights(file: SkillFile, title: string, change: (flight: Flight) => Flight): SkillFile {
  return {
    ...copy(file),
    title,
    phases: file.phases.map((phase) => (phase.kind === 'flight' ? change(structuredClone(phase)) : phase)),
  };
}
export const withSchedule = (file: SkillFile, title: string, change: (schedule: Schedule) => Schedule): SkillFile =>
  withFlights(file, title, (flight) => ({ ...flight, schedule: change(flight.schedule) }));

const wave = (i: number, every: number, deg: number): number => round(deg * Math.sin((2 * Math.PI * i) / every));
const round = (x: number): number => Math.round(x * 1000) / 1000;

/** One list of samples for each angle, over a second. */
export const samplesOf = (angles: readonly string[], count: number, seconds: number): Schedule['samples'] =>
  angles.map((angle, a) => ({
    angle,
    startS: 0,
    rateHz: Math.min(10000, count / seconds),
    deg: Array.from({ length: count }, (_, i) => wave(i + 7 * a, count / 3, 20)),
  }));

/** Keys of one angle one after another, every `apart` s. */
export const keysOf = (angles: readonly string[], count: number, seconds: number): Schedule['keys'] => {
  const each = Math.floor(count / angles.length);
  return angles.flatMap((angle, a) =>
    Array.from({ length: each }, (_, i) => ({
      angle,
      at: { anchor: 'takeoff' as const, s: ((i + 0.5) * seconds) / each },
      deg: wave(i + 9 * a, 400, 5),
      kind: 'pass' as const,
    })),
  );
};

export const blocksOf = (count: number, seconds: number): Schedule['blocks'] =>
  Array.from({ length: count }, (_, i) => ({
    shape: i % 2 === 0 ? 'straight' : 'armsOverhead',
    from: { anchor: 'takeoff' as const, s: (i * seconds) / count },
    to: { anchor: 'takeoff' as const, s: ((i + 0.3) * seconds) / count },
  }));

/** Joints that the ready skill's own keys leave alone. */
export const NECK = ['neckFlexion', 'neckSideBend', 'neckTurn'];
export const MANY = [
  ...NECK,
  'thoracicFlexion',
  'thoracicSideBend',
  'thoracicTurn',
  'lumbarFlexion',
  'lumbarSideBend',
  'lumbarTurn',
  'wristFlexion',
  'forearmPronation',
  'elbowFlexion',
];

/** A body of so many segments in a row of side chains, with hips and shoulders that turns are counted by left out. */
export function makeTree(count: number): Athlete {
  const mass = 60 / count;
  return {
    kind: 'tree',
    name: `Tree of ${count} segments`,
    segments: Array.from({ length: count }, (_, i) => ({
      name: `part${i}`,
      ...(i === 0
        ? {}
        : {
            parent: i < 6 ? 'part0' : `part${i - 5}`,
            jointM: [0, 0.02, 0.05 * ((i % 5) - 2)] as [number, number, number],
            hinges: [{ name: `bend${i}`, axis: [0, 0, 1] as [number, number, number] }],
          }),
      massKg: mass,
      centreM: [0, 0.01, 0] as [number, number, number],
      inertiaKgM2: [0.1, 0.02, 0.1, 0, 0, 0].map((x) => (x * 6) / count) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ],
      contacts: [{ name: `end${i}`, part: 'end', pointM: [0, 0.02, 0] as [number, number, number], radiusM: 0.01 }],
    })),
  };
}
