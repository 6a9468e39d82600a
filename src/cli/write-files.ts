/**
 * Writes outputs whole or not at all: each into a file aside, in the same folder, and only when all are written are they
 * moved into place.
 */
import {
  closeSync,
  fstatSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import path from 'node:path';
import { CommandError, wordSystemFault } from './command-error.ts';

/** Letters of a name that leave room for what is put around it. */
const LONGEST = 50;

export interface Output {
  /** the option it came from, to name in an error */
  readonly option: string;
  readonly file: string;
  readonly pieces: Iterable<string>;
}

/** Refuses two outputs, or an output and an input, that are the same file. */
export function checkApart(outputs: readonly Omit<Output, 'pieces'>[], inputs: readonly string[]): void {
  const taken = new Map(inputs.map((file) => [placeOf(file), `the input ${file}`]));
  for (const { option, file } of outputs) {
    if (file === '') throw new CommandError(`${option}: a file name is needed`);
    const place = placeOf(file);
    checkLink(option, file, place);
    const other = taken.get(place);
    if (other && isPlainOrNew(place)) throw new CommandError(`${option} ${file}: is ${other}; choose another name`);
    taken.set(place, `what ${option} writes`);
  }
}

export function writeFiles(outputs: readonly Output[]): void {
  const aside: { from: string; to: string; output: Output }[] = [];
  try {
    for (const output of outputs) {
      const to = placeOf(output.file);
      attempt(output, () => {
        if (!isPlainOrNew(to)) return writePieces(to, output.pieces);
        const from = path.join(
          path.dirname(to),
          `.${path.basename(to).slice(0, LONGEST)}.${process.pid}.${aside.length}.part`,
        );
        aside.push({ from, to, output });
        writePieces(from, output.pieces, true);
      });
    }
    for (const { from, to, output } of aside) attempt(output, () => renameSync(from, to));
  } finally {
    for (const { from } of aside) rmSync(from, { force: true });
  }
}

function attempt(output: Output, work: () => void): void {
  try {
    work();
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    throw new CommandError(`${output.option} ${output.file}: cannot be written: ${wordSystemFault(error)}`);
  }
}

/** A link within its folder is followed: what it points to is replaced, not the link. One that leads out of it would replace what nobody named. */
function checkLink(option: string, file: string, place: string): void {
  // names of the system for what a command writes to lead anywhere
  if (/^\/(dev|proc)\//.test(file) || path.dirname(place) === placeOf(path.dirname(file)) || !isThere(place)) return;
  throw new CommandError(`${option} ${file}: is a link out of its folder; name the file itself: ${place}`);
}

const isThere = (place: string): boolean => statSync(place, { throwIfNoEntry: false })?.isFile() === true;

function placeOf(file: string): string {
  try {
    return realpathSync(file);
  } catch {
    return path.resolve(file);
  }
}

/** A terminal, pipe or /dev/null is written to as it is, never replaced. */
function isPlainOrNew(place: string): boolean {
  const stat = statSync(place, { throwIfNoEntry: false });
  if (stat?.isDirectory()) throw Object.assign(new Error('it is a folder'), { code: 'EISDIR' });
  return !stat || stat.isFile();
}

function writePieces(file: string, pieces: Iterable<string>, fresh = false): void {
  const fd = openSync(file, fresh ? 'wx' : 'w');
  try {
    for (const piece of pieces) writeAll(fd, Buffer.from(piece));
    if (fstatSync(fd).isFile()) fsyncSync(fd);
  } finally {
    closeSync(fd);
  }
}

function writeAll(fd: number, bytes: Buffer): void {
  for (let at = 0; at < bytes.length; ) at += writeSync(fd, bytes, at);
}
