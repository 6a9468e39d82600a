/** What can be wrong with the marks of a clip while they are being made: which, and why. */
import type { ClipFrames, ClipMark } from './clip.ts';

/** Numbers are places in the list of marks. */
export type MarkFault =
  /** its frame is none of the clip */
  | { readonly kind: 'noFrame'; readonly mark: number }
  /** it is so in the first frame already: it began before the clip */
  | { readonly kind: 'began'; readonly mark: number }
  /** a turn that is not 1, 2, 3 … quarters */
  | { readonly kind: 'quarters'; readonly mark: number }
  /** a place in the picture that is none: `row` is 0 to 1 */
  | { readonly kind: 'row'; readonly mark: number }
  /** there is one of its kind; the earlier in the list counts */
  | { readonly kind: 'twice'; readonly mark: number; readonly first: number }
  /** it is earlier, or later, than `other` lets it be */
  | { readonly kind: 'order'; readonly mark: number; readonly other: number; readonly is: 'early' | 'late' }
  /** what is so long or short (s) in the air was hardly taken at the rate that was typed; nothing is left out. `rise`: m, as high up as down */
  | { readonly kind: 'rate'; readonly airTime: number; readonly rise: number; readonly is: 'long' | 'short' };

/** So many quarters are 40 somersaults. */
const MOST_QUARTERS = 160;

interface Placed {
  readonly mark: ClipMark;
  readonly i: number;
}

/** Faults of marks, and the marks without them. */
export function findMarkFaults(
  { t }: Pick<ClipFrames, 't'>,
  marks: readonly ClipMark[],
): { readonly faults: readonly MarkFault[]; readonly good: readonly ClipMark[] } {
  const faults: MarkFault[] = [];
  const placed: Placed[] = [];
  const first = new Map<string, number>();
  marks.forEach((mark, i) => {
    const fault = faultOf(mark, i, t.length);
    const kind = mark.kind === 'turn' ? `turn ${mark.quarters}` : mark.kind;
    const twin = first.get(kind);
    if (fault) faults.push(fault);
    else if (twin !== undefined) faults.push({ kind: 'twice', mark: i, first: twin });
    else {
      first.set(kind, i);
      placed.push({ mark, i });
    }
  });
  const wrong = outOfOrder(placed);
  faults.push(...wrong);
  const out = new Set(wrong.map(({ mark }) => mark));
  return { faults, good: placed.flatMap(({ mark, i }) => (out.has(i) ? [] : [mark])) };
}

/** Between the frame before and this one; the others are the nearest frame. */
export const isBetweenFrames = (mark: ClipMark): boolean => mark.kind !== 'turn' && mark.kind !== 'highest';

function faultOf(mark: ClipMark, i: number, frames: number): MarkFault | undefined {
  if (!Number.isInteger(mark.frame) || mark.frame < 0 || mark.frame >= frames) return { kind: 'noFrame', mark: i };
  if (isBetweenFrames(mark) && mark.frame === 0) return { kind: 'began', mark: i };
  if (mark.row !== undefined && !(mark.row >= 0 && mark.row <= 1)) return { kind: 'row', mark: i };
  const { quarters = Number.NaN } = mark;
  if (mark.kind === 'turn' && !(Number.isInteger(quarters) && quarters >= 1 && quarters <= MOST_QUARTERS))
    return { kind: 'quarters', mark: i };
  return undefined;
}

type OrderFault = Extract<MarkFault, { kind: 'order' }>;

function outOfOrder(placed: readonly Placed[]): OrderFault[] {
  const faults: OrderFault[] = [];
  const find = (kind: ClipMark['kind']): Placed | undefined => placed.find(({ mark }) => mark.kind === kind);
  const wrong = (one: Placed, other: Placed, is: 'early' | 'late'): false => {
    faults.push({ kind: 'order', mark: one.i, other: other.i, is });
    return false;
  };
  const takeoff = find('takeoff');
  const isAfter = (one: Placed, other: Placed | undefined): boolean =>
    !other || one.mark.frame > other.mark.frame || wrong(one, other, 'early');
  let landing = find('landing');
  if (landing && !isAfter(landing, takeoff)) landing = undefined;
  const rest = find('rest');
  if (rest) isAfter(rest, landing ?? takeoff);
  // the nearest frame may be the first of the landing
  const isInAir = (one: Placed): boolean =>
    isAfter(one, takeoff) && (!landing || one.mark.frame <= landing.mark.frame || wrong(one, landing, 'late'));
  const highest = find('highest');
  if (highest) isInAir(highest);
  const turns = placed.filter((one) => one.mark.kind === 'turn' && isInAir(one));
  turns.sort((a, b) => (a.mark.quarters ?? 0) - (b.mark.quarters ?? 0));
  const kept = longestRising(turns);
  turns.forEach((one, k) => {
    if (kept.has(k)) return;
    const before = turns.findLast((other, j) => j < k && kept.has(j) && other.mark.frame >= one.mark.frame);
    const after = turns.find((other, j) => j > k && kept.has(j) && other.mark.frame <= one.mark.frame);
    if (before) wrong(one, before, 'early');
    else if (after) wrong(one, after, 'late');
  });
  return faults;
}

/** Of turns by their quarters, the most that also come one after the other: one that is out of place does not put the others out. */
function longestRising(turns: readonly Placed[]): Set<number> {
  const length: number[] = [];
  const from: number[] = [];
  let best = -1;
  turns.forEach(({ mark }, k) => {
    length[k] = 1;
    from[k] = -1;
    for (let j = 0; j < k; j++)
      if (turns[j].mark.frame < mark.frame && length[j] + 1 > length[k]) {
        length[k] = length[j] + 1;
        from[k] = j;
      }
    if (best < 0 || length[k] > length[best]) best = k;
  });
  const kept = new Set<number>();
  for (let k = best; k >= 0; k = from[k]) kept.add(k);
  return kept;
}
