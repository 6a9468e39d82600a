/** The sentence of a clip: how long it is in the air, how high it rises, and how A differs; before that, what is to be done next. */
import { createMemo, For, Show } from 'solid-js';
import { wordClip, wordLonger } from '../../../sim/words/clip-words.ts';
import { say } from '../../ui/units.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipNumbers } from './clip-values.ts';
import { clipTexts } from './clip-words.ts';

const t = clipTexts.said;

export function ClipSaid(props: { desk: ClipDesk; isShort: boolean }) {
  const runs = createMemo(() => {
    const times = props.desk.times();
    return times ? wordClip(times, props.isShort ? undefined : props.desk.flown(), clipNumbers) : [];
  });
  const next = (): string => {
    if (!props.desk.clip()) return t.noClip;
    if (props.desk.isStill()) return t.still;
    if (!props.desk.frames()) return t.rate;
    return Number.isNaN(props.desk.times()?.zero ?? Number.NaN) ? t.takeoff : t.landing;
  };
  return (
    <Show when={runs().length > 0} fallback={next()}>
      <For each={runs()}>
        {({ text, isStrong }) => (
          <Show when={isStrong} fallback={text}>
            <b>{text}</b>
          </Show>
        )}
      </For>
      <Show when={props.isShort && props.desk.flown()}>
        {(flown) => (
          <>
            {' '}
            <span class="quiet">{t.a}</span> <b>{say('time', flown().airTime, 2)}</b>,{' '}
            <b>{say('length', flown().rise, 2)}</b>.
          </>
        )}
      </Show>
    </Show>
  );
}

/** "14 ± 12 ms longer" */
export function ClipLonger(props: { by: number; error: number }) {
  return (
    <Show when={Math.abs(props.by) > props.error} fallback={t.sameAsA}>
      <b>{wordLonger(props.by, props.error)}</b> {props.by > 0 ? t.longer : t.shorter}
    </Show>
  );
}
