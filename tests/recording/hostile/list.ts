// Recordings that are damaged, absurd or made to do harm, and what becomes of each. A new one is a row.
import { float, texts, word, writeC3d } from '../c3d-writer.ts';
import { bytesOf } from '../parts.ts';
import { BVH, C3D, CSV, TRC } from './samples.ts';

export interface Hostile {
  readonly name: string;
  readonly file: string;
  readonly bytes: () => Uint8Array;
  /** rows that are read, or part of what the refusal says */
  readonly becomes: number | string;
  /** part of a note, of one that is read */
  readonly note?: string;
}

const text = (
  name: string,
  file: string,
  body: string | (() => string),
  becomes: number | string,
  note?: string,
): Hostile => ({
  name,
  file,
  bytes: () => bytesOf(typeof body === 'string' ? body : body()),
  becomes,
  ...(note ? { note } : {}),
});
const raw = (
  name: string,
  file: string,
  bytes: () => Uint8Array,
  becomes: number | string,
  note?: string,
): Hostile => ({
  name,
  file,
  bytes,
  becomes,
  ...(note ? { note } : {}),
});
const put = (bytes: Uint8Array, at: number, ...values: number[]): Uint8Array => {
  const out = bytes.slice();
  out.set(values, at);
  return out;
};
const LATIN = (s: string): Uint8Array => new Uint8Array(Buffer.from(s, 'latin1'));
const UTF16 = (s: string, isBig = false): Uint8Array => {
  const b = Buffer.from(s, 'utf16le');
  return new Uint8Array(isBig ? b.swap16() : b);
};
const nested = (depth: number): string =>
  `HIERARCHY\nROOT r\n{\nOFFSET 0 0 0\nCHANNELS 3 Zrotation Xrotation Yrotation\n${'JOINT j\n{\nOFFSET 0 1 0\n'.repeat(depth)}${'}\n'.repeat(depth + 1)}MOTION\nFrames: 2\nFrame Time: 0.01\n1 2 3\n4 5 6\n`;
const c3d = (...extra: Parameters<typeof writeC3d>[0]['extra'] & object): Uint8Array =>
  writeC3d({ labels: ['A'], frames: [[[1, 2, 3]], [[1, 2, 4]]], extra });
/** The first byte of the record after the name `name` of a parameter of C3D: its link. */
const linkOf = (bytes: Uint8Array, name: string): number => {
  const at = Buffer.from(bytes).indexOf(name, 512, 'latin1');
  return at + name.length;
};

const ANY: readonly Hostile[] = [
  raw('nothing', 'a.bvh', () => new Uint8Array(), 'an empty file'),
  text('spaces alone', 'a.csv', ' \n\t\n ', 'a file without text'),
  raw('zeros alone', 'a.trc', () => new Uint8Array(5000), 'no text'),
  raw('noise', 'a.csv', () => Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919 + (i >> 3)) & 255), 'a.csv'),
  raw('a picture', 'a.c3d', () => Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0), 'a picture'),
  raw('a film', 'a.bvh', () => Uint8Array.from([0, 0, 0, 24, ...bytesOf('ftypisom'), 0, 0]), 'a film'),
  raw('a packed file', 'a.trc', () => Uint8Array.from([0x50, 0x4b, 3, 4, 0, 0, 0, 0]), 'a packed file'),
  text('a page', 'a.csv', '<!doctype html><html></html>', 'in XML'),
  text('a skill', 'a.csv', '{ "format": "shapeflight-skill" }', 'a skill file'),
  text('a map', 'a.bvh', '{ "format": "shapeflight-recording-map" }', 'a map of a recording'),
  text('other JSON', 'a.trc', '[1, 2, 3]', 'data in JSON'),
  text('a letter', 'a.txt', 'Dear coach\nplease find the jump', 'names of columns'),
  text('a name of the file that is no name', '\u202e\u0000../..//a\u0007.csv', 'x', '../..//a .csv line 1'),
];

