/**
 * Why a flight went as it did: twist or wobble at once; the account of the tilt by reruns and what the eyes see from a
 * worker, so that the page stays awake. Loaded with the tool that asks.
 */
import {
  calcWobble,
  calcWobblePath,
  type MapPoint,
  type ShapeData,
  type TiltAccount,
  type TiltMechanism,
  type TiltProgress,
  type TiltValues,
  type Wobble,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { SightResult } from '../jobs/kinds/account-data.ts';
import { JobCancelledError, type Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

export type { MapPoint, SightResult, TiltAccount, TiltMechanism, TiltProgress, TiltValues, Wobble };

interface AccountListener {
  progress(progress: TiltProgress): void;
  tilt(account: TiltAccount): void;
  sight(result: SightResult | undefined): void;
  failed(reason: string): void;
}

export interface Accounting {
  /** a newer question cancels the older one; gives the way to cancel it */
  ask(result: FlightResult, at: number, tiltOnly: boolean, listener: AccountListener): () => void;
  /** of the shape at t, held; undefined without angular momentum */
  wobble(result: FlightResult, t: number): Wobble | undefined;
  /** [twist, tilt] about the momentum, a point a frame */
  path(result: FlightResult): readonly MapPoint[];
}

export function makeAccounting(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool()): Accounting {
  const paths = new WeakMap<FlightResult, readonly MapPoint[]>();
  let cancelLast: (() => void) | undefined;
  return {
    ask: ({ file, athlete }, at, tiltOnly, listener) => {
      cancelLast?.();
      const { done, cancel } = pool.run(
        'account',
        { file, athlete, shapes, at, tiltOnly },
        {
          onProgress: (step) => {
            if (step.kind === 'tilt') listener.tilt(step.account);
            else listener.progress(step.progress);
          },
        },
      );
      cancelLast = cancel;
      done.then(
        (end) => {
          if (end) listener.sight(end.sight);
        },
        (error: Error) => {
          if (!(error instanceof JobCancelledError)) listener.failed(error.message);
        },
      );
      return cancel;
    },
    wobble: ({ flight }, t) => calcWobble(flight, t),
    path: (result) => {
      const known = paths.get(result) ?? calcWobblePath(result.frames);
      paths.set(result, known);
      return known;
    },
  };
}
