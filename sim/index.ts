/**
 * The only door to the physics. Pure: no DOM, no clock, no unseeded chance, no I/O. SI units and radians inside; files
 * and people's units are converted by the functions exported from files/.
 */

export type { Body, Sym3, Vec3 } from './body/body.ts';
export { makeHuman } from './body/human.ts';
export { formatMjcf } from './body/mjcf.ts';
export { strengthCurve } from './body/strength.ts';
export { calcClipSight } from './clip/calc-sight.ts';
export { calcClipTimes } from './clip/calc-times.ts';
export {
  type ClipFrames,
  type ClipMark,
  type ClipScale,
  type ClipSight,
  type ClipStand,
  MARK_KINDS,
  type MarkKind,
  type Measured,
  type Spot,
} from './clip/clip.ts';
export { type ClipApart, calcClipApart, calcFlownTimes, type FlownTimes } from './clip/clip-flown.ts';
export {
  type ClipMeasured,
  type ClipRecording,
  type ClipWriting,
  type ReadClipRecording,
  readClipRecording,
  writeClipRecording,
} from './clip/clip-json.ts';
export { calcClipPlace } from './clip/clip-place.ts';
export type { FlownAsPosed, PosedCaution, PosedFrame } from './clip/clip-pose.ts';
export { instantOf, type ShownInstant } from './clip/clip-shown.ts';
export type { ClipTimes } from './clip/clip-times.ts';
export { firstPose } from './clip/first-pose.ts';
export { flyPosedSteps, type PosedFlight, type PosedFlightRequest } from './clip/fly-posed.ts';
export { limbsOf } from './clip/limb-lengths.ts';
export { endsOfPosed, leadPosed, movePosed, tiltPosed, turnPosed, twistPosed } from './clip/pose-hand.ts';
export { bodyOfPosed } from './clip/posed-body.ts';
export { seePlace } from './clip/see.ts';
export { offPlane } from './clip/sight-look.ts';
export { isAmbiguous, swapSides } from './clip/swap-sides.ts';
export { takenRate, trueTimes } from './clip/true-times.ts';
export { framesOfTyped, type TypedTime } from './clip/typed-times.ts';
export type { ContactFault } from './contact/impulse.ts';
export type { TakeoffPlace } from './contact/impulse-presets.ts';
export type { LandingReport } from './contact/landing-report.ts';
export type { SwingPeaks } from './contact/swing.ts';
export type { SwingMovesError } from './contact/swing-moves-error.ts';
export type { NoReleaseError } from './contact/swing-spec.ts';
export type { KeyValue } from './estimate/answer-key.ts';
export type { MathNode } from './estimate/mathml.ts';
export type { AnswerRead } from './estimate/read-answer.ts';
export { readLink, readLinks } from './estimate/read-links.ts';
export { READOUTS } from './estimate/readouts.ts';
export type { LineResult, SheetResult } from './estimate/sheet-result.ts';
export type { SkillResult } from './estimate/skill-result.ts';
export { partsOfWhole } from './estimate/whole-parts.ts';
export { readAnySheet } from './files/any-sheet.ts';
export type { Athlete, HumanAthlete } from './files/athlete-schema.ts';
export { inAthleteFile } from './files/bare-athlete.ts';
export { digestOf, digestOfSkill } from './files/canonical.ts';
export { catchOf, catchWindowOf } from './files/catch-json.ts';
export { CAUTION, COMPARED } from './files/caution.ts';
export { chainJson } from './files/chain-json.ts';
export { checkSkillFile, formatSkill } from './files/check-skill.ts';
export { fileBeyondStrength, fileOfDraft } from './files/draft-file.ts';
export { exportVersion1 } from './files/export-1.ts';
export { formatFrames, frameColumns } from './files/frames-csv.ts';
export { legFile, putLeg } from './files/leg-file.ts';
export { type Change, listChanges } from './files/list-changes.ts';
export { formatMapRow, formatSamples } from './files/margin-csv.ts';
export { formatMapJson, formatMarginJson } from './files/margin-json.ts';
export { migrateKept } from './files/migrate.ts';
export { parseAthlete, readAthlete } from './files/parse-athlete.ts';
export { parseChain } from './files/parse-chain.ts';
export { parseJson } from './files/parse-json.ts';
export { athleteOf, type Catalogue, parseSkill, shapeInRadians } from './files/parse-skill.ts';
export type {
  FileBefore,
  FileCatch,
  FileFlight,
  FileLanding,
  FileSwing,
  FileSwingKey,
  FileTakeoff,
  FileTakeoffContact,
  FileVelocity,
} from './files/phase-schema.ts';
export { phasesOf } from './files/phases-json.ts';
export {
  type InputOrigin,
  originOfSkill,
  type Provenance,
  provenance,
  provenanceCsv,
  provenanceLine,
  provenancePairs,
  provenanceSvg,
} from './files/provenance.ts';
export { asRead, parseSamples } from './files/read-samples.ts';
export type { FileBlock, FileContact, FileKey, FileSchedule, FileTime, ShapeData } from './files/schedule-schema.ts';
export { formatSegments } from './files/segments-csv.ts';
export {
  formatSheet,
  parseSheet,
  type SheetFile,
  type SheetPart,
  sheetOfPart,
} from './files/sheet-file.ts';
export type { SkillFile1 } from './files/skill-file-1.ts';
export type { SkillFile } from './files/skill-schema.ts';
export { formatAnswerJson } from './files/solve-json.ts';
export { formatSummaryJson } from './files/summary-json.ts';
export { checkFileSize, LARGEST_TEXT, textOfBytes, wordNoText } from './files/text-of-bytes.ts';
export { VERSION } from './files/version.ts';
export {
  blankOf,
  digestOfWorksheet,
  formatWorksheet,
  type LockOrder,
  parseWorksheet,
  type Question,
  type Worksheet,
  worksheetHead,
} from './files/worksheet-file.ts';
export { updateChain } from './files/write-chain.ts';
export { updateSkill } from './files/write-skill.ts';
export { takeoffInFile } from './files/write-start.ts';
export {
  CAMERA_RANGES,
  checkCamera,
  type FilmCamera,
  fitToFrame,
  type Sightline,
  standCamera,
  USUAL_CAMERA,
} from './filming/camera.ts';
export { formatCameraCsv } from './filming/camera-csv.ts';
export { type ExpectedErrors, expectErrors } from './filming/expected-errors.ts';
export { type FilmingPlan, filmFlight, planFilming } from './filming/plan.ts';
export { fitTakeoffSteps } from './fit/fit-takeoff.ts';
export { writeRecordedSkill } from './fit/recorded-skill.ts';
export type {
  FittedValue,
  ModelTest,
  RecordingStudy,
  StudyOptions,
  TakeoffFit,
} from './fit/recording-study.ts';
export { FIT_SEED } from './fit/redrawn.ts';
export { type PreparedFlight, type PreparedRecording, prepareRecording, studyOf, studyRecording } from './fit/study.ts';
export { formatStudyJson } from './fit/study-json.ts';
export type { Flight, SurfaceKind, TakeoffSpec } from './flight/flight.ts';
export { DEFAULT_TOLERANCE, type FlightOptions, flySchedule, NoTouchdownError } from './flight/fly.ts';
export { SingularBodyError } from './flight/shape-source.ts';
export { BeyondBudgetError, StepBudget } from './flight/step-budget.ts';
export { straightMomentum } from './flight/takeoff.ts';
export { type Along, type Handed, isClipRecording, keepBack } from './handing/kept-back.ts';
export { isSkillLink, readSkillLink, writeSkillLink } from './handing/link.ts';
export { LinkError } from './handing/link-error.ts';
export { isWorksheetLink, readWorksheetLink, writeWorksheetLink } from './handing/worksheet-link.ts';
export { type FieldDetail, FieldError } from './math/field-error.ts';
export { OUT_UNITS, type OutUnit } from './math/out-units.ts';
export { sha256 } from './math/sha256.ts';
export { calcFrames, frameTimes } from './measure/calc-frames.ts';
export { listCautions } from './measure/caution-list.ts';
export { type Caution, calcCautions, calcCautionsAt } from './measure/cautions.ts';
export type { Clearance } from './measure/clearance.ts';
export { ASKED_CLEARANCE } from './measure/clearance.ts';
export { calcExplanation } from './measure/explain.ts';
export { EXPLAIN_WORDS, type ExplainWords, formatExplanation } from './measure/explain-words.ts';
export { calcFlightEnd } from './measure/flight-end.ts';
export type { Frames } from './measure/frames.ts';
export { calcJointPeaks, type JointShare } from './measure/joint-peaks.ts';
export { makeJointWork } from './measure/joint-work.ts';
export { MOST_TIMES } from './measure/known-strength.ts';
export { calcLimbSpans } from './measure/limb-moves.ts';
export { calcOverlaps, type Overlap } from './measure/overlap.ts';
export { calcSegmentFrames } from './measure/segment-frames.ts';
export { calcShapeMoments, type ShapeMoments } from './measure/shape-moments.ts';
export { calcSight, type Unseen } from './measure/sight.ts';
export { type Summary, summarize } from './measure/summary.ts';
export { formatSummary } from './measure/summary-words.ts';
export type { TiltMechanism } from './measure/tilt-mechanism.ts';
export { calcWobble, calcWobblePath, criticalTilt, type MapPoint, type Wobble } from './measure/wobble.ts';
export { wordAngle, wordFrames } from './measure/words.ts';
export { calcBodyFrame } from './motion/body-frame.ts';
export { makeHeld } from './motion/held.ts';
export { hingesInto } from './motion/hinge-angles.ts';
export { reachTo } from './motion/inverse-kinematics.ts';
export { getLimb, HUMAN_ENDS, placeLimb } from './motion/limb.ts';
export { getModel } from './motion/model.ts';
export { calcPose, type Pose } from './motion/pose.ts';
export { calcShapeMotion, makeShapeMotion } from './motion/shape-motion.ts';
export { makeState, readState } from './motion/state.ts';
export { namedOffRail } from './notation/bar-name.ts';
export { type CodeColumns, codeOfFlight, readFlownCode } from './notation/code-of-flight.ts';
export { calcDifficulty, formatDifficulty, listDifficulty } from './notation/difficulty.ts';
export {
  directionOfDive,
  entersHeadFirst,
  formatDiveNumber,
  parseDiveNumber,
  wordDive,
} from './notation/dive-number.ts';
export { draftOfCode, draftOfDive, draftOfTrampoline } from './notation/draft-of-code.ts';
export { nearSkills } from './notation/near-skills.ts';
export { type AskedSkill, readAsked } from './notation/read-skill-name.ts';
export { namesOfSkill, type SkillNames, wordNames } from './notation/skill-names.ts';
export { wordTrade } from './notation/trade-words.ts';
export { type CodeDirection, formatTrampolineCode, parseTrampolineCode } from './notation/trampoline-code.ts';
export type { AirSpan, Smoothing } from './recording/conditioned.ts';
export { formatMap, parseMap } from './recording/parse-map.ts';
export type { PosedMotion } from './recording/posed.ts';
export { posedOfFlight } from './recording/posed-flight.ts';
export type { RecordingKind } from './recording/recording.ts';
export { RECORDING_LIMITS } from './recording/recording-limits.ts';
export type { MappedJoint, MappedPoint, RecordingMap } from './recording/recording-map.ts';
export { formatBvh } from './recording/write-bvh.ts';
export { formatRecorded } from './recording/write-recorded-csv.ts';
export { formatTrc } from './recording/write-trc.ts';
export { ScheduleOrderError } from './schedule/errors.ts';
export type { ArmPath } from './schedule/schedule.ts';
export { wordTogether } from './search/error-together.ts';
export { Evaluator, outcomeOf } from './search/evaluate.ts';
export { type ForgivingProblem, findForgiving, forgivingSteps } from './search/forgiving.ts';
export { type Input, type InputLevel, type InputUnit, putInputs } from './search/input.ts';
export { isHanded } from './search/input-leg.ts';
export { findInput, listInputs } from './search/inputs.ts';
export { type FixAnswer, type FixProgress, fixLandingSteps, type LandingFix } from './search/landing-fix.ts';
export { axisValue, type MapRow } from './search/map.ts';
export { type Contour, findContour, roundLevels } from './search/map-contour.ts';
export type { Bar, BarEnd } from './search/margin-bars.ts';
export { type MarginStudy, type ShareAfter, shareOf, shareOfHits, studyMargin } from './search/margin-study.ts';
export { distanceIn, usualWindow } from './search/margin-window.ts';
export type { Obstacle } from './search/nearest-miss.ts';
export {
  makeReflexRange,
  needsReflexRange,
  REFLEX_DELAYS,
  REFLEX_TRIES,
  type ReflexRange,
  type ReflexShare,
  rangeBalance,
} from './search/reflex-range.ts';
export { findResult, RESULTS, type ResultUnit } from './search/result.ts';
export {
  checkDrawn,
  checkFlown,
  distances,
  joinTables,
  pickSamples,
  type SampleTable,
  type Study,
} from './search/sample.ts';
export { STUDY_TOLERANCE } from './search/sample-fly.ts';
export { usualSpread } from './search/sample-spread.ts';
export type { SearchProblem, Solution } from './search/solution.ts';
export { type Answer, type SolveProgress, solve, solveSteps } from './search/solve.ts';
export {
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
  ownAim,
  type TargetFields,
  type Tolerances,
  USUAL_TOLERANCES,
  type Wish,
} from './search/target.ts';
export { type TryChange, tryChangeSteps } from './search/try-change.ts';
export { findTwist, twistSteps } from './search/twist-search.ts';
export { MOST_MOMENTUM, makeUnknown, type Unknown } from './search/unknown.ts';
export { ERROR_LEVELS, type ErrorSetting, errorSources, USUAL_ERRORS, usualBy } from './search/usual-error.ts';
export { AGREEMENT, NoAgreementError } from './skill/agreed-flight.ts';
export { upForAirTime } from './skill/air-time.ts';
export { apparatusOf, type SkillApparatus } from './skill/apparatus.ts';
export type { Piece } from './skill/apparatus-piece.ts';
export { type BalanceSpec, DEFAULT_BALANCE, wordBalance } from './skill/balance.ts';
export { buildSkill, makeBody, poseOf } from './skill/build-skill.ts';
export type { CatchResult, CatchSpec } from './skill/catch.ts';
export type { CatchWatch } from './skill/catch-watch.ts';
export { type CatchWindow, calcCatchWindow } from './skill/catch-window.ts';
export { apparatusOfChain } from './skill/chain-apparatus.ts';
export { answerChange, type ChangeAnswer } from './skill/change-answer.ts';
export type { ChangeKind } from './skill/change-ways.ts';
export { calcClearance } from './skill/clearance.ts';
export { type HeldEqual, holdEqual, takeoffEnergy } from './skill/compare.ts';
export {
  type Alignment,
  alignTime,
  type CompareRow,
  compareSkills,
  compareVersions,
  type Version,
} from './skill/compare-table.ts';
export { calcConditioning } from './skill/conditioning.ts';
export { calcBounce } from './skill/contact-bounces.ts';
export { type ContactCaution, type ContactReport, calcContactReport } from './skill/contact-report.ts';
export type { WholeContact } from './skill/contact-room.ts';
export { draftSkill, type Refusal } from './skill/draft-skill.ts';
export type { DraftPlace, DraftSpec } from './skill/draft-spec.ts';
export type { CatchOutcome } from './skill/find-catch.ts';
export { isOfFlight } from './skill/flight-faults.ts';
export { type FlownData, type MeasuredFlight, measureFlown, packFlown, unpackFlown } from './skill/flown-data.ts';
export { type Flown, flySkill, makeFlyer } from './skill/flyer.ts';
export type { HandGap } from './skill/hand-contact.ts';
export type { ChainApparatus } from './skill/join-apparatus.ts';
export { judgeFlight } from './skill/judge-flight.ts';
export { type Jump, oneStraight, readJump } from './skill/jump.ts';
export { calcLateDose, type LateDose } from './skill/late-dose.ts';
export { calcRelease, type LaunchedSkill, launch, launchFrom, type Release, relaunch } from './skill/launch.ts';
export { launchChained } from './skill/launch-chained.ts';
export { calcLikelihood, type Likelihood, likelihoodSteps } from './skill/likelihood.ts';
export { needsFix } from './skill/needs-fix.ts';
export { type ChangeOffer, type OneChange, offerChanges } from './skill/one-change.ts';
export { calcClearTime, calcFormerTime, calcReleaseWindow } from './skill/release-window.ts';
export type { Skill, SkillTarget } from './skill/skill.ts';
export { placeOfSkill, SKILL_PLACES, type SkillPlace } from './skill/skill-place.ts';
export { calcSkillReadings, type SkillReadings } from './skill/skill-readings.ts';
export { calcHandGaps, compileSkillSchedule } from './skill/skill-schedule.ts';
export type { SkillSpec } from './skill/skill-spec.ts';
export { nearOf, type SkillVerdict, verdictInFlight, verdictOf } from './skill/skill-verdict.ts';
export {
  calcTiltAccount,
  stepTiltAccount,
  type TiltAccount,
  type TiltProgress,
  type TiltValues,
} from './skill/tilt-account.ts';
export { wordBasis, wordCoarseTwist } from './words/basis-words.ts';
export { formatCatch, wordWindowEnds } from './words/catch-words.ts';
export { causeOfFix, joinCauses, wordCause } from './words/cause-words.ts';
export { wordBounce, wordSensitivity, wordStop } from './words/chain-words.ts';
export { formatClearance } from './words/clearance-words.ts';
export { clipRows, wordClip, wordClipCaveats, wordMarkFault, wordMeasured } from './words/clip-words.ts';
export { formatConditioning, wordConditioning } from './words/conditioning-words.ts';
export { wordBeyond, wordRefusal } from './words/draft-words.ts';
export {
  ASK_FIRST,
  fastestOf,
  marksOf,
  ONE_CAMERA,
  PLAIN_FILMING,
  plainRuns,
  roomSize,
  wordFilming,
  wordFilmingFaults,
  wordJoint,
  wordLines,
  wordPart,
  wordPixels,
  wordShare,
  wordShutter,
} from './words/filming-words.ts';
export { formatLateDose } from './words/late-words.ts';
export { wordLeft } from './words/left-words.ts';
export { wordLikelihood } from './words/likelihood-words.ts';
export { HELD_WORDS, LIMIT_WORDS, MET_WORDS, wordTouching } from './words/limit-words.ts';
export {
  BEST_PUBLISHED,
  BEST_SOURCE,
  isNoiseRepeating,
  ONE_RECORDING,
  wordRecordingVerdict,
} from './words/recording-words.ts';
export { PLAIN_NUMBERS, wordVerdict } from './words/verdict-words.ts';

