// Every fault of a file is a FieldError that says where, what was found and what is allowed.

import { expect, test } from 'vitest';
import { parseAthlete, parseJson, parseSkill } from '../../sim/files/parse-skill.ts';
import type { SkillFile } from '../../sim/files/skill-file.ts';
import { FieldError } from '../../sim/math/field-error.ts';
import { launchedOf } from '../skill/load.ts';
import { emptyShelf, sampleSkill } from './sample-skill.ts';

/** The sample with one field set (or, with undefined, taken away). */
function changed(path: string, value: unknown): unknown {
  const json = structuredClone(sampleSkill) as unknown as Record<string, unknown>;
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  let at = json;
  for (const key of keys) {
    at[key] ??= {};
    at = at[key] as Record<string, unknown>;
  }
  if (value === undefined) delete at[last];
  else at[last] = value;
  return json;
}

function faultOf(work: () => unknown): FieldError {
  try {
    work();
  } catch (error) {
    if (error instanceof FieldError) return error;
    throw error;
  }
  throw new Error('no fault was found');
}

const manyKeys = Array.from({ length: 10001 }, () => ({
  angle: 'hipFlexion',
  at: { anchor: 'takeoff', s: 0 },
  deg: 0,
}));
const key = { angle: 'hipFlexion', at: { anchor: 'takeoff', s: 0.1 }, deg: 0 };
const human = { kind: 'human', name: 'A', sex: 'male', massKg: 60, statureM: 1.7 };
const tree = {
  kind: 'tree',
  name: 'A',
  segments: [{ name: 'rod', massKg: 1, centreM: [0, 0, 0], inertiaKgM2: [1, 1, 1, 0, 0, 0] }],
};

