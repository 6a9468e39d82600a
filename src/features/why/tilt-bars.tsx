/** Where the tilt (or the twist it makes) came from: one bar for each part of the body, to the right with it, left against. */

import { createMemo, For, Show } from 'solid-js';
import { DEG, REV } from '../../../sim/math/angles.ts';
import { FailedLine } from '../../app/failed-line.tsx';
import { useCursor } from '../../app/page.ts';
import type { TiltAccount, TiltValues } from '../../engine/account.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { AccountState, TiltMeasure } from './account-state.ts';
import { TiltHow } from './tilt-how.tsx';
import { wordParts } from './tilt-sentence.ts';
import { accountTexts as a } from './words.ts';

const MEASURES: readonly TiltMeasure[] = ['greatest', 'at', 'twist'];
/** Less than this is nothing to a reader: deg, revolutions. */
const NOTHING = { tilt: 0.05, twist: 0.005 };

interface Bar {
  readonly key: string;
  readonly title: string;
  /** in the direction of the whole; NaN: not defined */
  readonly value: number;
  /** smallest and largest over the orders */
  readonly span: readonly [number, number];
  readonly even: boolean;
}

function listBars(account: TiltAccount, measure: TiltMeasure): { bars: Bar[]; total: number; sign: number } {
  const factor = measure === 'twist' ? 1 / REV : DEG;
  const raw = (v: TiltValues): number => v[measure] * factor;
  const total = raw(account.total);
  const sign = total < 0 ? -1 : 1;
  const least = measure === 'twist' ? NOTHING.twist : NOTHING.tilt;
  const bars: Bar[] = account.parts.map((p) => {
    const ends = [raw(p.least) * sign, raw(p.most) * sign].sort((x, y) => x - y);
    return {
      key: p.source,
      title: a.sources[p.source],
      value: raw(p.gave) * sign,
      span: [ends[0], ends[1]],
      even: !p.uneven,
    };
  });
  const rest = raw(account.rest) * sign;
  if (!(Math.abs(rest) < least))
    bars.push({ key: 'rest', title: a.rest, value: rest, span: [rest, rest], even: false });
  return { bars, total, sign };
}