const OF_BVH: readonly Hostile[] = [
  text('no motion', 'a.bvh', BVH.slice(0, BVH.indexOf('MOTION')), 'the end of the file'),
  text('no frame', 'a.bvh', BVH.replace(/Frames: 3[\s\S]*/, 'Frames: 3\nFrame Time: 0.01\n'), '0 rows of values'),
  text('0 frames', 'a.bvh', BVH.replace('Frames: 3', 'Frames: 0'), 'Frames: 0'),
  text('negative frames', 'a.bvh', BVH.replace('Frames: 3', 'Frames: -3'), 'Frames: "-3"'),
  text('half a frame', 'a.bvh', BVH.replace('Frames: 3', 'Frames: 2.5'), 'Frames: "2.5"'),
  text('a thousand million frames', 'a.bvh', BVH.replace('Frames: 3', 'Frames: 1000000000'), 'at most'),
  text('frame time 0', 'a.bvh', BVH.replace('0.01', '0'), 'Frame Time: 0 '),
  text('negative frame time', 'a.bvh', BVH.replace('0.01', '-0.01'), 'Frame Time: -0.01'),
  text('frame time in ms', 'a.bvh', BVH.replace('0.01', '10'), 'Frame Time: 10'),
  text('frame time that is no number', 'a.bvh', BVH.replace('0.01', 'NaN'), 'Frame Time: NaN'),
  text(
    'decimal commas',
    'a.bvh',
    BVH.replace('1.5 2.5', '1,5 2,5'),
    'line 20 value 1: "1,5" is not possible; allowed: numbers with a decimal point',
  ),
  text('a gap in a channel', 'a.bvh', BVH.replace('1.5', 'NaN'), 3),
  text('a value beyond all bounds', 'a.bvh', BVH.replace('1.5', '1e308'), 'line 20 value 1: 1e+308'),
  text('infinity', 'a.bvh', BVH.replace('1.5', 'Infinity'), 'line 20 value 1'),
  text('hexadecimal', 'a.bvh', BVH.replace('1.5', '0x1F'), 'line 20 value 1: "0x1F"'),
  text('a line too short', 'a.bvh', BVH.replace('1.5 ', ''), 'line 20: "8 values"'),
  text('a line too long', 'a.bvh', BVH.replace('1.5 ', '1.5 9 '), 'line 20: "10 values"'),
  text('more frames than stated', 'a.bvh', `${BVH}1 2 3 4 5 6 7 8 9\n`, 4, 'The file states 3 frames and has 4'),
  text(
    'fewer frames than stated',
    'a.bvh',
    BVH.replace('Frames: 3', 'Frames: 30'),
    3,
    'The file states 30 frames and has 3',
  ),
  text(
    'a channel twice',
    'a.bvh',
    BVH.replace('3 Zrotation Xrotation', '3 Zrotation Zrotation'),
    'line 9 CHANNELS: "Zrotation"',
  ),
  text(
    'a channel that is none',
    'a.bvh',
    BVH.replace('Yrotation\n  JOINT', 'Wrotation\n  JOINT'),
    'line 5 CHANNELS: "Wrotation"',
  ),
  text('seven channels', 'a.bvh', BVH.replace('CHANNELS 6', 'CHANNELS 7'), 'CHANNELS: "7"'),
  text('channels without number', 'a.bvh', BVH.replace('CHANNELS 6', 'CHANNELS'), 'CHANNELS: "Xposition"'),
  text(
    'no channel at all',
    'a.bvh',
    'HIERARCHY ROOT a { OFFSET 0 0 0 } MOTION Frames: 2 Frame Time: 0.1',
    'no channel in any joint',
  ),
  text('no offset', 'a.bvh', BVH.replace('OFFSET 0 -0.4 0\n    CH', 'CH'), 'knee OFFSET'),
  text('two offsets', 'a.bvh', BVH.replace('OFFSET 0 0 0', 'OFFSET 0 0 0 OFFSET 0 0 1'), 'a second OFFSET'),
  text('an offset of two numbers', 'a.bvh', BVH.replace('OFFSET 0 0 0', 'OFFSET 0 0'), 'line 5 OFFSET: "CHANNELS"'),
  text('an offset that is missing', 'a.bvh', BVH.replace('OFFSET 0 0 0', 'OFFSET nan 0 0'), 'OFFSET: NaN'),
  text('two roots', 'a.bvh', BVH.replace('MOTION', 'ROOT b { OFFSET 0 0 0 }\nMOTION'), 'a second ROOT'),
  text(
    'a brace too many',
    'a.bvh',
    BVH.replace('MOTION', '}\nMOTION'),
    'line 16: "}" is not possible; allowed: MOTION',
  ),
  text('a brace too few', 'a.bvh', BVH.replace('}\nMOTION', 'MOTION'), 'MOTION'),
  text('a joint without a name', 'a.bvh', BVH.replace('JOINT knee', 'JOINT'), 'a name before {'),
  text(
    'a joint with a name of a thousand letters',
    'a.bvh',
    BVH.replace('knee', 'k'.repeat(1000)),
    'at most 200 characters',
  ),
  text('joints of one name', 'a.bvh', BVH.replace('knee', 'hips'), 3, 'More than one joint is named "hips"'),
  text(
    'joints named as what every object has',
    'a.bvh',
    BVH.replace('hips', '__proto__').replace('knee', 'constructor'),
    3,
  ),
  text('names with control characters', 'a.bvh', BVH.replace('knee', 'k\u0001n\u0007ee'), 3),
  text('names from right to left', 'a.bvh', BVH.replace('knee', 'ברך').replace('hips', '\u202eспih'), 3),
  text('joints 10,000 deep', 'a.bvh', () => nested(10_000), 'at most 2000 joints'),
  text('joints 1,900 deep', 'a.bvh', () => nested(1900), 2),
  text(
    'ends without end',
    'a.bvh',
    () => BVH.replace('End Site', `${'End Site { OFFSET 0 0 0 } '.repeat(5000)}End Site`),
    'at most 2000 ends',
  ),
  text('braces without end', 'a.bvh', () => `HIERARCHY ROOT ${'{'.repeat(200_000)}`, 'a name before {'),
  text(
    'empty lines without end',
    'a.bvh',
    () => `HIERARCHY${'\n'.repeat(200_000)}ROOT`,
    'one empty line after the other',
  ),
  text(
    'one line of two million letters',
    'a.bvh',
    () => `HIERARCHY ROOT ${'a'.repeat(2_000_000)}`,
    'at most 1000000 characters',
  ),
  text('mixed line ends', 'a.bvh', BVH.replaceAll('\n', '\r\n').replace('\r\n', '\r').replace('}\r\n', '}\n'), 3),
  raw('UTF-16 with a mark', 'a.bvh', () => UTF16(`\uFEFF${BVH}`), 3),
  raw('UTF-16 without a mark', 'a.bvh', () => UTF16(BVH), 3),
  raw('UTF-16, high byte first', 'a.bvh', () => UTF16(`\uFEFF${BVH}`, true), 3),
  raw('half a character of UTF-16', 'a.bvh', () => UTF16(`\uFEFF${BVH}`).subarray(0, -3), 2, 'breaks off'),
  raw('Latin-1', 'a.bvh', () => LATIN(BVH.replace('knee', 'Knöchel')), 3, 'Windows-1252'),
  raw('a zero byte in a number', 'a.bvh', () => bytesOf(BVH.replace('1.5', '1\0.5')), 'line 20 value 1'),
];

