/** How a skill file says that the flight begins, in SI units and radians. Faults name the field. */

import type { CaughtStart } from '../contact/swing-spec.ts';
import type { TakeoffSpec } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { beforeOf, flightOf } from '../math/phases.ts';
import type { NamedPose } from '../skill/skill-spec.ts';
import type { ContactApproach, StartSpec, SwingApproach } from '../skill/start-spec.ts';
import { CATCH_DEFAULTS } from './catch-defaults.ts';
import { pathOf } from './phase-path.ts';
import type { FileSwing, FileSwingKey, FileTakeoff, FileTakeoffContact } from './phase-schema.ts';
import type { SkillFile } from './skill-schema.ts';

type SwingKeys = SwingApproach['moves']['keys'];

type PoseOf = (shape: string, field: string) => NamedPose;

/** `poseOf`: angles of a shape by its name; throws where there is none. */
export function parseStart(file: SkillFile, poseOf: PoseOf): StartSpec {
  const before = beforeOf(file);
  if (before?.kind === 'swing') return { kind: 'swing', swing: parseSwing(before, pathOf(file, 'swing')) };
  const { takeoff } = flightOf(file);
  const field = `${pathOf(file, 'flight')}.takeoff`;
  if (!takeoff) throw new FieldError(field, undefined, 'the state at t = 0');
  const place = parsePlace(takeoff);
  if (before?.given) {
    const { given } = before;
    return {
      kind: 'contact',
      contact: {
        ...parseContact(before, poseOf),
        given: {
          bodyWeights: given.meanBodyWeights,
          lean: given.leanDeg * RAD,
          across: given.acrossBodyWeights ?? 0,
          place: { x: given.placeM.along, z: given.placeM.across ?? 0 },
          freeTurn: given.freeTurnKgM2PerS ?? 0,
        },
      },
      ...place,
    };
  }
  const { velocityMPerS: v, momentum } = takeoff;
  if (!v) throw new FieldError(`${field}.velocityMPerS`, undefined, 'a velocity');
  if (!momentum) throw new FieldError(`${field}.momentum`, undefined, 'an angular momentum');
  return {
    kind: 'stated',
    takeoff: { ...place, v_WScm_W: [v.along, v.up, v.across ?? 0], momentum: parseMomentum(momentum) },
    ...(before ? { contact: parseContact(before, poseOf) } : {}),
  };
}

function parsePlace(t: FileTakeoff): Pick<TakeoffSpec, 'height' | 'somersault' | 'tilt' | 'twist'> {
  const { somersault = 0, tilt = 0, twist = 0 } = t.attitudeDeg ?? {};
  return {
    height:
      t.massCentreHeightM !== undefined
        ? { of: 'massCentre', y: t.massCentreHeightM }
        : { of: 'lowestPoint', y: t.lowestPointHeightM ?? 0 },
    somersault: somersault * RAD,
    tilt: tilt * RAD,
    twist: twist * RAD,
  };
}

function parseMomentum(m: NonNullable<FileTakeoff['momentum']>): TakeoffSpec['momentum'] {
  if ('vectorKgM2PerS' in m) return { kind: 'vector', h_Scm_W: m.vectorKgM2PerS };
  if ('straightSomersaults' in m) return { kind: 'straight', somersaults: m.straightSomersaults };
  const { somersault, tilt = 0, twist = 0 } = m.ratesRevPerS;
  return { kind: 'rates', somersault: somersault * REV, tilt: tilt * REV, twist: twist * REV };
}

function parseContact({ velocityMPerS: v, ...a }: FileTakeoffContact, poseOf: PoseOf): ContactApproach {
  return {
    place: a.place,
    ...(a.limb === undefined ? {} : { limb: a.limb }),
    ...(a.pulse === undefined ? {} : { pulse: a.pulse }),
    ...(a.entry === undefined ? {} : { entry: parseEntry(a.entry, poseOf) }),
    ...(a.timeS === undefined ? {} : { time: a.timeS }),
    ...(a.frictionCoefficient === undefined ? {} : { friction: a.frictionCoefficient }),
    ...(a.massCentreOverSurfaceM === undefined ? {} : { height: a.massCentreOverSurfaceM }),
    // where a flight comes before, it gives both
    v_WScm_W: v ? [v.along, v.up, v.across ?? 0] : [0, 0, 0],
    h_Scm_W: a.momentumKgM2PerS ?? [0, 0, 0],
  };
}

