/** The margin of A or of the picked answer: bars and tries as they come from the workers. Runs when everything rests. */

import { type Accessor, createEffect, createMemo, createSignal, onCleanup, untrack } from 'solid-js';
import type { Bar, ErrorSetting, MarginStudy, ReflexShare, ShareAfter } from '../../../sim/index.ts';
import type { AskedWork } from '../../app/asked-work.ts';
import type { Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Asking, MarginAsk, Progress, WindowBound } from '../../engine/ask.ts';
import type { AskState } from './ask-state.ts';

export type WindowKind = 'usual' | 'wanted';

interface Try {
  /** of the result drawn across: rad, or m */
  readonly across: number;
  readonly twists: number;
  readonly inside: boolean;
}

export interface StudyResult {
  readonly key: string;
  /** of the document */
  readonly id: number;
  readonly of: string;
  readonly balanced: boolean;
  readonly kind: WindowKind;
  readonly window: readonly WindowBound[];
  /** the result drawn across: short of the landing, or where the mass centre would have to be caught */
  readonly across: 'short' | 'reach';
  readonly bars: readonly Bar[];
  readonly tries: readonly Try[];
  readonly share?: ShareAfter;
  readonly result?: MarginStudy;
  /** of a skill to be held straight, in an open loop: the same with the hips' reflex, as far as it is known */
  readonly reflex?: readonly ReflexShare[];
  /** inputs in the order of the study */
  readonly order: readonly string[];
}

export interface StudyState extends AskedWork<Progress> {
  readonly kind: Accessor<WindowKind>;
  setKind(kind: WindowKind): void;
  readonly balanced: Accessor<boolean>;
  setBalanced(on: boolean): void;
  /** whose usual errors, and times what */
  readonly errors: Accessor<ErrorSetting>;
  setErrors(part: Partial<ErrorSetting>): void;
  readonly tries: Accessor<number>;
  setTries(n: number): void;
  /** the range of the reflex is being tried */
  readonly isRanging: Accessor<boolean>;
  readonly report: Accessor<StudyResult | undefined>;
  /** shares known of other settings of the same subject, to set beside */
  readonly other: Accessor<{ readonly share: number; readonly balanced: boolean } | undefined>;
  /** of the skill as it is, where the usual tries of it have been done */
  readonly ownShare: Accessor<number | undefined>;
  stop(): void;
  /** on screen */
  setShown(on: boolean): void;
}

/** ms of rest before a study begins */
const REST = 500;
const SEED = 1;
const USUAL_ERRORS: ErrorSetting = { level: 'national', factor: 1 };
/** shares of a range, one a delay */
const REFLEX_DELAYS = 3;
/** ms between two pictures while tries come */
const DRAWN = 120;

