// Every fault of a file is a FieldError that says where, what was found and what is allowed.
import { expect, test } from 'vitest';
import { parseAthlete } from '../../sim/files/parse-athlete.ts';
import { parseJson } from '../../sim/files/parse-json.ts';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import type { SkillFile } from '../../sim/files/skill-schema.ts';
import { FieldError } from '../../sim/math/field-error.ts';
import { buildSkill } from '../../sim/skill/build-skill.ts';
import { emptyShelf, sampleFlight, sampleSkill } from './sample-skill.ts';

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
const { takeoff: _, ...noTakeoff } = sampleFlight;
const momentumOnly = { ...noTakeoff, takeoff: { massCentreHeightM: 1, momentum: { straightSomersaults: 1 } } };
const landing = { kind: 'landing', mat: 'floor' };
const contact = { kind: 'contact', place: 'floor', velocityMPerS: { along: 1, up: 0 } };
const given = { meanBodyWeights: 2, leanDeg: 0, placeM: { along: 0 } };
const swing = {
  kind: 'swing',
  rail: 'highBar',
  sense: 'backward',
  start: { castDeg: -90 },
  moves: { over: 'angle', keys: [] },
  release: { atDeg: 30 },
  durationS: 2,
};

const faults: [string, unknown, string, ...string[]][] = [
  ['format', 'other', 'format', '"other"', '"shapeflight-skill"'],
  ['format', undefined, 'format', 'this field is missing; needed', '"shapeflight-skill"'],
  ['version', undefined, 'version', 'this field is missing; needed', 'whole number from 1 to 2'],
  ['version', 3, 'version', '3', 'at most 2', 'newer'],
  ['version', 0, 'version', '0', 'whole number from 1 to 2'],
  ['version', '1', 'version', '"1"', 'whole number'],
  ['title', 7, 'title', '7', 'text of at most 200'],
  ['title', 'x'.repeat(201), 'title', 'xxx...', 'at most 200'],
  ['colour', 'red', 'colour', 'docs/skill-file.md'],
  ['phases.0.takeoff.spin', 1, 'phases[0].takeoff.spin', 'docs/skill-file.md'],
  ['phases.0.takeoff.velocityMPerS.up', 99, 'phases[0].takeoff.velocityMPerS.up', '99', 'from -20 to 20 m/s'],
  ['phases.0.takeoff.velocityMPerS.up', '4', 'phases[0].takeoff.velocityMPerS.up', '"4"', 'from -20 to 20 m/s'],
  ['phases.0.takeoff.velocityMPerS.up', null, 'phases[0].takeoff.velocityMPerS.up', 'null', 'from -20 to 20 m/s'],
  ['phases.0.takeoff.velocityMPerS.up', Number.NaN, 'phases[0].takeoff.velocityMPerS.up', 'NaN', 'from -20 to 20 m/s'],
  [
    'phases.0.takeoff.velocityMPerS.up',
    undefined,
    'phases[0].takeoff.velocityMPerS.up',
    'this field is missing',
    'needed',
  ],
  ['phases.0.takeoff.velocityMPerS', undefined, 'phases[0].takeoff.velocityMPerS', 'this field is missing', 'needed'],
  ['phases.0.takeoff', [], 'phases[0].takeoff', 'an empty list', 'an object'],
  ['phases.0.takeoff', 'high', 'phases[0].takeoff', '"high"', 'an object'],
  ['phases.0.takeoff.attitudeDeg', [], 'phases[0].takeoff.attitudeDeg', 'an empty list', 'an object'],
  ['phases.0.schedule.blocks.0.adjustDeg', [30], 'phases[0].schedule.blocks[0].adjustDeg', 'a list of 1', 'an object'],
  ['phases.0.takeoff.massCentreHeightM', 1, 'phases[0].takeoff', 'two heights', 'exactly one'],
  ['phases.0.takeoff.lowestPointHeightM', undefined, 'phases[0].takeoff', 'no height', 'exactly one'],
  ['phases.0.takeoff.attitudeDeg.tilt', 85, 'phases[0].takeoff.attitudeDeg.tilt', '85', '-79 to 79'],
  ['phases.0.takeoff.momentum', {}, 'phases[0].takeoff.momentum', 'exactly one of'],
  ['phases.0.takeoff.momentum.vectorKgM2PerS', [0, 0, 1], 'phases[0].takeoff.momentum', 'exactly one of'],
  [
    'phases.0.takeoff.momentum',
    { straightSomersaults: 21 },
    'phases[0].takeoff.momentum.straightSomersaults',
    '21',
    '-20 to 20',
  ],
  [
    'phases.0.takeoff.momentum',
    { vectorKgM2PerS: [0, 0] },
    'phases[0].takeoff.momentum.vectorKgM2PerS[2]',
    'this field is missing',
    'needed',
  ],
  [
    'phases.0.takeoff.momentum',
    { vectorKgM2PerS: [0, 0, 0, 7] },
    'phases[0].takeoff.momentum.vectorKgM2PerS[3]',
    '7',
    'three numbers',
  ],
  ['phases.0.takeoff.momentum', { vectorKgM2PerS: [0, 'z', 0] }, 'phases[0].takeoff.momentum.vectorKgM2PerS[1]', '"z"'],
  [
    'phases.0.takeoff.momentum',
    { ratesRevPerS: { twist: 1 } },
    'phases[0].takeoff.momentum.ratesRevPerS.somersault',
    'needed',
  ],
  ['gravityMPerS2', 31, 'gravityMPerS2', '31', 'from 0 to 30'],
  ['gravityMPerS2', -1, 'gravityMPerS2', '-1', 'from 0 to 30'],
  ['phases.0.end', { durationS: 0.01 }, 'phases[0].end.durationS', '0.01', '0.02 to 60'],
  ['phases.0.end', { durationS: 61 }, 'phases[0].end.durationS', '61', '0.02 to 60'],
  ['phases.0.end', {}, 'phases[0].end', 'durationS', 'surface'],
  ['phases.0.end', { surface: { kind: 'mud', heightM: 0 } }, 'phases[0].end.surface.kind', '"mud"', 'trampoline'],
  ['phases.0.end', { surface: { kind: 'mat', heightM: 21 } }, 'phases[0].end.surface.heightM', '21', '-20 to 20'],
  ['athlete', { ref: 'nobody' }, 'athlete.ref', '"nobody"'],
  ['athlete', { ref: 3 }, 'athlete.ref', '3', 'text'],
  ['athlete', { ...human, massKg: 9 }, 'athlete.massKg', '9', '10 to 250 kg'],
  ['athlete', { ...human, statureM: 2.6 }, 'athlete.statureM', '2.6', '0.8 to 2.5 m'],
  ['athlete', { ...human, sex: 'x' }, 'athlete.sex', '"x"', 'female, male'],
  ['athlete', { ...human, age: 12 }, 'athlete.age', 'docs/skill-file.md'],
  ['athlete', { ...human, kind: 'robot' }, 'athlete.kind', '"robot"', '"human"'],
  ['athlete', 'me', 'athlete', '"me"'],
  ['athlete', { ...human, segments: { foot: { massKg: 20 } } }, 'athlete.segments', 'leave the others'],
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
  ['phases.0.schedule.base', 'tuk', 'phases[0].schedule.base', '"tuk"', 'a shape'],
  ['phases.0.schedule.base', 'overhed', 'phases[0].schedule.base', 'did you mean "overhead"'],
  ['phases.0.schedule.blocks.0.shape', 'foldet', 'phases[0].schedule.blocks[0].shape', 'did you mean "folded"'],
  [
    'phases.0.schedule.blocks.0.arms',
    'sideways',
    'phases[0].schedule.blocks[0].arms',
    '"sideways"',
    'front, side, direct',
  ],
  [
    'phases.0.schedule.blocks.1.from.anchor',
    'landing',
    'phases[0].schedule.blocks[1].from.anchor',
    '"landing"',
    'touchdown',
  ],
  ['phases.0.schedule.blocks.1.from.s', 61, 'phases[0].schedule.blocks[1].from.s', '61', '-60 to 60 s'],
  [
    'phases.0.schedule.blocks.0.adjustDeg',
    { hipFlexoin: 3 },
    'phases[0].schedule.blocks[0].adjustDeg.hipFlexoin',
    'did you mean "hipFlexion"',
  ],
  ['phases.0.schedule.keys', manyKeys, 'phases[0].schedule.keys', 'a list of 10001', 'at most 10000'],
  [
    'phases.0.schedule.keys',
    [key, key, key, { ...key, deg: 721 }],
    'phases[0].schedule.keys[3].deg',
    '721',
    '-720 to 720 deg',
  ],
  ['phases.0.schedule.keys', [{ ...key, deg: true }], 'phases[0].schedule.keys[0].deg', 'true', '-720 to 720 deg'],
  [
    'phases.0.schedule.keys',
    [{ ...key, angle: 'kneeFlexoin' }],
    'phases[0].schedule.keys[0].angle',
    'did you mean "kneeFlexion',
  ],
  ['phases.0.schedule.keys', [{ ...key, kind: 'slow' }], 'phases[0].schedule.keys[0].kind', 'stop, pass'],
  ['phases.0.schedule.keys', { 0: key }, 'phases[0].schedule.keys', 'an object', 'a list'],
  [
    'phases.0.schedule.samples',
    [{ angle: 'hipFlexion', startS: 0, rateHz: 0, deg: [] }],
    'phases[0].schedule.samples[0].rateHz',
    '1 to 10000 Hz',
  ],
  ['phases.0.schedule.smoothing', { criterion: 'best' }, 'phases[0].schedule.smoothing.criterion', '"best"', '"gcv"'],
  ['shapes.folded.angles.hipFlexion', 900, 'shapes.folded.angles.hipFlexion', '900', '-720 to 720'],
  ['shapes.folded.angles', { hipFlexoin: 90 }, 'shapes.folded.angles.hipFlexoin', 'did you mean "hipFlexion"'],
  ['target.direction', 'up', 'target.direction', 'backward, forward'],
  ['target.landingAngleDeg', 181, 'target.landingAngleDeg', '-180 to 180'],
  ['phases', [], 'phases', 'no flight', 'at least one flight'],
  ['phases', {}, 'phases', 'an object', 'a list of at most 13'],
  ['phases', [sampleFlight, sampleFlight], 'phases[1].kind', '"flight"', 'contact, catch', 'after phases[0], a flight'],
  ['phases', [contact, sampleFlight, sampleFlight, landing], 'phases[2].kind', '"flight"', 'contact, catch'],
  ['phases', Array.from({ length: 7 }, () => sampleFlight), 'phases[6].kind', '"flight"', 'at most 6 flights'],
  ['phases', undefined, 'phases', 'needed: a list of at most 13'],
  ['title', undefined, 'title', 'needed: text of at most 200 characters'],
  ['target.twists', undefined, 'target.twists', 'needed: a number from 0 to 20'],
  ['phases', [{ kind: 'dance' }], 'phases[0].kind', '"dance"', 'swing, contact, flight', 'this build'],
  ['phases', [{ kind: 3 }], 'phases[0].kind', '3'],
  ['phases', [landing, sampleFlight], 'phases[0].kind', '"landing"', 'swing, contact, flight as the first'],
  ['phases', [contact, contact, sampleFlight], 'phases[1].kind', '"contact"', 'flight after phases[0], a contact'],
  ['phases', [sampleFlight, landing, landing], 'phases[2].kind', '"landing"', 'nothing after phases[1], a landing'],
  ['phases', [{ ...contact, given }, sampleFlight], 'phases[1].takeoff.velocityMPerS', 'contact in phases[0] gives it'],
  ['phases', [{ ...contact, given }, momentumOnly], 'phases[1].takeoff.momentum', 'contact in phases[0] gives it'],
  ['phases', [{ ...contact, given }, noTakeoff], 'phases[1].takeoff', 'this field is missing'],
  ['phases', [noTakeoff], 'phases[0].takeoff', 'this field is missing', 'no phase before'],
  ['phases', [momentumOnly], 'phases[0].takeoff.velocityMPerS', 'this field is missing', 'no phase before'],
  ['phases', [swing, sampleFlight], 'phases[1].takeoff', 'swing in phases[0] gives it'],
  ['$schema', 4, '$schema', '4', 'text'],
  ['worksheets', [{ title: 'A', lines: 'x' }], 'worksheets[0].lines', '"x"', 'a list'],
  ['worksheets', [{ title: 'A', lines: [], sum: 1 }], 'worksheets[0].sum', 'unknown field'],
  ['recordings', [{ title: 'A', kind: 'radio' }], 'recordings[0].kind', '"radio"', 'film, capture'],
  ['recordings', [{ title: 'A', kind: 'film', rateHz: 0 }], 'recordings[0].rateHz', '0', 'Hz'],
  ['athlete', { ...human, ageYears: 2 }, 'athlete.ageYears', '2', '3 to 100 years'],
  ['toString', 1, 'toString', 'another field name'],
  ['phases.0.takeoff.constructor', 1, 'phases[0].takeoff.constructor', 'another field name'],
];

