/**
 * What a swing or a known contact gives the flights of the page. The page flies a skill at once, but a swing takes longer and is
 * computed by a worker: until it is known there is no flight of its skill, and when it is, who waits hears of it. While a hand
 * drags, one is computed at a time, and the newest next: those asked for in between are passed over.
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

/** The worker died, could not be loaded or did not answer in time: asked for again, it may well come. */
class ReleaseLostError extends Error {
  override readonly name = 'ReleaseLostError';
}
const LOST: readonly string[] = ['WorkerLostError', 'PartNotLoadedError', 'JobTimeoutError'];

interface Releases {
  /** throws a ReleasePendingError while the release is computed, or what it failed with */
  launch(file: SkillFile, athlete: Athlete, skill: Skill): LaunchedSkill;
  /** when the release is known or has failed; never passed over */
  ready(file: SkillFile, athlete: Athlete): Promise<void>;
  /** called with the file whose release is known, or has failed */
  onKnown(listener: (file: SkillFile) => void): void;
  /** forgets which were lost, so that they are asked for again */
  retry(): void;
}

type Known =
  | { readonly release: Release }
  | { readonly error: unknown }
  /** asked for, and not known yet */
  | { readonly asked: Promise<void> };

export function makeReleases(ask: AskRelease): Releases {
  const known = new Map<string, Known>();
  let listener: ((file: SkillFile) => void) | undefined;
  let underWay = 0;
  let next: (() => void) | undefined;
  const put = (key: string, value: Known): void => {
    known.delete(key);
    known.set(key, value);
    for (const oldest of known.keys()) {
      if (known.size <= MOST) break;
      known.delete(oldest);
    }
  };
  const begin = (key: string, file: SkillFile, athlete: Athlete): Promise<void> => {
    underWay++;
    const asked = ask(file, athlete)
      .then(
        (release) => put(key, { release }),
        (error: unknown) => put(key, { error: isLost(error) ? new ReleaseLostError(error.message) : error }),
      )
      .then(() => {
        underWay--;
        const start = next;
        next = undefined;
        start?.();
        listener?.(file);
      });
    put(key, { asked });
    return asked;
  };
  return {
    launch: (file, athlete, skill) => {
      if (skill.start.kind === 'stated') return launch(skill);
      const key = keyOf(file, athlete);
      const one = known.get(key);
      if (one && 'release' in one) return launchFrom(skill, one.release);
      if (one && 'error' in one) throw one.error;
      const start = (): void => {
        if (!known.has(key)) void begin(key, file, athlete);
      };
      if (underWay > 0) next = one ? undefined : start;
      else start();
      throw new ReleasePendingError(file.title);
    },
    ready: async (file, athlete) => {
      const before = beforeOf(file);
      if (!before || (before.kind === 'contact' && !before.given)) return;
      const key = keyOf(file, athlete);
      const one = known.get(key);
      if (!one) await begin(key, file, athlete);
      else if ('asked' in one) await one.asked;
    },
    onKnown: (hear) => {
      listener = hear;
    },
    retry: () => {
      for (const [key, one] of known) if ('error' in one && one.error instanceof ReleaseLostError) known.delete(key);
    },
  };
}

const isLost = (error: unknown): error is Error => error instanceof Error && LOST.includes(error.name);

const keyOf = (file: SkillFile, athlete: Athlete): string =>
  JSON.stringify([beforeOf(file), flightOf(file).takeoff ?? null, athlete, file.gravityMPerS2 ?? null]);
