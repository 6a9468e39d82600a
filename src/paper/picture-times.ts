/** At which instants a picture shows the flight: equal times, or equal turns of the somersault or of the twist. */
import type { PaperFlight } from './paper-flight.ts';

export type TimesBy = 'time' | 'somersault' | 'twist';

/** rad: turned by less there is nothing to divide */
const LEAST = 0.3;

/** Take-off and end among them. Undefined where the flight has no such turn, or it is not defined to the end. */
export function equalTimes({ duration, frames }: PaperFlight, count: number, by: TimesBy): number[] | undefined {
  const shares = Array.from({ length: count }, (_, k) => k / (count - 1));
  if (by === 'time') return shares.map((share) => share * duration);
  const turned = frames[by];
  const total = turned[frames.n - 1] - turned[0];
  if (!(Math.abs(total) > LEAST)) return undefined;
  const at = (share: number): number => {
    if (share === 0) return 0;
    if (share === 1) return duration;
    const wanted = share * total;
    // the first time that it is reached: a turn back does not count again
    for (let i = 1; i < frames.n; i++) {
      const [a, b] = [turned[i - 1] - turned[0], turned[i] - turned[0]];
      if (Math.abs(b) < Math.abs(wanted) || b * total < 0) continue;
      return frames.t[i - 1] + ((wanted - a) / (b - a)) * (frames.t[i] - frames.t[i - 1]);
    }
    return duration;
  };
  return shares.map(at);
}