const OF_TRC: readonly Hostile[] = [
  text('head alone', 'a.trc', TRC.split('\n').slice(0, 5).join('\n'), '0 rows of values'),
  text('no head', 'a.trc', TRC.split('\n').slice(6).join('\n'), 'PathFileType'),
  text('spaces in place of tabs', 'a.trc', TRC.replaceAll('\t', ' '), 'each after a tab'),
  text('no keys', 'a.trc', TRC.replace(/DataRate.*/, 'Some\tother\tkeys'), 'DataRate'),
  text('a rate of 0', 'a.trc', TRC.replace('100\t100', '0\t100'), 'DataRate: 0'),
  text('a negative rate', 'a.trc', TRC.replace('100\t100', '-100\t100'), 'DataRate: -100'),
  text('a count that is no number', 'a.trc', TRC.replace('\t3\t2\t', '\tmany\t2\t'), 'NumFrames: "many"'),
  text('a huge count of markers', 'a.trc', TRC.replace('\t3\t2\t', '\t3\t4000000000\t'), 3, 'NumMarkers is 4000000000'),
  text('a huge count of frames', 'a.trc', TRC.replace('\t3\t2\t', '\t4000000000\t2\t'), 3, 'NumFrames is 4000000000'),
  text('no unit', 'a.trc', TRC.replace('\tmm\t', '\t\t'), 3, 'no unit of length'),
  text('no time', 'a.trc', TRC.replace('\t0.01\t', '\t\t'), 'line 8 Time: this field is missing'),
  text('times that stand still', 'a.trc', TRC.replace('\t0.01\t', '\t0.00\t'), 'line 8 Time: 0'),
  text('times that go back', 'a.trc', TRC.replace('\t0.02\t', '\t-1\t'), 'line 9 Time: -1'),
  text('a gap of an hour', 'a.trc', TRC.replace('\t0.02\t', '\t3600\t').replace('\t0.01\t', '\t0.01\t'), 'times: '),
  text('a row too wide', 'a.trc', TRC.replace('115', '115\t9'), 'line 8: "9 cells"'),
  text('a word among numbers', 'a.trc', TRC.replace('115', 'gone'), 'line 8 RELB Y: "gone"'),
  text('decimal commas', 'a.trc', TRC.replace('115', '115,5'), 'decimal point, not a comma'),
  text('a place beyond all bounds', 'a.trc', TRC.replace('115', '1e308'), 'line 8 RELB Y: 1e+308'),
  text(
    'no number, written in many ways',
    'a.trc',
    TRC.replace('115', 'NaN').replace('111', '-nan(ind)').replace('121', '1.#QNAN'),
    3,
  ),
  text(
    'a marker never seen',
    'a.trc',
    TRC.replaceAll(/\t1[012]4\t1[012]5\t1[012]6/g, ''),
    3,
    'Never seen in the whole recording: "RELB"',
  ),
  text('markers of one name', 'a.trc', TRC.replace('RELB', 'LELB'), 3, 'More than one marker is named "LELB"'),
  text(
    'markers named as what every object has',
    'a.trc',
    TRC.replace('RELB', '__proto__').replace('LELB', 'toString'),
    3,
  ),
  text('3,000 markers', 'a.trc', () => TRC.replace('RELB', 'RELB\t\t\t'.repeat(3000)), 'at most 2000 markers'),
  raw('Latin-1 names', 'a.trc', () => LATIN(TRC.replace('RELB', 'Épaule')), 3, 'Windows-1252'),
];

