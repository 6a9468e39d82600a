// What was measured in a clip travels as a recording, comes back as it was, and nothing else is read.
import { describe, expect, it } from 'vitest';
import {
  type ClipMeasured,
  type ClipRecording,
  type ClipWriting,
  calcClipTimes,
  checkSkillFile,
  FieldError,
  isClipRecording,
  readClipRecording,
  writeClipRecording,
} from '../../sim/index.ts';
import { fileOf } from '../skill/load.ts';
import { takeFrames } from './filmed.ts';

const angles = ['hipFlexionL', 'neckFlexion'];
const measured: ClipMeasured = {
  marks: [
    { kind: 'takeoff', frame: 12, row: 0.8 },
    { kind: 'turn', quarters: 1, frame: 40 },
    { kind: 'landing', frame: 134 },
    { kind: 'rest', frame: 135 },
  ],
  trueHz: 120,
  lines: 0.008,
  scale: {
    kind: 'plane',
    corners: [
      [300, 900],
      [1500, 910.5],
      [1300, 800],
      [450, 795],
    ],
    widthM: 6,
    depthM: 2,
    posts: [{ foot: [500, 850], top: [505, 500], heightM: 1.5 }],
  },
  stand: { feet: [600, 860], goesRight: false },
  view: 1.1,
  posed: [
    {
      frame: 40,
      t: 0.2375,
      angles: [1.2, -0.3],
      somersault: 1.6,
      tilt: 0.1,
      twist: -3.2,
      p_WScm_W: [0.4, 1.9, -0.05],
      reaches: [{ limb: 'armL', ratio: 1.02 }],
    },
  ],
};
const frames = takeFrames(120, 1.5, 0.008, 0);
const times = calcClipTimes(frames, measured.marks, { gravity: 9.81, drop: { value: 0, plusMinus: 0.03 } });
const webm = 'data:video/webm;base64,GkXfo59ChoEBQveBAULygQRC84EIQoKEd2VibQ==';
const mp4 = 'data:video/mp4;base64,AAAAIGZ0eXBpc29tAAACAGlzb21pc28yYXZjMW1wNDE=';
const writing: ClipWriting = { title: 'Third try', measured, angles, times, picture: frames, start: -0.1, clip: mp4 };
const written = (): ClipRecording => JSON.parse(JSON.stringify(writeClipRecording(writing)));

/** Numbers as a file keeps them, without what it does not. */
const plain = (value: object | undefined): unknown =>
  JSON.parse(
    JSON.stringify({ ...value, zero: undefined, faults: undefined }, (_, x) =>
      typeof x === 'number' ? Number(x.toFixed(6)) : x,
    ),
  );

describe('a clip in a skill file', () => {
  it('comes back as it was, to rounding', () => {
    const entry = written();
    expect(isClipRecording(entry)).toBe(true);
    const got = readClipRecording(entry, angles);
    expect(got.clip).toBe(mp4);
    expect(got.picture).toEqual({ width: 1920, height: 1080 });
    const { zero, faults, ...shown } = times;
    expect(got.times).toMatchObject({ faults: [] });
    expect(plain(got.times)).toEqual(plain(shown));
    const { posed, view, ...rest } = got.measured;
    const { posed: own, view: ownView, ...others } = measured;
    expect(rest).toEqual(others);
    expect(view).toBeCloseTo(ownView ?? 0, 9);
    expect(posed[0].angles).toEqual(own[0].angles.map((a) => expect.closeTo(a, 9)));
    expect({ ...posed[0], angles: [] }).toEqual({
      ...own[0],
      angles: [],
      somersault: expect.closeTo(1.6, 9),
      tilt: expect.closeTo(0.1, 9),
      twist: expect.closeTo(-3.2, 9),
    });
    // another body names another order
    expect(readClipRecording(entry, [...angles].reverse()).measured.posed[0].angles[0]).toBeCloseTo(-0.3, 9);
    expect(readClipRecording({ ...entry, data: { ...(entry.data as object), clip: webm } }, angles).clip).toBe(webm);
    expect(entry).toMatchObject({ title: 'Third try', kind: 'film', startS: -0.1, rateHz: 120 });
  });

  it('says what the marks give, with ±, for readers that compute nothing; what is not known is null', () => {
    const data = written().data as { times: Record<string, { value: number; plusMinus: number | null }> };
    expect(data.times.airTimeS.value).toBeCloseTo(times.airTime?.value ?? 0, 8);
    expect(data.times.airTimeS.plusMinus).toBeGreaterThan(0.006);
    expect(data.times.turns).toMatchObject([{ fromQuarters: 0, toQuarters: 1 }]);
    // one frame of braking may be none
    expect(data.times.brakingMPerS2.plusMinus === null || data.times.brakingMPerS2.plusMinus > 50).toBe(true);
    expect(JSON.stringify(writeClipRecording({ ...writing, times: undefined }))).not.toContain('airTimeS');
  });

  it('is a recording of a skill file', () => {
    const file = { ...fileOf('back-tuck'), recordings: [written()] };
    expect(checkSkillFile(JSON.parse(JSON.stringify(file))).recordings).toHaveLength(1);
  });

  it('length alone, and nothing more than marks', () => {
    const bare = writeClipRecording({
      title: 'a',
      angles: [],
      measured: { marks: [], posed: [], scale: { kind: 'length', from: [1, 2], to: [1, 300], lengthM: 1.6 } },
    });
    expect(readClipRecording(bare, [])).toEqual({
      measured: { marks: [], posed: [], scale: { kind: 'length', from: [1, 2], to: [1, 300], lengthM: 1.6 } },
    });
  });
});

