/** Bytes of a file that was given: of a plain file alone, and no more than a bound, whatever its size is said to be. */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';
import { checkFileSize } from '../../sim/index.ts';
import { CommandError, wordSystemFault } from './command-error.ts';

const PIECE = 1 << 20;
/** Enough to tell a picture or a film by. */
const HEAD = 64;

/** Throws a CommandError without the name of the file. */
export function readBytes(file: string, most: number): Uint8Array {
  try {
    // looked at before it is opened: a device may answer to that
    checkPlain(statSync(file));
    // a pipe put in its place since would be waited for
    const fd = openSync(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    try {
      const stat = fstatSync(fd);
      checkPlain(stat);
      return readUpTo(fd, stat.size, most);
    } finally {
      closeSync(fd);
    }
  } catch (error) {
    if (error instanceof Error && 'code' in error) throw new CommandError(wordSystemFault(error), { cause: error });
    throw error;
  }
}

function checkPlain(stat: Stats): void {
  if (stat.isDirectory()) throw new CommandError('it is a folder; a file is needed');
  if (!stat.isFile())
    throw new CommandError(`it is ${nameOf(stat)}; a file is needed: write into one first what is to be read`);
}

function nameOf(stat: Stats): string {
  if (stat.isFIFO()) return 'a pipe';
  return stat.isSocket() ? 'a socket' : 'a device';
}

/** Files of the system say size 0 and have more; others grow while they are read. */
function readUpTo(fd: number, size: number, most: number): Uint8Array {
  const pieces: Buffer[] = [];
  let length = 0;
  for (;;) {
    const room = length === 0 ? Math.min(size + 1, HEAD + most) : PIECE;
    const piece = Buffer.allocUnsafe(size > most ? HEAD : Math.max(HEAD, room));
    const got = readSync(fd, piece, 0, piece.length, null);
    pieces.push(piece.subarray(0, got));
    length += got;
    if (size > most || length > most) checkFileSize(Math.max(size, length), most, pieces[0]);
    if (got === 0) return Buffer.concat(pieces, length);
  }
}
