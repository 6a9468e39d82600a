/** On tablet and phone: marks by words and frames by buttons over the keys of the thumb; two large numbers; what else is measured below. */
import { For, Show } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, unitBeside } from '../../ui/units.ts';
import { sayMark, spokenMark } from './clip-marks.ts';
import { ClipLonger } from './clip-said.tsx';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** words of marks that have room */
const MOST = { tablet: 5, phone: 6 } as const;

export function ClipThumb(props: { desk: ClipDesk; device: 'tablet' | 'phone' }) {
  const wanted = () => props.desk.wanted().slice(0, MOST[props.device]);
  return (
    <div class="clip-thumb">
      <Show when={props.device === 'tablet'}>
        <b>{t.markHere}</b>
      </Show>
      <For each={wanted()}>
        {(one) => (
          <button
            type="button"
            class="on-floor"
            aria-label={t.markNext(spokenMark(one))}
            onClick={() => props.desk.mark(one.kind, one.quarters)}
          >
            {sayMark(one)}
          </button>
        )}
      </For>
      <button type="button" class="clip-step" onClick={() => props.desk.setFrame(props.desk.frame() - 1)}>
        {t.backFrame}
      </button>
      <button type="button" class="clip-step" onClick={() => props.desk.setFrame(props.desk.frame() + 1)}>
        {t.onFrame}
      </button>
    </div>
  );
}

export function ClipLarge(props: { desk: ClipDesk }) {
  const air = () => props.desk.times()?.airTime;
  const rise = () => props.desk.times()?.rise;
  const duration = (): number => props.desk.flown()?.airTime ?? Number.NaN;
  const aRise = (): number => props.desk.flown()?.rise ?? Number.NaN;
  // a ± is never nothing
  const places = (error: number): number => (error < 0.005 ? 3 : 2);
  return (
    <Show when={air()}>
      {(now) => (
        <div class="clip-large">
          <p>
            <b>{t.rows.airTime}</b>
            <span>
              <strong>{formatNumber(now().value, places(now().plusMinus))}</strong> s ±{' '}
              {formatNumber(now().plusMinus, places(now().plusMinus))}
            </span>
            <span>
              {t.nameA}: {say('time', duration(), places(now().plusMinus))}
            </span>
          </p>
          <Show when={rise()}>
            {(up) => (
              <p>
                <b>{t.rows.rise}</b>
                <span>
                  <strong>{sayNumber('length', up().value, 2)}</strong> {unitBeside('length')} ±{' '}
                  {sayNumber('length', Math.max(up().plusMinus, 0.01), 2)}
                </span>
                <span>
                  {t.nameA}: {say('length', aRise(), 2)}
                </span>
              </p>
            )}
          </Show>
          <p class="clip-large-apart">
            <ClipLonger by={duration() - now().value} error={now().plusMinus} />
          </p>
        </div>
      )}
    </Show>
  );
}
