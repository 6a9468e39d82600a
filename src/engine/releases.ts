/**
 * Take-offs that a swing or a known push gave, by what they were computed from. The page flies a skill at once; the swing
 * before it comes from a worker and gives the flight its true take-off a moment later.
 */
import type { Athlete, Skill, SkillFile } from '../../sim/index.ts';
import type { ToldTakeoff } from '../jobs/kinds/whole-data.ts';

const MOST = 40;

export interface Releases {
  set(file: SkillFile, athlete: Athlete, takeoff: ToldTakeoff): boolean;
  /** the skill with the take-off that is known for it */
  apply(file: SkillFile, athlete: Athlete, skill: Skill): Skill;
}

export function makeReleases(): Releases {
  const known = new Map<string, ToldTakeoff>();
  const keyOf = (file: SkillFile, athlete: Athlete): string =>
    JSON.stringify([file.approach, file.takeoff, athlete, file.gravityMPerS2 ?? null]);
  return {
    set: (file, athlete, takeoff) => {
      const key = keyOf(file, athlete);
      const before = known.get(key);
      known.delete(key);
      known.set(key, takeoff);
      for (const oldest of known.keys()) {
        if (known.size <= MOST) break;
        known.delete(oldest);
      }
      return before === undefined || JSON.stringify(before) !== JSON.stringify(takeoff);
    },
    apply: (file, athlete, skill) => {
      const takeoff = file.approach && known.get(keyOf(file, athlete));
      if (!takeoff) return skill;
      const { height, v_WScm_W, h_Scm_W, somersault, tilt, twist, angles, rates, within } = takeoff;
      return {
        ...skill,
        takeoff: {
          height: { of: 'massCentre', y: height },
          v_WScm_W,
          somersault,
          tilt,
          twist,
          momentum: { kind: 'vector', h_Scm_W },
        },
        ...(angles && rates ? { carried: { angles, rates, within } } : {}),
      };
    },
  };
}
