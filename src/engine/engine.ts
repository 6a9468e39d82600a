/** One flight in the page, at once: from the document to everything the panels show. */
import {
  apparatusOf,
  BeyondBudgetError,
  buildChain,
  buildSkill,
  type Catalogue,
  calcCautionsAt,
  calcContactReport,
  calcRelease,
  checkSkillFile,
  contactFor,
  exportVersion1,
  type FileTakeoff,
  flySkill,
  formatSkill,
  inAthleteFile,
  type LaunchedSkill,
  type MeasuredFlight,
  makeBody,
  measureFlown,
  migrateKept,
  namedOffRail,
  namesOfSkill,
  needsFix,
  parseAthlete,
  parseChain,
  parseJson,
  parseSkill,
  placeOfSkill,
  readAthlete,
  readJump,
  type SkillFile,
  type SkillVerdict,
  StepBudget,
  takeoffInFile,
  unpackFlown,
  verdictInFlight,
} from '../../sim/index.ts';
import { own } from '../../sim/math/own.ts';
import type { ReadLong } from '../jobs/kinds/read-data.ts';
import type { JobCall } from '../jobs/pool.ts';
import { makeBeside } from './beside.ts';
import { readCautions } from './cautions.ts';
import { explain } from './explain.ts';
import type { FarFlights } from './far-flight.ts';
import { type Jumping, makeJumping } from './jump.ts';
import { type ChainLegs, makeLegs } from './legs.ts';
import { makeOutline } from './outline.ts';
import { getOverlaps } from './overlaps.ts';
import { type AskRelease, makeReleases } from './releases.ts';
import type { FlightResult } from './result.ts';
import { MOST_HERE, MOST_STEPS, weighFlight } from './weight.ts';

/** While a hand drags: an error a step that is still far under what can be seen. */
export const DRAFT_TOLERANCE = 1e-8;

