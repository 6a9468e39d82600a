/** How a skill can start off the ground or the bar: swing, late hand, catch and push. Without the landing and its engine. */
export { catchRail } from './catch-rail.ts';
export { makeCaughtSwing } from './caught-swing.ts';
export { calcEvenCircle } from './even-circle.ts';
export { calcAfterContact, calcContactImpulse, impulseOfForce } from './impulse.ts';
export { TAKEOFF_PRESETS } from './impulse-presets.ts';
export { holdLate } from './late-hand.ts';
export { makeSwing } from './make-swing.ts';
export { getRail } from './rail.ts';
