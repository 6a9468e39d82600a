/** True times of the frames of a clip that may play slower than it was taken. */
import { FieldError } from '../math/field-error.ts';

const RATES = [1, 2000] as const;

/** s from the first frame, of stamps in s as the file has them: times fileHz / trueHz. Throws a FieldError. */
export function trueTimes(stamps: ArrayLike<number>, fileHz: number, trueHz: number): Float64Array {
  for (const [field, value] of Object.entries({ trueHz, fileHz }))
    if (!(value >= RATES[0] && value <= RATES[1]))
      throw new FieldError(field, value, `${RATES[0]} to ${RATES[1]} frames a second`);
  const out = new Float64Array(stamps.length);
  for (let k = 0; k < out.length; k++) {
    out[k] = ((stamps[k] - stamps[0]) * fileHz) / trueHz;
    if (!Number.isFinite(out[k]) || (k > 0 && !(out[k] > out[k - 1])))
      throw new FieldError(`stamps[${k}]`, stamps[k], 'seconds, each later than the one before');
  }
  return out;
}

/** Nearer to the mean rate of a file than this share, a rate that is typed is that of the file (judgement): telephones film "30" at 29.97, and at 28 in poor light. */
const AS_FILE = 0.1;

/** Frames really taken in a second, as typed; the file's own mean where that is meant: then its times are the true ones. */
export const takenRate = (fileHz: number, typedHz: number): number =>
  Math.abs(typedHz / fileHz - 1) < AS_FILE ? fileHz : typedHz;
