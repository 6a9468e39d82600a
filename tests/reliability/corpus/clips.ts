// What was measured in a clip, as a skill file keeps it: marks, scale, posed frames, damaged.

import { athletes, skills } from '../../../presets/index.ts';
import {
  athleteOf,
  type ClipRecording,
  calcClipTimes,
  checkSkillFile,
  isClipRecording,
  keepBack,
  makeBody,
  parseJson,
  readAthlete,
  readClipRecording,
  wordClip,
  writeClipRecording,
} from '../../../sim/index.ts';
import { takeFrames } from '../../clip/filmed.ts';
import { damageJson } from './damage-json.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { type CorpusKind, textOf } from './kind.ts';
import { checkSentence, checkShared, hold, type Outcome, tryRead } from './law.ts';
import { shelf } from './sound.ts';

const angles = makeBody(readAthlete(athletes['ilse-marrow'])).angles.map(({ name }) => name);
const both = (value: number) => ({ value, plusMinus: 0.01 });
const DATA = {
  form: 'clip',
  version: 1,
  picturePx: [1920, 1080],
  marks: [
    { kind: 'takeoff', frame: 12, row: 0.8, atS: both(0) },
    { kind: 'turn', quarters: 1, frame: 40 },
    { kind: 'landing', frame: 134, atS: { value: 1.01, plusMinus: null } },
    { kind: 'rest', frame: 135 },
  ],
  trueHz: 120,
  linesS: 0.008,
  scale: {
    kind: 'plane',
    cornersPx: [
      [300, 900],
      [1500, 910.5],
      [1300, 800],
      [450, 795],
    ],
    widthM: 6,
    depthM: 2,
    posts: [{ footPx: [500, 850], topPx: [505, 500], heightM: 1.5 }],
  },
  stand: { feetPx: [600, 860], goesRight: false },
  viewDeg: 63,
  posed: [
    {
      frame: 40,
      tS: 0.2375,
      anglesDeg: { hipFlexionL: 68, neckFlexion: -17 },
      somersaultDeg: 92,
      tiltDeg: 6,
      twistDeg: -183,
      massCentreM: [0.4, 1.9, -0.05],
      reaches: [{ limb: 'armL', ratio: 1.02 }],
    },
  ],
  times: {
    airTimeS: both(1),
    upMPerS: both(4.9),
    turns: [{ fromQuarters: 0, toQuarters: 1, timeS: both(0.2), revPerS: both(1.2) }],
  },
  clip: 'data:video/webm;base64,GkXfo59ChoEBQveBAULygQRC84EIQoKEd2VibQ==',
};
const file = checkSkillFile(skills['back-straight-full']);
const frames = takeFrames(120, 1.6, 0.008, 0);

export const clipsKind: CorpusKind = {
  name: 'clips',
  make: (r) => {
    const recording = {
      title: 'From the side',
      kind: 'film',
      file: 'a.mp4',
      startS: -0.2,
      rateHz: 240,
      note: 'made up',
      data: DATA,
    };
    if (r.isHit(0.9)) {
      const { text, what } = damageJson(
        r.isHit(0.8)
          ? recording
          : {
              ...recording,
              data: { ...DATA, scale: { kind: 'length', fromPx: [1, 2], toPx: [1, 300], lengthM: 1.6 } },
            },
        r,
      );
      return { file: 'clip.json', bytes: utf8(text), what };
    }
    const { bytes, what } = damageBytes(utf8(JSON.stringify(recording)), r, true);
    return { file: 'clip.json', bytes, what };
  },
  run: (input): Outcome => checkShared(() => runClip(textOf(input))),
};

function runClip(text: string | undefined): Outcome {
  if (text === undefined) return 'refused';
  const read = tryRead(() => {
    const whole = checkSkillFile({ ...file, recordings: [parseJson(text)] });
    const [entry] = whole.recordings ?? [];
    return { whole, entry, got: isClipRecording(entry) ? readClipRecording(entry, angles) : undefined };
  }, text);
  if (!('value' in read)) return 'refused';
  const { whole, entry, got } = read.value;
  keepBack(whole, athleteOf(whole, shelf), { name: false, age: false, mass: false, sheets: false, film: true });
  if (!got) return 'refused';
  checkAgain(entry, got);
  return 'read';
}

function checkAgain(entry: ClipRecording, { measured, picture, clip }: ReturnType<typeof readClipRecording>): void {
  const { title } = entry;
  const again = writeClipRecording({
    title,
    measured,
    angles,
    ...(picture ? { picture } : {}),
    ...(clip ? { clip } : {}),
  });
  const back = readClipRecording(again, angles);
  hold(
    JSON.stringify(back.measured.marks) === JSON.stringify(measured.marks),
    'written and read again its marks are others',
  );
  hold(back.measured.posed.length === measured.posed.length, 'written and read again a posed frame is lost');
  const times = calcClipTimes(frames, measured.marks, { gravity: 9.81, drop: { value: 0, plusMinus: 0.03 } });
  const said = wordClip(times)
    .map(({ text }) => text)
    .join('');
  if (said !== '') checkSentence(said, JSON.stringify(entry));
}
