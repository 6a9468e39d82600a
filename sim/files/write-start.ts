/** How a flight begins, from SI units and radians to the fields of a file: the way back of parse-start.ts. */
import type { CaughtStart } from '../contact/swing-spec.ts';
import type { TakeoffSpec } from '../flight/flight.ts';
import { DEG, REV } from '../math/angles.ts';
import type { ContactApproach, KnownContact, StartSpec, SwingApproach } from '../skill/start-spec.ts';
import type { FileBefore, FileSwing, FileSwingKey, FileTakeoff, FileTakeoffContact } from './phase-schema.ts';
import { tidy, tidyDeg, tidyTriple } from './tidy.ts';

/** The phase before the flight and what the flight itself says of its take-off. */
export function writeStart(start: StartSpec): { before?: FileBefore; takeoff?: FileTakeoff } {
  if (start.kind === 'swing') return { before: writeSwing(start.swing) };
  if (start.kind === 'contact')
    return {
      before: { ...writeContact(start.contact), given: writeGiven(start.contact.given) },
      takeoff: writePlace(start),
    };
  return {
    ...(start.contact ? { before: writeContact(start.contact) } : {}),
    takeoff: takeoffInFile(start.takeoff),
  };
}

/** All of a take-off, as a file states it. */
export function takeoffInFile(
  takeoff: TakeoffSpec,
): Required<Pick<FileTakeoff, 'velocityMPerS' | 'momentum'>> & FileTakeoff {
  const { momentum: m } = takeoff;
  return {
    ...writePlace(takeoff),
    velocityMPerS: writeVelocity(takeoff.v_WScm_W),
    momentum:
      m.kind === 'vector'
        ? { vectorKgM2PerS: tidyTriple(m.h_Scm_W) }
        : m.kind === 'straight'
          ? { straightSomersaults: tidy(m.somersaults) }
          : {
              ratesRevPerS: {
                somersault: tidy(m.somersault / REV),
                tilt: tidy(m.tilt / REV),
                twist: tidy(m.twist / REV),
              },
            },
  };
}

function writePlace({ height, ...t }: Pick<TakeoffSpec, 'height' | 'somersault' | 'tilt' | 'twist'>): FileTakeoff {
  const attitudeDeg = {
    ...(t.somersault ? { somersault: tidyDeg(t.somersault) } : {}),
    ...(t.tilt ? { tilt: tidyDeg(t.tilt) } : {}),
    ...(t.twist ? { twist: tidyDeg(t.twist) } : {}),
  };
  return {
    ...(height.of === 'massCentre' ? { massCentreHeightM: tidy(height.y) } : { lowestPointHeightM: tidy(height.y) }),
    ...(Object.keys(attitudeDeg).length > 0 ? { attitudeDeg } : {}),
  };
}

function writeVelocity([along, up, across]: readonly [number, number, number]): NonNullable<
  FileTakeoff['velocityMPerS']
> {
  return { along: tidy(along), up: tidy(up), ...(across ? { across: tidy(across) } : {}) };
}

function writeContact(c: ContactApproach): FileTakeoffContact {
  return {
    kind: 'contact',
    place: c.place,
    ...(c.limb === undefined ? {} : { limb: c.limb }),
    ...(c.pulse === undefined ? {} : { pulse: c.pulse }),
    ...(c.entry === undefined ? {} : { entry: writeEntry(c.entry) }),
    ...(c.time === undefined ? {} : { timeS: tidy(c.time) }),
    ...(c.friction === undefined ? {} : { frictionCoefficient: tidy(c.friction) }),
    ...(c.height === undefined ? {} : { massCentreOverSurfaceM: tidy(c.height) }),
    velocityMPerS: writeVelocity(c.v_WScm_W),
    ...(c.h_Scm_W.some((h) => h !== 0) ? { momentumKgM2PerS: tidyTriple(c.h_Scm_W) } : {}),
  };
}

