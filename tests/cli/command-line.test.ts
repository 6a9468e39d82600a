// The command line: what it prints and writes, and that bad input is exit 2 with one clear line and no file left behind.
import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { CAUTION, formatMjcf, makeBody, readAthlete } from '../../sim/index.ts';
import { someOf } from '../corpus.ts';
import { flightIn } from '../files/parts.ts';
import { sampleSkill } from '../files/sample-skill.ts';
import { bareModel, makeFolder, run } from './run.ts';

const athlete = { kind: 'human', name: 'Beside', sex: 'male', massKg: 61, statureM: 1.71 };
let made: ReturnType<typeof makeFolder>;

beforeEach(() => {
  made = makeFolder({
    'skill.json': sampleSkill,
    'athlete.json': { format: 'shapeflight-athlete', version: 1, athlete },
    'beside.json': { ...sampleSkill, athlete: { ref: 'athlete.json' } },
    'broken.json': '{"format": "shapeflight-skill",\n "version": 1,,}',
    'bad-field.json': {
      ...sampleSkill,
      phases: [
        {
          ...flightIn(sampleSkill),
          takeoff: { ...flightIn(sampleSkill).takeoff, velocityMPerS: { along: 0, up: 99 } },
        },
      ],
    },
  });
});

afterEach(() => {
  vi.restoreAllMocks();
});

/** A skill file of one segment of 1 kg that flies for a second. */
const loneBody = (name: string, inertiaKgM2: readonly number[], vectorKgM2PerS: readonly number[]) => ({
  ...sampleSkill,
  athlete: { kind: 'tree', name: `Lone ${name}`, segments: [{ name, massKg: 1, centreM: [0, 0, 0], inertiaKgM2 }] },
  shapes: {},
  phases: [
    {
      ...flightIn(sampleSkill),
      takeoff: { massCentreHeightM: 1, velocityMPerS: { along: 0, up: 1 }, momentum: { vectorKgM2PerS } },
      end: { durationS: 1 },
      schedule: {},
    },
  ],
});

const flyInto = (frames: string, summary: string, ...more: string[]) =>
  run('fly', made.at('skill.json'), '--frames', made.at(frames), '--summary', made.at(summary), ...more);

describe('fly', () => {
  test('prints the flight in words and numbers, with the caution', async () => {
    const { code, out, err } = await run('fly', made.at('skill.json'));
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain(sampleSkill.title);
    expect(out).toMatch(/\d\.\d\d somersaults? backward, no twist, \d\.\d\d s in the air, on the feet, /);
    expect(out).toContain(CAUTION);
    expect(made.list()).toHaveLength(5);
  });

  test('writes frames and summary, and nothing else', async () => {
    const { code } = await flyInto('o.csv', 'o.json', '--rate', '100');
    expect(code).toBe(0);
    expect(made.list()).toEqual(
      ['athlete.json', 'bad-field.json', 'beside.json', 'broken.json', 'o.csv', 'o.json', 'skill.json'].sort(),
    );
    const lines = made.rows('o.csv').trimEnd().split('\n');
    const summary = JSON.parse(made.read('o.json'));
    const duration = summary.done.durationS;
    // t = k / rate from 0, and a last row exactly at the end
    const times = lines.slice(1).map((line) => Number(line.split(',')[0]));
    expect(times.length).toBe(Math.ceil(duration * 100) + 1);
    times.slice(0, -1).forEach((t, k) => {
      expect(t).toBe(k / 100);
    });
    expect(times[times.length - 1]).toBe(duration);
    expect(summary).toMatchObject({ format: 'shapeflight-summary', version: 1, caution: CAUTION });
    expect(made.read('o.csv')).not.toContain('caution');
  });

  test('the summary does not depend on the rate of the CSV', async () => {
    const of = async (name: string, ...more: string[]) => {
      await run('fly', made.at('skill.json'), '--frames', made.at('x.csv'), '--summary', made.at(name), ...more);
      return made.read(name);
    };
    expect(await of('a.json', '--rate', '30')).toBe(await of('b.json', '--rate', '2000'));
  });

  test('the rate is 240 Hz when none is given', async () => {
    await run('fly', made.at('skill.json'), '--frames', made.at('o.csv'));
    expect(
      made
        .rows('o.csv')
        .split('\n')[2]
        .startsWith(`${1 / 240},`),
    ).toBe(true);
  });

  test('an athlete in a file beside the skill is found', async () => {
    const { code, out } = await run('fly', made.at('beside.json'));
    expect(code).toBe(0);
    expect(out).toContain('Beside, 61.0 kg, 1.71 m');
  });

  test('an output that exists is replaced, through a link if it is one', async () => {
    writeFileSync(made.at('real.csv'), 'old');
    symlinkSync(made.at('real.csv'), made.at('link.csv'));
    expect((await run('fly', made.at('skill.json'), '--frames', made.at('link.csv'))).code).toBe(0);
    expect(made.rows('real.csv').startsWith('t,px')).toBe(true);
  });

  test('/dev/null is written to, not replaced', async () => {
    if (process.platform === 'win32') return;
    expect((await run('fly', made.at('skill.json'), '--frames', '/dev/null')).code).toBe(0);
  });

  test.each(someOf(Object.keys(skills), 4))('the preset %s flies by its id', async (id) => {
    const { code, out, err } = await run('fly', id);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain(skills[id].title);
  });
});

