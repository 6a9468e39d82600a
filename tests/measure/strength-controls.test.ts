// Skills that nobody does must caution: presets asked to go faster, with the joint that is asked for too much; and each preset
// at 1.5 times the strength known for it. Without them a lack of cautions could pass for comfort.
import { describe, expect, test } from 'vitest';
import {
  type Body,
  calcCautions,
  calcFrames,
  type Flight,
  flySkill,
  frameTimes,
  type SkillFile,
} from '../../sim/index.ts';
import { listLoads } from '../../sim/measure/joint-loads.ts';
import { isCompared, TORQUE_WARNED, warnedTorque } from '../../sim/measure/known-strength.ts';
import { someOf } from '../corpus.ts';
import { fileOf, launchedOf, launchedWith, preset, presetIds, specOf } from '../skill/load.ts';

const framesOf = (flight: Flight, rate: number) => calcFrames(flight, frameTimes(flight.duration, rate));
const cautionsOf = (flight: Flight, rate = 240) =>
  calcCautions(flight.body, framesOf(flight, rate)).map((c) => ({
    ...c,
    name: flight.body.angles[c.angle].name,
  }));
const fly = (file: SkillFile): Flight => flySkill(launchedOf(specOf(file)));
/** Rows a second of a page at rest and of the command line. */
const RATES = [120, 240];
const flightIn = (file: SkillFile) => {
  const phase = file.phases.find((p) => p.kind === 'flight');
  if (phase?.kind !== 'flight') throw new RangeError('a flight');
  return phase;
};
type Block = NonNullable<ReturnType<typeof flightIn>['schedule']['blocks']>[number];
const blocksOf = (file: SkillFile): Block[] => flightIn(file).schedule.blocks as Block[];

/** A preset whose block `i` is reached at `s` after take-off. */
function reach(id: string, i: number, s: number, adjustDeg?: Record<string, number>): SkillFile {
  const file = fileOf(id);
  const block = blocksOf(file)[i];
  Object.assign(block, {
    from: { anchor: 'takeoff', s },
    ...(adjustDeg ? { adjustDeg: { ...block.adjustDeg, ...adjustDeg } } : {}),
  });
  return file;
}

/** A preset in a share of its time: what is keyed, what is stated of momentum. */
function hasten(id: string, share: number): SkillFile {
  const file = fileOf(id);
  const flight = flightIn(file);
  const duration = flySkill(preset(id)).duration * share;
  const shorter = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value))
      if (key === 's' && typeof inner === 'number') Object.assign(value, { s: inner * share });
      else shorter(inner);
  };
  shorter(flight.schedule);
  const { momentum } = flight.takeoff as { momentum?: { vectorKgM2PerS?: number[] } };
  if (momentum?.vectorKgM2PerS) momentum.vectorKgM2PerS = momentum.vectorKgM2PerS.map((h) => h / share);
  Object.assign(flight, { end: { durationS: duration } });
  return { ...file, phases: [flight] };
}

/** [what, the file, kind, a joint that must be named] */
const CONTROLS: readonly (readonly [string, () => SkillFile, 'speed' | 'torque', RegExp])[] = [
  ['arms from overhead to the sides, 180 deg, in 0.12 s', () => reach('back-straight', 1, 0.12), 'speed', /^shoulder/],
  ['the same in a double somersault in 0.15 s', () => reach('double-back-straight', 1, 0.15), 'speed', /^shoulder/],
  [
    'a triple twist in 0.7 s',
    () => hasten('former/back-straight-triple', 0.7 / 2.09),
    'torque',
    /SideBend|shoulder|elbow/,
  ],
  ['a double twist in 0.6 of its time', () => hasten('back-straight-double', 0.6), 'torque', /^shoulder/],
  ['a full twist in 0.55 of its time', () => hasten('back-straight-full', 0.55), 'torque', /^shoulder/],
  ['a spin by the arms in a third of its time', () => hasten('arms-in-spin', 1 / 3), 'torque', /^shoulder|^hip/],
  ['into the pike in 0.2 s', () => reach('back-pike', 1, 0.2), 'torque', /^hip/],
  ['into the pike of a dive in 0.18 s', () => reach('dive-forward-one-and-half-pike', 1, 0.18), 'torque', /^hip/],
  ['into the tuck of a double in 0.2 s', () => reach('double-back-tuck', 1, 0.2), 'torque', /^knee|^hip/],
  ['a full-out in 0.7 of its time', () => hasten('former/double-back-pike-full-out', 0.7), 'torque', /^hip/],
  ['a waist bent 50 deg in 0.07 s', () => reach('back-straight', 1, 0.07, { lumbarFlexion: 50 }), 'torque', /^lumbar/],
  [
    'a double somersault in 0.6 of its time',
    () => hasten('double-back-straight', 0.6),
    'torque',
    /^shoulder|^lumbar|^hip/,
  ],
  ['arms parted after the table in 0.12 s', () => reach('vault-handspring-half', 1, 0.5), 'torque', /^shoulder/],
  [
    'chest turned 35 deg in 0.06 s',
    () => reach('back-straight-full', 1, 0.06, { thoracicTurn: 35 }),
    'torque',
    /^thoracic|^lumbar/,
  ],
];

