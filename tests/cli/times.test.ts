// The command "times": instants of a film as typed, and what they give.
import { describe, expect, test } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { run } from './run.ts';

describe('times', () => {
  test('air time, rise and rates, each with its ±', async () => {
    const { code, out, err } = await run(
      'times',
      '--takeoff=0.433',
      '--landing=1.458',
      '--turns=0.675,,1.225',
      '--hz=120',
      '--rest=1.583',
    );
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^In the clip 1\.0[23] s in the air, rises 1\.29 m\.\n/);
    expect(out).toMatch(/Air time {2,}1\.025 ± 0\.0\d\d s\n/);
    expect(out).toMatch(/1st quarter {2,}1\.0\d ± 0\.0\d rev\/s\n/);
    expect(out).toMatch(/2nd to 3rd quarter {2,}0\.91 ± 0\.0\d rev\/s\n/);
    expect(out).toMatch(/Braking {2,}0\.125 ± 0\.0\d\d s\n/);
    expect(out).toContain('not known: nothing is corrected');
    expect(out).toContain(CAUTION);
  });
  test('a slowed-down film is read in the seconds of its player', async () => {
    const { out } = await run(
      'times',
      '--takeoff=1',
      '--landing=5.1',
      '--hz=120',
      '--file-hz=30',
      '--lines=0.008',
      '--drop=0.1',
    );
    expect(out).toMatch(/Air time {2,}1\.025 /);
    expect(out).toMatch(/Rise {2,}1\.2\d ± /);
    // as if it had not been slowed down
    const fast = await run('times', '--takeoff=1', '--landing=5.1', '--hz=30');
    expect(fast.out).toContain('Is the true rate right?');
  });
  test('what is wrong says which option, and what is allowed', async () => {
    const fails = async (...argv: string[]) => {
      const { code, out, err } = await run('times', ...argv);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    expect(await fails()).toContain('--takeoff is missing');
    expect(await fails('--takeoff=1')).toContain('--hz is missing');
    expect(await fails('--takeoff=1', '--hz=0')).toContain('--hz: 0 is not possible; allowed: 1 to 2000');
    expect(await fails('--takeoff=1', '--landing=1.505', '--hz=100')).toContain('--landing: 1.505 is not possible');
    expect(await fails('--takeoff=soon', '--hz=100')).toContain('"soon" is not a number');
    expect(await fails('--takeoff=1', '--hz=100', '--lines=3')).toContain('--lines: 3 is not possible');
    expect(await fails('--takeoff=1', '--hz=100', '--turns=a')).toContain('--turns: "a" is not a number');
    expect(await fails('--takeoff=1', '--hz=100', '--drop=99')).toContain('--drop: 99');
    expect(await fails('film.mp4', '--takeoff=1', '--hz=100')).toContain('one argument too many');
    const order = await run('times', '--takeoff=1', '--landing=0.5', '--hz=100');
    expect(order.out).toContain('Landing, frame 2, is not used: it has to be after take-off, frame 52.');
  });
});
