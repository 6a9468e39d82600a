/** Where the points of a C3D file lie, and how many. Parameters hold over the header; how long the file is holds over both. */
import { FieldError } from '../math/field-error.ts';
import type { C3dBytes } from './c3d-bytes.ts';
import { C3dParameters } from './c3d-parameters.ts';
import { checkColumns, checkRate, checkRows } from './recording-limits.ts';

const BLOCK = 512;

export interface C3dLayout {
  readonly parameters: C3dParameters;
  readonly points: number;
  readonly frames: number;
  readonly rateHz: number;
  /** first byte of the first frame */
  readonly start: number;
  /** bytes from frame to frame, analog values included */
  readonly stride: number;
  readonly isFloat: boolean;
  /** a whole number times it is a place; floats are places */
  readonly scale: number;
  /** number of the first frame in the trial */
  readonly first: number;
}

export function readC3dLayout(bytes: C3dBytes, notes: string[]): C3dLayout {
  const { file } = bytes;
  const block = bytes.byte(0);
  if (block < 1) throw new FieldError(`${file} byte 0`, block, '1 to 255, the block of the parameters');
  const parameters = new C3dParameters(bytes, block);
  const header = {
    points: bytes.word(2),
    analog: bytes.word(4),
    first: bytes.word(6),
    last: bytes.word(8),
    scale: bytes.float(12),
    start: bytes.word(16),
    rate: bytes.float(20),
  };
  const points = parameters.number('POINT:USED') ?? header.points;
  if (points === 0)
    throw new FieldError(`${file} POINT:USED`, 0, 'at least one point: analog values alone are no motion');
  checkColumns(`${file} POINT:USED`, points, 'points');
  // which of the two is wrong cannot be known, and all places follow from it
  if (header.points !== 0 && header.points !== points)
    throw new FieldError(`${file} POINT:USED`, points, `${header.points}, the points that the header states`);
  const rateHz = checkRate(`${file} POINT:RATE`, parameters.number('POINT:RATE') ?? header.rate);
  const scale = parameters.number('POINT:SCALE') ?? header.scale;
  if (!(Number.isFinite(scale) && scale !== 0))
    throw new FieldError(`${file} POINT:SCALE`, scale, 'a number other than 0; below 0: places are floats');
  const isFloat = scale < 0;
  const stride = (4 * points + header.analog) * (isFloat ? 4 : 2);
  const start = findStart(bytes, parameters, header.start);
  const room = Math.floor((bytes.length - start) / stride);
  if (room < 1)
    throw new FieldError(`${file} byte ${start}`, 'the end of the file', `frames of ${stride} bytes from here on`);
  const frames = findFrames(parameters, header.first, header.last, room, notes);
  checkRows(`${file} frames`, frames, 3 * points);
  const channels = parameters.number('ANALOG:USED') ?? 0;
  if (header.analog > 0)
    notes.push(
      channels > 0
        ? `${channels} analog channels are left out (${header.analog} values a frame).`
        : `${header.analog} analog values a frame are left out.`,
    );
  return { parameters, points, frames, rateHz, start, stride, isFloat, scale: Math.abs(scale), first: header.first };
}

/** Of POINT:DATA_START and the header the first that lies behind the header and in the file. */
function findStart(bytes: C3dBytes, parameters: C3dParameters, header: number): number {
  const stated = parameters.number('POINT:DATA_START');
  const found = [stated, header].find((b) => b !== undefined && b > 1 && BLOCK * (b - 1) < bytes.length);
  if (found === undefined)
    throw new FieldError(
      `${bytes.file} POINT:DATA_START`,
      stated ?? header,
      `a block from 2 to ${Math.ceil(bytes.length / BLOCK)}, where the file ends`,
    );
  return BLOCK * (found - 1);
}

/** A word counts to 65535: longer trials state their frames in other places. The first count that the file has room for holds. */
function findFrames(parameters: C3dParameters, first: number, last: number, room: number, notes: string[]): number {
  const trial = (name: string): number | undefined => {
    const low = parameters.number(`TRIAL:ACTUAL_${name}_FIELD`);
    return low === undefined ? undefined : low + 65536 * (parameters.number(`TRIAL:ACTUAL_${name}_FIELD`, 1) ?? 0);
  };
  const [from, to] = [trial('START'), trial('END')];
  const stated = [
    from === undefined || to === undefined ? undefined : to - from + 1,
    parameters.number('POINT:LONG_FRAMES'),
    parameters.number('POINT:FRAMES'),
    last - first + 1,
  ].filter((n) => n !== undefined && Number.isInteger(n) && n > 0) as number[];
  const fits = stated.find((n) => n <= room);
  if (fits !== undefined) {
    if (stated.some((n) => n !== fits))
      notes.push(`The file states ${[...new Set(stated)].join(' and ')} frames: ${fits} are read.`);
    return fits;
  }
  if (stated.length > 0)
    notes.push(`The file states ${stated[0]} frames and ends after ${room}: the ${room} are read.`);
  else notes.push(`The file does not state how many frames it has: ${room} have room in it and are read.`);
  return room;
}