describe('what is no such entry is refused with its path', () => {
  const fault = (change: (data: Record<string, unknown>) => void): string => {
    const entry = written();
    change(entry.data as Record<string, unknown>);
    try {
      readClipRecording(entry, angles);
    } catch (error) {
      if (error instanceof FieldError) return error.message;
      throw error;
    }
    return 'taken';
  };
  const mark = { kind: 'takeoff', frame: 1 };
  const POSED = JSON.stringify((written().data as { posed: object[] }).posed[0]);
  const cases: readonly (readonly [string, (data: Record<string, unknown>) => void])[] = [
    ['data.version', (d) => (d.version = 2)],
    ['data.form', (d) => (d.form = 'film')],
    ['data.more', (d) => (d.more = 1)],
    ['data.marks[0].frame', (d) => (d.marks = [{ ...mark, frame: 1.5 }])],
    ['data.marks[0].kind', (d) => (d.marks = [{ ...mark, kind: 'jump' }])],
    ['data.marks[0].row', (d) => (d.marks = [{ ...mark, row: 3 }])],
    ['data.marks', (d) => (d.marks = Array(1001).fill(mark))],
    ['data.posed', (d) => (d.posed = Array.from({ length: 61 }, () => JSON.parse(POSED)))],
    ['data.posed[0].anglesDeg.kneeL', (d) => (d.posed = [{ ...JSON.parse(POSED), anglesDeg: { kneeL: 1 } }])],
    ['data.trueHz', (d) => (d.trueHz = 0)],
    ['data.viewDeg', (d) => (d.viewDeg = 170)],
    ['data.clip', (d) => (d.clip = 'data:video/webm;base64,AAAA')],
    ['data.clip', (d) => (d.clip = 'data:text/html;base64,GkXfo59C')],
    ['data.clip', (d) => (d.clip = `${mp4}<script>`)],
    ['data.clip', (d) => (d.clip = `${mp4}\n`)],
    ['data.clip', (d) => (d.clip = mp4.slice(0, 60) + 'A'.repeat(8_400_000))],
    ['data.scale', (d) => (d.scale = { kind: 'guess' })],
    ['data.stand.feetPx', (d) => (d.stand = { feetPx: [1], goesRight: true })],
    ['data.marks', (d) => delete d.marks],
  ];
  for (const [path, change] of cases)
    it(`${path}: ${change.toString().slice(7, 70)}`, () => expect(fault(change)).toMatch(`${path}`));

  it('what is no object', () => {
    expect(() => readClipRecording({ title: '', kind: 'film', data: 3 }, [])).toThrow('data');
    expect(isClipRecording({ title: '', kind: 'film' })).toBe(false);
    expect(isClipRecording({ title: '', kind: 'capture', data: { form: 'clip' } })).toBe(false);
    // and what is written wrongly is not written
    const wrong = { ...measured, marks: [{ kind: 'takeoff' as const, frame: -1 }] };
    expect(() => writeClipRecording({ ...writing, measured: wrong })).toThrow('data.marks[0].frame');
  });
});
