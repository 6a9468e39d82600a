/** Flights that end with the hands on the high bar, made by placing the bar where the hands come. */
import * as contact from '../../sim/contact/start-room.ts';
import type { SwingMoves } from '../../sim/contact/swing-keys.ts';
import type { Flight } from '../../sim/flight/flight.ts';
import type { AngleKey } from '../../sim/schedule/schedule.ts';
import type { CatchSpec } from '../../sim/skill/catch.ts';
import { makeHandsLook } from '../../sim/skill/catch-watch.ts';
import { flySkill } from '../../sim/skill/flyer.ts';
import { launchedWith } from '../skill/load.ts';
import { DEG, G, gymnast } from './swings.ts';

const smoothing = { kind: 'gcv' as const };
const indexOf = (name: string): number => gymnast.angles.findIndex((a) => a.name === name);
const sides = ['L', 'R'] as const;
const key = (name: string, atS: number, deg: number): AngleKey[] =>
  sides.map((side) => ({
    angle: indexOf(name + side),
    at: { anchor: 'takeoff', s: atS },
    value: deg * DEG,
    kind: 'stop',
  }));

export interface CatchFlight {
  /** s at which the hands are where the rail is */
  readonly at?: number;
  readonly v?: readonly [number, number, number];
  readonly h?: readonly [number, number, number];
  /** of F at take-off, deg */
  readonly somersault?: number;
  readonly tilt?: number;
  readonly twist?: number;
  /** shoulders and hips move through the catch */
  readonly isMoving?: boolean;
}

/** Arms overhead, leaning, carried towards the bar and turning so that the feet swing forward under it. */
export function flyToBar(a: CatchFlight = {}): { readonly flight: Flight; readonly spec: CatchSpec } {
  const { at = 0.5, v = [1.6, 2.2, 0], h = [0, 0, 6], somersault = -25, tilt = 0, twist = 0 } = a;
  const base = gymnast.angles.map((x) =>
    x.name.startsWith('shoulderElevation') ? 170 * DEG : x.name.startsWith('shoulderPlane') ? 90 * DEG : 0,
  );
  const keys = a.isMoving
    ? [
        ...key('shoulderElevation', 0.2, 150),
        ...key('shoulderElevation', 0.7, 178),
        ...key('hipFlexion', 0.2, 50),
        ...key('hipFlexion', 0.75, 5),
        ...key('kneeFlexion', 0.3, 20),
        ...key('kneeFlexion', 0.6, 0),
      ]
    : [];
  const fly = (y: number): Flight =>
    flySkill(
      launchedWith({
        title: '',
        body: gymnast,
        gravity: G,
        schedule: { base, blocks: [], keys, sampled: [], smoothing },
        takeoff: {
          height: { of: 'massCentre', y },
          v_WScm_W: v,
          somersault: somersault * DEG,
          tilt: tilt * DEG,
          twist: twist * DEG,
          momentum: { kind: 'vector', h_Scm_W: h },
        },
        end: { kind: 'duration', duration: at + 0.2 },
      }),
    );
  const rail = contact.getRail('highBar');
  const low = makeHandsLook(fly(0), { x: 0, y: 0 })(at);
  const flight = fly(rail.height - (low.left.y + low.right.y) / 2);
  const alongX = (low.left.x + low.right.x) / 2;
  return { flight, spec: { rail: 'highBar', alongX, hands: 'both', gap: 0.05, closing: 2, armsStiffness: 15_000 } };
}

const stop = (at: number, deg: number) => ({ at, value: deg * DEG, kind: 'stop' as const });
/** Into a hang that taps through the bottom. */
export const AFTER: SwingMoves = {
  over: 'time',
  keys: {
    shoulder: [stop(0, 175), stop(0.5, 180)],
    hip: [stop(0, 5), stop(0.35, -12), stop(0.75, 25)],
    knee: [stop(0, 0)],
    ankle: [stop(0, 40)],
  },
};
