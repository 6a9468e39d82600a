// What the shell opens: plain files alone, as text in UTF-8, within the folder of the skill, and never more than a bound.
import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import { FieldError, textOfBytes, wordNoText } from '../../sim/index.ts';
import { makeFolder, run } from '../cli/run.ts';
import { fileKinds } from './file-kinds.ts';

const skill = { ...skills['back-tuck'], target: undefined };
const athlete = { kind: 'human', name: 'Mara Quill', sex: 'female', massKg: 52, statureM: 1.6 };
const text = JSON.stringify(skill, null, 2);

describe.each(fileKinds)('$name', ({ bytes, said }) => {
  const all = Uint8Array.from(bytes(text));
  const line = said && `it is ${wordNoText(said)}`;
  test('for the page', () => {
    let fault: unknown;
    try {
      textOfBytes(all);
    } catch (error) {
      fault = error;
    }
    expect(fault instanceof FieldError ? fault.message : fault).toBe(line && `file: ${line}`);
  });
  test('for the shell', async () => {
    const made = makeFolder();
    writeFileSync(made.at('given.json'), all);
    const { code, err } = await run('body', made.at('given.json'));
    expect([code, err]).toEqual(line ? [2, `shapeflight: ${made.at('given.json')}: ${line}\n`] : [0, '']);
  });
});

/** As `of`: what is opened beside a sound skill. */
function withRef(ref: string) {
  const made = makeFolder({ 'skill.json': { ...skill, athlete: { ref } }, 'mara.json': athlete });
  return { ...made, fly: () => run('body', made.at('skill.json')) };
}

describe('an athlete beside the skill', () => {
  test('is read from the folder or below, by a link within it too', async () => {
    for (const ref of ['mara.json', 'below/mara.json', 'below\\mara.json', './mara.json', 'linked.json']) {
      const made = withRef(ref);
      mkdirSync(made.at('below'));
      writeFileSync(made.at('below/mara.json'), JSON.stringify(athlete));
      symlinkSync('below/mara.json', made.at('linked.json'));
      expect(await made.fly(), ref).toMatchObject({ code: 0, err: '' });
    }
  });

  test('is not read from outside, whatever leads there', async () => {
    const other = makeFolder({ 'secret.json': athlete });
    const leads: Record<string, (at: (name: string) => string) => void> = {
      'link.json': (at) => symlinkSync(other.at('secret.json'), at('link.json')),
      'folder/secret.json': (at) => symlinkSync(other.folder, at('folder'), 'dir'),
      'twice.json': (at) => {
        symlinkSync(other.at('secret.json'), at('once.json'));
        symlinkSync('once.json', at('twice.json'));
      },
      [other.at('secret.json')]: () => undefined,
      '../secret.json': () => undefined,
      'a/../../secret.json': () => undefined,
      'C:\\secret.json': () => undefined,
      'nul\0.json': () => undefined,
    };
    for (const [ref, lead] of Object.entries(leads)) {
      const made = withRef(ref);
      lead(made.at);
      const { code, err } = await made.fly();
      expect([code, err], ref).toEqual([
        2,
        expect.stringMatching(/skill\.json: athlete\.ref: .*allowed: .*folder of the skill/),
      ]);
      expect(err).not.toContain('Mara');
    }
  });

  test('that is not there, a ring of links, or a folder is one line', async () => {
    const made = withRef('ring.json');
    symlinkSync('ring.json', made.at('ring.json'));
    expect((await made.fly()).err).toMatch(/ring\.json: its links lead in a ring\n$/);
    expect((await withRef('none.json').fly()).err).toMatch(/none\.json: there is no such file or folder\n$/);
    const folder = withRef('dir.json');
    mkdirSync(folder.at('dir.json'));
    expect((await folder.fly()).err).toMatch(/dir\.json: it is a folder; a file is needed\n$/);
  });
});

