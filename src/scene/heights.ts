/**
 * How heights in metres become px above the floor. Flights that fit are drawn to one scale. Taller ones keep the first
 * metre or so, where the feet leave and land, and have the rest compressed; the break is marked and said in a note.
 */
import type { DrawItem, Token } from './scene.ts';

interface HeightScale {
  /** px of W's Y = 0 from the top of the picture */
  readonly floorY: number;
  /** px per metre of bodies and of the uncompressed part */
  readonly scale: number;
  /** height above which heights are compressed, m; Infinity: nowhere */
  readonly breakY: number;
  /** px per metre above the break */
  readonly compressed: number;
}

export const HEIGHT_NOTE = 'Heights above the break mark are compressed; bodies keep their size.';

/** `top` is the highest point that must be seen of a mass centre, `low` the highest mass centre at an end of the flight. */
export function fitHeights(floorY: number, scale: number, top: number, low: number): HeightScale {
  // an upside-down body with pointed feet, or one with arms overhead, reaches this far above its mass centre
  const headroom = 1.15;
  // as much of it as is seldom used may leave the picture before a flight is compressed
  if ((top + headroom - 0.2) * scale <= floorY)
    return { floorY, scale, breakY: Number.POSITIVE_INFINITY, compressed: scale };
  const breakY = Math.min(low, Math.max(0.3, floorY / scale - headroom - 0.4));
  const left = floorY - (breakY + headroom) * scale;
  return { floorY, scale, breakY, compressed: Math.max(4, left / Math.max(0.1, top - breakY)) };
}

/** px from the top of the picture. */
export function heightPx(h: HeightScale, y: number): number {
  return y <= h.breakY ? h.floorY - y * h.scale : h.floorY - h.breakY * h.scale - (y - h.breakY) * h.compressed;
}

/** Room of a picture's title at its top, px. */
const TITLE = 24;

/** What one mark counts, m, and its name. */
export interface LengthMarks {
  readonly unit: string;
  readonly perUnitM: number;
}

interface HeightLabels {
  /** right edge of the labels, px; the lines begin after it */
  readonly labelX: number;
  readonly from: number;
  readonly to: number;
  readonly size: number;
  /** default: metres */
  readonly marks?: LengthMarks;
}

export function heightLines(h: HeightScale, place: HeightLabels): { lines: DrawItem[]; labels: DrawItem[] } {
  const lines: DrawItem[] = [];
  const labels: DrawItem[] = [];
  const { unit, perUnitM } = place.marks ?? { unit: 'm', perUnitM: 1 };
  const least = Number.isFinite(h.breakY) ? 26 : perUnitM < 1 ? 40 : 0;
  const step = [1, 2, 5, 10].find((n) => n * perUnitM * h.compressed >= least) ?? 20;
  for (let n = step; n * perUnitM < 100; n += step) {
    const y = n * perUnitM;
    const py = heightPx(h, y);
    if (py < place.size) break;
    lines.push(hairline(place.from, py, place.to, py));
    // a label this high would stand in the picture's title
    if (py < TITLE + place.size / 2) continue;
    // and one this low would be cut by the floor
    if (py + place.size / 2 > heightPx(h, 0)) continue;
    labels.push({
      kind: 'text',
      x: place.labelX,
      y: py + place.size * 0.36,
      text: `${n} ${unit}`,
      size: place.size,
      weight: 480,
      fill: 'ink-3',
      anchor: 'end',
      data: { heightM: y },
    });
  }
  if (Number.isFinite(h.breakY)) lines.push(...breakMark(place.from + 4, heightPx(h, h.breakY)));
  return { lines, labels };
}

function breakMark(x: number, y: number): DrawItem[] {
  const zig = (dy: number): DrawItem => ({
    kind: 'line',
    points: Float32Array.from([x - 8, y + dy + 3, x - 3, y + dy - 3, x + 3, y + dy + 3, x + 8, y + dy - 3]),
    stroke: 'ink-2',
    width: 1.4,
    data: { mark: 'break' },
  });
  return [zig(-2.5), zig(2.5)];
}

export function hairline(x0: number, y0: number, x1: number, y1: number, stroke: Token = 'rule', width = 1): DrawItem {
  return { kind: 'line', points: Float32Array.from([x0, y0, x1, y1]), stroke, width };
}
