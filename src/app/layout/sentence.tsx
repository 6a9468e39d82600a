/** The result as a sentence. Its coloured words are the legend of the page; every clause is a way to its place. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import { beforeOf } from '../../../sim/math/phases.ts';
import type { ClausePlace } from '../../../sim/words/verdict-words.ts';
import { Clauses } from '../clauses.tsx';
import { type Page, useCursor, useDocument, useFlight, usePage } from '../page.ts';
import { clausesOf, speakVerdict } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { texts } from '../words.ts';
import { CodeLine } from './code-line.tsx';
import { Judged } from './judged.tsx';
import { LegPick } from './leg-pick.tsx';
import { SensitiveLine } from './sensitive-line.tsx';

const s = texts.sentence;

/** A swing takes some 30 ms: only what takes longer is said, so that nothing flickers. */
const SAID_AFTER_MS = 150;

/** No flight has come for a while, since what comes before it is being computed. */
function useIsLate(): Accessor<boolean> {
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

/** The sentence, and quietly under it the skill's code and how sensitive the result is. */
export function Result() {
  const doc = useDocument();
  const isLate = useIsLate();
  const said = (): string => (beforeOf(doc.file())?.kind === 'contact' ? s.computingPush : s.computingSwing);
  return (
    <div class="result">
      <Sentence isLate={isLate()} />
      <p class="computing" aria-live="polite">
        {isLate() ? said() : ''}
      </p>
      <div class="under">
        <LegPick />
        <Judged />
        <CodeLine />
        <SensitiveLine />
        <span class="compared">{texts.compared}</span>
      </div>
    </div>
  );
}

function Sentence(props: { isLate: boolean }) {
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
      classList={{ stale: props.isLate || flight.outcome().fault !== undefined }}
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
