/** The whole skill and its result: asked for whenever the document with a swing, contact or landing changes. */
import { type Accessor, batch, createEffect, createMemo, createSignal, on, onCleanup, untrack } from 'solid-js';
import type { ChainSensitivity, LateDose, Likelihood, SkillFile, SkillVerdict } from '../../sim/index.ts';
import { afterOf, isMoreThanFlight } from '../../sim/math/phases.ts';
import { placeIn } from '../../sim/math/sorted.ts';
import { getId } from '../document/history.ts';
import type { Contacting } from '../engine/contact.ts';
import type { FlightCaution } from '../engine/result.ts';
import type { CatchWindowResult, LegResult, WindowResult } from '../jobs/kinds/leg-data.ts';
import type { PhaseSpan, StudyKind, WholeResult } from '../jobs/kinds/whole-data.ts';
import type { WholePictures } from '../pictures/whole-input.ts';
import { readStored, writeStored } from '../ui/stored.ts';
import { FIRST_ASKED } from './asked-clearance.ts';
import { keptState, type Page } from './page.ts';
import { makePlayback, type Playback } from './playback.ts';

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
  readonly catchWindow: Accessor<CatchWindowResult | undefined>;
  /** how far bounces of one bed move with small errors */
  readonly sensitivity: Accessor<ChainSensitivity | undefined>;
  readonly late: Accessor<LateDose | undefined>;
  readonly busy: Accessor<boolean>;
  readonly failed: Accessor<string>;
  /** asks once more */
  again(): void;
  readonly pictures: Accessor<WholePictures | undefined>;
  /** the leg that the page is about, of the result shown */
  readonly leg: Accessor<LegResult | undefined>;
  /** on the ruler of the whole skill, s; in the air it is the page's */
  readonly cursor: Accessor<number>;
  /** in another leg, the page goes there */
  setCursor(t: number): void;
  /** from the first phase to where the verdict is reached */
  readonly play: Playback;
  /** row of the columns, and phase, at the cursor */
  readonly row: Accessor<number>;
  readonly phase: Accessor<PhaseSpan | undefined>;
  /** m that is asked from rail, table or board */
  readonly asked: Accessor<number>;
  setAsked(m: number): void;
}

const ASKED_KEY = 'shapeflight-asked-clearance';

/** The page goes to another leg when the cursor has been in it this long, ms. */
const ENTERS = 160;
/** A study starts when hands have rested this long, ms. */
const REST = 350;

