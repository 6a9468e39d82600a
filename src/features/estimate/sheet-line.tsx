/** One line of the sheet: its number, what is typed, the same set as mathematics and with numbers, and beside it the simulation. */
import { createMemo, createSignal, For, Match, Show, Switch, untrack } from 'solid-js';
import type { SheetRow } from '../../engine/estimate.ts';
import { Icon } from '../../ui/icon.tsx';
import type { EstimateState } from './estimate-state.ts';
import { LineFace } from './line-face.tsx';
import { hueOf, RatioLine } from './ratio-line.tsx';
import { estimateTexts as e } from './words.ts';

type QuantityResult = SheetRow['result'] & { kind: 'quantity' };
type FaultResult = SheetRow['result'] & { kind: 'fault' };

interface LineMoves {
  /** puts the caret into a line */
  to(index: number): void;
  /** puts the focus on a line, as a whole */
  rest(index: number): void;
}

export function SheetLine(props: {
  state: EstimateState;
  index: number;
  text: string;
  moves: LineMoves;
  scale: number;
}) {
  const [isEdited, setEdited] = createSignal(false);
  const row = () => props.state.row(props.index);
  const quantity = (): QuantityResult | undefined => {
    const found = row()?.result;
    return found?.kind === 'quantity' ? found : undefined;
  };
  const fault = (): FaultResult | undefined => {
    const found = row()?.result;
    return found?.kind === 'fault' ? found : undefined;
  };
  const isHeading = (): boolean => /^\s*#/.test(props.text);
  const isKnown = (): boolean => props.index < props.state.knownLines();
  /** known lines fill two columns, downwards */
  const place = (): { 'grid-column': string; 'grid-row': string } => {
    const known = props.state.knownLines();
    const half = Math.ceil(known / 2);
    if (!isKnown()) return { 'grid-column': '1 / -1', 'grid-row': String(half + 2 + props.index - known) };
    return { 'grid-column': props.index < half ? '1' : '2', 'grid-row': String((props.index % half) + 1) };
  };
  const move = (by: -1 | 1): number => props.state.moveLine(props.index, by);
  const onKeyDown = (event: KeyboardEvent & { currentTarget: HTMLTextAreaElement }): void => {
    const { key, currentTarget: input } = event;
    const { index, state, moves } = untrack(() => props);
    if (event.isComposing || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const by = key === 'ArrowUp' ? -1 : key === 'ArrowDown' ? 1 : undefined;
    if (event.altKey) {
      if (by === undefined) return;
      moves.to(move(by));
    } else if (key === 'Enter') moves.to(state.addLine(index));
    else if (by !== undefined) moves.to(index + by);
    else if (key === 'Escape') moves.rest(index);
    else if (key === 'Backspace' && input.value === '' && (state.sheet()?.lines.length ?? 0) > 1) {
      state.removeLine(index);
      moves.to(Math.max(0, index - 1));
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  /** the line as a whole has the focus: Enter edits it */
  const onLineKey = (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const { index, moves } = untrack(() => props);
    const by = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : undefined;
    if (by !== undefined) moves.rest(event.altKey ? move(by) : index + by);
    else if (event.key === 'Enter') moves.to(index);
    else return;
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
        faulty: fault() !== undefined && fault()?.waitsFor === undefined,
        heading: isHeading(),
        known: isKnown(),
        bare: !quantity(),
        edited: isEdited(),
      }}
      style={place()}
      data-name={quantity()?.name}
      tabIndex={-1}
      onKeyDown={onLineKey}
    >
      <span class="line-number" aria-hidden="true">
        {props.index + 1}
      </span>
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
          onFocus={() => setEdited(true)}
          onBlur={() => setEdited(false)}
          onInput={(event) => type(event.currentTarget)}
          onKeyDown={onKeyDown}
        />
        <LineFace text={props.text} row={row()} isKnown={isKnown()} />
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
        <Match when={fault()}>{(found) => <Fault state={props.state} fault={found()} id={faultId()} />}</Match>
        <Match when={quantity()}>
          {(q) => <LineResult row={row() as SheetRow} quantity={q()} scale={props.scale} isKnown={isKnown()} />}
        </Match>
      </Switch>
    </li>
  );
}

/** What, where, what is right, and buttons that correct it. */
function Fault(props: { state: EstimateState; fault: FaultResult; id: string }) {
  const isAlone = createMemo(() => props.state.rows().filter((r) => r.result.kind === 'fault').length === 1);
  return (
    <p class="line-fault" id={props.id}>
      <Show when={props.fault.waitsFor === undefined}>
        <span class="mark" aria-hidden="true">
          !
        </span>
      </Show>
      <span class="fault-said">
        <b>{e.notComputed(props.fault.line + 1)}</b> {props.fault.message}
        <Show when={isAlone() && props.state.rows().length > 1}> {e.othersRight}</Show>
      </span>
      <For each={props.fault.fixes ?? []}>
        {(fix) => (
          <button type="button" onClick={() => props.state.setLine(props.fault.line, fix.text)}>
            {fix.title}
          </button>
        )}
      </For>
    </p>
  );
}

function LineResult(props: { row: SheetRow; quantity: QuantityResult; scale: number; isKnown: boolean }) {
  const compared = () => props.quantity.compared;
  const hue = (): string => hueOf(compared()?.text ?? '');
  const ends = (): string => {
    const { least, greatest, unit = '' } = props.row;
    return least === undefined || greatest === undefined ? '' : e.between(least, greatest, unit);
  };
  const known = (): string => [ends(), props.row.factor ? e.factor(props.row.factor) : ''].filter(Boolean).join('; ');
  /** "The rod. One of 1.34 m ...": the cause is its head */
  const said = (): { head: string; rest: string } => {
    const text = compared()?.sentence ?? '';
    const at = compared()?.cause === undefined && !/^The \w+\. /.test(text) ? -1 : text.indexOf('. ');
    return at < 0 ? { head: '', rest: text } : { head: text.slice(0, at + 1), rest: text.slice(at + 1) };
  };
  return (
    <>
      <Show when={!props.isKnown}>
        <span class="line-numbers">{props.row.numbers}</span>
      </Show>
      <span class="line-estimate" title={known()}>
        <b class={hue()}>{props.row.value}</b>
        <Show when={props.quantity.isOpen ? e.noBound : props.row.plusMinus}>
          {(pm) => <span class="pm"> ± {pm()}</span>}
        </Show>
        <Show when={props.row.unit}>{(unit) => <span class="unit"> {unit()}</span>}</Show>
      </span>
      <Show when={props.isKnown && props.quantity.note}>
        <span class="line-note">{props.quantity.note}</span>
      </Show>
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
            </span>
            <span class="line-why">
              <Show when={c().missing === undefined} fallback={c().missing}>
                <Show when={c().remark}>{(remark) => <span class="why-remark">{remark()} </span>}</Show>
                <Show when={said().head}>{(head) => <b>{head()}</b>}</Show>
                {said().rest}
              </Show>
            </span>
          </>
        )}
      </Show>
    </>
  );
}
