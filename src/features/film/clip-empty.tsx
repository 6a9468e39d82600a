/** In the plate's place before a clip is open; and what is under way, what came to nothing, and what is asked before times are said. */
import { createEffect, createSignal, For, Show } from 'solid-js';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber, parseNumber } from '../../ui/numbers.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

export function ClipEmpty(props: { desk: ClipDesk; canDrop: boolean }) {
  return (
    <div class="clip-empty">
      <Show
        when={props.desk.kept()}
        fallback={
          <p>
            {t.empty} {t.stays}
          </p>
        }
      >
        {(kept) => (
          <p>
            <b>{t.keptHead(kept().name)}</b> {t.keptOpen}
          </p>
        )}
      </Show>
      <Show when={props.desk.keptFault()}>{(why) => <p class="quiet">{t.keptFault(why())}</p>}</Show>
      <p class="clip-ways">
        <Show when={props.desk.kept()?.clip}>
          <button type="button" onClick={() => props.desk.openSent()}>
            {t.openKept}
          </button>
        </Show>
        <button type="button" class="main" onClick={() => props.desk.opening.pick()}>
          {t.open}
        </button>
        <button type="button" onClick={() => props.desk.opening.film()}>
          {t.camera}
        </button>
      </p>
      <Show when={props.canDrop}>
        <p class="quiet">{t.dropHere}</p>
      </Show>
    </div>
  );
}

/** The camera of this machine, until it is stopped. */
export function ClipLive(props: { desk: ClipDesk; live: MediaStream }) {
  let video!: HTMLVideoElement;
  createEffect(() => {
    video.srcObject = props.live;
  });
  return (
    <div class="clip-live">
      <video ref={video} autoplay muted playsinline aria-label={t.filming} />
      <p>
        <span class="quiet">{t.filming}</span>
        <button type="button" class="main" onClick={() => props.desk.opening.stopFilm()}>
          {t.stopFilm}
        </button>{' '}
        <button type="button" class="link" onClick={() => props.desk.opening.cancel()}>
          {t.cancel}
        </button>
      </p>
    </div>
  );
}

export function ClipWorking(props: { desk: ClipDesk }) {
  return (
    <Show when={props.desk.opening.work()}>
      {(work) => (
        <p class="clip-work" role="status">
          <span>{t.reading(work().name, work().frames, work().of)}</span>
          <button type="button" class="small" onClick={() => props.desk.opening.cancel()}>
            {t.cancel}
          </button>
        </p>
      )}
    </Show>
  );
}

export function ClipFaults(props: { desk: ClipDesk }) {
  return (
    <Show when={props.desk.opening.fault()}>
      {(fault) => (
        <p class="clip-fault" role="alert">
          <Icon name="caution" size={20} /> <span>{fault()}</span>
          <button
            type="button"
            class="plain square"
            aria-label={t.dismiss}
            onClick={() => props.desk.opening.setFault(undefined)}
          >
            <Icon name="close" size={16} />
          </button>
        </p>
      )}
    </Show>
  );
}

const RATES = [30, 60, 120, 240] as const;
const RANGE = [1, 2000] as const;

export function ClipRate(props: { desk: ClipDesk }) {
  const [isOther, setOther] = createSignal(false);
  const [reason, setReason] = createSignal('');
  let input: HTMLInputElement | undefined;
  const fileHz = (): string => {
    const hz = props.desk.clip()?.facts.fileHz ?? 0;
    return formatNumber(hz, Math.abs(hz - Math.round(hz)) < 0.05 ? 0 : 2);
  };
  const take = (): void => {
    const hz = parseNumber(input?.value ?? '');
    if (hz >= RANGE[0] && hz <= RANGE[1]) props.desk.setRate(hz);
    else setReason(t.rateRange(RANGE[0], RANGE[1]));
  };
  return (
    <section class="clip-rate" aria-label={t.rateTitle}>
      <p>
        <b>{t.rateTitle}</b> {t.rateAsks(fileHz())}
      </p>
      <p class="clip-ways">
        <For each={RATES}>
          {(hz) => (
            <button type="button" onClick={() => props.desk.setRate(hz)}>
              {hz}
            </button>
          )}
        </For>
        <Show
          when={isOther()}
          fallback={
            <button
              type="button"
              onClick={() => {
                setOther(true);
                input?.focus();
              }}
            >
              {t.rateOther}
            </button>
          }
        >
          <label>
            <input
              ref={input}
              inputmode="decimal"
              maxLength={40}
              aria-label={t.rateField}
              onKeyDown={(e) => {
                if (e.key === 'Enter') take();
              }}
            />{' '}
            {t.aSecond}
          </label>
          <button type="button" onClick={take}>
            {t.rateTake}
          </button>
        </Show>
      </p>
      <Show when={reason()}>
        <p class="why" role="alert">
          {reason()}
        </p>
      </Show>
    </section>
  );
}