describe('body', () => {
  test.each(Object.keys(athletes))('the preset athlete %s: segments and moments in every shape', async (id) => {
    const { code, out } = await run('body', id);
    expect(code).toBe(0);
    for (const name of ['pelvis', 'head', 'footR', ...Object.keys(shapes)])
      expect(out).toMatch(new RegExp(`^ +${name} `, 'm'));
    expect(out).toContain(CAUTION);
  });

  test('an athlete file and the athlete of a skill', async () => {
    expect((await run('body', made.at('athlete.json'))).out).toContain(
      'Beside: 61.000 kg, 1.710 m, 16 segments, 31 hinges',
    );
    const { out } = await run('body', made.at('skill.json'));
    expect(out).toContain('Test Athlete: 55.000 kg');
    // the skill's own shapes stand in the table too
    expect(out).toMatch(/^ +folded /m);
  });

  test('a skill that does not say its format is refused as a skill', async () => {
    const { format: _, ...rest } = sampleSkill;
    const { code, err } = await run('body', makeFolder({ 'bare.json': rest }).at('bare.json'));
    expect(code).toBe(2);
    expect(err).toContain('format');
    expect(err).not.toContain('kind');
  });

  test('the MJCF is that of the body', async () => {
    await run('body', made.at('athlete.json'), '--mjcf', made.at('o.xml'));
    expect(bareModel(made.read('o.xml'))).toBe(formatMjcf(makeBody(readAthlete(athlete)), 9.81));
  });
});

test('--help names commands and presets, --version the version', async () => {
  const help = await run('--help');
  expect(help.code).toBe(0);
  for (const word of ['fly SKILL', 'body SKILL_OR_ATHLETE', '--frames', CAUTION, ...Object.keys(athletes)])
    expect(help.out).toContain(word);
  expect((await run('--version')).out).toMatch(/^\d+\.\d+\.\d+\n$/);
});

