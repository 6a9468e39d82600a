/**
 * A typed value: click and type, arrow keys step, a drag on the label scrubs. What is out of range gets its reason under
 * the field, and the last good value stays. Its input says what is settled: while other text is in it, undo is the browser's.
 */

import { createEffect, createMemo, createSignal, createUniqueId, onCleanup, Show } from 'solid-js';
import { startDrag } from './drag.ts';
import { formatNumber, parseNumber } from './numbers.ts';
import { fromShown, parseQuantity, type QuantityKind, sayNumber, shownAs, toShown, unitBeside } from './units.ts';
import { numberTexts } from './words.ts';

interface NumberFieldProps {
  label: string;
  unit: string;
  value: number;
  min: number;
  max: number;
  step: number;
  decimals: number;
  /** shown, stepped and typed in the units that are set; value, range and step stay those of the document */
  quantity?: QuantityKind;
  /** one finished change */
  onChange: (value: number) => void;
  /** why the change just made was none: said in its place */
  refusal?: () => string | undefined;
  /** what the value is, to be read beside it */
  hint?: string | undefined;
  /** while scrubbing; the last one is followed by onSettle */
  onDraft?: (value: number) => void;
  onSettle?: () => void;
  onAbandon?: () => void;
  name?: string;
  compact?: boolean;
  /** words of the two directions, where a sign turns the value round */
  sides?: readonly [string, string];
}

export function NumberField(props: NumberFieldProps) {
  const id = createUniqueId();
  const [reason, setReason] = createSignal('');
  let input!: HTMLInputElement;
  const write = (value: number, decimals: number): string =>
    props.quantity ? sayNumber(props.quantity, value, decimals) : formatNumber(value, decimals);
  const unit = (): string => (props.quantity ? unitBeside(props.quantity) : props.unit);
  // what is typed stays while the value is the same, though the field is laid out again
  const shown = createMemo(() => write(props.value, props.decimals));
  createEffect(() => {
    input.value = shown();
    setReason('');
  });

  const tidy = (v: number): number => Number(v.toFixed(Math.max(props.decimals, props.quantity ? 4 : 3)));
  const take = (typed: string): void => {
    if (typed === shown()) {
      setReason('');
      return;
    }
    const v = props.quantity ? parseQuantity(props.quantity, typed) : parseNumber(typed);
    if (Number.isNaN(v)) setReason(numberTexts.notNumber(typed));
    else if (v < props.min || v > props.max) {
      const most = write(props.max, 0);
      const range = props.sides
        ? numberTexts.upTo(most, props.sides.includes(unit()) ? '' : unit(), props.sides)
        : numberTexts.outOfRange(write(props.min, props.min % 1 === 0 ? 0 : props.decimals), most, unit());
      setReason(`${range}; ${numberTexts.kept(shown())}`);
    } else {
      change(v);
    }
  };
  const change = (v: number): void => {
    if (v !== props.value) props.onChange(tidy(v));
    const refused = v === props.value ? undefined : props.refusal?.();
    setReason(refused ? `${refused}; ${numberTexts.kept(shown())}` : '');
    if (!refused) input.value = shown();
  };
  /** n steps of the unit shown, onto its own grid */
  const stepped = (from: number, n: number): number => {
    const q = props.quantity;
    const step = (q && shownAs(q).step) ?? props.step * (q ? shownAs(q).factor : 1);
    const at = q ? toShown(q, from) : from;
    const v = Math.round((at + n * step) / step) * step;
    return q ? fromShown(q, v) : v;
  };
  const stepBy = (n: number): void => {
    change(Math.min(Math.max(stepped(props.value, n), props.min), props.max));
  };
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.key === 'Enter') take(input.value);
    else if (e.key === 'Escape') {
      // nothing to take back: the key belongs to what surrounds the field
      if (input.value === shown() && reason() === '') return;
      input.value = shown();
      setReason('');
    } else if (e.key === 'ArrowUp' || e.key === 'ArrowDown') {
      stepBy((e.key === 'ArrowUp' ? 1 : -1) * (e.shiftKey ? 10 : 1));
    } else return;
    e.preventDefault();
    e.stopPropagation();
    input.select();
  };
  const onPointerDown = (e: PointerEvent): void => {
    if (!props.onDraft) return;
    const start = props.value;
    startDrag(e, {
      move: (dx) => props.onDraft?.(tidy(Math.min(Math.max(stepped(start, Math.round(dx / 3)), props.min), props.max))),
      end: (moved) => {
        if (moved) props.onSettle?.();
      },
      cancel: () => props.onAbandon?.(),
    });
  };
  // a field that goes while letters are in it is left by the browser, and has no value any more
  let isGone = false;
  onCleanup(() => {
    isGone = true;
  });

  return (
    <div class="field" classList={{ bad: reason() !== '', compact: props.compact }}>
      <label for={id} title={props.hint} classList={{ long: props.label.length > 15 }} onPointerDown={onPointerDown}>
        {props.label}
      </label>
      <span class="value">
        <input
          ref={input}
          id={id}
          name={props.name}
          data-settled={shown()}
          type="text"
          inputmode="decimal"
          maxLength={40}
          autocomplete="off"
          spellcheck={false}
          role="spinbutton"
          style={{ width: `calc(${Math.max(shown().length, 2)}ch + 8px)` }}
          aria-valuenow={props.value}
          aria-valuetext={`${shown()} ${unit()}`.trim()}
          aria-valuemin={props.min}
          aria-valuemax={props.max}
          aria-invalid={reason() !== ''}
          aria-describedby={reason() ? `${id}-why` : undefined}
          onFocus={() => input.select()}
          onBlur={() => isGone || take(input.value)}
          onKeyDown={onKeyDown}
        />
        <span class="unit">{unit()}</span>
      </span>
      <Show when={reason()}>
        <p class="why" id={`${id}-why`} role="alert">
          {reason()}
        </p>
      </Show>
    </div>
  );
}
