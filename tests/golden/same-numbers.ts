/** Where two JSON texts differ by more than rounding: numbers to RELATIVE of their size, everything else exactly. */
/** Measured between the frozen outputs and the build that froze them: 0 (the same bits). */
export const RELATIVE = 1e-9;
/** Under this a number is a rest of rounding around nothing (a twist of 4e-18). */
const NOTHING = 1e-12;

export function listDifferences(found: unknown, frozen: unknown, path = ''): string[] {
  if (typeof found === 'number' && typeof frozen === 'number') {
    const room = Math.max(RELATIVE * Math.abs(frozen), NOTHING);
    return Math.abs(found - frozen) <= room ? [] : [`${path}: ${found}, was ${frozen}`];
  }
  const isBranch = (x: unknown): x is object => typeof x === 'object' && x !== null;
  if (!isBranch(found) || !isBranch(frozen))
    return Object.is(found, frozen) ? [] : [`${path}: ${JSON.stringify(found)}, was ${JSON.stringify(frozen)}`];
  const names = new Set([...Object.keys(found), ...Object.keys(frozen)]);
  return [...names].flatMap((name) =>
    listDifferences(
      (found as Record<string, unknown>)[name],
      (frozen as Record<string, unknown>)[name],
      path ? `${path}.${name}` : name,
    ),
  );
}
