/** The camera of a plan, kept with the page and with no skill; and what a worker says of the flight through it. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { ExpectedErrors, FilmCamera, FilmingPlan } from '../../../sim/index.ts';
import { keptState, type Page } from '../../app/page.ts';
import type { Loaders } from '../../app/services.ts';
import type { FlightResult } from '../../engine/result.ts';
import { readStored, writeStored } from '../../ui/stored.ts';
import { filmStateOf } from './film-state.ts';
import { planTexts as t } from './plan-words.ts';

type FilmParts = Awaited<ReturnType<Loaders['filming']>>;

export interface PlanState {
  readonly parts: Accessor<FilmParts | undefined>;
  readonly camera: Accessor<FilmCamera | undefined>;
  /** what it cannot be is refused, and said */
  put(part: Partial<FilmCamera>): void;
  readonly refused: Accessor<string | undefined>;
  /** the last that was computed, with the camera where it is now */
  readonly plan: Accessor<FilmingPlan | undefined>;
  /** numbers of the plan are of an older camera or flight */
  readonly stale: Accessor<boolean>;
  /** of this plan; undefined while it is on its way */
  readonly errors: Accessor<ExpectedErrors | undefined>;
  /** of the errors, 0 to 1 */
  readonly share: Accessor<number>;
  readonly failed: Accessor<string>;
  again(): void;
}

const KEY = 'shapeflight.camera';
/** A hand that drags rests so long before numbers are asked for, ms. */
const REST = 120;
/** and so long before the film is read over and over, which takes seconds */
const LONG_REST = 600;

function readCamera({ engine }: FilmParts): FilmCamera {
  try {
    return engine.check({ ...engine.usual, ...(JSON.parse(readStored(KEY) ?? '{}') as Partial<FilmCamera>) });
  } catch {
    return engine.usual;
  }
}

function makePlanState(page: Page): PlanState {
  const { services, shell, flight } = page;
  const film = filmStateOf(page);
  const [parts, setParts] = createSignal<FilmParts>();
  const [camera, setCamera] = createSignal<FilmCamera>();
  const [refused, setRefused] = createSignal<string>();
  const [answer, setAnswer] = createSignal<{ of: FlightResult; plan: FilmingPlan }>();
  const [failed, setFailed] = createSignal('');
  const [tries, setTries] = createSignal(0);
  services.load.filming().then(
    (loaded) => {
      setParts(loaded);
      setCamera(readCamera(loaded));
    },
    (error: Error) => setFailed(error.message),
  );
  const isOpen = createMemo(() => shell.tool() === 'film' && film.view() === 'plan');
  const isFresh = createMemo(() => {
    const known = answer();
    return known?.of === flight.result() && known.plan.camera === camera();
  });
  createEffect(() => {
    const engine = parts()?.engine;
    const [result, now] = [flight.result(), camera()];
    tries();
    if (!engine || !now || !isOpen() || flight.before() || result.draft || isFresh()) return;
    let cancel: (() => void) | undefined;
    const timer = setTimeout(() => {
      const call = engine.plan(result, now);
      cancel = call.cancel;
      call.done.then(
        (plan) => {
          setFailed('');
          if (plan) setAnswer({ of: result, plan: { ...plan, camera: now } });
        },
        (error: Error) => {
          if (error.name === 'JobCancelledError') return;
          setFailed(error.name === 'FieldError' ? t.inTheWay : error.message);
        },
      );
    }, REST);
    onCleanup(() => {
      clearTimeout(timer);
      cancel?.();
    });
  });
  const [expected, setExpected] = createSignal<{ of: FilmingPlan; errors: ExpectedErrors }>();
  const [share, setShare] = createSignal(0);
  createEffect(() => {
    const [engine, known] = [parts()?.engine, answer()];
    if (!engine || !known || !isOpen() || !isFresh() || expected()?.of === known.plan) return;
    let cancel: (() => void) | undefined;
    const timer = setTimeout(() => {
      setShare(0);
      const call = engine.errors(known.of, known.plan, setShare);
      cancel = call.cancel;
      call.done.then(
        (errors) => errors && setExpected({ of: known.plan, errors }),
        (error: Error) => {
          if (error.name !== 'JobCancelledError') setFailed(error.message);
        },
      );
    }, LONG_REST);
    onCleanup(() => {
      clearTimeout(timer);
      cancel?.();
    });
  });
  const plan = createMemo((): FilmingPlan | undefined => {
    const [known, now, engine] = [answer()?.plan, camera(), parts()?.engine];
    if (!known || !now || !engine || known.camera === now) return known;
    return { ...known, camera: now, sightline: engine.stand(now, known) };
  });
  return {
    parts,
    camera,
    refused,
    plan,
    errors: () => {
      const known = expected();
      return known && known.of === answer()?.plan && isFresh() ? known.errors : undefined;
    },
    share,
    failed,
    stale: () => !isFresh(),
    again: () => setTries(tries() + 1),
    put: (part) => {
      const [engine, now] = [parts()?.engine, camera()];
      if (!engine || !now) return;
      try {
        const next = engine.check(engine.fit({ ...now, ...part }));
        setRefused(undefined);
        setCamera(next);
        writeStored(KEY, JSON.stringify(next));
      } catch (error) {
        setRefused(error instanceof Error ? error.message : String(error));
      }
    },
  };
}

export const usePlanState = keptState(makePlanState);
