/** The skill's code in the notations of the trade, read from its flight; or why there is none. */
import {
  calcDifficulty,
  codeOfSkill,
  diveOfFlight,
  type Frames,
  formatDifficulty,
  formatDiveNumber,
  formatTrampolineCode,
  isNamedTrampoline,
  type Summary,
  type SurfaceKind,
  wordTrade,
} from '../../sim/index.ts';
import type { SkillCode } from './result.ts';

export function findCode(summary: Summary, frames: Frames, surface: SurfaceKind | undefined): SkillCode {
  const found = codeOfSkill(summary, frames, surface);
  if (found.kind === 'none') return { reason: found.reason };
  const { code, earlyHalfTwists } = found;
  const direction = summary.somersaultWord;
  const [trade] = wordTrade({
    direction,
    somersaults: code.quarters / 4,
    halfTwists: code.halfTwists,
    earlyHalfTwists,
  });
  const dive = surface === 'water' ? diveOfFlight(found, summary, frames) : undefined;
  return {
    code: formatTrampolineCode(code),
    isNamed: isNamedTrampoline(surface),
    difficulty: formatDifficulty(calcDifficulty(code, direction)),
    ...(trade ? { trade } : {}),
    ...(dive?.kind === 'dive' ? { dive: formatDiveNumber(dive.dive) } : {}),
    ...(dive?.kind === 'none' ? { noDive: dive.reason } : {}),
  };
}
