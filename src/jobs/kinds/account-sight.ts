/** What the eyes see in a flight, as plain data: stretches without gaps, and where the landing lies at each frame. */
import { calcSight, type Flight, type Frames } from '../../../sim/index.ts';
import type { SightResult, SightSpan } from './account-data.ts';

export function makeSightResult(flight: Flight, frames: Frames): SightResult | undefined {
  const sight = calcSight(flight, frames);
  if (!sight) return undefined;
  const glances = Array.from(frames.t, (t) => sight.at(t));
  const edges = sight.spans.flat();
  const spans: SightSpan[] = [];
  const put = (to: number, why: SightSpan['why']): void => {
    const last = spans.at(-1);
    const from = last?.to ?? 0;
    if (last?.why === why) spans[spans.length - 1] = { ...last, to };
    else if (to > from) spans.push({ from, to, why });
  };
  // edges of what is seen are known exactly, those between two reasons to a frame
  for (let i = 0; i + 1 < frames.n; i++) {
    const [t, end] = [frames.t[i], frames.t[i + 1]];
    const edge = edges.find((x) => x > t && x < end);
    if (edge !== undefined) put(edge, glances[i].why ?? 'seen');
    put(end, (edge === undefined ? glances[i].why : glances[i + 1].why) ?? 'seen');
  }
  return {
    spans,
    share: sight.share,
    ...(sight.firstBefore === undefined ? {} : { firstBefore: sight.firstBefore }),
    ...(sight.lastBefore === undefined ? {} : { lastBefore: sight.lastBefore }),
    t: Float64Array.from(frames.t),
    side: Float64Array.from(glances, (g) => g.side),
    up: Float64Array.from(glances, (g) => g.up),
  };
}