export function TiltBars(props: { state: AccountState; stacked: boolean }) {
  const cursor = useCursor();
  const shown = createMemo(() => {
    const account = props.state.account();
    return account ? { account, ...listBars(account, props.state.measure()) } : undefined;
  });
  const isTwist = (): boolean => props.state.measure() === 'twist';
  const value = (v: number): string =>
    Number.isNaN(v) ? '–' : isTwist() ? say('turns', v, 2) : `${formatNumber(v, 1)}°`;
  const time = (s: number | undefined): string => formatNumber(s ?? 0, 2);
  const title = (m: TiltMeasure): string =>
    a.measures[m](time(m === 'greatest' ? props.state.account()?.tGreatest : cursor.at()));
  const way = (total: number): string =>
    isTwist() ? (total > 0 ? a.way.twistLeft : a.way.twistRight) : total > 0 ? a.way.right : a.way.left;
  const most = (): number =>
    Math.max(...(shown()?.bars.map((b) => Math.abs(b.value) || 0) ?? [0]), Math.abs(shown()?.total ?? 0), 1e-9);
  /** where the bars begin, in per cent: as much room to the left as the longest against the whole takes */
  const zero = (): number => {
    const against = Math.max(0, ...(shown()?.bars.map((b) => -b.value || 0) ?? []));
    return Math.max(18, (100 * against) / (against + most()));
  };
  const allEven = (): boolean => shown()?.account.parts.every((p) => !p.uneven) ?? false;
  const signed = (v: number): string => (v >= 0 ? `+${value(v)}` : value(v));
  const least = (): number => (isTwist() ? NOTHING.twist : NOTHING.tilt);
  const spread = (bar: Bar): boolean => bar.span[1] - bar.span[0] >= 2 * least();
  const spreads = (): boolean => shown()?.bars.some(spread) ?? false;
  const main = createMemo(() => {
    const t = shown();
    if (!t || allEven()) return '';
    const { total, bars: parts, account } = t;
    const measure = props.state.measure();
    return wordParts({ parts, total, shares: account.shares[measure] }, least(), a.measuresShort[measure], signed);
  });
  return (
    <section class="tilt-account" classList={{ stacked: props.stacked }} aria-busy={props.state.stale()}>
      <Show
        when={!props.stacked}
        fallback={
          <label class="tilt-choice">
            <span class="spoken">{a.measure}</span>
            <select
              value={props.state.measure()}
              onChange={(e) => props.state.setMeasure(e.currentTarget.value as TiltMeasure)}
            >
              <For each={MEASURES}>{(m) => <option value={m}>{title(m)}</option>}</For>
            </select>
          </label>
        }
      >
        <fieldset class="tilt-choice">
          <legend>{a.measure}</legend>
          <For each={MEASURES}>
            {(m) => (
              <label>
                <input
                  type="radio"
                  name="tilt-measure"
                  checked={props.state.measure() === m}
                  onChange={() => props.state.setMeasure(m)}
                />
                <span>{title(m)}</span>
              </label>
            )}
          </For>
        </fieldset>
      </Show>
      <div class="tilt-report" classList={{ stale: props.state.stale() && shown() !== undefined }}>
        <Show when={props.state.failed()}>
          <FailedLine again={props.state.again}>{a.failed(props.state.failed())}</FailedLine>
        </Show>
        <Show when={shown()} fallback={<Working state={props.state} />}>
          {(t) => (
            <Show when={!allEven()} fallback={<p class="tilt-main">{a.evenAll}</p>}>
              <p class="tilt-main">
                <b class={isTwist() ? 'twist' : 'tilt'}>{value(Math.abs(t().total))}</b> {way(t().total)}. {main()}
              </p>
              <table class={`tilt-bars ${isTwist() ? 'twist' : 'tilt'}`} style={{ '--zero': `${zero()}%` }}>
                <caption class="spoken">{`${a.measure} ${title(props.state.measure())}`}</caption>
                <tbody>
                  <For each={t().bars}>
                    {(bar) => (
                      <tr data-source={bar.key} classList={{ even: bar.even }}>
                        <th scope="row">{bar.title}</th>
                        <td class="number">
                          <Show when={!bar.even} fallback={<span class="quiet">{a.even}</span>}>
                            {Number.isNaN(bar.value) ? <span title={a.undefined}>–</span> : signed(bar.value)}
                            <Show when={bar.value < 0}>
                              <span class="spoken"> {a.against}</span>
                            </Show>
                          </Show>
                        </td>
                        <Show when={spreads()}>
                          <td class="orders quiet">
                            {spread(bar) ? a.orders(signed(bar.span[0]), signed(bar.span[1])) : ''}
                          </td>
                        </Show>
                        <td class="bar-cell" aria-hidden="true">
                          <span class="account-bar">
                            <i
                              classList={{ with: bar.value > 0, against: bar.value < 0 }}
                              style={{ '--share': Math.abs(bar.value || 0) / most() }}
                            />
                          </span>
                        </td>
                      </tr>
                    )}
                  </For>
                  <tr class="whole">
                    <th scope="row">{a.total}</th>
                    <td class="number">{value(Math.abs(t().total))}</td>
                    <Show when={spreads()}>
                      <td />
                    </Show>
                    <td class="bar-cell" aria-hidden="true">
                      <span class="account-bar">
                        <i class="with" style={{ '--share': Math.abs(t().total) / most() }} />
                      </span>
                    </td>
                  </tr>
                </tbody>
              </table>
            </Show>
          )}
        </Show>
      </div>
      <div class="tilt-notes">
        <Show when={shown() && !allEven() && shown()}>
          {(t) => (
            <p>
              {Math.abs(t().account.counterTwist / REV) < NOTHING.twist
                ? a.noCounter
                : a.counter(say('turns', Math.abs(t().account.counterTwist) / REV, 2))}
              {isTwist() ? '' : ` ${t().account.measuredFrom === 'world' ? a.fromWorld : a.fromMomentum}`}
            </p>
          )}
        </Show>
        <Show when={!isTwist() && !allEven() && shown()}>
          {(t) => (
            <TiltHow mechanism={t().account.mechanism[props.state.measure() as 'greatest' | 'at']} sign={t().sign} />
          )}
        </Show>
        <details class="quiet">
          <summary>{a.howDivided}</summary>
          {a.how}
        </details>
        <Show when={shown() && props.state.stale()}>
          <Working state={props.state} />
        </Show>
      </div>
    </section>
  );
}

function Working(props: { state: AccountState }) {
  const p = () => props.state.progress();
  return (
    <p class="account-working quiet" role="status">
      {a.working(String(p()?.done ?? 0), p() ? String(p()?.of) : '–')}
      <progress aria-label={a.working('', '').trim()} value={p()?.done ?? 0} max={p()?.of ?? 1} />
    </p>
  );
}
