// The command "fit": what is said of a recording, what it writes, and what it refuses.
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CAUTION, formatBvh } from '../../sim/index.ts';
import { posedOfFlight } from '../../sim/recording/posed-flight.ts';
import { evenTimes, flyReady } from '../recording/filmed.ts';
import { makeFolder, run } from './run.ts';

const flight = flyReady('back-straight-full');
const posed = posedOfFlight(flight, evenTimes(0, flight.duration, 100));
const bvh = [...formatBvh(posed)].join('');

describe('fit', () => {
  const made = makeFolder();
  const file = made.at('full.bvh');
  writeFileSync(file, bvh);

  test('a flight of our own is good enough for a test, and the skill it writes flies the same', async () => {
    const [out, report] = [made.at('full.json'), made.at('report.json')];
    const said = await run('fit', file, '--out', out, '--report', report);
    expect([said.code, said.err]).toEqual([0, '']);
    expect(said.out).toContain('fitted g 9.81 ±');
    expect(said.out).toContain('Good enough for a test');
    expect(said.out).toMatch(/momentumZ +[\d.]+ +[\d.]+ +± /);
    expect(said.out).toContain('it tests the mechanics, not the schedule');
    expect(said.out).toContain(CAUTION);
    const read = JSON.parse(readFileSync(report, 'utf8'));
    const [recording] = read.recordings;
    expect([read.format, read.version, recording.quality.isTest]).toEqual(['shapeflight-recording-report', 1, true]);
    // measured: 5e-6
    expect(Math.abs(recording.test.worst.twistRev)).toBeLessThan(1e-4);
    // the last row at 100 a second is 6 ms before the touchdown of the flight itself, 0.95 somersaults on
    const flown = await run('fly', out);
    expect(flown.code).toBe(0);
    expect(flown.out).toContain('0.94 somersaults backward, 0.99 twists left, 0.93 s in the air');
  });

  test('the recording goes on as BVH, TRC and a table', async () => {
    const files = ['again.bvh', 'again.trc', 'again.csv'].map(made.at);
    const { code } = await run('fit', file, '--bvh', files[0], '--trc', files[1], '--csv', files[2]);
    expect(code).toBe(0);
    expect(readFileSync(files[0], 'utf8').startsWith('HIERARCHY')).toBe(true);
    expect(readFileSync(files[1], 'utf8')).toContain('thighL.o');
    expect(readFileSync(files[2], 'utf8')).toContain('angle_kneeFlexionL_rad');
  });

  test('what its names were taken for is written, and read back says the same', async () => {
    const map = made.at('map.json');
    const first = await run('fit', file, '--map-out', map);
    const again = await run('fit', file, '--map', map);
    expect([first.code, again.code]).toEqual([0, 0]);
    expect(JSON.parse(readFileSync(map, 'utf8')).joints).toContainEqual({ from: 'thighL', segment: 'thighL' });
    expect(again.out).toContain('Good enough for a test');
  });

  test('played too fast it is no test: said why, and no skill is written', async () => {
    const fast = made.at('fast.bvh');
    writeFileSync(fast, bvh.replace(/Frame Time: .*/, 'Frame Time: 0.006'));
    const { code, out, err } = await run('fit', fast, '--out', made.at('fast.json'));
    expect([code, out]).toEqual([3, '']);
    expect(err).toMatch(
      /Not a test: the fitted g is 27\.\d ± 0\.0 m\/s2 and must be 9\.81: a wrong clock \(times × 1\.67 would/,
    );
    expect(err).toContain('is not written');
    expect(made.list()).not.toContain('fast.json');
  });

  test('what it cannot read or use says where and what is allowed', async () => {
    const fails = async (...argv: string[]): Promise<string> => {
      const { code, out, err } = await run('fit', ...argv);
      expect([code, out]).toEqual([2, '']);
      return err;
    };
    expect(await fails()).toContain('RECORDING is missing');
    expect(await fails(made.at('none.c3d'))).toContain('none.c3d');
    const damaged = made.at('damaged.bvh');
    writeFileSync(damaged, bvh.slice(0, 900));
    expect(await fails(damaged)).toContain('damaged.bvh');
    expect(await fails(file, '--smooth', 'much')).toMatch(/--smooth: "much" .*cutoff:HZ/);
    expect(await fails(file, '--from', '0.5', '--to', '0.2')).toMatch(/--to: 0\.2 .*later than --from/);
    expect(await fails(file, '--athlete', 'nobody')).toContain('nobody');
    expect(await fails(file, '--map', made.at('full.bvh'))).toContain('full.bvh');
  });
});