// path set, value, field named, what the message holds
const faults: [string, unknown, string, ...string[]][] = [
  ['format', 'other', 'format', '"other"', '"shapeflight-skill"'],
  ['format', undefined, 'format', 'this field is missing; needed', '"shapeflight-skill"'],
  ['version', undefined, 'version', 'this field is missing; needed', 'whole number from 1'],
  ['version', 2, 'version', '2', 'at most 1', 'newer'],
  ['version', 0, 'version', '0', 'whole number from 1'],
  ['version', '1', 'version', '"1"', 'whole number'],
  ['title', 7, 'title', '7', 'text of at most 200'],
  ['title', 'x'.repeat(201), 'title', 'xxx...', 'at most 200'],
  ['colour', 'red', 'colour', 'docs/skill-file.md'],
  ['takeoff.spin', 1, 'takeoff.spin', 'docs/skill-file.md'],
  ['takeoff.velocityMPerS.up', 99, 'takeoff.velocityMPerS.up', '99', 'from -20 to 20 m/s'],
  ['takeoff.velocityMPerS.up', '4', 'takeoff.velocityMPerS.up', '"4"', 'from -20 to 20 m/s'],
  ['takeoff.velocityMPerS.up', null, 'takeoff.velocityMPerS.up', 'null', 'from -20 to 20 m/s'],
  ['takeoff.velocityMPerS.up', Number.NaN, 'takeoff.velocityMPerS.up', 'NaN', 'from -20 to 20 m/s'],
  ['takeoff.velocityMPerS.up', undefined, 'takeoff.velocityMPerS.up', 'this field is missing', 'needed'],
  ['takeoff.velocityMPerS', undefined, 'takeoff.velocityMPerS', 'this field is missing', 'needed'],
  ['takeoff', [], 'takeoff.velocityMPerS', 'this field is missing', 'needed'],
  ['takeoff', 'high', 'takeoff', '"high"', 'an object'],
  ['takeoff.attitudeDeg', [], 'takeoff.attitudeDeg', 'a list of 0', 'an object'],
  ['schedule.blocks.0.adjustDeg', [30], 'schedule.blocks[0].adjustDeg', 'a list of 1', 'an object'],
  ['takeoff.massCentreHeightM', 1, 'takeoff', 'two heights', 'exactly one'],
  ['takeoff.lowestPointHeightM', undefined, 'takeoff', 'no height', 'exactly one'],
  ['takeoff.attitudeDeg.tilt', 85, 'takeoff.attitudeDeg.tilt', '85', '-79 to 79'],
  ['takeoff.momentum', {}, 'takeoff.momentum', 'exactly one of'],
  ['takeoff.momentum.vectorKgM2PerS', [0, 0, 1], 'takeoff.momentum', 'exactly one of'],
  ['takeoff.momentum', { straightSomersaults: 21 }, 'takeoff.momentum.straightSomersaults', '21', '-20 to 20'],
  [
    'takeoff.momentum',
    { vectorKgM2PerS: [0, 0] },
    'takeoff.momentum.vectorKgM2PerS[2]',
    'this field is missing',
    'needed',
  ],
  ['takeoff.momentum', { vectorKgM2PerS: [0, 0, 0, 7] }, 'takeoff.momentum.vectorKgM2PerS[3]', '7', 'three numbers'],
  ['takeoff.momentum', { vectorKgM2PerS: [0, 'z', 0] }, 'takeoff.momentum.vectorKgM2PerS[1]', '"z"'],
  ['takeoff.momentum', { ratesRevPerS: { twist: 1 } }, 'takeoff.momentum.ratesRevPerS.somersault', 'needed'],
  ['gravityMPerS2', 31, 'gravityMPerS2', '31', 'from 0 to 30'],
  ['gravityMPerS2', -1, 'gravityMPerS2', '-1', 'from 0 to 30'],
  ['end', { durationS: 0.01 }, 'end.durationS', '0.01', '0.02 to 60'],
  ['end', { durationS: 61 }, 'end.durationS', '61', '0.02 to 60'],
  ['end', {}, 'end', 'durationS', 'surface'],
  ['end', { surface: { kind: 'mud', heightM: 0 } }, 'end.surface.kind', '"mud"', 'trampoline'],
  ['end', { surface: { kind: 'mat', heightM: 21 } }, 'end.surface.heightM', '21', '-20 to 20'],
  ['athlete', { ref: 'nobody' }, 'athlete.ref', '"nobody"'],
  ['athlete', { ref: 3 }, 'athlete.ref', '3', 'text'],
  ['athlete', { ...human, massKg: 9 }, 'athlete.massKg', '9', '10 to 250 kg'],
  ['athlete', { ...human, statureM: 2.6 }, 'athlete.statureM', '2.6', '0.8 to 2.5 m'],
  ['athlete', { ...human, sex: 'x' }, 'athlete.sex', '"x"', 'female, male'],
  ['athlete', { ...human, age: 12 }, 'athlete.age', 'docs/skill-file.md'],
  ['athlete', { ...human, kind: 'robot' }, 'athlete.kind', '"robot"', '"human"'],
  ['athlete', 'me', 'athlete', '"me"'],
  ['athlete', { ...human, segments: { foot: { massKg: 20 } } }, 'athlete.segments', 'add up'],
  ['athlete', { ...human, segments: { fot: { massKg: 1 } } }, 'athlete.segments.fot', 'did you mean "foot"'],
  ['athlete', { ...tree, segments: [] }, 'athlete.segments', '1 to 200'],
  ['athlete', { ...tree, segments: [{ ...tree.segments[0], massKg: -1 }] }, 'athlete.segments[0].massKg', '-1'],
  [
    'athlete',
    { ...tree, segments: [{ ...tree.segments[0], name: 'a b' }] },
    'athlete.segments[0].name',
    '"a b"',
    'letters',
  ],
  ['schedule.base', 'tuk', 'schedule.base', '"tuk"', 'a shape'],
  ['schedule.base', 'overhed', 'schedule.base', 'did you mean "overhead"'],
  ['schedule.blocks.0.shape', 'foldet', 'schedule.blocks[0].shape', 'did you mean "folded"'],
  ['schedule.blocks.0.arms', 'sideways', 'schedule.blocks[0].arms', '"sideways"', 'front, side, direct'],
  ['schedule.blocks.1.from.anchor', 'landing', 'schedule.blocks[1].from.anchor', '"landing"', 'touchdown'],
  ['schedule.blocks.1.from.s', 61, 'schedule.blocks[1].from.s', '61', '-60 to 60 s'],
  [
    'schedule.blocks.0.adjustDeg',
    { hipFlexoin: 3 },
    'schedule.blocks[0].adjustDeg.hipFlexoin',
    'did you mean "hipFlexion"',
  ],
  ['schedule.keys', manyKeys, 'schedule.keys', 'a list of 10001', 'at most 10000'],
  ['schedule.keys', [key, key, key, { ...key, deg: 721 }], 'schedule.keys[3].deg', '721', '-720 to 720 deg'],
  ['schedule.keys', [{ ...key, deg: true }], 'schedule.keys[0].deg', 'true', '-720 to 720 deg'],
  ['schedule.keys', [{ ...key, angle: 'kneeFlexoin' }], 'schedule.keys[0].angle', 'did you mean "kneeFlexion'],
  ['schedule.keys', [{ ...key, kind: 'slow' }], 'schedule.keys[0].kind', 'stop, pass'],
  ['schedule.keys', { 0: key }, 'schedule.keys', 'a object', 'a list'],
  [
    'schedule.samples',
    [{ angle: 'hipFlexion', startS: 0, rateHz: 0, deg: [] }],
    'schedule.samples[0].rateHz',
    '1 to 10000 Hz',
  ],
  ['schedule.smoothing', { criterion: 'none' }, 'schedule.smoothing.criterion', '"none"', '"gcv"'],
  ['shapes.folded.angles.hipFlexion', 900, 'shapes.folded.angles.hipFlexion', '900', '-720 to 720'],
  ['shapes.folded.angles', { hipFlexoin: 90 }, 'shapes.folded.angles.hipFlexoin', 'did you mean "hipFlexion"'],
  ['target.direction', 'up', 'target.direction', 'backward, forward'],
  ['target.landingAngleDeg', 181, 'target.landingAngleDeg', '-180 to 180'],
  ['toString', 1, 'toString', 'another field name'],
  ['takeoff.constructor', 1, 'takeoff.constructor', 'another field name'],
];

