/** What loadContact() brings: the planar phases at the bar and on the ground, with their engine. */
export {
  bodyAnglesInto,
  type Chain,
  type ChainJoint,
  type ChainLink,
  type ChainOptions,
  type ChainPoint,
  DEFAULT_JOINTS,
  jointAnglesOf,
  makeChain,
  type PlanarJointName,
} from './chain.ts';
export {
  type ChainMotion,
  jointsInto,
  makeChainMotion,
  makeWhole,
  type Placement,
  placeChain,
  pointInto,
  type Whole,
  wholeInto,
} from './chain-motion.ts';
export { calcEvenCircle, type EvenCircle } from './even-circle.ts';
export {
  type ContactFault,
  type ContactImpulse,
  type ContactSide,
  type ContactSpec,
  calcAfterContact,
  calcContactImpulse,
  impulseOfForce,
} from './impulse.ts';
export { TAKEOFF_PRESETS, type TakeoffPlace, type TakeoffPreset } from './impulse-presets.ts';
export {
  DURATION as LANDING_DURATION,
  type LandingRun,
  type LandingSpec,
  runLanding,
  STEP as LANDING_STEP,
} from './landing.ts';
export { type Drop, EIGHTH_SECOND, makeDropEntry } from './landing-drop.ts';
export {
  ASYMMETRY_LIMITS,
  type Asymmetry,
  type LandingEntry,
  makeLandingEntry,
  type TouchdownSource,
  withKnee,
} from './landing-entry.ts';
export { DEFAULT_ACTION, type LandingKey, type LegAction } from './landing-joints.ts';
export { type LandingPose, landingPoseInto, makeLandingPose } from './landing-pose.ts';
export {
  BANDWIDTH as LANDING_BANDWIDTH,
  type ForcePeak,
  type JointLoad,
  type LandingReport,
  type LandingResult,
  land,
} from './landing-report.ts';
export { holdLate, type LateRelease } from './late-hand.ts';
export { makeSwing, SWING_ERRORS } from './make-swing.ts';
export { MATS, type MatName, type MatPreset, type MatSpec } from './mat.ts';
export { ChainWorld } from './planck.ts';
export { getRail, RAILS, type Rail } from './rail.ts';
export type {
  Swing,
  SwingColumn,
  SwingColumns,
  SwingError,
  SwingJoint,
  SwingPeak,
  SwingPeaks,
  SwingState,
} from './swing.ts';
export { SAMPLE as SWING_SAMPLE } from './swing-columns.ts';
export type { SwingKey, SwingKeys, SwingMoves } from './swing-keys.ts';
export {
  BEYOND_RELEASE,
  LONGEST_SWING,
  NoReleaseError,
  type SwingRelease,
  type SwingSpec,
  type SwingStart,
} from './swing-spec.ts';
export { calcVerdict, calcXcom, type Verdict, type VerdictKind, type VerdictReason } from './verdict.ts';
