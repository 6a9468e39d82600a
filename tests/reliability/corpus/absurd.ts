// Skills in which every field is allowed, and the whole is absurd: no body has it, no one could do it, or it contradicts itself.

import { skills } from '../../../presets/index.ts';
import type { SkillFile } from '../../../sim/index.ts';
import { placesOf, put, type Tree } from './json-tree.ts';
import type { Random } from './random.ts';
import { READY, TREE } from './sound.ts';

type Draft = { [key: string]: unknown };
type Flight = {
  takeoff: Draft;
  end: Draft;
  schedule: { blocks?: Draft[]; keys?: Draft[]; samples?: Draft[]; base?: string };
  kind: string;
};

/** Skills of one stated flight. */
const PLAIN = Object.values(skills).filter(({ phases }) => phases.length === 1 && 'takeoff' in phases[0]);

const human = (massKg: number, statureM: number, more: object = {}) => ({
  kind: 'human',
  name: 'Nobody',
  sex: 'female',
  massKg,
  statureM,
  ...more,
});
const at = (anchor: string, s: number) => ({ anchor, s });
const ANGLES = [
  'hipFlexion',
  'kneeFlexion',
  'shoulderElevationL',
  'shoulderElevationR',
  'lumbarFlexion',
  'thoracicTurn',
  'neckFlexion',
  'hipAbduction',
];

interface Absurdity {
  readonly name: string;
  readonly make: (file: Draft, flight: Flight, r: Random) => void;
}

