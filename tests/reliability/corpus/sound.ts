// Sound files that damaged ones are made of, frozen: who changes one of them is found.
import { athletes, chains, shapes, skills } from '../../../presets/index.ts';
import { sheets } from '../../../presets/sheet-shelf.ts';
import { worksheets } from '../../../presets/worksheet-shelf.ts';
import {
  checkSkillFile,
  lockAnswer,
  nameStudent,
  parseWorksheet,
  type Worksheet,
  worksheetHead,
  writeAnswer,
} from '../../../sim/index.ts';
import { freezeDeep } from './law.ts';

freezeDeep([athletes, shapes, skills, chains, sheets, worksheets]);

export const shelf = { athletes, shapes };
export const READY = Object.entries({ ...skills, ...chains });
export const SHEETS = Object.entries(sheets);

/** A skill with everything that a file may have. */
const first = checkSkillFile(skills['back-straight-full']);
const full = {
  ...first,
  $schema: 'skill-file.schema.json',
  worksheets: [
    { title: 'Air time', lesson: 'What it comes from.', lines: ['h = 1.2 m', 'T = 2 * sqrt(2 * h / (9.81 m/s^2))'] },
  ],
  recordings: [
    {
      title: 'From the side',
      kind: 'film',
      file: 'a.mp4',
      startS: -0.2,
      rateHz: 240,
      note: 'made up',
      data: { any: [1, { b: 2 }] },
    },
  ],
};

/** As a build of version 1 wrote them. */
const old = import.meta.glob<unknown>('../../golden/v1/skills/*.json', { eager: true, import: 'default' });
freezeDeep(old);

export const SKILL_SEEDS: readonly (readonly [string, unknown])[] = [
  ...READY,
  ['with all fields', full],
  ...Object.entries(old).map(([path, file]) => [`${path.replace(/^.*\/|\.json$/g, '')} of version 1`, file] as const),
];

/** A tree of a few segments. */
const segment = (name: string, more: object) => ({
  name,
  massKg: 10,
  centreM: [0, 0.1, 0],
  inertiaKgM2: [0.5, 0.1, 0.5, 0, 0, 0],
  ...more,
});
export const TREE = {
  kind: 'tree',
  name: 'Doll of three',
  club: 'Made up',
  segments: [
    segment('trunk', {
      group: 'upper',
      side: 'centre',
      contacts: [{ name: 'seat', part: 'seat', pointM: [0, -0.2, 0], radiusM: 0.05 }],
      shapes: [{ kind: 'ellipsoid', centreM: [0, 0.1, 0], radiiM: [0.1, 0.3, 0.15] }],
    }),
    segment('legL', {
      parent: 'trunk',
      jointM: [0, -0.2, -0.1],
      hinges: [{ name: 'hipL', axis: [0, 0, 1], rangeDeg: [-30, 150], mirror: 'hipR', mirrorSign: 1 }],
      group: 'legs',
      side: 'left',
      contacts: [{ name: 'footL', part: 'feet', pointM: [0, -0.8, 0], radiusM: 0.04 }],
      shapes: [{ kind: 'capsule', aM: [0, 0, 0], bM: [0, -0.8, 0], radiusAM: 0.08, radiusBM: 0.05 }],
    }),
    segment('legR', {
      parent: 'trunk',
      jointM: [0, -0.2, 0.1],
      hinges: [{ name: 'hipR', axis: [0, 0, 1], rangeDeg: [-30, 150], mirror: 'hipL', mirrorSign: 1 }],
      group: 'legs',
      side: 'right',
      contacts: [{ name: 'footR', part: 'feet', pointM: [0, -0.8, 0], radiusM: 0.04 }],
    }),
  ],
  framePoints: {
    hipL: { segment: 'trunk', pointM: [0, -0.2, -0.1] },
    hipR: { segment: 'trunk', pointM: [0, -0.2, 0.1] },
    shoulderL: { segment: 'trunk', pointM: [0, 0.3, -0.15] },
    shoulderR: { segment: 'trunk', pointM: [0, 0.3, 0.15] },
  },
};
const MEASURED = {
  kind: 'human',
  name: 'Measured',
  club: 'Made up',
  sex: 'male',
  massKg: 60,
  ageYears: 14,
  statureM: 1.62,
  shoulderHalfWidthM: 0.17,
  hipHalfWidthM: 0.08,
  segments: {
    thighL: { massKg: 8, lengthM: 0.4, centreShare: 0.4, radiiShare: [0.3, 0.3, 0.15] },
    head: { lengthM: 0.2 },
  },
};

const asFile = (athlete: unknown): unknown => ({ format: 'shapeflight-athlete', version: 1, athlete });
export const ATHLETE_SEEDS: readonly (readonly [string, unknown])[] = [
  ...Object.entries(athletes).map(([id, athlete]) => [id, asFile(athlete)] as const),
  ['a bare athlete', athletes['ilse-marrow']],
  ['a measured athlete', asFile(MEASURED)],
  ['a tree', asFile(TREE)],
  ['a bare tree', TREE],
];

/** As it goes out, and with answers of a student, some of them locked. */
const blank = Object.values(worksheets).map(({ skill, ...asks }) =>
  parseWorksheet({ ...worksheetHead, ...asks, skill: skills[skill] ?? chains[skill] }),
);
const clock = (minute: number): string => `2026-03-02T09:${minute}:00+01:00`;
const answered = blank.map((one) =>
  one.questions.reduce(
    (sheet, _, i) => {
      const written = writeAnswer(sheet, i, { text: ['1.2', 'about 3', '0.9 s'][i % 3] });
      return i === one.questions.length - 1 || one.order === 'together'
        ? written
        : lockAnswer(written, i, clock(40 + i));
    },
    nameStudent(one, { name: 'Nobody', class: '9b' }),
  ),
);
export const WORKSHEETS: readonly Worksheet[] = freezeDeep([...blank, ...answered]);
