/**
 * The flight that posed frames are of: the poses are moments of its schedule, and its momentum and the attitude of its take-off are those with which the flown
 * somersault comes nearest to the posed ones. Twist and tilt are inferred from one camera: they weigh little, and only where the frames twist.
 * ± hold about nineteen of twenty: frames drawn again with the errors that hands make, and as much wider as what is left over is larger.
 */
import type { Body } from '../body/body.ts';
import type { Athlete } from '../files/athlete-schema.ts';
import { checkSkillFile } from '../files/check-skill.ts';
import { type Catalogue, parseSkill } from '../files/parse-skill.ts';
import type { SkillFile } from '../files/skill-schema.ts';
import { takeoffInFile } from '../files/write-start.ts';
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import { beforeOf, flightOf } from '../math/phases.ts';
import type { Triple } from '../math/vec3.ts';
import { upForAirTime } from '../skill/air-time.ts';
import { buildSkill } from '../skill/build-skill.ts';
import { PLACE_RANGES, type RangedPlace } from '../skill/contact-ranges.ts';
import { massStature2 } from '../skill/draft-limits.ts';
import { flySkill } from '../skill/flyer.ts';
import { type LaunchedSkill, launch, relaunch } from '../skill/launch.ts';
import { placeOfSkill, type SkillPlace } from '../skill/skill-place.ts';
import { checkPosed } from './check-posed.ts';
import type { ClipSight, Measured } from './clip.ts';
import type { FlownAsPosed, PosedCaution, PosedFrame } from './clip-pose.ts';
import { evenSides } from './even-sides.ts';
import { attitudesAt } from './first-pose.ts';
import { fitPosedSteps, isTwist } from './fit-posed.ts';
import { limbCaution, limbsOf } from './limb-lengths.ts';
import { type PosedSchedule, scheduleOfPosed } from './posed-schedule.ts';
import { isAmbiguous } from './swap-sides.ts';

export interface PosedFlightRequest {
  /** version A: a file of one flight; what it says of athlete, surface, landing and target is kept */
  readonly file: SkillFile;
  /** that of the file, written out */
  readonly athlete: Athlete;
  readonly shapes: Catalogue['shapes'];
  readonly title: string;
  readonly posed: readonly PosedFrame[];
  /** how they were seen: which of them could have left and right exchanged; left out: not asked */
  readonly sight?: ClipSight;
  /** s, of the marks of take-off and landing; left out: up as A leaves */
  readonly airTime?: Measured;
}

interface PosedProgress {
  readonly done: number;
  readonly of: number;
}

export interface PosedFlight {
  readonly file: SkillFile;
  readonly flown: FlownAsPosed;
}

/** A frame this near to take-off or touchdown is that of it, s. */
const AT_END = 0.04;
/** rad, root mean square, from which on the poses are not those of one flight (judgement: five times what a hand is off). */
const NOT_ONE = (15 * Math.PI) / 180;
const HALF_TURN = Math.PI;

/** `was`: A as it is launched and flown. Yields what of the work is done. */
export function* flyPosedSteps(
  request: PosedFlightRequest,
  was: { readonly skill: LaunchedSkill; readonly flight: Flight },
): Generator<PosedProgress, PosedFlight> {
  const { sight, airTime } = request;
  const { body, gravity } = was.skill;
  const posed = checkPosed(request.posed, body.angles.length);
  if (airTime && !(airTime.value > 0.02 && airTime.value <= 10))
    throw new FieldError('airTime', airTime.value, '0.02 to 10 s between take-off and landing');
  const first = posed[0];
  const last = posed[posed.length - 1];
  const ends = airTime?.value ?? was.flight.duration;
  if (last.t > ends + AT_END)
    throw new FieldError(`posed[${posed.length - 1}].t`, last.t, `at most ${ends.toFixed(3)} s, when it comes down`);
  const shapeAt = (t: number): number[] => {
    const angles = new Float64Array(body.angles.length);
    was.flight.schedule.anglesInto(t, angles, new Float64Array(angles.length));
    return Array.from(angles);
  };
  const written = scheduleOfPosed(body, {
    moments: isTwist(posed) ? posed : posed.map((p) => ({ t: p.t, angles: evenSides(body, p.angles) })),
    ...(first.t > AT_END ? { takeoff: shapeAt(0) } : {}),
    ...(last.t < ends - AT_END ? { landing: { t: ends, angles: shapeAt(was.flight.duration) } } : {}),
  });
  const start = startOf(was, posed);
  const fileWith = (takeoff: TakeoffSpec): SkillFile => writePosed(request, takeoff, written, airTime);
  const skill = launchFile(fileWith(start), request);

  const fit = yield* fitPosedSteps(skill, posed, start);
  const cautions: PosedCaution[] = [...farApart(posed)];
  const up = risingFor(skill, fit.takeoff, airTime, cautions);
  const takeoff: TakeoffSpec = { ...fit.takeoff, v_WScm_W: [start.v_WScm_W[0], up, start.v_WScm_W[2]] };
  const made = fileWith(takeoff);
  const flown = launchFile(made, request);
  const flight = flySkill(flown);

  const at = attitudesAt(
    flight,
    flown.takeoff,
    posed.map((p) => p.t),
  );
  const frames = posed.map((p, i) => ({
    frame: p.frame,
    t: p.t,
    somersault: at[i].somersault - p.somersault,
    tilt: at[i].tilt - p.tilt,
    twist: at[i].twist - p.twist,
    isAmbiguous: sight ? isAmbiguous(body, p, sight) : false,
  }));
  const left = Math.sqrt(frames.reduce((sum, f) => sum + f.somersault ** 2, 0) / frames.length);
  if (!(left < NOT_ONE)) cautions.push({ kind: 'notOneFlight', left });
  const most = momentumCaution(body, flight.h_Scm_W, placeOfSkill(flown));
  if (most) cautions.push(most);
  const limbs = limbCaution(posed, gravity);
  if (limbs) cautions.push(limbs);
  const ambiguous = frames.filter((f) => f.isAmbiguous).length;
  if (ambiguous > 0) cautions.push({ kind: 'sides', frames: ambiguous });
  return {
    file: made,
    flown: {
      frames,
      momentum: { value: flight.h_Scm_W[2], plusMinus: fit.momentumPlusMinus },
      up: { value: up, plusMinus: airTime ? (gravity * airTime.plusMinus) / 2 : Number.NaN },
      limbs: limbsOf(posed),
      left,
      isTwisting: fit.isTwisting,
      cautions,
    },
  };
}