describe('must caution', () => {
  test.each(CONTROLS)('%s', (_, file, kind, joint) => {
    const found = cautionsOf(fly(file()));
    expect(
      found
        .filter((c) => c.kind === kind)
        .map((c) => c.name)
        .join(' '),
    ).toMatch(new RegExp(joint.source.replaceAll('^', '\\b')));
  });
});

const TUCK_LEGS = ['L', 'R'].flatMap((s) => [`torque of hipFlexion${s}`, `torque of kneeFlexion${s}`]);
/** What the presets themselves are warned of: docs/strength.md says of each what was found. */
const WARNED: Readonly<Record<string, readonly string[]>> = {
  'back-straight-triple': [
    'torque of thoracicSideBend',
    'torque of shoulderElevationL',
    'torque of elbowFlexionL',
    'torque of hipAbductionL',
    'torque of shoulderElevationR',
    'torque of shoulderTurnR',
  ],
  'double-back-pike': ['torque of hipFlexionL', 'torque of hipFlexionR'],
  'double-back-tuck': TUCK_LEGS,
  'floor-double-tuck': TUCK_LEGS,
  'trampoline-triple-full': ['torque of shoulderElevationL'],
  'trampoline-triple-tuck': ['torque of kneeFlexionL', 'torque of kneeFlexionR'],
  'giant-double-straight-two-twists': [
    'torque of shoulderElevationL',
    'torque of shoulderElevationR',
    'torque of elbowFlexionR',
  ],
};

test('page and command line warn of the same in the presets', () => {
  for (const id of presetIds) {
    const flight = flySkill(preset(id));
    for (const rate of RATES)
      expect(
        cautionsOf(flight, rate).map((c) => `${c.kind} of ${c.name}`),
        `${id} at ${rate} Hz`,
      ).toEqual(WARNED[id] ?? []);
  }
});

test('whose strength it is said to be is that of the angle and speed at which most is asked for', () => {
  // bending knees: at rest the gymnast's is the larger, at 227 deg/s the adults'
  const found = cautionsOf(fly(fileOf('former/double-back-tuck')));
  expect(found.map((c) => [c.name.slice(0, -1), c.set])).toEqual([
    ['kneeFlexion', 'adults'],
    ['kneeFlexion', 'adults'],
  ]);
});

/** The body of a flight, all its strengths times a factor. */
const withStrength = (body: Body, factor: number): Body => ({
  ...body,
  angles: body.angles.map((a) => {
    const scaled = a.strength?.map((s) => ({
      ...s,
      still: s.still * factor,
      ...(s.adults ? { adults: { ...s.adults, still: s.adults.still * factor } } : {}),
      single: { ...s.single, still: s.single.still * factor },
    }));
    return scaled ? { ...a, strength: [scaled[0], scaled[1]] as const } : a;
  }),
});

/** Their largest share is near the fastest that a joint can move, where next to nothing is known and more than a multiple of it is allowed. */
const NEAR_FASTEST = ['back-straight-full', 'back-straight-triple', 'trampoline-triple-full'];

describe('of each preset that is compared', () => {
  const ids = presetIds.filter((id) => isCompared(preset(id).body));

  test('there are enough', () => expect(ids.length).toBeGreaterThanOrEqual(12));

  test.each(someOf(ids, 3))('%s: 1.5 times the strength is warned of, 1.2 times not', (id) => {
    const skill = preset(id);
    const flight = flySkill(skill);
    const loads = listLoads(flight.body, framesOf(flight, 240), 0);
    const most = (list: typeof loads): number => Math.max(...list.map((l) => Math.abs(l.torque) / l.known));
    const byTimes = loads.filter((l) => warnedTorque(l.strength, l.known) <= TORQUE_WARNED * l.known * (1 + 1e-12));
    const asked = NEAR_FASTEST.includes(id) ? byTimes : loads;
    const torquesAt = (times: number, share: number): string[] => {
      const body = withStrength(skill.body, share / times);
      return cautionsOf(flySkill(launchedWith({ ...skill, body }))).flatMap((c) =>
        c.kind === 'torque' ? [c.name] : [],
      );
    };
    expect(torquesAt(1.5, most(asked))).not.toEqual([]);
    expect(torquesAt(1.2, most(loads))).toEqual([]);
  });
});