describe('bad input is exit 2 and one clear line', () => {
  const file = (name: string): string => `<${name}>`;
  // arguments, what the line holds
  test.each<[string[], ...string[]]>([
    [[], 'a command is needed'],
    [['jump'], '"jump"', 'fly, body'],
    [['fly'], 'SKILL is missing'],
    [['body'], 'SKILL_OR_ATHLETE is missing'],
    [['fly', ''], 'SKILL is missing'],
    [['fly', file('skill.json'), 'more'], '"more"', 'too many'],
    [['fly', file('skill.json'), '--speed'], '--speed'],
    [['fly', file('skill.json'), '--frames'], '--frames'],
    [['fly', file('skill.json'), '--mjcf', 'x'], '--mjcf', 'not an option of this command'],
    [['body', file('skill.json'), '--frames', 'x'], '--frames', 'not an option of this command'],
    [['fly', file('skill.json'), '--rate', 'fast'], '--rate', '"fast"', 'from 1 to 10000 Hz'],
    [['fly', file('skill.json'), '--rate', '0'], '"0"', 'from 1 to 10000 Hz'],
    [['fly', file('skill.json'), '--rate', '10001'], '"10001"'],
    [['fly', file('skill.json'), '--rate', '1e3'], '"1e3"'],
    [['fly', file('skill.json'), '--rate', '9', '--rate', '8'], '--rate', '2 times'],
    [['fly', 'no-such-skill'], 'no-such-skill', 'no skill that comes with Shapeflight'],
    [['fly', file('none.json')], 'none.json', 'there is no such file'],
    [['fly', file('')], 'it is a folder'],
    [['fly', file('broken.json')], 'broken.json', 'line 2, column 15', 'a field name'],
    [['fly', file('bad-field.json')], 'bad-field.json', 'takeoff.velocityMPerS.up', '99', 'from -20 to 20 m/s'],
    [['fly', file('athlete.json')], 'format', '"shapeflight-athlete"'],
    [['body', file('bad-field.json')], 'takeoff.velocityMPerS.up'],
    [['fly', file('skill.json'), '--frames', file('no/where.csv')], '--frames', 'no such file or folder'],
    [['fly', file('skill.json'), '--frames', file('')], '--frames', 'it is a folder'],
    [['fly', file('skill.json'), '--frames', ''], '--frames', 'a file name is needed'],
    [['fly', file('skill.json'), '--frames', file('a'), '--summary', file('a')], '--summary', 'choose another name'],
    [['fly', file('skill.json'), '--summary', file('skill.json')], '--summary', 'is the input'],
    [['fly', file('beside.json'), '--summary', file('athlete.json')], '--summary', 'is the input'],
  ])('%j', async (argv, ...words) => {
    const before = made.list();
    const { code, out, err } = await run(
      ...argv.map((a) => a.replace(/^<(.*)>$/, (_, name) => path.join(made.folder, name))),
    );
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/^shapeflight: [^\n]+\n$/);
    for (const word of words) expect(err).toContain(word);
    expect(made.list()).toEqual(before);
  });

  const tried = async (name: string, json: unknown, ...words: string[]) => {
    writeFileSync(made.at(name), JSON.stringify(json));
    const { code, err } = await run('fly', made.at(name));
    expect(code).toBe(2);
    expect(err).toMatch(/^shapeflight: [^\n]+\n$/);
    for (const word of words) expect(err).toContain(word);
  };

  test('a flight that never comes down names the cause', () => {
    const takeoff = { ...flightIn(sampleSkill).takeoff, momentum: { vectorKgM2PerS: [0, 0, 20] } };
    return tried(
      'up.json',
      { ...sampleSkill, gravityMPerS2: 0, phases: [{ ...flightIn(sampleSkill), takeoff }] },
      'no touchdown',
    );
  });

  test('a key at the apex without gravity is an error', () => {
    const keys = [{ angle: 'neckTurn', at: { anchor: 'apex', s: 0 }, deg: 5 }];
    const json = {
      ...sampleSkill,
      gravityMPerS2: 0,
      phases: [
        { ...flightIn(sampleSkill), end: { durationS: 1 }, schedule: { ...flightIn(sampleSkill).schedule, keys } },
      ],
    };
    return tried('apex.json', json, 'apex');
  });

  test('blocks in the wrong order are an error that names both', () => {
    const blocks = [...(flightIn(sampleSkill).schedule.blocks ?? [])].reverse();
    return tried(
      'order.json',
      {
        ...sampleSkill,
        phases: [{ ...flightIn(sampleSkill), schedule: { ...flightIn(sampleSkill).schedule, blocks } }],
      },
      'overhead',
      'folded',
    );
  });

  test('a lone rod cannot fly, and the reason is given', () => {
    const json = loneBody('rod', [1, 0, 1, 0, 0, 0], [0, 0, 1]);
    return tried('rod.json', json, 'Lone rod');
  });

  test('a body that spins a million times a second is given up, not waited for', () => {
    const json = loneBody('bead', [0.001, 0.0011, 0.0012, 0, 0, 0], [9000, 5000, 3000]);
    return tried('fast.json', json, 'too fast');
  });

  test.each(['../outside.json', '/etc/passwd.json', 'a/../../b.json', 'C:\\x.json'])(
    'an athlete at %s is not looked for',
    (ref) => tried('reach.json', { ...sampleSkill, athlete: { ref } }, 'athlete.ref', 'the folder of the skill'),
  );

  test('bytes that are no text', async () => {
    writeFileSync(made.at('bytes.json'), Buffer.from([0x7b, 0xff, 0xfe, 0x00]));
    const { code, err } = await run('fly', made.at('bytes.json'));
    expect([code, err]).toEqual([2, expect.stringContaining('it is not text')]);
  });

  test('more rows than can be held', async () => {
    writeFileSync(
      made.at('long.json'),
      JSON.stringify({ ...sampleSkill, phases: [{ ...flightIn(sampleSkill), end: { durationS: 60 } }] }),
    );
    const { code, err } = await run('fly', made.at('long.json'), '--frames', made.at('o.csv'), '--rate', '10000');
    expect([code, err]).toEqual([2, expect.stringContaining('600000 rows')]);
  });
});

describe('no output is left half-written', () => {
  test('when the second file cannot be written, the first is not left either', async () => {
    writeFileSync(made.at('o.csv'), 'what was here before');
    const { code } = await flyInto('o.csv', 'no/o.json');
    expect(code).toBe(2);
    expect(made.read('o.csv')).toBe('what was here before');
    expect(made.list().filter((name) => name.includes('part'))).toEqual([]);
  });

  test('a folder that may not be written to', async () => {
    if (process.getuid?.() === 0) return; // root may write anywhere
    mkdirSync(made.at('closed'));
    chmodSync(made.at('closed'), 0o500);
    const { code, err } = await run('fly', made.at('skill.json'), '--frames', made.at('closed/o.csv'));
    expect([code, err]).toEqual([2, expect.stringContaining('permission denied')]);
  });
});

test('a body without joints: one segment, and its moments as built instead of those of human shapes', async () => {
  const stone = {
    kind: 'tree',
    name: 'Stone',
    segments: [{ name: 'stone', massKg: 50, centreM: [0, 0, 0], inertiaKgM2: [8, 2, 10, 0, 0, 0] }],
  };
  const { code, out } = await run('body', makeFolder({ 'stone.json': stone }).at('stone.json'));
  expect(code).toBe(0);
  expect(out).toContain('Stone: 50.000 kg, 1 segment, 0 hinges');
  expect(out).not.toMatch(/tuck/);
  expect(out).toContain('as built');
});

test('with next to no gravity and keys anchored to touchdown the cause is that nothing comes down', async () => {
  const file = { ...skills['back-tuck'], gravityMPerS2: 0.01 };
  const { code, err } = await run('fly', makeFolder({ 'slow.json': file }).at('slow.json'));
  expect(code).toBe(2);
  expect(err).toMatch(/no touchdown: nothing meets the surface within 10 s/);
});