function launchFile(file: SkillFile, { athlete, shapes }: PosedFlightRequest): LaunchedSkill {
  return launch(buildSkill(parseSkill({ ...file, athlete }, { athletes: {}, shapes })));
}

/** Where it begins: the height that A takes off at, its speed across and up; along as the posed figures go. */
function startOf(
  { skill, flight }: { skill: LaunchedSkill; flight: Flight },
  posed: readonly PosedFrame[],
): TakeoffSpec {
  const isStated = skill.launch.kind === 'stated';
  const [along, up, across] = flight.v_WScm_W0;
  return {
    height: isStated ? skill.takeoff.height : { of: 'massCentre', y: flight.p_WScm_W0[1] },
    v_WScm_W: [alongOf(posed) ?? along, up, across],
    somersault: posed[0].somersault,
    tilt: 0,
    twist: 0,
    momentum: { kind: 'vector', h_Scm_W: [0, 0, flight.h_Scm_W[2]] },
  };
}

/** m/s along, by the posed places; they have to be apart by this, s, for that. */
const LEAST_SPAN = 0.2;

function alongOf(posed: readonly PosedFrame[]): number | undefined {
  const n = posed.length;
  if (posed[n - 1].t - posed[0].t < LEAST_SPAN) return undefined;
  const mid = posed.reduce((sum, p) => sum + p.t, 0) / n;
  const size = posed.reduce((sum, p) => sum + (p.t - mid) ** 2, 0);
  return posed.reduce((sum, p) => sum + ((p.t - mid) * p.p_WScm_W[0]) / size, 0);
}

function writePosed(
  { file, title }: PosedFlightRequest,
  takeoff: TakeoffSpec,
  { schedule, shapes }: PosedSchedule,
  airTime: Measured | undefined,
): SkillFile {
  const was = flightOf(file);
  const before = beforeOf(file);
  const isKept = before?.kind === 'contact' && before.given === undefined;
  const after = file.phases[file.phases.length - 1];
  const end = 'durationS' in was.end && airTime ? { ...was.end, durationS: airTime.value } : was.end;
  const { shapes: _shapes, phases: _phases, note: _note, worksheets: _sheets, ...kept } = file;
  return checkSkillFile({
    ...kept,
    title,
    phases: [
      ...(isKept ? [before] : []),
      { ...was, takeoff: takeoffInFile(takeoff), end, schedule },
      ...(after.kind === 'landing' || after.kind === 'entry' ? [after] : []),
    ],
    shapes,
  });
}

/** The upward speed of the air time that was marked; where no flight of these poses has it, that of A, and it is said. */
function risingFor(
  skill: LaunchedSkill,
  takeoff: TakeoffSpec,
  airTime: Measured | undefined,
  cautions: PosedCaution[],
): number {
  const up = takeoff.v_WScm_W[1];
  if (!airTime || skill.end.kind === 'duration') return up;
  const rising = (v: number): TakeoffSpec => ({ ...takeoff, v_WScm_W: [takeoff.v_WScm_W[0], v, takeoff.v_WScm_W[2]] });
  // on a parabola that ends as high as it begins: where the search begins
  const near = (skill.gravity * airTime.value) / 2;
  const fitted = relaunch(skill, { takeoff: rising(near) });
  const flight = flySkill(fitted);
  try {
    return upForAirTime(fitted, flight, airTime.value, rising);
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    cautions.push({ kind: 'airTime', wanted: airTime.value, flown: flight.duration });
    return near;
  }
}

function farApart(posed: readonly PosedFrame[]): PosedCaution[] {
  return (['somersault', 'twist'] as const).flatMap((of) =>
    posed
      .slice(1)
      .flatMap((p, i): PosedCaution[] =>
        Math.abs(p[of] - posed[i][of]) > HALF_TURN ? [{ kind: 'farApart', from: posed[i].t, to: p.t, of }] : [],
      ),
  );
}

const RANGED: Readonly<Record<SkillPlace, RangedPlace>> = {
  floor: 'floor',
  bars: 'floor',
  vault: 'vaultTable',
  trampoline: 'trampoline',
  board: 'divingBoard',
  platform: 'platform',
};

function momentumCaution(body: Body, h: Flight['h_Scm_W'], place: SkillPlace): PosedCaution | undefined {
  const value = Math.hypot(...(h as Triple)) / massStature2(body);
  const most = PLACE_RANGES[RANGED[place]].momentum.high;
  return value > most ? { kind: 'momentum', value, most } : undefined;
}