/** Every place where the shell reads a file. */
const READERS: readonly (readonly string[])[] = [
  ['fly', 'FILE'],
  ['fly', 'SKILL'],
  ['body', 'FILE'],
  ['sheet', 'FILE'],
  ['sheet', 'rod-against-ball', '--skill', 'FILE'],
  ['class', 'FILE'],
  ['camera', 'FILE'],
  ['picture', 'FILE', '--out', 'OUT.svg'],
  ['draft', '8 0', '--athlete', 'FILE', '--out', 'OUT.json'],
  ['fix', 'FILE'],
  ['export', 'FILE', '--as', '1', '--out', 'OUT.json'],
  ['link', 'FILE'],
  ['solve', 'FILE', '--vary', 'takeoff.lean', '--out', 'OUT.json'],
  ['margin', 'FILE'],
  ['map', 'FILE', '--x', 'takeoff.lean=-5..5', '--y', 'takeoff.up=4..6', '--csv', 'OUT.csv'],
  ['fit', 'FILE'],
  ['fit', 'FILE', '--athlete', 'FILE'],
  ['fit', 'ROWS', '--map', 'FILE'],
];

describe.runIf(process.platform !== 'win32')('what is no plain file', () => {
  test('a pipe that nobody writes into is refused at once, in every place', { timeout: 60_000 }, async () => {
    const made = makeFolder({ 'skill.json': { ...skill, athlete: { ref: 'pipe.json' } }, 'rows.csv': 'time,a\n0,1\n' });
    execFileSync('mkfifo', [made.at('pipe.json')]);
    const names: Record<string, string> = {
      FILE: made.at('pipe.json'),
      SKILL: made.at('skill.json'),
      ROWS: made.at('rows.csv'),
      'OUT.json': made.at('out.json'),
      'OUT.svg': made.at('out.svg'),
      'OUT.csv': made.at('out.csv'),
    };
    for (const reader of READERS) {
      const { code, err } = await run(...reader.map((word) => (Object.hasOwn(names, word) ? names[word] : word)));
      expect([code, err], reader.join(' ')).toEqual([
        2,
        expect.stringMatching(/^shapeflight: .*pipe\.json: it is a pipe; a file is needed[^\n]*\n$/),
      ]);
    }
  });

  test('a device, a folder, a file that may not be read', async () => {
    expect((await run('fly', '/dev/zero')).err).toMatch(/it is a device; a file is needed/);
    const made = makeFolder({ 'locked.json': skill });
    expect((await run('fly', made.folder)).err).toMatch(/it is a folder; a file is needed\n$/);
    chmodSync(made.at('locked.json'), 0);
    if (process.getuid?.() !== 0)
      expect((await run('fly', made.at('locked.json'))).err).toMatch(/permission denied\n$/);
  });

  test.runIf(existsSync('/proc/self/status'))('a file of the system that says size 0 is read to its end', async () => {
    expect((await run('fly', '/proc/self/status')).err).toMatch(/not JSON from line 1, column 1 on: found "Name"/);
    expect((await run('fly', '/proc/self/environ')).err).toMatch(/it is not text\n$/);
  });

  test('a file beyond the bound is refused by its size, a film by what it is', async () => {
    const made = makeFolder({ 'long.json': text, 'film.mkv': '' });
    writeFileSync(made.at('film.mkv'), Buffer.from([0x1a, 0x45, 0xdf, 0xa3]));
    for (const name of ['long.json', 'film.mkv']) truncateSync(made.at(name), 3e9);
    expect((await run('fly', made.at('long.json'))).err).toMatch(
      /it is 3,000,000,000 bytes; at most 67,108,864 bytes are read\n$/,
    );
    expect((await run('fly', made.at('film.mkv'))).err).toMatch(/it is a film\n$/);
    expect((await run('fit', made.at('long.json'))).err).toMatch(
      /it is 3,000,000,000 bytes; at most [\d,]+ bytes are read\n$/,
    );
  });
});
