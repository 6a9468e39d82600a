/** What a skill file says of the time before and after the flight, in SI units and radians. Faults name the field. */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import type { ApproachSpec, ArrivalSpec } from '../skill/whole-spec.ts';
import type { FileApproach, FileArrival, FileSwing, FileSwingKey } from './skill-file.ts';

type SwingSpec = Extract<ApproachSpec, { kind: 'swing' }>;
type SwingKeys = SwingSpec['moves']['keys'];

export function parseApproach(a: FileApproach): ApproachSpec {
  if (a.kind === 'swing') return parseSwing(a);
  const { velocityMPerS: v, given } = a;
  return {
    kind: 'contact',
    place: a.place,
    ...(a.timeS === undefined ? {} : { time: a.timeS }),
    ...(a.frictionCoefficient === undefined ? {} : { friction: a.frictionCoefficient }),
    ...(a.massCentreOverSurfaceM === undefined ? {} : { height: a.massCentreOverSurfaceM }),
    v_WScm_W: [v.along, v.up, v.across ?? 0],
    h_Scm_W: a.momentumKgM2PerS ?? [0, 0, 0],
    ...(given
      ? {
          given: {
            bodyWeights: given.meanBodyWeights,
            lean: given.leanDeg * RAD,
            across: given.acrossBodyWeights ?? 0,
            place: { x: given.placeM.along, z: given.placeM.across ?? 0 },
            freeTurn: given.freeTurnKgM2PerS ?? 0,
          },
        }
      : {}),
  };
}

function parseSwing(a: FileSwing): SwingSpec {
  const { start, moves, release } = a;
  if (moves.rounds !== undefined && !Number.isInteger(moves.rounds))
    throw new FieldError('approach.moves.rounds', moves.rounds, 'a whole number from 1 to 20');
  if (moves.over === 'time' && (moves.rounds ?? 1) > 1 && moves.periodS === undefined)
    throw new FieldError(
      'approach.moves.periodS',
      undefined,
      'a number from 0.1 to 60 s, with more than one round over time',
    );
  return {
    kind: 'swing',
    rail: a.rail,
    sense: a.sense,
    start:
      'handstandNudgeDegPerS' in start
        ? { kind: 'handstand', nudge: start.handstandNudgeDegPerS * RAD }
        : 'castDeg' in start
          ? { kind: 'cast', angle: start.castDeg * RAD }
          : { kind: 'given', angle: start.angleDeg * RAD, rate: start.rateDegPerS * RAD },
    moves: {
      over: moves.over,
      keys: keysOf(moves.keys, moves.over, 'approach.moves.keys'),
      ...(moves.rounds === undefined ? {} : { rounds: moves.rounds }),
      ...(moves.periodS === undefined ? {} : { period: moves.periodS }),
      ...(moves.last ? { last: keysOf(moves.last, moves.over, 'approach.moves.last') } : {}),
    },
    release: 'atDeg' in release ? { at: 'angle', angle: release.atDeg * RAD } : { at: 'time', s: release.atS },
    late: a.releaseLateS ?? 0,
    ...(a.lateHand ? { lateHand: { hand: a.lateHand.hand, s: a.lateHand.lateS } } : {}),
    duration: a.durationS,
    ...(a.strength === undefined ? {} : { strength: a.strength }),
  };
}

function keysOf(keys: readonly FileSwingKey[], over: 'time' | 'angle', field: string): SwingKeys {
  const out: Record<string, { at: number; value: number; kind: 'stop' | 'pass' }[]> = {};
  keys.forEach((k, i) => {
    const [asked, other] = over === 'time' ? (['atS', 'atDeg'] as const) : (['atDeg', 'atS'] as const);
    if (k[asked] === undefined)
      throw new FieldError(`${field}[${i}].${asked}`, undefined, `a number, since the keys lie over ${over}`);
    if (k[other] !== undefined)
      throw new FieldError(`${field}[${i}].${other}`, k[other], `${asked} alone, since the keys lie over ${over}`);
    out[k.joint] ??= [];
    const list = out[k.joint];
    const at = over === 'time' ? (k.atS ?? 0) : (k.atDeg ?? 0) * RAD;
    if (list.length > 0 && at <= list[list.length - 1].at)
      throw new FieldError(`${field}[${i}].${asked}`, k[asked], `later than the ${k.joint} key above it`);
    list.push({ at, value: k.deg * RAD, kind: k.kind ?? 'stop' });
  });
  return out;
}

export function parseArrival(a: FileArrival): ArrivalSpec {
  const keys = new Map<number, Record<string, number>>();
  let last = 0;
  (a.keys ?? []).forEach((k, i) => {
    if (k.s < last) throw new FieldError(`arrival.keys[${i}].s`, k.s, `not before the key above it (${last} s)`);
    last = k.s;
    keys.set(k.s, { ...keys.get(k.s), [k.joint]: k.deg * RAD });
  });
  return {
    mat:
      typeof a.mat === 'string'
        ? a.mat
        : {
            thickness: a.mat.thicknessM,
            stiffness: a.mat.stiffnessKNPerM * 1000,
            damping: a.mat.dampingSPerM,
            friction: a.mat.friction,
          },
    action: {
      ...(a.legStiffness === undefined ? {} : { stiffness: a.legStiffness }),
      ...(a.effort === undefined ? {} : { effort: a.effort }),
      ...(a.eccentricFactor === undefined ? {} : { eccentric: a.eccentricFactor }),
      ...(a.reflexDelayS === undefined ? {} : { delay: a.reflexDelayS }),
      ...(keys.size > 0 ? { kind: 'keyed', keys: [...keys].map(([s, angles]) => ({ s, angles })) } : {}),
    },
    ...(a.kneeDeg === undefined ? {} : { knee: a.kneeDeg * RAD }),
    ...(a.durationS === undefined ? {} : { duration: a.durationS }),
  };
}
