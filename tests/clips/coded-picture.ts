// Pictures that say which one they are: the index as black and white blocks over all of the upright picture.
import type { ClipBand, ClipOrder, ClipShape } from './clip-order.ts';

const SIDE = 4;
/** Blocks that say nothing of the index: a picture on its side or mirrored is not read. */
const FIXED = [1, 0, 0, 1];

type Turn = NonNullable<ClipOrder['rotation']>;

/** Of a point of the upright picture, of which `width` and `height` are the file's. */
function inFile(turn: Turn, width: number, height: number, u: number, v: number): [number, number] {
  if (turn === 90) return [v, height - u];
  if (turn === 180) return [width - u, height - v];
  return turn === 270 ? [width - v, u] : [u, v];
}

function codedShapes(index: number, width: number, height: number, turn: Turn): ClipShape[] {
  const [w, h] = turn % 180 === 0 ? [width, height] : [height, width];
  const bits = [...Array.from({ length: 12 }, (_, i) => (index >> i) & 1), ...FIXED];
  return bits.map((bit, i): ClipShape => {
    const [u, v] = [((i % SIDE) * w) / SIDE, (Math.floor(i / SIDE) * h) / SIDE];
    const corners = [
      [u, v],
      [u + w / SIDE, v],
      [u + w / SIDE, v + h / SIDE],
      [u, v + h / SIDE],
    ];
    const points = corners.flatMap(([x, y]) => inFile(turn, width, height, x, y));
    return { kind: 'polygon', points, fill: bit ? '#fff' : '#000' };
  });
}

/** An order of `stampsS.length` of them, 96 × 64 where nothing else is asked. */
export function codedClip(order: Partial<ClipOrder> & Pick<ClipOrder, 'codec' | 'stampsS'>): ClipOrder {
  const { width = 96, height = 64, rotation = 0 } = order;
  const draw = order.stampsS.map((_, k): ClipBand[] => [
    { rows: [0, height], instants: [codedShapes(k, width, height, rotation)] },
  ]);
  return { bitsPerPx: 1.5, ...order, width, height, draw };
}
