/** One axis of ms for the slider and both charts of a release. */
import type { WindowResult } from '../../jobs/kinds/leg-data.ts';

export interface StudyScale {
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly x: (ms: number) => number;
  readonly ms: (x: number) => number;
  readonly ticks: readonly number[];
}

/** px at both ends */
const EDGE = 14;
/** ms around the release and around the window that are seen */
const AROUND = 40;
const PAST_WINDOW = 16;

export function makeStudyScale({ tries, fromMs, toMs }: WindowResult, width: number): StudyScale {
  const all = tries.map((one) => one.lateMs);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const wish = (ms: number): number => (Number.isFinite(ms) ? ms : 0);
  const from = Math.max(least, 10 * Math.floor(Math.min(-AROUND, wish(fromMs) - PAST_WINDOW) / 10));
  const to = Math.min(most, 10 * Math.ceil(Math.max(AROUND, wish(toMs) + PAST_WINDOW) / 10));
  const perMs = (width - 2 * EDGE) / Math.max(1, to - from);
  const step = perMs * 20 > 34 ? 20 : 40;
  const ticks: number[] = [];
  for (let k = Math.ceil(from / step); k * step <= to; k++) ticks.push(k * step);
  return {
    from,
    to,
    width,
    x: (ms) => EDGE + (Math.min(Math.max(ms, from), to) - from) * perMs,
    ms: (x) => Math.min(Math.max(from + (x - EDGE) / perMs, from), to),
    ticks,
  };
}
