/**
 * What is done about a limb that lags behind the hand: how much more time its move needs is tried beside the page's work, and
 * given at a press. Also which steps of the history the last gesture made, so that they can be taken back together.
 */
import { type Accessor, createSignal } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { loadPart } from '../../app/load-part.ts';
import type { Page } from '../../app/page.ts';
import type { AnchorSeconds } from '../../document/times.ts';
import type { FlightCaution } from '../../engine/result.ts';
import { runSteps, type Stepping } from '../../ui/steps.ts';
import type { TooFast } from './pace.ts';
import type { MoreTime } from './seconds-more.ts';
import { poseTexts } from './words.ts';

interface Asked {
  readonly file: SkillFile;
  readonly tooFast: readonly TooFast[];
  readonly before: readonly FlightCaution[];
  readonly anchors: AnchorSeconds;
}

export interface LagState {
  /** undefined: being tried; none: no time that is offered helps */
  readonly more: Accessor<MoreTime | 'none' | undefined>;
  /** what was asked for is drawn in the time that it needs */
  give(): void;
  /** calls back when the hand has been still for a moment */
  soon(run: () => void): void;
  search(asked: Asked): void;
  /** the gesture has ended, as a step or without one; `asked` where the limb lags */
  settled(asked: Asked | undefined, isStep: boolean): void;
  /** what the gesture did is what was done last */
  isLast(): boolean;
  undo(): void;
  stop(): void;
}

type TrySecondsMore = typeof import('./seconds-more.ts').trySecondsMore;

const loadTries = loadPart(
  () => import('./seconds-more.ts'),
  (m) => m.trySecondsMore,
);

/** No step of a history: no gesture has ended yet. */
const NEVER = Symbol('never');
/** ms that a hand is still before what is costly is tried */
const STILL = 140;

export function makeLag({ doc, services }: Page): LagState {
  const [more, setMore] = createSignal<MoreTime | 'none'>();
  /** steps of the last gesture, and what was done last when it ended */
  const [steps, setSteps] = createSignal(0);
  const [end, setEnd] = createSignal<unknown>(NEVER);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let searched: Asked | undefined;
  let trying: Stepping | undefined;
  const stop = (): void => {
    clearTimeout(timer);
    trying?.stop();
    searched = undefined;
    setMore(undefined);
  };
  const search: LagState['search'] = (asked) => {
    stop();
    searched = asked;
    void loadTries().then((trySecondsMore) => {
      if (searched !== asked) return;
      const tries = trySecondsMore({ ...asked, fly: (file) => services.flying.fly(file) });
      trying = runSteps(orNone(tries), 0, setMore);
    }, stop);
  };
  const last = (): unknown => doc.history().done.at(-1);
  const settle = (count: number): void => {
    setSteps(count);
    setEnd(last());
  };
  return {
    more,
    give: () => {
      const found = more();
      if (!found || found === 'none') return;
      doc.edit(found.file, poseTexts.gave(found.s));
      settle(steps() + 1);
      stop();
    },
    soon: (run) => {
      stop();
      timer = setTimeout(run, STILL);
    },
    search,
    settled: (asked, isStep) => {
      settle(isStep ? 1 : 0);
      if (!asked) stop();
      else if (JSON.stringify(searched?.file) !== JSON.stringify(asked.file)) search(asked);
    },
    isLast: () => end() === last(),
    undo: () => {
      for (let i = steps(); i > 0; i--) doc.undo();
      settle(0);
      stop();
    },
    stop,
  };
}

/** A flight that cannot be flown is no time that helps. */
function* orNone(tries: ReturnType<TrySecondsMore>): Generator<undefined, MoreTime | 'none'> {
  try {
    return (yield* tries) ?? 'none';
  } catch {
    return 'none';
  }
}