function writeGiven(g: KnownContact['given']): NonNullable<FileTakeoffContact['given']> {
  return {
    meanBodyWeights: tidy(g.bodyWeights),
    leanDeg: tidyDeg(g.lean),
    ...(g.across ? { acrossBodyWeights: tidy(g.across) } : {}),
    placeM: { along: tidy(g.place.x), ...(g.place.z ? { across: tidy(g.place.z) } : {}) },
    ...(g.freeTurn ? { freeTurnKgM2PerS: tidy(g.freeTurn) } : {}),
  };
}

export function writeSwing(s: SwingApproach): FileSwing {
  const { start, moves, release } = s;
  return {
    kind: 'swing',
    rail: s.rail as FileSwing['rail'],
    sense: s.sense,
    start:
      start.kind === 'handstand'
        ? { handstandNudgeDegPerS: tidyDeg(start.nudge) }
        : start.kind === 'cast'
          ? { castDeg: tidyDeg(start.angle) }
          : start.kind === 'caught'
            ? { caught: writeCaught(start) }
            : { angleDeg: tidyDeg(start.angle), rateDegPerS: tidyDeg(start.rate) },
    moves: {
      over: moves.over,
      ...(moves.rounds === undefined ? {} : { rounds: moves.rounds }),
      ...(moves.period === undefined ? {} : { periodS: tidy(moves.period) }),
      keys: writeKeys(moves.keys, moves.over),
      ...(moves.last ? { last: writeKeys(moves.last, moves.over) } : {}),
    },
    release: release.at === 'angle' ? { atDeg: tidyDeg(release.angle) } : { atS: tidy(release.s) },
    ...(s.late ? { releaseLateS: tidy(s.late) } : {}),
    ...(s.lateHand ? { lateHand: { hand: s.lateHand.hand, lateS: tidy(s.lateHand.s) } } : {}),
    durationS: tidy(s.duration),
    ...(s.strength === undefined ? {} : { strength: tidy(s.strength) }),
  };
}

/** In full: it is what another flight handed over. */
export function writeCaught(c: CaughtStart): Extract<FileSwing['start'], { caught: unknown }>['caught'] {
  const degrees = (of: Readonly<Record<string, number>>): Record<string, number> =>
    Object.fromEntries(Object.entries(of).map(([joint, rad]) => [joint, rad * DEG]));
  return {
    armsDeg: c.angle * DEG,
    armsDegPerS: c.rate * DEG,
    railM: [c.rail[0], c.rail[1]],
    railMPerS: [c.railRate[0], c.railRate[1]],
    jointsDeg: degrees(c.joints),
    jointsDegPerS: degrees(c.jointRates),
    gapM: [c.gap[0], c.gap[1]],
    heldDeg: degrees(c.pose),
    armsKNPerM: c.arms / 1000,
  };
}

function writeEntry({
  shape,
  pose: _,
  ...attitude
}: NonNullable<ContactApproach['entry']>): FileTakeoffContact['entry'] {
  const { attitudeDeg } = writePlace({ height: { of: 'massCentre', y: 0 }, ...attitude });
  return { shape, ...(attitudeDeg ? { attitudeDeg } : {}) };
}

function writeKeys(keys: SwingApproach['moves']['keys'], over: 'time' | 'angle'): FileSwingKey[] {
  return Object.entries(keys).flatMap(([joint, list]) =>
    list.map(
      ({ at, value, kind }): FileSwingKey => ({
        joint: joint as FileSwingKey['joint'],
        ...(over === 'time' ? { atS: tidy(at) } : { atDeg: tidyDeg(at) }),
        deg: tidyDeg(value),
        ...(kind === 'pass' ? { kind } : {}),
      }),
    ),
  );
}

/** Written keys in the order of others: a file may mix its joints, a spec lists them joint by joint. */
export function inOrderOf(order: readonly FileSwingKey[], written: readonly FileSwingKey[]): FileSwingKey[] {
  const left = [...written];
  const paired = order.flatMap(({ joint }) => {
    const at = left.findIndex((key) => key.joint === joint);
    return at < 0 ? [] : left.splice(at, 1);
  });
  return [...paired, ...left];
}