export interface Engine {
  /**
   * `from` is the flight just before in the same drag: then a coarser, quicker one will do. Throws a ReleasePendingError while
   * the swing or contact before the flight is computed, and a FlightPendingError while a flight that costs much (weight.ts) is flown
   * beside the page.
   */
  fly(file: SkillFile, from?: FlightResult): FlightResult;
  /** when a flight beside the page has come, or was stopped; at once where there is none */
  flown(file: SkillFile): Promise<void>;
  /** the flight beside the page is not wanted */
  cancel(file: SkillFile): void;
  /** a long text, read beside the page; undefined where it is short enough */
  readLong(text: string): JobCall<ReadLong> | undefined;
  /** the legs of a document that is a chain */
  readonly legs: ChainLegs;
  /** throws a FieldError of any of its legs */
  checkChain(file: SkillFile): void;
  /** of a skill that is the file's but for its take-off */
  flyAs(file: SkillFile, skill: LaunchedSkill): FlightResult;
  /** when what comes before the flight is known, or cannot be computed; at once for one that is flown beside the page */
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

/** Letters of a text that is read beside the page: half a megabyte takes some tenths of a second to be checked. */
const LONG_TEXT = 150_000;

/** `far`: where heavy flights are flown; left out, as in a test: here, at once. */
export function makeEngine(shelf: Catalogue, askRelease: AskRelease = askHere(shelf), far?: FarFlights): Engine {
  let flights = 0;
  let listener: ((file: SkillFile) => void) | undefined;
  const releases = makeReleases(askRelease);
  releases.onKnown((file) => listener?.(file));
  const findAthlete: Engine['findAthlete'] = ({ athlete }) => {
    if (!('ref' in athlete)) return athlete;
    return own(shelf.athletes, athlete.ref) as FlightResult['athlete'];
  };
  const complete = (
    { skill, flight, frames, summary }: MeasuredFlight,
    file: SkillFile,
    draft: boolean,
  ): FlightResult => {
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
  const launchFile = (file: SkillFile): LaunchedSkill => {
    // first, so that a file without an athlete is refused with its field
    const built = buildSkill(parseSkill(file, shelf));
    return releases.launch(file, findAthlete(file), built);
  };
  const beside = far
    ? makeBeside<FlightResult>({
        ask: (file) => far.ask(file, findAthlete(file)),
        take: (file, data) => complete(unpackFlown(makeBody(readAthlete(findAthlete(file))), data), file, false),
        settled: (file) => listener?.(file),
      })
    : undefined;
  const heavy = new WeakSet<SkillFile>();
  const isHeavy = (file: SkillFile): boolean => {
    if (!beside) return false;
    try {
      const athlete = findAthlete(file);
      if (athlete && weighFlight(file, athlete) > MOST_HERE) heavy.add(file);
    } catch {
      // a kept document may lack anything: which field, says the reader
    }
    return heavy.has(file);
  };
  /** at once; one that takes too many steps is flown beside the page from then on */
  const flyHere = (file: SkillFile, from?: FlightResult): FlightResult => {
    const skill = launchFile(file);
    const flight = flySkill(skill, {
      ...(beside ? { budget: new StepBudget(MOST_STEPS) } : {}),
      ...(from ? { near: { touchdown: from.flight.duration }, tolerance: DRAFT_TOLERANCE } : {}),
    });
    return complete(measureFlown(skill, flight, from !== undefined), file, from !== undefined);
  };
  const fly: Engine['fly'] = (file, from) => {
    if (beside && isHeavy(file)) return beside.fly(file);
    try {
      return flyHere(file, from);
    } catch (error) {
      if (!beside || !(error instanceof BeyondBudgetError)) throw error;
      heavy.add(file);
      return beside.fly(file);
    }
  };
  const legs = makeLegs((file) => {
    if (isHeavy(file)) return fly(file).flight;
    try {
      return flySkill(launchFile(file), beside ? { budget: new StepBudget(MOST_STEPS) } : {});
    } catch (error) {
      // flown beside the page, or it fails as it did
      if (error instanceof BeyondBudgetError) return fly(file).flight;
      throw error;
    }
  });
  return {
    fly,
    flown: async (file) => beside?.flown(file),
    cancel: (file) => beside?.cancel(file),
    readLong: (text) => (far && text.length > LONG_TEXT ? far.read(text) : undefined),
    // of a chain what comes before its first flight
    ready: async (file) => {
      try {
        const first = legs.fileOf(file, 0);
        if (!isHeavy(first)) await releases.ready(first, findAthlete(file));
      } catch {
        // what is wrong with it is said when it is flown
      }
    },
    onRelease: (hear) => {
      listener = hear;
    },
    retryReleases: () => {
      releases.retry();
      beside?.retry();
    },
    findAthlete,
    overlaps: getOverlaps,
    needsFix: ({ skill }, verdict) => needsFix(skill, verdict),
    explain,
    readJson: parseJson,
    legs,
    jumping: makeJumping(launchFile, isHeavy),
    checkChain: (file) => {
      // a heavy one was checked beside the page when it was opened
      if (legs.count(file) > 1 && !isHeavy(legs.fileOf(file, 0))) buildChain(parseChain(file, shelf));
    },
    readFile: (json) => checkSkillFile(json),
    migrate: migrateKept,
    launchedTakeoff: ({ skill }) => takeoffInFile(skill.takeoff),
    writeVersion1: ({ file, skill, athlete }) => formatSkill(exportVersion1(file, skill.takeoff, athlete)),
    readAthlete: (json) => {
      // one of whom there is no body is not taken onto the shelf
      inAthleteFile(json, () => makeBody(readAthlete(json)));
      return parseAthlete(json);
    },
    flyAs: (file, skill) => complete(measureFlown(skill, flySkill(skill)), file, false),
  };
}

/** Without a worker: in the same thread. */
const askHere =
  (shelf: Catalogue): AskRelease =>
  async (file) => {
    const skill = buildSkill(parseSkill(file, shelf));
    return calcRelease(skill, await contactFor({ start: skill.start }));
  };
