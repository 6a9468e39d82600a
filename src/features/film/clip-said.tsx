/** The sentence of a clip: how long it is in the air, how high it rises, and how A differs; before that, what is to be done next. */
import { Show } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts } from './clip-words.ts';

const t = clipTexts.said;

export function ClipSaid(props: { desk: ClipDesk; isShort: boolean }) {
  const air = () => props.desk.times()?.airTime;
  const rise = () => props.desk.times()?.rise;
  const duration = (): number => props.desk.flown()?.airTime ?? Number.NaN;
  const aRise = (): number => props.desk.flown()?.rise ?? Number.NaN;
  const next = (): string => {
    if (!props.desk.clip()) return t.noClip;
    if (props.desk.isStill()) return t.still;
    if (!props.desk.frames()) return t.rate;
    return Number.isNaN(props.desk.times()?.zero ?? Number.NaN) ? t.takeoff : t.landing;
  };
  return (
    <Show when={air()} fallback={next()}>
      {(now) => (
        <>
          {t.inClip} <b>{say('time', now().value, 2)}</b> {t.inAir}
          <Show when={rise()}>
            {(up) => (
              <>
                {t.rises} <b>{say('length', up().value, 2)}</b>
              </>
            )}
          </Show>
          .{' '}
          <Show
            when={!props.isShort}
            fallback={
              <>
                <span class="quiet">A:</span> <b>{say('time', duration(), 2)}</b>, <b>{say('length', aRise(), 2)}</b>.
              </>
            }
          >
            <span class="quiet">{t.aFlies}</span> <b>{say('time', duration(), 2)}</b>,{' '}
            <ClipLonger by={duration() - now().value} error={now().plusMinus} />.
          </Show>
        </>
      )}
    </Show>
  );
}

/** "14 ± 12 ms longer" */
export function ClipLonger(props: { by: number; error: number; same?: string }) {
  const ms = (s: number): string => formatNumber(1000 * Math.abs(s), 0);
  return (
    <Show when={Math.abs(props.by) > props.error} fallback={props.same ?? t.same}>
      <b>
        {ms(props.by)} ± {ms(props.error)} ms
      </b>{' '}
      {props.by > 0 ? t.longer : t.shorter}
    </Show>
  );
}
