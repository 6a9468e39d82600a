// What was measured in a clip goes along where it is ticked; names in it go with the name, and a clip that is in the file never.
import { expect, test } from 'vitest';
import { readSkillLink, writeSkillLink } from '../../sim/handing/link.ts';
import { handing } from '../../src/engine/handing.ts';
import { ALL, handOn, NONE, ready } from './ready.ts';

const [, file] = ready[0];
const data = { form: 'clip', version: 1, marks: [{ kind: 'takeoff', frame: 12 }], clip: 'data:video/webm;base64,AAAA' };
const measured = {
  title: 'Ivo, third try',
  kind: 'film' as const,
  file: 'ivo.mp4',
  startS: -0.1,
  rateHz: 120,
  note: 'Ivo',
  data,
};
const others = [
  { title: 'Capture of Ivo', kind: 'capture' as const, data: { form: 'clip' } },
  { title: 'A film of another program', kind: 'film' as const, data: { marks: [] } },
];
const filmed = { ...file, recordings: [...others, measured] };

test('without the tick nothing of it goes', () => {
  expect(handOn(filmed, { ...ALL, film: false }).file).not.toHaveProperty('recordings');
});

test('with the tick it goes alone, without names, remark and clip', () => {
  const { recordings } = handOn(filmed, { ...NONE, film: true }).file;
  const { clip: _, ...rest } = data;
  expect(recordings).toEqual([{ title: 'Clip', kind: 'film', startS: -0.1, rateHz: 120, data: rest }]);
  expect(JSON.stringify(recordings)).not.toMatch(/ivo/i);
});

test('with the name its file and remark go, and still no clip', () => {
  const [one, ...more] = handOn(filmed, ALL).file.recordings ?? [];
  expect(more).toEqual([]);
  expect(one).toMatchObject({ title: 'Ivo, third try', file: 'ivo.mp4', note: 'Ivo' });
  expect(one.data).not.toHaveProperty('clip');
});

test('it goes by link and comes back as it was', () => {
  const handed = handOn(filmed, { ...NONE, film: true });
  expect(readSkillLink(writeSkillLink(handed)).file.recordings).toEqual(handed.file.recordings);
});

test('only the clip in which it was measured last may go', () => {
  const two = { ...filmed, recordings: [...filmed.recordings, { ...measured, file: 'second.mp4' }, others[0]] };
  expect([handing.isFilmOf(two, 'second.mp4'), handing.isFilmOf(two, 'ivo.mp4')]).toEqual([true, false]);
  expect(handing.isFilmOf(file, 'ivo.mp4')).toBe(false);
});

test('a clip is put into what was measured in it, and into nothing else', () => {
  const handed = handOn(filmed, { ...NONE, film: true });
  const whole = handing.withClip(handed.file, 'data:video/mp4;base64,BBBB');
  expect(whole.recordings?.[0].data).toMatchObject({ clip: 'data:video/mp4;base64,BBBB', marks: data.marks });
  const bare = handOn(filmed, NONE).file;
  expect(handing.withClip(bare, 'data:video/mp4;base64,BBBB')).toBe(bare);
});
