/** One flight in the page, at once: from the document to everything the panels show. */

import {
  apparatusOf,
  buildChain,
  buildSkill,
  type Catalogue,
  calcCautionsAt,
  calcContactReport,
  calcFrames,
  calcRelease,
  checkSkillFile,
  contactFor,
  exportVersion1,
  type FileTakeoff,
  type Flown,
  flySkill,
  formatSkill,
  frameTimes,
  type LaunchedSkill,
  migrateKept,
  namedOffRail,
  namesOfSkill,
  needsFix,
  parseAthlete,
  parseChain,
  parseJson,
  parseSkill,
  placeOfSkill,
  readJump,
  type SkillFile,
  type SkillVerdict,
  summarize,
  takeoffInFile,
  verdictInFlight,
} from '../../sim/index.ts';
import { own } from '../../sim/math/own.ts';
import { readCautions } from './cautions.ts';
import { explain } from './explain.ts';
import { type Jumping, makeJumping } from './jump.ts';
import { type ChainLegs, makeLegs } from './legs.ts';
import { makeOutline } from './outline.ts';
import { getOverlaps } from './overlaps.ts';
import { type AskRelease, makeReleases } from './releases.ts';
import type { FlightResult } from './result.ts';

/** Frames a second for curves and readout; long flights get fewer. */
const RATE_HZ = 120;
const MOST_FRAMES = 300;
/** While a hand drags: half the frames, and an error of 1e-8 a step, still far under what can be seen. */
const DRAFT_RATE_HZ = 60;
export const DRAFT_TOLERANCE = 1e-8;

export interface Engine {
  /**
   * `from` is the flight just before in the same drag: then a coarser, quicker one will do. Throws a ReleasePendingError while
   * the swing or contact before the flight is computed.
   */
  fly(file: SkillFile, from?: FlightResult): FlightResult;
  /** the legs of a document that is a chain */
  readonly legs: ChainLegs;
  /** throws a FieldError of any of its legs */
  checkChain(file: SkillFile): void;
  /** of a skill that is the file's but for its take-off */
  flyAs(file: SkillFile, skill: LaunchedSkill): FlightResult;
  /** when what comes before the flight is known, or cannot be computed */
  ready(file: SkillFile): Promise<void>;
  /** called with a document that was waited for, when it can be flown */
  onRelease(listener: (file: SkillFile) => void): void;
  /** what was lost with its worker is asked for again by the next flight */
  retryReleases(): void;
  /** throws a FieldError that says where a text stops being JSON */
  readonly readJson: typeof parseJson;
  readFile(json: unknown): SkillFile;
  readonly migrate: typeof migrateKept;
  /** take-off and athlete as a coach states them */
  readonly jumping: Jumping;
  /** the take-off that was flown, as a file states it */
  launchedTakeoff(result: FlightResult): FileTakeoff;
  /** the document that was flown as a version 1 file; throws a FieldError that names what such a file cannot say */
  writeVersion1(result: FlightResult): string;
  readAthlete(json: unknown): FlightResult['athlete'];
  findAthlete(file: SkillFile): FlightResult['athlete'];
  /** of a flight that is kept: they cost as much as a tenth of it, too much for every move of a hand */
  readonly overlaps: typeof getOverlaps;
  needsFix(result: FlightResult, verdict: SkillVerdict): boolean;
  readonly explain: typeof explain;
}

export function makeEngine(shelf: Catalogue, askRelease: AskRelease = askHere(shelf)): Engine {
  let flights = 0;
  const releases = makeReleases(askRelease);
  const findAthlete: Engine['findAthlete'] = ({ athlete }) =>
    'ref' in athlete ? (own(shelf.athletes, athlete.ref) as FlightResult['athlete']) : athlete;
  const complete = (file: SkillFile, skill: LaunchedSkill, flight: Flown, draft: boolean): FlightResult => {
    const rate = Math.min(draft ? DRAFT_RATE_HZ : RATE_HZ, MOST_FRAMES / flight.duration);
    const frames = calcFrames(flight, frameTimes(flight.duration, rate), { isRough: draft });
    const summary = summarize(flight, frames, skill.target);
    const place = placeOfSkill(skill);
    const isOffRail = skill.launch.rail !== undefined;
    const verdict = verdictInFlight(skill, summary, undefined, flight.met);
    flights += 1;
    return {
      file,
      athlete: findAthlete(file),
      skill,
      flight,
      frames,
      apparatus: apparatusOf({ skill, flight }),
      jump: readJump(skill, flight, frames),
      outline: makeOutline(summary, namedOffRail(verdict, isOffRail, summary, frames)),
      place,
      names: namesOfSkill(summary, frames, place),
      cautions: readCautions(skill.body, summary.cautions),
      ...(summary.notCompared ? { notCompared: summary.notCompared } : {}),
      cautionsAt: (row) => readCautions(skill.body, calcCautionsAt(skill.body, frames, row)),
      takeoffCautions: (calcContactReport({ skill, flight })?.cautions ?? []).map((caution) => ({
        kind: 'takeoff',
        t: 0,
        caution,
      })),
      key: String(flights),
      draft,
    };
  };
  const launchFile = (file: SkillFile): LaunchedSkill =>
    releases.launch(file, findAthlete(file), buildSkill(parseSkill(file, shelf)));
  const legs = makeLegs(launchFile);
  return {
    // of a chain what comes before its first flight
    ready: (file) => releases.ready(legs.fileOf(file, 0), findAthlete(file)),
    onRelease: releases.onKnown,
    retryReleases: releases.retry,
    findAthlete,
    overlaps: getOverlaps,
    needsFix: ({ skill }, verdict) => needsFix(skill, verdict),
    explain,
    readJson: parseJson,
    legs,
    jumping: makeJumping(launchFile),
    checkChain: (file) => {
      if (legs.count(file) > 1) buildChain(parseChain(file, shelf));
    },
    readFile: (json) => checkSkillFile(json),
    migrate: migrateKept,
    launchedTakeoff: ({ skill }) => takeoffInFile(skill.takeoff),
    writeVersion1: ({ file, skill, athlete }) => formatSkill(exportVersion1(file, skill.takeoff, athlete)),
    readAthlete: (json) => parseAthlete(json),
    fly: (file, from) => {
      const skill = launchFile(file);
      const flight = flySkill(
        skill,
        from ? { near: { touchdown: from.flight.duration }, tolerance: DRAFT_TOLERANCE } : {},
      );
      return complete(file, skill, flight, from !== undefined);
    },
    flyAs: (file, skill) => complete(file, skill, flySkill(skill), false),
  };
}

/** Without a worker: in the same thread. */
const askHere =
  (shelf: Catalogue): AskRelease =>
  async (file) => {
    const skill = buildSkill(parseSkill(file, shelf));
    return calcRelease(skill, await contactFor({ start: skill.start }));
  };
