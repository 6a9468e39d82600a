/** Forces as arrows, to one scale: from where they act, with their size in words. px, y down. */
import type { Vec3 } from '../../sim/index.ts';
import { straightArrow } from './marks.ts';
import type { DrawItem, TextItem } from './scene.ts';
import { dot, type View } from './view.ts';

/** px a body weight. */
export const FORCE_PX = { bench: 26, tablet: 19 } as const;

interface ForceArrow {
  /** where it acts, px */
  readonly x: number;
  readonly y: number;
  /** in W, body weights */
  readonly force: Vec3;
  /** its size is drawn bold, the rest of the words are not */
  readonly size: string;
  readonly words: string;
  readonly name: 'contact' | 'weight';
}

interface ArrowPlace {
  readonly view: View;
  readonly pxPerBodyWeight: number;
  /** of the picture: words stay inside */
  readonly width: number;
  readonly textSize?: number;
}

/** Under this many body weights nothing is drawn. */
const LEAST = 0.05;
/** Width of a letter, share of its size: enough to keep words inside the picture. */
const LETTER = 0.56;

export function forceArrowItems(arrow: ForceArrow, place: ArrowPlace): DrawItem[] {
  const { view, pxPerBodyWeight: px } = place;
  const [dx, dy] = [dot(arrow.force, view.right) * px, -dot(arrow.force, view.up) * px];
  if (Math.hypot(dx, dy) < LEAST * px) return [];
  const [tx, ty] = [arrow.x + dx, arrow.y + dy];
  return [...straightArrow(arrow.x, arrow.y, tx, ty, 'ink', arrow.name), ...arrowWords(arrow, place, tx, ty, dx)];
}

/** Beside the tip, on the side that the arrow leans to; on the other where the picture ends. Own weight has its words at the left. */
function arrowWords(
  { size, words, name }: ForceArrow,
  { width, textSize = 13 }: ArrowPlace,
  x: number,
  y: number,
  dx: number,
): DrawItem[] {
  const room = (size.length + words.length + 2) * LETTER * textSize + 8;
  const wantsLeft = name === 'weight' || dx < 0;
  const isLeft = wantsLeft ? x - room > 0 : x + room > width;
  const at = x + (isLeft ? -8 : 8);
  const put = (text: string, shift: number, weight: number, fill: TextItem['fill']): DrawItem => ({
    kind: 'text',
    x: at + shift,
    y: y + 4,
    text,
    size: textSize,
    weight,
    fill,
    anchor: isLeft ? 'end' : 'start',
    halo: 'air',
  });
  const text = isLeft ? words : size;
  const offset = text.length * LETTER * textSize + 4;
  if (!words) return [put(size, 0, 650, 'ink')];
  // own weight is context: one tone
  if (name === 'weight') return [put(`${size} ${words}`, 0, 480, 'ink-2')];
  return isLeft
    ? [put(words, 0, 480, 'ink-2'), put(size, -offset, 650, 'ink')]
    : [put(size, 0, 650, 'ink'), put(words, offset, 480, 'ink-2')];
}