const show = (value: unknown): string => (JSON.stringify(value) ?? 'this field is missing; needed').slice(0, 60);

test.each(faults.map(([path, value, field, ...words]) => ({ path, value, field, words, shown: show(value) })))(
  '$path = $shown: the fault names $field',
  ({ path, value, field, words }) => {
    const fault = faultOf(() => launchedOf(parseSkill(changed(path, value), emptyShelf)));
    expect(fault.field).toBe(field);
    expect(fault.message.startsWith(`${field}: `)).toBe(true);
    for (const word of words) expect(fault.message).toContain(word);
    expect(fault.message).not.toMatch(/[\n\r]/);
  },
);

test('the sample itself has no fault', () => {
  expect(launchedOf(parseSkill(sampleSkill, emptyShelf)).title).toBe(sampleSkill.title);
});

test.each([['[]'], ['null'], ['3'], ['"text"'], ['true']])('%s is not a skill', (text) => {
  expect(faultOf(() => parseSkill(parseJson(text), emptyShelf)).allowed).toBe('a JSON object');
});

test('a field called __proto__ is refused and changes nothing', () => {
  const text = JSON.stringify(sampleSkill).replace('{', '{"__proto__": {"evil": 1}, ');
  expect(faultOf(() => parseSkill(parseJson(text), emptyShelf)).field).toBe('__proto__');
  expect(({} as Record<string, unknown>).evil).toBeUndefined();
});

test('endless nesting is refused, of lists and of objects', () => {
  const n = 200_000;
  for (const [open, close] of [
    ['[', ']'],
    ['{"a":', '}'],
  ]) {
    const text = `{"format": "shapeflight-skill", "version": 1, "note": ${open.repeat(n)}1${close.repeat(n)}}`;
    expect(faultOf(() => parseSkill(parseJson(text), emptyShelf)).message).toContain('at most 40 levels');
  }
});

test('a field name cannot break the line of the message', () => {
  const fault = faultOf(() => parseSkill({ ...sampleSkill, 'a\nb\u001b[31m': 1 }, emptyShelf));
  expect(fault.message).toContain('["a\\nb\\u001b[31m"]');
});

// text, line, column, what should stand there
test.each([
  ['{"a": }', 1, 7, 'a value'],
  ['{"a": 1,\n "b": tru}', 2, 7, 'a value'],
  ['{"a": 1,\n}', 2, 1, 'a field name'],
  ['{"a": 1\n "b": 2}', 2, 2, '"," or "}"'],
  ['[1, 2', 1, 6, '"," or "]"'],
  ['{"a" 1}', 1, 6, '":"'],
  ['', 1, 1, 'a value'],
  ['{} x', 1, 4, 'the end of the file'],
  ['{"a": "one\ntwo"}', 1, 7, 'a value'],
  ['[01]', 1, 3, '"," or "]"'],
  ["{'a': 1}", 1, 2, 'a field name'],
])('%j is not JSON from line %i, column %i on', (text, line, column, expected) => {
  const { message } = faultOf(() => parseJson(text));
  expect(message).toContain(`line ${line}, column ${column} `);
  expect(message).toContain(expected);
});

test('an athlete file says its format and version', () => {
  const file = { format: 'shapeflight-athlete', version: 1, athlete: human };
  expect(parseAthlete(file)).toEqual(human);
  expect(parseAthlete(human)).toEqual(human);
  expect(faultOf(() => parseAthlete({ ...file, format: 'shapeflight-skill' })).field).toBe('format');
  expect(faultOf(() => parseAthlete({ ...file, version: 2 })).field).toBe('version');
  expect(faultOf(() => parseAthlete({ ...file, athlete: { ...human, massKg: 3 } })).field).toBe('athlete.massKg');
});

test('a skill may not hold two lists of samples of one angle', () => {
  const samples = { angle: 'hipFlexionL', startS: 0, rateHz: 240, deg: [0, 0, 0, 0, 0, 0] };
  const json: SkillFile = {
    ...sampleSkill,
    schedule: { ...sampleSkill.schedule, samples: [samples, { ...samples, angle: 'hipFlexion' }] },
  };
  expect(faultOf(() => launchedOf(parseSkill(json, emptyShelf))).field).toBe('schedule.samples[1].angle');
});
