/** A time by the clock of this machine, with its offset, as a worksheet writes when an answer was locked. */
const two = (n: number): string => String(n).padStart(2, '0');

export function timeStamp(at: Date): string {
  const east = -at.getTimezoneOffset();
  const offset = `${east < 0 ? '-' : '+'}${two(Math.floor(Math.abs(east) / 60))}:${two(Math.abs(east) % 60)}`;
  const date = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${date}T${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}${offset}`;
}

/** "9:41", by the clock that it was written with. */
export const clockOf = (stamp: string): string => stamp.slice(11, 16).replace(/^0/, '');