const show = (value: unknown): string => (JSON.stringify(value) ?? 'this field is missing; needed').slice(0, 60);

test.each(faults.map(([path, value, field, ...words]) => ({ path, value, field, words, shown: show(value) })))(
  '$path = $shown: the fault names $field',
  ({ path, value, field, words }) => {
    const fault = faultOf(() => buildSkill(parseSkill(changed(path, value), emptyShelf)));
    expect(fault.field).toBe(field);
    expect(fault.message.startsWith(`${field}: `)).toBe(true);
    for (const word of words) expect(fault.message).toContain(word);
    expect(fault.message).not.toMatch(/[\n\r]/);
  },
);

test('the sample itself has no fault', () => {
  expect(buildSkill(parseSkill(sampleSkill, emptyShelf)).title).toBe(sampleSkill.title);
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
    const text = `{"format": "shapeflight-skill", "version": 2, "note": ${open.repeat(n)}1${close.repeat(n)}}`;
    expect(faultOf(() => parseSkill(parseJson(text), emptyShelf)).message).toContain('at most 40 levels');
  }
});

test('a field name cannot break the line of the message', () => {
  const fault = faultOf(() => parseSkill({ ...sampleSkill, 'a\nb\u001b[31m': 1 }, emptyShelf));
  expect(fault.message).toContain('["a\\nb\\u001b[31m"]');
});