const OF_TABLES: readonly Hostile[] = [
  text('names alone', 'a.csv', 'time,a\n', '0 rows of values'),
  text('one row', 'a.csv', 'time,a\n0,1\n', '1 rows of values'),
  text('no names', 'a.csv', '0,1\n1,2\n', 'names of the columns'),
  text('no time', 'a.csv', 'a,b\n0,1\n1,2\n', '# rate: 240'),
  text('a rate of 0', 'a.csv', '# rate: 0\na,b\n0,1\n1,2\n', 'line 1 rate: "0"'),
  text('a negative rate', 'a.csv', '# rate: -240\na,b\n0,1\n1,2\n', 'rate: "-240"'),
  text('a rate that is no number', 'a.csv', '# rate: fast\na,b\n0,1\n1,2\n', 'rate: "fast"'),
  text('times far too close', 'a.csv', 't,a\n0,1\n1e-9,2\n2e-9,3\n', 'values in a second'),
  text('times by the calendar', 'a.csv', 'time,a\n2026-03-01 10:00,1\n2026-03-01 10:01,2\n', 'line 2 column "time"'),
  text('a quote that stays open', 'a.csv', 'time,"a\n0,1\n1,2\n', 'quotes that close'),
  text('a quote in a number', 'a.csv', 'time,a\n0,1"2\n1,2\n', 2, 'Columns of words are left out: "a"'),
  text('two separators', 'a.csv', 'time;a\n0;1\n1,2;3\n2;x\n', 'line 4 column "a": "x"'),
  text('columns named as what every object has', 'a.csv', 'time,__proto__,constructor\n0,1,2\n1,2,3\n', 2),
  text('columns of one name', 'a.csv', 'time,a,a\n0,1,2\n1,2,3\n', 2, 'More than one column is named "a"'),
  text('columns without a name', 'a.csv', 'time,,a\n0,1,2\n1,2,3\n', 2),
  text('a formula', 'a.csv', 'time,a\n0,=1+1\n1,2\n', 2, 'Columns of words'),
  text('a column without a value', 'a.csv', 'time,a\n0,\n1,\n', 2),
  text('3,000 columns', 'a.csv', () => `time${',a'.repeat(3000)}\n0\n`, 'at most 2000 columns'),
  text(
    '2,000 names that are one',
    'a.csv',
    () =>
      `time${',a'.repeat(1999)}\n${'0'.padEnd(4000, ',1').slice(0, 3999)}\n${'1'.padEnd(4000, ',1').slice(0, 3999)}\n`,
    2,
  ),
  text('# without end', 'a.csv', () => '#\n'.repeat(100_000), 'no line with names'),
  text('commas without end', 'a.csv', () => `time,a\n0,1\n${','.repeat(500_000)}\n1,2\n`, 2),
  text(
    'a number of a hundred thousand digits',
    'a.csv',
    () => `time,a\n0,${'9'.repeat(100_000)}\n1,2\n`,
    'line 2 column "a"',
  ),
  text(
    'a name of a hundred thousand letters',
    'a.csv',
    () => `time,${'a'.repeat(100_000)}\n0,1\n1,2\n`,
    'at most 200 characters',
  ),
  text('a mark in the middle', 'a.csv', 'time,a\n\uFEFF0,1\n1,2\n', 2),
  text('numbers in other scripts', 'a.csv', 'time,a\n0,1\n1,٣\n', 'line 3 column "a"'),
  text('digits apart by underscores', 'a.csv', 'time,a\n0,1\n1,1_000\n', 'line 3 column "a": "1_000"'),
  text('line ends of old machines', 'a.csv', CSV.replaceAll('\n', '\r'), 3),
];

