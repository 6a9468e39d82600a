/** One flight in the page, at once: from the document to everything the panels show. */
import {
  buildSkill,
  calcCautionsAt,
  calcFrames,
  checkSkillFile,
  type Flight,
  flySkill,
  frameTimes,
  parseAthlete,
  parseSkill,
  type Shelf,
  type Skill,
  type SkillFile,
  summarize,
} from '../../sim/index.ts';
import type { ToldTakeoff } from '../jobs/kinds/whole-data.ts';
import { listCautions } from './cautions.ts';
import { findCode } from './code.ts';
import { explain } from './explain.ts';
import { makeOutline } from './outline.ts';
import { getOverlaps } from './overlaps.ts';
import { makeReleases } from './releases.ts';
import type { FlightResult } from './result.ts';

/** Frames a second for curves and readout; long flights get fewer. */
const RATE_HZ = 120;
const MOST_FRAMES = 300;
/** While a hand drags: half the frames, and an error of 1e-8 a step, still far under what can be seen. */
const DRAFT_RATE_HZ = 60;
const DRAFT_TOLERANCE = 1e-8;

export interface Engine {
  /** `from` is the flight just before in the same drag: then a coarser, quicker one will do */
  fly(file: SkillFile, from?: FlightResult): FlightResult;
  /** of a skill that is the file's but for its take-off */
  flyAs(file: SkillFile, skill: Skill): FlightResult;
  /** what a swing or a known push gives the flight of this file; true when that is news */
  setRelease(file: SkillFile, takeoff: ToldTakeoff): boolean;
  readFile(json: unknown): SkillFile;
  readAthlete(json: unknown): FlightResult['athlete'];
  findAthlete(file: SkillFile): FlightResult['athlete'];
  /** of a flight that stands: they cost as much as a tenth of it, too much for every move of a hand */
  readonly overlaps: typeof getOverlaps;
  readonly explain: typeof explain;
}

export function makeEngine(shelf: Shelf): Engine {
  let flights = 0;
  const releases = makeReleases();
  const findAthlete: Engine['findAthlete'] = ({ athlete }) =>
    'ref' in athlete ? shelf.athletes[athlete.ref] : athlete;
  const complete = (file: SkillFile, skill: Skill, flight: Flight, draft: boolean): FlightResult => {
    const rate = Math.min(draft ? DRAFT_RATE_HZ : RATE_HZ, MOST_FRAMES / flight.duration);
    const frames = calcFrames(flight, frameTimes(flight.duration, rate));
    const summary = summarize(flight, frames, skill.target);
    flights += 1;
    return {
      file,
      athlete: findAthlete(file),
      skill,
      flight,
      frames,
      outline: { ...makeOutline(summary), inAir: skill.end.surface === undefined },
      code: findCode(summary, frames, skill.end.surface?.kind),
      cautions: listCautions(skill.body, summary.cautions),
      cautionsAt: (row) => listCautions(skill.body, calcCautionsAt(skill.body, frames, row)),
      key: String(flights),
      draft,
    };
  };
  return {
    setRelease: (file, takeoff) => releases.set(file, findAthlete(file), takeoff),
    findAthlete,
    overlaps: getOverlaps,
    explain,
    readFile: (json) => checkSkillFile(json),
    readAthlete: (json) => parseAthlete(json),
    fly: (file, from) => {
      const skill = releases.apply(file, findAthlete(file), buildSkill(parseSkill(file, shelf)));
      const flight = flySkill(skill, from ? { near: from.flight.duration, tolerance: DRAFT_TOLERANCE } : {});
      return complete(file, skill, flight, from !== undefined);
    },
    flyAs: (file, skill) => complete(file, skill, flySkill(skill), false),
  };
}
