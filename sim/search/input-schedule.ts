/**
 * Inputs of the schedule: times and angles of blocks and keys. A block has its start and end, and the move into it:
 * "moveStart" shifts the whole move (the end of the block before and the start of this one), "moveTime" is how long it
 * takes from where it starts. Times stay seconds from the event they are anchored to.
 */

import { RAD } from '../math/angles.ts';
import { sideOf, withoutSide } from '../math/side.ts';
import { spell } from '../math/spell.ts';
import { anglesNamed, makeBody } from '../skill/build-skill.ts';
import type { BlockSpec, NamedPose, SkillSpec } from '../skill/skill-spec.ts';
import type { Input } from './input.ts';

/** A move is never quicker than this, s; faster ones look like jumps. */
const LEAST_MOVE = 0.02;
/** Widest time of a key or edge that is free on one side, s from its event. */
const FAR = 3;

export function listScheduleInputs(spec: SkillSpec): Input[] {
  return [
    ...spec.blocks.flatMap((b, i) => [...blockTimes(spec, i), ...ownAngles(b).map((name) => blockAngle(b, i, name))]),
    ...spec.keys.flatMap((_, i) => keyInputs(spec, i)),
  ];
}

/** Both sides as one only where no side has an adjustment of its own, which putting both would take away. */
function ownAngles({ pose, adjust }: BlockSpec): string[] {
  const names = Object.keys({ ...pose, ...adjust });
  return names.filter((name) => !(`${name}L` in adjust) && !(`${name}R` in adjust));
}

/** "block:2.angle:hipFlexion" and "shape:wrapped.angle:elbowFlexion" for any angle of the body. */
export function scheduleInput(spec: SkillSpec, id: string): Input | undefined {
  const [, what, which, name] = /^(block|shape):([^.]+)\.angle:(\w+)$/.exec(id) ?? [];
  if (!name) return undefined;
  anglesNamed(makeBody(spec.athlete), name, id);
  if (what === 'shape') return shapeAngle(spec, which, name);
  const i = Number(which) - 1;
  return Number.isInteger(i) && spec.blocks[i] ? blockAngle(spec.blocks[i], i, name) : undefined;
}

function blockTimes(spec: SkillSpec, i: number): Input[] {
  const b = spec.blocks[i];
  const before: BlockSpec | undefined = spec.blocks[i - 1];
  const after: BlockSpec | undefined = spec.blocks[i + 1];
  const n = `block:${i + 1}`;
  const name = `block ${i + 1} (${b.shape})`;
  const withBlocks = (s: SkillSpec, changes: Readonly<Record<number, Partial<BlockSpec>>>): SkillSpec => ({
    ...s,
    blocks: s.blocks.map((old, k) => (changes[k] ? { ...old, ...changes[k] } : old)),
  });
  const time = (id: string, label: string, value: number, low: number, high: number, put: Input['put']): Input => ({
    id: `${n}.${id}`,
    label: `${label} of ${name}`,
    unit: 's',
    level: 'schedule',
    value,
    range: [Math.min(low, value), Math.max(high, value)],
    scale: 0.005,
    put,
  });
  // bounds hold where both times are anchored to one event; the compiler refuses the rest
  const one = (x: BlockSpec['from'] | undefined, y: BlockSpec['from']): x is BlockSpec['from'] =>
    x !== undefined && x.anchor === y.anchor;
  const startLow = one(before?.to, b.from) ? before.to.s + LEAST_MOVE : b.from.s - FAR;
  const startHigh = one(b.to, b.from) ? b.to.s : b.from.s + FAR;
  const endHigh = one(after?.from, b.to) ? after.from.s - LEAST_MOVE : b.to.s + FAR;
  const endLow = one(b.from, b.to) ? b.from.s : b.to.s - FAR;
  const out = [
    time('start', 'start', b.from.s, startLow, startHigh, (s, v) =>
      withBlocks(s, { [i]: { from: { ...s.blocks[i].from, s: v } } }),
    ),
    time('end', 'end', b.to.s, endLow, endHigh, (s, v) => withBlocks(s, { [i]: { to: { ...s.blocks[i].to, s: v } } })),
  ];
  if (before && one(before.to, b.from)) {
    const move = b.from.s - before.to.s;
    const low = one(before.from, before.to) ? before.from.s : before.to.s - FAR;
    out.push(
      time('moveStart', 'start of the move into the shape', before.to.s, low, startHigh - move, (s, v) => {
        const shift = v - s.blocks[i - 1].to.s;
        return withBlocks(s, {
          [i - 1]: { to: { ...s.blocks[i - 1].to, s: v } },
          [i]: { from: { ...s.blocks[i].from, s: s.blocks[i].from.s + shift } },
        });
      }),
      time('moveTime', 'duration of the move into the shape', move, LEAST_MOVE, startHigh - before.to.s, (s, v) =>
        withBlocks(s, { [i]: { from: { ...s.blocks[i].from, s: s.blocks[i - 1].to.s + v } } }),
      ),
    );
  }
  return out;
}