const OF_C3D: readonly Hostile[] = [
  raw('header alone', 'a.c3d', () => C3D.subarray(0, 512), 'past the end of the file'),
  raw('one byte', 'a.c3d', () => C3D.subarray(0, 2), 'past the end of the file'),
  raw('no mark', 'a.c3d', () => put(C3D, 1, 81), 'a.c3d byte 1'),
  raw('parameters past the end', 'a.c3d', () => put(C3D, 0, 100), 'past the end of the file'),
  raw('no such processor', 'a.c3d', () => put(C3D, 515, 0), 'byte 515'),
  raw(
    'a parameter that leads to itself',
    'a.c3d',
    () => put(C3D, linkOf(C3D, 'USED'), 1, 0),
    'the way to the next parameter',
  ),
  raw('a parameter that leads past the end', 'a.c3d', () => put(C3D, linkOf(C3D, 'USED'), 255, 255), 'within the file'),
  raw('a parameter of an unknown type', 'a.c3d', () => put(C3D, linkOf(C3D, 'USED') + 2, 9), 'the type of a parameter'),
  raw('a parameter of 200 dimensions', 'a.c3d', () => put(C3D, linkOf(C3D, 'USED') + 3, 200), 'at most 7 dimensions'),
  raw(
    'a parameter larger than the file',
    'a.c3d',
    () => c3d({ name: 'POINT:DESCRIPTIONS', type: -1, dimensions: [255, 255, 255], values: '' }),
    'as many as there are',
  ),
  raw('data in the header', 'a.c3d', () => c3d(word('POINT:DATA_START', 1)), 2),
  raw(
    'data past the end',
    'a.c3d',
    () =>
      writeC3d({
        labels: ['A'],
        frames: [[[1, 2, 3]]],
        header: { start: 60000 },
        extra: [word('POINT:DATA_START', 60000)],
      }),
    'POINT:DATA_START: 60000',
  ),
  raw('a rate that is no number', 'a.c3d', () => c3d(float('POINT:RATE', Number.NaN)), 'POINT:RATE: NaN'),
  raw(
    'a rate without bounds',
    'a.c3d',
    () => c3d(float('POINT:RATE', Number.POSITIVE_INFINITY)),
    'POINT:RATE: a number too large',
  ),
  raw('60,000 points', 'a.c3d', () => c3d(word('POINT:USED', 60_000)), 'at most 2000 points'),
  raw(
    'more points than the header',
    'a.c3d',
    () => c3d(word('POINT:USED', 2)),
    'POINT:USED: 2 is not possible; allowed: 1, the points that the header states',
  ),
  raw('65,535 frames in a small file', 'a.c3d', () => c3d(word('POINT:FRAMES', 65_535)), 2, '65535'),
  raw(
    'a trial that ends before it starts',
    'a.c3d',
    () => c3d(word('TRIAL:ACTUAL_START_FIELD', 9, 0), word('TRIAL:ACTUAL_END_FIELD', 3, 0)),
    2,
  ),
  raw('labels that are blank', 'a.c3d', () => c3d(texts('POINT:LABELS', ['    '])), 2),
  raw(
    'labels of no letters',
    'a.c3d',
    () => c3d({ name: 'POINT:LABELS', type: -1, dimensions: [0, 255], values: '' }),
    2,
  ),
  raw('labels named as what every object has', 'a.c3d', () => c3d(texts('POINT:LABELS', ['__proto__'])), 2),
  raw('labels that are numbers', 'a.c3d', () => c3d(word('POINT:LABELS', 1)), 2),
  raw(
    'a point never seen',
    'a.c3d',
    () =>
      writeC3d({
        labels: ['A', 'B'],
        frames: [
          [[1, 2, 3], null],
          [[1, 2, 3], null],
        ],
      }),
    2,
    'Never seen in the whole recording: "B"',
  ),
  raw(
    'a place that is no number',
    'a.c3d',
    () => writeC3d({ labels: ['A'], frames: [[[Number.NaN, 2, 3]], [[1, 2, 3]]] }),
    2,
  ),
  raw(
    'a place without bounds',
    'a.c3d',
    () => writeC3d({ labels: ['A'], frames: [[[Number.POSITIVE_INFINITY, 2, 3]], [[1, 2, 3]]] }),
    'frame 1 point "A"',
  ),
  raw('analog values alone', 'a.c3d', () => c3d(word('POINT:USED', 0)), 'at least one point'),
  raw('text under another name', 'a.c3d', () => bytesOf(BVH), 'byte 1'),
  raw('data under the name of text', 'a.csv', () => C3D, 3),
];

export const HOSTILE: readonly Hostile[] = [...ANY, ...OF_BVH, ...OF_TRC, ...OF_TABLES, ...OF_C3D];
