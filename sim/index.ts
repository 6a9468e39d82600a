/**
 * The only door to the physics. Pure: no DOM, no clock, no unseeded chance, no I/O. SI units and radians inside; files
 * and people's units are converted by the functions exported from files/.
 */

export type { Body, ContactPoint, DrawShape, Hinge, NamedAngle, Segment, Sym3, Vec3 } from './body/body.ts';
export type { HumanSpec } from './body/human.ts';
export { makeHuman } from './body/human.ts';
export { formatMjcf } from './body/mjcf.ts';
export type { ContactFault } from './contact/impulse.ts';
export type { LandingReport } from './contact/landing-report.ts';
export type { SwingPeaks } from './contact/swing.ts';
export type { Verdict, VerdictReason } from './contact/verdict.ts';
export { ASSUMPTIONS, type Assumption } from './estimate/assumption.ts';
export type { Expression } from './estimate/expression.ts';
export type { Axis } from './estimate/line.ts';
export type { MathNode } from './estimate/mathml.ts';
export { PLAIN_BODIES, type PlainBody, type PlainBodyKind, plainBodyOf } from './estimate/plain-body.ts';
export { readLink, readLinks } from './estimate/read-links.ts';
export { READOUTS, type Readout } from './estimate/readouts.ts';
export type {
  Compared,
  Drawing,
  LineResult,
  Links,
  LinkValue,
  Quantity,
  SheetResult,
  Switch,
} from './estimate/sheet-result.ts';
export type { Flown, LandingPart, SkillResult, SwingPart } from './estimate/skill-result.ts';
export { partsOfWhole } from './estimate/whole-parts.ts';
export { CAUTION } from './files/caution.ts';
export { fileOfDraft } from './files/draft-file.ts';
export { formatFrames, frameColumns } from './files/frames-csv.ts';
export { type Change, listChanges } from './files/list-changes.ts';
export { formatMapRow, formatSamples, mapColumns, sampleColumns } from './files/margin-csv.ts';
export { formatMapJson, formatMarginJson, type MapOut, type StudyOut } from './files/margin-json.ts';
export {
  checkSkillFile,
  formatSkill,
  parseAthlete,
  parseJson,
  parseSkill,
  readAthlete,
  type Shelf,
  shapeInRadians,
} from './files/parse-skill.ts';
export { phasesOf } from './files/phases-json.ts';
export { asRead, parseSamples, type SampleText } from './files/read-samples.ts';
export { OUT_UNITS, type OutUnit } from './files/search-units.ts';
export {
  formatSheet,
  parseSheet,
  parseSheetText,
  type SheetFile,
  type SheetPart,
  sheetOfPart,
} from './files/sheet-file.ts';
export type {
  Athlete,
  FileApproach,
  FileArrival,
  FileBlock,
  FileContact,
  FileKey,
  FileMat,
  FileSurface,
  FileSwing,
  FileSwingKey,
  FileTakeoffContact,
  FileTime,
  HumanAthlete,
  ShapeData,
  SkillFile,
  TreeAthlete,
} from './files/skill-file.ts';
export { formatAnswerJson, type MarginMade } from './files/solve-json.ts';
export { fileOfSolved } from './files/solved-file.ts';
export { formatSummaryJson } from './files/summary-json.ts';
export type { EndSpec, Flight, FlightStats, Quat, SurfaceKind, TakeoffSpec, Touchdown } from './flight/flight.ts';
export { ApexError, DEFAULT_TOLERANCE, type FlightOptions, flySchedule, NoTouchdownError } from './flight/fly.ts';
export { DirectSource, type ShapeSource, SingularBodyError } from './flight/shape-source.ts';
export { calcTakeoff, neutralStance, TakeoffError, type TakeoffState } from './flight/takeoff.ts';
export { TooFastError } from './flight/too-fast.ts';
export { FieldError } from './math/field-error.ts';
export { calcFrames, frameTimes } from './measure/calc-frames.ts';
export { type Caution, type CautionKind, calcCautions, calcCautionsAt } from './measure/cautions.ts';
export { calcExplanation, type Explanation, type Instant } from './measure/explain.ts';
export { EXPLAIN_WORDS, type ExplainWords, formatExplanation } from './measure/explain-words.ts';
export { calcFlightEnd, type FlightEnd } from './measure/flight-end.ts';
export type { Frames } from './measure/frames.ts';
export { calcJointPeaks, type JointPeaks, type JointShare } from './measure/joint-peaks.ts';
export { calcPower, makeJointWork } from './measure/joint-work.ts';
export type { MoveWord } from './measure/move-words.ts';
export { calcOverlaps, OVERLAP_THRESHOLD, type Overlap } from './measure/overlap.ts';
export { calcShapeMoments, type ShapeMoments } from './measure/shape-moments.ts';
export { calcSight, type Glance, SIGHT_CONE, type Sight, type SightCone, type Unseen } from './measure/sight.ts';
export { type JointPeak, type Landing, type Peak, type Summary, summarize } from './measure/summary.ts';
export { formatSentence, formatSummary } from './measure/summary-words.ts';
export {
  calcWobble,
  calcWobblePath,
  criticalTilt,
  type MapPoint,
  type TurnMode,
  type Wobble,
} from './measure/wobble.ts';
export { type FrameWords, wordAngle, wordFrames, wordTilt } from './measure/words.ts';
export { type BodyFrame, calcBodyFrame } from './motion/body-frame.ts';
export { hingesInto } from './motion/hinge-angles.ts';
export { calcDynamics, makeDynamics } from './motion/inverse-dynamics.ts';
export { REACHED, type Reach, type ReachTarget, reachTo } from './motion/inverse-kinematics.ts';
export { getLimb, HUMAN_ENDS, type Limb, placeLimb } from './motion/limb.ts';
export { getModel, type Model } from './motion/model.ts';
export { calcPose, type Pose } from './motion/pose.ts';
export { calcShapeMotion, makeShapeMotion, type ShapeMotion } from './motion/shape-motion.ts';
export { makeState, readState, rootMotionInto, type State } from './motion/state.ts';
export { type CodeColumns, codeColumns, codeOfFlight, type FlightCode } from './notation/code-of-flight.ts';
export { formatFlightCode, wordCode } from './notation/code-words.ts';
export { calcDifficulty, type DifficultyPart, formatDifficulty, listDifficulty } from './notation/difficulty.ts';
export {
  type DiveNumber,
  directionOfDive,
  entersHeadFirst,
  formatDiveNumber,
  parseDiveNumber,
  wordDive,
} from './notation/dive-number.ts';
export { diveOfFlight } from './notation/dive-of-flight.ts';
export { draftOfCode } from './notation/draft-of-code.ts';
export { type TradeResult, wordTrade } from './notation/trade-words.ts';
export {
  type CodeDirection,
  type CodeShape,
  formatTrampolineCode,
  parseTrampolineCode,
  type TrampolineCode,
} from './notation/trampoline-code.ts';
export { ScheduleOrderError, ScheduleValueError } from './schedule/errors.ts';
export { calcOutcome, Evaluator, type Outcome, type Sense, senseOf } from './search/evaluate.ts';
export {
  type Forgiving,
  type ForgivingOptions,
  type ForgivingProblem,
  type ForgivingProgress,
  findForgiving,
  forgivingSteps,
} from './search/forgiving.ts';
export { checkInput, type Input, type InputLevel, type InputUnit, putInputs } from './search/input.ts';
export { findInput, listInputs } from './search/inputs.ts';
export { axisAbout, axisValue, type MapAxis, type MapRow, type MapSpec } from './search/map.ts';
export { type Contour, findContour, roundLevels } from './search/map-contour.ts';
export type { Bar, BarEnd } from './search/margin-bars.ts';
export {
  type Influence,
  type MarginStudy,
  type ShareAfter,
  shareOf,
  shareOfHits,
  studyMargin,
} from './search/margin-study.ts';
export { type Bound, distanceIn, USUAL_WINDOW, type Window } from './search/margin-window.ts';
export type { Obstacle } from './search/nearest-miss.ts';
export { findResult, RESULTS, type Result, type ResultUnit } from './search/result.ts';
export { checkDrawn, checkFlown, distances, joinTables, type SampleTable, type Study } from './search/sample.ts';
export { STUDY_TOLERANCE } from './search/sample-fly.ts';
export { type Correlation, type Spread, type SpreadPart, usualBy, usualSpread } from './search/sample-spread.ts';
export type { Cost, Problem, Solution, Term } from './search/solution.ts';
export { type Answer, type SolveProgress, solve, solveSteps } from './search/solve.ts';
export {
  type AxisRequest,
  type BoundRequest,
  type MapRequest,
  MapRunner,
  openMap,
  openStudy,
  type StudyRequest,
  StudyRunner,
  shareOfTries,
  usualStudy,
} from './search/span.ts';
export {
  type Aim,
  aimAt,
  fieldsOfDraft,
  type LimitsAsked,
  NO_LIMITS,
  ownAim,
  type TargetFields,
  type Tolerances,
  USUAL_TOLERANCES,
  type Wish,
} from './search/target.ts';
export {
  findTwist,
  type TwistFound,
  type TwistOptions,
  type TwistProgress,
  twistSteps,
} from './search/twist-search.ts';
export { MOST_MOMENTUM, makeUnknown, type Unknown } from './search/unknown.ts';
export { ARMS_IN, ARMS_WIDE, type ArmsHeld, armsWideAgainstIn } from './skill/arms-wide-in.ts';
export { type BalanceBy, type BalanceSpec, checkBalance, DEFAULT_BALANCE, wordBalance } from './skill/balance.ts';
export { type BalancedFlight, flyBalanced } from './skill/balance-fly.ts';
export { planTwist } from './skill/balance-plan.ts';
export type { BalanceRecord, TwistPlan } from './skill/balance-schedule.ts';
export { buildSkill, makeBody, poseOf } from './skill/build-skill.ts';
export { type HeldEqual, holdEqual, type KnownFlights, takeoffEnergy } from './skill/compare.ts';
export {
  type Alignment,
  alignTime,
  type CompareKey,
  type CompareRow,
  type CompareUnit,
  type CompareWord,
  type Comparison,
  compareSkills,
  compareVersions,
  flyVersion,
  type Version,
} from './skill/compare-table.ts';
export type { WholeContact } from './skill/contact-room.ts';
export type { TakeoffContact } from './skill/contact-takeoff.ts';
export { type Draft, type DraftInput, draftSkill } from './skill/draft-skill.ts';
export type { DraftSpec } from './skill/draft-spec.ts';
export { AGREEMENT, flySkill, NoAgreementError } from './skill/fly-skill.ts';
export type { HandContact, HandGap } from './skill/hand-contact.ts';
export { flyHeld } from './skill/held-flights.ts';
export type { LandingSpec } from './skill/landing-spec.ts';
export {
  CARRIED_WITHIN,
  calcRelease,
  type Launch,
  type LaunchedSkill,
  launch,
  launchFrom,
  needsContact,
  type Release,
  relaunch,
} from './skill/launch.ts';
export {
  calcReleaseWindow,
  type ReleaseTry,
  type ReleaseWindow,
  type ReleaseWish,
  USUAL_RELEASE_WISH,
} from './skill/release-window.ts';
export type { Skill, SkillTarget } from './skill/skill.ts';
export { SkillFlyer } from './skill/skill-flyer.ts';
export { calcSkillReadings, type SkillReadings } from './skill/skill-readings.ts';
export { calcHandGaps, compileSkillSchedule } from './skill/skill-schedule.ts';
export type { AthleteSpec, SkillSpec } from './skill/skill-spec.ts';
export type { ContactApproach, KnownContact, StartSpec, SwingApproach } from './skill/start-spec.ts';
export {
  calcTiltAccount,
  stepTiltAccount,
  type TiltAccount,
  type TiltAccountOptions,
  type TiltPart,
  type TiltProgress,
  type TiltSource,
  type TiltValues,
} from './skill/tilt-account.ts';

import type { Contact } from './skill/contact-room.ts';
import { needsContact } from './skill/launch.ts';
import type { SkillSpec } from './skill/skill-spec.ts';

/** The planar phases (bar, take-off, landing): imported only when asked for, so that the page starts light. */
export const loadContact = (): Promise<typeof import('./contact/index.ts')> => import('./contact/index.ts');
/** What a skill needs of them to be launched, if anything: swing and push, without the engine of the landing. */
export const contactFor = async ({ start }: Pick<SkillSpec, 'start'>): Promise<Contact | undefined> =>
  needsContact({ start }) ? import('./contact/start-room.ts') : undefined;

export type Estimate = typeof import('./estimate/index.ts');
/** Estimate sheets with their parser of formulas, loaded when one is opened and not before. */
export const loadEstimate = (): Promise<Estimate> => import('./estimate/index.ts');
export { flyWhole, type Whole } from './skill/whole.ts';
export { type Instant as WholeInstant, makeInstantReader, type Phase } from './skill/whole-instant.ts';
export { formatWhole } from './skill/whole-words.ts';
