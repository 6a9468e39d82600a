/** A catch for the summary as JSON, in the units people type; null is "not known". Fields: docs/catch.md. */
import { DEG } from '../math/angles.ts';
import type { CatchResult } from '../skill/catch.ts';
import type { CatchWindow } from '../skill/catch-window.ts';
import type { CatchOutcome } from '../skill/find-catch.ts';

/** A catch as JSON: metres, seconds, m/s, kN/m, degrees in the names of the fields. */
export function catchOf({ spec, outcome, watch, turned, caught, notComputed }: CatchResult): object {
  return {
    rail: spec.rail,
    hands: spec.hands,
    asked: { gapM: spec.gap, closingMPerS: spec.closing, armsKNPerM: spec.armsStiffness / 1000 },
    ...outcomeOf(outcome),
    seenS: watch.seen ?? null,
    tiltDeg: turned ? turned.tilt * DEG : null,
    twistLeftDeg: turned ? turned.unfinished * DEG : null,
    ...(caught
      ? {
          facing: caught.facing,
          impulseNS: caught.impact.impulse,
          jointImpulsesNMS: Object.fromEntries(caught.impact.joints.map(({ joint, impulse }) => [joint, impulse])),
          energyJ: caught.energy,
          turns: caught.turns,
          momentumAboutRailKgM2PerS: caught.momentum,
          gapKeptM: caught.start.gap,
          load: caught.load
            ? {
                peakN: caught.load.force,
                peakBodyWeights: caught.load.weights,
                atS: caught.load.t,
                withinS: caught.load.within,
                rangeBodyWeights: caught.load.range,
              }
            : null,
        }
      : {}),
    notComputed: notComputed
      ? notComputed.kind === 'asymmetry'
        ? { why: notComputed.kind, of: notComputed.asymmetry.map(({ kind }) => kind) }
        : { why: notComputed.kind }
      : null,
  };
}

function outcomeOf(outcome: CatchOutcome): object {
  const { moment } = outcome;
  const hand = ({ distance, reach, along, across }: CatchOutcome['moment']['left']): object => ({
    distanceM: distance,
    reachLeftM: reach,
    alongMPerS: along,
    acrossMPerS: across,
  });
  return {
    outcome: outcome.kind,
    atS: moment.t,
    gapM: moment.gap,
    left: hand(moment.left),
    right: hand(moment.right),
    massCentreTowardMPerS: moment.toward,
    ...(outcome.kind === 'missed'
      ? { ways: outcome.ways, onlyHand: outcome.only ?? null, inReachS: outcome.inReach }
      : { withinS: outcome.within, isOpen: outcome.isOpen }),
  };
}

/** Over moments of letting go, ms after the planned one. */
export function catchWindowOf({ span, ends, tries }: CatchWindow): object {
  const nameOf = (end: CatchOutcome | undefined): object | null =>
    end ? { outcome: end.kind, ...(end.kind === 'missed' ? { ways: end.ways } : {}) } : null;
  return {
    windowMs: span ? [1000 * span.from, 1000 * span.to] : null,
    isOpen: span?.isOpen ?? null,
    beyond: ends.map(nameOf),
    tries: tries.map(({ late, gap, outcome }) => ({
      lateMs: 1000 * late,
      gapM: Number.isFinite(gap) ? gap : null,
      outcome: outcome?.kind ?? null,
    })),
  };
}
