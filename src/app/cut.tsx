/** The cut: what the plumb line meets, printed at the right. Numbers first, then what each is made of. */

import { type Accessor, createEffect, createMemo, createSignal, For, Index, type JSX, onCleanup, Show } from 'solid-js';
import { DEG, REV } from '../../sim/math/angles.ts';
import type { Place } from '../../sim/math/sorted.ts';
import { formatNumber, soften } from '../ui/numbers.ts';
import type { ColourName } from '../ui/plot/palette.ts';
import { type Quantity, sayNumber, unitOf } from '../ui/units.ts';
import { nameShape } from './flight.ts';
import { useCursor, useFlight, useServices } from './page.ts';
import { calcPlace, readAt } from './plot/readout.ts';
import { getEnergyParts, getMomentumParts, type Part } from './plot/stacks.ts';
import { explainWords } from './say/explain-units.ts';
import { texts } from './words.ts';

const c = texts.cut;

export interface CutValues {
  readonly t: number;
  readonly shape: string;
  readonly attitude: string;
  readonly twistRate: number;
  readonly somersaultRate: number;
  readonly tilt: number;
  readonly twistSoFar: number;
  readonly somersaultSoFar: number;
  readonly long: number;
  readonly lateral: number;
  readonly front: number;
  readonly momentum: number;
  readonly energy: number;
  readonly work: number;
  readonly place: Place;
}

export function useCut(): Accessor<CutValues> {
  const flight = useFlight();
  const cursor = useCursor();
  const cut = createMemo<CutValues>(() => {
    const { frames: f } = flight.result();
    const t = cursor.at();
    const place = calcPlace(f, t);
    const at = (column: Float64Array, width = 1, k = 0): number => readAt(column, place, width, k);
    // unsigned, in the direction that the flight as a whole turns; against it is negative
    const way = (column: Float64Array): number => (column[f.n - 1] < column[0] ? -1 : 1);
    const [q0, q1, q2, q3] = [0, 1, 2, 3].map((k) => f.quat_WF[4 * (place.i + Math.round(place.share)) + k]);
    const up = q0 * q0 - q1 * q1 + q2 * q2 - q3 * q3;
    return {
      t,
      shape: nameShape(flight.spans(), t),
      attitude: up > 0.5 ? c.headUp : up < -0.5 ? c.headDown : c.lying,
      twistRate: (at(f.twistRate) / REV) * way(f.twist),
      somersaultRate: (at(f.somersaultRate) / REV) * way(f.somersault),
      tilt: at(f.tilt) * DEG,
      twistSoFar: Math.abs(at(f.twist) - f.twist[0]) / REV,
      somersaultSoFar: Math.abs(at(f.somersault) - f.somersault[0]) / REV,
      lateral: at(f.moments, 3, 0),
      front: at(f.moments, 3, 1),
      long: at(f.moments, 3, 2),
      momentum: Math.hypot(at(f.h_Scm_W, 3, 0), at(f.h_Scm_W, 3, 1), at(f.h_Scm_W, 3, 2)),
      energy: at(f.eTotal),
      work: at(f.jointWork),
      place,
    };
  });
  return cut;
}

/** `quantity`: shown in the units that are set, with `unit` as a word behind them. */
export function Value(props: {
  value: number;
  decimals: number;
  unit: string;
  quantity?: Quantity;
  word?: string;
  hue?: string;
}) {
  const number = (): string =>
    props.quantity ? sayNumber(props.quantity, props.value, props.decimals) : formatNumber(props.value, props.decimals);
  const unit = (): string => (props.quantity ? `${unitOf(props.quantity)} ${props.unit}`.trim() : props.unit);
  return (
    <p class={`cut-value ${props.hue ?? ''}`}>
      <Show when={Number.isFinite(props.value)} fallback={<span class="quiet">{c.notDefined}</span>}>
        <b>{number()}</b>
        <span class="unit">{unit()}</span>
      </Show>
      <Show when={props.word}>
        <span class="word">{props.word}</span>
      </Show>
    </p>
  );
}

