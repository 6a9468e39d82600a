/** The room for error as a coach reads it on a card: the smaller side, rounded down. */
import { DEG } from '../../../sim/math/angles.ts';
import type { RoomBar } from '../../engine/room.ts';
import { cardTexts } from './card-words.ts';

const t = cardTexts.room;

/** `shapeOf`: the word of a block's shape. Empty where there is none to state. */
export function wordRoom(bars: readonly RoomBar[], shapeOf: (block: number) => string): string[] {
  return bars.flatMap((bar) => (bar.by > 0 ? [wordBar(bar, shapeOf)] : [])).filter((text) => text !== '');
}

function wordBar({ kind, by, input, block, angle }: RoomBar, shapeOf: (block: number) => string): string {
  if (kind === 'push') {
    const v = by >= 0.1 ? floorTo(by, 1) : floorTo(by, 2);
    return Number(v) > 0 ? t.push(v) : '';
  }
  if (kind === 'lean') {
    const deg = by * DEG;
    const text = deg >= 2 ? floorTo(deg, 0) : floorTo(deg, 1);
    if (!(Number(text) > 0)) return '';
    return /tilt$/.test(input) ? t.tilt(text) : t.lean(text);
  }
  const s = by >= 0.01 ? t.seconds(floorTo(by, 2)) : t.lessS;
  if (block !== undefined) {
    const shape = shapeOf(block);
    return shape ? t.into(shape, s) : '';
  }
  return angle ? wordLimb(angle, s) : '';
}

function wordLimb(angle: string, s: string): string {
  const [, one] = /([LR])$/.exec(angle) ?? [];
  const side = one === 'L' || one === 'R' ? t.sides[one] : t.sides.both;
  if (/^(shoulder|elbow|forearm|wrist)/.test(angle)) return t.arm(side, one ? t.limbs.arm : t.limbs.arms, s);
  if (/^(hip|knee|ankle)/.test(angle)) return t.arm(side, one ? t.limbs.leg : t.limbs.legs, s);
  return t.trunk(s);
}

/** What is said is never more than there is. */
const floorTo = (value: number, decimals: number): string => {
  const unit = 10 ** decimals;
  return (Math.floor(value * unit + 1e-9) / unit).toFixed(decimals);
};
