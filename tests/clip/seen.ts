// Rectangles on a floor and posts on it as cameras that are known see them, in W.

import { projectInto } from '../../sim/filming/camera.ts';
import type { ClipScale, ClipSight, Sightline, Spot } from '../../sim/index.ts';
import { addScaled, cross, dot, norm, scale, sub, type Triple } from '../../sim/math/vec3.ts';
import { drawOf, normal } from './filmed.ts';

const DEG = Math.PI / 180;
export const PICTURE = { width: 1920, height: 1080 };

export interface Seen {
  readonly sightline: Sightline;
  readonly view: number;
  readonly tilt: number;
  readonly roll: number;
  readonly offSquare: number;
  readonly away: number;
  readonly pxPerM: number;
  readonly goesRight: boolean;
  readonly feetW: Triple;
  readonly feet: Spot;
  readonly scale: Extract<ClipScale, { kind: 'plane' }>;
}

export interface Asked {
  readonly posts: number;
  readonly noise: number; // px, standard deviation
  readonly widthM?: number;
  readonly depthM?: number;
  readonly viewDeg?: number;
  readonly away?: number;
  readonly eyeY?: number;
  /** square on, not rolled */
  readonly square?: boolean;
}

/** Camera `index`: held by hand before a mat on which somebody jumps. Undefined where the mat is not all in its picture. */
export function seeMat(index: number, asked: Asked): Seen | undefined {
  const next = drawOf(97, index);
  const goesRight = next() > 0.5;
  const side = goesRight ? 1 : -1;
  const [widthM, depthM] = [asked.widthM ?? 2 + 4 * next(), asked.depthM ?? 1 + 2 * next()];
  const turned = asked.square ? 0 : 1;
  const offSquare = turned * 60 * DEG * (next() - 0.5);
  const away = asked.away ?? 5 + 8 * next();
  const view = asked.viewDeg ? asked.viewDeg * DEG : (35 + 40 * next()) * DEG;
  const roll = turned * 6 * DEG * (next() - 0.5);
  const eyeY = asked.eyeY ?? 0.8 + 1.5 * next();
  const feetW: Triple = [3 * next(), 0, next() - 0.5];
  // + nearer to where the flight begins; Z of W is towards the camera where +X goes to the right
  const p_WC_W: Triple = [feetW[0] - away * Math.sin(offSquare), eyeY, feetW[2] + side * away * Math.cos(offSquare)];
  const aim: Triple = [feetW[0] + next() - 0.5, 0.6 + 0.8 * next(), feetW[2]];
  const line = sub(aim, p_WC_W);
  const forward = scale(line, 1 / norm(line));
  const flat = cross(forward, [0, 1, 0]);
  const level = scale(flat, 1 / norm(flat));
  const upright = cross(level, forward);
  const right = addScaled(scale(level, Math.cos(roll)), upright, Math.sin(roll));
  const sightline: Sightline = {
    p_WC_W,
    right,
    up: cross(right, forward),
    forward,
    focal: PICTURE.width / 2 / Math.tan(view / 2),
    ...PICTURE,
    distance: norm(line),
    p_WA_W: aim,
  };
  const spotOf = (p: Triple): Spot => {
    const at = new Float64Array(2);
    projectInto(sightline, p, 0, at, 0);
    const off = asked.noise > 0 ? [asked.noise * normal(next), asked.noise * normal(next)] : [0, 0];
    return [at[0] + off[0], at[1] + off[1]];
  };
  // the mat lies about the feet, its near edge along X
  const corner = (along: number, deep: number): Triple => [
    feetW[0] + side * (along - 0.5) * widthM,
    0,
    feetW[2] + side * (0.5 - deep) * depthM,
  ];
  const corners = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)].map(spotOf) as [Spot, Spot, Spot, Spot];
  if (corners.some(([x, y]) => x < 0 || x > PICTURE.width || y < 0 || y > PICTURE.height)) return undefined;
  const posts = Array.from({ length: asked.posts }, (_, k) => {
    const foot = corner(k % 2, 0.9 - 0.3 * k);
    const heightM = 1 + 0.5 * k;
    return { foot: spotOf(foot), top: spotOf([foot[0], heightM, foot[2]]), heightM };
  });
  return {
    sightline,
    view,
    tilt: -Math.asin(forward[1]),
    roll,
    offSquare,
    away,
    pxPerM: sightline.focal / dot(forward, sub(feetW, p_WC_W)),
    goesRight,
    feetW,
    feet: spotOf(feetW),
    scale: { kind: 'plane', corners, widthM, depthM, ...(posts.length > 0 && { posts }) },
  };
}

export const QUANTITIES = ['tilt', 'roll', 'offSquare', 'away', 'pxPerM'] as const;
export const measuredOf = (sight: ClipSight, name: (typeof QUANTITIES)[number] | 'view') =>
  name === 'view' ? sight.view.rad : sight[name];
