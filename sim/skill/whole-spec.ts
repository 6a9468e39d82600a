/**
 * What a skill adds before and after its flight, in SI units and radians: how it gets to the take-off (a bar swing, or a
 * contact) and what it lands on. Plain data; the contact room that computes it is passed in (whole.ts).
 */
import type { Vec3 } from '../body/body.ts';
import type { TakeoffPlace } from '../contact/impulse-presets.ts';
import type { LegAction } from '../contact/landing-joints.ts';
import type { MatName, MatSpec } from '../contact/mat.ts';
import type { SwingMoves } from '../contact/swing-keys.ts';
import type { SwingRelease, SwingStart } from '../contact/swing-spec.ts';

export interface SwingApproach {
  readonly kind: 'swing';
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

export interface ContactApproach {
  readonly kind: 'contact';
  readonly place: TakeoffPlace;
  /** what stands in place of the preset's value */
  readonly time?: number;
  readonly friction?: number;
  readonly height?: number;
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
  /** the contact is known and gives the take-off; left out: the take-off is wanted and the contact follows */
  readonly given?: {
    readonly bodyWeights: number;
    readonly lean: number;
    /** across, in body weights, + to world right */
    readonly across: number;
    readonly place: { readonly x: number; readonly z: number };
    readonly freeTurn: number;
  };
}

export type ApproachSpec = SwingApproach | ContactApproach;

export interface ArrivalSpec {
  readonly mat: MatName | (Omit<MatSpec, 'surfaceY'> & { readonly name?: undefined });
  readonly action: Partial<LegAction>;
  /** knees at touchdown, rad, in place of the flight's */
  readonly knee?: number;
  readonly duration?: number;
}