const ABSURD: readonly Absurdity[] = [
  {
    name: 'hardly any mass',
    make: (file) => {
      file.athlete = human(10, 2.5);
    },
  },
  {
    name: 'an enormous mass',
    make: (file) => {
      file.athlete = human(250, 0.8);
    },
  },
  {
    name: 'one thigh has all of it',
    make: (file) => {
      file.athlete = human(60, 1.6, { segments: { thighL: { massKg: 40 } } });
    },
  },
  {
    name: 'arms of two metres',
    make: (file) => {
      file.athlete = human(60, 1.6, { segments: { upperArm: { lengthM: 1 }, forearm: { lengthM: 1 } } });
    },
  },
  {
    name: 'a child of three as tall as a door',
    make: (file) => {
      file.athlete = human(20, 2.5, { ageYears: 3 });
    },
  },
  {
    name: 'no gravity',
    make: (file) => {
      file.gravityMPerS2 = 0;
    },
  },
  {
    name: 'hardly any gravity',
    make: (file, _, r) => {
      file.gravityMPerS2 = r.of([1e-12, 1e-6, 0.01]);
    },
  },
  {
    name: 'gravity of a star',
    make: (file) => {
      file.gravityMPerS2 = 30;
    },
  },
  {
    name: 'twenty turns a second',
    make: (_, { takeoff }, r) => {
      takeoff.momentum = {
        ratesRevPerS: { somersault: r.of([20, -20, 5]), tilt: 0, twist: r.of([20, -20, 0]) },
      };
    },
  },
  {
    name: 'a great momentum',
    make: (_, { takeoff }, r) => {
      takeoff.momentum = { straightSomersaults: r.of([20, -20, 1e-9, 0]) };
    },
  },
  {
    name: 'momentum along any line',
    make: (_, { takeoff }, r) => {
      takeoff.momentum = { vectorKgM2PerS: [r.of([-500, 500, 0]), r.of([500, 0, 1e-9]), r.of([0, 1000])] };
    },
  },
  {
    name: 'tilted by 90 degrees',
    make: (_, { takeoff }, r) => {
      takeoff.attitudeDeg = {
        somersault: r.of([0, 90, 3600]),
        tilt: r.of([90, -90, 89.999999, 80]),
        twist: r.of([0, 45, 720]),
      };
    },
  },
  {
    name: 'no speed',
    make: (_, { takeoff }) => {
      takeoff.velocityMPerS = { along: 0, up: 0 };
    },
  },
  {
    name: 'downwards',
    make: (_, { takeoff }, r) => {
      takeoff.velocityMPerS = { along: 0, up: r.of([-1e-9, -5, -20]) };
    },
  },
  {
    name: 'very high',
    make: (_, { takeoff }, r) => {
      takeoff.velocityMPerS = { along: r.of([20, -20]), up: r.of([20, 50]), across: 10 };
    },
  },
  {
    name: 'out of the ground',
    make: (_, { takeoff }, r) => {
      delete takeoff.massCentreHeightM;
      takeoff.lowestPointHeightM = r.of([-5, -0.3, 0, 1e-9, 30]);
    },
  },
  {
    name: 'a landing far up',
    make: (_, { end }, r) => {
      end.surface = { kind: 'mat', heightM: r.of([5, 1, -5, 0.005]) };
    },
  },
  {
    name: 'a time of its own',
    make: (_, flight, r) => {
      flight.end = { durationS: r.of([0.01, 1e-3, 10, 60]) };
    },
  },
  {
    name: 'all keys at once',
    make: (_, { schedule }, r) => {
      schedule.keys = Array.from({ length: 20 }, () => ({
        angle: r.of(ANGLES),
        at: at('takeoff', r.of([0, 0.1, 0.1, 0.2])),
        deg: r.of([-720, 720, 0, 90]),
      }));
    },
  },
  {
    name: 'keys from the end before those from the beginning',
    make: (_, { schedule }, r) => {
      schedule.keys = [
        { angle: 'hipFlexion', at: at('touchdown', r.of([-0.01, -0.5, -1, -3])), deg: 90 },
        { angle: 'hipFlexion', at: at('takeoff', r.of([0.01, 0.5, 2])), deg: 0 },
        { angle: 'hipFlexion', at: at('apex', r.of([0, -0.3, 0.3])), deg: -60, kind: r.of(['stop', 'pass']) },
      ];
    },
  },
  {
    name: 'shapes in no time',
    make: (_, { schedule }, r) => {
      schedule.blocks = Array.from({ length: r.of([2, 6, 40]) }, (_, k) => ({
        shape: r.of(['tuck', 'pike', 'straight', 'armsOverhead']),
        from: at('takeoff', 0.02 * k),
        to: at('takeoff', 0.02 * k + r.of([0.02, 0.0199, 0.001])),
        arms: r.of(['direct', 'front', 'side']),
      }));
    },
  },
  {
    name: 'shapes anchored against each other',
    make: (_, { schedule }, r) => {
      schedule.blocks = [
        { shape: 'tuck', from: at('takeoff', 0.1), to: at('touchdown', -0.1) },
        { shape: 'straight', from: at('touchdown', r.of([-0.1, -0.05, -0.2])), to: at('touchdown', 0) },
      ];
    },
  },
  {
    name: 'samples that jump',
    make: (_, { schedule }, r) => {
      schedule.samples = [
        {
          angle: r.of(ANGLES),
          startS: r.of([0, -0.1, 0.5]),
          rateHz: r.of([10, 240, 2000]),
          deg: Array.from({ length: r.of([8, 50, 300]) }, () => r.of([-720, 720, 0, 1e-9])),
        },
      ];
    },
  },
  {
    name: 'a joint turned twice round',
    make: (_, { schedule }, r) => {
      schedule.keys = [
        { angle: r.of(ANGLES), at: at('takeoff', 0.1), deg: 720 },
        { angle: r.of(ANGLES), at: at('takeoff', 0.11), deg: -720 },
      ];
    },
  },
  {
    name: 'a target that is not meant',
    make: (file, _, r) => {
      file.target = {
        somersaults: r.of([0, 20, 0.25]),
        direction: r.of(['forward', 'backward']),
        twists: r.of([0, 20, 7.5]),
      };
    },
  },
  {
    name: 'a doll',
    make: (file, flight, r) => {
      const tree = structuredClone(TREE) as unknown as { segments: Draft[] };
      tree.segments.forEach((one) => {
        one.massKg = r.of([10, 1e-6, 1000]);
        one.inertiaKgM2 = r.of([
          [0.5, 0.1, 0.5, 0, 0, 0],
          [1e-9, 1e-9, 1e-9, 0, 0, 0],
          [100, 1, 100, 0, 0, 0],
          [0.1, 0.1, 0.2, 0, 0, 0],
          [0, 0, 0, 0, 0, 0],
        ]);
      });
      file.athlete = tree;
      file.target = undefined;
      flight.schedule = { keys: [{ angle: 'hipL', at: at('takeoff', 0.1), deg: r.of([90, 720]) }] };
      flight.takeoff = {
        ...flight.takeoff,
        massCentreHeightM: 1,
        lowestPointHeightM: undefined,
        momentum: { vectorKgM2PerS: [r.of([0, 10]), r.of([0, 5]), r.of([0, 20])] },
      };
    },
  },
];

export function makeAbsurd(r: Random): { readonly file: SkillFile; readonly what: string } {
  const file = JSON.parse(JSON.stringify(r.of(PLAIN))) as Draft;
  const [flight] = file.phases as Flight[];
  const times = 1 + r.int(3);
  const said = Array.from({ length: times }, () => {
    const { name, make } = r.of(ABSURD);
    make(file, flight, r);
    return name;
  });
  return { file: file as unknown as SkillFile, what: said.join(', ') };
}

/** A ready skill in which several numbers are others, all phases along: most are still allowed, and nobody meant them. */
export function shake(r: Random): { readonly file: unknown; readonly what: string } {
  const [id, sound] = r.of(READY);
  const file = structuredClone(sound) as unknown as Tree;
  const numbers = placesOf(file).filter(({ value, path }) => typeof value === 'number' && path !== '.version');
  const times = 1 + r.int(6);
  const said = Array.from({ length: times }, () => {
    const place = r.of(numbers);
    const x = Number(place.value);
    put(place, r.of([x * (0.5 + r.next()), -x, x + 0.3 * (r.next() - 0.5), 0, 3 * x, x + 1, x / 10]));
    return place.path;
  });
  return { file, what: `${id} with other numbers at ${said.join(', ')}` };
}
