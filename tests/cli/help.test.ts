// Every command prints its own help, and its table of options is what it takes.
import { describe, expect, test } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { parseCommand } from '../../src/cli/command-line.ts';
import { COMMANDS, type CommandName, optionsOf } from '../../src/cli/command-table.ts';
import { run } from './run.ts';

const names = Object.keys(COMMANDS) as CommandName[];

test('there is a table row for every command that the help of all names', async () => {
  const { out } = await run('--help');
  const named = new Set([...out.matchAll(/^ {2}shapeflight ([a-z]+) /gm)].map((m) => m[1]));
  expect([...named].sort()).toEqual([...names].sort());
});

describe.each(names)('%s --help', (name) => {
  test('says usage, every option, what is usual, units, an example, exit codes', async () => {
    const { code, out, err } = await run(name, '--help');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain(`shapeflight ${COMMANDS[name].usage}`);
    for (const { name: option, says } of optionsOf(name)) {
      expect(out).toContain(`--${option}`);
      expect(out).toContain(says);
    }
    expect(out).toMatch(/\nUnits {6}\S/);
    expect(out).toMatch(/\n {2}0 {2}done\n/);
    expect(out).toContain(CAUTION);
    for (const asked of [
      [name, '-h'],
      ['help', name],
      [name, 'back-tuck', '--help'],
    ])
      expect((await run(...asked)).out).toBe(out);
  });

  test('its example is taken as it is', () => {
    const words = [...COMMANDS[name].example.matchAll(/"([^"]*)"|(\S+)/g)].map((m) => m[1] ?? m[2]);
    expect(parseCommand(words).kind).toBe(name);
  });

  test('the options of its table are those it takes, and another is answered with them', async () => {
    const { code, err } = await run(name, 'back-tuck', '--luck', '3');
    expect(code).toBe(2);
    expect(err).toContain(`${name}: --luck is not an option of this command; there are: --`);
    for (const { name: option, takes } of optionsOf(name)) {
      expect(err).toContain(`--${option}`);
      const said = await run(name, `--${option}${takes ? '=' : ''}`);
      expect(said.err).not.toContain('not an option');
    }
  });
});
