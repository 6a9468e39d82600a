/** What the shell says of a body: its age, and what its numbers rest on. */
import { describe, expect, test } from 'vitest';
import { makeFolder, run } from './run.ts';

const human = { kind: 'human', name: 'Tove Ekdahl', sex: 'female', massKg: 15, statureM: 0.9 };
const { at, read } = makeFolder({
  'small.json': human,
  'young.json': { ...human, massKg: 33, statureM: 1.4, ageYears: 11 },
  'none.json': { ...human, massKg: 10, statureM: 2.5 },
  'heavy.json': { ...human, massKg: 54, statureM: 1.62, segments: { thigh: { massKg: 20 }, shank: { massKg: 8 } } },
});

describe('a body', () => {
  test('of a child is printed with its age and what it rests on', async () => {
    const { out } = await run('body', at('young.json'));
    expect(out).toMatch(/33\.000 kg, 1\.400 m, 11 years/);
    expect(out).toMatch(/of boys of this age .* used for a girl/);
    expect(out).toMatch(/unverified, within 15 %/);
  });

  test('outside the data is named; an impossible one is refused in one line', async () => {
    expect((await run('body', at('small.json'))).out).toMatch(/0\.90 m is outside/);
    const { code, err } = await run('body', at('none.json'));
    expect([code, err]).toEqual([2, expect.stringMatching(/none\.json: massKg: 10 is not possible.*1\.6 kg\/m²/)]);
    const heavy = await run('body', at('heavy.json'));
    expect(heavy.err).toMatch(/add up to 56\.000 kg, which leaves nothing/);
  });

  test('is in the summary of a flight, in text and JSON', async () => {
    const { out } = await run('fly', 'back-tuck', '--summary', at('s.json'));
    expect(out).toMatch(/1\.40 m, 11 years/);
    expect(out).toMatch(/ body +Lengths, mass centres and radii/);
    const { athlete } = JSON.parse(read('s.json')) as { athlete: { ageYears: number; notes: string[] } };
    expect(athlete.ageYears).toBe(11);
    expect(athlete.notes).toHaveLength(1);
  });
});