/** As the block has it: its own adjustment, then the shape; a side named on its own wins. */
function angleOf(b: BlockSpec, name: string): number {
  const both = withoutSide(name);
  for (const pose of [b.adjust, b.pose])
    for (const n of sideOf(name) ? [name, both] : [name, `${name}R`]) if (Object.hasOwn(pose, n)) return pose[n];
  return 0;
}

/** Both sides named: what one side had of its own goes. */
function adjusted(adjust: NamedPose, name: string, value: number): NamedPose {
  const out: Record<string, number> = { ...adjust };
  if (!sideOf(name)) {
    delete out[`${name}L`];
    delete out[`${name}R`];
  }
  out[name] = value;
  return out;
}

function blockAngle(b: BlockSpec, i: number, name: string): Input {
  return angleInput(
    name,
    `block:${i + 1}.angle:${name}`,
    `${spell(name)} in block ${i + 1} (${b.shape})`,
    angleOf(b, name),
    (old, k, v) => (k === i ? { ...old, adjust: adjusted(old.adjust, name, v) } : old),
  );
}

/** One angle in all blocks of a shape. */
function shapeAngle(spec: SkillSpec, shape: string, name: string): Input | undefined {
  const first = spec.blocks.find((b) => b.shape === shape);
  if (!first) return undefined;
  return angleInput(
    name,
    `shape:${shape}.angle:${name}`,
    `${spell(name)} in every ${shape}`,
    angleOf(first, name),
    (old, _, v) => (old.shape === shape ? { ...old, adjust: adjusted(old.adjust, name, v) } : old),
  );
}

function angleInput(
  angle: string,
  id: string,
  label: string,
  value: number,
  change: (b: BlockSpec, k: number, v: number) => BlockSpec,
): Input {
  return {
    id,
    label,
    unit: 'rad',
    level: 'schedule',
    angle,
    value,
    range: [-2 * Math.PI, 2 * Math.PI],
    scale: RAD,
    put: (s, v) => ({ ...s, blocks: s.blocks.map((b, k) => change(b, k, v)) }),
  };
}

function keyInputs(spec: SkillSpec, i: number): Input[] {
  const key = spec.keys[i];
  const own = spec.keys.filter((k) => k.angle === key.angle && k.at.anchor === key.at.anchor);
  const at = own.indexOf(key);
  const low = own[at - 1] ? own[at - 1].at.s + LEAST_MOVE : key.at.s - FAR;
  const high = own[at + 1] ? own[at + 1].at.s - LEAST_MOVE : key.at.s + FAR;
  const withKey = (s: SkillSpec, change: Partial<SkillSpec['keys'][number]>): SkillSpec => ({
    ...s,
    keys: s.keys.map((k, j) => (j === i ? { ...k, ...change } : k)),
  });
  const input = (
    id: string,
    label: string,
    rest: Pick<Input, 'unit' | 'angle' | 'value' | 'range' | 'scale' | 'put'>,
  ): Input => ({
    id: `key:${i + 1}.${id}`,
    label: `${label} of key ${i + 1} (${spell(key.angle)})`,
    level: 'schedule',
    ...rest,
  });
  return [
    input('time', 'time', {
      unit: 's',
      value: key.at.s,
      range: [Math.min(low, key.at.s), Math.max(high, key.at.s)],
      scale: 0.005,
      put: (s, v) => withKey(s, { at: { ...s.keys[i].at, s: v } }),
    }),
    input('angle', 'angle', {
      unit: 'rad',
      angle: key.angle,
      value: key.value,
      range: [-2 * Math.PI, 2 * Math.PI],
      scale: RAD,
      put: (s, v) => withKey(s, { value: v }),
    }),
  ];
}
