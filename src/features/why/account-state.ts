/** The account of one bench: asked for when flight and cursor rest, kept while the tool is closed. */

import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { AskedWork } from '../../app/asked-work.ts';
import { keptState, type Page } from '../../app/page.ts';
import type { Accounting, MapPoint, SightResult, TiltAccount, TiltProgress, Wobble } from '../../engine/account.ts';
import type { FlightResult } from '../../engine/result.ts';

export type TiltMeasure = 'greatest' | 'at' | 'twist';

export interface AccountState extends AskedWork<TiltProgress> {
  readonly measure: Accessor<TiltMeasure>;
  setMeasure(what: TiltMeasure): void;
  /** of the flight shown; the one before while a new one is made */
  readonly account: Accessor<TiltAccount | undefined>;
  /** 'none': a body without a head */
  readonly sight: Accessor<SightResult | 'none' | undefined>;
  readonly wobble: Accessor<Wobble | undefined>;
  readonly path: Accessor<readonly MapPoint[]>;
}

/** Flight and cursor rest when they have stood still this long, ms. */
const REST = 160;

function makeAccountState(page: Page): AccountState {
  const { services, shell, cursor, flight } = page;
  const [accounting, setAccounting] = createSignal<Accounting>();
  const [measure, setMeasure] = createSignal<TiltMeasure>('greatest');
  const [account, setAccount] = createSignal<{ of: FlightResult; at: number; value: TiltAccount }>();
  const [sight, setSight] = createSignal<{ of: FlightResult; value: SightResult | 'none' }>();
  const [progress, setProgress] = createSignal<TiltProgress>();
  const [failed, setFailed] = createSignal('');
  const [tries, setTries] = createSignal(0);
  services.load.accounting().then(setAccounting, (error: Error) => setFailed(error.message));

  const isOpen = createMemo(() => shell.tool() === 'account');
  // the cursor is followed only where the account depends on it
  const wantedAt = createMemo(() => (measure() === 'at' ? cursor.at() : (account()?.at ?? 0)));
  const isFresh = createMemo(() => {
    const known = account();
    return known?.of === flight.result() && (measure() !== 'at' || known.at === cursor.at());
  });

  createEffect(() => {
    const engine = accounting();
    const result = flight.result();
    tries();
    if (!engine || !isOpen() || flight.before() || result.draft || cursor.play.playing() || isFresh()) return;
    const at = wantedAt();
    let unsubscribe: (() => void) | undefined;
    const timer = setTimeout(() => {
      setFailed('');
      unsubscribe = engine.ask(result, at, sight()?.of === result, {
        progress: setProgress,
        tilt: (value) => {
          setProgress(undefined);
          setAccount({ of: result, at, value });
        },
        sight: (value) => {
          setSight({ of: result, value: value ?? 'none' });
        },
        failed: (reason) => {
          setProgress(undefined);
          setFailed(reason);
        },
      });
    }, REST);
    onCleanup(() => clearTimeout(timer));
    // an answer under way stays wanted until another flight or instant is
    onCleanup(() => {
      if (flight.result() !== result) unsubscribe?.();
    });
  });

  const wobble = createMemo(() => (isOpen() ? accounting()?.wobble(flight.result(), cursor.at()) : undefined));
  const path = createMemo<readonly MapPoint[]>(() => (isOpen() ? (accounting()?.path(flight.result()) ?? []) : []));
  return {
    measure,
    setMeasure,
    account: () => account()?.value,
    stale: () => !isFresh(),
    progress,
    failed,
    again: () => {
      setAccount(undefined);
      setTries(tries() + 1);
    },
    sight: () => (sight()?.of === flight.result() ? sight()?.value : undefined),
    wobble,
    path,
  };
}

export const useAccountState = keptState(makeAccountState);
