/** The phases around a flight for the summary as JSON, in the units people type; null is "not known". Fields: docs/command-line.md. */

import type { LandingReport } from '../contact/landing-report.ts';
import { DEG, REV } from '../math/angles.ts';
import type { LateDose } from '../skill/late-dose.ts';
import type { SwingLoads } from '../skill/swing-loads.ts';
import type { Arrival, Whole } from '../skill/whole.ts';
import { beyondOf, linesOf } from './beyond-json.ts';

/** Times count from the release or take-off; those of the landing from touchdown. `loads`: of the swing, where there is one. */
export function phasesOf(whole: Whole, dose?: LateDose, loads?: SwingLoads): object {
  const { swing, late, contact, landing } = whole;
  return {
    ...(swing
      ? {
          swing: {
            durationS: swing.duration,
            driven: swing.driven,
            gripPeakN: swing.peaks.grip.value,
            gripPeakBodyWeights: swing.peaks.gripWeights.value,
            gripPeakAtS: swing.peaks.grip.t,
            gripPeakAngleDeg: swing.peaks.grip.angle * DEG,
            railBendM: swing.peaks.bend.value,
            releaseSpeedMPerS: Math.hypot(...swing.stateAt(0).v_WScm_W),
            releaseMomentumKgM2PerS: swing.stateAt(0).h,
            ...(loads
              ? {
                  jointLoads: loads.largest.map(({ joint, torque, t }) => ({ joint, largestNM: torque, atS: t })),
                  beyondLimits: beyondOf(swing.body, loads.cautions, loads.said),
                  notCompared: linesOf(loads.notCompared),
                }
              : {}),
          },
        }
      : {}),
    ...(late
      ? {
          lateHand: {
            hand: late.hand,
            heldS: late.held,
            momentumKgM2PerS: late.h_Scm_W,
            peakN: late.peak,
            ...(dose ? doseOf(dose) : {}),
          },
        }
      : {}),
    ...(contact
      ? {
          contact: {
            timeS: contact.time,
            meanForceN: contact.impulse.force,
            meanBodyWeights: contact.impulse.bodyWeights,
            leanDeg: contact.impulse.lean * DEG,
            leverM: contact.impulse.lever,
            place: contact.impulse.place ? { alongM: contact.impulse.place.x, acrossM: contact.impulse.place.z } : null,
            angularImpulseKgM2PerS: contact.impulse.K_Scm_W,
            energyJ: contact.impulse.energy,
            frictionNeeded: Number.isFinite(contact.impulse.frictionNeeded) ? contact.impulse.frictionNeeded : null,
            faults: contact.impulse.faults,
          },
        }
      : {}),
    ...(landing ? { landing: arrivalOf(landing) } : {}),
  };
}

/** Twists + to the left, tilt + head to the right; `equal`: both arms alike. */
function doseOf({ rows, grain }: LateDose): object {
  const one = (d: LateDose['rows'][number]['filed']): object => ({
    twists: finite(d.twist / REV),
    tiltDeg: finite(d.tilt * DEG),
  });
  return {
    dose: rows.map((r) => ({ heldS: r.held, asFiled: one(r.filed), armsEqual: r.equal ? one(r.equal) : null })),
    twistDegPerHalfMs: {
      asFiled: finite(grain.filed * DEG),
      armsEqual: grain.equal === undefined ? null : finite(grain.equal * DEG),
    },
  };
}

const finite = (x: number): number | null => (Number.isFinite(x) ? x : null);

/** Of one that is not computed: how far it is off and up to where it would be computed. */
function arrivalOf(landing: Arrival): object {
  if (landing.kind === 'landed') return landingOf(landing.report);
  if (landing.kind === 'notOnFeet') return landing;
  const asymmetry = landing.asymmetry.map(({ kind, value, limit }) => {
    const scale = kind === 'across' ? 1 : DEG;
    return { kind, value: value * scale, limit: limit * scale, unit: kind === 'across' ? 'm/s' : 'deg' };
  });
  return { kind: landing.kind, asymmetry };
}

function landingOf(r: LandingReport): object {
  return {
    kind: 'landed',
    speedMPerS: r.speed,
    peakN: r.peak.force,
    peakBodyWeights: r.peak.bodyWeights,
    peakAtS: r.peak.t,
    peakIsUpperBound: r.bound !== undefined,
    upperBoundBecause: r.bound ?? null,
    meanOver10MsBodyWeights: r.filteredPeak.bodyWeights,
    brakeTimeS: r.brakeTime ?? null,
    meanDecelerationMPerS2: r.meanDeceleration,
    meanBodyWeights: r.meanBodyWeights,
    sinkageM: r.sinkage,
    joints: r.joints.map((j) => ({
      joint: j.joint,
      torqueNM: j.torque,
      atS: j.t,
      absorbedJ: j.absorbed,
      limitedShare: j.limitedShare,
      furthestDeg: j.furthest * DEG,
    })),
    energyJ: r.energy,
    screenM: r.screen,
    ending: r.ending.kind,
    direction: r.ending.direction ?? null,
    endsAtS: r.ending.t,
    reasons: r.ending.reasons,
  };
}
