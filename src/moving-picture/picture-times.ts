/**
 * Which instant of the flight each picture shows. Speed and rate are whole numbers, and each time is one division, so that no
 * error adds up over a thousand pictures.
 */

/** Pictures a second of the moving picture. */
export const PICTURE_RATE = 60;

/** A flight in slow motion: 1 / `slower` of its true speed. */
interface PictureTimes {
  /** s of the flight */
  readonly from: number;
  readonly slower: number;
  readonly count: number;
}

/** A last picture that rounding puts this little after the end, in pictures, is one. */
const NEAR = 1e-6;

/** From the first instant, as long as a picture is not after the last. */
export function makePictureTimes(from: number, to: number, slower: number): PictureTimes {
  if (!(to > from))
    throw new RangeError(`A moving picture from ${from} to ${to} s shows nothing; it has to end later.`);
  if (!Number.isInteger(slower) || slower < 1) throw new RangeError(`Slower by ${slower}; allowed: 1, 2, 3 …`);
  return { from, slower, count: Math.floor((to - from) * PICTURE_RATE * slower + NEAR) + 1 };
}

/** s of the flight. */
export const timeOfPicture = ({ from, slower }: PictureTimes, n: number): number => from + n / (slower * PICTURE_RATE);

/** s of the moving picture. */
export const stampOfPicture = (n: number): number => n / PICTURE_RATE;

export const lastsS = ({ count }: PictureTimes): number => count / PICTURE_RATE;
