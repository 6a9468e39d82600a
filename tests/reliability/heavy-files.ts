/** Skill files that cost much and are allowed: each is sound, and within every bound of the file's form. No chance in any of them. */
import { chains, skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import {
  blocksOf,
  type Flight,
  keysOf,
  MANY,
  makeTree,
  NECK,
  samplesOf,
  withFlights,
  withSchedule,
} from './heavy-parts.ts';

export interface HeavyFile {
  readonly name: string;
  /** what of it costs */
  readonly costs: string;
  make(): SkillFile;
}

/** The time is stated, not found by a touchdown. */
const lasting = (durationS: number): Flight['end'] => ({ durationS });

export const HEAVY_FILES: readonly HeavyFile[] = [
  {
    name: 'samples with times from touchdown',
    costs: '20,000 samples of one joint, and shapes that count from touchdown',
    make: () =>
      withSchedule(skills['arms-in-spin'], 'Samples and a touchdown', (schedule) => ({
        ...schedule,
        samples: samplesOf(['neckFlexion'], 20000, 2),
      })),
  },
  {
    name: 'samples of many joints with times from touchdown',
    costs: '20,000 samples of each of twelve joints, and shapes that count from touchdown',
    make: () =>
      withSchedule(skills['arms-in-spin'], 'Many samples and a touchdown', ({ blocks, ...schedule }) => ({
        ...schedule,
        blocks: blocks?.map(({ adjustDeg: _, ...block }) => block) ?? [],
        samples: samplesOf(MANY, 20000, 2),
      })),
  },
  {
    name: 'ten thousand keys',
    costs: '10,000 keys of three joints of the neck',
    make: () =>
      withSchedule(skills['back-straight'], 'Ten thousand keys', ({ base }) => ({
        ...(base ? { base } : {}),
        keys: keysOf(NECK, 10000, 1),
      })),
  },
  {
    name: 'ten thousand keys of many joints',
    costs: '10,000 keys of twelve joints',
    make: () =>
      withSchedule(skills['back-straight'], 'Ten thousand keys of twelve joints', ({ base, blocks }) => ({
        ...(base ? { base } : {}),
        // one shape that counts from touchdown
        blocks: (blocks ?? []).slice(-1),
        keys: keysOf(MANY, 10000, 0.8),
      })),
  },
  {
    name: 'five hundred shapes',
    costs: 'as many shapes as a flight may have, and a touchdown',
    make: () =>
      withSchedule(skills['back-straight'], 'Five hundred shapes', ({ base }) => ({
        ...(base ? { base } : {}),
        blocks: blocksOf(500, 1),
      })),
  },
  {
    name: 'a minute of fast turns',
    costs: '60 s at 20 turns a second',
    make: () =>
      withFlights(skills['arms-in-spin'], 'A minute at twenty turns a second', (flight) => ({
        ...flight,
        takeoff: {
          ...flight.takeoff,
          momentum: { ratesRevPerS: { somersault: 20, tilt: 0, twist: 0 } },
        } as Flight['takeoff'],
        end: lasting(60),
        schedule: {
          base: 'straight',
          blocks: [
            { shape: 'straight', from: { anchor: 'takeoff', s: 0 }, to: { anchor: 'takeoff', s: 20 } },
            { shape: 'tuck', from: { anchor: 'takeoff', s: 25 }, to: { anchor: 'takeoff', s: 40 } },
          ],
        },
      })),
  },
  {
    name: 'a chain of dense flights',
    costs: 'every flight of a chain with 3,000 keys',
    make: () =>
      withSchedule(chains['trampoline-jump-tuck-full'], 'A chain of dense flights', ({ base }) => ({
        ...(base ? { base } : {}),
        keys: keysOf(NECK, 3000, 1),
      })),
  },
  {
    name: 'two hundred segments',
    costs: 'a tree of 200 segments with 200 keyed hinges for 20 s',
    make: () => ({
      ...withFlights(skills['arms-in-spin'], 'Two hundred segments', (flight) => ({
        ...flight,
        end: lasting(20),
        schedule: {
          keys: Array.from({ length: 199 }, (_, i) =>
            [0, 5, 10, 15].map((s, n) => ({
              angle: `bend${i + 1}`,
              at: { anchor: 'takeoff' as const, s: s + i / 100 },
              deg: n % 2 === 0 ? 0 : 30,
            })),
          ).flat(),
        },
      })),
      athlete: makeTree(200),
    }),
  },
  {
    name: 'samples of every joint at rest',
    costs: '200 lists of 5,000 equal samples: text alone',
    make: () => ({
      ...withFlights(skills['arms-in-spin'], 'Lists at rest', (flight) => ({
        ...flight,
        end: lasting(1),
        schedule: {
          samples: Array.from({ length: 199 }, (_, i) => ({
            angle: `bend${i + 1}`,
            startS: 0,
            rateHz: 5000,
            deg: Array.from({ length: 5000 }, () => 1),
          })),
        },
      })),
      athlete: makeTree(200),
    }),
  },
];

/** How a flight beside the page may end other than by coming, and what is said. */
export const BESIDE_ENDS = [
  { name: 'a person cancels it', error: 'JobCancelledError', says: /was cancelled/, after: 'flown' },
  { name: 'the limit is reached', error: 'JobTimeoutError', says: /took too long and was stopped/, after: 'flown' },
  { name: 'its worker is lost', error: 'WorkerLostError', says: /was lost/, after: 'flown' },
] as const;
