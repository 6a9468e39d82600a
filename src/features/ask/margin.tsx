/** How much it forgives: one input at a time as bars, all together as tries, twist against landing. */
import { createEffect, createMemo, For, Show } from 'solid-js';
import type { Bar, ErrorSetting, ReflexShare, ShareAfter } from '../../../sim/index.ts';
import { wordCoarseTwist } from '../../../sim/words/basis-words.ts';
import { useFlight } from '../../app/page.ts';
import { usePalette } from '../../app/plot/plot-canvas.tsx';
import { PAGE_NUMBERS } from '../../app/say/sentence-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { AskState } from './ask-state.ts';
import { decimalsOfInput, nameInput, numberIn, unitIn } from './ask-words.ts';
import { AskedRun } from './asked-run.tsx';
import type { StudyState, WindowKind } from './study-state.ts';
import { drawTries } from './tries-draw.ts';
import { askTexts as t } from './words.ts';

type Props = { ask: AskState; study: StudyState };

const percent = (share: number): string => formatNumber(100 * share, 0);
/** Times are shown in ms: a slip is small. */
const small = (id: string, unit: Parameters<typeof numberIn>[0], by: number): string =>
  unit === 's' ? formatNumber(1000 * by, decimalsOfInput(id, unit) - 3) : numberIn(unit, by);
const smallUnit = (unit: Parameters<typeof numberIn>[0]): string => (unit === 's' ? 'ms' : unitIn(unit));

const LEVELS: readonly ErrorSetting['level'][] = ['national', 'elite'];
/** Half to twice the usual errors. */
const FACTORS = [0.5, 1, 2];

export function StudyChoices(props: Props) {
  return (
    <div class="study-choices">
      <label class="ask-pick">
        {t.window}
        <select
          value={props.study.kind()}
          onChange={(e) => props.study.setKind(e.currentTarget.value as WindowKind)}
          title={t.windowMeans[props.study.kind()]}
        >
          <option value="usual">{t.windows.usual}</option>
          <option value="wanted">{t.windows.wanted}</option>
        </select>
      </label>
      <label class="ask-pick">
        {t.errorLevel}
        <select
          value={props.study.errors().level}
          onChange={(e) => props.study.setErrors({ level: e.currentTarget.value as ErrorSetting['level'] })}
        >
          <For each={LEVELS}>{(level) => <option value={level}>{t.errorLevels[level]}</option>}</For>
        </select>
      </label>
      <label class="ask-pick">
        {t.errorFactor}
        <select
          value={String(props.study.errors().factor)}
          onChange={(e) => props.study.setErrors({ factor: Number(e.currentTarget.value) })}
        >
          <For each={FACTORS}>
            {(factor) => <option value={String(factor)}>{t.errorTimes(formatNumber(factor, 1))}</option>}
          </For>
        </select>
      </label>
      <fieldset class="ask-switch">
        <legend>{t.balance}</legend>
        <For each={['off', 'on'] as const}>
          {(way) => (
            <button
              type="button"
              aria-pressed={props.study.balanced() === (way === 'on')}
              onClick={() => props.study.setBalanced(way === 'on')}
            >
              {t[way]}
            </button>
          )}
        </For>
      </fieldset>
    </div>
  );
}

/** A longer list of inputs is not read. */
const MOST_NAMED = 3;

export function BalanceWords(props: Props) {
  const flight = useFlight();
  const sources = createMemo(() => {
    const open = props.ask.skill();
    const found = open ? (props.ask.asking()?.errorSources(open, props.study.errors()) ?? []) : [];
    return found.map(({ inputs, source }) => {
      if (found.length === 1 && inputs.length > MOST_NAMED) return t.spreadFrom(t.spreadAll, source);
      const names = inputs.map((id) => (open ? nameInput(id, flight.spans(), open.spec) : id));
      const said =
        names.length > MOST_NAMED
          ? t.andMore(names.slice(0, MOST_NAMED - 1), names.length - MOST_NAMED + 1)
          : names.join(', ');
      return t.spreadFrom(said, source);
    });
  });
  const isHandLate = (): boolean => props.ask.inputOf('swing.lateHand') !== undefined;
  const together = (): string => {
    const open = props.ask.skill();
    return open ? (props.ask.asking()?.errorsTogether(open) ?? '') : '';
  };
  return (
    <p class="quiet balance-words">
      {props.study.balanced()
        ? t.balanceMeans.on(formatNumber(props.ask.asking()?.balance.delayS ?? 0, 2))
        : t.balanceMeans.off}{' '}
      {t.spreadIs} {sources().join(' ')} {t.together(together())} {isHandLate() ? wordCoarseTwist(PAGE_NUMBERS) : ''}
    </p>
  );
}

