/** An answer beside what the flight gives. */

/** The ends of the line, as a ratio. */
const MOST = 4;

/** 0 at the upper end, four times, to 1 at the lower, a quarter; beyond them at the end. Undefined for a ratio that is not over zero. */
export function ratioPlace(ratio: number): { readonly share: number } | undefined {
  if (!(ratio > 0)) return undefined;
  const share = 0.5 - Math.log(ratio) / (2 * Math.log(MOST));
  return { share: Math.min(1, Math.max(0, share)) };
}

export const isSameToThird = (a: number, b: number): boolean => a.toPrecision(3) === b.toPrecision(3);
