/** Writes the blocks and keys of a drafted plan one after the other, rounded as a file has them. Times in s from take-off, angles in rad. */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import type { ArmPath } from '../schedule/schedule.ts';
import type { Move } from './draft-style.ts';
import type { BlockSpec, NamedPose, SkillSpec } from './skill-spec.ts';

/** A move of the plan, and when it goes on. */
export interface PlacedMove {
  readonly move: Move;
  readonly from: number;
  readonly to: number;
}

const SHAPES_NEEDED = [
  'straight',
  'armsOverhead',
  'tShape',
  'wrapped',
  'tuck',
  'pike',
  'landing',
  'diveEntry',
  'armsForward',
  'oneUpOneDown',
];
/** Legs together: the hips are apart, so the thighs come in. */
const TOGETHER: NamedPose = { hipAbduction: -3 * RAD };

export function poseIn(shapes: Readonly<Record<string, NamedPose>>, shape: string): NamedPose {
  const pose = shapes[shape];
  if (!pose) throw new FieldError('shapes', shape, `shapes with the ids ${SHAPES_NEEDED.join(', ')}`);
  return pose;
}

export const round = (x: number, per: number): number => Math.round(x * per) / per;
const degrees = (angle: number): number => round(angle / RAD, 10) * RAD;

export class PlanWriter {
  readonly blocks: BlockSpec[] = [];
  readonly keys: SkillSpec['keys'][number][] = [];
  readonly moves: PlacedMove[] = [];
  private readonly shapes: Readonly<Record<string, NamedPose>>;

  constructor(shapes: Readonly<Record<string, NamedPose>>) {
    this.shapes = shapes;
  }

  get end(): number {
    return this.blocks[this.blocks.length - 1]?.to.s ?? Number.NEGATIVE_INFINITY;
  }

  /** Blocks follow each other: one that would begin too early waits. */
  add(shape: string, from: number, to: number, arms: ArmPath, adjust: NamedPose = {}, move?: Move): void {
    const before = this.end;
    const start = round(Math.max(from, before + 0.06), 1000);
    const end = round(Math.max(to, start + 0.005), 1000);
    const at = (s: number) => ({ anchor: 'takeoff' as const, s });
    const whole = Object.fromEntries(Object.entries({ ...TOGETHER, ...adjust }).map(([name, v]) => [name, degrees(v)]));
    this.blocks.push({ shape, pose: poseIn(this.shapes, shape), adjust: whole, from: at(start), to: at(end), arms });
    if (move) this.moves.push({ move, from: before, to: start });
  }

  key(angle: string, s: number, value: number, kind: 'stop' | 'pass'): void {
    this.keys.push({ angle, at: { anchor: 'takeoff', s }, value: degrees(value), kind });
  }
}
