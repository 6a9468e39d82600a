/** One fault of the usual size in a skill's file, for each thing that technique is read of: what a coach would send back. */
import type { FileBlock, FileFlight, SkillFile } from '../../sim/index.ts';
import type { Technique } from '../../sim/measure/technique.ts';

type Fault = (flight: FileFlight, blocks: Blocks, isAtMost: boolean) => FileFlight;
type Blocks = readonly FileBlock[];

const withBlocks = (flight: FileFlight, blocks: Blocks): FileFlight => ({
  ...flight,
  schedule: { ...flight.schedule, blocks: [...blocks] },
});
const adjust = (block: FileBlock, deg: Readonly<Record<string, number>>): FileBlock => {
  const given = block.adjustDeg ?? {};
  // a side of its own would win
  const kept = Object.entries(given).filter(([name]) => !(name.replace(/[LR]$/, '') in deg));
  return { ...block, adjustDeg: { ...Object.fromEntries(kept), ...deg } };
};
const everywhere =
  (deg: Readonly<Record<string, number>>): Fault =>
  (flight, blocks) =>
    withBlocks(
      flight,
      blocks.map((block) => adjust(block, deg)),
    );
const atEnd =
  (deg: Readonly<Record<string, number>>): Fault =>
  (flight, blocks) =>
    withBlocks(flight, [...blocks.slice(0, -1), adjust(blocks[blocks.length - 1], deg)]);
const atStart =
  (deg: Readonly<Record<string, number>>): Fault =>
  (flight, blocks) =>
    withBlocks(flight, [adjust(blocks[0], deg), ...blocks.slice(1)]);

/** s */
const LATE = 0.06;
const isTight = ({ shape }: FileBlock): boolean => /tuck|pike|puck/i.test(shape);
const isWrap = ({ shape }: FileBlock): boolean => /wrap/i.test(shape);

/** The first such block is reached later, or the last left earlier. */
function shift(is: (block: FileBlock) => boolean, end: 'from' | 'to', by: number): Fault {
  return (flight, blocks) => {
    const k = end === 'from' ? blocks.findIndex(is) : blocks.findLastIndex(is);
    if (k < 0) throw new Error('no such block');
    return withBlocks(
      flight,
      blocks.map((b, i) => (i === k ? { ...b, [end]: { ...b[end], s: b[end].s + by } } : b)),
    );
  };
}
const hold =
  (is: (block: FileBlock) => boolean, deg: Readonly<Record<string, number>>): Fault =>
  (flight, blocks) =>
    withBlocks(
      flight,
      blocks.map((b) => (is(b) ? adjust(b, deg) : b)),
    );

/** The hands let go and hang in the air. */
const letGo: Fault = (flight, blocks, isAtMost) => {
  const { contacts: _, ...schedule } = flight.schedule;
  return hold(isTight, { shoulderElevation: 150 })({ ...flight, schedule }, blocks, isAtMost);
};

/** Up by a fifth, or down by a seventh: with less no shape may have its time. */
const push: Fault = (flight, _, isAtMost) => {
  const { takeoff } = flight;
  if (!takeoff?.velocityMPerS) throw new Error('a stated take-off');
  const up = takeoff.velocityMPerS.up * (isAtMost ? 1.2 : 0.855);
  return { ...flight, takeoff: { ...takeoff, velocityMPerS: { ...takeoff.velocityMPerS, up } } };
};
const turn: Fault = (flight, _, isAtMost) => {
  const { takeoff } = flight;
  const by = isAtMost ? 1.3 : 0.7;
  const m = takeoff?.momentum;
  if (!takeoff || !m) throw new Error('a stated take-off');
  if ('straightSomersaults' in m)
    return { ...flight, takeoff: { ...takeoff, momentum: { straightSomersaults: m.straightSomersaults * by } } };
  if (!('vectorKgM2PerS' in m)) throw new Error('a momentum');
  const [x, y, z] = m.vectorKgM2PerS;
  return { ...flight, takeoff: { ...takeoff, momentum: { vectorKgM2PerS: [x * by, y * by, z * by] } } };
};
/** deg of tilt that the body has as it leaves the floor, to the side that hurts */
const lean =
  (deg: number): Fault =>
  (flight) => {
    const { takeoff } = flight;
    if (!takeoff) throw new Error('a stated take-off');
    const tilt = takeoff.attitudeDeg?.tilt ?? 0;
    return { ...flight, takeoff: { ...takeoff, attitudeDeg: { ...takeoff.attitudeDeg, tilt: tilt + deg } } };
  };

