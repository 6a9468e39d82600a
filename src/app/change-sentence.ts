/** What a change did, in a sentence: from the flights before and after it. */
import { type ChangedFlight, wordChange } from '../../sim/words/change-words.ts';
import type { FlightResult } from '../engine/result.ts';
import { say } from '../ui/units.ts';
import { findCauses } from './change-causes.ts';
import type { Page } from './page.ts';
import { PAGE_NUMBERS } from './say/sentence-words.ts';
import { wordPushedOff } from './takeoff-values.ts';
import { texts } from './words.ts';

/** As far as a change is said of it. */
export function changedFlight({ outline, jump, flight, frames }: FlightResult): ChangedFlight {
  const { t, n, moments } = frames;
  const counted = (axis: number): number => {
    const at = (i: number): number => 1 / moments[3 * i + axis];
    let area = 0;
    for (let i = 1; i < n; i++) area += ((at(i) + at(i - 1)) / 2) * (t[i] - t[i - 1]);
    return n > 1 ? (t[n - 1] - t[0]) / area : 1 / at(0);
  };
  return {
    verdict: outline.verdict,
    airTime: flight.duration,
    rise: jump.rise,
    h: flight.h_Scm_W,
    straight: jump.straight,
    longMoment: counted(2),
    lateralMoment: counted(0),
  };
}

export function sayChange(
  { services }: Page,
  before: FlightResult,
  after: FlightResult,
): ReturnType<typeof wordChange> {
  const causes = findCauses(before, after, {
    ...texts.change,
    pushedOff: wordPushedOff(after),
    shape: (file, id) => file.shapes?.[id]?.word ?? services.presets.shapes[id]?.word ?? id,
    length: (m) => say('length', m),
    mass: (kg) => say('mass', kg),
    gravity: (g) => say('acceleration', g),
  });
  return wordChange(causes, changedFlight(before), changedFlight(after), {
    ...PAGE_NUMBERS,
    inDegrees: PAGE_NUMBERS.inDegrees,
    momentum: (h) => say('momentum', h),
  });
}
