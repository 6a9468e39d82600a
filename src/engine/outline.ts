/** The flight's summary in the numbers and units of the sentence. */

import type { SkillVerdict, Summary } from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import type { Outline } from './result.ts';

/** Under this many somersaults there is no direction of rotation to be short or past in. */
const TURNS = 0.05;

export function makeOutline(summary: Summary, verdict: SkillVerdict): Outline {
  const { landing, somersaults, twists, tilt, duration } = summary;
  const turned = somersaults !== undefined && somersaults >= TURNS;
  return {
    verdict,
    somersaults: somersaults ?? null,
    somersaultWord: summary.somersaultWord,
    twists: twists ?? null,
    twistWord: summary.twistWord,
    duration,
    apex: Math.min(Math.max(summary.apex ?? 0, 0), duration),
    height: summary.height.value,
    shortDeg: landing && turned ? landing.short * DEG : null,
    tiltDeg: tilt === undefined ? null : tilt * DEG,
    undefinedFrom: summary.undefinedFrom,
    leanDeg: landing && !turned ? landing.lean * DEG : null,
    inverted: landing?.inverted ?? false,
    wantedSomersault: landing && turned ? landing.wanted : undefined,
  };
}
