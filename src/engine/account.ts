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
  type TiltPart,
  type TiltProgress,
  type TiltSource,
  type TiltValues,
  type TurnMode,
  type Wobble,
} from '../../sim/index.ts';
import type { AccountReply, AccountRequest, SightSpan, SightTold } from './account-messages.ts';
import type { FlightResult } from './result.ts';

export type {
  MapPoint,
  SightSpan,
  SightTold,
  TiltAccount,
  TiltPart,
  TiltProgress,
  TiltSource,
  TiltValues,
  TurnMode,
  Wobble,
};

export interface AccountTold {
  progress(progress: TiltProgress): void;
  tilt(account: TiltAccount): void;
  sight(told: SightTold | undefined): void;
  failed(reason: string): void;
}

export interface Accounting {
  /** a newer question silences the older one; gives the way to silence it */
  ask(result: FlightResult, at: number, tiltOnly: boolean, told: AccountTold): () => void;
  /** of the shape at t, held; undefined without angular momentum */
  wobble(result: FlightResult, t: number): Wobble | undefined;
  /** [twist, tilt] about the momentum, a point a frame */
  path(result: FlightResult): readonly MapPoint[];
}

export function makeAccounting(shapes: Readonly<Record<string, ShapeData>>): Accounting {
  const paths = new WeakMap<FlightResult, readonly MapPoint[]>();
  let worker: Worker | undefined;
  let last = 0;
  let listening: AccountTold | undefined;
  const start = (): Worker => {
    const made = new Worker(new URL('./account-worker.ts', import.meta.url), { type: 'module' });
    made.addEventListener('message', ({ data }: MessageEvent<AccountReply>) => {
      if (data.id !== last || !listening) return;
      if (data.kind === 'progress') listening.progress(data.progress);
      else if (data.kind === 'tilt') listening.tilt(data.account);
      else if (data.kind === 'sight') listening.sight(data.told);
      else listening.failed(data.reason);
    });
    made.addEventListener('error', (event) => {
      listening?.failed(event.message || 'the worker did not start');
      worker = undefined;
    });
    return made;
  };
  return {
    ask: ({ file, athlete }, at, tiltOnly, told) => {
      worker ??= start();
      last += 1;
      const id = last;
      listening = told;
      worker.postMessage({ id, file, athlete, shapes, at, tiltOnly } satisfies AccountRequest);
      return () => {
        if (id === last) listening = undefined;
      };
    },
    wobble: ({ flight }, t) => calcWobble(flight, t),
    path: (result) => {
      const known = paths.get(result) ?? calcWobblePath(result.frames);
      paths.set(result, known);
      return known;
    },
  };
}
