/** The whole skill and its result: asked for whenever the document with a swing, contact or landing changes. */
import { type Accessor, batch, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { LateDose, Likelihood, SkillFile, SkillVerdict } from '../../sim/index.ts';
import { afterOf, beforeOf, isMoreThanFlight } from '../../sim/math/phases.ts';
import { placeIn } from '../../sim/math/sorted.ts';
import type { Contacting } from '../engine/contact.ts';
import type { FlightCaution } from '../engine/result.ts';
import type { StudyKind, WholeResult, WindowResult } from '../jobs/kinds/whole-data.ts';
import type { WholePictures } from '../pictures/whole-input.ts';
import { keptState, type Page } from './page.ts';

export interface WholeState {
  /** the result of the skill shown, with its landing as soon as that is known */
  readonly verdict: Accessor<SkillVerdict>;
  /** how often the landing ends which way over the stated ranges, once it is known of the skill shown */
  readonly likelihood: Accessor<Likelihood | undefined>;
  /** those of the flight, and of the contact before it once that is known */
  readonly cautions: Accessor<readonly FlightCaution[]>;
  /** the verdict before the gesture under way, once it has changed something */
  readonly before: Accessor<SkillVerdict | undefined>;
  /** the landing said is that of the flight before */
  readonly isLandingStale: Accessor<boolean>;
  readonly whole: Accessor<WholeResult | undefined>;
  readonly window: Accessor<WindowResult | undefined>;
  readonly late: Accessor<LateDose | undefined>;
  readonly busy: Accessor<boolean>;
  readonly failed: Accessor<string>;
  /** asks once more */
  again(): void;
  readonly pictures: Accessor<WholePictures | undefined>;
  /** the whole skill's own cursor, s; in the air it is the page's */
  readonly cursor: Accessor<number>;
  setCursor(t: number): void;
  /** row of the columns at the cursor */
  readonly row: Accessor<number>;
}

/** A study starts when hands have rested this long, ms. */
const REST = 350;

function makeWholeState(page: Page): WholeState {
  const { services, doc, flight, shell } = page;
  const [engine, setEngine] = createSignal<Contacting>();
  const [pictures, setPictures] = createSignal<WholePictures>();
  const [whole, setWhole] = createSignal<WholeResult>();
  const [window, setWindow] = createSignal<WindowResult>();
  const [likely, setLikely] = createSignal<{ of: SkillFile; result: Likelihood }>();
  const [late, setLate] = createSignal<LateDose>();
  const [busy, setBusy] = createSignal(false);
  const [failed, setFailed] = createSignal('');
  const [tries, setTries] = createSignal(0);
  const [outside, setOutside] = createSignal<number>();
  /** what the landing known is of */
  const [landedOf, setLandedOf] = createSignal<SkillFile>();

  const isWanted = createMemo(() => isMoreThanFlight(doc.file()));
  // its parts are not loaded for a flight alone, until someone looks at what comes before and after it
  let isLoading = false;
  createEffect(() => {
    if (isLoading || !(isWanted() || shell.tool() === 'contact')) return;
    isLoading = true;
    void services.load.contacting().then(({ engine: e, pictures: p }) => {
      setEngine(() => e);
      setPictures(() => p);
    });
  });
  createEffect(() => {
    const contacting = engine();
    const file = doc.file();
    tries();
    if (!contacting) return;
    if (!isWanted()) {
      setWhole(undefined);
      setLandedOf(undefined);
      setFailed('');
      return;
    }
    const athlete = doc.athlete();
    const inDrag = flight.before() !== undefined;
    let unsubscribe: (() => void) | undefined;
    const ask = (study?: StudyKind): void => {
      setBusy(true);
      unsubscribe = contacting.ask(file, athlete, study, {
        whole: (now, of) => {
          batch(() => {
            setWhole(now);
            setLandedOf(() => of);
          });
          setBusy(false);
          setFailed('');
        },
        likelihood: (result, of) => {
          setLikely({ of, result });
        },
        window: (now) => {
          setWindow(now);
        },
        late: (now) => {
          setLate(now);
        },
        failed: (reason) => {
          setBusy(false);
          setFailed(reason);
        },
      });
    };
    ask();
    // the release is studied for who looks at it, the landing for who reads the verdict
    const studied = shell.tool() === 'contact' ? 'all' : afterOf(file) ? 'landing' : undefined;
    const timer = inDrag || !studied ? undefined : setTimeout(() => ask(studied), REST);
    onCleanup(() => {
      clearTimeout(timer);
      unsubscribe?.();
    });
  });

  const cursor = createMemo(() => {
    const t = outside();
    const now = whole();
    return t === undefined || !now ? page.cursor.at() : Math.min(Math.max(t, now.from), now.to);
  });
  const row = createMemo(() => {
    const now = whole();
    if (!now) return 0;
    const { t } = now.columns;
    const { i, share } = placeIn(t, cursor());
    return share < 0.5 ? i : i + 1;
  });
  const waits = (): boolean => {
    const { ending } = flight.result().outline.verdict;
    return ending.kind === 'notComputed' && ending.why.kind === 'pending';
  };
  const verdict = createMemo((): SkillVerdict => {
    const inFlight = flight.result().outline.verdict;
    const { judged, near = [] } = whole() ?? {};
    // a landing of the flight before is shown as such; what came near a rail then is no news of this one
    const missed = landedOf() === flight.result().file ? [...near, ...inFlight.missed] : inFlight.missed;
    return { ...inFlight, missed, ...(waits() ? judged : {}) };
  });
  const cautions = createMemo((): readonly FlightCaution[] => {
    const inFlight = flight.cautions();
    const report = landedOf() === flight.result().file ? whole()?.contact?.report : undefined;
    if (!report) return inFlight;
    const takeoff = report.cautions.map((caution): FlightCaution => ({ kind: 'takeoff', t: 0, caution }));
    const others = inFlight.filter(({ kind }) => kind !== 'takeoff');
    const overlaps = others.filter(({ kind }) => kind === 'overlap');
    return [...others.filter(({ kind }) => kind !== 'overlap'), ...takeoff, ...overlaps];
  });
  // what was said before a gesture stays what it was while the hand is at work
  let said = verdict();
  const before = createMemo<SkillVerdict | undefined>((last) => (flight.before() ? (last ?? said) : undefined));
  createEffect(() => {
    const now = verdict();
    if (!flight.before()) said = now;
  });
  return {
    likelihood: () => {
      const known = likely();
      return known && known.of === flight.result().file ? known.result : undefined;
    },
    before,
    verdict,
    cautions,
    isLandingStale: () => waits() && whole()?.judged !== undefined && landedOf() !== flight.result().file,
    whole: () => (beforeOf(doc.file()) || afterOf(doc.file()) ? whole() : undefined),
    window,
    late,
    busy,
    failed,
    again: () => setTries(tries() + 1),
    pictures,
    cursor,
    setCursor: (t) => {
      page.cursor.play.pause();
      const now = whole();
      if (t >= 0 && t <= (now?.touchdown ?? 0)) {
        setOutside(undefined);
        page.cursor.set(t);
      } else setOutside(t);
    },
    row,
  };
}

export const useWholeState = keptState(makeWholeState);
export const wholeStateOf = (page: Page): WholeState => page.keepState(makeWholeState);
