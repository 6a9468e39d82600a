/** The numbers at the cursor, in one line; the same is said aloud when it comes to rest. */
import { createEffect, createSignal, onCleanup, Show } from 'solid-js';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, unitOf } from '../../ui/units.ts';
import { airTexts as t } from './air-texts.ts';

/** ms of rest until the numbers are said */
const REST = 500;

export function AirNow(props: { state: WholeState; whole: WholeResult }) {
  const c = () => props.whole.columns;
  const i = (): number => props.state.row();
  const kind = () => props.state.phase()?.kind;
  const number = (v: number, decimals: number): string => (Number.isFinite(v) ? formatNumber(v, decimals) : '–');
  const bend = (): number => Math.hypot(c().bendX[i()], c().bendY[i()]);
  return (
    <section class="air-now" aria-label={t.isNow(formatNumber(props.state.cursor(), 2))}>
      <p class="air-at">{t.isNow(formatNumber(props.state.cursor(), 2))}</p>
      <Show when={kind() !== 'flight'} fallback={<p class="quiet">{t.numbers.noForce}</p>}>
        <p>
          <b>{number(c().weights[i()], 1)}</b> {t.numbers.force}
        </p>
      </Show>
      <Show when={kind() === 'swing'}>
        <p>
          <b>{say('length', bend())}</b> {t.numbers.bend}
        </p>
      </Show>
      <Show when={kind() === 'landing' || (kind() === 'contact' && c().sink[i()] > 0)}>
        <p>
          <b>{say('length', c().sink[i()])}</b> {kind() === 'landing' ? t.numbers.sink : t.numbers.bed}
        </p>
      </Show>
      <Show when={Number.isFinite(c().turn[i()])}>
        <p class="som">
          <b>{sayNumber('rate', Math.abs(c().turn[i()]), 2)}</b> {unitOf('rate')},{' '}
          {kind() === 'swing' ? t.numbers.rateBar : t.numbers.rateBody}
        </p>
      </Show>
      <p>
        <b>{say('speed', c().speed[i()])}</b> {t.numbers.speed}
      </p>
      <p>
        <b>{say('momentum', Math.abs(c().h[i()]))}</b> {t.numbers.momentum}
      </p>
      <Show when={Number.isFinite(c().feltHead[i()])}>
        <p>
          <b>{number(c().feltHead[i()], 1)}</b> {t.numbers.felt}
        </p>
      </Show>
    </section>
  );
}

/** Said when the cursor rests: where it is, what touches, how hard. */
export function SpokenNow(props: { state: WholeState; whole: WholeResult }) {
  const [said, setSaid] = createSignal('');
  createEffect(() => {
    const at = props.state.cursor();
    const phase = props.state.phase();
    const i = props.state.row();
    const { columns: c } = props.whole;
    const timer = setTimeout(() => {
      if (!phase) return;
      const time = `${at < 0 ? `${t.minus} ` : ''}${formatNumber(Math.abs(at), 2)}`;
      const parts = [t.spoken(time, t.spokenPhases[phase.kind])];
      if (phase.kind !== 'flight') parts.push(t.spokenForce(formatNumber(c.weights[i], 1)));
      if (phase.kind === 'swing') parts.push(t.spokenBend(say('length', Math.hypot(c.bendX[i], c.bendY[i]))));
      setSaid(parts.join(', '));
    }, REST);
    onCleanup(() => clearTimeout(timer));
  });
  return (
    <p class="spoken" aria-live="polite">
      {said()}
    </p>
  );
}
