/**
 * A flight: the body about its mass centre under constant angular momentum, the mass centre on its parabola.
 * Frames: W world, B root segment, F body frame, S whole body, cm mass centre (docs/conventions.md). SI, radians,
 * quaternions [w, x, y, z].
 */
import type { Body, Vec3 } from '../body/body.ts';
import type { Schedule } from '../schedule/schedule.ts';

export interface TakeoffSpec {
  /** height Y at t = 0 of the mass centre, or of the lowest contact point (its height less its radius) */
  readonly height: { readonly of: 'massCentre' | 'lowestPoint'; readonly y: number };
  /** velocity of the mass centre at t = 0, in W */
  readonly v_WScm_W: Vec3;
  /** attitude of F at t = 0: R_WF = Rz(somersault) Rx(tilt) Ry(twist) */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  readonly momentum:
    | { readonly kind: 'vector'; readonly h_Scm_W: Vec3 }
    /** rates of the three angles of F, rad/s */
    | { readonly kind: 'rates'; readonly somersault: number; readonly tilt: number; readonly twist: number }
    /** h_z = 2 pi N A_ref / T_ref; N > 0 turns backward for an athlete who faces +X */
    | { readonly kind: 'straight'; readonly somersaults: number };
}

export type SurfaceKind = 'floor' | 'mat' | 'trampoline' | 'water' | 'other';
export type ContactLimb = 'hands' | 'feet';
interface Surface {
  readonly kind: SurfaceKind;
  readonly y: number;
  /** only these meet it: the top of a table, under which the feet begin; left out: any part */
  readonly by?: ContactLimb;
}
export type EndSpec =
  | {
      readonly kind: 'duration';
      readonly duration: number;
      readonly surface?: Surface;
    }
  | { readonly kind: 'touchdown'; readonly surface: Surface };

interface FlightStats {
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
  /** largest | |quat| - 1 | met before a step's result was normalised */
  readonly quatDrift: number;
}

interface Touchdown {
  /** index into Body.contacts */
  readonly contact: number;
  readonly part: string;
}

export interface Flight {
  readonly body: Body;
  readonly schedule: Schedule;
  readonly gravity: number;
  readonly duration: number;
  readonly apex: number;
  readonly h_Scm_W: Vec3;
  readonly p_WScm_W0: Vec3;
  readonly v_WScm_W0: Vec3;
  readonly surfaceY: number;
  readonly end: EndSpec;
  readonly touchdown?: Touchdown;
  /** ends of the integration steps from 0 to duration, ascending; every schedule break inside is one of them */
  readonly stepTimes: readonly number[];
  /** unit quaternion of the root segment at t in [0, duration], by dense output */
  quatInto(t: number, quat_WB: Float64Array): void;
  /** mass centre and its velocity at t, in W */
  massCentreInto(t: number, p_WScm_W: Float64Array, v_WScm_W: Float64Array): void;
  readonly stats: FlightStats;
}
