/** What the catch was: close-up of hands and rail, speeds along and across the arms, force or why there is none, and the window of letting go. */
import { For, Show } from 'solid-js';
import { wordCatch, wordFailing, wordGap, wordUncomputed } from '../../../sim/words/catch-words.ts';
import { sentence } from '../../../sim/words/verdict-words.ts';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import type { CatchWindowResult, LegCatch } from '../../jobs/kinds/leg-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { catchTexts as t } from './catch-texts.ts';

const DEG = 180 / Math.PI;
/** px a metre, half the picture in px, and what of the way is shown, s */
const LARGE = 640;
const HALF = { x: 104, y: 78 } as const;
const LAST = 0.06;
/** s between two discs */
const DISC = 0.01;
const RINGS = [0.05, 0.1] as const;

function CloseUp(props: { caught: LegCatch; way: 1 | -1 }) {
  const points = (hand: 'left' | 'right') => {
    const { t: times } = props.caught;
    const end = props.caught.outcome.moment.t + times[0];
    const list: { x: number; y: number; isDisc: boolean }[] = [];
    let next = end - LAST;
    for (let i = 0; i < times.length; i++) {
      if (times[i] < end - LAST || times[i] > end + 1e-6) continue;
      const isDisc = times[i] >= next - 1e-6;
      if (isDisc) next += DISC;
      const { x, y } = props.caught[hand];
      list.push({ x: HALF.x + props.way * x[i] * LARGE, y: HALF.y - y[i] * LARGE, isDisc });
    }
    return list;
  };
  return (
    <svg class="close-up" width={2 * HALF.x} height={2 * HALF.y} role="img" aria-label={t.atRail}>
      <For each={RINGS}>
        {(r, i) => <circle class={i() === 0 ? 'gap' : 'gap far'} cx={HALF.x} cy={HALF.y} r={r * LARGE} />}
      </For>
      <For each={['right', 'left'] as const}>
        {(hand) => (
          <>
            <path
              class={`hand-${hand}`}
              d={points(hand)
                .map(({ x, y }, i) => `${i ? 'L' : 'M'}${x.toFixed(1)} ${y.toFixed(1)}`)
                .join('')}
            />
            <For each={points(hand).filter(({ isDisc }) => isDisc)}>
              {({ x, y }) => <circle class={`disc hand-${hand}`} cx={x} cy={y} r="3.2" />}
            </For>
          </>
        )}
      </For>
      <circle class="rail" cx={HALF.x} cy={HALF.y} r="9" />
      <text x={HALF.x + 22} y={HALF.y + 40}>
        5 cm
      </text>
      <text x={HALF.x + 52} y={HALF.y + 66}>
        10
      </text>
    </svg>
  );
}

