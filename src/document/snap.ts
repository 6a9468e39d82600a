/** Where a time that is dragged comes to rest: on events, on quarter somersaults, on other keys, else on the frame grid. */
import type { Frames } from '../../sim/index.ts';
import type { AnchorSeconds } from './times.ts';

type SnapKind = 'event' | 'quarter' | 'key' | 'frame';

export interface SnapTime {
  readonly s: number;
  readonly kind: SnapKind;
  /** take-off, apex and touchdown: what a key may be anchored to */
  readonly anchor?: 'takeoff' | 'apex' | 'touchdown';
  /** how many quarters of a somersault are done */
  readonly quarters?: number;
}

/** The grid, Hz: hundredths, as times are typed and shown. */
const SNAP_RATE = 100;
/** A time this near, px, is taken. */
const SNAP_PX = 6;
const STRENGTH: Readonly<Record<SnapKind, number>> = { event: 3, quarter: 2, key: 2, frame: 1 };

/** The candidate within reach that is nearest; at equal distance events before keys. None: the nearest frame. */
export function snapTime(s: number, candidates: readonly SnapTime[], pxPerS: number, reachPx = SNAP_PX): SnapTime {
  let best: SnapTime | undefined;
  let least = reachPx;
  for (const c of candidates) {
    // a pixel nearer for what is stronger, so that a key on an event does not hide it
    const px = Math.abs(c.s - s) * pxPerS - STRENGTH[c.kind] / 10;
    if (px <= least) [best, least] = [c, px];
  }
  return best ?? { s: Math.round(s * SNAP_RATE) / SNAP_RATE, kind: 'frame' };
}

export function getEventTimes(anchors: AnchorSeconds): SnapTime[] {
  return [
    { s: 0, kind: 'event', anchor: 'takeoff' },
    { s: anchors.apex, kind: 'event', anchor: 'apex' },
    { s: anchors.touchdown, kind: 'event', anchor: 'touchdown' },
  ];
}

/** When each quarter of a somersault since take-off is done, in either direction; none where it is not defined. */
export function calcQuarterTimes(frames: Pick<Frames, 'n' | 't' | 'somersault'>): SnapTime[] {
  const { n, t, somersault } = frames;
  const quarter = Math.PI / 2;
  const out: SnapTime[] = [];
  for (let i = 1; i < n; i++) {
    const a = (somersault[i - 1] - somersault[0]) / quarter;
    const b = (somersault[i] - somersault[0]) / quarter;
    if (!Number.isFinite(a + b) || a === b) continue;
    const [low, high] = a < b ? [a, b] : [b, a];
    for (let k = Math.ceil(low); k <= high; k++) {
      if (k === 0 || k === a) continue;
      out.push({ s: t[i - 1] + ((k - a) / (b - a)) * (t[i] - t[i - 1]), kind: 'quarter', quarters: Math.abs(k) });
    }
  }
  return out;
}
