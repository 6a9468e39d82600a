// A flight with somersault, twist and moving arms, as a posed motion: what round trips start from.
import { athletes, shapes, skills } from '../../presets/index.ts';
import { buildSkill, checkSkillFile, flySkill, launch, parseSkill } from '../../sim/index.ts';
import type { PosedMotion } from '../../sim/recording/posed.ts';
import { posedOfFlight } from '../../sim/recording/posed-flight.ts';

const file = checkSkillFile(skills['back-straight-full']);
export const flight = flySkill(launch(buildSkill(parseSkill(file, { athletes, shapes }))));

export const evenTimes = (rateHz: number): number[] =>
  Array.from({ length: Math.floor(flight.duration * rateHz) }, (_, i) => i / rateHz);

export const flown = (rateHz: number): PosedMotion => posedOfFlight(flight, evenTimes(rateHz));
