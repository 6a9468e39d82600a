/** At the left under the floor: what is marked next, scale and place, and what becomes of the clip. */
import { For, Show } from 'solid-js';
import { formatNumber } from '../../ui/numbers.ts';
import { sayMark } from './clip-marks.ts';
import { ClipSet } from './clip-set.tsx';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

export function ClipLeft(props: { desk: ClipDesk }) {
  return (
    <>
      <Show when={props.desk.times()}>
        <ClipTeeth desk={props.desk} />
        <ClipMarkHere desk={props.desk} />
      </Show>
      <ClipStretch desk={props.desk} />
      <Show when={props.desk.frames()}>
        <ClipSet desk={props.desk} />
      </Show>
      <ClipPrivate desk={props.desk} />
    </>
  );
}

function ClipTeeth(props: { desk: ClipDesk }) {
  const hz = (): string => formatNumber(props.desk.frames()?.hz ?? 0, 0);
  return (
    <section class="clip-times">
      <h3>{t.times}</h3>
      <p class="quiet">
        {t.teeth(hz())}{' '}
        <Show when={props.desk.times()?.airTime}>
          <button type="button" class="link" onClick={() => props.desk.time.setClose(!props.desk.time.isClose())}>
            {props.desk.time.isClose() ? t.whole : t.close}
          </button>
        </Show>
      </p>
      <For each={props.desk.markFaults()}>
        {(fault) => (
          <p class="clip-mark-fault" role="status">
            {fault}
          </p>
        )}
      </For>
    </section>
  );
}

export function ClipMarkHere(props: { desk: ClipDesk }) {
  const next = () => props.desk.wanted()[0];
  return (
    <p class="clip-mark">
      <Show when={next()}>
        {(wanted) => (
          <button type="button" onClick={() => props.desk.mark(wanted().kind, wanted().quarters)}>
            {t.markNext(sayMark(wanted()))}
          </button>
        )}
      </Show>
      <select
        class="clip-other-marks"
        aria-label={t.markOther}
        onChange={(e) => {
          const wanted = props.desk.wanted()[Number(e.currentTarget.value)];
          if (wanted) props.desk.mark(wanted.kind, wanted.quarters);
          e.currentTarget.value = '';
        }}
      >
        <option value="" selected>
          {t.markOtherShort}
        </option>
        <For each={props.desk.wanted()}>{(wanted, i) => <option value={i()}>{sayMark(wanted)}</option>}</For>
      </select>
    </p>
  );
}

/** Of a long clip: which stretch of the file is on the ruler. */
export function ClipStretch(props: { desk: ClipDesk }) {
  const opened = () => props.desk.opening.opened();
  const clock = (s: number): string => {
    const whole = Math.round(s);
    const [h, m, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
    const two = (n: number): string => String(n).padStart(2, '0');
    return h > 0 ? `${h}:${two(m)}:${two(rest)}` : `${m}:${two(rest)}`;
  };
  const read = (text: string): number =>
    text
      .trim()
      .split(':')
      .reduce((sum, one) => 60 * sum + Number(one.replace(',', '.')), 0);
  const isLong = (): boolean => {
    const now = opened();
    return now !== undefined && now.clip.facts.lasts > now.to - now.from + 0.05;
  };
  const by = (): number => {
    const now = opened();
    return now ? 0.75 * (now.to - now.from) : 0;
  };
  return (
    <Show when={isLong() && opened()}>
      {(now) => (
        <section class="clip-stretch" aria-label={t.moveTo}>
          <p class="quiet">{t.onlyOnRuler(clock(now().from), clock(now().to), clock(now().clip.facts.lasts))}</p>
          <p class="clip-ways">
            <button type="button" class="link" onClick={() => props.desk.opening.move(now().from - by())}>
              {t.earlier}
            </button>
            <label>
              <span class="quiet">{t.moveTo}</span>{' '}
              <input
                maxLength={40}
                value={clock(now().from)}
                onChange={(e) => {
                  const s = read(e.currentTarget.value);
                  if (Number.isFinite(s)) props.desk.opening.move(s);
                  e.currentTarget.value = clock(now().from);
                }}
              />
            </label>
            <button type="button" class="link" onClick={() => props.desk.opening.move(now().from + by())}>
              {t.later}
            </button>
          </p>
        </section>
      )}
    </Show>
  );
}

export function ClipPrivate(props: { desk: ClipDesk }) {
  const hint = (): string => {
    if (!props.desk.sends()) return t.sendHint;
    if (props.desk.kept()?.name !== props.desk.clip()?.facts.name) return t.sendKept;
    return props.desk.blurs() ? t.sendBlurred : t.sendSharp;
  };
  return (
    <section class="clip-private" aria-label={t.private}>
      <Show when={!props.desk.isStill()}>
        <Tick on={props.desk.sends()} set={props.desk.setSends} title={t.send} hint={hint()} />
        <Tick on={props.desk.blurs()} set={props.desk.setBlurs} title={t.blur} hint={t.blurHint} />
      </Show>
      <Tick on={props.desk.blursHere()} set={props.desk.setBlursHere} title={t.blurHere} hint={t.blurHereHint} />
      <p>
        <b>{t.staysHere}</b>
      </p>
      <Show when={props.desk.measuring().marks.length > 0}>
        <button type="button" class="link" onClick={() => props.desk.keep()}>
          {props.desk.kept() ? t.keepAgain : t.keep}
        </button>{' '}
      </Show>
      <button type="button" class="link" onClick={() => props.desk.opening.pick()}>
        {t.openOther}
      </button>
    </section>
  );
}

function Tick(props: { on: boolean; set: (on: boolean) => void; title: string; hint: string }) {
  return (
    <label>
      <input type="checkbox" checked={props.on} onChange={(e) => props.set(e.currentTarget.checked)} />
      <span>
        <b>{props.title}</b>
        <small>{props.hint}</small>
      </span>
    </label>
  );
}
