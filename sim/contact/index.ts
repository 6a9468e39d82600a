/** What loadContact() brings: the planar phases at the bar and on the ground, with the engine of the landing. */
export { type Drop, EIGHTH_SECOND, makeDropEntry } from './landing-drop.ts';
export { type Asymmetry, makeLandingEntry, withKnee } from './landing-entry.ts';
export { DEFAULT_ACTION, type LegAction } from './landing-joints.ts';
export { landingPoseInto, makeLandingPose } from './landing-pose.ts';
export { type LandingReport, type LandingResult, land } from './landing-report.ts';
export { MATS, type MatName, type MatSpec } from './mat.ts';
export * from './start-room.ts';
export type { Verdict, VerdictKind, VerdictReason } from './verdict.ts';
