/** A skill's result for the summary as JSON, in the units people type. Fields: docs/command-line.md. */
import { DEG } from '../math/angles.ts';
import type { Likelihood } from '../skill/likelihood.ts';
import type { Ending, Miss, SkillVerdict } from '../skill/skill-verdict.ts';

/** What is missed of what was wanted, the ending, and what the ending was judged by. */
export function verdictJson({ missed, flown, ending, basis, short }: SkillVerdict): object {
  return {
    missed: missed.map(missJson),
    ...(flown.isTwistCoarse ? { twistsKnownTo: 0.1 } : {}),
    shortDeg: short === undefined ? null : short * DEG,
    ending: endingJson(ending),
    judgedBy: basis,
  };
}

/** In how many of ten of the stated ranges it ends which way. */
export const likelihoodJson = ({ samples, tenths, ranges }: Likelihood): object => ({
  samples,
  tenths: Object.fromEntries(tenths.map((one) => [one.kind, one.tenths])),
  ranges: ranges.map(({ name, low, high, source }) => ({ name, low, high, source })),
});

function missJson(miss: Miss): object {
  if (miss.kind === 'near')
    return { kind: miss.kind, part: miss.part, solid: miss.solid, distanceM: miss.distance, atS: miss.t };
  if (miss.kind === 'tilt') return { kind: miss.kind, tiltDeg: miss.tilt * DEG, headTo: miss.headTo };
  if (miss.kind === 'twists')
    return { kind: miss.kind, done: miss.done, wanted: miss.wanted, pastDeg: miss.past * DEG };
  return miss;
}

function endingJson(ending: Ending): object {
  switch (ending.kind) {
    case 'landed':
      return {
        kind: ending.how,
        direction: ending.direction ?? null,
        afterTouchdownS: ending.t,
        ...(ending.isFast ? { isFast: true } : {}),
      };
    case 'touches':
      return {
        kind: ending.kind,
        would: ending.place,
        direction: ending.direction,
        ...(ending.isFast ? { isFast: true } : {}),
      };
    case 'enters':
      return { kind: ending.kind, first: ending.first, bentDeg: ending.bend * DEG };
    case 'bounces':
      return { kind: ending.kind, travelM: ending.travel, bentDeg: ending.bend * DEG };
    case 'notComputed':
      return {
        kind: ending.kind,
        why: ending.why.kind,
        ...(ending.why.kind === 'fast' && ending.why.hasImpact ? { hasImpact: true } : {}),
      };
    default:
      return ending;
  }
}
