/** What comes nearer to a rail, table or board than is asked: a ring round it, a leader, words; and the body then, dashed and hatched. px, y down. */
import type { Body } from '../../sim/index.ts';
import { outlineItems } from './figure-outline.ts';
import type { PoseFrames } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { DrawItem } from './scene.ts';

interface NearMark {
  /** what it comes near to */
  readonly x: number;
  readonly y: number;
  /** px; 9 to 11 */
  readonly r?: number;
  /** lines from the top: the first is the distance */
  readonly lines: readonly string[];
  /** where the words are: the baseline of the last line, and the side of it that the leader comes to */
  readonly words: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end' };
}

const RING = 10;
const FIRST = 16;
const NEXT = 13;
const LINE = 16;
/** The leader ends this far under the words. */
const CLEAR = 6;

export function nearMarkItems({ x, y, r = RING, lines, words }: NearMark): DrawItem[] {
  const [lx, ly] = [words.x, words.y + CLEAR];
  const length = Math.hypot(lx - x, ly - y);
  const items: DrawItem[] = [{ kind: 'circle', x, y, r, stroke: 'stop', width: 2.2, data: { near: 'ring' } }];
  if (length > r)
    items.push({
      kind: 'line',
      points: Float32Array.from([x + ((lx - x) / length) * r, y + ((ly - y) / length) * r, lx, ly]),
      stroke: 'stop',
      width: 1.4,
      data: { near: 'leader' },
    });
  lines.forEach((text, i) => {
    items.push({
      kind: 'text',
      x: words.x,
      y: words.y - (lines.length - 1 - i) * LINE,
      text,
      size: i === 0 ? FIRST : NEXT,
      weight: 650,
      fill: 'stop',
      anchor: words.anchor,
      halo: 'air',
      data: { near: 'words' },
    });
  });
  return items;
}

/** The body as it is nearest, without inner detail. */
export const nearBodyItems = (body: Body, frames: PoseFrames, place: FigurePlace): DrawItem[] =>
  outlineItems(body, frames, place, { hatchDeg: 45, dash: [6, 3] });
