/**
 * The result of a swing, on a time axis that ends at the release: t <= 0 hanging, t = 0 the release (or the end). Columns
 * are typed arrays of one length; samples after t = 0, where there are any, show the swing as if the hands had held on
 * (`shown` counts those up to and with t = 0). W is the world of docs/conventions.md with the bar's rest place over X = 0.
 * SI, radians. Swing angles count in the sense of the swing, 0 under the bar.
 */
import type { Body } from '../body/body.ts';
import type { PlanarJointName } from './chain.ts';
import type { Rail } from './rail.ts';
import type { SwingSpec } from './swing-spec.ts';

export interface SwingColumns {
  readonly t: Float64Array;
  readonly angle: Float64Array; // swing angle, counted on
  readonly rate: Float64Array; // of the swing angle
  readonly x: Float64Array; // mass centre, W
  readonly y: Float64Array;
  readonly vx: Float64Array;
  readonly vy: Float64Array;
  readonly speed: Float64Array; // of the mass centre
  /** force of the rail on both hands together, N, W; on the rail it is the opposite */
  readonly gripX: Float64Array;
  readonly gripY: Float64Array;
  readonly grip: Float64Array; // its size, N
  readonly gripWeights: Float64Array; // its size, body weights
  readonly railX: Float64Array; // from the rail's rest place, m
  readonly railY: Float64Array;
  /** what arms in series with the rail give, m: the hands are so far from the rail; 0 in a swing without a catch */
  readonly armsX: Float64Array;
  readonly armsY: Float64Array;
  /** |acceleration less gravity| / g: of the mass centre (equals gripWeights), and of the head */
  readonly felt: Float64Array;
  readonly feltHead: Float64Array;
  /** angular momentum about Z, kg m^2/s: about the bar's rest place, and about the mass centre */
  readonly hBar: Float64Array;
  readonly hCentre: Float64Array;
  /** J: of the athlete (moving; height over the floor), of the rail (strain, with that of arms in series, and motion); the sum of all */
  readonly kinetic: Float64Array;
  readonly potential: Float64Array;
  readonly railEnergy: Float64Array;
  readonly energy: Float64Array;
  /** J since the start: done by the joints; taken by the rail's damping */
  readonly work: Float64Array;
  readonly loss: Float64Array;
}

export interface SwingJoint {
  readonly name: PlanarJointName;
  /** indices into Body.angles: left and right, or one of the spine */
  readonly angles: readonly number[];
  readonly q: Float64Array;
  readonly qd: Float64Array;
  /** N m put on by the joint */
  readonly torque: Float64Array;
  /** N m that the moves' acceleration would need in this state: more than `torque` where the joint is limited */
  readonly needed: Float64Array;
  /** N m that all its limbs can give in the sense of `needed`, at that angle and speed; of an infinite strength, of 1 times it */
  readonly most: Float64Array;
  /** what the moves asked for */
  readonly asked: Float64Array;
  /** 1 where the joint gives all it has */
  readonly limited: Uint8Array;
}

export interface SwingPeak {
  readonly value: number;
  readonly t: number;
  readonly angle: number;
}

export interface SwingPeaks {
  /** where a grip is likeliest to fail */
  readonly grip: SwingPeak; // N
  readonly gripWeights: SwingPeak;
  readonly felt: SwingPeak;
  readonly feltHead: SwingPeak;
  readonly bend: SwingPeak; // m, of the rail
  readonly rate: SwingPeak;
  readonly speed: SwingPeak;
  /** by joint: largest needed torque over what it can give there (above 1: limited) */
  readonly effort: readonly (SwingPeak & { readonly joint: PlanarJointName })[];
}

/** An error that such swings are known by; docs/numerics.md, "Swing". */
export interface SwingError {
  readonly angle: number; // rad, of swing and joints
  readonly force: number; // share of the peak
  readonly speed: number; // share
  readonly energy: number; // share of the swing's own height energy, 2 m g r
}

export interface Swing {
  readonly spec: SwingSpec;
  readonly body: Body;
  readonly rail: Rail;
  readonly step: number;
  /** s from the start to the release or the end */
  readonly duration: number;
  readonly released: boolean;
  /** latest t that stateAt knows: a little after 0 where the swing was released */
  readonly until: number;
  /** state on the bar at t in [-duration, until] */
  stateAt(t: number): SwingState;
  /** the named angles of the Body there, and their rates */
  shapeInto(t: number, angles: Float64Array, rates: Float64Array): void;

  // what follows is read from the run when it is asked for, all at once: a flight begins without it
  /** every joint followed its moves to the end; false: some was limited somewhere */
  readonly driven: boolean;
  /** how many times the Body's strength the joints have */
  readonly strength: number;
  readonly error: SwingError;
  readonly columns: SwingColumns;
  readonly joints: readonly SwingJoint[];
  /** samples with t <= 0 */
  readonly shown: number;
  readonly peaks: SwingPeaks;
  /** distance of the mass centre from the grip at t = 0, m */
  readonly radius: number;
}

/** One instant of the planar chain, everything the flight or a picture needs. */
export interface SwingState {
  readonly t: number;
  /** root segment: angle about Z (counted on), turning, place and velocity of its origin in W */
  readonly theta: number;
  readonly w: number;
  readonly p_WBo_W: readonly [number, number];
  readonly v_WBo_W: readonly [number, number];
  /** mass centre, W */
  readonly p_WScm_W: readonly [number, number];
  readonly v_WScm_W: readonly [number, number];
  /** about the mass centre, along Z */
  readonly h: number;
  /** every named angle of the Body, and its rate */
  readonly angles: Float64Array;
  readonly rates: Float64Array;
  /** force of the rail on the hands, W */
  readonly grip: readonly [number, number];
  /** rail from its rest place, and its velocity */
  readonly rail: readonly [number, number, number, number];
}