export function StudyRun(props: Props) {
  return (
    <span class="study-run">
      <AskedRun
        of={props.study}
        label={t.margin}
        words={(p) => t.working(String(Math.round((100 * p.done) / p.all)))}
      />
      <Show when={props.study.failed()}>
        <span class="ask-fault" role="alert">
          {t.failed(props.study.failed())}
        </span>
      </Show>
    </span>
  );
}

/** Bars reach this many usual errors to each side. */
const REACH = 4;

export function MarginBars(props: Props & { most?: number }) {
  const flight = useFlight();
  const report = () => props.study.report();
  const bars = createMemo(() => [...(report()?.bars ?? [])].sort((a, b) => a.forgives - b.forgives));
  const matters = (bar: Bar): number | undefined => {
    const { result, order } = report() ?? {};
    return result?.influences.find((one) => order?.[one.part] === bar.input)?.share;
  };
  const reach = (): number => {
    const widest = Math.max(0, ...bars().map((b) => b.forgives));
    return Math.max(1.5, Math.min(REACH, widest * 1.3));
  };
  const place = (by: number, bar: Bar): number => 50 + 50 * Math.max(-1, Math.min(1, by / bar.spread / reach()));
  const end = (bar: Bar, side: 'low' | 'high'): string => {
    const unit = props.ask.inputOf(bar.input)?.unit ?? 'count';
    const { by, ends } = bar[side];
    const sign = by > 0 ? '+' : '';
    return `${sign}${small(bar.input, unit, by)}${ends === 'never' ? ' …' : ''}`;
  };
  return (
    <div
      class="margin-bars"
      classList={{ stale: props.study.stale() }}
      aria-busy={props.study.progress() !== undefined}
    >
      <p class="quiet">{t.marginOf(report()?.of ?? props.ask.subject()?.name ?? t.ofNow)}</p>
      <Show when={bars().length > 0 && bars().every((b) => b.forgives === 0)}>
        <p class="ask-stale">{t.outside}</p>
      </Show>
      <table>
        <thead class="spoken">
          <tr>
            <th>{t.mayChange}</th>
            <th>{t.margin}</th>
            <th>{t.mattersTitle}</th>
          </tr>
        </thead>
        <tbody>
          <For each={bars()}>
            {(bar, i) => {
              const unit = () => props.ask.inputOf(bar.input)?.unit ?? 'count';
              const name = (): string => {
                const open = props.ask.skill();
                return open ? nameInput(bar.input, flight.spans(), open.spec) : bar.input;
              };
              return (
                <tr classList={{ narrowest: i() === 0 }} data-input={bar.input} data-forgives={bar.forgives}>
                  <th scope="row">
                    {name()} <span class="quiet">{smallUnit(unit())}</span>
                  </th>
                  <td class="margin-cell">
                    <span class="margin-bar" aria-hidden="true">
                      <i class="usual" style={{ left: `${50 - 50 / reach()}%`, right: `${50 - 50 / reach()}%` }} />
                      <i
                        class="slip"
                        style={{ left: `${place(bar.low.by, bar)}%`, right: `${100 - place(bar.high.by, bar)}%` }}
                      />
                      <i class="zero" />
                      <span class="slip-low" style={{ right: `${101 - place(bar.low.by, bar)}%` }}>
                        {end(bar, 'low')}
                      </span>
                      <span class="slip-high" style={{ left: `${101 - (100 - place(bar.high.by, bar))}%` }}>
                        {end(bar, 'high')}
                      </span>
                    </span>
                    <span class="spoken">{t.barName(name(), end(bar, 'low'), end(bar, 'high'))}</span>
                  </td>
                  <td class="number" title={t.mattersMeans}>
                    {matters(bar) === undefined ? '' : `${percent(matters(bar) ?? 0)} %`}
                  </td>
                </tr>
              );
            }}
          </For>
        </tbody>
      </table>
      <Show when={report()?.result?.influences.length}>
        <p class="quiet margin-foot">
          {t.usualSpread} · <span>{t.mattersNote(t.mattersTitle)}</span>
        </p>
      </Show>
    </div>
  );
}