export function CatchSide(props: {
  caught: LegCatch;
  way: 1 | -1;
  window: CatchWindowResult | undefined;
  width: number;
}) {
  const moment = () => props.caught.outcome.moment;
  const within = (): string => {
    const { outcome } = props.caught;
    return outcome.kind === 'missed' ? '' : t.within(formatNumber((outcome.within[1] - outcome.within[0]) * 1000, 0));
  };
  const rows = (): readonly (readonly [string, string, string])[] => {
    const { spec, turned, load, notComputed } = props.caught;
    const m = moment();
    return [
      [t.along, say('speed', m.along, 1), t.asked(say('speed', spec.closing, 1))],
      [t.across, say('speed', m.across, 1), t.toward(say('speed', Math.abs(m.toward), 1), m.toward >= 0)],
      [
        t.gap,
        wordGap(m.gap, PAGE_NUMBERS),
        [t.gapAsked(wordGap(spec.gap, PAGE_NUMBERS)), within()].filter(Boolean).join('; '),
      ],
      ...(turned
        ? ([
            [
              t.off,
              `${formatNumber(Math.abs(turned.unfinished) * DEG, 0)}°`,
              t.tilt(`${formatNumber(Math.abs(turned.tilt) * DEG, 0)}°`),
            ],
          ] as const)
        : []),
      [
        t.force,
        load ? formatNumber(load.weights, 1) : '–',
        load
          ? t.forceRange(formatNumber(load.range[0], 1), formatNumber(load.range[1], 1))
          : notComputed
            ? wordUncomputed(notComputed, PAGE_NUMBERS)
            : '',
      ],
    ];
  };
  return (
    <section class="catch-side">
      <p class="verdict" role="status" data-testid="catch">
        <b>{sentence(wordCatch(props.caught, PAGE_NUMBERS))}</b>
      </p>
      <div class="catch-parts">
        <figure>
          <figcaption>
            <b>{t.atRail}</b> {t.timesLarge('8', formatNumber(LAST * 1000, 0))}
          </figcaption>
          <CloseUp caught={props.caught} way={props.way} />
        </figure>
        <dl>
          <For each={rows()}>
            {([name, value, under]) => (
              <div>
                <dt>{name}</dt>
                <dd>
                  {value}
                  <Show when={under}>
                    <span>{under}</span>
                  </Show>
                </dd>
              </div>
            )}
          </For>
        </dl>
      </div>
      <Show when={props.window}>{(window) => <CatchWindow {...props} window={window()} />}</Show>
    </section>
  );
}

const PLOT = 70;

function CatchWindow(props: { caught: LegCatch; window: CatchWindowResult; width: number }) {
  const tries = () => props.window.tries.filter(({ gapM }) => Number.isFinite(gapM));
  const x = (ms: number): number => {
    const all = props.window.tries;
    const [a, b] = [all[0].ms, all[all.length - 1].ms];
    return 14 + ((ms - a) / (b - a)) * (props.width - 28);
  };
  const most = (): number => Math.max(0.1, Math.min(0.5, Math.max(...tries().map(({ gapM }) => gapM))));
  const y = (m: number): number => 8 + (PLOT - 14) * (1 - Math.min(m, most()) / most());
  const ends = (): string[] => {
    const { span, ends: found } = props.window;
    if (!span) return [];
    return found.flatMap((end, i) =>
      end
        ? [
            t.end(
              formatNumber(Math.abs(i === 0 ? span.fromMs : span.toMs), 0),
              (i === 0 ? span.fromMs : span.toMs) < 0,
              wordFailing(end, props.caught.spec, PAGE_NUMBERS),
            ),
          ]
        : [],
    );
  };
  return (
    <figure class="study study-chart">
      <figcaption>
        <b>{t.title}</b> {t.of}
      </figcaption>
      <svg width={props.width} height={PLOT + 18} role="img" aria-label={t.title}>
        <Show when={props.window.span}>
          {(span) => (
            <rect
              class="window"
              x={x(span().fromMs)}
              width={Math.max(1, x(span().toMs) - x(span().fromMs))}
              y="2"
              height={PLOT - 4}
            />
          )}
        </Show>
        <path class="zero" d={`M14 ${y(0)}H${props.width - 14}`} />
        <path class="asked" d={`M14 ${y(props.caught.spec.gap)}H${props.width - 14}`} />
        <path
          class="curve"
          d={tries()
            .map(({ ms, gapM }, i) => `${i ? 'L' : 'M'}${x(ms).toFixed(1)} ${y(gapM).toFixed(1)}`)
            .join('')}
        />
        <For each={[-40, -20, 0, 20, 40]}>
          {(ms) => (
            <text x={x(ms)} y={PLOT + 14} text-anchor="middle">
              {ms > 0 ? `+${ms}` : formatNumber(ms, 0)}
            </text>
          )}
        </For>
      </svg>
      <p class="study-both" data-testid="catch-window">
        <b>
          {props.window.span ? t.window(formatNumber(props.window.span.toMs - props.window.span.fromMs, 0)) : t.none}
        </b>{' '}
        {ends().join('; ')}
      </p>
    </figure>
  );
}
