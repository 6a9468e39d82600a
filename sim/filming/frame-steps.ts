/**
 * How far each part moves from one picture to the next: in degrees, metres and px, by its speed at the instant. How far it moves while the
 * shutter is open (blur), and how far it is read from where the middle of the body is read, because its line is read earlier or later (skew).
 */
import type { Triple } from '../math/vec3.ts';
import { type FilmCamera, pixelSpeed, projectInto, type Sightline } from './camera.ts';
import type { FilmedBody } from './filmed-body.ts';

export interface FrameSteps {
  readonly degrees: Float64Array; // (n x parts) rad a frame that the part's own segment turns
  readonly metres: Float64Array; // (n x parts) a frame
  readonly pixels: Float64Array; // (n x parts) a frame
  /** index into parts of what is fastest in the picture */
  readonly fastest: Uint8Array; // (n)
  /** px, of the fastest */
  readonly blur: Float64Array; // (n)
  /** px, the most of any part */
  readonly skew: Float64Array; // (n)
  /** where the fastest is fastest of all: a row, and the part */
  readonly most: { readonly row: number; readonly part: number };
}

export function calcFrameSteps(filmed: FilmedBody, camera: FilmCamera, s: Sightline): FrameSteps {
  const { n, parts, p_WP_W: p, v_WP_W: v } = filmed;
  const np = parts.length;
  const out = {
    degrees: new Float64Array(n * np),
    metres: new Float64Array(n * np),
    pixels: new Float64Array(n * np),
    fastest: new Uint8Array(n),
    blur: new Float64Array(n),
    skew: new Float64Array(n),
  };
  const at = new Float64Array(2);
  const middle = new Float64Array(2);
  const most = { row: 0, part: 0 };
  let peak = -1;
  for (let i = 0; i < n; i++) {
    projectInto(s, filmed.p_WScm_W, 3 * i, middle, 0);
    let best = -1;
    for (let k = 0; k < np; k++) {
      const j = np * i + k;
      const place = tripleAt(p, 3 * j);
      const speed = tripleAt(v, 3 * j);
      const px = pixelSpeed(s, place, speed)[2];
      projectInto(s, p, 3 * j, at, 0);
      out.degrees[j] = filmed.turning[j] / camera.framesHz;
      out.metres[j] = Math.hypot(...speed) / camera.framesHz;
      out.pixels[j] = px / camera.framesHz;
      out.skew[i] = Math.max(out.skew[i], (px * camera.lines * Math.abs(at[1] - middle[1])) / s.height);
      if (px > best) {
        best = px;
        out.fastest[i] = k;
      }
    }
    out.blur[i] = np > 0 ? best * camera.shutter : 0;
    if (best > peak) {
      peak = best;
      most.row = i;
      most.part = out.fastest[i];
    }
  }
  return { ...out, most };
}

const tripleAt = (a: Float64Array, o: number): Triple => [a[o], a[o + 1], a[o + 2]];
