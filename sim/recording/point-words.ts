/** What is said of points that lie elsewhere than their names say: all along, or in some rows. */
import type { PlacedPoint } from './point-poser.ts';
import type { StrayPoint } from './stray-points.ts';

/** Points that are named one by one. */
const NAMED = 6;

export function wordStrays(
  mapped: readonly { readonly from: string }[],
  strays: readonly StrayPoint[],
  t: Float64Array,
): string[] {
  const rest = strays.length - NAMED;
  return [
    ...strays
      .slice(0, NAMED)
      .map(
        ({ point, rows, first, last, far }) =>
          `"${mapped[point].from}" is left out of ${rows === 1 ? `one row, at ${t[first].toFixed(2)} s` : `${rows} rows from ${t[first].toFixed(2)} to ${t[last].toFixed(2)} s`}: there it is up to ${far.toFixed(2)} m from where all others put it, as where names are exchanged.`,
      ),
    ...(rest > 0 ? [`So are ${rest} other points, in fewer rows.`] : []),
  ];
}

/** m: skin, and bodies of other proportions, put no marker that far from its usual place (judgement) */
const AWAY = 0.09;
/** Share of the points from which on it is the whole set. */
const MANY = 0.25;

/** `usual` and `placed`: where names put the points, and where they were found. */
export function wordMisplaced(
  mapped: readonly { readonly from: string }[],
  usual: readonly PlacedPoint[],
  placed: readonly PlacedPoint[],
): string[] {
  const away = mapped
    .map(({ from }, k) => ({
      from,
      off: Math.hypot(...[0, 1, 2].map((c) => placed[k].at_B[c] - usual[k].at_B[c])),
    }))
    .filter(({ off }) => off > AWAY)
    .sort((a, b) => b.off - a.off);
  if (away.length === 0) return [];
  const some = away.slice(0, NAMED).map(({ from, off }) => `"${from}" (${off.toFixed(2)} m)`);
  const why =
    away.length > MANY * mapped.length
      ? 'Are left and right, or front and back, exchanged? Then what is said of somersault and twist is wrong'
      : 'Names exchanged, or other places on the body?';
  return [
    `${away.length} of ${mapped.length} points sit more than ${AWAY} m from where their names put them, ${some.join(', ')}${away.length > NAMED ? ' and others' : ''}. ${why}${why.endsWith('?') ? '' : '.'}`,
  ];
}
