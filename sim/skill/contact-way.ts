/**
 * How the body goes through a contact, from the take-off back: entry, exit, reach and place belong to one movement and must agree. The mean force is taken as
 * constant, so that velocity changes evenly: with v0 before and v1 after, the mass centre travels T (v0 + v1) / 2 and its mean place lies T (v0 / 6 + v1 / 3) before
 * the last. In X-Y; angles are positive about Z.
 */
import type { Vec3 } from '../body/body.ts';
import type { ContactImpulse } from '../contact/impulse.ts';
import type { Flight } from '../flight/flight.ts';
import { calcContactPlaces } from '../motion/contact-places.ts';

export interface ContactWay {
  /** m, of the mass centre over the contact */
  readonly travel: number;
  readonly rise: number;
  /** rad, at the mean of the turning rates before and after */
  readonly turned: number;
  /** rad, what shoulders or hips would have to turn besides, for the hands or feet to stay where they are */
  readonly limbTurn: number;
  /** m, mean height of the mass centre over the surface: as stated, and as the take-off and the speeds have it */
  readonly meanHeight: { readonly stated: number; readonly found: number };
  /** m, where the force must act, along the way of travel from below the mean mass centre; and where hands or feet are by the take-off and the speeds */
  readonly place?: { readonly needed: number; readonly found: readonly [number, number] };
  /** m, from the mass centre to the middle of hands or feet: as it begins, as it ends, and at most */
  readonly reach: { readonly entry: number; readonly exit: number; readonly most: number };
}

interface Course {
  readonly flight: Flight;
  readonly impulse: ContactImpulse;
  readonly time: number;
  readonly by: 'hands' | 'feet';
  /** height of the surface in W where it is known, m; else it is where the hands or feet are */
  readonly surfaceY?: number | undefined;
  readonly statedHeight: number;
  readonly v_before_W: Vec3;
  readonly h_before_W: Vec3;
  readonly lateralMoment: number;
  /** -1: travels towards -X */
  readonly way: 1 | -1;
}

/** Mass centre to the palms overhead, or to the feet on tiptoe with arms overhead, share of the stature: at most 0.62 and 0.68 of the default bodies. */
const REACH = { hands: 0.63, feet: 0.69 } as const;

/** Undefined where nothing that pushes is known of the body. */
export function calcContactWay(c: Course): ContactWay | undefined {
  const { flight, time: T, v_before_W: v0, h_before_W: h0, lateralMoment: I, way } = c;
  const { stature } = flight.body;
  const points = calcContactPlaces(flight, 0).filter((p) => p.part === c.by);
  if (points.length === 0 || stature === undefined) return undefined;
  const v1 = flight.v_WScm_W0;
  const before = (k: 0 | 1): number => T * (v0[k] / 6 + v1[k] / 3);
  const xs = points.map((p) => p.x - flight.p_WScm_W0[0]);
  const low = c.surfaceY ?? Math.min(...points.map((p) => p.low));
  const exit = { x: xs.reduce((a, b) => a + b, 0) / xs.length, y: low - flight.p_WScm_W0[1] };
  const travel = (T * (v0[0] + v1[0])) / 2;
  const rise = (T * (v0[1] + v1[1])) / 2;
  const entry = { x: exit.x + travel, y: exit.y + rise };
  const turned = (T * (h0[2] + flight.h_Scm_W[2])) / (2 * I);
  const angle = ({ x, y }: typeof exit): number => Math.atan2(y, x);
  const lineTurned = Math.atan2(Math.sin(angle(exit) - angle(entry)), Math.cos(angle(exit) - angle(entry)));
  const { place } = c.impulse;
  const offsets = xs.map((x) => way * (x + before(0)));
  return {
    travel,
    rise,
    turned,
    limbTurn: lineTurned - turned,
    meanHeight: { stated: c.statedHeight, found: -exit.y - before(1) },
    ...(place
      ? { place: { needed: way * place.x, found: [Math.min(...offsets), Math.max(...offsets)] as const } }
      : {}),
    reach: { entry: Math.hypot(entry.x, entry.y), exit: Math.hypot(exit.x, exit.y), most: REACH[c.by] * stature },
  };
}
