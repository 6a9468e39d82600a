/** A catch of a leg for the page: hands and rail through its flight, the outcome, and the window over moments of letting go. */
import { type CatchWatch, calcCatchWindow, type FlownLeg, type WholeContact } from '../../../sim/index.ts';
import type { CatchWindowResult, HandRows, LegCatch } from './leg-data.ts';

const handRows = ({ distance, reach, along, x, y }: CatchWatch['left']): HandRows => ({ distance, reach, along, x, y });

/** Rows end where the drawing does: at the catch, or at the end of the flight. */
export function makeLegCatch({ whole, from }: FlownLeg): LegCatch | undefined {
  const found = whole.catch;
  if (!found) return undefined;
  const { spec, watch, outcome, turned, caught, notComputed } = found;
  const end = outcome.kind === 'caught' ? outcome.moment.t : whole.flight.duration;
  const n = watch.t.findIndex((t) => t > end + 1e-9);
  const cut = (column: Float64Array): Float64Array => (n < 0 ? column : column.slice(0, n));
  const hand = (rows: HandRows): HandRows => ({
    distance: cut(rows.distance),
    reach: cut(rows.reach),
    along: cut(rows.along),
    x: cut(rows.x),
    y: cut(rows.y),
  });
  return {
    spec,
    outcome,
    t: cut(watch.t).map((t) => t + from),
    left: hand(handRows(watch.left)),
    right: hand(handRows(watch.right)),
    toward: cut(watch.toward),
    ...(watch.seen ? { seen: watch.seen.map(([a, b]) => [a + from, Math.min(b, end) + from] as const) } : {}),
    ...(turned ? { turned } : {}),
    ...(caught?.load ? { load: { weights: caught.load.weights, range: caught.load.range } } : {}),
    ...(notComputed ? { notComputed } : {}),
  };
}

export function makeCatchWindow({ whole }: FlownLeg, k: number, contact: WholeContact): CatchWindowResult | undefined {
  const { swing, skill } = whole;
  if (!swing || !skill.catch) return undefined;
  const { tries, span, ends } = calcCatchWindow(skill, swing, skill.catch, contact);
  return {
    leg: k,
    tries: tries.map(({ late, gap }) => ({ ms: late * 1000, gapM: gap })),
    ...(span ? { span: { fromMs: span.from * 1000, toMs: span.to * 1000, isOpen: span.isOpen } } : {}),
    ends,
  };
}
