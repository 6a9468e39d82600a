/** The four numbers at the cursor that never leave the screen: twist rate, somersault rate, angular momentum, energy. */
import { type JSX, Show } from 'solid-js';
import type { CutValues } from '../../app/cut-values.ts';
import { Icon } from '../../ui/icon.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { type QuantityKind, sayNumber, unitOf } from '../../ui/units.ts';
import { liveTexts } from './words.ts';

export function LiveNumbers(props: { cut: CutValues }) {
  return (
    <dl class="live-numbers" data-testid="live-numbers">
      <Live word={liveTexts.twist} sign="twist" quantity="rate" value={props.cut.twistRate} decimals={2} />
      <Live
        word={liveTexts.somersault}
        sign="somersault"
        quantity="rate"
        value={props.cut.somersaultRate}
        decimals={2}
      />
      <Live word={liveTexts.momentum} quantity="momentum" value={props.cut.momentum} decimals={1} />
      <Live word={liveTexts.energy} quantity="energy" value={props.cut.energy} decimals={0} />
    </dl>
  );
}

function Live(props: {
  word: string;
  sign?: 'twist' | 'somersault';
  quantity: QuantityKind;
  value: number;
  decimals: number;
}): JSX.Element {
  return (
    <div class={`live ${props.sign ?? ''}`}>
      <dt>
        <Show when={props.sign}>{(name) => <Icon name={name()} size={14} />}</Show> {props.word}
      </dt>
      <dd>
        <Show when={Number.isFinite(props.value)} fallback={formatNumber(Number.NaN, 0)}>
          <b>{sayNumber(props.quantity, props.value, props.decimals)}</b>{' '}
          <span class="unit">{unitOf(props.quantity)}</span>
        </Show>
      </dd>
    </div>
  );
}
