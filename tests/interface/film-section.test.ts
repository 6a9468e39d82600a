// What is printed of a clip is what goes along: its times with their ± beside those of the flight; a bare file has no such section.
import { expect, test } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import { type ClipMark, checkSkillFile } from '../../sim/index.ts';
import { makeClipping } from '../../src/engine/clip.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { filmSections } from '../../src/features/hand/film-section.ts';
import { takeFrames } from '../clip/filmed.ts';
import { fileOf } from '../skill/load.ts';

const engine = makeClipping();
const file = fileOf('back-straight-full');
const result = makeEngine({ athletes, shapes }).fly(file);
const frames = takeFrames(120, 1.5, 0.008, 0);
const marks: ClipMark[] = [
  { kind: 'takeoff', frame: 12 },
  { kind: 'landing', frame: 134 },
];
const entry = engine.write(
  {
    title: 'Clip',
    measured: { marks, trueHz: 120, posed: [] },
    times: engine.times(frames, marks, result),
  },
  result,
);

test('air time, speed and rise, each with ± and what the flight has', () => {
  const [section, ...more] = filmSections(checkSkillFile({ ...file, recordings: [entry] }), result, engine);
  expect(more).toEqual([]);
  const rows = section.table?.rows ?? [];
  expect(rows.map(([label]) => label)).toEqual(['Air time', 'Speed up', 'Rise']);
  expect(rows[0][1]).toBe('1.017');
  expect(rows[0][2]).toMatch(/^± 0\.0\d\d s$/);
  expect(Number(rows[0][3])).toBeCloseTo(result.flight.duration, 3);
  expect(JSON.stringify(section.text)).toContain('120 frames a second, as was typed');
});

test('without what was measured there is none', () => {
  expect(filmSections(file, result, engine)).toEqual([]);
});

test('what is damaged is said to be, and what is not is printed all the same', () => {
  const broken = { ...entry, data: { ...(entry.data as object), marks: 'none' } };
  const handed = checkSkillFile({ ...file, recordings: [broken, entry] });
  const [first, second] = filmSections(handed, result, engine);
  expect(JSON.stringify(first.text)).toMatch(/cannot be read: .*marks/);
  expect(first.table).toBeUndefined();
  expect(second.table?.rows).toHaveLength(3);
});
