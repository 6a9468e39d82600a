// "fly" tells the phases of a file that has them, and only of those.
import { expect, test } from 'vitest';
import { CAUTION } from '../../sim/index.ts';
import { makeFolder, run } from './run.ts';

test('a giant into a dismount: swing, release, joints, landing, ending', async () => {
  const { code, out, err } = await run('fly', 'giant-double-straight');
  expect([code, err]).toEqual([0, '']);
  for (const line of [
    /^Swing +\d\.\d\d s; grip at most \d+ N \(\d\.\d\d body weights\)/m,
    /^Release +mass centre \d\.\d\d m up, speed \d\.\d\d m\/s \(-?\d\.\d\d upward\)/m,
    /^Joints +limited to (\d+(\.\d+)? times )?what adults of this size are known to have; largest torque that of the \w+, \d+ N·m/m,
    /^Landing +down at \d\.\d\d m\/s; ground force at most \d+\.\d body weights at one instant, after \d+ ms/m,
    /its first tenth of a second alone is run; sinks \d+\.\d cm into the mat/,
    /of \d+ J the joints took \d+ J, the mat \d+ J and holds \d+ J, soles and soft tissue \d+ J, \d+ J still move/,
    /^Ending +how it ends is not computed: it turns with \d+ kg·m²\/s at touchdown; endings are judged up to \d+ kg·m²\/s for this body, the impact alone is run/m,
  ])
    expect(out).toMatch(line);
  expect(out).not.toMatch(/when braking ends/);
  expect(out).toContain(CAUTION);
}, 60_000);

test('a landing that is braked says when, and where its mass centre is then', async () => {
  const { out } = await run('fly', 'floor-double-tuck');
  expect(out).toMatch(
    /braked in \d+ ms: mean deceleration \d+\.\d g, mean ground force over that time \d+\.\d body weights/,
  );
  expect(out).toMatch(
    /extrapolated mass centre when braking ends, from the middle of the soles: \d+\.\d cm (forward|back) to \d+\.\d cm (forward|back), its turning/,
  );
}, 60_000);

test('a vault: the contact of the hands', async () => {
  const { out } = await run('fly', 'vault-handspring-half');
  expect(out).toMatch(/^Contact +200 ms, mean force \d+ N \(2\.30 body weights\), 26 deg off the vertical/m);
  expect(out).toMatch(/neither slips nor pulls; outside what is known, see above/);
  expect(out).not.toMatch(/^Swing/m);
}, 60_000);

test('the summary for machines holds the phases', async () => {
  const made = makeFolder();
  const { out } = await run('fly', 'floor-double-tuck', '--summary', made.at('o.json'));
  const { phases, done, verdict } = JSON.parse(made.read('o.json'));
  expect(done.touchedBy).toBe('feet');
  expect(phases.swing).toBeUndefined();
  expect(phases.contact).toMatchObject({ timeS: 0.12, faults: [] });
  expect(phases.landing).toMatchObject({ kind: 'landed', ending: 'smallStep' });
  expect(Object.values<number>(verdict.likelihood.tenths).reduce((a, b) => a + b, 0)).toBe(10);
  expect(out).toContain(' of 10 of the stated ranges');
  expect(phases.landing.meanBodyWeights).toBeCloseTo(phases.landing.meanDecelerationMPerS2 / 9.81 + 1, 9);
  expect(phases.landing.joints.map((j: { joint: string }) => j.joint)).toContain('knee');
  expect(JSON.parse(made.read('o.json')).takeoff).toMatchObject({ place: 'floor', contact: { timeS: 0.12 } });
  await run('fly', 'back-tuck', '--summary', made.at('p.json'));
  const { ranges, cautions } = JSON.parse(made.read('p.json')).takeoff;
  expect(ranges.upOut).toMatchObject({ unit: 'm/s', basis: 'usual' });
  expect(cautions).toEqual([]);
  expect(JSON.parse(made.read('p.json')).phases).toBeUndefined();
}, 60_000);

test('a value over what is known and under a caution says from where on it is cautioned', async () => {
  const { out } = await run('fly', 'dive-forward-one-and-half-pike');
  const [, torque, known] =
    /largest torque .*, (\d+) N·m at .*; known (\d+) N·m \(cautioned from 1\.3 times on\)/.exec(out) ?? [];
  expect(Number(torque)).toBeGreaterThan(Number(known));
  expect(Number(torque)).toBeLessThan(1.3 * Number(known));
  expect(out).toMatch(/No cautions in the air: nothing is beyond .* 1\.3 times their known strengths/);
  expect((await run('fly', 'back-tuck')).out).not.toMatch(/cautioned from/);
}, 60_000);

test('of a bed that throws the athlete up again no ending is counted', async () => {
  const { out } = await run('fly', 'trampoline-double-tuck');
  expect(out).toMatch(/, bounces/);
  expect(out).not.toMatch(/of 10 of the stated ranges/);
  // what taking it in asks for is computed, whether anyone would stand there is not
  expect(out).not.toMatch(/a screen, the run decides/);
  expect(out).toMatch(/^Ending +bounces: .*: computed is what taking it in asks for, not how it goes on$/m);
}, 60_000);

test('a late hand: the twist is said to a tenth, and why, in sentence, basis, JSON and margin', async () => {
  const made = makeFolder();
  const { out } = await run('fly', 'giant-late-hand-full', '--summary', made.at('o.json'));
  expect(out).toMatch(/about 1\.0 twist right/);
  expect(out).toMatch(/^ +greatest tilt +7\.\d deg at \d\.\d+ s, from the vertical plane of travel$/m);
  expect(out).toMatch(/^How it ends is not computed: .* so the twist is known to a tenth and no finer\.$/m);
  expect(JSON.parse(made.read('o.json')).verdict).toMatchObject({ twistsKnownTo: 0.1 });
  const margin = await run('margin', 'giant-late-hand-full', '--samples', '2', '--no-bars', '--balance', 'off');
  expect(margin.out).toMatch(/so the twist is known to a tenth and no finer\./);
}, 120_000);

test('a flight alone has no phases', async () => {
  const { out } = await run('fly', 'back-tuck');
  expect(out).not.toMatch(/^(Swing|Contact|Landing|Ending)/m);
});
