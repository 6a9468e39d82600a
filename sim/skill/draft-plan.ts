/**
 * The plan of a drafted skill: when the body is bent, when the arms throw, swap, wrap and level. A twist is drafted
 * "aerial": arms thrown apart tilt the straight body. The twist's phase decides what an arm movement does to the tilt:
 * thrown at a whole twist and taken back at a whole twist cancel; at a half they add. So an odd number of half twists
 * swaps the arms at a quarter; three and more wrap them at the first half twist and open them half a twist before the
 * end (theory: Yeadon 1993, J Appl Biomech 9:187, "The biomechanics of twisting somersaults"; from memory).
 * Times in s from take-off, angles in rad, turns in revolutions.
 */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import type { ArmPath } from '../schedule/schedule.ts';
import type { DraftSpec } from './draft-spec.ts';
import type { BlockSpec, NamedPose } from './skill-spec.ts';

/** A stretch of the flight, by somersault done. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly kind: 'bent' | 'straight' | 'twist';
  readonly halfTwists: number;
}

/** What the tuning may change. Arms: how far from level, rad: right up, left down by as much. */
export interface PlanValues {
  momentum: number;
  /** for each twisting stretch: the throw, and before levelling */
  throws: number[];
  levels: number[];
}

/** Where the plan's moments lie, s; read off the flight before and moved until they agree with it. */
export interface PlanTimes {
  duration: number;
  /** for each stretch */
  spans: { from: number; to: number }[];
  /** for each twisting stretch: swap, or wrap and open */
  turns: number[][];
}

const SHAPES_NEEDED = [
  'straight',
  'armsOverhead',
  'tShape',
  'wrapped',
  'tuck',
  'pike',
  'armsForward',
  'landing',
  'diveEntry',
];
/** Arms move this long, s. */
const MOVE = 0.2;
/** Into and out of a bend, s. */
const BEND = 0.26;

export function listStretches(spec: DraftSpec): Stretch[] {
  const { somersaults, halfTwists, shape } = spec;
  const bendable = shape !== 'straight';
  // one somersault that both bends and twists: bent first, twist out of it
  if (halfTwists.length === 1 && halfTwists[0] > 0 && bendable)
    return [
      { from: 0, to: somersaults * 0.55, kind: 'bent', halfTwists: 0 },
      { from: somersaults * 0.55, to: somersaults, kind: 'twist', halfTwists: halfTwists[0] },
    ];
  // a dive's number does not say where it twists: at once, and bent after
  const total = halfTwists.reduce((a, b) => a + b, 0);
  if (spec.surface === 'water' && total > 0 && halfTwists.length > 1 && bendable) {
    const to = Math.min(somersaults - 0.9, Math.max(0.6, total / 2));
    return [
      { from: 0, to, kind: 'twist', halfTwists: total },
      { from: to, to: somersaults, kind: 'bent', halfTwists: 0 },
    ];
  }
  // little twist for its somersaults: a straight body would not stay quiet so long, so the throw waits
  if (halfTwists.length === 1 && total > 0 && somersaults > 1.2 * total)
    return [
      { from: 0, to: somersaults - total, kind: 'straight', halfTwists: 0 },
      { from: somersaults - total, to: somersaults, kind: 'twist', halfTwists: total },
    ];
  const list: Stretch[] = [];
  halfTwists.forEach((n, i) => {
    const to = i === halfTwists.length - 1 ? somersaults : i + 1;
    const kind = n > 0 ? 'twist' : bendable ? 'bent' : 'straight';
    const last = list[list.length - 1];
    if (last?.kind === kind) list[list.length - 1] = { ...last, to, halfTwists: last.halfTwists + n };
    else list.push({ from: i, to, kind, halfTwists: n });
  });
  return list;
}

/** Twist done in a stretch, in revolutions, at which its inner movements are centred. */
export function turnPhases(halfTwists: number): number[] {
  if (halfTwists >= 3) return [0.5, halfTwists / 2 - 0.5];
  return [halfTwists === 1 ? 0.25 : 0.5];
}

/** More than 1.6 twists a somersault: the arms start the other way round and swing through, for twice the tilt. */
const FAST_START = 75 * RAD;
const isFast = (s: Stretch): boolean => s.halfTwists / 2 > 1.6 * (s.to - s.from);

class PlanWriter {
  readonly blocks: BlockSpec[] = [];
  private readonly shapes: Readonly<Record<string, NamedPose>>;

