/** What a leg reports to the page besides its rows: what comes before its flight, the flight, what ends it, in plain numbers. */
import {
  type ContactCourse,
  calcClearance,
  calcContactReport,
  calcFrames,
  calcSwingLoads,
  type FlownLeg,
  frameTimes,
  summarize,
  type Vec3,
  verdictOf,
  type Whole,
  type WholeContact,
} from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { makeLegCatch } from './catch-result.ts';
import type { ContactResult, CourseResult, LegEnd, LegFlight, LegResult, SwingResult } from './leg-data.ts';

/** A common rule: the turn at constant speed on a circle, which ignores that the bottom is the fastest part. */
const RULE_TURN = 1.7;
const RULE_RADIUS = 0.9144;
/** Frames a second: counts and attitude at the end do not depend on it. */
const RATE = 120;

function makeSwingResult({ swing, flight }: Whole, contact: WholeContact): SwingResult | undefined {
  if (!swing) return undefined;
  const { columns: c, shown } = swing;
  const last = shown - 1;
  const loads = calcSwingLoads(swing);
  const even = contact.calcEvenCircle(RULE_RADIUS, RULE_TURN, flight.gravity);
  return {
    peaks: swing.peaks,
    driven: swing.driven,
    strength: swing.strength,
    error: swing.error,
    radius: swing.radius,
    duration: swing.duration,
    rail: { height: swing.rail.height, stiffness: swing.rail.stiffness[1] },
    release: {
      angle: c.angle[last],
      up: flight.v_WScm_W0[1],
      along: flight.v_WScm_W0[0],
      h: flight.h_Scm_W[2],
    },
    limited: swing.joints.map(({ name, limited }) => {
      let count = 0;
      for (let i = 0; i < shown; i++) count += limited[i];
      return { joint: name, share: count / shown };
    }),
    cautions: loads.said.map((said, i) => ({ ...said, t: loads.cautions[i].t })),
    ...(loads.notCompared ? { notCompared: loads.notCompared } : {}),
    largest: loads.largest.reduce((a, b) => (Math.abs(b.torque) > Math.abs(a.torque) ? b : a)),
    rule: { turnS: RULE_TURN, speed: even.speed, g: even.centripetal, felt: even.felt },
  };
}

function makeCourseResult({ facts, rows }: ContactCourse): CourseResult {
  const { account } = facts;
  return {
    entry: facts.entry,
    peak: facts.peak,
    drift: Math.max(facts.slide, facts.stays.value),
    turned: facts.turned,
    work: account.work,
    brought: account.brought,
    gave: account.gave,
    ...(facts.bed ? { depth: rows.depth.reduce((a, b) => Math.max(a, b), 0) } : {}),
    faults: facts.faults,
    unknowns: facts.unknowns,
  };
}

function makeContactResult(
  { whole, skill: { start }, course }: FlownLeg,
  room: WholeContact,
): ContactResult | undefined {
  const { contact } = whole;
  const a = start.kind === 'swing' ? undefined : start.contact;
  if (!contact || !a) return undefined;
  const report = calcContactReport(whole);
  const { impulse: c, time, v_before_W: v } = contact;
  return {
    on: a.place,
    by: a.limb ?? room.TAKEOFF_PRESETS[a.place].by,
    time,
    comes: [v[0], v[1]],
    impulse: Math.hypot(...c.J_W),
    bodyWeights: c.bodyWeights,
    leanDeg: c.lean * DEG,
    lever: c.lever,
    angularImpulse: c.K_Scm_W[2],
    energy: c.energy,
    frictionNeeded: c.frictionNeeded,
    ...(c.place ? { place: c.place } : {}),
    faults: c.faults,
    ...(report ? { report } : {}),
    ...(course ? { course: makeCourseResult(course) } : {}),
  };
}

function makeFlight({ flight }: Whole): LegFlight {
  const [p, v] = [new Float64Array(3), new Float64Array(3)];
  const at = (t: number): readonly [Vec3, Vec3] => {
    flight.massCentreInto(t, p, v);
    return [
      [p[0], p[1], p[2]],
      [v[0], v[1], v[2]],
    ];
  };
  const [p0, leaves] = at(0);
  const [p1, arrives] = at(flight.duration);
  const apex = flight.gravity > 0 ? Math.min(Math.max(leaves[1] / flight.gravity, 0), flight.duration) : 0;
  const top = at(apex)[0][1];
  return {
    leaves,
    arrives,
    momentum: Math.hypot(...flight.h_Scm_W),
    top,
    rise: top - p0[1],
    travel: p1[0] - p0[0],
  };
}

function endOf({ leg, skill }: FlownLeg): LegEnd {
  if (leg.next === 'catch' || leg.next === 'entry') return leg.next === 'catch' ? 'catch' : 'entry';
  const kind = skill.end.surface?.kind;
  if (kind === 'water') return 'entry';
  if (kind === 'trampoline') return 'bounce';
  return skill.after ? 'landing' : 'open';
}

export function makeLegResult(one: FlownLeg, room: WholeContact, isLast: boolean): LegResult {
  const { whole, leg, from, to, offset_W, facing, skill } = one;
  const { flight, late, landing } = whole;
  const nearest = calcClearance(whole);
  const summary = summarize(flight, calcFrames(flight, frameTimes(flight.duration, RATE)), skill.target);
  const verdict = verdictOf(whole, summary, nearest);
  const surface = skill.end.surface?.kind;
  const swing = makeSwingResult(whole, room);
  const pushed = makeContactResult(one, room);
  const caught = makeLegCatch(one);
  return {
    title: leg.title,
    from: from + whole.from,
    takeoff: from,
    touchdown: to,
    offset: offset_W,
    facing,
    barX: facing * whole.barX,
    surfaceY: flight.surfaceY,
    ...(surface ? { surface } : {}),
    vx: facing * flight.v_WScm_W0[0],
    ...(swing ? { swing } : {}),
    ...(late
      ? { late: { held: late.held, hand: late.hand, peakWeights: late.peak / (flight.body.mass * flight.gravity) } }
      : {}),
    ...(pushed ? { contact: pushed } : {}),
    flight: makeFlight(whole),
    ...(isLast ? { end: endOf(one) } : {}),
    ...(caught ? { catch: caught } : {}),
    ...(landing ? { landing: landing.kind === 'landed' ? { kind: 'landed', report: landing.report } : landing } : {}),
    ...(nearest ? { nearest } : {}),
    verdict,
    ...(landing ? { judged: { ending: verdict.ending, basis: verdict.basis } } : {}),
  };
}
