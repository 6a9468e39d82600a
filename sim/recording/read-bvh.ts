/**
 * BVH: a skeleton (HIERARCHY) and the values of its channels, one line a frame (MOTION), as described by Meredith & Maddock 2001 (Motion
 * capture file formats explained, University of Sheffield, CS-01-11). A joint's matrix is the product of its rotation channels in the order they
 * are listed, R = R1 R2 R3, in degrees. The file states no unit of length.
 */
import { FieldError } from '../math/field-error.ts';
import { type BvhWords, expectWord, readHierarchy } from './bvh-hierarchy.ts';
import { bvhMotion } from './bvh-motion.ts';
import { atLine, makeUnique } from './file-place.ts';
import { measuredOf, numberOf } from './read-number.ts';
import type { Recording } from './recording.ts';
import { checkRate, checkRows, RECORDING_LIMITS } from './recording-limits.ts';
import { RowStore } from './row-store.ts';
import { evenTimes } from './row-times.ts';
import { type ReadSteps, scaleSteps } from './steps.ts';
import type { TextLines } from './text-lines.ts';

export function* readBvhSteps(file: string, lines: TextLines, notes: string[]): ReadSteps<Recording> {
  const words = makeWords(file, lines);
  const joints = readHierarchy(words);
  const stated = readFrames(file, words);
  const rateHz = readFrameTime(words);
  const width = joints.reduce((sum, joint) => sum + joint.channels.length, 0);
  const kept = joints.reduce((sum, joint) => sum + (joint.channels.some((c) => c.isPlace) ? 12 : 9), 0);
  const store = new RowStore(width);
  yield* readRows(file, lines, words.rest(), { store, stated, kept }, notes);
  if (stated !== store.rows)
    notes.push(`The file states ${stated} frames and has ${store.rows}: the ${store.rows} are read.`);
  const rows = evenTimes(file, store.rows, rateHz);
  const names = makeUnique(
    joints.map((joint) => joint.name),
    'joint',
    notes,
  );
  return {
    kind: 'bvh',
    frames: store.rows,
    ...rows,
    points: [],
    joints: yield* scaleSteps(bvhMotion(joints, names, store, notes), 0.8, 1),
    columns: [],
    notes,
  };
}

/** Words of the head, each with its line; braces are words of their own. */
function makeWords(file: string, lines: TextLines): BvhWords {
  let queue: string[] = [];
  let at = 0;
  const fill = (): boolean => {
    for (let empty = 0; at >= queue.length; empty++) {
      const line = lines.next();
      if (line === undefined) return false;
      if (empty > RECORDING_LIMITS.emptyLines)
        throw new FieldError(atLine(file, lines.number), 'one empty line after the other', 'a skeleton');
      queue = line.replace(/[{}]/g, ' $& ').match(/\S+/g) ?? [];
      at = 0;
    }
    return true;
  };
  return {
    peek: () => (fill() ? queue[at] : undefined),
    take: (wanted) => {
      if (!fill()) throw new FieldError(atLine(file, Math.max(1, lines.number)), 'the end of the file', wanted);
      return queue[at++];
    },
    where: (what) => atLine(file, Math.max(1, lines.number), what),
    rest: () => queue.slice(at),
  };
}

/** "Frames: 12", with or without a space. */
function readFrames(file: string, words: BvhWords): number {
  expectWord(words, 'MOTION');
  const value = readLabelled(words, ['frames']);
  const frames = numberOf(value);
  if (frames === undefined || !Number.isInteger(frames) || frames < 0)
    throw new FieldError(words.where('Frames'), value, 'a whole number');
  if (frames === 0) throw new FieldError(words.where('Frames'), 0, 'at least 2 frames');
  checkRows(`${file} Frames`, frames, 1);
  return frames;
}

function readFrameTime(words: BvhWords): number {
  const value = readLabelled(words, ['frame', 'time']);
  const step = measuredOf(value, () => words.where('Frame Time'));
  const [least, most] = RECORDING_LIMITS.rateHz;
  if (!(step >= 1 / most && step <= 1 / least))
    throw new FieldError(words.where('Frame Time'), step, `${1 / most} to ${1 / least} s`);
  return checkRate(words.where('Frame Time'), 1 / step);
}

function readLabelled(words: BvhWords, label: readonly string[]): string {
  const said = `"${label.map((w) => w[0].toUpperCase() + w.slice(1)).join(' ')}:" and a number`;
  let text = '';
  for (let k = 0; k < label.length; k++) text += words.take(said).toLowerCase();
  const key = label.join('');
  if (text === key) text += words.take(said);
  const [head, ...rest] = text.split(':');
  if (head !== key || rest.length !== 1) throw new FieldError(words.where(), text, said);
  return rest[0] === '' ? words.take(said) : rest[0];
}

interface Rows {
  readonly store: RowStore;
  readonly stated: number;
  /** numbers that a frame becomes */
  readonly kept: number;
}

function* readRows(
  file: string,
  lines: TextLines,
  first: readonly string[],
  { store, stated, kept }: Rows,
  notes: string[],
): ReadSteps<void> {
  const row = new Float64Array(store.width);
  const put = (cells: readonly string[]): void => {
    // the last number may be cut as well
    const isCut = lines.isUnended && store.rows > 0 && (cells.length < store.width || store.rows + 1 < stated);
    if (isCut) {
      notes.push(`The file breaks off in line ${lines.number}: that line is left out.`);
      return;
    }
    if (cells.length !== store.width)
      throw new FieldError(
        atLine(file, lines.number),
        `${cells.length} values`,
        `${store.width}, one for each channel of the skeleton`,
      );
    checkRows(atLine(file, lines.number), store.rows + 1, kept);
    for (let k = 0; k < cells.length; k++) row[k] = cellOf(file, lines.number, cells, k);
    store.push(row);
  };
  if (first.length > 0) put(first);
  for (let line = lines.next(); line !== undefined; line = lines.next()) {
    if (lines.isDue()) yield { done: 0.8 * lines.done };
    const text = line.trim();
    if (text !== '') put(text.split(/\s+/));
  }
}

function cellOf(file: string, line: number, cells: readonly string[], k: number): number {
  return measuredOf(cells[k], () => atLine(file, line, `value ${k + 1}`));
}
