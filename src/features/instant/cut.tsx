/** The cut, printed at the right: what the plumb line meets, numbers first, then how much of the turn is done. */
import { createMemo, For, type JSX, Show } from 'solid-js';
import type { CutValues } from '../../app/cut-values.ts';
import { useCursor, useFlight } from '../../app/page.ts';
import { Term } from '../../app/terms/term.tsx';
import type { TermName } from '../../app/terms/term-name.ts';
import { texts } from '../../app/words.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { formatNumber, soften } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, unitOf } from '../../ui/units.ts';

const c = texts.cut;

/** `quantity`: shown in the units that are set, with `unit` as a word behind them. `term`: that word, or the one below, explains itself. `other`: the same of another way, at the head of the line below. */
export function Value(props: {
  value: number;
  decimals: number;
  unit: string;
  quantity?: QuantityKind;
  word?: string;
  hue?: string;
  term?: TermName;
  other?: JSX.Element;
}) {
  const number = (): string =>
    props.quantity ? sayNumber(props.quantity, props.value, props.decimals) : formatNumber(props.value, props.decimals);
  const sign = (): string => (props.quantity ? unitOf(props.quantity) : props.unit.startsWith('°') ? '°' : '');
  /** a degree sign is joined to its number */
  const joined = (): string => (sign() === '°' ? sign() : '');
  const words = (): string => (props.quantity ? props.unit : props.unit.slice(sign().length)).trim();
  return (
    <p class={`cut-value ${props.hue ?? ''}`}>
      <Show when={Number.isFinite(props.value)} fallback={<span class="quiet">{c.notDefined}</span>}>
        <b>
          {number()}
          {joined()}
        </b>
        <span class="unit">
          {joined() ? '' : sign()} <Word term={props.word ? undefined : props.term} text={words()} />
        </span>
      </Show>
      <Show when={props.other || props.word}>
        <span class="word">
          {props.other} <Word term={props.word ? props.term : undefined} text={props.word ?? ''} />
        </span>
      </Show>
    </p>
  );
}

const Word = (props: { term: TermName | undefined; text: string }): JSX.Element => (
  <Show when={props.term} fallback={props.text}>
    {(name) => <Term name={name()}>{props.text}</Term>}
  </Show>
);

export const CutHead = (props: { cut: CutValues }): JSX.Element => (
  <>
    <h2 class="cut-head">{c.at(formatNumber(props.cut.t, 2))}</h2>
    <p class="word">
      {props.cut.word ? `${props.cut.word}, ` : ''}
      {props.cut.attitude}
    </p>
  </>
);

export function CutRates(props: { cut: CutValues; otherTwist?: JSX.Element; otherSomersault?: JSX.Element }) {
  return (
    <>
      <Value
        value={props.cut.twistRate}
        decimals={2}
        quantity="rate"
        unit=""
        word={c.twist}
        hue="twist"
        other={props.otherTwist}
      />
      <Value
        value={props.cut.somersaultRate}
        decimals={2}
        quantity="rate"
        unit=""
        word={c.somersault}
        hue="som"
        other={props.otherSomersault}
      />
    </>
  );
}

/** How much of the whole turn is done, in quarters. */
export function SoFar(props: { cut: CutValues }) {
  const flight = useFlight();
  const outline = () => flight.result().outline;
  const scale = createMemo(() => Math.max(outline().somersaults ?? 0, outline().twists ?? 0, 0.5) * 1.02);
  return (
    <>
      <SoFarBar
        word={c.somersault}
        hue="som"
        done={props.cut.somersaultSoFar}
        whole={outline().somersaults}
        scale={scale()}
      />
      <Show when={(outline().twists ?? 0) > 0.02}>
        <SoFarBar word={c.twist} hue="twist" done={props.cut.twistSoFar} whole={outline().twists} scale={scale()} />
      </Show>
    </>
  );
}

function SoFarBar(props: { word: string; hue: string; done: number; whole: number | null; scale: number }) {
  const quarters = createMemo(() => Math.min(24, Math.floor(props.scale * 4)));
  return (
    <Show when={props.whole !== null && Number.isFinite(props.done)}>
      <div class={`so-far ${props.hue}`}>
        <p>
          {c.soFar(props.word)}
          <b>{sayNumber('turns', props.done, 2)}</b>
          {c.atEnd(sayTurns(props.whole ?? 0))}
        </p>
        <svg viewBox="0 0 100 16" preserveAspectRatio="none" aria-hidden="true">
          <rect class="track" x="0" y="0" width={share(props.whole ?? 0, props.scale)} height="11" />
          <rect class="done" x="0" y="0" width={share(props.done, props.scale)} height="11" />
          <For each={Array.from({ length: quarters() }, (_, i) => (i + 1) / 4)}>
            {(q) => <path d={`M${share(q, props.scale)} 11v4`} />}
          </For>
        </svg>
      </div>
    </Show>
  );
}

/** Turns are counted without a unit, degrees with their sign. */
const sayTurns = (turns: number): string => sayNumber('turns', turns, 2) + (unitOf('turns') === '°' ? '°' : '');

const share = (v: number, whole: number): number => (whole > 0 ? Math.min(Math.max((v / whole) * 100, 0), 100) : 0);

/** px per kg m2 of all three bars, and px that the longest may take beside its words */
const BAR_SCALE = 20;
const BAR_MOST = 150;

export function MomentBars(props: { cut: CutValues }) {
  const scale = (): number =>
    Math.min(BAR_SCALE, BAR_MOST / Math.max(props.cut.lateral, props.cut.front, props.cut.long));
  return (
    <div class="moments">
      <MomentBar value={props.cut.long} scale={scale()} name={texts.plots.longAxis} hue="twist" />
      <MomentBar value={props.cut.lateral} scale={scale()} name={texts.plots.lateral} hue="som" />
      <MomentBar value={props.cut.front} scale={scale()} name={texts.plots.frontBack} hue="tilt" />
    </div>
  );
}

const MomentBar = (props: { value: number; scale: number; name: string; hue: string }): JSX.Element => (
  <p class={`moment ${props.hue}`}>
    <span class="bar" style={{ width: `calc(${props.value * props.scale}px * var(--bar-share, 1))` }} />
    <span>
      <b>{sayNumber('moment', props.value, 2)}</b> {props.name}
    </span>
  </p>
);

export function Explanation(props: { words: string }) {
  return (
    <Show when={props.words}>
      <p class="explanation" title={props.words} data-testid="explanation">
        <span class="spoken">{texts.changed}: </span>
        <CutText class="explained" text={props.words} />
      </p>
    </Show>
  );
}

/** Spoken when the cursor rests. */
export function SpokenCut(props: { cut: CutValues; explanation: string }) {
  const cursor = useCursor();
  const words = createMemo<string>((last) => {
    if (cursor.play.playing()) return last;
    const { t, shape, twistRate, somersaultRate, tilt } = props.cut;
    const rate = (v: number): string => sayNumber('rate', v, 2);
    return c.spoken(
      formatNumber(t, 2),
      soften(shape),
      rate(twistRate),
      rate(somersaultRate),
      unitOf('rate') === '°/s',
      formatNumber(tilt, 0),
    );
  }, '');
  return (
    <p class="spoken" role="status" aria-live="polite">
      {words()}
      {props.explanation && !cursor.play.playing() ? `. ${texts.changed}: ${props.explanation}` : ''}
    </p>
  );
}