function makeWholeState(page: Page): WholeState {
  const { services, doc, flight, shell } = page;
  const [engine, setEngine] = createSignal<Contacting>();
  const [pictures, setPictures] = createSignal<WholePictures>();
  const [whole, setWhole] = createSignal<WholeResult>();
  const [sensitivity, setSensitivity] = createSignal<ChainSensitivity>();
  const [catchWindow, setCatchWindow] = createSignal<CatchWindowResult>();
  const [window, setWindow] = createSignal<WindowResult>();
  const [likely, setLikely] = createSignal<{ of: SkillFile; result: Likelihood }>();
  const [late, setLate] = createSignal<LateDose>();
  const [busy, setBusy] = createSignal(false);
  const [failed, setFailed] = createSignal('');
  const [tries, setTries] = createSignal(0);
  const [outside, setOutside] = createSignal<number>();
  /** what the landing known is of */
  const [landedOf, setLandedOf] = createSignal<SkillFile>();

  const stored = Number.parseFloat(readStored(ASKED_KEY) ?? '');
  const [asked, setAsked] = createSignal(Number.isFinite(stored) ? stored : FIRST_ASKED);
  /** the leg that was worked on as a chain was asked about */
  const views = new WeakMap<SkillFile, SkillFile>();
  /** what is known of a chain is of the flight shown */
  const isOfShown = (of: SkillFile | undefined): boolean => {
    if (!of) return false;
    const shown = flight.result().file;
    return views.get(of) === shown || (of === doc.chain() && shown === doc.file());
  };

  const isWanted = createMemo(() => isMoreThanFlight(doc.chain()) || shell.tool() === 'contact');
  // its parts are not loaded for a flight alone, until someone looks at what comes before and after it
  let isLoading = false;
  createEffect(() => {
    if (isLoading || !isWanted()) return;
    isLoading = true;
    void services.load.contacting().then(({ engine: e, pictures: p }) => {
      setEngine(() => e);
      setPictures(() => p);
    });
  });
  /** the leg that was studied last */
  let studied = -1;
  const forget = (): void => {
    setWindow(undefined);
    setCatchWindow(undefined);
    setSensitivity(undefined);
    setLate(undefined);
    studied = -1;
  };
  // studies of another document are none of this one
  createEffect(on(() => getId(doc.history()), forget, { defer: true }));
  createEffect(() => {
    const contacting = engine();
    const file = doc.chain();
    tries();
    if (!contacting) return;
    if (!isWanted()) {
      setWhole(undefined);
      setLandedOf(undefined);
      setFailed('');
      return;
    }
    views.set(file, untrack(doc.file));
    const athlete = doc.athlete();
    const inDrag = flight.before() !== undefined;
    let unsubscribe: (() => void) | undefined;
    const ask = (study?: StudyKind): void => {
      setBusy(true);
      if (study === 'all') studied = untrack(doc.leg);
      unsubscribe = contacting.ask(
        { file, athlete, study, leg: untrack(doc.leg) },
        {
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
          catchWindow: (now) => {
            setCatchWindow(now);
          },
          sensitivity: (now) => {
            setSensitivity(now);
          },
          late: (now) => {
            setLate(now);
          },
          failed: (reason) => {
            setBusy(false);
            setFailed(reason);
          },
        },
      );
    };
    ask();
    // the release is studied for who looks at it, the landing for who reads the verdict
    const wanted = shell.tool() === 'contact' ? 'all' : afterOf(file) ? 'landing' : undefined;
    const timer = inDrag || !wanted ? undefined : setTimeout(() => ask(wanted), REST);
    onCleanup(() => {
      clearTimeout(timer);
      unsubscribe?.();
    });
  });

  const leg = createMemo(() => {
    const legs = whole()?.legs;
    return legs?.[doc.leg()];
  });
  // what is let go or caught in another leg is studied once the page rests there
  createEffect(() => {
    const at = doc.leg();
    const now = leg();
    if (shell.tool() !== 'contact' || !(now?.swing || now?.catch) || studied < 0 || studied === at) return;
    const timer = setTimeout(() => setTries(untrack(tries) + 1), REST);
    onCleanup(() => clearTimeout(timer));
  });
  const cursor = createMemo(() => {
    const t = outside();
    const now = whole();
    if (!now) return page.cursor.at();
    return t === undefined ? (leg()?.takeoff ?? 0) + page.cursor.at() : Math.min(Math.max(t, now.from), now.to);
  });
  const row = createMemo(() => {
    const now = whole();
    if (!now) return 0;
    const { t } = now.columns;
    const { i, share } = placeIn(t, cursor());
    return share < 0.5 ? i : i + 1;
  });
  const phaseAt = (t: number): PhaseSpan | undefined => {
    const spans = whole()?.phases ?? [];
    return spans.find((span) => t < span.to - 1e-9) ?? spans[spans.length - 1];
  };
  /** the leg that the page is to go to, once the cursor has been in it for a while: a scrub or play through a chain does not fly every leg it crosses */
  let goes: { readonly leg: number; readonly timer: ReturnType<typeof setTimeout> } | undefined;
  const goTo = (k: number): void => {
    if (goes?.leg === k) return;
    clearTimeout(goes?.timer);
    const timer = setTimeout(() => {
      goes = undefined;
      doc.setLeg(k);
    }, ENTERS);
    goes = { leg: k, timer };
  };
  const put = (t: number): void => {
    const span = phaseAt(t);
    if (span && span.leg !== doc.leg()) {
      setOutside(t);
      goTo(span.leg);
      return;
    }
    clearTimeout(goes?.timer);
    goes = undefined;
    if (!span || span.kind === 'flight') {
      setOutside(undefined);
      page.cursor.set(t - (leg()?.takeoff ?? 0));
    } else setOutside(t);
  };
  // in the air of the leg that the page is about, its cursor is the one there is
  createEffect(() => {
    const t = outside();
    const at = leg();
    if (t === undefined || !at || flight.id() !== doc.id() || t < at.takeoff || t > at.touchdown) return;
    untrack(() => page.cursor.set(t - at.takeoff));
    setOutside(undefined);
  });
  const play = makePlayback(cursor, put, {
    from: () => whole()?.from ?? 0,
    to: () => whole()?.to ?? 0,
  });
  const setCursor = (t: number): void => {
    page.cursor.play.pause();
    play.pause();
    put(t);
  };
  const waits = (): boolean => {
    const { ending } = flight.result().outline.verdict;
    return ending.kind === 'notComputed' && ending.why.kind === 'pending';
  };
  const verdict = createMemo((): SkillVerdict => {
    const inFlight = flight.result().outline.verdict;
    const { judged, nearest } = leg() ?? {};
    // a landing of the flight before is shown as such; what came near a rail then is no news of this one
    const isNews = isOfShown(landedOf()) && nearest && nearest.distance < asked();
    const missed = isNews ? [{ kind: 'near' as const, ...nearest }, ...inFlight.missed] : inFlight.missed;
    return { ...inFlight, missed, ...(waits() ? judged : {}) };
  });
  const cautions = createMemo((): readonly FlightCaution[] => {
    const inFlight = flight.cautions();
    const report = isOfShown(landedOf()) ? leg()?.contact?.report : undefined;
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
      return known && isOfShown(known.of) ? known.result : undefined;
    },
    before,
    verdict,
    cautions,
    isLandingStale: () => waits() && leg()?.judged !== undefined && !isOfShown(landedOf()),
    whole,
    window,
    catchWindow,
    sensitivity,
    late,
    busy,
    failed,
    again: () => setTries(tries() + 1),
    pictures,
    cursor,
    leg,
    setCursor,
    play,
    row,
    phase: createMemo(() => phaseAt(cursor())),
    asked,
    setAsked: (m) => {
      setAsked(m);
      writeStored(ASKED_KEY, String(m));
    },
  };
}

export const useWholeState = keptState(makeWholeState);
export const wholeStateOf = (page: Page): WholeState => page.keepState(makeWholeState);
