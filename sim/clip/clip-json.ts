/** What was measured in a clip as an entry of a skill file's recordings, and back. */
import { type ClipData, checkClipData } from '../files/clip-schema.ts';
import { joinPath } from '../files/field-path.ts';
import type { SkillFile } from '../files/skill-schema.ts';
import { tidy, tidyDeg, tidyTriple } from '../files/tidy.ts';
import { FieldError } from '../math/field-error.ts';
import type { ClipMark, ClipScale, ClipStand, Measured, Spot } from './clip.ts';
import type { PosedFrame } from './clip-pose.ts';
import type { ClipTimes, TurnTime } from './clip-times.ts';
import { readTimes } from './read-times.ts';

/** An entry of SkillFile.recordings. */
export type ClipRecording = NonNullable<SkillFile['recordings']>[number];

/** Everything that was measured: what travels, and on the page a step of undo. The picture is not in it. */
export interface ClipMeasured {
  readonly marks: readonly ClipMark[];
  /** frames really taken in a second; left out until it is answered */
  readonly trueHz?: number;
  /** s from the first line of a picture to the last; left out: not known */
  readonly lines?: number;
  readonly scale?: ClipScale;
  readonly stand?: ClipStand;
  /** rad across, typed; left out: solved or in parallel */
  readonly view?: number;
  readonly posed: readonly PosedFrame[];
}

export interface ClipWriting {
  readonly title: string;
  readonly file?: string;
  readonly note?: string;
  readonly picture?: { readonly width: number; readonly height: number };
  readonly measured: ClipMeasured;
  /** Body.angles, of the posed frames */
  readonly angles: readonly string[];
  readonly times?: ClipTimes;
  /** s from take-off of the first frame; left out: not known */
  readonly start?: number;
  /** the clip itself, as a data: address */
  readonly clip?: string;
}

const RAD = Math.PI / 180;

/** Throws a FieldError where it would be none that can be read. */
export function writeClipRecording(writing: ClipWriting): ClipRecording {
  const { title, file, note, picture, measured, angles, times, start, clip } = writing;
  const { marks, trueHz, lines, scale, stand, view, posed } = measured;
  const atOf = (mark: ClipMark) => times?.marks.find((one) => one.mark === mark)?.at;
  const data: ClipData = {
    form: 'clip',
    version: 1,
    ...(picture && { picturePx: [picture.width, picture.height] }),
    marks: marks.map((mark) => {
      const at = atOf(mark);
      return { ...mark, ...(at && { atS: both(at) }) };
    }),
    ...(trueHz !== undefined && { trueHz }),
    ...(lines !== undefined && !Number.isNaN(lines) && { linesS: lines }),
    ...(scale && { scale: writeScale(scale) }),
    ...(stand && { stand: { feetPx: px(stand.feet), goesRight: stand.goesRight } }),
    ...(view !== undefined && { viewDeg: tidyDeg(view) }),
    posed: posed.map((one) => writePosed(one, angles)),
    ...(times && { times: writeTimes(times) }),
    ...(clip !== undefined && { clip }),
  };
  return {
    title,
    kind: 'film',
    ...(file !== undefined && { file }),
    ...(start !== undefined && Number.isFinite(start) && { startS: tidy(start) }),
    ...(trueHz !== undefined && { rateHz: trueHz }),
    ...(note !== undefined && { note }),
    data: within(() => checkClipData(data)),
  };
}

export interface ReadClipRecording {
  readonly measured: ClipMeasured;
  readonly picture?: { readonly width: number; readonly height: number };
  /** as they were when it was written */
  readonly times?: ClipTimes;
  readonly clip?: string;
}

/** `angles`: Body.angles; those that a posed frame does not name are 0. Throws a FieldError with the path. */
export function readClipRecording({ data }: ClipRecording, angles: readonly string[]): ReadClipRecording {
  const { picturePx, marks, trueHz, linesS, scale, stand, viewDeg, posed, times, clip } = within(() =>
    checkClipData(data),
  );
  return {
    measured: {
      marks: marks.map(({ atS: _, ...mark }) => mark),
      ...(trueHz !== undefined && { trueHz }),
      ...(linesS !== undefined && { lines: linesS }),
      ...(scale && { scale: readScale(scale) }),
      ...(stand && { stand: { feet: stand.feetPx, goesRight: stand.goesRight } }),
      ...(viewDeg !== undefined && { view: viewDeg * RAD }),
      posed: posed.map((one, k) => readPosed(one, angles, `data.posed[${k}]`)),
    },
    ...(picturePx && { picture: { width: picturePx[0], height: picturePx[1] } }),
    ...(times && { times: readTimes(times, marks) }),
    ...(clip !== undefined && { clip }),
  };
}

