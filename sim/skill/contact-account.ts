/**
 * What a contact gives and takes. Energies and momenta of both ends are those of the two flights; what the force does over time is summed row by row (Boole's rule)
 * from force, speed and place, and has to come to the same.
 */
import type { Body, Vec3 } from '../body/body.ts';
import { uniformSum } from '../math/uniform-slope.ts';
import { groupsOf, momentumByGroup } from '../motion/momentum.ts';
import { makeState } from '../motion/state.ts';
import type { ContactMotion } from './contact-motion.ts';
import type { CourseRows } from './contact-rows.ts';

/** J, of the whole body */
interface ContactEnergy {
  /** of the mass centre */
  readonly moving: number;
  /** turning and shape: all kinetic energy about the mass centre */
  readonly turning: number;
  /** over the mass centre as the contact begins */
  readonly height: number;
}

export interface ContactAccount {
  readonly before: ContactEnergy;
  readonly after: ContactEnergy;
  /** J/kg: net of what legs or arms gave or took, as the place does no work and a bed gives back what it took */
  readonly work: number;
  /** J/kg brought along: moving and turning */
  readonly brought: number;
  /** m/s and kg m2/s that the contact gave */
  readonly gave: { readonly v_W: Vec3; readonly h_Scm_W: Vec3 };
  /** J/kg that the flight after has of height, and the force does not give (its mass centre is not where the force brings it) */
  readonly open: number;
  /** share of the scale (the largest sum of the parts' sizes) that the sums over time miss */
  readonly misses: { readonly energy: number; readonly momentum: number };
}

interface Taken {
  readonly body: Body;
  readonly gravity: number;
  readonly rows: CourseRows;
  readonly J: Vec3;
  readonly v0: Vec3;
  readonly v1: Vec3;
  readonly h0: Vec3;
  readonly h1: Vec3;
  readonly motion: ContactMotion;
  readonly moved: Vec3;
  readonly gap: Vec3;
}

export function calcContactAccount(c: Taken): ContactAccount {
  const { body, gravity: g, rows, v0, v1, h0, h1, motion } = c;
  const m = body.mass;
  const state = makeState(body);
  const angles = new Float64Array(body.angles.length);
  const groups = new Float64Array(3 * groupsOf(body).length);
  const turningAt = (s: number): number => {
    motion.into(s, angles, state);
    return momentumByGroup(state, groups);
  };
  const square = (v: Vec3): number => v[0] ** 2 + v[1] ** 2 + v[2] ** 2;
  const before = { moving: (m / 2) * square(v0), turning: turningAt(0), height: 0 };
  const after = { moving: (m / 2) * square(v1), turning: turningAt(1), height: m * g * c.moved[1] };

  const step = rows.t[1] - rows.t[0];
  const column = (of: (i: number) => number): Float64Array => Float64Array.from({ length: rows.n }, (_, i) => of(i));
  // force times speed: what the mass centre gets
  const power = column((i) =>
    [0, 1, 2].reduce((sum, k) => sum + rows.force_W[3 * i + k] * rows.v_WScm_W[3 * i + k], 0),
  );
  const got = uniformSum(power, step);
  const wanted = after.moving - before.moving + after.height;
  const energyScale = Math.max(before.moving, after.moving + Math.abs(after.height), 1e-9);
  const turned = [0, 1, 2].map((k) =>
    uniformSum(
      column((i) => rows.hd_Scm_W[3 * i + k]),
      step,
    ),
  );
  const momentumScale = Math.max(Math.hypot(...h0), Math.hypot(...h1), 1e-9);
  return {
    before,
    after,
    work: (after.moving + after.turning + after.height - before.moving - before.turning) / m,
    brought: (before.moving + before.turning) / m,
    gave: {
      v_W: [v1[0] - v0[0], v1[1] - v0[1], v1[2] - v0[2]],
      h_Scm_W: [h1[0] - h0[0], h1[1] - h0[1], h1[2] - h0[2]],
    },
    open: g * c.gap[1],
    misses: {
      energy: Math.abs(got - wanted) / energyScale,
      momentum: Math.hypot(...turned.map((x, k) => x - (h1[k] - h0[k]))) / momentumScale,
    },
  };
}
