/** A number inside a sentence: typed, or stepped by arrow keys. What is out of range gets its reason; the last good value stays. */
import { createEffect, createSignal, createUniqueId, Show } from 'solid-js';
import { type AskUnit, decimalsIn, numberIn, parseIn, sayIn, stepOf, unitIn } from './ask-words.ts';
import { askTexts as t } from './words.ts';

export function Slot(props: {
  label: string;
  unit: AskUnit;
  /** SI */
  value: number;
  min: number;
  max: number;
  step?: number;
  decimals?: number;
  class?: string;
  withUnit?: boolean;
  name?: string;
  onChange: (value: number) => void;
}) {
  const id = createUniqueId();
  const [reason, setReason] = createSignal('');
  let input!: HTMLInputElement;
  const decimals = (): number => props.decimals ?? decimalsIn(props.unit);
  const shown = (): string => numberIn(props.unit, props.value, decimals());
  createEffect(() => {
    input.value = shown();
    setReason('');
  });
  const take = (typed: string): void => {
    if (typed === shown()) {
      setReason('');
      return;
    }
    const v = parseIn(props.unit, typed);
    const kept = t.kept(props.label, sayIn(props.unit, props.value, decimals()));
    const slack = 1e-9 * Math.max(1, Math.abs(v));
    if (Number.isNaN(v)) setReason(`${t.notNumber(typed)}; ${kept}`);
    else if (v < props.min - slack || v > props.max + slack)
      setReason(
        `${t.range(props.label, sayIn(props.unit, props.min, decimals()), sayIn(props.unit, props.max, decimals()))}; ${kept}`,
      );
    else {
      setReason('');
      props.onChange(Math.min(Math.max(v, props.min), props.max));
      input.value = shown();
    }
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key === 'Enter') take(input.value);
    else if (e.key === 'Escape') {
      if (input.value === shown() && reason() === '') return;
      input.value = shown();
      setReason('');
    } else if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
      const step = (props.step ?? stepOf(props.unit)) * (e.shiftKey ? 10 : 1);
      const v = Math.round(props.value / step + (e.key === 'ArrowUp' ? 1 : -1)) * step;
      props.onChange(Math.min(Math.max(v, props.min), props.max));
    } else return;
    e.preventDefault();
    e.stopPropagation();
    input.select();
  };
  return (
    <span class={`slot ${props.class ?? ''}`} classList={{ bad: reason() !== '' }}>
      <input
        ref={input}
        type="text"
        inputmode="decimal"
        maxLength={40}
        autocomplete="off"
        spellcheck={false}
        role="spinbutton"
        name={props.name}
        aria-label={props.label}
        aria-valuenow={props.value}
        aria-valuetext={sayIn(props.unit, props.value, decimals())}
        aria-valuemin={props.min}
        aria-valuemax={props.max}
        aria-invalid={reason() !== ''}
        aria-describedby={reason() ? id : undefined}
        style={{ width: `calc(${Math.max(shown().length, 1)}ch + 4px)` }}
        onFocus={() => input.select()}
        onBlur={() => take(input.value)}
        onKeyDown={onKeyDown}
      />
      <Show when={props.withUnit !== false}>{unitIn(props.unit)}</Show>
      <Show when={reason()}>
        <span class="slot-why" id={id} role="alert">
          {reason()}
        </span>
      </Show>
    </span>
  );
}