/** Paths begin at the entry. */
function within<T>(run: () => T): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    throw new FieldError(error.field ? `data.${error.field}` : 'data', error.value, error.allowed, error.detail);
  }
}

const px = ([x, y]: Spot): [number, number] => [tidy(x), tidy(y)];
const both = ({ value, plusMinus }: Measured) => ({
  value: tidy(value),
  plusMinus: Number.isFinite(plusMinus) ? tidy(plusMinus) : null,
});

function writeScale(scale: ClipScale): NonNullable<ClipData['scale']> {
  if (scale.kind === 'length')
    return { kind: 'length', fromPx: px(scale.from), toPx: px(scale.to), lengthM: scale.lengthM };
  const { corners, widthM, depthM, posts } = scale;
  const [a, b, c, d] = corners;
  return {
    kind: 'plane',
    cornersPx: [px(a), px(b), px(c), px(d)],
    widthM,
    depthM,
    ...(posts && { posts: posts.map(({ foot, top, heightM }) => ({ footPx: px(foot), topPx: px(top), heightM })) }),
  };
}

function readScale(scale: NonNullable<ClipData['scale']>): ClipScale {
  if (scale.kind === 'length') return { kind: 'length', from: scale.fromPx, to: scale.toPx, lengthM: scale.lengthM };
  const { cornersPx: corners, widthM, depthM, posts } = scale;
  return {
    kind: 'plane',
    corners,
    widthM,
    depthM,
    ...(posts && { posts: posts.map(({ footPx, topPx, heightM }) => ({ foot: footPx, top: topPx, heightM })) }),
  };
}

type PosedData = ClipData['posed'][number];

function writePosed(one: PosedFrame, angles: readonly string[]): PosedData {
  return {
    frame: one.frame,
    tS: tidy(one.t),
    anglesDeg: Object.fromEntries(angles.map((angle, k) => [angle, tidyDeg(one.angles[k])])),
    somersaultDeg: tidyDeg(one.somersault),
    tiltDeg: tidyDeg(one.tilt),
    twistDeg: tidyDeg(one.twist),
    massCentreM: tidyTriple(one.p_WScm_W),
    reaches: one.reaches.map(({ limb, ratio }) => ({ limb, ratio: tidy(ratio) })),
  };
}

function readPosed(one: PosedData, angles: readonly string[], path: string): PosedFrame {
  for (const name of Object.keys(one.anglesDeg))
    if (!angles.includes(name))
      throw new FieldError(joinPath(`${path}.anglesDeg`, name), name, 'a named angle of this athlete');
  return {
    frame: one.frame,
    t: one.tS,
    angles: angles.map((name) => (one.anglesDeg[name] ?? 0) * RAD),
    somersault: one.somersaultDeg * RAD,
    tilt: one.tiltDeg * RAD,
    twist: one.twistDeg * RAD,
    p_WScm_W: one.massCentreM,
    reaches: one.reaches,
  };
}

function writeTimes(times: ClipTimes): NonNullable<ClipData['times']> {
  const { airTime, up, rise, turns, whole, handOff, braking } = times;
  const turn = ({ from, to, time, rate }: TurnTime) => ({
    fromQuarters: from,
    toQuarters: to,
    timeS: both(time),
    revPerS: both({ value: rate.value / (2 * Math.PI), plusMinus: rate.plusMinus / (2 * Math.PI) }),
  });
  return {
    ...(airTime && { airTimeS: both(airTime) }),
    ...(up && { upMPerS: both(up) }),
    ...(rise && { riseM: both(rise) }),
    turns: turns.map(turn),
    ...(whole && { whole: turn(whole) }),
    ...(handOff && { handOffS: both(handOff) }),
    ...(braking && {
      brakingS: both(braking.time),
      brakingFromMPerS: both(braking.from),
      brakingMPerS2: both(braking.mean),
      brakingBodyWeights: both(braking.weights),
    }),
  };
}
