/** How sensitive the result shown is: asked for when somebody looks and the flight rests. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { FlightResult } from '../engine/result.ts';
import { keptState, type Page } from './page.ts';

interface Sensitivity {
  /** under the sentence */
  readonly isOpen: Accessor<boolean>;
  toggle(): void;
  /** of the result shown; undefined until it is known */
  readonly parts: Accessor<readonly string[] | undefined>;
  /** it could not be computed */
  readonly failed: Accessor<boolean>;
}

/** The flight rests when it has not changed for this long, ms. */
const REST = 300;

function makeSensitivity({ services, shell, flight }: Page): Sensitivity {
  const [isOpen, setOpen] = createSignal(false);
  const [known, setKnown] = createSignal<{ of: FlightResult; parts: readonly string[] | undefined }>();
  const isWanted = createMemo(() => isOpen() || shell.tool() === 'account');

  createEffect(() => {
    const result = flight.result();
    if (!isWanted() || flight.before() || result.draft || known()?.of === result) return;
    let isGone = false;
    let cancel = (): void => {};
    const settle = (parts: readonly string[] | undefined): void => {
      if (!isGone) setKnown({ of: result, parts });
    };
    const timer = setTimeout(() => {
      services.load
        .sensing()
        .then((sensing) => {
          if (isGone) return undefined;
          const call = sensing.ask(result);
          cancel = call.cancel;
          return call.done.then(settle);
        })
        .catch(() => settle(undefined));
    }, REST);
    onCleanup(() => {
      isGone = true;
      clearTimeout(timer);
      cancel();
    });
  });

  const shown = createMemo(() => (known()?.of === flight.result() ? known() : undefined));
  return {
    isOpen,
    toggle: () => setOpen(!isOpen()),
    parts: () => shown()?.parts,
    failed: () => {
      const now = shown();
      return now !== undefined && now.parts === undefined;
    },
  };
}

export const useSensitivity = keptState(makeSensitivity);
