// Recordings in every form that is read, and maps of them.
import { formatMap, parseJson, parseMap } from '../../../sim/index.ts';
import { readRecordingSteps } from '../../../sim/recording/read-recording.ts';
import type { Recording } from '../../../sim/recording/recording.ts';
import { RECORDING_LIMITS } from '../../../sim/recording/recording-limits.ts';
import { SOUND } from '../../recording/hostile/samples.ts';
import { damageJson } from './damage-json.ts';
import { damageBytes, utf8 } from './damage-text.ts';
import { type CorpusKind, type Input, textOf } from './kind.ts';
import { checkShared, hold, LawBroken, type Outcome, tryRead } from './law.ts';
import type { Random } from './random.ts';
import { checkSomeShell } from './shell-law.ts';

/** Each kind of entry once. */
const MAP = {
  format: 'shapeflight-recording-map',
  version: 1,
  unitM: 0.001,
  up: '+z',
  joints: [
    { from: 'hips', segment: 'lowerTrunk' },
    { from: 'knee', segment: 'shankL' },
  ],
  points: [
    { from: 'LELB', segment: 'forearmL', atM: [0, 0.1, 0], isFixed: true },
    { from: 'RELB', segment: '' },
  ],
  columns: [
    { from: 'a', means: { kind: 'angle', angle: 'kneeFlexionL', unit: 'deg' } },
    { from: 'b', means: { kind: 'point', point: 'toe', axis: 'x', unitM: 1 } },
    { from: 'c', means: { kind: 'quaternion', of: 'F', part: 'w' } },
    { from: 'd', means: { kind: 'matrix', of: 'pelvis', row: 1, column: 3 } },
    { from: 'e', means: { kind: 'attitude', of: 'trunk', part: 'twist', unit: 'rad' } },
    { from: 'f', means: { kind: 'ignored' } },
  ],
};
const sound = [...SOUND];
const ODD_CELLS = [
  'NaN',
  'Infinity',
  '-',
  '',
  '1e400',
  '1e-400',
  '-0',
  '0x1F',
  '1,5',
  '1e308',
  '999999999999',
  '1 2',
  '=1+1',
  '\u0000',
  '"',
  '#N/A',
  '1.2.3',
  '--1',
  '½',
];
const LIES = [0, 1, -1, 255, 256, 32767, -32768, 65535, 0x7f, 0x80, 0x50];

/** A word or cell of the file by another; of C3D a word of its head. */
function lie(name: string, bytes: Uint8Array, r: Random): Uint8Array {
  if (name.endsWith('.c3d')) {
    const out = bytes.slice();
    const at = r.isHit(0.6) ? 2 * r.int(30) : r.int(Math.min(out.length, 2048) - 1);
    new DataView(out.buffer).setInt16(at, r.of(LIES), r.isHit(0.9));
    return out;
  }
  const words = new TextDecoder().decode(bytes).split(/([ \t\n,]+)/);
  const at = 2 * r.int(Math.ceil(words.length / 2));
  words[at] = r.of([...ODD_CELLS, ...LIES.map(String), words[2 * r.int(Math.ceil(words.length / 2))]]);
  return utf8(words.join(''));
}

export const recordingsKind: CorpusKind = {
  name: 'recordings',
  make: (r): Input => {
    if (r.isHit(0.25)) {
      const { text, what } = damageJson(MAP, r);
      return { file: 'map.json', bytes: utf8(text), what };
    }
    const [name, bytes] = r.of(sound);
    const file = r.isHit(0.1)
      ? r.of(['a.bvh', 'a.trc', 'a.c3d', 'a.csv', 'a.tsv', 'a.txt', 'a', '.bvh', 'a.json'])
      : name;
    if (r.isHit(0.5)) return { file, bytes: lie(name, bytes, r), what: `${name}: a word is another` };
    const damaged = damageBytes(bytes, r, !name.endsWith('.c3d'));
    return { file, bytes: damaged.bytes, what: `${name}: ${damaged.what}` };
  },
  run: async (input): Promise<Outcome> => {
    if (input.file === 'map.json') return checkShared(() => runMap(textOf(input)));
    await checkSomeShell([['fit', 'IN', '--report', 'OUT.json']], 8, input);
    return checkShared(() => runRecording(input));
  },
};

function runMap(text: string | undefined): Outcome {
  if (text === undefined) return 'refused';
  const read = tryRead(() => parseMap(parseJson(text)), text);
  if (!('value' in read)) return 'refused';
  const written = formatMap(read.value);
  hold(formatMap(parseMap(parseJson(written))) === written, 'written and read again it is another');
  return 'read';
}

/** Pauses: one a piece of bytes, one a column, and some for what comes after. */
const mostSteps = (bytes: number): number => 200 + RECORDING_LIMITS.columns + bytes / 1000;

export function runRecording({ file, bytes }: Input): Outcome {
  const input = new TextDecoder('latin1').decode(bytes);
  const read = tryRead(() => readCounted(file, bytes), input);
  if (!('value' in read)) return 'refused';
  const { frames, times, points, joints, columns } = read.value;
  hold(frames >= 2 && times.length === frames, 'it has fewer than two rows');
  hold(
    times.every((t, i) => i === 0 || t > times[i - 1]),
    'its times do not go on',
  );
  for (const { p } of points) hold(p.length === 3 * frames, 'a point has not a place a row');
  for (const { R } of joints) hold(R.length === 9 * frames, 'a joint has not a turn a row');
  for (const { values } of columns) hold(values.length === frames, 'a column has not a value a row');
  const isFine = (list: Float64Array): boolean => list.every((x) => Math.abs(x) !== Number.POSITIVE_INFINITY);
  hold(
    [...points.map(({ p }) => p), ...columns.map(({ values }) => values)].every(isFine),
    'a number is beyond all bounds',
  );
  return 'read';
}

function readCounted(file: string, bytes: Uint8Array): Recording {
  const steps = readRecordingSteps(file, bytes);
  for (let k = 0; k < mostSteps(bytes.length); k++) {
    const step = steps.next();
    if (step.done) return step.value;
  }
  throw new LawBroken('it is read without end');
}
