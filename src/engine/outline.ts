/** The flight in the numbers of the sentence. Words as in docs/conventions.md: the sign of a turn becomes its word. */
import type { Flight, Frames, Skill } from '../../sim/index.ts';
import type { Outline } from './result.ts';

const TURN = 2 * Math.PI;
const DEG = 180 / Math.PI;
/** Fewer somersaults than this have no word, rev. */
const WORDLESS = 0.05;
/** Momentum under this, kg m2/s, is none. */
const NO_MOMENTUM = 1e-6;

export function calcOutline(skill: Skill, flight: Flight, frames: Frames): Outline {
  const last = frames.n - 1;
  const done = (frames.somersault[last] - frames.somersault[0]) / TURN;
  const twist = (frames.twist[last] - frames.twist[0]) / TURN;
  const known = Number.isFinite(done);
  const facing = Math.cos(skill.takeoff.twist) < 0 ? -1 : 1;
  const about = Math.abs(flight.h_Scm_W[2]) > NO_MOMENTUM ? flight.h_Scm_W[2] : done;
  const somersaultWord = !known || Math.abs(done) < WORDLESS ? '' : about * facing > 0 ? 'backward' : 'forward';
  const twistWord = !known || twist === 0 ? '' : twist > 0 ? 'left' : 'right';
  const landing = skill.target?.landingAngle ?? 0;
  const turned = Math.sign(frames.somersault[last] - frames.somersault[0]) || 1;
  // the wanted angle as it is counted: the landing attitude nearest to the turns wanted, or to those done
  const meant = skill.target
    ? frames.somersault[0] + turned * skill.target.somersaults * TURN
    : frames.somersault[last];
  const wanted = landing + TURN * Math.round((meant - landing) / TURN);
  let height = Number.NEGATIVE_INFINITY;
  for (let i = 0; i <= last; i++) height = Math.max(height, frames.p_WScm_W[3 * i + 1]);
  return {
    somersaults: known ? Math.abs(done) : null,
    somersaultWord,
    twists: known ? Math.abs(twist) : null,
    twistWord,
    duration: flight.duration,
    apex: Math.min(Math.max(flight.apex, 0), flight.duration),
    height,
    shortDeg: known && Math.abs(done) >= WORDLESS ? (wanted - frames.somersault[last]) * turned * DEG : null,
    tiltDeg: known ? frames.tilt[last] * DEG : null,
    undefinedFrom: frames.undefinedFrom,
    inverted: Math.cos(landing) < 0,
    wantedSomersault: known && Math.abs(done) >= WORDLESS ? wanted : undefined,
  };
}