export function makeStudyState(page: Page, ask: AskState): StudyState {
  const { flight, cursor } = page;
  const [kind, setKind] = createSignal<WindowKind>('usual');
  const [balanced, setBalanced] = createSignal(false);
  const [errors, setErrors] = createSignal<ErrorSetting>(USUAL_ERRORS);
  const [tries, setTries] = createSignal(100);
  const [report, setReport] = createSignal<StudyResult>();
  const [progress, setProgress] = createSignal<Progress>();
  const [failed, setFailed] = createSignal('');
  const [shown, setShown] = createSignal(false);
  const [stopped, setStopped] = createSignal('');
  const [isRanging, setRanging] = createSignal(false);
  /** the range of the reflex was left before it was whole */
  const isCut = (): boolean => !isRanging() && (report()?.reflex?.length ?? REFLEX_DELAYS) < REFLEX_DELAYS;
  const shares = new Map<string, number>();
  // tries of the skill that was open before say nothing of this one
  const own = (): StudyResult | undefined => (report()?.id === flight.id() ? report() : undefined);

  const wanted = createMemo(() => {
    const [engine, open, subject, { aim }] = [ask.asking(), ask.skill(), ask.subject(), ask.aim()];
    if (!engine || !open || !subject || !aim) return undefined;
    const window = kind() === 'usual' ? engine.usualWindow(open, aim) : engine.wantedWindow(aim);
    const base = JSON.stringify([subject.key, window, errors()]);
    return { subject, window, base, key: JSON.stringify([base, balanced(), tries()]) };
  });
  const key = createMemo(() => wanted()?.key ?? '');
  let cancel: (() => void) | undefined;

  createEffect(() => {
    const now = key();
    const engine = ask.asking();
    if (!engine || !now || !shown() || !ask.isOpen() || flight.before() || cursor.play.playing()) return;
    if (untrack(report)?.key === now && untrack(report)?.result && !untrack(isCut)) return;
    if (stopped() === now) return;
    const timer = setTimeout(() => untrack(run), REST);
    onCleanup(() => {
      clearTimeout(timer);
      cancel?.();
    });
  });

  function run(): void {
    const [engine, w] = [ask.asking(), wanted()];
    if (!engine || !w) return;
    setFailed('');
    const across = w.window.some((b) => b.result === 'reach') ? 'reach' : 'short';
    const [s, y] = [across, 'twists'].map((id) => w.window.findIndex((b) => b.result === id));
    const m = w.window.length;
    let live = true;
    const open = ask.skill();
    const isRange = !balanced() && open !== undefined && engine.needsRange(open, errors());
    const start: StudyResult = {
      key: w.key,
      id: flight.id(),
      of: w.subject.name,
      balanced: balanced(),
      kind: kind(),
      window: w.window,
      across,
      bars: [],
      tries: [],
      order: [],
      ...(isRange ? { reflex: [] } : {}),
    };
    let next = start;
    // pieces come faster than the page needs to be drawn
    let frame = 0;
    const show = (): void => {
      if (frame) return;
      frame = window.setTimeout(() => {
        frame = 0;
        if (live) setReport(next);
      }, DRAWN);
    };
    try {
      const call = engine.study(
        { spec: w.subject.spec, window: w.window, tries: tries(), seed: SEED, balanced: balanced(), errors: errors() },
        {
          progress: (p) => {
            if (live) setProgress(p);
          },
          bar: (bar) => {
            next = { ...next, bars: [...next.bars, bar] };
            show();
          },
          samples: (share, { n, results }) => {
            const more = Array.from({ length: n }, (_, i): Try => {
              const row = results.subarray(m * i, m * (i + 1));
              const inside = w.window.every((b, k) => row[k] >= b.low && row[k] <= b.high);
              return { across: row[s], twists: row[y], inside };
            });
            next = { ...next, share, tries: [...next.tries, ...more] };
            show();
          },
        },
      );
      cancel = () => {
        live = false;
        call.cancel();
        setProgress(undefined);
      };
      call.done.then(
        ({ bars, result }) => {
          if (!live) return;
          live = false;
          cancel = undefined;
          setProgress(undefined);
          shares.set(JSON.stringify([w.base, next.balanced]), result.now.share);
          setReport({ ...next, bars, order: bars.map((b) => b.input), share: result.now, result });
          if (start.reflex) addReflex(engine, { spec: w.subject.spec, window: w.window, tries: tries() }, start.key);
        },
        (error) => {
          if (!live) return;
          live = false;
          setProgress(undefined);
          setFailed(wordFault(error));
        },
      );
    } catch (error) {
      setFailed(wordFault(error));
    }
  }

  function addReflex(engine: Asking, of: Pick<MarginAsk, 'spec' | 'window' | 'tries'>, key: string): void {
    const call = engine.reflexRange({ ...of, seed: SEED, balanced: false, errors: errors() }, (share) =>
      setReport((now) => (now?.key === key ? { ...now, reflex: [...(now.reflex ?? []), share] } : now)),
    );
    setRanging(true);
    const end = (): void => {
      setRanging(false);
    };
    cancel = () => {
      call.cancel();
      end();
    };
    call.done.then(end, end);
  }

  return {
    kind,
    setKind,
    balanced,
    setBalanced,
    errors,
    setErrors: (part) => setErrors((now) => ({ ...now, ...part })),
    tries,
    setTries,
    isRanging,
    report: own,
    stale: () => own() !== undefined && own()?.key !== key(),
    progress,
    failed,
    other: () => {
      const w = wanted();
      report();
      const share = w && shares.get(JSON.stringify([w.base, !balanced()]));
      return share === undefined ? undefined : { share, balanced: !balanced() };
    },
    ownShare: () => {
      const [engine, open, { aim }] = [ask.asking(), ask.skill(), ask.aim()];
      report();
      if (!engine || !open || !aim) return undefined;
      const base = JSON.stringify([open.key, engine.usualWindow(open, aim), USUAL_ERRORS]);
      return shares.get(JSON.stringify([base, false]));
    },
    stop: () => {
      cancel?.();
      cancel = undefined;
      setStopped(key());
    },
    again: () => {
      setStopped('');
      untrack(run);
    },
    setShown,
  };
}
