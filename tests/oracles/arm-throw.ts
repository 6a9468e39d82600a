/**
 * The body of L1 and L2: trunk, legs and head as one part of 63 kg with its mass centre at the origin, moments about X
 * 10.0, Y 1.0, Z 9.5; shoulders at Y 0.45, Z +-0.18 m; arms slender rods of 3.5 kg and 0.60 m that abduct in the frontal
 * plane (Y-Z). Elevation 0 hangs down, 180 is overhead. Source: C, the project's own figures, computed twice.
 */
import type { Shape } from './euler-parameters.ts';
import { cosine, type Jet, minimumJerk, plus, scaled, sine, through, variable } from './jet.ts';
import type { Part } from './planar.ts';

export const THROW = {
  mass: 63,
  I: [10.0, 1.0, 9.5],
  shoulder: [0, 0.45, 0.18],
  armMass: 3.5,
  armLength: 0.6,
} as const;
const ROD = (THROW.armMass * THROW.armLength ** 2) / 12;

/** Elevations [right, left] at share s of the throw: right 0 to 180, left 180 to 0. */
export const elevations = (s: number): [Jet, Jet] => {
  const swing = scaled(minimumJerk(s), Math.PI);
  return [swing, plus([Math.PI, 0, 0], scaled(swing, -1))];
};

/** Centre of an arm: [y, z], side +1 right. */
function centre(elevation: Jet, side: 1 | -1): [Jet, Jet] {
  const half = THROW.armLength / 2;
  return [
    plus([THROW.shoulder[1], 0, 0], scaled(cosine(elevation), -half)),
    scaled(plus([THROW.shoulder[2], 0, 0], scaled(sine(elevation), half)), side),
  ];
}

/** The parts in the trunk's frontal plane; the turn from Y to Z is the tilt (head to the right). */
export function throwParts(s: number): Part[] {
  const u = variable(s);
  const [right, left] = elevations(s).map((e) => through(e, u));
  const arm = (e: Jet, side: 1 | -1): Part => {
    const [y, z] = centre(e, side);
    return { m: THROW.armMass, J: ROD, x: y, y: z, angle: scaled(e, -side) };
  };
  const zero: Jet = [0, 0, 0];
  return [{ m: THROW.mass, J: THROW.I[0], x: zero, y: zero, angle: zero }, arm(right, 1), arm(left, -1)];
}

/** Tensor about the common mass centre and the arms' momentum, at t of a throw that lasts `duration`. */
export function throwShape(duration: number): (t: number) => Shape {
  return (t) => {
    const time: Jet = [t / duration, 1 / duration, 0];
    const e = elevations(t / duration).map((x) => through(x, time));
    const [m, M] = [THROW.armMass, THROW.mass + 2 * THROW.armMass];
    const arms = [centre(e[0], 1), centre(e[1], -1)];
    const cy = (m / M) * (arms[0][0][0] + arms[1][0][0]);
    const cz = (m / M) * (arms[0][1][0] + arms[1][1][0]);
    const vy = (m / M) * (arms[0][0][1] + arms[1][0][1]);
    const vz = (m / M) * (arms[0][1][1] + arms[1][1][1]);
    let x = THROW.I[0] + THROW.mass * (cy * cy + cz * cz);
    let y = THROW.I[1] + THROW.mass * cz * cz;
    let z = THROW.I[2] + THROW.mass * cy * cy;
    let Iyz = -THROW.mass * cy * cz;
    let hx = THROW.mass * (cy * vz - cz * vy);
    arms.forEach(([ay, az], i) => {
      const side = i === 0 ? 1 : -1;
      const [ry, rz, uy, uz] = [ay[0] - cy, az[0] - cz, ay[1] - vy, az[1] - vz];
      // the rod's line in the frontal plane: (y, z) = (-cos e, side sin e)
      const [ly, lz] = [-Math.cos(e[i][0]), side * Math.sin(e[i][0])];
      x += ROD + m * (ry * ry + rz * rz);
      y += ROD * lz * lz + m * rz * rz;
      z += ROD * ly * ly + m * ry * ry;
      Iyz += -ROD * ly * lz - m * ry * rz;
      hx += ROD * -side * e[i][1] + m * (ry * uz - rz * uy);
    });
    // the trunk moves against the common centre with -v, already in the sum above through its own place -c
    return { I: [x, y, z], Iyz, hrel: [hx, 0, 0] };
  };
}
