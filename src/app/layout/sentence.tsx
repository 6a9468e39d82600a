/** The result as a sentence. Its coloured words are the legend of the page; every clause is a way to its place. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup, Show } from 'solid-js';
import { beforeOf } from '../../../sim/math/phases.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type Page, useCursor, useDocument, useFlight, usePage } from '../page.ts';
import { speakSentence, wordSentence } from '../say/sentence-words.ts';
import { texts } from '../words.ts';
import { CodeLine } from './code-line.tsx';

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

/** The sentence, and quietly under it the skill's code. */
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
      <CodeLine />
    </div>
  );
}

function Sentence(props: { isLate: boolean }) {
  const flight = useFlight();
  const cursor = useCursor();
  const page = usePage();
  const outline = createMemo(() => flight.result().outline);
  const words = createMemo(() => wordSentence(outline()));
  return (
    <h1
      class="sentence"
      style={{ '--letters': speakSentence(outline()).length }}
      classList={{ stale: props.isLate || flight.outcome().fault !== undefined }}
      data-testid="sentence"
    >
      <Show
        when={outline().somersaults !== null}
        fallback={<span>{s.undefined(formatNumber(outline().undefinedFrom ?? 0, 2))}</span>}
      >
        <button type="button" class="clause som" title={s.toTakeoff} onClick={() => cursor.goTo('takeoff')}>
          <b>{words().somersaults}</b>
          {words().somersaultWord}
        </button>
        {', '}
        <button type="button" class="clause twist" title={s.toFastest} onClick={() => cursor.set(findFastest(page))}>
          <b>{words().twists}</b>
          {words().twistWord}
        </button>
        {', '}
      </Show>
      <button type="button" class="clause" title={s.showsAir} onClick={() => cursor.goTo('apex')}>
        <b>{words().air} s</b>
        <span class="quiet">{s.air}</span>
      </button>
      <Show when={words().landing}>
        {', '}
        <button type="button" class="clause" title={s.showsLanding} onClick={() => cursor.goTo('touchdown')}>
          <span class="quiet">{words().lands}</span>
          <b>{words().landing}</b>
        </button>
        <Show when={words().tilted}>
          {', '}
          <button type="button" class="clause tilt" title={s.showsLanding} onClick={() => cursor.goTo('touchdown')}>
            {s.tiltedWord}
            <b>{words().tilted}</b>
          </button>
        </Show>
      </Show>
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
