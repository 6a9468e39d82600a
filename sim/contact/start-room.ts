/** How a skill can start off the ground or the bar: swing, late hand and push. Without the landing and its engine. */
export { calcEvenCircle } from './even-circle.ts';
export {
  type ContactFault,
  type ContactImpulse,
  type ContactSpec,
  calcAfterContact,
  calcContactImpulse,
  impulseOfForce,
} from './impulse.ts';
export { TAKEOFF_PRESETS, type TakeoffPlace } from './impulse-presets.ts';
export { holdLate, type LateRelease } from './late-hand.ts';
export { makeSwing } from './make-swing.ts';
export { getRail, type Rail } from './rail.ts';
export type { Swing, SwingPeaks, SwingState } from './swing.ts';
export type { SwingKeys, SwingMoves } from './swing-keys.ts';
export { NoReleaseError, type SwingRelease, type SwingStart } from './swing-spec.ts';
