/** What loadContact() brings: the planar phases at the bar and on the ground, with the engine of the landing. */
export { makeLandingEntry, withKnee } from './landing-entry.ts';
export { DEFAULT_ACTION } from './landing-joints.ts';
export { landingPoseInto, makeLandingPose } from './landing-pose.ts';
export { LANDING_RANGES, LANDING_SAMPLES, landSample, tenthsOf } from './landing-ranges.ts';
export { land } from './landing-report.ts';
export { MATS } from './mat.ts';
export * from './start-room.ts';
