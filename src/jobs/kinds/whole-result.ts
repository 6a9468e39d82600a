/** What a whole skill reports to the page besides its rows: swing, contact, landing, in plain numbers. */

import {
  calcClearance,
  calcClearTime,
  calcContactReport,
  calcFormerTime,
  calcReleaseWindow,
  calcSwingLoads,
  judgeArrival,
  nearOf,
  type Whole,
  type WholeContact,
} from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import type { ContactResult, LandingOutcome, SwingResult, WholeResult, WindowResult } from './whole-data.ts';
import { sampleColumns, samplePoses } from './whole-sample.ts';

/** A common rule: the turn at constant speed on a circle, which ignores that the bottom is the fastest part. */
const RULE_TURN = 1.7;
const RULE_RADIUS = 0.9144;

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

function makeContactResult(whole: Whole): ContactResult | undefined {
  const { contact } = whole;
  if (!contact) return undefined;
  const report = calcContactReport(whole);
  const { impulse: c, time } = contact;
  return {
    time,
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
  };
}

function makeLandingOutcome({ landing }: Whole): LandingOutcome | undefined {
  if (landing?.kind !== 'landed') return landing;
  return { kind: 'landed', report: landing.report };
}

export function makeWholeResult(whole: Whole, contact: WholeContact): WholeResult {
  const { flight, late } = whole;
  const weight = flight.body.mass * flight.gravity;
  return {
    from: whole.from,
    to: whole.to,
    touchdown: flight.duration,
    barX: whole.barX,
    bodyWeight: weight,
    columns: sampleColumns(whole, contact),
    poses: samplePoses(whole, contact),
    swing: makeSwingResult(whole, contact),
    ...(late ? { late: { held: late.held, hand: late.hand, peakWeights: late.peak / weight } } : {}),
    contact: makeContactResult(whole),
    landing: makeLandingOutcome(whole),
    near: nearOf(calcClearance(whole)),
    ...(whole.landing ? { judged: judgeArrival(whole.landing) } : {}),
  };
}

export function makeWindowResult(whole: Whole, contact: WholeContact): WindowResult | undefined {
  const { swing, skill } = whole;
  if (!swing || !skill.target) return undefined;
  const found = calcReleaseWindow(skill, swing, { contact });
  const tries = found.tries.flatMap(({ late, flight, over, away, meets, nearest }) => {
    if (!flight) return [];
    const near = nearest?.distance;
    const one = { lateMs: late * 1000, overDeg: over * DEG, upMPerS: flight.v_WScm_W0[1], airS: flight.duration };
    return [{ ...one, away, meets, ...(near === undefined ? {} : { nearM: near }) }];
  });
  const clear = calcClearTime(found);
  const formerMs = calcFormerTime(found) * 1000;
  const isByBand = whole.landing?.kind === 'landed' && whole.landing.report.ending.kind === 'tooFast';
  return {
    tries,
    ...(clear === undefined ? {} : { clearMs: clear * 1000 }),
    fromMs: found.from * 1000,
    toMs: found.to * 1000,
    formerMs,
    ...(isByBand ? { isByBand } : {}),
    isOpen: found.isOpen,
  };
}