/** The push is more uneven: 5 kg m^2/s about the vertical, or 10 deg of tilt where the momentum is stated level. */
const unevenPush: Fault = (flight, blocks, isAtMost) => {
  const { takeoff } = flight;
  const m = takeoff?.momentum;
  if (!takeoff || !m || !('vectorKgM2PerS' in m)) return lean(10)(flight, blocks, isAtMost);
  const [x, y, z] = m.vectorKgM2PerS;
  return { ...flight, takeoff: { ...takeoff, momentum: { vectorKgM2PerS: [x, y + 5, z] } } };
};

/** Both arms do what the right one does: only the push throws the twist. */
const even: Fault = ({ schedule: { keys: _, ...schedule }, ...flight }, blocks) =>
  withBlocks(
    { ...flight, schedule, takeoff: flight.takeoff && { ...flight.takeoff, attitudeDeg: {} } },
    blocks.map((block) => ({
      ...block,
      shape: 'armsOverhead',
      adjustDeg: { shoulderElevation: 120, shoulderPlane: 0, shoulderTurn: 0, elbowFlexion: 0 },
    })),
  );

const FAULTS: Partial<Readonly<Record<keyof Technique, Fault>>> = {
  airTime: push,
  peakHeight: push,
  momentumPerMH2: turn,
  armsUpAtTakeoff: atStart({ shoulderElevation: 90 }),
  armsUpAtTouchdown: atEnd({ shoulderElevation: 10 }),
  armsUnevenAtTouchdown: atEnd({ shoulderElevationL: 40, shoulderElevationR: 140 }),
  kneeAtTouchdown: atEnd({ kneeFlexion: 60 }),
  hipAtTouchdown: atEnd({ hipFlexion: 70 }),
  legsApart: everywhere({ hipAbduction: 15 }),
  headOff: everywhere({ neckFlexion: 35 }),
  tightFrom: shift(isTight, 'from', LATE),
  tightTo: shift(isTight, 'to', -LATE),
  straightBy: atEnd({ hipFlexion: 70 }),
  handsToLegs: letGo,
  kneesWhileTight: hold(isTight, { kneeFlexion: 40 }),
  wrappedFrom: shift(isWrap, 'from', LATE),
  wrappedTo: shift(isWrap, 'to', -LATE),
  twistAfterWrap: shift(isWrap, 'to', -3 * LATE),
  twistFrom: lean(8),
  twistBack: lean(-8),
  twistRateAtTakeoff: (flight, blocks, isAtMost) => lean(isAtMost ? 12 : -8)(flight, blocks, isAtMost),
  tiltAtTakeoff: lean(10),
  tiltAtTouchdown: lean(8),
  greatestTilt: (flight, blocks, isAtMost) => (isAtMost ? unevenPush : even)(flight, blocks, isAtMost),
};

/** The file with that fault in its last flight. */
export function spoil(file: SkillFile, what: keyof Technique, is: 'atMost' | 'atLeast'): SkillFile {
  const fault = FAULTS[what];
  if (!fault) throw new Error(`no fault of ${what}: add one`);
  const at = file.phases.findLastIndex(({ kind }) => kind === 'flight');
  const flight = file.phases[at] as FileFlight;
  const spoiled = fault(flight, flight.schedule.blocks ?? [], is === 'atMost');
  return { ...file, phases: file.phases.map((phase, i) => (i === at ? spoiled : phase)) };
}
