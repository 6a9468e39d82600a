/** One line of the sheet: typed, set as mathematics, its result, and beside it what the simulation has. */
import { Match, Show, Switch, untrack } from 'solid-js';
import type { Expression } from '../../../sim/index.ts';
import type { SheetRow } from '../../engine/estimate.ts';
import { Icon } from '../../ui/icon.tsx';
import type { EstimateState } from './estimate-state.ts';
import { Mathematics } from './math.tsx';
import { hueOf, RatioLine } from './ratio-line.tsx';
import { estimateTexts as e } from './words.ts';

type QuantityResult = SheetRow['result'] & { kind: 'quantity' };

/** A value that was put in: set as mathematics it would only be said twice. */
function isPlain({ expression: x }: QuantityResult): boolean {
  const isUnit = (e: Expression): boolean =>
    e.kind === 'unit' || (e.kind === 'operation' && isUnit(e.a) && (isUnit(e.b) || e.operator === '^'));
  const isNumber = (e: Expression): boolean =>
    e.kind === 'number' || (e.kind === 'operation' && e.operator === '/' && isNumber(e.a) && isNumber(e.b));
  if (x.kind === 'link' || isNumber(x)) return true;
  if (x.kind !== 'operation' || x.operator === '+' || x.operator === '-') return false;
  return (
    (isNumber(x.a) && isUnit(x.b)) ||
    (x.operator === '/' && x.a.kind === 'operation' && isNumber(x.a.a) && isUnit(x.a.b) && isUnit(x.b))
  );
}

interface LineMoves {
  /** puts the caret into a line */
  to(index: number): void;
}

export function SheetLine(props: {
  state: EstimateState;
  index: number;
  text: string;
  moves: LineMoves;
  scale: number;
}) {
  const row = () => props.state.row(props.index);
  const quantity = (): QuantityResult | undefined => {
    const found = row()?.result;
    return found?.kind === 'quantity' ? found : undefined;
  };
  const fault = (): string | undefined => {
    const found = row()?.result;
    return found?.kind === 'fault' ? found.message : undefined;
  };
  const isHeading = (): boolean => /^\s*#/.test(props.text);
  const onKeyDown = (event: KeyboardEvent & { currentTarget: HTMLTextAreaElement }): void => {
    const { key, currentTarget: input } = event;
    const { index, state, moves } = untrack(() => props);
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey && !event.shiftKey;
    if (!plain || event.isComposing) return;
    if (key === 'Enter') moves.to(state.addLine(index));
    else if (key === 'ArrowDown') moves.to(index + 1);
    else if (key === 'ArrowUp') moves.to(index - 1);
    else if (key === 'Backspace' && input.value === '' && (state.sheet()?.lines.length ?? 0) > 1) {
      state.removeLine(index);
      moves.to(Math.max(0, index - 1));
    } else return;
    event.preventDefault();
  };
  /** several lines pasted at once become several lines of the sheet */
  const type = (field: HTMLTextAreaElement): void => {
    const [first, ...more] = field.value.split(/\r\n|[\n\r]/);
    props.state.setLine(props.index, first);
    field.value = first;
    if (more.length > 0) props.moves.to(props.state.insertLines(props.index, more));
  };
  const faultId = (): string => `sheet-fault-${props.index}`;
  return (
    <li
      class="sheet-line"
      classList={{
        faulty: fault() !== undefined,
        heading: isHeading(),
        bare: !quantity(),
        plain: quantity() !== undefined && isPlain(quantity() as QuantityResult),
      }}
      data-name={quantity()?.name}
    >
      <span class="line-typed">
        <textarea
          rows={1}
          class="line-text"
          value={props.text}
          aria-label={e.lineLabel(props.index + 1)}
          aria-invalid={fault() !== undefined}
          aria-describedby={fault() === undefined ? undefined : faultId()}
          spellcheck={false}
          autocapitalize="off"
          autocomplete="off"
          maxLength={400}
          onInput={(event) => type(event.currentTarget)}
          onKeyDown={onKeyDown}
        />
        <button
          type="button"
          class="square line-remove"
          aria-label={e.removeLine(props.index + 1)}
          title={e.removeLine(props.index + 1)}
          onClick={() => props.state.removeLine(props.index)}
        >
          <Icon name="close" size={14} />
        </button>
      </span>
      <Switch>
        <Match when={fault()}>
          {(message) => (
            <p class="line-fault" id={faultId()}>
              <span class="mark" aria-hidden="true" />
              {message()}
            </p>
          )}
        </Match>
        <Match when={quantity()}>
          {(q) => <LineResult row={row() as SheetRow} quantity={q()} scale={props.scale} />}
        </Match>
        <Match when={row()?.result.kind === 'drawing' && row()}>
          {(r) => {
            const body = () => (r().result as SheetRow['result'] & { kind: 'drawing' }).body;
            return <p class="line-body">{e.bodySize(body().kind, r().size ?? '')}</p>;
          }}
        </Match>
      </Switch>
    </li>
  );
}

function LineResult(props: { row: SheetRow; quantity: QuantityResult; scale: number }) {
  const compared = () => props.quantity.compared;
  const hue = (): string => hueOf(compared()?.text ?? '');
  const ends = (): string => {
    const { least, greatest, unit = '' } = props.row;
    return least === undefined || greatest === undefined ? '' : e.between(least, greatest, unit);
  };
  const known = (): string => [ends(), props.row.factor ? e.factor(props.row.factor) : ''].filter(Boolean).join('; ');
  return (
    <>
      <span class="line-formula">
        <Show when={!isPlain(props.quantity) && props.row.formula}>
          {(formula) => <Mathematics formula={formula()} name={props.quantity.name} />}
        </Show>
      </span>
      <span class="line-estimate" title={known()}>
        <b class={hue()}>{props.row.value}</b>
        <Show when={props.row.plusMinus}>{(pm) => <span class="pm"> ± {pm()}</span>}</Show>
        <Show when={props.row.unit}>{(unit) => <span class="unit"> {unit()}</span>}</Show>
      </span>
      <Show when={compared()}>
        {(c) => (
          <>
            <span class="line-simulated">
              <Show when={props.row.simulated} fallback={<span class="quiet">–</span>}>
                <b>{props.row.simulated}</b> <span class="unit">{props.row.unit}</span>
              </Show>
            </span>
            <span class="line-ratio">
              <RatioLine row={props.row} width={props.scale} />
              <b>{props.row.ratio}</b>
            </span>
            <span class="line-why">{c().missing ?? c().sentence}</span>
          </>
        )}
      </Show>
    </>
  );
}