export const CutHead = (props: { cut: CutValues }): JSX.Element => (
  <>
    <h2 class="cut-head">{c.at(formatNumber(props.cut.t, 2))}</h2>
    <p class="word">
      {props.cut.shape ? `${soften(props.cut.shape)}, ` : ''}
      {props.cut.attitude}
    </p>
  </>
);

export function CutRates(props: { cut: CutValues }) {
  return (
    <>
      <Value value={props.cut.twistRate} decimals={2} quantity="rate" unit="" word={c.twist} hue="twist" />
      <Value value={props.cut.somersaultRate} decimals={2} quantity="rate" unit="" word={c.somersault} hue="som" />
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
          {c.of(sayTurns(props.whole ?? 0))}
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

export function MomentBars(props: { cut: CutValues }) {
  const most = (): number => Math.max(props.cut.lateral, props.cut.front, props.cut.long) * 1.35;
  return (
    <div class="moments">
      <MomentBar value={props.cut.long} most={most()} name={texts.plots.longAxis} hue="twist" />
      <MomentBar value={props.cut.lateral} most={most()} name={texts.plots.lateral} hue="som" />
      <MomentBar value={props.cut.front} most={most()} name={texts.plots.frontBack} hue="tilt" />
    </div>
  );
}

const MomentBar = (props: { value: number; most: number; name: string; hue: string }): JSX.Element => (
  <p class={`moment ${props.hue}`}>
    <span class="bar" style={{ width: `${share(props.value, props.most)}%` }} />
    <span>
      <b>{sayNumber('moment', props.value, 2)}</b> {props.name}
    </span>
  </p>
);

/** width of a composition bar on the bench, px */
const BAR_PX = 262;
const colourVar = (name: ColourName): string => `var(--${name})`;

/** Parts of a whole as one bar; what has no room inside is named above it. */
export function Composition(props: { cut: CutValues; kind: 'momentum' | 'energy' }) {
  const flight = useFlight();
  const parts = createMemo(() => {
    const f = flight.result().frames;
    const list: Part[] = props.kind === 'momentum' ? getMomentumParts(f) : getEnergyParts(f);
    const { i, share: s } = props.cut.place;
    const valued = list.map((part) => ({ part, value: part.curve(i) * (1 - s) + part.curve(i + 1) * s }));
    const whole = valued.reduce((sum, v) => sum + Math.abs(v.value), 0) || 1;
    return valued.map((v) => ({ ...v, percent: (Math.abs(v.value) / whole) * 100 }));
  });
  const word = (p: { part: Part; value: number }): string => `${p.part.name} ${sayNumber(props.kind, p.value)}`;
  const inside = (p: { percent: number; part: Part; value: number }): boolean =>
    (p.percent / 100) * BAR_PX > word(p).length * 6.4 + 12;
  return (
    <div class="composition">
      <p>
        {parts()
          .filter((p) => !inside(p))
          .map(word)
          .join(', ')}
      </p>
      <div class="composition-bar">
        <Index each={parts()}>
          {(p) => (
            <span
              classList={{ against: p().value < 0 }}
              style={{
                width: `${p().percent}%`,
                background: colourVar(p().part.colour),
                color: colourVar(p().part.on),
              }}
            >
              {inside(p()) ? word(p()) : ''}
            </span>
          )}
        </Index>
      </div>
    </div>
  );
}

/** The cursor rests when it has stood still this long, ms. */
const REST = 120;

/** What just changed and why: made when cursor and document rest, as the first look at a move costs some 2 ms. */
export function useExplanation(): Accessor<string> {
  const flight = useFlight();
  const cursor = useCursor();
  const services = useServices();
  const [words, setWords] = createSignal('');
  createEffect(() => {
    const [result, t] = [flight.result(), cursor.at()];
    if (flight.before()) return;
    const words = explainWords();
    const timer = setTimeout(() => setWords(services.flying.explain(result, t, words)), REST);
    onCleanup(() => clearTimeout(timer));
  });
  return words;
}

export function Explanation(props: { words: string }) {
  return (
    <Show when={props.words}>
      <p class="explanation" title={props.words} data-testid="explanation">
        <span class="spoken">{texts.changed}: </span>
        {props.words}
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