test('what is wrong is said, not put where a value would be', () => {
  const wordsOf = (json: object): string => faultOf(() => parseSkill(json, emptyShelf)).message;
  const [flight] = sampleSkill.phases as SkillFile['phases'];
  const { takeoff } = flight as Extract<SkillFile['phases'][number], { kind: 'flight' }>;
  const misspelt = { ...flight, takeoff: { ...takeoff, momentum: { straightSomersault: 1 } } };
  expect(wordsOf({ ...sampleSkill, phases: [misspelt] })).toMatch(
    /takeoff\.momentum: an object with straightSomersault is not possible; allowed: exactly one of/,
  );
  expect(wordsOf({ ...sampleSkill, colour: 1 })).toBe(
    'colour: unknown field; allowed: only the fields of docs/skill-file.md',
  );
  expect(faultOf(() => parseJson('{"a": }')).message).toBe(
    'file: not JSON from line 1, column 7 on: found "}"; needed there: a value',
  );
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
    phases: [
      {
        ...sampleFlight,
        schedule: { ...sampleFlight.schedule, samples: [samples, { ...samples, angle: 'hipFlexion' }] },
      },
    ],
  };
  expect(faultOf(() => buildSkill(parseSkill(json, emptyShelf))).field).toBe('phases[0].schedule.samples[1].angle');
});

