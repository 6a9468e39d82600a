// What a flight cannot do is said of its file, with what makes it so.
import { rmSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { flightIn } from '../files/parts.ts';
import { fileOf } from '../skill/load.ts';
import { makeFolder, run } from './run.ts';

const file = fileOf('back-tuck');
const { takeoff } = flightIn(file);
if (takeoff) takeoff.velocityMPerS = { ...takeoff.velocityMPerS, up: -3 };
const made = makeFolder({ 'down.json': file });
afterAll(() => rmSync(made.folder, { recursive: true }));

test('shapes out of order, since the flight is too short for them, name the file and how long it lasts', async () => {
  for (const command of ['fly', 'margin', 'map']) {
    const more = command === 'map' ? ['--x', 'takeoff.h.z', '--y', 'takeoff.speedUp'] : [];
    const { code, err } = await run(command, made.at('down.json'), ...more);
    expect(code, command).toBe(2);
    expect(err, command).toMatch(/^shapeflight: \S+down\.json: the end of block 2 \(tuck\) .* the start of block 3/);
    expect(err, command).toMatch(/; the flight lasts 0\.\d+ s, and times before touchdown count back from its end$/m);
  }
});
