/** How much it forgives, one input at a time as bars. */
import { createMemo, createSignal, For, Show } from 'solid-js';
import type { Bar } from '../../../sim/index.ts';
import { useFlight } from '../../app/page.ts';
import type { AskState } from './ask-state.ts';
import { decimalsOfInput, nameInput, numberIn, percent, unitIn } from './ask-words.ts';
import { AskedRun } from './asked-run.tsx';
import type { StudyState } from './study-state.ts';
import { askTexts as t } from './words.ts';

type Props = { ask: AskState; study: StudyState };

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

/** `most`: so many of the narrowest, the others at a press. */
export function MarginBars(props: Props & { most?: number }) {
  const [isWhole, setWhole] = createSignal(false);
  const shown = () => (props.most === undefined || isWhole() ? bars() : bars().slice(0, props.most));
  const others = (): number => bars().length - (props.most ?? bars().length);
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
    return `${sign}${numberIn(unit, by, decimalsOfInput(bar.input, unit))}${ends === 'never' ? ' …' : ''}`;
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
          <For each={shown()}>
            {(bar, i) => {
              const unit = () => props.ask.inputOf(bar.input)?.unit ?? 'count';
              const name = (): string => {
                const open = props.ask.skill();
                return open ? nameInput(bar.input, flight.spans(), open.spec) : bar.input;
              };
              return (
                <tr classList={{ narrowest: i() === 0 }} data-input={bar.input} data-forgives={bar.forgives}>
                  <th scope="row">
                    {name()} <span class="quiet">{unitIn(unit())}</span>
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
      <Show when={others() > 0}>
        <button type="button" class="small" onClick={() => setWhole(!isWhole())}>
          {isWhole() ? t.fewerBars : t.moreBars(String(others()))}
        </button>
      </Show>
      <Show when={report()?.result?.influences.length}>
        <p class="quiet margin-foot">
          {t.usualSpread} · <span>{t.mattersNote(t.mattersTitle)}</span>
        </p>
      </Show>
    </div>
  );
}
