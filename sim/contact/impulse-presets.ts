/**
 * Where take-offs happen: starting values for the take-off panel, each to be replaced by a measured one. Contact times and
 * approaches are from memory of published films of gymnastics and diving; friction and reach are
 * judgement. SI and radians; heights of the surface from the FIG apparatus norms where given.
 */
export type TakeoffPlace = 'floor' | 'springboard' | 'vaultTable' | 'trampoline' | 'divingBoard' | 'platform';

interface TakeoffPreset {
  /** height of the surface above the floor, m */
  readonly surfaceY: number;
  readonly by: 'feet' | 'hands';
  /** s; its usual range: skill/contact-ranges.ts */
  readonly time: number;
  /** mean height of the mass centre above the surface over the contact, share of the stature */
  readonly heightShare: number;
  readonly friction: number;
  /** how far before or behind the mass centre the foot or hand can be, share of the stature */
  readonly reachShare: number;
  /** approach: speed along the way of travel and up, m/s; turning, rad/s (+ in the sense of the somersault to come) */
  readonly approach: { readonly along: number; readonly up: number; readonly spin: number };
  readonly source: string;
}

const FRICTION = 'friction and reach: judgement';
export const TAKEOFF_PRESETS: Readonly<Record<TakeoffPlace, TakeoffPreset>> = {
  floor: {
    surfaceY: 0,
    by: 'feet',
    time: 0.12,
    heightShare: 0.55,
    friction: 0.8,
    reachShare: 0.45,
    approach: { along: 4.5, up: -0.8, spin: 6 },
    source: `contact time and approach: tumbling take-offs out of a round-off, from memory; ${FRICTION}`,
  },
  springboard: {
    surfaceY: 0.2,
    by: 'feet',
    time: 0.13,
    heightShare: 0.55,
    friction: 0.9,
    reachShare: 0.45,
    approach: { along: 7, up: -1, spin: 0 },
    source: `height 0.20 m, contact time and run-up speed: vaulting, from memory; ${FRICTION}`,
  },
  vaultTable: {
    surfaceY: 1.35,
    by: 'hands',
    time: 0.17,
    heightShare: 0.55,
    friction: 0.9,
    reachShare: 0.5,
    approach: { along: 4.8, up: 1.2, spin: 5.5 },
    source: `height 1.35 m (women 1.25 m): FIG apparatus norms; contact time and approach: handspring vaults, from memory; ${FRICTION}`,
  },
  trampoline: {
    surfaceY: 0,
    by: 'feet',
    time: 0.32,
    heightShare: 0.55,
    friction: 0.8,
    reachShare: 0.3,
    approach: { along: 0, up: -8, spin: 0 },
    source: `contact time and speed: somersaults with some 1.6 s in the air, from memory; heights count from the bed at rest; ${FRICTION}`,
  },
  divingBoard: {
    surfaceY: 3,
    by: 'feet',
    time: 0.42,
    heightShare: 0.55,
    friction: 0.8,
    reachShare: 0.3,
    approach: { along: 0.5, up: -4, spin: 0 },
    source: `height 3 m; contact time and hurdle speed: 3 m springboard dives, from memory; ${FRICTION}`,
  },
  platform: {
    surfaceY: 10,
    by: 'feet',
    time: 0.6,
    heightShare: 0.55,
    friction: 0.8,
    reachShare: 0.3,
    approach: { along: 0, up: 0, spin: 0 },
    source: `height 10 m; from standing, 0.5 to 0.8 s (running 0.15 to 0.25 s): weakly, from memory of Miller 1989 to 2001; ${FRICTION}`,
  },
};
