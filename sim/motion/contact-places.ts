/** Where the contact points of a body are at one instant, in W. */
import { applyInto } from '../math/rot.ts';
import { calcPose } from './pose.ts';
import { makeState, readState, type StateSource } from './state.ts';

export interface ContactPlace {
  readonly part: string;
  readonly x: number;
  readonly z: number;
  /** of its ball, m, and its lowest point */
  readonly radius: number;
  readonly low: number;
}

export function calcContactPlaces(source: StateSource, t: number): ContactPlace[] {
  const state = makeState(source.body);
  readState(source, t, state);
  const { R_WS, p_WSo_W } = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
  const at = [0, 0, 0];
  return source.body.contacts.map(({ part, segment, p_BoC_B, radius }) => {
    applyInto(R_WS, 9 * segment, p_BoC_B, 0, at, 0);
    return {
      part,
      radius,
      x: p_WSo_W[3 * segment] + at[0],
      z: p_WSo_W[3 * segment + 2] + at[2],
      low: p_WSo_W[3 * segment + 1] + at[1] - radius,
    };
  });
}
