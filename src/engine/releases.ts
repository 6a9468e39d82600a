/**
 * What a swing or a known contact gives the flights of the page. The page flies a skill at once, but a swing takes longer and is
 * computed by a worker: until it is known there is no flight of its skill, and when it is, who waits hears of it.
 */
import {
  type Athlete,
  beforeOf,
  flightOf,
  type LaunchedSkill,
  launch,
  launchFrom,
  type Release,
  type Skill,
  type SkillFile,
} from '../../sim/index.ts';

const MOST = 40;

/** The worker's side: the release of a skill whose start is no stated take-off. */
export type AskRelease = (file: SkillFile, athlete: Athlete) => Promise<Release>;

class ReleasePendingError extends Error {
  constructor(title: string) {
    super(`what comes before the flight of "${title}" is being computed`);
    this.name = 'ReleasePendingError';
  }
}

interface Releases {
  /** throws a ReleasePendingError while the release is computed, or what it failed with */
  launch(file: SkillFile, athlete: Athlete, skill: Skill): LaunchedSkill;
  /** when the release is known or has failed */
  ready(file: SkillFile, athlete: Athlete): Promise<void>;
  /** called when another release is known */
  onKnown(listener: () => void): void;
}

type Known =
  | { readonly release: Release }
  | { readonly error: unknown }
  /** asked for, and not known yet */
  | { readonly asked: Promise<void> };

export function makeReleases(ask: AskRelease): Releases {
  const known = new Map<string, Known>();
  let listener: (() => void) | undefined;
  const put = (key: string, value: Known): void => {
    known.delete(key);
    known.set(key, value);
    for (const oldest of known.keys()) {
      if (known.size <= MOST) break;
      known.delete(oldest);
    }
  };
  const find = (file: SkillFile, athlete: Athlete): Known => {
    const key = JSON.stringify([beforeOf(file), flightOf(file).takeoff ?? null, athlete, file.gravityMPerS2 ?? null]);
    const found = known.get(key);
    if (found) return found;
    const asked = ask(file, athlete).then(
      (release) => put(key, { release }),
      (error: unknown) => put(key, { error }),
    );
    const made = { asked };
    put(key, made);
    void asked.then(() => listener?.());
    return made;
  };
  return {
    launch: (file, athlete, skill) => {
      if (skill.start.kind === 'stated') return launch(skill);
      const one = find(file, athlete);
      if ('release' in one) return launchFrom(skill, one.release);
      if ('error' in one) throw one.error;
      throw new ReleasePendingError(file.title);
    },
    ready: async (file, athlete) => {
      const before = beforeOf(file);
      if (!before || (before.kind === 'contact' && !before.given)) return;
      const one = find(file, athlete);
      if ('asked' in one) await one.asked;
    },
    onKnown: (hear) => {
      listener = hear;
    },
  };
}
