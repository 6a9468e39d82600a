/**
 * How a skill begins its flight, said once, in SI units and radians: a take-off that is stated, a bar swing that is let go, or a
 * contact whose force is known. Plain data; launch.ts makes a take-off of it.
 */
import type { Vec3 } from '../body/body.ts';
import type { TakeoffPlace } from '../contact/impulse-presets.ts';
import type { SwingMoves } from '../contact/swing-keys.ts';
import type { SwingRelease, SwingStart } from '../contact/swing-spec.ts';
import type { ContactLimb, TakeoffSpec } from '../flight/flight.ts';

/** How the force of a contact rises and falls over its time. */
export type PulseName = 'halfSine' | 'early' | 'late' | 'flat';

export interface SwingApproach {
  readonly rail: string;
  readonly sense: 'backward' | 'forward';
  readonly start: SwingStart;
  readonly moves: SwingMoves;
  readonly release: SwingRelease;
  /** s that the release comes later (+) or earlier than `release` says */
  readonly late: number;
  /** one hand holds on for this many s */
  readonly lateHand?: { readonly hand: 'left' | 'right'; readonly s: number };
  readonly duration: number;
  readonly strength?: number;
}

/** How the athlete comes to a contact; which force follows from the take-off that is stated. */
export interface ContactApproach {
  readonly place: TakeoffPlace;
  /** used instead of the preset's value */
  readonly time?: number;
  readonly friction?: number;
  readonly height?: number;
  /** what is on it, used instead of the place's own */
  readonly limb?: ContactLimb;
  readonly pulse?: PulseName;
  /** how the body comes to it, where no flight comes before: a shape by name, and the attitude of F */
  readonly entry?: {
    readonly shape: string;
    /** angles of the shape by name, rad */
    readonly pose: Readonly<Record<string, number>>;
    readonly somersault: number;
    readonly tilt: number;
    readonly twist: number;
  };
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
}

/** A contact whose force is known: velocity and momentum of the take-off follow from it. */
export interface KnownContact extends ContactApproach {
  readonly given: {
    /** mean force, in body weights, and how it leans, rad */
    readonly bodyWeights: number;
    readonly lean: number;
    /** across, in body weights, + to world right */
    readonly across: number;
    readonly place: { readonly x: number; readonly z: number };
    readonly freeTurn: number;
  };
}

export type StartSpec =
  | { readonly kind: 'stated'; readonly takeoff: TakeoffSpec; readonly contact?: ContactApproach }
  | { readonly kind: 'swing'; readonly swing: SwingApproach }
  | ({ readonly kind: 'contact'; readonly contact: KnownContact } & Pick<
      TakeoffSpec,
      'height' | 'somersault' | 'tilt' | 'twist'
    >);
