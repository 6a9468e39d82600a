/** How a skill file says the flight begins, in SI units and radians. Faults name the field. */
import type { TakeoffSpec } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import type { ContactApproach, StartSpec, SwingApproach } from '../skill/start-spec.ts';
import type { FileSwing, FileSwingKey, FileTakeoffContact, SkillFile } from './skill-file.ts';

const RAD = Math.PI / 180;
const REV = 2 * Math.PI;

type SwingKeys = SwingApproach['moves']['keys'];

/** With a swing the stored take-off says nothing; with a known contact its velocity and momentum do not. */
export function parseStart({ takeoff: file, approach }: SkillFile): StartSpec {
  if (approach?.kind === 'swing') return { kind: 'swing', swing: parseSwing(approach) };
  const takeoff = parseTakeoff(file);
  if (!approach) return { kind: 'stated', takeoff };
  const contact = parseContact(approach);
  const { given } = approach;
  if (!given) return { kind: 'stated', takeoff, contact };
  const { height, somersault, tilt, twist } = takeoff;
  return {
    kind: 'contact',
    contact: {
      ...contact,
      given: {
        bodyWeights: given.meanBodyWeights,
        lean: given.leanDeg * RAD,
        across: given.acrossBodyWeights ?? 0,
        place: { x: given.placeM.along, z: given.placeM.across ?? 0 },
        freeTurn: given.freeTurnKgM2PerS ?? 0,
      },
    },
    height,
    somersault,
    tilt,
    twist,
  };
}

function parseTakeoff({ attitudeDeg: attitude = {}, momentum: m, ...file }: SkillFile['takeoff']): TakeoffSpec {
  const { massCentreHeightM, lowestPointHeightM, velocityMPerS: v } = file;
  return {
    height:
      massCentreHeightM !== undefined
        ? { of: 'massCentre', y: massCentreHeightM }
        : { of: 'lowestPoint', y: lowestPointHeightM ?? 0 },
    v_WScm_W: [v.along, v.up, v.across ?? 0],
    somersault: (attitude.somersault ?? 0) * RAD,
    tilt: (attitude.tilt ?? 0) * RAD,
    twist: (attitude.twist ?? 0) * RAD,
    momentum:
      'vectorKgM2PerS' in m
        ? { kind: 'vector', h_Scm_W: m.vectorKgM2PerS }
        : 'straightSomersaults' in m
          ? { kind: 'straight', somersaults: m.straightSomersaults }
          : {
              kind: 'rates',
              somersault: m.ratesRevPerS.somersault * REV,
              tilt: (m.ratesRevPerS.tilt ?? 0) * REV,
              twist: (m.ratesRevPerS.twist ?? 0) * REV,
            },
  };
}

function parseContact({ velocityMPerS: v, ...a }: FileTakeoffContact): ContactApproach {
  return {
    place: a.place,
    ...(a.timeS === undefined ? {} : { time: a.timeS }),
    ...(a.frictionCoefficient === undefined ? {} : { friction: a.frictionCoefficient }),
    ...(a.massCentreOverSurfaceM === undefined ? {} : { height: a.massCentreOverSurfaceM }),
    v_WScm_W: [v.along, v.up, v.across ?? 0],
    h_Scm_W: a.momentumKgM2PerS ?? [0, 0, 0],
  };
}

function parseSwing(a: FileSwing): SwingApproach {
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
