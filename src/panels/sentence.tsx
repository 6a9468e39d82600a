/** The result as a sentence. Its coloured words are the legend of the page; every clause is a way to its place. */
import { createMemo, Show } from 'solid-js';
import type { Outline } from '../engine/result.ts';
import { texts } from '../texts.ts';
import type { Bench } from './bench.ts';
import { CodeLine } from './code-line.tsx';
import { formatNumber } from './numbers.ts';
import { sayNumber, unitOf } from './units.ts';

const s = texts.sentence;
/** From here on, deg, a sideways lean at the end is said. */
const TILT_SAID = 4;
/** Under this many revolutions there is no turn to speak of. */
const TURN_SAID = 0.05;

export interface SentenceWords {
  somersaults: string;
  somersaultWord: string;
  twists: string;
  twistWord: string;
  air: string;
  lands: string;
  landing: string;
  tilted: string;
}

export function wordSentence(o: Outline): SentenceWords {
  const soms = o.somersaults;
  const twists = o.twists;
  const turned = twists !== null && twists >= TURN_SAID;
  const tilted = o.tiltDeg !== null && Math.abs(o.tiltDeg) >= TILT_SAID;
  return {
    somersaults: soms === null || soms < TURN_SAID ? '' : countTurns(soms),
    somersaultWord:
      soms === null
        ? ''
        : soms < TURN_SAID
          ? s.noSomersault
          : s.somersault(isPlural(soms), inDegrees(), o.somersaultWord),
    twists: turned ? countTurns(twists) : '',
    twistWord: turned ? s.twist(isPlural(twists), inDegrees(), o.twistWord) : s.noTwist,
    air: formatNumber(o.duration, 2),
    lands: o.inAir ? s.ends : o.inverted ? s.enters : s.lands,
    landing: wordLanding(o),
    tilted: tilted ? `${formatNumber(Math.abs(o.tiltDeg ?? 0), 0)}°` : '',
  };
}

const inDegrees = (): boolean => unitOf('turns') === '°';
const countTurns = (turns: number): string => sayNumber('turns', turns, 2) + (inDegrees() ? '°' : '');
/** One is only what prints as one. */
export const isPlural = (turns: number): boolean => turns.toFixed(2) !== '1.00';

export function wordLanding(o: Outline): string {
  if (o.shortDeg === null) return wordLean(o.leanDeg);
  const deg = Math.round(Math.abs(o.shortDeg));
  if (deg === 0) return s.exact;
  return `${formatNumber(deg, 0)}° ${o.shortDeg > 0 ? s.short : s.over}`;
}

/** Without a turn nothing is short or over. */
function wordLean(leanDeg: number | null): string {
  if (leanDeg === null) return '';
  const deg = Math.round(Math.abs(leanDeg));
  if (deg === 0) return s.upright;
  if (deg === 180) return s.headDown;
  return s.leaning(formatNumber(deg, 0), leanDeg > 0 ? 'backward' : 'forward');
}

/** The whole sentence as text, for screen readers and for the picture's name. */
export function speakSentence(o: Outline): string {
  const w = wordSentence(o);
  if (o.somersaults === null) return s.undefined(formatNumber(o.undefinedFrom ?? 0, 2));
  const landing = w.landing ? `, ${w.lands}${w.landing}` : '';
  return `${w.somersaults}${w.somersaultWord}, ${w.twists}${w.twistWord}, ${w.air} s${s.air}${landing}${w.tilted ? `, ${s.tiltedWord}${w.tilted}` : ''}`;
}

/** The sentence, and quietly under it the skill's code. */
export function Result(props: { bench: Bench }) {
  return (
    <div class="result">
      <Sentence bench={props.bench} />
      <CodeLine bench={props.bench} />
    </div>
  );
}

function Sentence(props: { bench: Bench }) {
  const outline = createMemo(() => props.bench.result().outline);
  const words = createMemo(() => wordSentence(outline()));
  const bench = (): Bench => props.bench;
  return (
    <h1
      class="sentence"
      style={{ '--letters': speakSentence(outline()).length }}
      classList={{ stale: bench().outcome().fault !== undefined }}
      data-testid="sentence"
    >
      <Show
        when={outline().somersaults !== null}
        fallback={<span>{s.undefined(formatNumber(outline().undefinedFrom ?? 0, 2))}</span>}
      >
        <button type="button" class="clause som" title={s.toTakeoff} onClick={() => bench().goTo('takeoff')}>
          <b>{words().somersaults}</b>
          {words().somersaultWord}
        </button>
        {', '}
        <button
          type="button"
          class="clause twist"
          title={s.toFastest}
          onClick={() => bench().setCursor(findFastest(bench()))}
        >
          <b>{words().twists}</b>
          {words().twistWord}
        </button>
        {', '}
      </Show>
      <button type="button" class="clause" title={s.showsAir} onClick={() => bench().goTo('apex')}>
        <b>{words().air} s</b>
        <span class="quiet">{s.air}</span>
      </button>
      <Show when={words().landing}>
        {', '}
        <button type="button" class="clause" title={s.showsLanding} onClick={() => bench().goTo('touchdown')}>
          <span class="quiet">{words().lands}</span>
          <b>{words().landing}</b>
        </button>
        <Show when={words().tilted}>
          {', '}
          <button type="button" class="clause tilt" title={s.showsLanding} onClick={() => bench().goTo('touchdown')}>
            {s.tiltedWord}
            <b>{words().tilted}</b>
          </button>
        </Show>
      </Show>
    </h1>
  );
}

/** Where the twist is fastest. */
function findFastest(bench: Bench): number {
  const f = bench.result().frames;
  let best = 0;
  for (let i = 1; i < f.n; i++) if (Math.abs(f.twistRate[i]) > Math.abs(f.twistRate[best])) best = i;
  return f.t[best];
}
