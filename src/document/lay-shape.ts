/**
 * Shapes laid on the ruler: "tuck by a third, open at two". A shape is reached at the time asked for, the move into it takes
 * the time asked for, and what was held there before ends where the move begins. Seconds from take-off.
 */
import type { FileBlock, FileTime, ShapeData, SkillFile } from '../../sim/index.ts';
import { addBlock, changeBlock, setBlockEdge } from './edits.ts';
import { getSchedule } from './phases.ts';
import { getSourcesIn, moveSources } from './pose-edits.ts';
import { SHORTEST_MOVE } from './spans.ts';
import { type AnchorSeconds, clamp, moveTime, resolveTime } from './times.ts';

interface Laying {
  readonly shape: string;
  /** when the shape is reached, s */
  readonly at: number;
  /** time of the move into it, s */
  readonly moveS: number;
  readonly arms: NonNullable<FileBlock['arms']>;
}

/** A shape that is laid into a move is held this long, s, where there is room. */
const HOLD = 0.1;

const atTakeoff = (s: number): FileTime => ({ anchor: 'takeoff', s: Math.round(s * 1000) / 1000 });

export function layShape(file: SkillFile, laying: Laying, anchors: AnchorSeconds): SkillFile {
  const { shape, at, moveS, arms } = laying;
  const blocks = getSchedule(file).blocks ?? [];
  const from = (i: number): number => resolveTime(blocks[i].from, anchors);
  const to = (i: number): number => resolveTime(blocks[i].to, anchors);
  const held = blocks.findIndex((_, i) => at >= from(i) && at <= to(i));
  if (held >= 0) {
    // no room for a move before it: another shape in its place
    if (at - SHORTEST_MOVE < from(held)) return changeBlock(file, held, { shape, arms, adjustDeg: undefined });
    const rest = { shape, from: atTakeoff(at), to: blocks[held].to, arms };
    return addBlock(endBefore(file, held, at, moveS, anchors), held + 1, rest);
  }
  const next = blocks.findIndex((_, i) => from(i) > at);
  const index = next < 0 ? blocks.length : next;
  const low = index > 0 ? from(index - 1) + SHORTEST_MOVE : Number.NEGATIVE_INFINITY;
  const high = next < 0 ? Number.POSITIVE_INFINITY : from(next) - SHORTEST_MOVE;
  if (low > high) return file;
  const start = clamp(at, low, high);
  const block = { shape, from: atTakeoff(start), to: atTakeoff(Math.min(start + HOLD, high)), arms };
  return addBlock(index > 0 ? endBefore(file, index - 1, start, moveS, anchors) : file, index, block);
}

/** The shape ends so that the move after it takes `moveS`; it begins where it did. */
function endBefore(file: SkillFile, index: number, s: number, moveS: number, anchors: AnchorSeconds): SkillFile {
  const block = getSchedule(file).blocks?.[index];
  if (!block) return file;
  const end = clamp(s - moveS, resolveTime(block.from, anchors), s - SHORTEST_MOVE);
  return setBlockEdge(file, index, 'to', moveTime(block.to, end, anchors));
}

/** The move into a shape drawn out or together: the shape before it ends earlier or later. */
export function setMoveTime(file: SkillFile, index: number, moveS: number, anchors: AnchorSeconds): SkillFile {
  const block = getSchedule(file).blocks?.[index];
  return block && index > 0 ? endBefore(file, index - 1, resolveTime(block.from, anchors), moveS, anchors) : file;
}

/** A shape moved along time with all that is in it, as far as its neighbours allow. */
export function moveBlock(file: SkillFile, index: number, byS: number, anchors: AnchorSeconds): SkillFile {
  const block = getSchedule(file).blocks?.[index];
  if (!block) return file;
  const [from, to] = [resolveTime(block.from, anchors), resolveTime(block.to, anchors)];
  const inside = getSourcesIn(file, from, to, anchors).filter((one) => one.kind === 'key' || one.block === index);
  return moveSources(file, inside, byS, anchors);
}

/** A shape of the user's own goes into the file that uses it, so that the file is complete. */
export function carryShape(file: SkillFile, id: string, shape: ShapeData): SkillFile {
  return file.shapes?.[id] === shape ? file : { ...file, shapes: { ...file.shapes, [id]: shape } };
}