import type { Contact, WholeContact } from './skill/contact-room.ts';
import { needsContact } from './skill/launch.ts';
import type { SkillSpec } from './skill/skill-spec.ts';

/** The planar phases (bar, take-off, landing): imported only when asked for, so that the page starts light. */
export const loadContact = (): Promise<typeof import('./contact/index.ts')> => import('./contact/index.ts');
/** What a skill needs of them, if anything: swing and push; the engine of the landing too where it has one. */
export const contactFor = async ({
  start,
  after,
  earlier,
}: Pick<SkillSpec, 'start' | 'after'> & { readonly earlier?: readonly unknown[] }): Promise<
  Contact | WholeContact | undefined
> =>
  after ? loadContact() : earlier?.length || needsContact({ start }) ? import('./contact/start-room.ts') : undefined;

export type Estimate = typeof import('./estimate/index.ts');
/** Estimate sheets with their parser of formulas, loaded when one is opened and not before. */
export const loadEstimate = (): Promise<Estimate> => import('./estimate/index.ts');
export { nameOfBytes } from './files/first-bytes.ts';
export type { FromTo } from './math/from-to.ts';
export { afterOf, beforeOf, flightOf, isMoreThanFlight, legsOf } from './math/phases.ts';
export type { Handover } from './skill/chain.ts';
export { type ChainAccountRow, calcChainAccount } from './skill/chain-account.ts';
export { makeChainReader } from './skill/chain-instant.ts';
export { type ChainSensitivity, calcChainSensitivity } from './skill/chain-sensitivity.ts';
export { buildChain, legSpec } from './skill/chain-spec.ts';
export type { ContactCourse } from './skill/contact-course.ts';
export type { CourseFault, CourseUnknown } from './skill/contact-faults.ts';
export { type ChainStop, type FlownChain, type FlownLeg, flyChain } from './skill/fly-chain.ts';
export { handToContact, MOST_BOUNCES } from './skill/hand-to-contact.ts';
export { calcSwingLoads } from './skill/swing-loads.ts';
export { flyWhole, type Whole } from './skill/whole.ts';
export { makeInstantReader } from './skill/whole-instant.ts';
export { wordGuess, wordGuesses, wordTimes } from './words/class-words.ts';
export { contactLines } from './words/contact-card.ts';
export { formatContactCautions } from './words/contact-words.ts';
export { formatWhole } from './words/whole-words.ts';
export { formatClassCsv } from './worksheet/class-csv.ts';
export {
  type ClassFiles,
  type ClassOfFiles,
  type GivenFile,
  makeClassReader,
  readClass,
} from './worksheet/class-files.ts';
export {
  type ClassCell,
  type ClassColumn,
  type ClassRow,
  type ClassTable,
  calcClassTable,
} from './worksheet/class-table.ts';
export {
  isComplete,
  isLocked,
  isOpen,
  type LockBar,
  lockAnswer,
  lockBar,
  lockTogether,
  missingTogether,
  nameStudent,
  writeAnswer,
} from './worksheet/locks.ts';
