// A valid skill of no one in particular, for tests of files and of the command line.
import type { Catalogue } from '../../sim/files/parse-skill.ts';
import type { FileFlight } from '../../sim/files/phase-schema.ts';
import type { SkillFile } from '../../sim/files/skill-schema.ts';

/** All of it, since nothing comes before. */
export const sampleFlight: FileFlight = {
  kind: 'flight',
  takeoff: {
    lowestPointHeightM: 0,
    velocityMPerS: { along: -0.8, up: 4.2 },
    attitudeDeg: { somersault: 5 },
    momentum: { straightSomersaults: 0.49 },
  },
  end: { surface: { kind: 'mat', heightM: 0.2 } },
  schedule: {
    base: 'overhead',
    blocks: [
      { shape: 'folded', from: { anchor: 'takeoff', s: 0.3 }, to: { anchor: 'takeoff', s: 0.42 }, arms: 'front' },
      { shape: 'overhead', from: { anchor: 'takeoff', s: 0.62 }, to: { anchor: 'takeoff', s: 1.5 }, arms: 'front' },
    ],
  },
};

export const sampleSkill: SkillFile = {
  format: 'shapeflight-skill',
  version: 2,
  title: 'Back tuck of a test',
  athlete: { kind: 'human', name: 'Test Athlete', sex: 'female', massKg: 55, statureM: 1.6 },
  phases: [sampleFlight],
  shapes: {
    overhead: { title: 'Arms up', word: 'up', angles: { shoulderPlane: 90, shoulderElevation: 170 } },
    folded: {
      title: 'Folded',
      word: 'folded',
      angles: { hipFlexion: 120, kneeFlexion: 130, lumbarFlexion: 30, shoulderPlane: 90, shoulderElevation: 60 },
    },
  },
  target: { somersaults: 1, direction: 'backward', twists: 0 },
};

export const emptyShelf: Catalogue = { athletes: {}, shapes: {} };
