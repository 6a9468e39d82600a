/** The result as a sentence. Its coloured words are the legend of the page; every clause is a way to its place. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup, Show } from 'solid-js';
import { beforeOf } from '../../../sim/math/phases.ts';
import type { ClausePlace } from '../../../sim/words/verdict-words.ts';
import { Clauses } from '../clauses.tsx';
import { loadPart } from '../load-part.ts';
import { type Page, useCursor, useDocument, useFlight, usePage, useShell } from '../page.ts';
import { clausesOf, speakVerdict } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { texts } from '../words.ts';

/** A swing takes some 30 ms: only what takes longer is said, so that nothing flickers. */
const SAID_AFTER_MS = 150;

/** No flight has come for a while, since what comes before it is being computed. */
export function useIsLate(): Accessor<boolean> {
  const flight = useFlight();
  const [isLate, setLate] = createSignal(false);
  const waiting = createMemo(() => (flight.outcome().isWaiting ? flight.result() : undefined));
  createEffect(() => {
    const timer = waiting() ? setTimeout(() => setLate(true), SAID_AFTER_MS) : undefined;
    if (!timer) setLate(false);
    onCleanup(() => clearTimeout(timer));
  });
  return isLate;
}

/** The first question comes so long after the first picture, or after the page where no picture comes; ms. */
const ASKED_AFTER_MS = 300;
const ASKED_WITHOUT_MS = 3000;
const loadFirstQuestion = loadPart(
  () => import('../../features/compare/first-question.tsx'),
  (m) => m,
);
const loadTry = loadPart(
  () => import('../../features/try/try-box.tsx'),
  (m) => m,
);

/** What comes after the first picture; without a network it is missing, and the page is as good as without it. */
function useAfterPicture<Parts extends object>(
  load: () => Promise<Parts>,
  fail?: () => void,
): Accessor<Parts | undefined> {
  const [parts, setParts] = createSignal<Parts>();
  const shell = useShell();
  createEffect(() => {
    const bring = (): void =>
      void load().then(
        (loaded) => setParts(() => loaded),
        () => fail?.(),
      );
    const timer = setTimeout(bring, shell.stage.isDrawn() ? ASKED_AFTER_MS : ASKED_WITHOUT_MS);
    onCleanup(() => clearTimeout(timer));
  });
  return parts;
}
export function useFirstQuestionParts() {
  const { answer } = useShell();
  const doc = useDocument();
  const [hasFailed, setFailed] = createSignal(false);
  // of every skill that is opened from then on: nobody else says that nothing comes
  createEffect(() => {
    doc.id();
    if (hasFailed()) answer.setOpening(null);
  });
  return useAfterPicture(loadFirstQuestion, () => setFailed(true));
}
export const useTryParts = () => useAfterPicture(loadTry);

/** What is waited for, in a line that is empty while nothing is. */
export function Computing(props: { isLate: boolean }) {
  const doc = useDocument();
  const flight = useFlight();
  const isBeside = (): boolean => flight.outcome().isBeside === true;
  const said = (): string =>
    isBeside()
      ? texts.sentence.flying
      : texts.sentence[beforeOf(doc.file())?.kind === 'contact' ? 'computingPush' : 'computingSwing'];
  return (
    <p class="computing" aria-live="polite">
      {props.isLate ? said() : ''}
      <Show when={props.isLate && isBeside()}>
        {' '}
        <button type="button" class="link" onClick={() => flight.cancel()}>
          {texts.sentence.cancel}
        </button>
      </Show>
    </p>
  );
}

/** `unseen`: it is read out alone */
export function Sentence(props: { isLate: boolean; unseen?: boolean }) {
  const flight = useFlight();
  const cursor = useCursor();
  const page = usePage();
  const whole = useWholeState();
  const clauses = createMemo(() => clausesOf(whole.verdict()));
  const go = (place: ClausePlace): void => {
    const near = whole.verdict().missed.find((m) => m.kind === 'near');
    if (place === 'nearest') cursor.set(near?.t ?? 0);
    else if (place === 'fastestTwist') cursor.set(findFastest(page));
    else cursor.goTo(place);
  };
  return (
    <h1
      class="sentence"
      style={{ '--letters': speakVerdict(whole.verdict()).length }}
      classList={{ spoken: props.unseen, stale: props.isLate || flight.outcome().fault !== undefined }}
      data-testid="sentence"
    >
      <Clauses clauses={clauses()} press={go} stale={whole.isLandingStale()} />
    </h1>
  );
}

/** Where the twist is fastest. */
function findFastest(page: Page): number {
  const { flight } = page;
  const f = flight.result().frames;
  let best = 0;
  for (let i = 1; i < f.n; i++) if (Math.abs(f.twistRate[i]) > Math.abs(f.twistRate[best])) best = i;
  return f.t[best];
}
