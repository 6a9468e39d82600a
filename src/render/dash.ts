/** A line cut into dashes, for renderers that have none. */
import type { Dash, Points } from '../scene/scene.ts';

/** Pieces of the line that are drawn, bending where the line bends. */
export function dashed(points: Points, dash: Dash, closed: boolean): number[][] {
  const pieces: number[][] = [];
  const n = points.length / 2;
  if (n < 2 || !(dash[0] > 0)) return pieces;
  let step = 0;
  let left = dash[0];
  let drawing = true;
  let piece: number[] = [points[0], points[1]];
  const last = closed ? n : n - 1;
  for (let i = 0; i < last; i++) {
    const j = (i + 1) % n;
    const x = points[2 * i];
    const y = points[2 * i + 1];
    const dx = points[2 * j] - x;
    const dy = points[2 * j + 1] - y;
    const length = Math.hypot(dx, dy);
    let at = 0;
    while (length - at > left) {
      at += left;
      const px = x + (dx * at) / length;
      const py = y + (dy * at) / length;
      if (drawing) {
        piece.push(px, py);
        pieces.push(piece);
      }
      piece = [px, py];
      drawing = !drawing;
      step = (step + 1) % dash.length;
      left = Math.max(0.1, dash[step]);
    }
    left -= length - at;
    if (drawing) piece.push(points[2 * j], points[2 * j + 1]);
  }
  if (drawing && piece.length >= 4) pieces.push(piece);
  return pieces;
}