  constructor(shapes: Readonly<Record<string, NamedPose>>) {
    this.shapes = shapes;
  }

  /** Blocks that would start before the one above ends are moved, and dropped when nothing remains. */
  add(shape: string, from: number, to: number, arms: ArmPath, adjust: NamedPose = {}): void {
    const pose = this.shapes[shape];
    if (!pose) throw new FieldError('shapes', shape, `shapes with the ids ${SHAPES_NEEDED.join(', ')}`);
    const before = this.blocks[this.blocks.length - 1]?.to.s ?? Number.NEGATIVE_INFINITY;
    const start = round(Math.max(from, before + 0.06), 1000);
    const end = round(Math.max(to, start + 0.01), 1000);
    const at = (s: number) => ({ anchor: 'takeoff' as const, s });
    this.blocks.push({ shape, pose, adjust, from: at(start), to: at(end), arms });
  }
}

export const round = (x: number, per: number): number => Math.round(x * per) / per;
const tenth = (angle: number): number => round(angle / RAD, 10) * RAD;
const apart = (a: number): NamedPose => ({
  shoulderElevationR: tenth(Math.PI / 2 + a),
  shoulderElevationL: tenth(Math.PI / 2 - a),
});

export function writeBlocks(
  spec: DraftSpec,
  stretches: readonly Stretch[],
  values: PlanValues,
  times: PlanTimes,
  shapes: Readonly<Record<string, NamedPose>>,
): BlockSpec[] {
  const w = new PlanWriter(shapes);
  const bent = spec.shape === 'pike' ? 'pike' : 'tuck';
  const T = times.duration;
  const twistsFirst = stretches[0]?.kind === 'twist';
  if (twistsFirst) w.add('tShape', -0.3, 0, 'side', isFast(stretches[0]) ? apart(-FAST_START) : {});
  else w.add('armsOverhead', -0.3, -0.05, 'front', { shoulderPlane: 90 * RAD });
  let run = 0;
  stretches.forEach((s, i) => {
    const { from, to } = times.spans[i];
    const isLast = i === stretches.length - 1;
    if (s.kind === 'straight') {
      if (spec.halfTwists.every((n) => n === 0))
        w.add('straight', from + 0.36, Math.max(from + 0.4, to - 0.4), 'front');
      return;
    }
    if (s.kind === 'bent') {
      const start = from + (i === 0 ? 0.34 : BEND);
      w.add(bent, start, Math.max(start + 0.04, to - (isLast ? 0.34 : BEND)), 'front');
      return;
    }
    const a = values.throws[run];
    const b = values.levels[run] * (s.halfTwists % 2 === 1 ? -1 : 1);
    const turns = times.turns[run];
    run++;
    if (i > 0) w.add('tShape', from - 0.04, from, 'side');
    w.add('tShape', from + MOVE, Math.max(from + MOVE, turns[0] - MOVE / 2), 'side', apart(a));
    if (s.halfTwists >= 3) {
      w.add('wrapped', turns[0] + MOVE / 2, Math.max(turns[0] + MOVE / 2, turns[1] - MOVE / 2), 'direct');
      w.add('tShape', turns[1] + MOVE / 2, to - MOVE, 'direct', apart(b));
    } else w.add('tShape', turns[0] + MOVE / 2, to - MOVE, 'side', apart(b));
    if (isLast) return;
    w.add('tShape', to, to + 0.02, 'side');
    // arms held forward make the lateral moment the greatest, and a straight body turns about it without wobbling off
    if (stretches[i + 1].kind === 'straight') w.add('armsForward', to + 0.2, T - 0.3, 'direct');
  });
  finish(w, spec, T);
  return w.blocks;
}

function finish(w: PlanWriter, spec: DraftSpec, T: number): void {
  const twists = spec.halfTwists.some((n) => n > 0);
  const arms = twists ? 'side' : 'front';
  if (spec.landing === 'headFirst') w.add('diveEntry', T - 0.08, T, arms);
  else if (spec.landing === 'body' || spec.surface === 'water') w.add('straight', T - 0.06, T, arms);
  else
    w.add('landing', T - 0.06, T, arms, {
      hipFlexion: 20 * RAD,
      kneeFlexion: 20 * RAD,
      anklePlantarFlexion: 0,
      lumbarFlexion: 0,
      ...(twists ? { shoulderPlane: 0 } : {}),
    });
}