test.each([
  ['{"a": 1, "b": 2, "a": 3}', 'a', 1],
  ['{"phases": [{"kind": "flight"},\n {"end": {"s": 1, "s": 1}}]}', 'phases[1].end.s', 2],
  ['{"a": {"b": 1}, "c": [{"b": 1, "\\u0062": 2}]}', 'c[0].b', 1],
  ['{"": 1, "": 2}', '[""]', 1],
])('%j has a key twice', (text, field, line) => {
  const fault = faultOf(() => parseJson(text));
  expect(fault.field).toBe(field);
  expect(fault.message).toContain(`line ${line}`);
});

test('the same key in two objects, or a text that looks like one, is no key twice', () => {
  const text = '{"a": {"k": 1}, "b": {"k": 1}, "c": [{"k": 1}, {"k": "k\\": 1, \\"k"}], "k": ["k", "k"]}';
  expect(parseJson(text)).toEqual(JSON.parse(text));
});

test('a long text and a long list are read in a moment', () => {
  const text = JSON.stringify({ note: 'x"\\'.repeat(1_000_000), list: Array.from({ length: 500_000 }, (_, i) => i) });
  const start = performance.now();
  parseJson(text);
  // measured 0.15 s
  expect(performance.now() - start).toBeLessThan(3000);
});