export function parseSwing(a: FileSwing, path: string): SwingApproach {
  const { start, moves, release } = a;
  if (moves.rounds !== undefined && !Number.isInteger(moves.rounds))
    throw new FieldError(`${path}.moves.rounds`, moves.rounds, 'a whole number from 1 to 20');
  if (moves.over === 'time' && (moves.rounds ?? 1) > 1 && moves.periodS === undefined)
    throw new FieldError(
      `${path}.moves.periodS`,
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
          : 'caught' in start
            ? parseCaught(start.caught)
            : { kind: 'given', angle: start.angleDeg * RAD, rate: start.rateDegPerS * RAD },
    moves: {
      over: moves.over,
      keys: parseKeys(moves.keys, moves.over, `${path}.moves.keys`),
      ...(moves.rounds === undefined ? {} : { rounds: moves.rounds }),
      ...(moves.periodS === undefined ? {} : { period: moves.periodS }),
      ...(moves.last ? { last: parseKeys(moves.last, moves.over, `${path}.moves.last`) } : {}),
    },
    release: 'atDeg' in release ? { at: 'angle', angle: release.atDeg * RAD } : { at: 'time', s: release.atS },
    late: a.releaseLateS ?? 0,
    ...(a.lateHand ? { lateHand: { hand: a.lateHand.hand, s: a.lateHand.lateS } } : {}),
    duration: a.durationS,
    ...(a.strength === undefined ? {} : { strength: a.strength }),
  };
}

const inRad = (of: Readonly<Record<string, number>>): Record<string, number> =>
  Object.fromEntries(Object.entries(of).map(([joint, deg]) => [joint, deg * RAD]));

function parseCaught(c: Extract<FileSwing['start'], { caught: unknown }>['caught']): CaughtStart {
  return {
    kind: 'caught',
    angle: c.armsDeg * RAD,
    rate: c.armsDegPerS * RAD,
    rail: c.railM,
    railRate: c.railMPerS,
    joints: inRad(c.jointsDeg),
    jointRates: inRad(c.jointsDegPerS),
    gap: c.gapM ?? [0, 0],
    pose: inRad(c.heldDeg ?? {}),
    arms: (c.armsKNPerM ?? CATCH_DEFAULTS.armsKNPerM) * 1000,
  };
}

function parseEntry(
  { shape, attitudeDeg: { somersault = 0, tilt = 0, twist = 0 } = {} }: NonNullable<FileTakeoffContact['entry']>,
  poseOf: PoseOf,
): NonNullable<ContactApproach['entry']> {
  return {
    shape,
    pose: poseOf(shape, 'phases[0].entry.shape'),
    somersault: somersault * RAD,
    tilt: tilt * RAD,
    twist: twist * RAD,
  };
}

function parseKeys(keys: readonly FileSwingKey[], over: 'time' | 'angle', field: string): SwingKeys {
  const out: Record<string, { at: number; value: number; kind: 'stop' | 'pass' }[]> = {};
  keys.forEach((k, i) => {
    const [wanted, other] = over === 'time' ? (['atS', 'atDeg'] as const) : (['atDeg', 'atS'] as const);
    if (k[wanted] === undefined)
      throw new FieldError(`${field}[${i}].${wanted}`, undefined, `a number, since the keys lie over ${over}`);
    if (k[other] !== undefined)
      throw new FieldError(`${field}[${i}].${other}`, k[other], `${wanted} alone, since the keys lie over ${over}`);
    out[k.joint] ??= [];
    const list = out[k.joint];
    const at = over === 'time' ? (k.atS ?? 0) : (k.atDeg ?? 0) * RAD;
    if (list.length > 0 && at <= list[list.length - 1].at)
      throw new FieldError(`${field}[${i}].${wanted}`, k[wanted], `later than the ${k.joint} key above it`);
    list.push({ at, value: k.deg * RAD, kind: k.kind ?? 'stop' });
  });
  return out;
}
