/** The cues offered for a flight: its moves, and the words for them. */
import { calcLimbSpans } from '../../sim/index.ts';
import { REV } from '../../sim/math/angles.ts';
import { placeIn } from '../../sim/math/sorted.ts';
import { type Cue, offerCues } from '../../sim/words/cue-words.ts';
import type { PaperFlight } from './paper-flight.ts';

/** `isLanding`: it comes down on the feet. */
export function offerPaperCues({ staged, frames, duration }: PaperFlight, isLanding: boolean): Cue[] {
  const rateAt = (t: number): number => {
    const { i, share } = placeIn(frames.t, t, frames.n);
    return (frames.twistRate[i] + (frames.twistRate[i + 1] - frames.twistRate[i]) * share) / REV;
  };
  return offerCues({
    spans: calcLimbSpans(staged.body, frames),
    duration,
    twistRate: rateAt,
    isLanding,
  });
}
