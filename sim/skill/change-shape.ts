/**
 * A held stretch given other values: in the shapes that hold it, or by keys of the angles where they are keyed themselves. Everything else of the skill
 * stays as it is written. SI, radians; s from take-off.
 */
import type { Flight } from '../flight/flight.ts';
import type { FromTo } from '../math/from-to.ts';
import type { AnchoredTime } from '../schedule/schedule.ts';
import { anglesNamed } from './build-skill.ts';
import { edgesOf, type HeldStretch, poseAt, secondsOf } from './held-stretch.ts';
import type { LaunchedSkill } from './launch.ts';
import type { BlockSpec, NamedPose, SkillSpec } from './skill-spec.ts';

export interface FlownSpec {
  readonly spec: SkillSpec;
  /** the spec, built and launched, and its flight */
  readonly skill: LaunchedSkill;
  readonly flight: Flight;
}

interface ShapeChange extends FlownSpec {
  readonly held: HeldStretch;
  readonly values: ReadonlyMap<number, number>;
  /** s of the change from the own shape to the other at the beginning, and back at the end; 0: the move there goes straight to it */
  readonly into: number;
  readonly back: number;
}

type Changed = Pick<SkillSpec, 'blocks' | 'keys'>;
type KeySpec = SkillSpec['keys'][number];
const SAME_TIME = 1e-9;

const seconds = (s: number): AnchoredTime => ({ anchor: 'takeoff', s });

/** Where the other shape is held. */
export const heldIn = ({ held, into, back }: Pick<ShapeChange, 'held' | 'into' | 'back'>): FromTo => ({
  from: held.from + into,
  to: held.to - back,
});

export function changeShape(change: ShapeChange): Changed {
  const block = isKeyed(change) ? undefined : blockThatHolds(change);
  return block === undefined ? changeKeys(change) : changeBlock(change, block);
}

function isKeyed({ skill, flight, held, values }: ShapeChange): boolean {
  const at = secondsOf(skill, flight);
  return skill.schedule.keys.some(
    (k) => values.has(k.angle) && at(k.at) >= held.from - SAME_TIME && at(k.at) <= held.to + SAME_TIME,
  );
}

/** The one shape that is held all through the stretch. */
function blockThatHolds({ skill, flight, held }: ShapeChange): number | undefined {
  const at = secondsOf(skill, flight);
  const near = skill.schedule.blocks.flatMap((b, i) =>
    at(b.to) >= held.from - SAME_TIME && at(b.from) <= held.to + SAME_TIME ? [i] : [],
  );
  const [first] = near;
  if (near.length !== 1) return undefined;
  const { from, to } = skill.schedule.blocks[first];
  return at(from) <= held.from + SAME_TIME && at(to) >= held.to - SAME_TIME ? first : undefined;
}

function changeBlock(change: ShapeChange, index: number): Changed {
  const { spec, skill, flight, values, into, back } = change;
  const at = secondsOf(skill, flight);
  const block = spec.blocks[index];
  const { from, to } = heldIn(change);
  const adjust: Record<string, number> = { ...block.adjust };
  for (const [angle, value] of values) adjust[skill.body.angles[angle].name] = value;
  const other: BlockSpec = {
    ...block,
    adjust: withoutHidden(adjust, skill),
    // arms that stay as they are keep their path, and between two shapes that hold them alike have none
    ...(into > 0 || skill.body.shoulders.some((s) => values.has(s.elevation)) ? { arms: 'direct' as const } : {}),
    ...(into > 0 ? { from: seconds(from) } : {}),
    ...(back > 0 ? { to: seconds(to) } : {}),
  };
  const start = at(block.from) < 0 ? seconds(0) : block.from;
  // a shape that lasts beyond the landing is come back to at it
  const end = at(block.to) > flight.duration + SAME_TIME ? seconds(flight.duration) : block.to;
  const pieces = [
    ...(into > 0 ? [{ ...block, to: start }] : []),
    other,
    ...(back > 0 ? [{ ...block, from: end, arms: 'direct' as const }] : []),
  ];
  return { blocks: [...spec.blocks.slice(0, index), ...pieces, ...spec.blocks.slice(index + 1)], keys: spec.keys };
}

/** A name for both sides says nothing any more where each side has its own. */
function withoutHidden(adjust: NamedPose, { body }: LaunchedSkill): NamedPose {
  return Object.fromEntries(
    Object.entries(adjust).filter(
      ([name]) => body.angles.some((a) => a.name === name) || !(`${name}L` in adjust && `${name}R` in adjust),
    ),
  );
}

/** By keys of the angles alone: they take the place of the shapes' own at the same time. */
function changeKeys(change: ShapeChange): Changed {
  const { spec, skill, flight, held, values } = change;
  const at = secondsOf(skill, flight);
  const angles = new Set(values.keys());
  const { from, to } = heldIn(change);
  const times = [held.from, from, to, held.to, ...edgesOf(skill, flight, angles)]
    .filter((t) => t >= held.from - SAME_TIME && t <= held.to + SAME_TIME)
    .sort((a, b) => a - b)
    .filter((t, i, all) => i === 0 || t - all[i - 1] > SAME_TIME);
  const own = times.map((t) => poseAt(flight, t));
  const rest: KeySpec[] = [];
  const kept = new Map<number, { t: number; key: KeySpec }[]>([...angles].map((a) => [a, []]));
  for (const key of spec.keys) {
    const of = anglesNamed(skill.body, key.angle, key.angle);
    if (!of.every((a) => angles.has(a))) rest.push(key);
    else if (at(key.at) < held.from - SAME_TIME || at(key.at) > held.to + SAME_TIME)
      for (const a of of) kept.get(a)?.push({ t: at(key.at), key: { ...key, angle: skill.body.angles[a].name } });
  }
  const keys = [...angles].flatMap((a) => {
    const name = skill.body.angles[a].name;
    const value = values.get(a) ?? 0;
    const added = times.map((t, i) => {
      // a share of the way: a key of a shape that falls into the move is passed through
      const there = change.into > 0 ? eased((t - held.from) / change.into) : 1;
      const share = there * (change.back > 0 ? eased((held.to - t) / change.back) : 1);
      const kind: KeySpec['kind'] = share > 0 && share < 1 ? 'pass' : 'stop';
      return { t, key: { angle: name, at: seconds(t), value: own[i][a] + share * (value - own[i][a]), kind } };
    });
    return [...(kept.get(a) ?? []), ...added].sort((x, y) => x.t - y.t).map(({ key }) => key);
  });
  return { blocks: spec.blocks, keys: [...rest, ...keys] };
}

/** Minimum jerk from 0 to 1. */
function eased(share: number): number {
  const u = Math.min(1, Math.max(0, share));
  return u ** 3 * (10 - 15 * u + 6 * u * u);
}
