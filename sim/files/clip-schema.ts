/** What was measured in a clip, as it travels in the recordings of a skill file: data of form "clip". Degrees, m, s, px; ± null: not known. */
import * as v from 'valibot';
import { check } from './check-schema.ts';
import { angle, listOf, may, name, one, pair, say, triple, within } from './schema-parts.ts';

const MOST_MARKS = 1000;
const MOST_POSED = 60;
/** 6 MB, as base64 with its head */
const MOST_CLIP = 8_400_000;
const CLIP = 'a data: address of an MP4 or WebM in base64, of at most 6 MB';
/** As they begin: "ftyp" from the fifth byte of an MP4, 1A 45 DF A3 of a WebM. */
const STARTS = /^data:video\/(?:mp4;base64,[A-Za-z0-9+/]{5}[GWm2]Z0eX[A-D]|webm;base64,GkXfo)/;
const LETTERS = /^[^,]*,[A-Za-z0-9+/]+={0,2}$/;

const spot = pair(-20_000, 20_000, 'px');
const metres = (least: number, most: number) => within(least, most, 'm');
const frame = v.pipe(within(0, 1e6, ''), v.integer('a whole number from 0'));
const seconds = within(-3600, 3600, 's');
const measured = (unit: string) =>
  v.strictObject({
    value: within(-1e6, 1e6, unit),
    plusMinus: v.nullable(within(0, 1e6, unit)),
  });

const mark = v.strictObject({
  kind: one('takeoff', 'highest', 'landing', 'turn', 'handOff', 'rest'),
  quarters: may(v.pipe(within(1, 160, ''), v.integer('a whole number from 1 to 160')), 'Of a turn.'),
  frame: say(frame, 'From the first frame of the clip, which is 0.'),
  row: may(within(0, 1, ''), 'Where in the picture, share of its height from the top.'),
  atS: may(measured('s'), 'From take-off.'),
});

const scale = v.variant(
  'kind',
  [
    v.strictObject({ kind: v.literal('length'), fromPx: spot, toPx: spot, lengthM: metres(0.05, 50) }),
    v.strictObject({
      kind: v.literal('plane'),
      cornersPx: v.strictTuple([spot, spot, spot, spot], 'four places in px'),
      widthM: metres(0.1, 100),
      depthM: metres(0.1, 100),
      posts: v.optional(listOf(v.strictObject({ footPx: spot, topPx: spot, heightM: metres(0.1, 20) }), 8)),
    }),
  ],
  'a scale of kind "length" or "plane"',
);

const posed = v.strictObject({
  frame,
  tS: seconds,
  anglesDeg: v.record(name, angle),
  somersaultDeg: within(-36_000, 36_000, 'deg'),
  tiltDeg: within(-360, 360, 'deg'),
  twistDeg: within(-36_000, 36_000, 'deg'),
  massCentreM: triple(-200, 200, 'm'),
  reaches: listOf(v.strictObject({ limb: name, ratio: within(0, 100, '') }), 20),
});

const turn = v.strictObject({
  fromQuarters: within(0, 160, ''),
  toQuarters: within(1, 160, ''),
  timeS: measured('s'),
  revPerS: measured('rev/s'),
});

const times = v.strictObject({
  airTimeS: v.optional(measured('s')),
  upMPerS: v.optional(measured('m/s')),
  riseM: v.optional(measured('m')),
  turns: listOf(turn, MOST_MARKS),
  whole: v.optional(turn),
  handOffS: v.optional(measured('s')),
  brakingS: v.optional(measured('s')),
  brakingFromMPerS: v.optional(measured('m/s')),
  brakingMPerS2: v.optional(measured('m/s2')),
  brakingBodyWeights: v.optional(measured('')),
});

const clipDataSchema = v.strictObject({
  form: v.literal('clip', '"clip"'),
  version: v.literal(1, '1: a newer Shapeflight wrote another'),
  picturePx: may(pair(1, 20_000, 'px'), 'Width and height, upright.'),
  marks: listOf(mark, MOST_MARKS),
  trueHz: may(within(1, 2000, 'frames a second'), 'Frames really taken in a second.'),
  linesS: may(within(0, 0.1, 's'), 'From reading the first line of a picture to the last.'),
  scale: v.optional(scale),
  stand: v.optional(v.strictObject({ feetPx: spot, goesRight: v.boolean('true or false') })),
  viewDeg: may(within(5, 150, 'deg'), 'Field of view across, typed.'),
  posed: listOf(posed, MOST_POSED),
  times: may(times, 'What the marks give, for who has no clip.'),
  clip: may(
    v.pipe(v.string(CLIP), v.maxLength(MOST_CLIP, CLIP), v.regex(STARTS, CLIP), v.regex(LETTERS, CLIP)),
    'The clip itself.',
  ),
});

export type ClipData = v.InferOutput<typeof clipDataSchema>;

/** Throws a FieldError with the path of the first fault. */
export const checkClipData = (json: unknown): ClipData => check(clipDataSchema, json, 'docs/clip.md');