/** A skill to be held straight: no share heads the list, since none is what an athlete lands. */
function ReflexShares(props: { open: ShareAfter; reflex: readonly ReflexShare[]; isRanging: boolean }) {
  const row = (name: string, share: ShareAfter) => (
    <li>
      {name}: {t.rangeShare(percent(share.share), percent(share.interval[0]), percent(share.interval[1]))}
    </li>
  );
  return (
    <div class="reflex-shares" data-testid="reflex-range">
      <p>{t.heldStraight}</p>
      <ul>
        {row(t.openLoop, props.open)}
        <For each={props.reflex}>{({ delay, share }) => row(t.reflexAfter(formatNumber(delay, 2)), share)}</For>
        <Show when={props.isRanging}>
          <li class="quiet">{t.reflexComes}</li>
        </Show>
      </ul>
      <p class="quiet">{t.reflexNote}</p>
    </div>
  );
}

/** Twist against landing, one mark a try. */
export function Tries(props: Props & { width: number; height: number }) {
  let canvas!: HTMLCanvasElement;
  const palette = usePalette();
  const report = () => props.study.report();
  createEffect(() => {
    const one = report();
    drawTries(canvas, props.width, props.height, palette(), one, props.study.stale());
  });
  const share = () => report()?.share;
  return (
    <section class="ask-tries" classList={{ stale: props.study.stale() }}>
      <h3>
        {t.tries(String(report()?.share?.n ?? props.study.tries()))}{' '}
        <span class="quiet">{t.triesHow(report()?.balanced ? t.on : t.off)}</span>
      </h3>
      <canvas
        ref={canvas}
        role="img"
        aria-label={t.picture(String(share()?.n ?? 0), percent(share()?.share ?? 0))}
        style={{ width: `${props.width}px`, height: `${props.height}px` }}
      />
      <Show when={share()}>
        {(s) => (
          <>
            <Show when={report()?.reflex}>
              {(reflex) => <ReflexShares open={s()} reflex={reflex()} isRanging={props.study.isRanging()} />}
            </Show>
            <p class="tries-share" data-testid="share" hidden={report()?.reflex !== undefined}>
              <b>{t.share(percent(s().share), t.windows[report()?.kind ?? 'usual'])}</b>{' '}
              <span class="quiet">{t.interval(percent(s().interval[0]), percent(s().interval[1]))}</span>
            </p>
            <Show when={report()?.reflex === undefined}>
              <span class="share-line" aria-hidden="true">
                <i
                  class="range"
                  style={{ left: `${100 * s().interval[0]}%`, right: `${100 - 100 * s().interval[1]}%` }}
                />
                <i class="mark" style={{ left: `${100 * s().share}%` }} />
                <Show when={props.study.other()}>
                  {(o) => <i class="other" style={{ left: `${100 * o().share}%` }} />}
                </Show>
              </span>
            </Show>
            <p class="quiet tries-foot">
              <Show when={props.study.other()}>
                {(o) => <>{`${t.triesHow(o().balanced ? t.on : t.off)} ${percent(o().share)} % · `}</>}
              </Show>
              <Show when={report()?.reflex === undefined && report()?.result?.formerly}>
                {(former) => <>{t.formerly(percent(former().share))} · </>}
              </Show>
              <Show when={(report()?.result?.settled.length ?? 0) > 1}>
                {t.settled(
                  (report()?.result?.settled ?? [])
                    .map((one) => t.settledOne(String(one.n), percent(one.share)))
                    .join(', '),
                )}
                {' · '}
              </Show>
              <Show when={report()?.result?.faults}>{(n) => <>{t.faults(String(n()))} · </>}</Show>
              <button
                type="button"
                class="small"
                onClick={() => props.study.setTries(props.study.tries() === 100 ? 1000 : 100)}
              >
                {props.study.tries() === 100 ? t.moreTries : t.fewerTries}
              </button>
            </p>
          </>
        )}
      </Show>
    </section>
  );
}
