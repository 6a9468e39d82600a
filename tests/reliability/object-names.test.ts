// A name that every object answers to is a name as any other: segments, hinges and points give the same with it as with another.
import { expect, test } from 'vitest';
import { readRecording } from '../../sim/recording/read-recording.ts';
import { makeFolder, run } from '../cli/run.ts';
import { objectNames } from './object-names.ts';

const rod = { massKg: 10, centreM: [0, 0.1, 0], inertiaKgM2: [0.2, 0.1, 0.2, 0, 0, 0] };

const skillOf = (n: readonly string[]) => ({
  format: 'shapeflight-skill',
  version: 2,
  title: 'Rods',
  athlete: {
    kind: 'tree',
    name: 'Rods',
    segments: [
      { name: n[5], ...rod, contacts: [{ name: n[4], part: n[3], pointM: [0, -0.5, 0], radiusM: 0.05 }] },
      {
        name: n[0],
        parent: n[5],
        jointM: [0, 0.3, 0],
        hinges: [
          { name: n[1], axis: [0, 0, 1], rangeDeg: [-10, 10] },
          { name: n[2], axis: [1, 0, 0] },
        ],
        ...rod,
      },
      { name: n[6], parent: n[0], hinges: [{ name: `${n[7]}L`, axis: [0, 0, 1] }], ...rod },
    ],
  },
  shapes: { mine: { title: n[2], word: n[3], angles: {} } },
  phases: [
    {
      kind: 'flight',
      takeoff: { massCentreHeightM: 1, velocityMPerS: { along: 0, up: 3 }, momentum: { vectorKgM2PerS: [0, 0, 5] } },
      end: { durationS: 0.3 },
      schedule: {
        base: 'mine',
        keys: [
          { angle: n[1], at: { anchor: 'takeoff', s: 0 }, deg: 0 },
          { angle: n[1], at: { anchor: 'takeoff', s: 0.2 }, deg: 40 },
        ],
      },
    },
  ],
});

/** Both names of a pair become one, as they are or spelled in words. */
const renamed = (text: string): string =>
  objectNames
    .reduce(
      (now, pair, k) =>
        pair.reduce((t, name) => t.replace(RegExp(name.replace(/([a-z])([A-Z])/g, '$1 ?$2'), 'gi'), `name ${k}`), now),
      text,
    )
    .replace(/[0-9a-f]{64}/g, 'digest');

async function outputsOf(names: readonly string[]): Promise<string> {
  const made = makeFolder({ 'skill.json': skillOf(names) });
  const outputs = ['f.csv', 's.csv', 's.json', 'm.xml'];
  const [f, s, j, m] = outputs.map(made.at);
  const said = [
    await run('fly', made.at('skill.json'), '--frames', f, '--segments', s, '--summary', j, '--rate', '50'),
    await run('body', made.at('skill.json'), '--mjcf', m),
  ];
  for (const { code, err } of said) expect([code, err]).toEqual([0, '']);
  return renamed([...said.map(({ out }) => out), ...outputs.map(made.read)].join('\n'));
}

test('every output of a flight and a body is the same but for the names', { timeout: 60_000 }, async () => {
  const [odd, plain] = [
    await outputsOf(objectNames.map(([name]) => name)),
    await outputsOf(objectNames.map(([, name]) => name)),
  ];
  expect(odd).toBe(plain);
  expect(odd).not.toMatch(/native code|\[object|NaN/);
});

test('in a sheet they are refused, in the line of each', async () => {
  const made = makeFolder({
    'sheet.txt': ['# A sheet', ...objectNames.map(([name]) => `${name} = 1 m`), 'a = 2 m'].join('\n'),
  });
  const { code, out } = await run('sheet', made.at('sheet.txt'));
  expect(code).toBe(0);
  for (const [k, [name]] of objectNames.entries())
    expect(out).toContain(`line ${k + 1}: "${name}" is a word with a meaning of its own; choose another name.`);
  expect(out).toMatch(/a +2 +m/);
});

test('columns, markers and joints of a recording keep them', () => {
  const names = [...objectNames.map(([name]) => name), '__proto__'];
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  const rows = [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07];
  const table = [`time [s],${names.join(',')}`, ...rows.map((t) => `${t},${names.map((_, k) => k).join(',')}`)];
  expect(readRecording('a.csv', bytes(table.join('\n'))).columns.map(({ name }) => name)).toEqual(names);
  const trc = [
    'PathFileType\t4\t(X/Y/Z)\ta.trc',
    'DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits',
    `100\t100\t${rows.length}\t${names.length}\tm`,
    `Frame#\tTime\t${names.join('\t\t\t')}`,
    `\t\t${names.map((_, k) => `X${k + 1}\tY${k + 1}\tZ${k + 1}`).join('\t')}`,
    '',
    ...rows.map((t, i) => `${i + 1}\t${t}\t${names.map((_, k) => `${k}\t1\t1`).join('\t')}`),
  ];
  expect(readRecording('a.trc', bytes(trc.join('\n'))).points.map(({ name }) => name)).toEqual(names);
  const joint = (k: number): string =>
    k === names.length
      ? ''
      : `${k === 0 ? 'ROOT' : 'JOINT'} ${names[k]} { OFFSET 0 1 0 CHANNELS 3 Zrotation Xrotation Yrotation ${joint(k + 1)} }\n`;
  const bvh = `HIERARCHY\n${joint(0)}MOTION\nFrames: ${rows.length}\nFrame Time: 0.01\n${rows.map(() => names.map(() => '0 0 0').join(' ')).join('\n')}\n`;
  expect(readRecording('a.bvh', bytes(bvh)).joints.map(({ name }) => name)).toEqual(names);
});
