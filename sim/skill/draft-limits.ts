/**
 * What a draft is held to besides joints and strength: its place, the air time that is usual there, how unevenly the feet may leave, the angular momentum. Times: common
 * practice, from memory. SI, revolutions.
 */
import type { Body } from '../body/body.ts';
import type { SurfaceKind } from '../flight/flight.ts';
import { RAD } from '../math/angles.ts';
import { PLACE_RANGES, type RangedPlace } from './contact-ranges.ts';
import type { DraftForm } from './draft-form.ts';
import type { DraftSpec } from './draft-spec.ts';

/** A limit that a refusal can name, and that can be lifted to confirm it. */
export const DRAFT_LIMITS = ['strength', 'technique', 'push', 'airTime', 'momentum'] as const;
export type DraftLimit = (typeof DRAFT_LIMITS)[number];
export type Lifted = DraftLimit | undefined;

type Span = readonly [number, number];

interface DraftSite {
  readonly surface: SurfaceKind;
  /** height of what is left and of what is landed on, m */
  readonly from: number;
  readonly to: number;
  /** m/s in the direction of travel */
  readonly along: number;
  readonly ranges: RangedPlace;
}
const SITES: Readonly<Record<DraftSpec['place'], DraftSite>> = {
  floor: { surface: 'floor', from: 0, to: 0, along: 2.3, ranges: 'floor' },
  trampoline: { surface: 'trampoline', from: 1.155, to: 1.155, along: 0.2, ranges: 'trampoline' },
  board: { surface: 'water', from: 3, to: 0, along: 0.9, ranges: 'divingBoard' },
  platform: { surface: 'water', from: 10, to: 0, along: 0.9, ranges: 'platform' },
};
export const siteOf = (spec: DraftSpec): DraftSite => SITES[spec.place];

/** Share of its usual limit that is allowed once it is lifted. */
const LIFTED = { airTime: 1.25, momentum: 1.6, push: 3 };

/** Air time, s: common practice from memory; a quadruple and jumps by our judgement. */
export function airTimes(spec: DraftSpec, lifted?: Lifted): Span {
  const [low, high] = usualAirTimes(spec);
  return lifted === 'airTime' ? [high, high * LIFTED.airTime] : [low, high];
}

function usualAirTimes({ place, somersaults, halfTwists, shape, takeoff }: DraftSpec): Span {
  const half = halfTwists.reduce((a, b) => a + b, 0);
  if (place === 'board') return [1.3, 1.6];
  if (place === 'platform') return takeoff === 'hands' ? [1.45, 1.6] : [1.7, 1.9];
  if (place === 'trampoline') {
    if (somersaults < 1.6) return [1.2, 1.6];
    if (somersaults < 2.6) return [1.5, 1.9];
    return somersaults < 3.6 ? [1.75, 2.05] : [2, 2.25];
  }
  if (somersaults >= 1.6) return shape === 'tuck' ? [0.95, 1.05] : [0.98, shape === 'pike' ? 1.08 : 1.1];
  if (half >= 5) return [1, 1.12];
  if (half >= 3) return [0.95, 1.05];
  if (half === 2) return [0.85, 0.95];
  if (half === 1) return [0.8, 0.95];
  return shape === 'tuck' ? [0.75, 0.85] : [0.8, shape === 'pike' ? 0.88 : 0.9];
}

/** Angular momentum over m h^2, 1/s. */
export const mostMomentum = (spec: DraftSpec, lifted?: Lifted): number =>
  PLACE_RANGES[siteOf(spec).ranges].momentum.high * (lifted === 'momentum' ? LIFTED.momentum : 1);

/** Tilt that a full, a double and a triple twist need, rad: common practice, from memory. */
const TILT_NEEDED = [7, 13, 17].map((x) => x * RAD);
/** Share of a full's tilt that comes of an uneven push (published: Yeadon's split of a full twist into contact and aerial shares, contacts.md). */
const PUSH_SHARE = 0.3;
/** Of a full in a somersault that bends after it the twist is thrown off the bed or floor: as much as of a triple (judgement). */
const THROWN_IN = 17 * RAD * PUSH_SHARE;

/**
 * Angle of the angular momentum from the level as the feet leave, rad: what the uneven push gives. It is at most the published share of the tilt that the twist needs; out of a kick-out
 * nothing uneven is needed, and a tenth of it is left for balance.
 */
export function mostPush({ kind, early }: DraftForm, lifted?: Lifted): number {
  const times = lifted === 'push' ? LIFTED.push : 1;
  if (kind === 'late') return 1.2 * RAD * times;
  if (kind === 'plain') return 0;
  if (kind !== 'throughout' && early > 1) return THROWN_IN * times;
  const twists = Math.min(3, Math.max(1, early / 2));
  const i = Math.min(1, Math.floor(twists) - 1);
  const needed = TILT_NEEDED[i] + (twists - 1 - i) * (TILT_NEEDED[i + 1] - TILT_NEEDED[i]);
  return PUSH_SHARE * needed * times;
}

export const massStature2 = ({ mass, stature }: Body): number => mass * (stature ?? 1.7) ** 2;
